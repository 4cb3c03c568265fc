"""A turn after a schedule, a calculation or a sum of orders that gives another figure, or asks for it otherwise."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Talk = Callable[..., list[Answer]]

_BOTH = "both tillers 25 left at 12 kt, total order?"
_SEATS = "captain 30 right, first officer 12 left, 14 knots, total order?"
_ENERGY = "energy into each brake, RTO at 55 tonnes from 125 kt"


@pytest.mark.parametrize(
    "turns",
    [
        ("tiller limit at 30 kt", "so where does it drop to 20 degrees", "^At 50 kt"),
        ("pedal limit at 60 kt", "and which speed gives me 7 degrees", "^At 40 kt"),
        ("at what speed is the pedal limit 5 degrees", "what has the tiller got at that speed", r"^13\.3°"),
        ("pedal limit at 50 kt", "20 knots slower", r"^8\.0°"),
        ("pedal limit at 35 kt", "and at twice the speed", r"^4\.0°"),
        ("pedal limit at 30 kt", "no, 70", r"^4\.0°"),
        (_ENERGY, "no, 50 tonnes", r"^25\.8 MJ, rejected take-off"),
        (_ENERGY, "and 50,000", r"^25\.8 MJ, rejected take-off"),
        (_ENERGY, "5 tonnes lighter", r"^25\.8 MJ, rejected take-off"),
        ("Mach number of 240 knots at 22,000 feet", "and at 220", r"^Mach 0\.50"),
        (_BOTH, "make it 70 knots", r"^6\.7°, left"),
        (_BOTH, "one of them 25 right", r"^0\.0°, straight"),
        (_SEATS, "add full left pedal", r"^10\.0°, right"),
        (_SEATS, "first officer 30 left", "and 20 right instead", r"^50\.0°, right"),
        (_SEATS, "full right pedal on top of that", "on the long body", r"^26\.0°, right"),
    ],
    ids=lambda turns: turns[-2],
)
def test_another_figure_is_laid_into_what_was_told(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, pattern = turns
    answer = talk(*said)[-1]
    assert answer.outcome == ANSWER
    assert re.search(pattern, answer.text), answer.text


@pytest.mark.parametrize(
    "turns",
    [
        ("top speed for free-fall", "195 then?", "^Outside LIM 3.1: 195 kt is 5 kt above the limit, 190 kt"),
        ("maximum altitude for extending the gear", "and 18 and a half", "^Within LIM 3.1"),
        ("maximum landing mass", "51.5", "49 i meant", "^Within LIM 3.1"),
        ("slush depth limit", "is 11 mm ok", "how much margin is that", "2 mm below the limit"),
        ("maximum speed for extending the gear", "240?", "what was the limit", "^230 kt"),
        ("brakes at 90, RTO at 52 tonnes from 100 knots, how hot do they get", "can i take off with that", "^Outside"),
        ("brakes at 90, RTO at 52 tonnes from 100 knots, how hot do they get", "does BRAKE HEAT come on", "350"),
        ("VLE in knots at 26,000 ft", "and may I lower it up there", "^Outside LIM 3.1: 26,000 ft"),
        ("VLE in knots at 19,000 ft", "can the gear go down that high", "^Within LIM 3.1: 19,000 ft"),
    ],
    ids=lambda turns: turns[-2],
)
def test_a_verdict_is_given_on_what_was_told(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, pattern = turns
    answer = talk(*said)[-1]
    assert answer.outcome == ANSWER
    assert re.search(pattern, answer.text), answer.text


@pytest.mark.parametrize(
    "turns",
    [
        ("VLE in knots at 26,000", "thirty-two", r"^2\d\d kt: VLE at an altitude"),
        ("accumulator pre-charge", "at minus 10", r"^1,0\d\d psi"),
        ("hydroplaning speed on the mains", "they're down to 175", "^119 kt"),
        ("nose strut chrome limits", "it reads 80", "^Outside AOM 32.05.3"),
        ("gear lowered at 236 knots, what now", "which document", "what was the limit", "^230 kt"),
    ],
    ids=lambda turns: turns[-2],
)
def test_a_bare_number_is_of_what_it_can_be(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, pattern = turns
    answer = talk(*said)[-1]
    assert answer.outcome == ANSWER
    assert re.search(pattern, answer.text), answer.text
