"""Turns that go on with failures told before: what comes next, what comes back, and other things asked in between."""

from __future__ import annotations

import pytest

from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn


@pytest.mark.parametrize(
    ("turns", "says"),
    [
        (("system 2 is out, which mode", "what comes after that"), "EMERGENCY braking"),
        (("system 2 is out, which mode", "what's next", "and after that?"), "the accumulator empty"),
        (("ANTI-SKID OFF, what mode am I in", "and if I flick it back on"), "NORMAL braking"),
        (("PEDAL button held", "I let the button go"), "The tillers and the pedals steer"),
        (("STEER LOST has come up", "max taxi speed?", "back to that failure: do the pedals steer"), "do not steer"),
        (("the accu reads 1,100 psi, does the parking brake hold", "and system 1 has gone too"), "does not hold"),
        (("hyd 1 just let go", "what's VLE", "so do the pedals steer"), "The pedals do not steer"),
        (("system 2 went south", "how would I know"), "The brake pressure bars are amber"),
        (("PEDAL button held", "system 1 just let go", "system 1 is up again"), "The tillers steer, the pedals do not"),
    ],
)
def test_what_was_told_to_have_failed_holds_on(knowledge: Knowledge, turns: tuple[str, ...], says: str) -> None:
    context = Context()
    for turn in turns:
        answer, context = answer_turn(turn, context, knowledge)
    assert says in answer.text
