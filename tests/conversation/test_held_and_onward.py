"""Amounts held against what was calculated, and other calculations on the same that was given."""

from __future__ import annotations

import pytest

from assistant.conversation.context import Context
from assistant.conversation.turn import answer_turn
from assistant.resolving.knowing import Knowledge

_TARMAC = "How wide a strip do I need to turn round at 60 degrees of steering?"
_COOLING = "how long from 400 to 200 with 20 outside, fans off, brake cooling"
_ENERGY = "kinetic energy of 48 tonnes at 130 knots"


def _value(turns: list[str], knowledge: Knowledge) -> tuple[float, str]:
    context = Context()
    for turn in turns:
        answer, context = answer_turn(turn, context, knowledge)
    assert answer.outcome == "answer", answer.text
    return answer.values[0].value, answer.text


@pytest.mark.parametrize("turn, opens", [
    ("so 30 m is enough?", "No, 30 m is not enough"),
    ("would 35 metres of tarmac do", "Yes, 35 m is enough"),
    ("we've 28 m available, ok?", "No, 28 m is not enough"),
])  # fmt: skip
def test_a_width_is_held_against_the_one_at_the_angle_given(turn: str, opens: str, knowledge: Knowledge) -> None:
    value, text = _value([_TARMAC, turn], knowledge)
    assert value == pytest.approx(31.96, abs=0.01)
    assert text.startswith(opens)


@pytest.mark.parametrize("turn", ["on the L", "what about the 120L", "L figures?", "if we swap to the L"])
def test_a_variant_switches_no_fans_on(turn: str, knowledge: Knowledge) -> None:
    assert _value([_COOLING, turn], knowledge)[0] == pytest.approx(33.6, abs=0.1)


@pytest.mark.parametrize("turn, value", [
    ("landing with full reverse, how much of that into each brake", 17.44),
    ("rejected take-off, each brake's bit of that?", 26.84),
    ("so what does one brake take of it, landing no reverse", 24.15),
    ("and the temperature rise in an rto", 430.06),
])  # fmt: skip
def test_another_calculation_takes_what_the_last_was_given(turn: str, value: float, knowledge: Knowledge) -> None:
    assert _value([_ENERGY, turn], knowledge)[0] == pytest.approx(value, abs=0.01)


@pytest.mark.parametrize("turn", ["change it to 110 knots", "would 110 change much", "swap that for 110 kt", "fans?"])
def test_words_that_carry_a_change_name_nothing(turn: str, knowledge: Knowledge) -> None:
    turns = [_COOLING, turn] if turn == "fans?" else [_ENERGY, turn]
    assert _value(turns, knowledge)[0] == pytest.approx(8.97 if turn == "fans?" else 76.86, abs=0.01)


@pytest.mark.parametrize("turn, value, side", [
    ("no wait his fifteen was to the right", 25.0, "left"),
    ("sorry it's the forty that was right", 25.0, "right"),
    ("both full left", 68.0, "left"),
])  # fmt: skip
def test_an_order_of_a_sum_is_meant_by_its_figure(turn: str, value: float, side: str, knowledge: Knowledge) -> None:
    first = "captain forty left first officer fifteen left at twelve knots pedals neutral what do the wheels get"
    given, text = _value([first, turn], knowledge)
    assert given == pytest.approx(value, abs=0.01)
    assert side in text[:30]


def test_an_order_is_no_speed(knowledge: Knowledge) -> None:
    first = "tiller 40 right and full right pedal, what's the total order?"
    assert answer_turn(first, Context(), knowledge)[0].outcome == "clarify"
    assert _value([first, "thirty knots"], knowledge)[0] == pytest.approx(48.0)


def test_a_steering_limit_is_of_the_tiller_or_of_the_pedals(knowledge: Knowledge) -> None:
    first = "what's the steering limit at 60 knots"
    assert answer_turn(first, Context(), knowledge)[0].outcome == "clarify"
    assert _value([first, "the tiller"], knowledge)[0] == pytest.approx(13.3, abs=0.1)


@pytest.mark.parametrize("turns, value", [
    (["hydroplaning speed main tyres", "at 170 psi", "and the 120L at its book pressure"], 128.86),
    (["brake cooling time constant, fans off", "with fans?"], 12.0),
    (["do the brake fans work in the air", "cooling time constant with them going?", "without"], 45.0),
    ([_COOLING.replace("to 200", "to the take-off limit"), "on the L", "and the limit on that one?"], 230.0),
    (["landing distance factor with no anti-skid", "so 1,250 metres turns into"], 2000.0),
])  # fmt: skip
def test_a_figure_beside_the_one_told(turns: list[str], value: float, knowledge: Knowledge) -> None:
    assert _value(turns, knowledge)[0] == pytest.approx(value, abs=0.01)


@pytest.mark.parametrize("turn", ["sorry, the coolest is 105", "coolest's gone to 105", "the cold one is 105 actually"])
def test_one_of_two_readings_is_no_difference(turn: str, knowledge: Knowledge) -> None:
    value, text = _value(["hottest brake 235, coolest 130. Happy to go?", turn], knowledge)
    assert value == pytest.approx(130.0)
    assert text.startswith("Outside SOP B.6")


@pytest.mark.parametrize("turn", ["on the L", "what about the long one", "L?"])
def test_a_verdict_of_a_later_turn_is_given_for_a_variant(turn: str, knowledge: Knowledge) -> None:
    _, text = _value(["maximum landing mass", "we're at 52 tonnes", turn], knowledge)
    assert text.startswith("Within")


def test_what_is_held_against_a_result_may_be_changed(knowledge: Knowledge) -> None:
    turns = ["landing distance 1,450 normally, no anti-skid", "2,200 m available, ok?", "2,500?"]
    assert _value(turns, knowledge)[1].startswith("Yes, 2,500 m is enough")
    assert _value([*turns, "and if it was 1,600"], knowledge)[0] == pytest.approx(2560.0)


def test_what_was_judged_may_be_calculated_anew(knowledge: Knowledge) -> None:
    first = "tyre ground speed at 150 kt, 5,000 ft, 25 degrees, 10 kt tailwind"
    value, _ = _value([first, "is that within limits", "20 kt headwind"], knowledge)
    assert value == pytest.approx(147.1, abs=0.1)
