"""How something is known is answered by what shows it; a statement is no verdict on a number that it does not know."""

from __future__ import annotations

import pytest

from assistant.answering.answer import ANSWER, CLARIFY
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn


@pytest.mark.parametrize(("asked", "entry"), [
    ("how do I know which braking mode I'm in", "pressure-bar-colours"),
    ("how can you tell anti-skid is gone", "anti-skid-lost-meaning"),
    ("how would we know that a door has not closed", "gear-door"),
    ("how do I know the autobrake has disarmed", "autobrake-off-caption"),
    ("how will I know a leg is locked up", "indications-locked-up"),
    ("how can I tell the accumulator is empty", "brake-dial-shows"),
    ("how do you know the parking brake is set", "park-brake-set-memo"),
    ("how does one know that a leg is not locked", "gear-not-locked"),
])  # fmt: skip
def test_how_it_is_known_is_what_shows_it(knowledge: Knowledge, asked: str, entry: str) -> None:
    answer = answer_turn(asked, Context(), knowledge)[0]

    assert answer.outcome == ANSWER
    assert answer.entry == entry


@pytest.mark.parametrize("asked", ["how do I know System 1 is gone", "how can I tell that a fuse plug has melted"])
def test_what_nothing_shows_is_declined(knowledge: Knowledge, asked: str) -> None:
    assert answer_turn(asked, Context(), knowledge)[0].outcome != ANSWER


def test_a_statement_is_no_verdict(knowledge: Knowledge) -> None:
    assert answer_turn("free fall is fine at 240", Context(), knowledge)[0].outcome == CLARIFY
