"""What follows if the figure told last is exceeded, for a turn that asks no more: "and past that?", "went over it"."""

from __future__ import annotations

import re

from assistant.answering.answer import Answer
from assistant.conversation.context import Context
from assistant.knowledge.records import Limit
from assistant.resolving.results import CheckResult, LimitResult

_MOST_WORDS = 10
_OVER = frozenset({
    "over", "above", "through", "past", "beyond", "exceed", "exceeds", "exceeded", "exceeding", "bust", "busted",
    "busting", "broke", "break", "overspeed", "oversped", "faster", "higher", "hotter", "heavier", "quicker",
    "overdo", "overdid", "too",
})  # fmt: skip
_UNDER = frozenset({"below", "under", "lower", "less", "slower", "cooler", "lighter"})
_MORE = frozenset({"more", "longer", "further", "farther"})
_NEEDED = frozenset({"need", "needs", "needed", "got", "gotta", "want", "wants", "have", "has", "must"})
_SMALL = frozenset({
    "what", "if", "i", "m", "am", "we", "re", "are", "go", "goes", "going", "went", "it", "that", "the",
    "limit", "happens", "happened", "now", "and", "so", "by", "mistake", "accident", "accidentally", "do",
    "then", "get", "gets", "is", "were", "was", "did", "though", "suppose", "say", "to", "have", "has",
    "been", "a", "bit", "little", "slightly", "just", "this", "speed", "figure", "number", "one", "must",
    "than", "ve", "s", "d", "ok", "okay", "well", "right", "oops", "sorry", "he", "she", "they", "you",
    "need", "needs", "needed", "want", "be", "inadvertently", "anything", "someone", "somebody", "something",
    "turn", "us", "tug", "driver", "fast", "high", "hot", "heavy", "far", "much", "what's", "done", "about",
    "had", "my", "mate", "next",
})  # fmt: skip
_ASKS = frozenset({"if", "what", "now", "suppose", "say", "went", "have", "oops", "past", "beyond", "above", "over"})


def exceeded_asked(text: str, context: Context) -> Answer | None:
    """Return what is to be done where the limit told last is exceeded, if that is loaded and all that a turn asks."""
    last = context.answer
    limit = _limit_told(context)
    if last is None or limit is None or not limit.exceeded or not _asks_of_it(text, limit):
        return None
    told = last.text.partition(". ")[0].rstrip(".")
    return last._replace(question=text, text=f"{limit.exceeded.rstrip('.')}. That is where it is exceeded: {told}.")


def _limit_told(context: Context) -> Limit | None:
    """Return the one limit that was told last, or that a reading was held against."""
    result = context.result
    if isinstance(result, CheckResult):
        return result.checks[0].limit
    return result.limits[0] if isinstance(result, LimitResult) and len(result.limits) == 1 else None


def _asks_of_it(text: str, limit: Limit) -> bool:
    """Return whether a short turn without figures says no more than that a limit is not kept."""
    if len(text) > 100 or any(c.isdigit() for c in text):
        return False
    words = set(re.findall(r"[a-z]+", text.lower()))
    beyond = _OVER if limit.maximum is not None else _UNDER
    plain = not words.isdisjoint(beyond) and not words.isdisjoint(_ASKS)
    supposed = "if" in words or ("than" in words and not words.isdisjoint(_NEEDED))
    more = not words.isdisjoint(_MORE | beyond) and supposed
    known = _SMALL | _MORE | _NEEDED | beyond
    return (plain or more) and len(words) <= _MOST_WORDS and words <= known
