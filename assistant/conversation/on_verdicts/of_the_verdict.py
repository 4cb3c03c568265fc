"""A turn that asks no more than what a verdict rests on: its limit, the margin, or what holds right at it.

"What would be ok then", "how much too hot is that" and "exactly at it?" name nothing, and are of the limit that a
reading was held against last; "on the dot?" may be of one that was told, too.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_verdicts.figures_nearby import limits_told
from assistant.knowledge.records import Limit
from assistant.quantities.amounts import Amount
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import bound_value, check
from assistant.resolving.results import ChangeResult, CheckResult, LimitResult, Result

_MOST_WORDS = 10
_EXACT = frozenset({"exactly", "precisely", "dot", "bang", "dead", "spot", "smack", "slap"})
_AT_IT = ("right at", "right on", "just at", "on the nose", "to the knot", "equal to", "on the money")
_LIMIT = frozenset({"limit", "maximum", "max", "minimum", "min", "number", "figure", "it", "that", "line", "mark"})
_AT = frozenset({
    "exactly", "precisely", "on", "at", "the", "to", "degree", "kilo", "psi", "right", "bang", "dead", "spot",
    "nose", "dot",
    "knot", "just", "and", "so", "then", "ok", "okay", "if", "s", "is", "be", "alright", "fine", "still",
    "allowed", "i",
    "m", "we", "re", "are", "can", "or", "what", "about", "say", "now", "hm", "equal", "smack", "slap",
    "money", "new",
    "one", "would", "sit", "same", "as", "with", "well", "a", "though", "legal", "in", "within", "not", "over",
    "also",
}) | _LIMIT  # fmt: skip
_HOW = frozenset({"much", "many", "far"})
_OFF = frozenset({
    "over", "under", "above", "below", "too", "off", "margin", "spare", "hand", "left", "short", "out", "room",
    "more",
    "less", "past", "beyond", "by",
})  # fmt: skip
_MARGIN = _OFF | _HOW | {
    "how", "what", "is", "that", "s", "it", "the", "am", "i", "we", "re", "are", "of", "a", "in", "to", "have",
    "got", "do",
    "does", "and", "so", "then", "ok", "hot", "fast", "heavy", "high", "low", "slow", "knots", "degrees",
    "kilos", "psi",
    "feet", "this", "they", "go", "was", "limit", "from", "there", "be", "us", "with", "hm", "ve", "big", "large",
}  # fmt: skip
_WANTED = _LIMIT | {"most", "least", "highest", "lowest", "allowed", "ok", "okay", "alright", "fine", "acceptable"}
_WANTING = _WANTED | {
    "what", "what's", "s", "is", "the", "i", "we", "can", "may", "have", "be", "would", "so", "then", "and",
    "go", "to",
    "will", "do", "was", "should", "d", "which", "for", "me", "of", "at", "up", "allow", "hm", "well", "right",
    "take",
    "had", "said", "again", "actual", "must", "need", "there", "on", "this", "with", "down", "until", "whats",
}  # fmt: skip
_OPEN = frozenset({"what", "whats", "what's", "which", "until"})


def of_the_verdict(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the limit of the verdict given last, the verdict again for its margin, or one on the limit itself."""
    words = [w for w in alone.reading.words if w[0].isalpha()]
    if context.asked is None or not words or len(words) > _MOST_WORDS or alone.reading.amounts or alone.conditions:
        return None
    told = context.result
    question = context.asked.with_text(alone.reading.text)._replace(context=True)
    if alone.named_variant or not isinstance(told, (CheckResult, LimitResult, ChangeResult)):
        return None
    limits = _limits(told, question, knowledge)
    if not limits:
        return None
    if _says_at_it(words):
        return _at_it(limits[0], question, knowledge)
    if not isinstance(told, CheckResult):
        return None
    if asks_the_margin(words):
        return question, told
    asks = not _OPEN.isdisjoint(words) and not _WANTED.isdisjoint(words) and len(words) > 1
    return (question, LimitResult(limits)) if asks and _asks_the_limit(words) else None


def asks_the_margin(words: list[str]) -> bool:
    """Return whether words ask how far a reading is from its limit, and name nothing: "how much too hot"."""
    much = "how" in words and not _HOW.isdisjoint(words)
    return much and _MARGIN.issuperset(words) and not _OFF.isdisjoint(words)


def _asks_the_limit(words: list[str]) -> bool:
    """Return whether words ask what is allowed, and name nothing; "what is it" asks nothing of a limit."""
    return _WANTING.issuperset(words) and not {"it", "that"}.issuperset(_WANTED.intersection(words))


def _limits(told: Result | None, question: Question, knowledge: Knowledge) -> tuple[Limit, ...]:
    """Return the limits of a verdict, those that are not kept where some are not; else the one that was told."""
    limits = limits_told(told, knowledge)
    if isinstance(told, CheckResult):
        limits = tuple(each.limit for each in told.checks if not each.within) or limits
    elif len(limits) != 1:
        return ()
    records = (knowledge.record(limit.id, question.variant) for limit in limits)
    return tuple(each for each in records if isinstance(each, Limit) and (each.maximum or each.minimum))


def _says_at_it(words: list[str]) -> bool:
    """Return whether words ask of an amount that is just the limit: "on the dot?", "and right at it"."""
    if not _AT.issuperset(words):
        return False
    said = f" {' '.join(words)} "
    return not _EXACT.isdisjoint(words) or any(f" {phrase} " in said for phrase in _AT_IT)


def _at_it(limit: Limit, question: Question, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the verdict on a limit's own figure."""
    figure = bound_value(limit)
    amount = Amount(0, 0, figure.value, figure.unit, "", False, False) if figure else None
    found = check(limit, amount, question, knowledge) if amount else None
    return (question, CheckResult((found,))) if found else None
