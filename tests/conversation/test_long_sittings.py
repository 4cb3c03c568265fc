"""Long sittings: side questions, readings held against one thing after another, and what is well again."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, CLARIFY, Answer

Talk = Callable[..., list[Answer]]
_COOLING = "brake at 430, how long to cool to 250, 10 outside, no fans"
_ENERGY = "landing at 47 tonnes, 125 kt, idle reverse, energy into each brake"


@pytest.mark.parametrize(
    "turns",
    [
        (_COOLING, "at what temperature do the plugs melt", "and with fans", r"^\d.*with fans: time for a brake to"),
        (_COOLING, "when does BRAKE HEAT come on", "with the fans on?", "with fans: time for a brake to cool"),
        (_COOLING, "what is the time constant", "with fans on?", "^12 min"),
        (_ENERGY, "what is the specific heat of the brakes", "with full reverse", "full reverse: energy"),
        (_ENERGY, "what share is that with idle", "with full reverse", r"^0\.65"),
        ("accumulator reads 1650", "and park?", "^Outside LIM 3.2: 1,650"),
        ("accumulator reads 1650", "can we be pushed with it", "^Outside AOM 32.55.3: 1,650"),
        ("accumulator at 2100", "and for parking?", "can I tow with it", "^Within AOM 32.55.3: 2,100"),
        ("is 2000 psi enough to rely on the park brake", "1990?", "for a push too", "^Outside AOM 32.55.3: 1,990"),
        ("is 370 ok to set the parking brake for an hour", "and take-off?", "^Outside LIM 3.2: 370"),
        ("can I lower the gear at 225 kt", "we're up at 20,500 feet though", "^Outside LIM 3.1: 20,500 ft"),
        ("can I lower the gear at 225 kt", "at 20,500 feet", "and 236 then", "^Outside LIM 3.1: 236 kt"),
        ("free fall at 170 kt ok", "at 21,500 ft", "^Outside LIM 3.1: 21,500 ft"),
        ("VLE at 21000 ft", "may I lower the gear at 21000 ft", "^Outside LIM 3.1: 21,000 ft"),
        ("landing distance factor without anti-skid", "1400 then", "^2,240 m"),
        ("landing distance factor without anti-skid", "so 1100", "^1,760 m"),
        ("STEER LOST, steps?", "it's back again", "^If STEER LOST comes back, switch OFF"),
        ("STEER LOST, steps?", "the light is on again", "^If STEER LOST comes back, switch OFF"),
        ("ANTI-SKID LOST, steps?", "landing distance 1500 becomes", "since when is it that", "formerly 1.5"),
        ("tiller limit at 50", "pedals at 50", "both", r"^26\.0°"),
        ("pedals at 12 kt", "tiller at 12 kt", "and both together", r"^68\.0°"),
        ("is 55 tonnes too heavy?", "for landing", "^Outside LIM 3.1: 55 t"),
    ],
    ids="/".join,
)
def test_a_turn_goes_on_from_what_was_worked_out_or_judged(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, pattern = turns
    answer = talk(*said)[-1]
    assert answer.outcome == ANSWER
    assert re.search(pattern, answer.text), answer.text


@pytest.mark.parametrize(
    "turns",
    [
        ("both systems lost, braking?", "hydraulics are fine again", "braking?", "^NORMAL braking"),
        ("system 2 lost", "the hydraulics are back", "autobrake?", "^Autobrake works"),
        ("system 1 lost and brake controller failed, braking?", "hydraulics are ok again", "^ALTERNATE.*No anti-skid"),
        ("airborne, does the tiller work", "we have landed", "does the tiller work", "^The tillers and the pedals"),
        ("system 1 lost", "it was only a drill, all normal", "what steering do I have", "^The tillers and the pedals"),
        ("system 1 lost", "only a test, nothing failed", "steering?", "^The tillers and the pedals"),
        ("system 2 lost, braking?", "are the hydraulics back?", "braking?", "^ALTERNATE braking"),
    ],
    ids="/".join,
)
def test_what_had_failed_is_well_again(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, pattern = turns
    assert re.search(pattern, talk(*said)[-1].text), talk(*said)[-1].text


@pytest.mark.parametrize(
    ("told", "turn", "other"),
    [
        ("when are chocks asked for", "how hot for take off", "^250"),
        ("STEER LOST, steps?", "park brake when", "^(?!Taxi by differential)"),
        ("system 1 lost", "only a test, nothing failed", "^(?!.*by free fall)"),
    ],
)
def test_a_word_within_a_longer_name_is_not_what_was_told(talk: Talk, told: str, turn: str, other: str) -> None:
    assert re.search(other, talk(told, turn)[-1].text)


@pytest.mark.parametrize(
    ("question", "offered"),
    [
        ("how long does the gear take?", ("extension", "retraction", "free-fall")),
        ("how many seconds for the gear", ("extension", "retraction")),
        ("what's the steering limit?", ("tiller", "pedal")),
        ("is 54 tonnes too heavy?", ("take-off", "landing")),
        ("is 52000 kg allowed", ("take-off", "landing")),
        ("max mass", ("take-off", "landing")),
    ],
)
def test_a_question_that_fits_sister_figures_alike_asks_back(
    talk: Talk, question: str, offered: tuple[str, ...]
) -> None:
    answer = talk(question)[-1]
    assert answer.outcome == CLARIFY
    assert all(each in answer.text for each in offered), answer.text


@pytest.mark.parametrize(
    ("question", "pattern"),
    [
        ("what's the retraction time", "^11 s"),
        ("is 45 tonnes too heavy?", "^Within"),
        ("how long does the gear take to come down", "^9 s"),
        ("how far may the tiller steer", "^68"),
        ("can the gear lever be put up while parked", "blocks the gear lever"),
        ("can I retract with the bypass pin in", "^Still so, not affected by the bypass pin inserted"),
        ("can I extend with the steer switch off", "^Still so, not affected by the STEER switch OFF"),
        ("can I retract with system 1 lost", "^The gear cannot be retracted"),
    ],
)
def test_what_says_its_case_or_has_no_sister_is_answered(talk: Talk, question: str, pattern: str) -> None:
    answer = talk(question)[-1]
    assert answer.outcome == ANSWER
    assert re.search(pattern, answer.text), answer.text


@pytest.mark.parametrize(
    "turns",
    [
        ("captain tiller 25 left and FO tiller 5 right", "the FO lets go", "at 12 kt", r"^25\.0°, left"),
        ("captain tiller 30 right, FO tiller 12 right, 9 kt", "what if the captain lets go", r"^12\.0°, right"),
        ("left tiller 30 right, right tiller 10 left, 10 kt", "other tiller let go", "^Do you mean: total steering"),
        ("can I taxi at 27 knots?", "11 in a turn of 75", "^Outside SOP B.2: 11 kt"),
        ("can I taxi at 27 knots?", "14 in a turn of 30", "^Within SOP B.2: 14 kt"),
    ],
    ids="/".join,
)
def test_who_lets_go_and_how_sharp_a_turn_is(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, pattern = turns
    assert re.search(pattern, talk(*said)[-1].text), talk(*said)[-1].text


@pytest.mark.parametrize(
    "turns",
    [
        ("brake temperature maximum for take-off", "and to set the parking brake for over 5 min?", "^400"),
        ("max taxi speed straight", "and for a turn of more than 60 degrees", "^10 kt"),
        ("tyre speed limit", "is that ground speed", "^195 kt ground speed"),
        ("VLE", "is that a ground speed", "^Not a ground speed"),
        ("system 1 lost, what steering", "STEER LOST what do", "^STEER LOST: 1"),
        ("do we get STEER LOST when system 2 goes", "^(?!The nose wheels castor)"),
        ("do we get STEER LOST when system one goes", "^STEER LOST does not show for a lost System 1"),
        ("would we get ANTI-SKID LOST with system 2 lost", "^No: ANTI-SKID LOST does not show"),
        ("BRAKE HEAT in flight", "it's back again", "^(?!Then up)"),
    ],
    ids="/".join,
)
def test_what_is_meant_beside_what_was_told(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, pattern = turns
    assert re.search(pattern, talk(*said)[-1].text), talk(*said)[-1].text


@pytest.mark.parametrize(
    "turns",
    [
        ("tow at 88 degrees", "why not", "^The reason is not stated"),
        ("tow with accumulator at 1850", "why not", "^There would be no reserve brake"),
        ("autobrake for a contaminated runway", "how long till that one starts", "and the deceleration", r"^3\.2 m/s"),
        ("free fall lever pulled, brakes affected?", "steering", "^Nose-wheel steering is lost"),
        ("free fall lever pulled, brakes affected?", "steering", "why", "^Because the same valve"),
        ("when does GEAR MISMATCH show", "it's on, the legs are coming down, what's the drill", "^GEAR MISMATCH on e"),
    ],
    ids="/".join,
)
def test_a_reason_is_of_what_was_told(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, pattern = turns
    assert re.search(pattern, talk(*said)[-1].text), talk(*said)[-1].text
