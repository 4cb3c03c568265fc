"""What a text says of all sources of pressure where one is said to be all that is left."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.conversation.reading_turns.readings import question_of


def _states(text: str, knowledge: Knowledge) -> dict[str, str]:
    return {c.input: c.value for c in question_of(text, knowledge, "").conditions}


@pytest.mark.parametrize(
    "text",
    [
        "only the accumulator is feeding the brakes, bars?",
        "we're down to the accumulator, can I lower the gear",
        "the accu is the only thing still giving pressure",
        "nothing left but the accumulator. mode?",
        "all we've got is the accumulator",
    ],
)
def test_the_accumulator_alone_is_left_where_both_systems_have_failed(knowledge: Knowledge, text: str) -> None:
    assert _states(text, knowledge) == {"accumulator": "charged", "system_1": "lost", "system_2": "lost"}


@pytest.mark.parametrize("text", ["we only have hyd 1 left", "hyd 1 is all that's left", "left with just system one"])
def test_of_two_systems_the_other_one_has_failed(knowledge: Knowledge, text: str) -> None:
    assert _states(text, knowledge) == {"system_1": "normal", "system_2": "lost"}


@pytest.mark.parametrize(
    ("text", "states"),
    [
        ("only system 2 has failed", {"system_2": "lost"}),
        ("we've just lost system 1", {"system_1": "lost"}),
        ("what leaves me with only the accumulator", {}),
        ("what colour are the bars with only system one gone", {"system_1": "lost"}),
    ],
)
def test_what_has_failed_or_is_sought_is_not_left(knowledge: Knowledge, text: str, states: dict[str, str]) -> None:
    assert _states(text, knowledge) == states
