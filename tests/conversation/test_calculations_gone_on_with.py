"""A calculation is gone on with by a word for a choice, another count, wind or standard, or turned round as a whole."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Talk = Callable[..., list[Answer]]

_ENERGY = "energy per brake for a rejected take-off at 135 kt and 52 t"
_TYRE = "tyre ground speed for 150 kt at 4,000 ft, ISA plus 20"
_COOLING = "how long to cool from 420 to 250 without fans, 15 outside"
_TURN = "width of pavement for a u-turn at 50 degrees of steering"
_PARKING = "how much pressure does half the parking brake lever's travel send?"
_WAIT = "how long till the brakes are cool enough for departure"
_LATER = "brake at 310, 10 outside, no fans: what will it show in 20 minutes"
_ORDERS = "captain 30 left, first officer 10 right at 10 knots"


@pytest.mark.parametrize(
    "turns",
    [
        ("brake temp after a landing at 48 t, 130 kt, from 70?", "idle", "^414 °C, landing with idle reverse"),
        (_ENERGY, "total for all four?", r"^125\.4 MJ"),
        ("brake energy at 50 t, 130 kt, idle reverse, three brakes working", "with just two of them", r"^44\.7 MJ"),
        ("temperature rise landing at 50 t 130 kt idle reverse, all four brakes working", "now only three", "^478 °C"),
        (_TYRE, "and 15 knots tailwind", "^180 kt"),
        (_TYRE, "headwind of 8", "what if it's ISA plus 10", "^154 kt"),
        (_TYRE, "10 tailwind", "headwind 10 instead", "^155 kt"),
        (_TYRE, "10 tailwind", "without the tailwind", "^165 kt"),
        ("tyre ground speed at 5,000 ft, 140 kt indicated, ISA plus 15, 10 tailwind", "^165 kt"),
        (_ORDERS, "other way round", r"^20\.0°, right"),
        ("my tiller 25 right, pedals 6 left, 15 kt. total?", "and the other way round?", r"^19\.0°, left"),
        ("total: tillers 20 and 15 right and pedals 5 right at 12 kt", "pedals left instead", r"^30\.0°, right"),
        ("total order with tiller 20 right and pedals 5 right at 45 kt", "what's the pedal limit there", r"^6\.5°"),
        ("tiller at 35 kt", "as a fraction of the maximum?", "pedals at that speed", "10 kts faster", r"^6\.5°"),
        (
            "touchdown 128 kt, 47 t, idle reverse, brakes at 60: what do they reach?", "is that over the caution",
            "and for a rejected take-off instead", "^468 °C, rejected",
        ),
        (_COOLING, "which time constant is that", "and if it's 30 outside", "^26 min without"),
        ("temperature rise landing 50 t 130 kt full reverse", "how heavy is the heat sink", "and with idle", "^358 °C"),
        (_TURN, "which of that is the margin", "is 38 m enough", "^Yes, 38 m is enough"),
        (_TURN, "what clearance is in that", "what steering would I need for 35 m", r"^54\.0°"),
        ("pavement for a 180 at 60 degrees?", "how much steering does 36 m need", "and 40 m", r"^46\.3°"),
        (_PARKING, "The whole travel?", "^2,400 psi, four"),
        (_PARKING, "The whole travel?", "with System 1 lost and only 1,700 psi in the accumulator", "^1,700 psi"),
        (_PARKING, "with the accumulator at 1,100 only", "^1,100 psi, two"),
        (_WAIT, "the hottest one says three forty", "fans off, twelve outside", "^14 min .* without fans"),
        ("how long to cool from 330 for take-off, 22 outside", "is 240 ok to go", "^Within LIM 3.2: 240 °C"),
        ("how long to cool from 330 for take-off, 22 outside", "is 240 ok to go", "on the L?", "^Outside AOM 32.01.6"),
        (_LATER, "with fans", "may I take the reading with the fans still running", "2 min"),
        ("share of the target at which ON TARGET lights?", "what deceleration is that with FULL set?", r"^2\.72 m/s²"),
        (_ORDERS, "why does the one take away from the other?", "^The two tillers' orders add with their signs"),
        ("when does RTO start braking", "levers back at 90 knots?", "^Within AOM 32.44.5: RTO braking at 90 kt"),
        ("when does the RTO setting begin", "throttles closed at 62 kt", "^Outside AOM 32.44.5: RTO braking at 62 kt"),
        ("main tyre pressure 120L", "I read 190 on it cold", "^Outside AOM 32.05.7: .* re-inflate"),
        ("is pedal steering all gone at 100 kt?", "so what have I got at a hundred", r"^1\.0° either way"),
        ("hydroplaning speed of the mains at 170 psi", "and for a tyre that is not rotating yet?", "^100 kt"),
        ("hydroplaning speed nose tyre", "by the handbook formula", "^102 kt"),
        ("decel for 1,000 m from 130 kt", "and 800", r"^2\.80 m/s²"),
        ("landing distance normally 1,650 but no anti-skid", "is that under 2,700", "^2,640 m.* less than 2,700 m"),
        ("left tiller 50 right, right tiller 40 right, 18 knots", "captain lets go", r"^40\.0°, right"),
    ],
    ids=lambda turns: turns[-2],
)  # fmt: skip
def test_what_a_turn_goes_on_with(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, pattern = turns
    answer = talk(*said)[-1]
    assert answer.outcome == ANSWER
    assert re.search(pattern, answer.text)


def test_by_how_much_is_no_amount_of_its_own(talk: Talk) -> None:
    assert "10 kt" not in talk("how does the nose leg retract?", "10 kts faster")[-1].text


def test_a_why_is_not_answered_from_elsewhere(talk: Talk) -> None:
    assert talk("stopping distance with FIRM from 130 knots", "why does STEADY need more")[-1].outcome != ANSWER


def test_a_variant_alone_asks_nothing(talk: Talk) -> None:
    assert talk("may we take off at 245", "on the L")[-1].outcome != ANSWER
