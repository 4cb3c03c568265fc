"""Amounts named as bounds, in many words; what is denied to pass an amount may be as much as that."""

from __future__ import annotations

import pytest

from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn
from assistant.understanding.bounds_said import bound_side


@pytest.mark.parametrize(("words", "side"), [
    ("below 2000", -1), ("lower than 2000", -1), ("slower than 190", -1), ("cooler than 250", -1), ("< 60", -1),
    ("lighter than 50", -1), ("more than 60", 1), ("faster than 60", 1), ("hotter then 250", 1), ("past the 60", 1),
    ("not over 230", 0), ("no more than 205", 0), ("never below 2000", 0), ("not lower than 60", 0), ("at 230", 0),
    ("why not above 60", 1), ("and then 60", 0),
])  # fmt: skip
def test_the_side_of_an_amount(words: str, side: int) -> None:
    said = words.split()

    assert bound_side(said, len(said) - 1) == side


@pytest.mark.parametrize(("asked", "begins"), [
    ("accumulator lower than 2000 psi may i rely on the parking brake", "Outside LIM 3.2"),
    ("lower than 2000 accu can we push", "Outside AOM 32.55.3"), ("chrome lower than 60 on the main", "Outside"),
    ("chrome smaller than 90 on the nose strut", "Outside"), ("freefall slower than 190 ok", "Within LIM 3.1"),
    ("brakes cooler than 250 ok for take off", "Within LIM 3.2"), ("lighter than 50 tonnes landing ok", "Within"),
    ("not over 230 for extending ok?", "Within LIM 3.1"), ("no more than 205 retract", "Within LIM 3.1"),
    ("extending faster than 230", "Outside LIM 3.1"), ("extend at too three five", "Outside LIM 3.1: 235 kt"),
    ("retract at two hundred and ate", "Outside LIM 3.1: 208 kt"), ("brakes at too sixty can i go", "Outside LIM 3.2"),
    ("how long fans off b4 reading", "2 min"), ("brake heat gnd", "BRAKE HEAT on the ground"),
    ("whats the max speed w gear dn", "255 kt"), ("how hi can i drop the gear", "20,000 ft"),
])  # fmt: skip
def test_a_bound_is_held_on_its_side(knowledge: Knowledge, asked: str, begins: str) -> None:
    assert answer_turn(asked, Context(), knowledge)[0].text.startswith(begins)


def test_a_system_below_its_pressure_is_lost(knowledge: Knowledge) -> None:
    answer = answer_turn("pressure is lower than 1500 in system 1", Context(), knowledge)[0]

    assert "System 1 lost" in answer.text


@pytest.mark.parametrize(("asked", "begins"), [
    ("tiller gives sixty eight at thirty knots", "47.4°"), ("pedals give six at forty knots", "7.0°"),
    ("tiller 60 at 30 kt ok", "47.4°"), ("is 68 the tiller max", "Yes"),
])  # fmt: skip
def test_what_a_control_gives_at_a_speed_is_read_there(knowledge: Knowledge, asked: str, begins: str) -> None:
    assert answer_turn(asked, Context(), knowledge)[0].text.startswith(begins)
