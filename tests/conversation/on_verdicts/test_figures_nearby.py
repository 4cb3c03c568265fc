"""Readings held against the figure that is meant, and what is asked back for where none is given."""

import pytest

from assistant.answering.answer import CLARIFY
from assistant.conversation.context import Context
from assistant.conversation.turn import answer_turn
from assistant.resolving.knowing import Knowledge

HOT = "how long can the parking brake stay set above 400 degrees"


def ask(turns: tuple[str, ...], knowledge: Knowledge):
    context = Context()
    for turn in turns:
        answer, context = answer_turn(turn, context, knowledge)
    return answer


@pytest.mark.parametrize(
    ("turns", "holds"),
    [
        ((HOT, "at 380?"), "400 °C"),
        ((HOT, "nine minutes at 410?", "only 395 though"), "Within"),
        (("max brake temp to leave the parking brake set", "so three minutes at 430 is ok?"), "2 min below the limit"),
        (("what was the old brake temp limit for take off", "so 260?"), "Outside"),
        (("max towing angle", "who inserts the bypass pin", "so 92 degrees is ok?"), "7° above the limit"),
        (("tiller limit at 40 kt", "where's it all gone"), "80 kt"),
        (("pedal limit at 50 kt", "full until when"), "30 kt"),
        (("pedal limit at 50 kt", "do they quit altogether at ninety"), "2.0°"),
        (("max towing angle", "and what if i do"), "above 85°"),
        (("max towing angle", "and what if they need more"), "torque link disconnected"),
        (("main tyre pressure", "in the L", "is 190 ok"), "re-inflate"),
        (("does the tiller die at sixty",), "13.3°"),
    ],
)
def test_an_amount_is_held_against_the_figure_that_is_meant(turns, holds, knowledge):
    assert holds in ask(turns, knowledge).text


@pytest.mark.parametrize(
    "turns",
    [
        ("is our nose tyre pressure ok",),
        ("max towing angle", "are we good on landing mass"),
        ("max towing angle", "is ours alright"),
    ],
)
def test_a_reading_that_is_not_given_is_asked_back_for(turns, knowledge):
    answer = ask(turns, knowledge)
    assert answer.outcome == CLARIFY and answer.text.startswith("Give the ")
