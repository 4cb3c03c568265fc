"""Turns that name nothing: the other variant, how far apart figures are, what a verdict rests on, several readings."""

from __future__ import annotations

import pytest

from assistant.answering.answer import ANSWER, CLARIFY, Answer
from assistant.conversation.context import Context
from assistant.conversation.turn import answer_turn
from assistant.resolving.knowing import Knowledge


def _last(turns: list[str], knowledge: Knowledge) -> Answer:
    context = Context()
    for turn in turns:
        answer, context = answer_turn(turn, context, knowledge)
    return answer


@pytest.mark.parametrize("first, turn, value", [
    ("wheelbase of the 120L", "and the other?", 13.2),
    ("max landing mass 120L", "the normal one then", 50_000),
    ("tiller limit at 30 knots on the long one", "other body?", 47.43),
    ("main tyre pressure on the standard body", "and the long", 205),
])  # fmt: skip
def test_the_other_variant_is_named_by_no_name(first: str, turn: str, value: float, knowledge: Knowledge) -> None:
    assert _last([first, turn], knowledge).values[0].value == pytest.approx(value, abs=0.01)


@pytest.mark.parametrize("turns, shown", [
    (["wheelbase of the 120L", "how much more is that"], "2.2 m"),
    (["max speed to extend the gear", "max speed to retract the gear", "what's the difference"], "25 kt"),
    (["max landing mass", "max take-off mass", "by how much"], "6,000 kg"),
    (["time for a normal retraction", "time for a normal extension", "which is quicker and by how much"], "2 s"),
])  # fmt: skip
def test_two_figures_told_are_held_against_each_other(turns: list[str], shown: str, knowledge: Knowledge) -> None:
    assert shown in _last(turns, knowledge).text


def test_the_quicker_takes_the_less_time(knowledge: Knowledge) -> None:
    told = _last(["time for a normal retraction", "time for a normal extension", "so which is quicker"], knowledge)
    assert told.text.startswith("The smaller, by 2 s, is 9 s")


@pytest.mark.parametrize("turn, opens", [
    ("exactly at it?", "Within LIM 3.1: 230 kt is exactly at the limit"),
    ("what would be ok then", "230 kt IAS"),
    ("how much too fast is that", "Outside LIM 3.1: 240 kt is 10 kt above"),
])  # fmt: skip
def test_a_verdict_is_asked_of_its_limit(turn: str, opens: str, knowledge: Knowledge) -> None:
    assert _last(["can I lower the gear at 240 knots", turn], knowledge).text.startswith(opens)


def test_a_verdict_by_bands_says_how_far_it_is_over(knowledge: Knowledge) -> None:
    told = _last(["brakes 130 degrees apart, can we go", "by how much"], knowledge)
    assert told.text.startswith("10 °C above 120 °C")


def test_a_sum_of_orders_has_its_reason(knowledge: Knowledge) -> None:
    told = _last(["captain tiller 20 left, FO 20 right at 20 kt, what is ordered?", "why's that"], knowledge)
    assert "add with their signs" in told.text


@pytest.mark.parametrize("turn", ["found at 150 after we taxied in on it", "one was at 145 and we rolled in on it"])
def test_a_reading_that_was_run_on_is_of_the_tyre_spoken_of(turn: str, knowledge: Knowledge) -> None:
    assert "axle mate" in _last(["main tyre at 178 cold", turn], knowledge).text


@pytest.mark.parametrize("turns, opens", [
    (["brakes 110, 120, 115 and 240 at the gate, good to depart?"], "Outside SOP B.6"),
    (["max brake temperature to begin take-off", "ours are 200, 260, 210 and 220"], "Outside LIM 3.2"),
    (["temps are 100 105 95 110, ok to go?"], "Within LIM 3.2"),
])  # fmt: skip
def test_several_readings_are_judged_together(turns: list[str], opens: str, knowledge: Knowledge) -> None:
    assert _last(turns, knowledge).text.startswith(opens)


@pytest.mark.parametrize("turn", ["is that temperature okay?", "are we too heavy"])
def test_a_reading_that_was_not_given_is_asked_back_for(turn: str, knowledge: Knowledge) -> None:
    assert _last([turn], knowledge).outcome == CLARIFY


def test_a_figure_asked_for_in_full_is_another_record(knowledge: Knowledge) -> None:
    told = _last(["max speed to retract the gear", "max speed with the gear down"], knowledge)
    assert (told.outcome, told.values[0].value) == (ANSWER, 255)
