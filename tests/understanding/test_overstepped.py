"""By how much a limit was passed is no reading; how far two readings are apart is."""

from __future__ import annotations

import pytest

from assistant.resolving.knowing import Knowledge
from assistant.understanding.overstepped import EXCEEDED


@pytest.mark.parametrize(
    "text",
    [
        "we went 8 knots over VLE",
        "overdid the gear-down speed by 5 kt",
        "the brakes were 3 degrees above the limit",
        "taxied 5 kt too fast in the turn",
        "I let the speed run six knots over the gear-down maximum",
        "she got 10 knots above the limit before I noticed",
    ],
)
def test_by_how_much_is_no_reading(knowledge: Knowledge, text: str) -> None:
    reading = knowledge.reader.read(text)

    assert reading.has(EXCEEDED)
    assert not reading.amounts


@pytest.mark.parametrize(
    "text", ["brake 3 was 110 degrees above brake 1", "may I go 8 knots over VLE", "flew at 260 kt"]
)
def test_a_difference_or_a_reading_passes_no_limit(knowledge: Knowledge, text: str) -> None:
    reading = knowledge.reader.read(text)

    assert not reading.has(EXCEEDED)
    assert reading.amounts
