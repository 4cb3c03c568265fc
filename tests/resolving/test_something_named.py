"""Words that ask, and one ordinary word, name nothing: what has them too by chance is not told."""

from __future__ import annotations

import pytest

from assistant.answering.answer import ANSWER
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn


@pytest.mark.parametrize("asked", [
    "when do we leave tomorrow", "what time does the crew leave", "what time do we stay", "who meets us",
    "do you leave at all", "what time are we there",
])  # fmt: skip
def test_what_names_nothing_is_not_answered(knowledge: Knowledge, asked: str) -> None:
    assert answer_turn(asked, Context(), knowledge)[0].outcome != ANSWER


@pytest.mark.parametrize(("asked", "entry"), [
    ("what is the airplane design group based on", "fillet-groups"), ("who taxies", "who-taxies"),
    ("when are chocks used", "chocks-policy"),
    ("parking", "parking"),
])  # fmt: skip
def test_what_names_a_thing_is(knowledge: Knowledge, asked: str, entry: str) -> None:
    answer = answer_turn(asked, Context(), knowledge)[0]

    assert answer.outcome == ANSWER
    assert answer.entry == entry


@pytest.mark.parametrize("asked", [
    "gear going down, one left amber and GEAR MISMATCH shows, what's the drill",
    "one leg left amber with gear mismatch, what now", "one lamp left dark, what do I do",
])  # fmt: skip
def test_one_left_counts_nothing_used(knowledge: Knowledge, asked: str) -> None:
    assert answer_turn(asked, Context(), knowledge)[0].entry != "applications-left"
