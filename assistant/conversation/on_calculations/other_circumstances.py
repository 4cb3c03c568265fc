"""The question before under other circumstances: "and with less flap, thrust at idle, 500 ft?", after what holds with
landing flap.

Such a turn asks nothing itself. Read alone, what it gives may lead to a statement of those circumstances; what is meant
is what was asked, of which the paragraph that was told speaks in another case.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import merged
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.ranking import candidates
from assistant.resolving.results import FactResult, Result

_LONG, _FEW = 14, 3
_SOME = 0.4
_LEADING = frozenset({"and", "but", "what", "so", "ok", "then", "now"})
_GIVING = frozenset({"with", "if", "at"})


def other_circumstances(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the question before in the case that a turn names in the place of its own, with what it tells besides."""
    told = context.result
    if not isinstance(told, FactResult) or not _only_gives(alone, knowledge):
        return None
    if not _other_case(alone, context, knowledge):
        return None
    whole, _ = merged(alone, context, knowledge, False)
    stated = (c for c in candidates(whole, knowledge)[:_FEW] if c.match and isinstance(c.result, FactResult))
    best = next((c for c in stated if c.score >= _SOME), None)  # what an amount is held against was not asked
    if best is None or best.match is None or best.match.barred or not isinstance(best.result, FactResult):
        return None
    beside = best.result.fact.sources[:1] == told.fact.sources[:1] and best.result != told
    return (whole.with_text(alone.reading.text), best.result) if beside else None


def _only_gives(alone: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn gives circumstances and asks nothing."""
    words, first = alone.reading.words, 0
    while first < len(words) and words[first] in _LEADING:
        first += 1
    if len(words) > _LONG or words[first : first + 1] == () or words[first] not in _GIVING:
        return False
    asks = any(knowledge.lexicon.kinds.get(c, "").startswith("ask") for m in alone.reading.mentions for c in m.concepts)
    return not asks and not alone.reading.asked & QUANTITIES


def _other_case(alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn names another of what the question before named one of."""
    families = knowledge.lexicon.families_of
    before = context.asked.reading.mentions if context.asked else ()
    pairs = ((m.concepts, old.concepts) for m in alone.reading.mentions for old in before)
    return any(families(own) & families(past) and own.isdisjoint(past) for own, past in pairs)
