"""Reply to what steers a conversation: why, where it says so, disregard, a dispute, a figure that is believed."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.answering.answer import ANSWER, CLARIFY, Answer, Citation, Number
from assistant.conversation.composing import composed, replied
from assistant.conversation.context import Context
from assistant.conversation.controls import asks_place, asks_when, control
from assistant.conversation.controls_of_changes import asks_former, asks_since, believed_words, believes
from assistant.conversation.disputing import cleared, listed, set_aside
from assistant.conversation.disputing import with_disputes as with_disputes
from assistant.conversation.library import library_reply
from assistant.conversation.readings import is_quantity, question_of, things_named
from assistant.knowledge.records import Change, Fact, Model, Schedule, Source
from assistant.quantities.amounts import Amount
from assistant.resolving.changes import changes_of
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import (
    ChangeResult,
    CheckResult,
    FactResult,
    LimitResult,
    Needed,
    Result,
    ScheduleResult,
)  # fmt: skip
from assistant.understanding.mentions import Mention

_DISPUTING = {"dispute": set_aside, "undispute": cleared, "disputes": listed}
_NO_LONGER = "That was the former figure, and it no longer holds."
_NOT_CHANGED = "Nothing loaded says that it was ever another."
_SURE = 0.9
_TIMES = frozenset({"when", "before", "after", "until", "as", "while", "during", "once", "at"})
_LEADING = frozenset({"at", "by", "from", "above", "until"})
"""Words before an amount at which something is so, and that is no figure told."""
_LEFT = 0.35
"""Share of a question that a reason may leave unexplained."""
_FAR_OFF = 5.0
"""How many times larger or smaller a bare figure may be than the one that it is believed to be."""


def controlled(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return the reply to a turn that steers, or None when it is a question."""
    name = control(text, _words_told(context, knowledge) if "where" in text.lower() else frozenset())
    if not name:
        asked = library_reply(text, context, knowledge)
        if asked:
            return asked, context
        told = _since(text, context, knowledge) or _when(text, context)
        told = told or _believed(text, context, knowledge)
        return (told, context._replace(said=told)) if told else None
    if name in ("why", "source", "again") and context.answer is None:
        return None
    last = context.answer
    if name == "thanks" and last and not context.offered and not isinstance(context.result, Needed):
        return replied(text, ANSWER, "Ready for your next question.", knowledge), context
    if name == "again" and last:
        return (context.said or last)._replace(question=text), context
    if name == "why" and last:
        return _why(text, context, knowledge)
    if name == "source" and last and not asks_since(text):
        found = _whereabouts(text, context, knowledge) if asks_place(text) else None
        if found:
            return found
        return _source(text, last, knowledge), context
    if name == "disregard":
        fresh = Context(variant=context.variant, disputed=context.disputed)
        return replied(text, CLARIFY, "Disregarded. What would you like to know?", knowledge), fresh
    return _DISPUTING[name](text, context, knowledge) if name in _DISPUTING else None


def _words_told(context: Context, knowledge: Knowledge) -> frozenset[str]:
    """Return the words for what was told last: what the record is about or says, and what it is calculated from."""
    record = knowledge.base.records.get(context.answer.entry) if context.answer else None
    about = " ".join(str(getattr(record, field, "")) for field in ("of", "title", "says"))
    if isinstance(record, Model):
        about += " ".join(f" {part.id} {part.quantity}" for part in record.inputs)
    return frozenset(word.strip(".,:;()").lower() for word in about.split())


