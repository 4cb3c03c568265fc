"""Whoever passes a question on has missed it: a turn of its own in all that is counted and written of a class."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from assistant.practice.keeping.rows import Seat, Turn
from assistant.practice.recall import MISSED

PASSED = "pass"
"""What stands for the answer of somebody who passed."""


def with_passes(turns: Iterable[Turn], seats: Sequence[Seat], unhinted: Mapping[int, int] = {}) -> Iterator[Turn]:
    """Yield turns in their order, each after those of whoever passed it on, which count as missed.

    unhinted: by the number of a turn, how many had passed it on before its hint was given.
    """
    known = {seat.id for seat in seats}
    for turn in turns:
        for place, seat in enumerate(turn.passed):
            if seat in known and seat != turn.seat:
                hinted = turn.hinted and place >= unhinted.get(turn.number, len(turn.passed))
                yield turn._replace(
                    seat=seat, passed=(), hinted=hinted, mark=MISSED, marked=MISSED, share=0.0, answer=PASSED,
                    overruled=False, confused_with="",
                )  # fmt: skip
        yield turn
