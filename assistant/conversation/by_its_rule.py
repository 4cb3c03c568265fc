"""An amount given after a rule was told, judged by the bands of that rule: "levers back at 90 knots?", after when RTO
brakes.

By itself such a turn names a common thing and a speed, which many limits are of; the paragraph just told says which.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.readings import things_named
from assistant.conversation.traits import CLEAR, OPEN
from assistant.knowledge.records import Bands
from assistant.resolving import limits as limit_rules
from assistant.resolving.amounts_for import fits
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CheckResult, FactResult, LimitResult, Result

_MOST_WORDS = 9
_OPENING = frozenset({"what", "how", "why", "who", "where", "which", "when"})


def by_its_rule(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the verdict of the one rule in the paragraph told last on a turn's one amount, else None."""
    amounts, words = alone.reading.amounts, alone.reading.words
    if context.asked is None or not isinstance(context.result, (FactResult, LimitResult)):
        return None
    if len(amounts) != 1 or amounts[0].unit is None or len(words) > _MOST_WORDS or alone.conditions:
        return None
    own = first.score >= CLEAR and not isinstance(first.result, (*OPEN, CheckResult))
    if own or not _OPENING.isdisjoint(words[:1]):
        return None
    found = [bands for bands in _rules_told(context, knowledge) if _is_of(alone, bands, knowledge)]
    judged = limit_rules.judge(found[0], alone, knowledge, amounts) if len(found) == 1 else None
    return (alone, judged) if judged else None


def _rules_told(context: Context, knowledge: Knowledge) -> list[Bands]:
    """Return the bands that stand in the paragraph of the record told last."""
    record = knowledge.base.records.get(context.answer.entry) if context.answer else None
    told = {(s.document, s.paragraph) for s in getattr(record, "sources", ())[:1]}
    bands = (knowledge.base.records[name] for name in knowledge.base.ids("bands"))
    return [b for b in bands if isinstance(b, Bands) and told & {(s.document, s.paragraph) for s in b.sources[:1]}]


def _is_of(alone: Question, bands: Bands, knowledge: Knowledge) -> bool:
    """Return whether a turn's amount is one of the rule's, and all that the turn names is known to it."""
    if fits(alone.reading.amounts[0], bands.unit, knowledge.units) is None:
        return False
    known = knowledge.matcher.vocabulary(bands.id)
    named = things_named(alone.reading, knowledge)
    return bool(named) and all(known & (m.concepts | m.implied) for m in named)
