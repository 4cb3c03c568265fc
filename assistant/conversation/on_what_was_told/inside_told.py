"""A short turn that leans on what was just told is looked for there, before what other records say to it alone.

"Gear up after?", once it is told what to do about a tyre that burst on take-off, asks of that gear, and "what
deceleration does that go for?", after a setting, of that setting: what stands in the paragraph just told, or is of the
very thing told, is meant before a statement of another subject.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.control_words.controls import follows
from assistant.conversation.reading_turns.paragraphs_told import title_told
from assistant.conversation.reading_turns.readings import carried, things_named
from assistant.conversation.reading_turns.traits import OPEN, STATED, names_unknown
from assistant.knowledge.records import Source
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of
from assistant.resolving.candidates import Candidate
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.ranking import candidates
from assistant.resolving.results import (
    BandResult,
    CheckResult,
    FactResult,
    LimitResult,
    ProcedureResult,
    Result,
    TableResult,
    records_of,
)  # fmt: skip

_LONG, _BRIEF = 11, 3
_SURE, _LEAST, _AHEAD, _BEHIND, _WHOLE = 0.85, 0.65, 0.02, 0.05, 0.99
_TELLING = (FactResult, LimitResult)
_WANDERING = (*OPEN, *_TELLING, CheckResult, BandResult, TableResult)
_LEANING = frozenset({
    "that", "it", "this", "those", "them", "then", "after", "afterwards", "again", "there", "instead", "still",
})  # fmt: skip
_POINTING = frozenset({"that", "it", "this", "those", "them"})
_WHETHER = frozenset({"can", "may", "do", "does", "should", "must", "could", "is", "are", "will", "would"})
_STRANGE = frozenset({"else", "why", "normally", "usually", "otherwise"})


def asked_inside(
    alone: Question, first: Scored, meant: tuple[Question, Result], context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the statement or figure of the paragraph told last, or of the thing that was told, which a turn that
    leans on it asks for, where what it would be answered with stands elsewhere.

    first: what the turn gives by itself; meant: how it was understood, and what that gives.
    """
    result = meant[1]
    if not _leans(alone, context) or not isinstance(result, _WANDERING) or result == context.result:
        return None
    if not alone.reading.mentions or _stands_inside(result, context, knowledge):
        return None
    if context.asked and isinstance(result, TableResult) and meant[0].states != context.asked.states:
        return None  # a state was given
    if meant[0].context and _is_its_like(result, context, knowledge):
        return None
    question = on_the_subject(alone, context, knowledge)
    if isinstance(context.result, ProcedureResult):
        return _of_a_step(question, alone, result, context.result, knowledge)
    found = _best_inside(question, alone, first, context, knowledge)
    return (question, found.result) if found else None


