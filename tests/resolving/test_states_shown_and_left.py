"""What shows, what is left and by what means one steers under failures; and failures of what no table knows."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("the brake computer has died, which cautions come up", "ANTI-SKID LOST"),
        ("hyd two leaked dry, what do I see", "The brake pressure bars are amber"),
        ("bypass pin in, is there any message", "TOW PIN"),
        ("system 1 has quit, how do I steer", "differential braking"),
        ("STEER switch OFF, what's left to steer with", "differential braking"),
        ("the free-fall lever has been pulled, what isn't working any more", "castor"),
        ("we've got system 2 at 900 psi", "ALTERNATE braking"),
        ("ANTI-SKID switch off, what keeps working", "ALTERNATE braking"),
        ("sys 2 gone. Has the anti-skid gone", "Anti-skid works"),
        ("which failure takes the tiller but leaves normal braking", "System 1 lost"),
    ],
)
def test_what_follows_from_failures_is_told_as_it_is_asked(ask: Ask, text: str, says: str) -> None:
    assert says in ask(text).text


@pytest.mark.parametrize(
    "text",
    ["the gizmo has packed in, any parking brake?", "hyd 3 has gone, mode?", "we've lost the inverter, any autobrake?"],
)
def test_a_failure_of_what_no_table_knows_is_not_answered(ask: Ask, text: str) -> None:
    assert ask(text).outcome != "answer"
