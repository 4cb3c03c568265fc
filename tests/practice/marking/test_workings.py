"""Figures of somebody's own working, and signs for what the books spell out, are no contradictions."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import PARTLY, RIGHT, WRONG, Marker

WIDTH = "What is the smallest pavement width for a 180° turn at 68° of steering, with 3 m of clearance at each side?"
SUM = "One tiller orders 50° left, the other 30° right at 8 kt, pedals centred. What is the total order: size and side?"
BOTH = "Both tillers order 50° right at 8 kt, pedals centred. What is the total steering order: size and direction?"
BURST = "A tyre bursts on take-off, it seems. What do you do below 100 kt, and what at 100 kt or above?"
SHARE = (
    "Landing distance required 1,600 m, available 1,900 m, dry. Is autobrake FIRM enough under the operator's policy? "
    "Which setting, and why?"
)


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (WIDTH, "outer mains 8.43 m + nose 14.24 m + twice 3 m, so just under 29 m", RIGHT),
        (WIDTH, "outer mains 8.43 m + nose 14.24 m, so 22.7 m", WRONG),
        (SUM, "50 L minus 30 R leaves 20° L", RIGHT),
        (SUM, "50 L minus 30 R leaves 20° R", WRONG),
        (SUM, "20° L", RIGHT),
        (BOTH, "it's capped at 68°", PARTLY),
        (BURST, "under a hundred reject, from a hundred on carry on and leave the gear down", RIGHT),
        (BURST, "from 100 on reject, below it continue with the gear left down", WRONG),
        (SHARE, "no, eighty four percent is past the eighty percent mark", PARTLY),
        (SHARE, "no, FULL, because eighty four percent is past the eighty percent mark", RIGHT),
    ],
)
def test_working_is_no_contradiction(question: str, answer: str, mark: str, marker: Marker) -> None:
    marked = marker.mark(question, answer)

    assert marked.mark == mark, (marked.missing, marked.wrong)
