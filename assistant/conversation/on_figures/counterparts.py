"""The figure beside the one just told that is of the same without a thing, or with it: "without", "if they're off"."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.knowledge.records import Limit
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import LimitResult, Result

_MOST_WORDS = 7
_NEGATIVE = frozenset({"without", "none", "no", "off", "not", "w/o"})
_POSITIVE = frozenset({"with", "on", "running", "going", "working"})
_BESIDE = _NEGATIVE | _POSITIVE | {
    "and", "so", "ok", "okay", "then", "now", "what", "about", "how", "if", "them", "they", "re", "are", "it", "any",
    "the", "is", "same", "but", "they're", "theyre", "s", "when", "all", "at", "of", "it's", "turned", "switched",
    "for",
}  # fmt: skip
_PAIR = frozenset({"with", "without"})


def counterpart(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the figure told last with, or without, the thing that it is told for, where a turn says no more."""
    told, words = context.result, alone.reading.words
    if not isinstance(told, LimitResult) or len(told.limits) != 1 or context.asked is None:
        return None
    if not words or len(words) > _MOST_WORDS or alone.reading.amounts:
        return None
    limit = told.limits[0]
    own = limit.of.lower().split()
    said = [word for word in own if word in _PAIR]
    if len(said) != 1 or not (_BESIDE | set(own)).issuperset(w for w in words if w[0].isalpha()):
        return None
    without = not _NEGATIVE.isdisjoint(words)
    if not without and _POSITIVE.isdisjoint(words):
        return None
    wanted = "without" if without else "with"
    other = limit if said == [wanted] else _other(limit, own, wanted, context.asked.variant, knowledge)
    question = context.asked.with_text(alone.reading.text)._replace(conditions=(), context=True)
    return (question, LimitResult((other,))) if other else None


def _other(limit: Limit, own: list[str], wanted: str, variant: str, knowledge: Knowledge) -> Limit | None:
    """Return the figure whose name is another's but for the "with" in it."""
    sought = [wanted if word in _PAIR else word for word in own]
    for name in knowledge.base.ids("limits"):
        other = knowledge.base.records[name]
        if isinstance(other, Limit) and other.id != limit.id and other.of.lower().split() == sought:
            return knowledge.record(name, variant)  # type: ignore[no-any-return]
    return None
