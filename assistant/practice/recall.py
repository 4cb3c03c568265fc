"""How long something is remembered: the open FSRS algorithm, in our own words.

The one module that knows the `fsrs` library. A learner never rates anything: the word for an answer follows from
its mark. Chance stays out (no spread of intervals), and time is always given, so the same answers give the same card.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC, datetime, timedelta
from functools import cache
from typing import TYPE_CHECKING

from assistant.frozen import NamedTuple

if TYPE_CHECKING:
    from fsrs import Rating, Scheduler

MISSED, PROMPTED, RECALLED = "missed", "prompted", "recalled"
WORDS = (MISSED, PROMPTED, RECALLED)
RIGHT, PARTLY, WRONG = "right", "partly", "wrong"
MARKS = (RIGHT, PARTLY, WRONG, MISSED)

AIM = 0.9
"""Expected recall at which something is asked again."""
HALF = 0.5
"""Share of the points below which an answer in part counts as missed."""
_PATIENCE, _READING = 12.0, 0.35
"""Seconds to think, and to read a word of the question, before a typed answer counts as prompted."""
_AGAIN_AFTER = timedelta(minutes=10)
"""When what was missed is asked again in the same sitting."""


class Review(NamedTuple):
    """One time that a learner was asked: when (aware), and how it went, a word of WORDS."""

    at: datetime
    word: str


class Card(NamedTuple):
    """What is expected of a learner's memory of one record.

    stability: days until the expected recall falls to 90 %. difficulty: 1 (easy) to 10. state and step are the
    library's own; due and last are aware times in UTC.
    """

    stability: float
    difficulty: float
    state: int
    step: int | None
    due: datetime
    last: datetime


def need_library() -> None:
    """Raise ModuleNotFoundError where the library is not installed: better before the first answer than after it."""
    from importlib import import_module

    import_module("fsrs")


def word_for(mark: str, share: float, hinted: bool = False, hesitation: float | None = None, question: str = "") -> str:
    """Return the word for an answer: its mark decides, then a hint, then hesitation if any was measured (seconds)."""
    if mark not in (RIGHT, PARTLY) or (mark == PARTLY and share < HALF):
        return MISSED
    slow = hesitation is not None and hesitation > _PATIENCE + _READING * len(question.split())
    return PROMPTED if mark == PARTLY or hinted or slow else RECALLED


def card_after(reviews: Iterable[Review]) -> Card | None:
    """Return the card that reviews lead to, in the order of their times; nothing without a review."""
    from fsrs import Card as Kept

    card = None
    scheduler, ratings = _scheduler(), _ratings()
    for review in sorted(reviews):
        kept = card or Kept(card_id=0, due=review.at)
        card, _ = scheduler.review_card(kept, ratings[review.word], _utc(review.at))
    if card is None or card.stability is None or card.difficulty is None or card.last_review is None:
        return None
    return Card(card.stability, card.difficulty, int(card.state), card.step, card.due, card.last_review)


def expected_recall(card: Card | None, when: datetime) -> float:
    """Return the share, 0 to 1, with which a record is expected to be recalled at a time; 0 if it was never asked."""
    if card is None:
        return 0.0
    from fsrs import Card as Kept
    from fsrs import State

    kept = Kept(0, State(card.state), card.step, card.stability, card.difficulty, card.due, card.last)
    return float(_scheduler().get_card_retrievability(kept, _utc(when)))


@cache
def _scheduler() -> Scheduler:
    from fsrs import Scheduler

    return Scheduler(
        desired_retention=AIM,
        learning_steps=(_AGAIN_AFTER,),
        relearning_steps=(_AGAIN_AFTER,),
        enable_fuzzing=False,
    )


@cache
def _ratings() -> dict[str, Rating]:
    from fsrs import Rating

    return {MISSED: Rating.Again, PROMPTED: Rating.Hard, RECALLED: Rating.Good}


def _utc(when: datetime) -> datetime:
    return when.astimezone(UTC)