def _is_its_like(result: Result, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a figure is of the same quantity as the one told last: it takes its place."""
    if not isinstance(result, LimitResult) or not isinstance(context.result, LimitResult):
        return False
    return quantity_of(result, knowledge) == quantity_of(context.result, knowledge)


def _of_a_step(
    question: Question, alone: Question, result: Result, told: ProcedureResult, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the step of the procedure told last that is asked for by a turn which nothing else answers: with the
    procedure in mind, one of the step's ways of asking is said whole, and by the turn in part.
    """
    named = {c for m in knowledge.matcher.telling(alone.reading) for c in m.concepts}
    for candidate in candidates(question, knowledge) if isinstance(result, OPEN) else ():
        match = candidate.match
        if match is None or match.record != told.procedure.id or match.covered < _WHOLE:
            continue
        if match.tag[:5] == "step." and named & match.concepts:
            return question, told._replace(step=int(match.tag[5:]))
    return None


def _stands_inside(result: Result, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a result rests on a paragraph that what was told last rests on."""
    records = (result.bands,) if isinstance(result, BandResult) else records_of(result)
    told = _told_in(context, knowledge)
    return any(not told.isdisjoint(record.sources) for record in records)


def _leans(alone: Question, context: Context) -> bool:
    """Return whether a short turn without figures leans on a statement, a figure or a verdict just told."""
    words = alone.reading.words
    if context.asked is None or context.answer is None or not isinstance(context.result, STATED):
        return False
    if alone.reading.amounts or alone.conditions or alone.named_variant or len(words) > _LONG:
        return False
    points = not _LEANING.isdisjoint(words) or len(words) <= _BRIEF or follows(alone.reading.text)
    return points and _STRANGE.isdisjoint(words)


def on_the_subject(alone: Question, context: Context, knowledge: Knowledge) -> Question:
    """Return a turn with all to lean on that was asked and told: the record's own title names its subject."""
    assert context.asked is not None
    given = tuple(c for c in context.asked.conditions if c.where)  # what was only kept in mind bears on nothing told
    question = carried(alone, context, given, knowledge)
    title = title_told(context, knowledge)
    return question._replace(background=question.background | knowledge.phrase(title).concepts)


def _best_inside(
    question: Question, alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> Candidate | None:
    """Return the best candidate, where it stands in what was told last and answers better than the turn alone."""
    if isinstance(first.result, _passed_over(alone)):
        first = first._replace(score=0.0)
    least = _least(alone, first, knowledge)
    found = (c for c in candidates(question, knowledge) if c.score >= least and not _is_bare_reason(c.result, alone))
    best = next((c for c in found if not isinstance(c.result, _passed_over(alone))), None)
    if best is None or best.match is None or best.match.record == first.record:
        return None
    if best.result in context.told_lately or not isinstance(best.result, _TELLING):
        return None
    unknown = names_unknown(best.match.record, alone, knowledge)
    named = not unknown and gives_what_is_asked(best.result, alone, knowledge)
    return best if named and _is_of_it(best, alone, first, context, knowledge) else None


def _is_bare_reason(result: Result, alone: Question) -> bool:
    """Return whether a statement gives no more than a reason, to a turn that does not ask why."""
    because = isinstance(result, FactResult) and result.fact.says.startswith("Because")
    return because and not alone.reading.has("why", "cause", "function")


def _passed_over(alone: Question) -> tuple[type, ...]:
    """Return the kinds of result that a turn does not want: whether something may be done is no figure."""
    whether = not _WHETHER.isdisjoint(alone.reading.words[:3]) and not alone.reading.asked & QUANTITIES
    return (LimitResult, CheckResult) if whether else ()


def _least(alone: Question, first: Scored, knowledge: Knowledge) -> float:
    """Return how well a record must answer: all that a turn asks which names no thing is of what was told."""
    own = 0.0 if isinstance(first.result, OPEN) else first.score
    named = bool(knowledge.matcher.telling(alone.reading)) or _POINTING.isdisjoint(alone.reading.words)
    return max(_SURE if named else _LEAST, own - _BEHIND)


def _is_of_it(
    best: Candidate, alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> bool:
    """Return whether a record stands in the paragraph told last, or is of what was told as the turn's own is not."""
    record, said = (best.match.record, best.match.concepts) if best.match else ("", frozenset())
    if _told_in(context, knowledge).intersection(knowledge.base.records[record].sources):
        return isinstance(first.result, OPEN) or best.score >= first.score + _AHEAD
    if best.score < _SURE or _LEANING.isdisjoint(alone.reading.words):
        return False
    other = knowledge.matcher.vocabulary(first.record) if first.record else frozenset()
    return bool(_thing_told(context, knowledge) & said or (subject_told(context, knowledge) & said) - other)


def subject_told(context: Context, knowledge: Knowledge) -> frozenset[str]:
    """Return the things that the title of the record told last names."""
    things = things_named(knowledge.phrase(title_told(context, knowledge)), knowledge)
    return frozenset(c for m in things for c in m.concepts if c[0].isalpha() and not m.weak)


def _told_in(context: Context, knowledge: Knowledge) -> frozenset[Source]:
    record = knowledge.base.records.get(context.answer.entry) if context.answer else None
    return frozenset(getattr(record, "sources", ()))


def _thing_told(context: Context, knowledge: Knowledge) -> frozenset[str]:
    """Return the names of one of a family that the statement told last brought up: a setting, a mode."""
    if context.asked is None or not isinstance(context.result, FactResult):
        return frozenset()
    said = knowledge.phrase(context.result.fact.says.partition(". ")[0]).concepts
    new = said - context.asked.reading.concepts
    return frozenset(c for c in new if c in knowledge.lexicon.families)


def gives_what_is_asked(result: Result, alone: Question, knowledge: Knowledge) -> bool:
    """Return whether a figure is of the quantity that a turn asks for, where it asks for one."""
    asked = alone.reading.asked & QUANTITIES
    return not asked or not isinstance(result, LimitResult) or quantity_of(result, knowledge) in asked
