"""Tell the reason of what was told last: the record's own, or what the knowledge says to a why."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.answering.answer import Answer, Citation
from assistant.conversation.composing import composed
from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import question_of, things_named
from assistant.conversation.replying.state_reasons import state_reason, tells_states
from assistant.knowledge.records import Fact, Limit, Source
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import FactResult, Result

_LEFT = 0.35
"""Share of a question that a reason may leave unexplained."""
_NO_REASON = "The reason is not stated in what is loaded."


def reason_told(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return the reason of what was told last, where a turn asks for it without saying "why", and one is stated."""
    if context.answer is None:
        return None
    from assistant.conversation.replying.what_for import asks_purpose  # a first question starts without it

    found = at_the_limit(text, context, knowledge)
    if found is None and asks_purpose(text):
        found = why_told(text, context, knowledge)
        found = None if found and found[0].text.startswith(_NO_REASON) else found
    return found


def at_the_limit(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return why what was told is within its limit, or not."""
    from assistant.conversation.replying.what_for import why_within

    found = why_within(text, context, knowledge)
    if found is None:
        return None
    answer = composed(text, *found, knowledge)
    return answer, context._replace(answer=answer)


def why_told(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return the reason: the record's own, else what the knowledge says to the last question with a why."""
    last, asked = context.answer, context.asked
    if last is None or asked is None:
        return None
    of_states = state_reason(text, context, knowledge) if tells_states(context) else None
    if of_states:
        return of_states, context._replace(answer=of_states)
    record = knowledge.base.records.get(last.entry)
    reason = getattr(record, "why", "")
    result: Result | None = None
    if reason and isinstance(knowledge.base.records.get(reason), Fact):
        result = FactResult(knowledge.base.records[reason])
    for words in () if last.working else _whys(record, asked, knowledge):
        if result is None:
            scored = resolve_scored(question_of(f"why {words}", knowledge, asked.variant), knowledge)
            if isinstance(scored.result, FactResult) and _is_reason(scored.result.fact, last, asked, knowledge):
                result = scored.result
    of_states = None if result or last.working else state_reason(text, context, knowledge)
    if of_states:
        return of_states, context._replace(answer=of_states)
    if result is None:
        words = f"{_NO_REASON} {last.working or last.text}"
        return last._replace(question=text, text=words), context
    answer = composed(text, asked.with_text(text), result, knowledge)
    return answer, context._replace(answer=answer)


def _is_reason(fact: Fact, last: Answer, asked: Question, knowledge: Knowledge) -> bool:
    """Return whether a statement gives the reason of an answer: it answers a why of what was asked about, from
    the same section.
    """
    shared = _sections(last.sources) & _sections(fact.sources)
    said = knowledge.matcher.vocabulary(fact.id)
    matcher = knowledge.matcher
    weights = {m: matcher.mention_weight(m) for m in asked.reading.mentions if not matcher.is_soft(m)}
    left = sum(w for m, w in weights.items() if said.isdisjoint(m.concepts | m.implied))
    fits = "why" in said and bool(shared) and left <= _LEFT * sum(weights.values())
    return fits and not _of_another_limit(fact, last, asked, knowledge)


def _of_another_limit(fact: Fact, last: Answer, asked: Question, knowledge: Knowledge) -> bool:
    """Return whether a reason is that of another limit than the one told: each of its ways of asking names a thing that
    neither the question nor the answer names.
    """
    told = knowledge.base.records.get(last.entry)
    if not isinstance(told, Limit):
        return False
    known = asked.reading.concepts | knowledge.phrase(told.of).concepts | knowledge.phrase(last.text).concepts
    whys = [ask for ask in fact.asks if "why" in ask.split()] or fact.asks
    asks = (things_named(knowledge.phrase(ask.replace("[", "").replace("]", "")), knowledge) for ask in whys)
    return all(any(known.isdisjoint(m.concepts | m.implied) for m in named) for named in asks)


def _sections(sources: Iterable[Source | Citation]) -> set[tuple[str, str]]:
    """Return the paragraphs, and the sections that they stand in."""
    paragraphs = {(s.document, s.paragraph) for s in sources}
    return paragraphs | {(document, paragraph.rsplit(".", 1)[0]) for document, paragraph in paragraphs}


def _whys(record: object, asked: Question, knowledge: Knowledge) -> list[str]:
    """Return what a bare "why" may be about: the last question, its things alone, what answered it."""
    things = [m.text for m in things_named(asked.reading, knowledge)]
    asks = getattr(record, "asks", ())
    return [
        " ".join(asked.reading.words),
        " ".join(things),
        *(a.replace("[", "").replace("]", "") for a in asks[:4]),
    ]
