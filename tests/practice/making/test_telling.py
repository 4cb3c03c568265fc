"""No full answer gives away a question that is still to come in the same sitting."""

from __future__ import annotations

import pytest

from assistant.answering.answer import Citation
from assistant.conversation.opening import Knowledge
from assistant.practice.making import Expected, Key, Question, make_questions
from assistant.practice.making.question import FACT, FIGURE, STEPS
from assistant.practice.making.telling import none_told_before, place_for, tells

LAMP = Citation("BOOK", "7.1", "1", "2026-01-01")
ELSEWHERE = LAMP._replace(paragraph="9.9")


def question(
    text: str, says: str, points: tuple[str, ...] = (), value: float | None = None, source: Citation = LAMP
) -> Question:
    values = (Expected("speed", value, "kt"),) if value is not None else ()
    form = FACT if value is None else FIGURE
    return Question(text, text, form, text, "", "", Key("answer", says, values, points), (source,), "", 1)


WHY = question("Why does DOOR OPEN show?", "DOOR OPEN (amber): a door is not closed within 15 s.", ("not closed",))
COLOUR = question("What colour is DOOR OPEN?", "Amber is the colour of DOOR OPEN.")
AFTER = question("After how long does DOOR OPEN show?", "15 s: time after which DOOR OPEN shows.", value=15)
OTHER = question("What colour is FUEL LOW?", "Amber is the colour of FUEL LOW.", source=ELSEWHERE)
DRILL = question(
    "Door will not open: what do you do?", "1. Maximum speed with the door open: 190 kt. 2. Pull.", ("190 kt", "pull")
)
SPEED = question("What is the maximum speed with the door open?", "190 kt.", value=190, source=ELSEWHERE)


@pytest.mark.parametrize(("one", "other"), [(WHY, COLOUR), (WHY, AFTER), (DRILL, SPEED)])
def test_an_answer_that_holds_another_tells_it(one: Question, other: Question) -> None:
    assert tells(one, other)
    assert not tells(other, one)


@pytest.mark.parametrize(("one", "other"), [(WHY, OTHER), (AFTER, SPEED), (DRILL, COLOUR)])
def test_the_same_word_of_another_thing_tells_nothing(one: Question, other: Question) -> None:
    assert not tells(one, other)


def test_a_question_that_names_a_step_tells_it() -> None:
    steps = ("door switch OFF, then ON once", "wait for the lamp")
    drill = question("Door stuck: what do you do?", "1. Door switch OFF, then ON once; 2. wait.", steps)
    drill = drill._replace(form=STEPS)
    speed = question("Below which speed is the door switch put OFF, then ON once?", "30 kt.", value=30)

    assert tells(speed, drill)
    assert not tells(speed, drill._replace(form=FACT))


def test_what_would_be_told_comes_first() -> None:
    assert none_told_before((WHY, COLOUR, OTHER, AFTER)) == (COLOUR, AFTER, WHY, OTHER)
    assert none_told_before((DRILL, OTHER, SPEED)) == (SPEED, DRILL, OTHER)
    assert none_told_before((OTHER, WHY)) == (OTHER, WHY)


def test_two_that_tell_each_other_have_no_place_together() -> None:
    again = question("In what colour does DOOR OPEN show, pray?", "Amber is the colour of DOOR OPEN.")

    assert place_for(again, (COLOUR,)) is None
    assert none_told_before((COLOUR, again)) == (COLOUR, again)  # an instructor's own are never dropped


@pytest.mark.parametrize("topics", [(), ("32-60",), ("32-30",), ("brakes",)])
@pytest.mark.parametrize("seed", [4, 9])
def test_no_paper_gives_an_answer_away(knowledge: Knowledge, topics: tuple[str, ...], seed: int) -> None:
    made = make_questions(knowledge, seed, 12, topics)

    assert len(made) == 12
    told = [(a.text, b.text) for place, a in enumerate(made) for b in made[place + 1 :] if tells(a, b)]
    assert not told
