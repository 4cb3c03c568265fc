"""A short turn whose own words and the subject spoken of together are a way of asking: that record is meant.

"So what pushes it", after the spring of the nose leg, and "coming down, what do I do about it?", after a caution, ask
of what was spoken of, though other records answer to the few words alone; and what was told just now is no answer to
a word that it knows nothing of.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_what_was_told.inside_told import on_the_subject, subject_told
from assistant.conversation.reading_turns.readings import things_named
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of
from assistant.resolving.candidates import Candidate
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.ranking import candidates
from assistant.resolving.results import (
    BothResult,
    CheckResult,
    Choices,
    Declined,
    FactResult,
    LimitResult,
    ProcedureResult,
    Result,
    records_of,
)  # fmt: skip
from assistant.understanding.mentions import Mention

_LONG, _LOOKED_AT = 9, 6
_LEAST, _WHOLE = 0.6, 1.0
_FOUND = (FactResult, LimitResult, ProcedureResult)
_TOLD = (FactResult, LimitResult, BothResult, CheckResult)
_FIGURE = frozenset({"above", "below", "over", "under", "max", "maximum", "min", "minimum", "least", "most", "from"})
_AGAIN = frozenset({
    "again", "repeat", "sure", "really", "still", "same", "confirm", "correct", "right", "check", "said",
    "once", "more", "always", "certain", "sorry", "else", "other", "others", "another",
})  # fmt: skip


def subject_first(
    alone: Question, first: Scored, result: Result, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return what the turn's own words ask of the subject spoken of, where it was understood as another subject, as
    nothing, or as what was told just now.
    """
    reading = alone.reading
    if context.asked is None or context.answer is None or len(reading.words) > _LONG or reading.amounts:
        return None
    if alone.named_variant or alone.conditions or not isinstance(context.result, _TOLD):
        return None
    own = [m for m in reading.mentions if not m.weak and not m.passing]
    if not own or any(m.is_outside for m in own) or not _AGAIN.isdisjoint(reading.words):
        return None
    again = result == context.result and isinstance(result, (FactResult, LimitResult))
    subject = _subject(context, knowledge)
    if not (again or isinstance(result, (Choices, Declined)) or _elsewhere(result, context, subject, knowledge)):
        return None
    if again and _answers(result, own, knowledge):
        return None
    question = on_the_subject(alone, context, knowledge)
    best = _best(question, own, subject, context, knowledge)
    if best is None or best.result == result or not _gives_as_much(best.result, result, alone, knowledge):
        return None
    return question, best.result


def _gives_as_much(found: Result, result: Result, alone: Question, knowledge: Knowledge) -> bool:
    """Return whether what was found gives a quantity that is asked for, where the other result does."""
    asked = alone.reading.asked & QUANTITIES
    if isinstance(found, LimitResult) and not asked:
        return begins_with_bound(alone)
    return not (asked and quantity_of(result, knowledge) in asked) or quantity_of(found, knowledge) in asked


def begins_with_bound(alone: Question) -> bool:
    """Return whether a turn asks for a figure without naming its quantity: "from what?",
    "up to how much?"."""
    return not _FIGURE.isdisjoint(alone.reading.words)


def _subject(context: Context, knowledge: Knowledge) -> frozenset[str]:
    """Return the things that the question before and the title of what was told name."""
    assert context.asked is not None
    named = (m for m in things_named(context.asked.reading, knowledge) if not m.weak)
    own = frozenset(c for m in named for c in m.concepts if c[0].isalpha())
    return own | subject_told(context, knowledge)


def _elsewhere(result: Result, context: Context, subject: frozenset[str], knowledge: Knowledge) -> bool:
    """Return whether a result stands in another section than what was told, and its title names nothing of it."""
    told = knowledge.base.records.get(context.answer.entry) if context.answer else None
    if told is None or not isinstance(result, _FOUND) or getattr(result, "step", None) is not None:
        return False
    record = records_of(result)[0]
    return not _names(record, subject, knowledge) and not _sections(record) & _sections(told)


def _best(
    question: Question, own: list[Mention], subject: frozenset[str], context: Context, knowledge: Knowledge
) -> Candidate | None:
    """Return the best candidate that is asked for by a word of the turn and by what was spoken of."""
    assert context.answer is not None
    told = knowledge.base.records.get(context.answer.entry)
    for candidate in candidates(question, knowledge)[:_LOOKED_AT]:
        match = candidate.match
        if match is None or candidate.score < _LEAST or not isinstance(candidate.result, _FOUND):
            continue
        if match.concepts.isdisjoint(subject):
            continue
        once_more = candidate.result == context.result and candidate.score >= _WHOLE
        if candidate.result in context.told_lately and not once_more:
            continue
        if match.record == context.answer.entry and not once_more:
            continue
        asked_for = [_is_asked(m, match.concepts, candidate.result, knowledge) for m in own]
        if not (any(asked_for) or once_more):
            continue  # it is asked for by what was spoken of alone
        said = knowledge.matcher.vocabulary(match.record)
        if any(said.isdisjoint(m.concepts | m.implied) for m in own):
            continue
        record = knowledge.base.records[match.record]
        if _sections(record) & _sections(told) or (all(asked_for) and _names(record, subject, knowledge)):
            return candidate
    return None


def _is_asked(own: Mention, said: frozenset[str], result: Result, knowledge: Knowledge) -> bool:
    """Return whether a way of asking holds what a turn names, or a procedure answers what is to be done."""
    if not said.isdisjoint(own.concepts | own.implied):
        return True
    return isinstance(result, ProcedureResult) and any(knowledge.lexicon.kinds.get(c) == "ask" for c in own.concepts)


def _names(record: object, things: frozenset[str], knowledge: Knowledge) -> bool:
    """Return whether a record's title names one of some things."""
    title = getattr(record, "title", "") or getattr(record, "of", "")
    return not knowledge.phrase(title).concepts.isdisjoint(things)


def _answers(result: Result, own: list[Mention], knowledge: Knowledge) -> bool:
    """Return whether what was told knows of all that the turn says."""
    return any(
        all(not knowledge.matcher.vocabulary(record.id).isdisjoint(m.concepts | m.implied) for m in own)
        for record in records_of(result)
    )


def _sections(record: object) -> set[tuple[str, str]]:
    return {(s.document, s.paragraph.rpartition(".")[0]) for s in getattr(record, "sources", ())}
