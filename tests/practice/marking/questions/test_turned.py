"""A question may ask by its loss whether a thing is there: yes is then that it is gone."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.marking.mark import RIGHT, WRONG, Marker
from assistant.practice.marking.questions.turned import asks_loss

_TURNED = (
    "does that affect {}", "does that stop {}", "is {} affected", "do you lose {}", "does it knock out {}",
    "will {} be gone", "does that take {} away", "is {} unavailable", "does {} drop out", "does that disable {}",
    "does it switch off {}", "are you without {}",
)  # fmt: skip
_PLAIN = ("do you have {}", "is {} available", "does {} still work", "is {} unaffected", "have you still got {}")
_STATES = (
    ("System 2 lost", "autobrake", False),
    ("System 2 lost", "anti-skid", True),
    ("Brake controller failed", "autobrake", False),
    ("Brake controller failed", "anti-skid", False),
    ("Accumulator empty", "autobrake", True),
)


@pytest.fixture(scope="module")
def marker(knowledge: Knowledge) -> Marker:
    return Marker(knowledge)


@pytest.mark.parametrize(("state", "thing", "there"), _STATES)
@pytest.mark.parametrize("asking", _TURNED + _PLAIN)
def test_yes_and_no_are_held_against_what_is_asked(
    marker: Marker, asking: str, state: str, thing: str, there: bool
) -> None:
    question = f"{state}: {asking.format(thing)}?"
    right = "yes" if there is (asking in _PLAIN) else "no"
    assert {answer: marker.mark(question, answer).mark for answer in ("yes", "no")} == {
        answer: RIGHT if answer == right else WRONG for answer in ("yes", "no")
    }


@pytest.mark.parametrize(
    ("question", "right"),
    [
        ("Do the brakes still work after a free-fall extension?", "yes"),
        ("Are the brakes affected by a free-fall extension?", "no"),
        ("Does a failed steering controller affect the brakes?", "no"),
        ("Do you lose autobrake in ALTERNATE?", "yes"),
        ("Does autobrake work in ALTERNATE?", "no"),
        ("With System 1 lost, is the steering affected?", "yes"),
        ("With System 2 lost, do you lose the steering?", "no"),
        ("Does losing System 1 affect the steering?", "yes"),
        ("Bypass pin inserted: is the steering lost?", "yes"),
        ("STEER switch OFF: does that stop the tillers?", "yes"),
        ("System 1 lost: do you lose the parking brake?", "no"),
        ("System 1 lost and the accumulator empty: do you lose the parking brake?", "yes"),
        ("Is NORMAL lost with ANTI-SKID OFF?", "yes"),
    ],
)
def test_statements_and_results_are_turned_too(marker: Marker, question: str, right: str) -> None:
    other = "no" if right == "yes" else "yes"
    assert marker.mark(question, right).mark == RIGHT
    assert marker.mark(question, other).mark == WRONG


@pytest.mark.parametrize(
    ("question", "asked"),
    [
        ("Does it stop the fans?", True),
        ("Can you stop in 1,200 m?", False),
        ("Do you stop straight ahead?", False),
        ("Does the horn sound with the lamp lost?", False),
        ("Is the horn not affected?", False),
        ("Does CABIN LOST show?", False),
        ("Is CABIN LOST amber?", False),
        ("May you take off with it?", False),
    ],
)
def test_a_loss_is_asked_for_by_what_is_said_of_the_thing(question: str, asked: bool) -> None:
    assert asks_loss(question) is asked


def test_a_factor_may_be_said_without_what_it_multiplies(marker: Marker) -> None:
    question, steps = "ANTI-SKID LOST: what is the procedure?", "anti skid off, no autobrake, 800 psi at most"
    assert marker.mark(question, f"{steps}, factor 1.6").mark == RIGHT
    assert marker.mark(question, f"{steps}, factor 1.5").mark == WRONG
    assert marker.mark(question, steps).mark not in (RIGHT, WRONG)
