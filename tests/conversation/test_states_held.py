"""How long a state holds: what stands by itself is told plainly, what is only supposed ends, and all is well again."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer
from assistant.conversation.control_words.all_well import plain_words, situation_new, well_again

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("told", "asked", "answer"),
    [
        ("both hydraulic systems have failed", "what are the autobrake settings", "^Autobrake settings"),
        ("we lost the brake controller", "what disarms autobrake", "^Autobrake disarms"),
        ("system 1 is gone", "max tiller angle", r"^68°"),
        ("free-fall lever pulled", "pedal steering maximum", r"^8°"),
        ("steering controller failed", "what does TOW PIN mean", "^TOW PIN"),
        ("bypass pin inserted", "taxi speeds", "^Taxi no faster"),
        ("STEER switch off", "tiller limit at 20 knots", r"^61\.1°"),
        ("system 2 out", "what is alternate mode", "^ALTERNATE runs on System 1"),
        ("system 2 out", "when does anti-skid stop working", "^12 kt"),
        ("system 2 out", "RESERVE BRAKE memo", "^The RESERVE BRAKE memo shows"),
    ],
)
def test_what_stands_by_itself_is_told_plainly(talk: Talk, told: str, asked: str, answer: str) -> None:
    assert re.search(answer, talk(told, asked)[-1].text)


@pytest.mark.parametrize(
    ("told", "asked", "answer"),
    [
        ("system two lost", "so will rto work", "^No autobrake"),
        ("hyd 2 out", "is rto available", "^No autobrake"),
        ("system 2 lost", "what colour are the bars", "bars are amber"),
        ("system 1 lost", "can i steer", "castor"),
        ("system 1 lost", "how do i get the gear down", "free fall"),
        ("brake controller failed", "which autobrake setting for landing", "^No autobrake"),
    ],
)
def test_what_works_now_is_told_under_the_states(talk: Talk, told: str, asked: str, answer: str) -> None:
    assert re.search(answer, talk(told, "what is the wheelbase", asked)[-1].text)


@pytest.mark.parametrize(
    ("told", "well", "asked", "answer"),
    [
        ("sys 1 lost and accumulator empty", "everything normal again", "parking brake?", "^The parking brake holds"),
        ("sys 1 lost", "thats fixed", "can i steer", "^The tillers and the pedals steer"),
        ("sys 1 lost", "back to normal", "can i steer", "^The tillers and the pedals steer"),
        ("sys 2 lost", "all ok now", "autobrake?", "^Autobrake works"),
        ("sys 2 lost", "engineers have sorted it", "autobrake?", "^Autobrake works"),
        ("sys 2 lost", "no more faults", "autobrake?", "^Autobrake works"),
        ("brake controller failed", "we're all good again", "autobrake?", "^Autobrake works"),
    ],
)
def test_all_is_well_again(talk: Talk, told: str, well: str, asked: str, answer: str) -> None:
    answers = talk(told, well, asked)
    assert answers[1].outcome == ANSWER and re.search(answer, answers[-1].text)


def test_only_the_last_failure_is_mended_by_pointing_at_it(talk: Talk) -> None:
    told = talk("sys 1 lost", "and the accumulator is empty", "it's fixed", "can i steer")
    assert "parking brake holds" in told[2].text and "castor" in told[3].text


def test_a_new_flight_forgets_the_states(talk: Talk) -> None:
    told = talk("sys 1 lost", "okay forget it, new flight", "what colour are the bars in alternate")
    assert "lost" not in told[-1].text


def test_a_line_tells_what_is_held_where_nothing_of_it_is_left(talk: Talk) -> None:
    assert talk("system 2 lost", "autobrake settings")[-1].text.endswith("Still held: System 2 lost. No autobrake.")
    assert "Still held" not in talk("system 2 lost", "main tyre pressure")[-1].text
    assert "Still held" not in talk("what if system 2 is lost", "autobrake settings")[-1].text


def test_a_state_that_is_the_normal_one_mends_nothing_else(talk: Talk) -> None:
    assert talk("system 2 lost", "pressure of a full accumulator", "autobrake?")[-1].text.startswith("No autobrake")


@pytest.mark.parametrize(
    ("told", "asked"),
    [("both hydraulics gone", "tyre deflated 6 percent what to do"), ("pedal button held", "steering maximum")],
)
def test_what_no_state_answers_is_not_answered_by_them(talk: Talk, told: str, asked: str) -> None:
    assert "everything not named" not in talk(told, asked)[-1].text


def test_what_is_only_asked_takes_no_place_of_what_was_told(talk: Talk) -> None:
    turns = ("sys 1 lost", "does the parking brake hold if the accumulator is empty", "wheelbase", "can i steer")
    assert "castor" in talk(*turns)[-1].text


def test_an_amount_is_no_next_mode(talk: Talk) -> None:
    assert "EMERGENCY" not in talk("sys 2 gone", "and now antiskid off", "1300 then")[-1].text


def test_what_was_only_supposed_ends_when_other_things_are_asked(talk: Talk) -> None:
    turns = ("is the nose leg centred in flight", "wheelbase", "main tyre pressure", "do the pedals steer")
    assert talk(*turns)[-1].text.startswith("The pedals steer")
    turns = ("we have lost system 1", "wheelbase", "main tyre pressure", "do the pedals steer")
    assert talk(*turns)[-1].text.startswith("The pedals do not steer")


def test_a_word_with_another_sense_undoes_no_repair(talk: Talk) -> None:
    assert "steer" in talk("sys 1 lost", "sys 1 back", "autobrake", "dry", "is there steering")[-1].text
    assert "lost" not in talk("sys 1 lost", "sys 1 back", "autobrake", "dry", "is there steering")[-1].text


@pytest.mark.parametrize(
    "text",
    ["all ok now", "that's fixed", "back to normal", "everything's fine again", "problem solved", "nothing failed now",
     "both are working again", "it has been repaired", "assume no failures", "all systems are up and running"],
)  # fmt: skip
def test_says_that_all_is_well(text: str) -> None:
    assert well_again(plain_words(text))


@pytest.mark.parametrize(
    "text",
    ["is everything ok", "ok", "that's fine", "good", "ok we go again", "say that again", "is it fixed?", "not fixed",
     "it works", "autobrake ok now", "brakes working again", "that's good", "when all is normal again", "all ok?"],
)  # fmt: skip
def test_does_not_say_that_all_is_well(text: str) -> None:
    assert not well_again(plain_words(text))


@pytest.mark.parametrize(
    ("text", "new"),
    [("right, new flight", True), ("next scenario please", True), ("forget everything", True), ("reset", True),
     ("different aircraft", True), ("new tyre", False), ("reset the switch", False), ("clear of the runway", False),
     ("forget it", False), ("what is the new limit", False), ("move on", False), ("start the fans", False)],
)  # fmt: skip
def test_a_situation_begins_anew(text: str, new: bool) -> None:
    assert situation_new(plain_words(text)) is new


@pytest.mark.parametrize(("told", "supposed", "says"), [
    ("sys 1 lost", "does the parking brake hold if the accumulator is empty", "The parking brake does not hold"),
    ("we've lost system 1", "can I park with the accumulator empty", "The parking brake does not hold"),
    ("system 2 lost", "what mode if the controller fails", "System 2 lost and the brake controller failed"),
    ("sys 1 lost", "do the tillers work with the bypass pin in", "System 1 lost and the bypass pin inserted"),
])  # fmt: skip
def test_what_is_supposed_stands_beside_what_was_told(talk: Talk, told: str, supposed: str, says: str) -> None:
    assert says in talk(told, supposed)[-1].text
