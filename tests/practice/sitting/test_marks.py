"""An answer as it is marked in a sitting, and what is told of it."""

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.making import make_questions
from assistant.practice.making.question import OWN
from assistant.practice.marking.mark import Marker
from assistant.practice.sitting_confusing import taken_for
from assistant.practice.sitting_marks import CITED, asked_text, cited_line, mark_lines, once_true, overruled, take
from tests.practice.sitting.conftest import Putter


def test_the_mark_what_is_missing_the_whole_answer_and_its_paragraph_are_told(know: Knowledge, asked: Putter) -> None:
    taken = take(asked("vle", "figure").question, "255 kt", Marker(know), know)

    assert (taken.mark, taken.share) == ("partly", 0.5)
    told = [line.text for line in mark_lines(taken)]
    assert told[0] == "Partly right."
    assert "Mach 0.60" in told[1]
    assert told[2].startswith("255 kt IAS or Mach 0.60")
    assert told[3] == "LIM 3.1, revision 7"
    assert mark_lines(taken)[-1].kind == CITED


def test_after_correction_the_answer_is_what_follows(know: Knowledge, asked: Putter) -> None:
    taken = take(asked("vlo-extension", "figure").question, "255, correction 230 kt", Marker(know), know)

    assert (taken.mark, taken.answer) == ("right", "230 kt")


@pytest.mark.parametrize("typed", ["205", "205 kt", "two hundred and five knots"])
def test_what_was_taken_for_it_is_named(know: Knowledge, asked: Putter, typed: str) -> None:
    taken = take(asked("vlo-extension", "figure").question, typed, Marker(know), know)

    assert taken.mark == "wrong"
    assert taken.confused is not None
    assert taken.confused.record == "vlo-retraction"
    assert any("205 kt is the maximum speed for retracting the gear" in line.text for line in mark_lines(taken))


def test_its_own_figure_and_one_that_the_question_gives_are_taken_for_nothing(know: Knowledge, asked: Putter) -> None:
    figure, check = asked("vlo-extension", "figure").question, asked("vlo-extension", "check").question

    assert taken_for(figure, "230 kt", know) is None
    assert taken_for(figure, "no number at all", know) is None
    assert taken_for(check, "no, 205 kt", know) is None  # a verdict is asked for
    assert taken_for(figure._replace(form=OWN, entry="own:x"), "205 kt", know) is None


def test_a_figure_of_a_drill_s_step_stands_for_no_other_record(know: Knowledge, asked: Putter) -> None:
    drill = asked("no-braking", "memory").question

    assert taken_for(drill, "45 kt", know) is None


def test_a_fault_while_marking_leaves_it_to_who_sits_there(know: Knowledge, asked: Putter) -> None:
    class Faulty(Marker):
        def mark(self, question: str, answer: str):  # type: ignore[no-untyped-def]
            raise RuntimeError

    taken = take(asked("vle", "figure").question, "255", Faulty(know), know)

    assert taken.mark == "unmarked"
    assert taken.expected.startswith("255 kt")


def test_a_question_about_another_variant_names_it_when_it_is_marked(know: Knowledge) -> None:
    (question, *_) = make_questions(know, "1", entries=("vle",), forms=("figure",), variant="120L")

    assert asked_text(question, know).startswith("On the 120L: ")
    assert asked_text(question._replace(variant="120"), know) == question.text


def test_an_overruled_mark_has_its_share(know: Knowledge, asked: Putter) -> None:
    taken = take(asked("vle", "figure").question, "280", Marker(know), know)

    assert [overruled(taken, mark).share for mark in ("right", "partly", "wrong", "missed")] == [1.0, 0.5, 0.0, 0.0]


def test_many_paragraphs_are_told_with_each_revision_once(know: Knowledge) -> None:
    found = [q for q in make_questions(know, "1", entries=("braking",), forms=("loss",)) if len(q.sources) > 3]

    told = cited_line(found[0].sources)
    assert told.count("revision 7") == len({source.document for source in found[0].sources if source.revision == "7"})
    assert all(source.paragraph in told for source in found[0].sources)


def test_the_books_own_words_are_right_with_or_without_its_remarks(know: Knowledge) -> None:
    class Never(Marker):
        def mark(self, question: str, answer: str):  # type: ignore[no-untyped-def]
            raise AssertionError(answer)

    questions = make_questions(know, "1", 30)

    for question in questions:
        says = question.key.says
        assert take(question, says.upper().rstrip("."), Never(know), know).mark == "right"
        if len(question.key.points) > 1 and not question.key.verdict and not question.key.sets:
            assert take(question, "; ".join(question.key.points), Never(know), know).mark == "right"
        if " Rule: " in says:
            assert take(question, says.split(" Rule: ")[0], Never(know), know).mark == "right"


def test_an_answer_without_end_is_cut(know: Knowledge, asked: Putter) -> None:
    taken = take(asked("vle", "figure").question, "long " * 50_000, Marker(know), know)

    assert (taken.mark, len(taken.answer)) == ("missed", 2_000)


@pytest.mark.parametrize(
    ("record", "typed", "told"),
    [("vlo-retraction", "200 kt", "200 kt was the former value, until LIM 7."),
     ("vlo-retraction", "200", "200 kt was the former value, until LIM 7."),
     ("accumulator-parking-minimum", "1,800 psi", "1,800 psi was the former value, until LIM 7."),
     ("brake-temperature-takeoff", "280 degrees", "280 °C was the former value, until LIM 7."),
     ("vlo-retraction", "230 kt", ""), ("vlo-retraction", "205 kt", "")],
)  # fmt: skip
def test_a_former_value_is_told_as_such_and_taken_for_nothing_else(
    know: Knowledge, asked: Putter, record: str, typed: str, told: str
) -> None:
    taken = take(asked(record, "figure").question, typed, Marker(know), know)

    assert taken.former == told and not (told and taken.confused)
    assert (told in [line.text for line in mark_lines(taken)]) == bool(told)


def test_what_was_learned_before_a_revision_is_told_as_the_former_value(know: Knowledge, asked: Putter) -> None:
    taken = take(asked("vlo-extension", "figure").question, "205 kt", Marker(know), know)
    former = once_true(taken, "205 kt IAS: maximum speed for extending the gear", "LIM 8")

    assert (former.former, former.confused) == ("205 kt IAS was the former value, until LIM 8.", None)


def test_a_why_that_would_be_marked_by_something_else_is_not_marked(know: Knowledge, asked: Putter) -> None:
    put = asked("vle", "figure").question
    why = put._replace(text="Why? (System 1 lost: do you have steering?)", form="reason")
    why = why._replace(key=why.key._replace(says="Hydraulic System 1 runs the nose-wheel steering.", values=()))

    assert take(why, "because System 1 drives it", Marker(know), know).mark == "unmarked"
    assert take(why, "Hydraulic System 1 runs the nose-wheel steering.", Marker(know), know).mark == "right"
