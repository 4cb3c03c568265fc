"""What somebody asks of a reason without the word for it: "what for?", "to what end", "how come, that's the limit".

The reason of what was told is given where one is stated; else such a turn is read as any other. That an amount just at
its limit is within it has a statement of its own.
"""

from __future__ import annotations

import re

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import question_of
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Check, CheckResult, FactResult

_LEAD = r"^\W*(?:(?:and|so|but|ok|okay|right|uh|um|er|hm+|well|sorry)\b[\s,.]*)*"
_PURPOSE = (
    _LEAD + r"(?:what for|to what end|for what|for what purpose|what.?s? (?:the )?(?:use|good|point|sense)(?: is| of)?"
    r"(?: it| that| this| doing that)?"
    r"|what(?:.?s| is| are) (?:that|it|this|they|those) in aid of|for w(?:ah|ha)t reason|what(?:.?s| is) wrong with"
    r" (?:it|that|them))\W*$"
)
_WHY = frozenset({"why", "come"})
_AT_THE_LIMIT = frozenset({
    "why", "how", "come", "that", "it", "is", "isn", "t", "not", "the", "at", "on", "right", "over", "above",
    "too", "ok", "okay", "fine", "alright", "allowed", "within", "limit", "maximum", "max", "still", "this",
    "s", "so", "same", "exactly", "as", "though", "fast", "slow", "high", "heavy", "hot", "low", "much", "then",
    "but", "legal", "isnt", "inside", "outside", "beyond", "and", "be", "can",
})  # fmt: skip
_DUST = 1e-6


def asks_purpose(text: str) -> bool:
    """Return whether a turn asks what something that was told is for, and says no more."""
    return len(text) < 60 and re.match(_PURPOSE, text, re.IGNORECASE) is not None


def why_within(text: str, context: Context, knowledge: Knowledge) -> tuple[Question, FactResult] | None:
    """Return the statement on an amount just at its limit, where a turn asks why the one judged last is within."""
    if not isinstance(context.result, CheckResult) or not any(_exactly(c) for c in context.result.checks):
        return None
    words = re.findall(r"[a-z]+", text.lower())
    if len(words) > 10 or _WHY.isdisjoint(words) or not _AT_THE_LIMIT.issuperset(words):
        return None
    question = question_of("exactly at maximum within limit", knowledge, context.variant)
    result = resolve_scored(question, knowledge).result
    return (question.with_text(text), result) if isinstance(result, FactResult) else None


def _exactly(check: Check) -> bool:
    return check.within and abs(check.given - check.bound) < _DUST
