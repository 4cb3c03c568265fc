"""A short turn that names nothing is of what was just told: "how long do I wait?", of brakes, is of no lever.

What would answer it knows nothing of that subject, and stands elsewhere: what does know of it is asked or asked back
for, and else nothing is told.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_what_was_told.inside_told import on_the_subject, subject_told
from assistant.conversation.reading_turns.paragraphs_told import title_told
from assistant.conversation.reading_turns.readings import things_named
from assistant.knowledge.records import Fact, Limit, Procedure
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.ranking import candidates
from assistant.resolving.results import (
    BandResult,
    CheckResult,
    Declined,
    FactResult,
    LimitResult,
    ProcedureResult,
    Result,
)  # fmt: skip
from assistant.understanding.mentions import PLAIN, Mention

_LONG, _LEAST, _HALF = 7, 0.45, 0.51
_OPEN = frozenset({
    "who", "whose", "does", "do", "did", "is", "was", "it", "that", "this", "they", "then", "job", "how", "long", "for",
    "take", "takes", "what", "if", "not", "and", "so", "next", "after", "comes", "afterwards", "ok", "but",
    "will", "would", "be", "s", "isn't", "n't", "work", "won't", "doesn't", "i", "we", "know", "the", "to",
    "happens", "?", ",", ".", "t",
})  # fmt: skip
"""Words of a turn that says nothing of what it is about."""
_TOLD = (BandResult, CheckResult, FactResult, LimitResult)


def stays_with_it(
    alone: Question, result: Result, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return what knows of the subject of the figure or verdict told last, where a turn asks a quantity of it alone and
    would be answered of another subject; result: that answer.
    """
    if context.asked is None or not isinstance(context.result, _TOLD):
        return None
    if _names_nothing_there(alone, result, context, knowledge):
        return alone, Declined(())
    if not isinstance(result, (FactResult, LimitResult)):
        return None
    reading = alone.reading
    asked = reading.asked & QUANTITIES
    if not asked or reading.amounts or alone.conditions or len(reading.words) > _LONG or alone.named_variant:
        return None
    if any(not c.startswith(PLAIN) for m in things_named(reading, knowledge) for c in m.concepts):
        return None
    record = result.fact if isinstance(result, FactResult) else result.limits[0]
    subject = _spoken_of(context, knowledge)
    if not subject or not knowledge.matcher.vocabulary(record.id).isdisjoint(subject):
        return None
    question = on_the_subject(alone, context, knowledge)
    for candidate in candidates(question, knowledge):
        match = candidate.match
        if match is None or candidate.score < _LEAST or match.record == record.id:
            continue
        of_it = not knowledge.matcher.vocabulary(match.record).isdisjoint(subject)
        if of_it and quantity_of(candidate.result, knowledge) in asked:
            return question, candidate.result
    return question, Declined(())


def _names_nothing_there(alone: Question, result: Result, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a short turn without a thing of its own ("who does that?", "and if not?") would be answered with
    what stands elsewhere and knows nothing of what was spoken of.
    """
    reading = alone.reading
    if result == context.result or alone.named_variant or not _OPEN.issuperset(reading.words):
        return False
    return stands_elsewhere(result, context, knowledge, _HALF)


def stands_elsewhere(result: Result, context: Context, knowledge: Knowledge, share: float = 0.0) -> bool:
    """Return whether a result is a statement, a figure or a drill of another paragraph than what was told last, which
    knows of less than a share of what was spoken of, or of nothing of it.
    """
    record = record_told(result)
    return record is not None and is_elsewhere(record.id, context, knowledge, share)


def is_elsewhere(name: str, context: Context, knowledge: Knowledge, share: float = 0.0) -> bool:
    """Return whether a record stands elsewhere than what was told last, and knows of less than a share of what was
    spoken of, or of nothing of it.
    """
    told = knowledge.base.records.get(context.answer.entry) if context.answer else None
    if told is None or sections(knowledge.base.records.get(name)) & sections(told):
        return False
    said = knowledge.matcher.vocabulary(name)
    spoken = [m for m in _things_spoken_of(context, knowledge) if not m.weak]
    known = [m for m in spoken if not said.isdisjoint(m.concepts)]
    return bool(spoken) and (not known or len(known) < share * len(spoken))


def _things_spoken_of(context: Context, knowledge: Knowledge) -> list[Mention]:
    """Return the things that the question before named, and that the title of what was told names besides."""
    assert context.asked is not None
    found = {m.concepts: m for m in things_named(context.asked.reading, knowledge)}
    for m in things_named(knowledge.phrase(title_told(context, knowledge)), knowledge):
        found.setdefault(m.concepts, m)
    return list(found.values())


def record_told(result: Result) -> Fact | Limit | Procedure | None:
    """Return the statement, figure or drill that a result tells."""
    if isinstance(result, FactResult):
        return result.fact
    if isinstance(result, LimitResult):
        return result.limits[0]
    return result.procedure if isinstance(result, ProcedureResult) else None


def sections(record: object) -> set[tuple[str, str]]:
    """Return the paragraphs that a record stands in."""
    return {(source.document, source.paragraph) for source in getattr(record, "sources", ())}


def _spoken_of(context: Context, knowledge: Knowledge) -> frozenset[str]:
    """Return the things that the question before and the title of what it was answered with name."""
    assert context.asked is not None
    named = (m for m in things_named(context.asked.reading, knowledge) if not m.weak)
    own = frozenset(c for m in named for c in m.concepts if c[0].isalpha())
    return own | subject_told(context, knowledge)