def _since(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return since when the figure told last holds, where a revision changed it."""
    last = context.answer
    if last is None or not (asks_since(text) or asks_former(text)):
        return None
    told = (*(last.values[:1] and (last.entry,)), *_limits_told(context))
    changes = tuple(c for name in dict.fromkeys(told) for c in changes_of(name, knowledge))
    changes = changes or _changes_of_figures(last, knowledge)
    if context.said and context.said.entry in knowledge.base.changes:
        changes = (knowledge.base.changes[context.said.entry],)
    if not changes:
        return _unchanged(text, last, context)
    asked = context.asked or question_of(text, knowledge, "")
    return composed(text, asked, ChangeResult(changes), knowledge)


def _unchanged(text: str, last: Answer, context: Context) -> Answer | None:
    """Return the figure told last to a turn that asks what it was before, where nothing says that it changed."""
    if not isinstance(context.result, (LimitResult, CheckResult)) or not last.values or not asks_former(text):
        return None
    return last._replace(question=text, text=f"{_NOT_CHANGED} {last.text}")


def _when(text: str, context: Context) -> Answer | None:
    """Return the statement told last again, where it says when and no more is asked."""
    last = context.answer
    if last is None or not asks_when(text) or not isinstance(context.result, FactResult):
        return None
    fact = context.result.fact
    return last._replace(question=text) if not _TIMES.isdisjoint(fact.says.lower().split()) else None


def _changes_of_figures(last: Answer, knowledge: Knowledge) -> tuple[Change, ...]:
    """Return the changes to the figures of an answer, which it tells of from the same paragraph as they stand in."""
    paragraphs = {(s.document, s.paragraph) for s in last.sources}
    told = {value.value for value in last.values}
    return tuple(
        change
        for change in knowledge.base.changes.values()
        if any((s.document, s.paragraph) in paragraphs for s in change.sources)
        and any(amount.value in told for amount in knowledge.phrase(change.now).amounts)
    )


def _changes_of_points(schedule: Schedule, knowledge: Knowledge) -> tuple[Change, ...]:
    """Return the changes to the amounts at which a schedule begins, bends or ends, by its paragraph."""
    points = {given for given, _ in schedule.points}
    changes = (c for c in knowledge.base.changes.values() if set(c.sources) & set(schedule.sources))
    return tuple(c for c in changes if any(a.value in points for a in knowledge.phrase(c.now).amounts))


def _limits_told(context: Context) -> tuple[str, ...]:
    """Return the ids of the limits that the last result told of."""
    result = context.result
    if isinstance(result, LimitResult):
        return tuple(limit.id for limit in result.limits)
    if isinstance(result, CheckResult):
        return tuple(check.limit.id for check in result.checks)
    if isinstance(result, ChangeResult):
        return tuple(change.record for change in result.changes)
    return ()


def _believed(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return the last answer again, held against what the turn believes: never agreed to, unless it is so."""
    last = context.answer
    if last is None or not last.values or not believes(text):
        return None
    reading = knowledge.reader.read(text)
    said_so = believed_words(text)
    if not reading.amounts or any(
        not m.weak and not m.passing and m.known
        for m in reading.mentions
        if not _colours(m, knowledge) and not said_so.issuperset(m.text.split())
    ):
        return None
    said, first = reading.amounts[-1], last.values[0]
    former = _formerly(said, context, knowledge)
    if former and former.record != last.entry:
        answer = composed(text, context.asked or question_of(text, knowledge, ""), ChangeResult((former,)), knowledge)
        return answer._replace(text=f"{answer.text} {_NO_LONGER}")
    lead = reading.words[said.start - 1] if said.start else ""
    where = isinstance(context.result, ScheduleResult) and lead in _LEADING
    if not former and (where or not _of_one_kind(said, first, knowledge)):
        return None
    if abs(said.value - first.value) < 1e-9:
        return last._replace(question=text, text=f"That is the figure loaded. {last.text}")
    lead = _NO_LONGER if former else "The figure loaded is another."
    return last._replace(question=text, text=f"{last.text} {lead}")


def _formerly(said: Amount, context: Context, knowledge: Knowledge) -> Change | None:
    """Return the change whose former figure a turn gives, of what was answered last or went into it."""
    last = context.answer
    inputs = getattr(getattr(context.result, "model", None), "inputs", ())
    figures = _changes_of_figures(last, knowledge) if last else ()
    if isinstance(context.result, ScheduleResult):  # a point of it: "I learned it's gone by 100"
        figures += _changes_of_points(context.result.schedule, knowledge)
    used = {last.entry if last else "", *(part.default for part in inputs), *(change.record for change in figures)}
    for change in knowledge.base.changes.values():
        if change.record in used and any(a.value == said.value for a in knowledge.phrase(change.formerly).amounts):
            return change
    return None


def _of_one_kind(said: Amount, value: Number, knowledge: Knowledge) -> bool:
    """Return whether an amount may be of the same quantity as a value: by its unit, or by its size without one."""
    if said.unit and value.unit:
        return knowledge.units.get(said.unit).dimension == knowledge.units.get(value.unit).dimension
    return said.unit == value.unit or abs(value.value) / _FAR_OFF <= abs(said.value) <= abs(value.value) * _FAR_OFF


def _colours(mention: Mention, knowledge: Knowledge) -> bool:
    return knowledge.matcher.is_soft(mention) or is_quantity(mention.concepts, knowledge)


def _why(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return the reason: the record's own, else what the knowledge says to the last question with a why."""
    last, asked = context.answer, context.asked
    if last is None or asked is None:
        return None
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
    if result is None:
        words = f"The reason is not stated in what is loaded. {last.working or last.text}"
        return last._replace(question=text, text=words), context
    answer = composed(text, asked.with_text(text), result, knowledge)
    return answer, context._replace(answer=answer)


def _whereabouts(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return where the thing spoken of is, if that is known: "where is it?" asks for a place before a paragraph."""
    asked = context.asked
    if asked is None:
        return None
    things = [m.text for m in asked.reading.mentions if not _colours(m, knowledge)]
    told = context.answer.entry if context.answer else ""
    named = [" ".join(things), *reversed(things), *_subjects(told, knowledge)]
    for thing in dict.fromkeys(filter(None, named)):
        question = question_of(f"where is the {thing}", knowledge, asked.variant)
        scored = resolve_scored(question, knowledge)
        told = scored.result.fact.id if isinstance(scored.result, FactResult) else ""
        if scored.score < _SURE or not told or "where" not in knowledge.matcher.vocabulary(told):
            continue
        answer = composed(text, question.with_text(text), scored.result, knowledge)
        return answer, context._replace(answer=answer)
    return None


def _subjects(name: str, knowledge: Knowledge) -> list[str]:
    """Return the things that the first way of asking for a record names."""
    asks = getattr(knowledge.base.records.get(name), "asks", ())[:1]
    phrases = [knowledge.phrase(ask.replace("[", "").replace("]", "")) for ask in asks]
    return [m.text for phrase in phrases for m in phrase.mentions if not _colours(m, knowledge)]


def _is_reason(fact: Fact, last: Answer, asked: Question, knowledge: Knowledge) -> bool:
    """Return whether a statement gives the reason of an answer: it answers a why of what was asked about, from
    the same section.
    """
    shared = _sections(last.sources) & _sections(fact.sources)
    said = knowledge.matcher.vocabulary(fact.id)
    matcher = knowledge.matcher
    weights = {m: matcher.mention_weight(m) for m in asked.reading.mentions if not matcher.is_soft(m)}
    left = sum(w for m, w in weights.items() if said.isdisjoint(m.concepts | m.implied))
    return "why" in said and bool(shared) and left <= _LEFT * sum(weights.values())


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


def _source(text: str, last: Answer, knowledge: Knowledge) -> Answer:
    if not last.sources and last.outcome != ANSWER:
        words = "Nothing was answered yet that could have a source. What would you like to know?"
        return replied(text, CLARIFY, words, knowledge)
    if not last.sources:
        return last._replace(question=text, text="It rests on no paragraph: it is a computation or a definition.")
    listed = []
    for source in last.sources:
        title = knowledge.base.documents[source.document].title if source.document in knowledge.base.documents else ""
        revision = f", revision {source.revision}" if source.revision else ""
        listed.append(f"{source.document} {source.paragraph}{revision} ({title})")
    return last._replace(question=text, text="; ".join(dict.fromkeys(listed)) + ".", working="")
