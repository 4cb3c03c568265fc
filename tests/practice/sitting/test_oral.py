"""An oral examination: it goes on until knowledge runs out, and is debriefed by paragraph."""

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.asking.pool import Item, Pool
from assistant.practice.sitting_oral import DEBRIEFED, After, Oral, begin, debrief_lines, prompt, said
from assistant.practice.sitting_scenes import Examiner, Turn
from assistant.practice.sitting_state import ANSWERING, END, KEEP, NEXT, OVER, REMARK, STANDING_BY, Desk


@pytest.fixture(scope="module")
def turns(know: Knowledge, pool: Pool) -> list[tuple[Turn, Item]]:
    """A scene of braking, which is long."""
    items = {item.record: item for item in pool.items}
    braking = [name for name, item in items.items() if item.section == "32-40"]
    return [(turn, items[turn.question.entry]) for turn in Examiner(know, "2", braking).scene()]


def through(turns: list[tuple[Turn, Item]], desk: Desk, *typed: str) -> list[After]:
    found = [begin(Oral(), turns, 1)]
    for line in typed:
        found.append(said(found[-1].oral, line, desk))
    return found


def test_it_says_how_an_answer_was_and_goes_on(turns: list[tuple[Turn, Item]], desk: Desk) -> None:
    first, second = through(turns, desk, turns[0][0].question.key.points[0])

    assert [line.text for line in first.lines] == ["Scenario 1", turns[0][0].said]
    assert [line.text for line in second.lines] == ["Right.", turns[1][0].said]
    assert second.act == KEEP
    assert turns[0][0].question.key.says not in "".join(line.text for line in second.lines)


def test_two_in_a_row_that_are_not_known_lead_on_to_the_next_failure_and_three_end_the_scene(
    turns: list[tuple[Turn, Item]], desk: Desk
) -> None:
    *_, one, two, three = through(turns, desk, "pass", "unable", "pass")

    assert (one.act, two.act, three.act) == (KEEP, KEEP, NEXT)
    assert two.lines[-2].text == "We leave that, and go on."
    assert two.lines[-1].text.startswith("And now ")
    assert two.oral.turns[two.oral.at][0].step == turns[0][0].step + 1
    assert three.lines[-1].text == "That is as far as you know it. We leave it there."
    assert [each.taken.mark for each in three.oral.given] == ["missed"] * 3


def test_two_in_a_row_end_a_scene_in_which_nothing_more_fails(turns: list[tuple[Turn, Item]], desk: Desk) -> None:
    same = [(turn._replace(step=1), item) for turn, item in turns]

    assert through(same, desk, "pass", "unable")[-1].act == NEXT


def test_a_wrong_answer_is_not_told_by_a_no(turns: list[tuple[Turn, Item]], desk: Desk) -> None:
    after = through(turns, desk, "EMERGENCY")[-1]

    assert after.oral.given[-1].taken.mark == "wrong" and after.lines[0].text == "That is not right."


def test_one_that_is_known_in_between_goes_on(turns: list[tuple[Turn, Item]], desk: Desk) -> None:
    right = turns[1][0].question.key.points[0]
    after = through(turns, desk, "pass", right, "pass")[-1]

    assert after.act == KEEP
    assert after.oral.weak == 1


def test_who_knows_everything_goes_as_far_as_the_documents_do(turns: list[tuple[Turn, Item]], desk: Desk) -> None:
    after = through(turns, desk, *(turn.question.key.says for turn, _ in turns))[-1]

    assert after.act == NEXT
    assert after.lines[-1].text == "That is as far as the loaded documents go."
    assert {each.taken.mark for each in after.oral.given} <= {"right", "partly"}
    assert len(after.oral.given) == len(turns) > 7


def test_what_steers_a_sitting_steers_it_too(turns: list[tuple[Turn, Item]], desk: Desk) -> None:
    _, empty, again, hint, standby, on, dropped, helped, stop = through(
        turns, desk, "", "say again", "hint", "standby", "", "normal, disregard", "help", "stop"
    )

    assert empty.lines[0].text.startswith("Nothing was typed")
    assert again.lines[0].text == turns[0][0].question.text
    assert hint.oral.hinted
    assert standby.oral.phase == STANDING_BY
    assert (on.oral.phase, on.lines[0].text) == (ANSWERING, turns[0][0].said)
    assert dropped.oral.given == ()
    assert "say again" in helped.lines[1].text
    assert (stop.act, stop.oral.phase) == (END, OVER)


def test_an_answer_typed_after_standby_goes_on(turns: list[tuple[Turn, Item]], desk: Desk) -> None:
    right = turns[0][0].question.key.points[0]

    after = through(turns, desk, "standby", right)[-1]
    idle = through(turns, desk, "standby", "the coffee is in")[-1]

    assert (len(after.oral.given), after.oral.at) == (1, 1)
    assert (idle.oral.given, idle.oral.phase, idle.lines[0].text) == ((), ANSWERING, turns[0][0].said)


@pytest.mark.parametrize("typed", [
    "why?", "why not?", "and then?", "correction", "which paragraph", "dispute", "how many left", "what is VLE",
    "and now system 1 goes?", "uh", "I think it's", "ALTERNATE, correction",
])
def test_the_examiner_s_own_words_close_nothing(turns: list[tuple[Turn, Item]], desk: Desk, typed: str) -> None:
    after = through(turns, desk, typed, typed)[-1]

    assert (after.oral.given, after.oral.weak, after.oral.at, after.act) == ((), 0, 0, "")
    assert after.lines


def test_the_debrief_goes_by_paragraph_and_tells_what_was_missing(turns: list[tuple[Turn, Item]], desk: Desk) -> None:
    right = turns[0][0].question.key.points[0]
    given = through(turns, desk, right, "pass", "pass")[-1].oral.given
    told = [line.text for line in debrief_lines(given)]

    assert told[0] == "Debrief, by paragraph"
    headings = [line for line in told if line.endswith(" right")]
    assert sorted(headings) == headings
    assert sum(int(line.split()[-4]) for line in headings) == 1
    assert any(line.startswith("1. Right: ") for line in told)
    assert given[1].taken.expected in told
    assert given[0].taken.expected not in told


def test_a_mark_is_overruled_by_its_number_after_the_debrief(turns: list[tuple[Turn, Item]], desk: Desk) -> None:
    oral = through(turns, desk, "pass", "pass")[-1].oral._replace(phase=DEBRIEFED)

    after = said(oral, "overrule 2 right", desk)
    assert (after.act, after.oral.remarked) == (REMARK, 1)
    assert [each.taken.mark for each in after.oral.given] == ["missed", "right"]
    assert after.oral.given[1].was_overruled
    for typed in ("overrule 3 right", "overrule 1 perfect", "what?"):
        assert said(oral, typed, desk).act == ""
    assert said(oral, "", desk).oral.phase == OVER


def test_every_prompt_fits_forty_columns() -> None:
    assert all(len(prompt(Oral(phase=phase))) <= 40 for phase in (ANSWERING, STANDING_BY, DEBRIEFED))
