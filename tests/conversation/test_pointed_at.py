"""What a turn points at, numbers or counts is looked for in what was told, and never answered by the same again."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, CLARIFY, Answer

Talk = Callable[..., list[Answer]]

_ENERGY = "how much energy into each brake, RTO from 120 kt at 50 t"
_ORDER = "10 kt: captain's tiller 20 right, mine 30 right. order?"


@pytest.mark.parametrize(
    "turns",
    [
        ("delay of FIRM", "deceleration of STEADY", "and the strongest one", r"^3\.2"),
        ("which setting for a wet runway", "what decel does that one give", r"^2\.3"),
        ("system 2 lost, do I keep autobrake", "and the other one goes too", "EMERGENCY"),
        ("lost system one, do i keep anti-skid", "number two has just failed as well, mode?", "^EMERGENCY"),
        ("lost a hydraulic system, do I keep autobrake", "system 1", "sorry, I meant 2", "^No autobrake"),
        (_ENERGY, "two are dead", r"^47\.6"),
        (_ENERGY, "only three left", "what temperature rise is that", "^509"),
        (_ENERGY, "why do they fade?", "and from 100 kt", r"^16\.5"),
        (_ORDER, "mine to the left instead", r"^10\.0°, left"),
        (_ORDER, "captain's the other way", "plus full right pedal", r"^18\.0°, right"),
        ("stopping distance from 120 kt with STEADY", "on FULL instead", "^660"),
        ("what's the factor without anti-skid", "so 1,500 metres becomes", "^2,400 m"),
        ("what does the flashing white lamp mean", "and then it goes dark", "up and locked"),
        ("what caption shows when the autobrake disarms", "is it in green?", "amber"),
        ("what's the factor without anti-skid", "where's that number written", "ABN 32.6"),
        ("stopping distance from 125 kt with FIRM", "where are those delays from", "AOM 32.44.4"),
        ("stopping distance from 125 kt with FIRM", "where does that deceleration come from", "AOM 32.44.4"),
        ("autobrake for a wet runway", "is that a limitation", "SOP B.4"),
        ("with the bypass pin in does the tiller steer", "and without it", "and with it", "castor"),
        ("brake fan time constant", "without", "^45 min"),
        ("energy of a 50 tonne aeroplane at 120 knots", "so how much into each brake in an RTO", r"^23\.8 MJ"),
        ("top speed with the wheels out", "as a mach number?", "and for getting them out", "^230 kt"),
        ("accumulator minimum to park", "didn't that use to be lower", "1,800 psi"),
        ("tiller limit at 30 kt", "and at a standstill", "^68"),
        ("steering order 12 kt, captain 30 left, FO 10 right", "and half right pedal", r"^16\.0°, left"),
        ("what decel will FIRM give me", "how far from 125", "^1,030 m"),
        ("lost both hydraulics, does the parking brake hold", "with the accumulator flat?", "does not hold"),
        ("minimum accumulator pressure for a tow", "at 1,700 does it still brake", "still brakes"),
        ("free-fall drill", "can I put it back up", "by maintenance"),
        ("GEAR MISMATCH on extension, what do I do", "slowed down, lever up", "^Wait 15 s"),
        ("turnaround of 40 minutes, what do I brief", "50", "^Within"),
        ("STEADY autobrake delay", "FIRM's", "and the last one", "^1 s"),
        ("how many brakes", "wheels", "^Six wheels"),
        ("ANTI-SKID LOST, what do I do", "factor", "1,450 becomes", "^2,320 m"),
    ],
    ids=lambda turns: turns[-2],
)
def test_what_was_told_is_looked_at_first(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, pattern = turns
    answer = talk(*said)[-1]
    assert answer.outcome == ANSWER
    assert re.search(pattern, answer.text)


def test_one_word_in_the_place_of_its_like_may_be_asked_back(talk: Talk) -> None:
    assert talk("autobrake for a contaminated runway", "dry?")[-1].outcome == CLARIFY


def test_what_was_not_taken_in_is_asked_back(talk: Talk) -> None:
    answers = talk("at 10 kt captain 20 right, first officer 30 right, total order?", "mine to the left")
    assert [answer.outcome for answer in answers] == [ANSWER, CLARIFY]


def test_what_is_said_of_one_system_is_not_told_of_both(talk: Talk) -> None:
    assert "works normally" not in talk("both hydraulic systems are gone", "gear")[-1].text


@pytest.mark.parametrize(
    ("first", "turn", "begins"),
    [
        ("can I steer with the bypass pin in", "who puts it in", "The ground crew inserts"),
        ("does the steering work with the bypass pin inserted", "who takes it out", "The ground crew inserts"),
        ("steering with the bypass pin inserted", "where is that pin", "The steering bypass pin goes in"),
        ("braking with ANTI-SKID OFF", "what is that switch for", "Putting ANTI-SKID to OFF forces"),
    ],
)
def test_what_is_asked_of_the_thing_whose_state_was_given(talk: Talk, first: str, turn: str, begins: str) -> None:
    assert talk(first, turn)[-1].text.startswith(begins)


def test_what_is_not_known_of_that_switch_is_told_of_no_other(talk: Talk) -> None:
    assert talk("braking with ANTI-SKID OFF", "where is that switch")[-1].outcome == "decline"
