"""Which question is put on a record: recalled first, in another form next time, none like another."""

from assistant.conversation.opening import Knowledge
from assistant.practice.asking.pool import Pool
from assistant.practice.making.question import LONG_SUMS
from assistant.practice.sitting_questions import Questioner


def test_the_first_time_it_is_recalled_and_later_applied(know: Knowledge) -> None:
    first = Questioner(know, "1").question_on("vlo-extension")
    later = {(q := Questioner(know, f"{n}").question_on("vlo-extension", 1, {"figure"})) and q.form for n in range(4)}

    assert first is not None
    assert first.form == "figure"
    assert "figure" not in later


def test_a_procedure_is_asked_whole_the_first_time(know: Knowledge) -> None:
    question = Questioner(know, "1").question_on("no-braking")

    assert question is not None
    assert question.form in ("steps", "memory")


def test_what_is_asked_again_is_put_in_other_words_while_there_are_any(know: Knowledge) -> None:
    questioner = Questioner(know, "1")
    texts = [q.text for _ in range(4) if (q := questioner.question_on("vlo-extension", 1))]

    assert len(texts) == 4
    assert len(set(texts)) >= 3


def test_the_same_seed_gives_the_same_questions(know: Knowledge) -> None:
    one, two = (Questioner(know, "7") for _ in range(2))

    for record in ("vle", "braking", "pedal-limit"):
        assert one.question_on(record) == two.question_on(record)


def test_no_two_records_are_asked_alike(know: Knowledge, pool: Pool) -> None:
    questioner = Questioner(know, "1")
    records = [item.record for item in pool.items if item.section == "32-60"]
    found = [(record, q) for record in records if (q := questioner.question_on(record))]

    assert len({q.text for _, q in found}) == len(found)
    assert len(found) > len(records) / 2


def test_by_ear_nothing_takes_pencil_and_paper(know: Knowledge) -> None:
    records = [name for name in know.base.order if know.base.kind(name) == "models"][:12]
    questioner = Questioner(know, "1", by_ear=True)

    for record in records:
        question = questioner.question_on(record)
        assert question is None or question.form not in LONG_SUMS


def test_a_record_without_a_question_has_none(know: Knowledge) -> None:
    assert Questioner(know, "1").question_on("no-such-record") is None


def test_what_an_answer_has_just_told_is_not_asked_yet(know: Knowledge) -> None:
    questioner = Questioner(know, "1")
    first = questioner.question_on("steer-lost-procedure")

    assert first is not None
    assert "30 kt" in first.key.says
    record = _of_the_switch(know)
    assert questioner.question_on(record) is None
    assert questioner.told == {record}
    for other in ("vle", "no-braking", "braking", "parking", "wheelbase", "tyre-speed", "brake-count", "vle-mach"):
        questioner.question_on(other)
    assert questioner.question_on(record) is not None
    assert questioner.told == set()


def test_when_nothing_else_is_left_it_is_asked_all_the_same(know: Knowledge) -> None:
    questioner = Questioner(know, "1")
    questioner.question_on("steer-lost-procedure")
    record = _of_the_switch(know)

    assert questioner.question_on(record) is None
    assert questioner.ask_told()
    assert questioner.question_on(record) is not None
    assert not questioner.ask_told()


def _of_the_switch(know: Knowledge) -> str:
    """The figure that the first step of the procedure holds."""
    limits = [name for name in know.base.order if know.base.kind(name) == "limits"]
    (found,) = [name for name in limits if "STEER switch" in know.base.record(name).of]
    return found
