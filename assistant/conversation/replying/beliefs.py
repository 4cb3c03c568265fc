"""What somebody believes a figure to be: held against the one loaded, and never agreed to unless it is so."""

from __future__ import annotations

from assistant.answering.answer import Answer, Number
from assistant.conversation.composing import composed
from assistant.conversation.context import Context
from assistant.conversation.control_words.controls_of_changes import believed_words, believes, may_believe
from assistant.conversation.reading_turns.readings import is_quantity, question_of
from assistant.knowledge.library_records import Change
from assistant.knowledge.records import Schedule, Source
from assistant.quantities.amounts import Amount
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import ChangeResult, ScheduleResult
from assistant.understanding.mentions import Mention

_NO_LONGER = "That was the former figure, and it no longer holds."
_LEADING = frozenset({"at", "by", "from", "above", "until"})
"""Words before an amount at which something is so, and that is no figure told."""
_FAR_OFF = 5.0
"""How many times larger or smaller a bare figure may be than the one that it is believed to be."""


def believed(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return the last answer again, held against what the turn believes: never agreed to, unless it is so."""
    last = context.answer
    if last is None or not last.values:
        return None
    if may_believe(text) and (former := _former_given(text, context, knowledge)):
        return _no_longer(text, former, last, context, knowledge)
    if not believes(text):
        return None
    reading = knowledge.reader.read(text)
    said_so = believed_words(text)
    if not reading.amounts or any(
        not m.weak and not m.passing and m.known
        for m in reading.mentions
        if not colours(m, knowledge) and not said_so.issuperset(m.text.split())
    ):
        return None
    said, first = reading.amounts[-1], last.values[0]
    lead = reading.words[said.start - 1] if said.start else ""
    where = isinstance(context.result, ScheduleResult) and lead in _LEADING
    if where or not _of_one_kind(said, first, knowledge):
        return None
    if abs(said.value - first.value) < 1e-9:
        return last._replace(question=text, text=f"That is the figure loaded. {last.text}")
    return last._replace(question=text, text=f"{last.text} The figure loaded is another.")


def _former_given(text: str, context: Context, knowledge: Knowledge) -> Change | None:
    """Return the change of what was told last whose former figure a turn gives, as its only one."""
    if not _changes_told(context, knowledge):
        return None
    amounts = knowledge.reader.read(text).amounts
    return _formerly(amounts[0], context, knowledge) if len(amounts) == 1 else None


def _no_longer(text: str, former: Change, last: Answer, context: Context, knowledge: Knowledge) -> Answer:
    """Return the figure that took the place of a former one, which somebody believes to hold."""
    if former.record == last.entry:
        return last._replace(question=text, text=f"{last.text} {_NO_LONGER}")
    answer = composed(text, context.asked or question_of(text, knowledge, ""), ChangeResult((former,)), knowledge)
    return answer._replace(text=f"{answer.text} {_NO_LONGER}")


def _formerly(said: Amount, context: Context, knowledge: Knowledge) -> Change | None:
    """Return the change whose former figure a turn gives, of what was answered last or went into it."""
    for change in _changes_told(context, knowledge):
        if any(a.value == said.value for a in knowledge.phrase(change.formerly).amounts):
            return change
    return None


def _changes_told(context: Context, knowledge: Knowledge) -> tuple[Change, ...]:
    """Return the changes to what was answered last, or to what went into it."""
    last = context.answer
    inputs = getattr(getattr(context.result, "model", None), "inputs", ())
    figures = changes_of_figures(last, knowledge) if last else ()
    if isinstance(context.result, ScheduleResult):  # a point of it: "I learned it's gone by 100"
        figures += _changes_of_points(context.result.schedule, knowledge)
    used = {last.entry if last else "", *(part.default for part in inputs), *(change.record for change in figures)}
    cited = {(s.document, s.paragraph) for s in last.sources} if last else set()
    return tuple(
        change
        for change in knowledge.base.changes.values()
        if change.record in used or any((s.document, s.paragraph) in cited for s in change.sources[:1] if _single(s))
    )


def _single(source: Source) -> bool:
    """Return whether a paragraph is one of few figures, and no table of limits of all kinds."""
    return source.paragraph.count(".") > 1 or source.paragraph[:1].isalpha()


def changes_of_figures(last: Answer, knowledge: Knowledge) -> tuple[Change, ...]:
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


def _of_one_kind(said: Amount, value: Number, knowledge: Knowledge) -> bool:
    """Return whether an amount may be of the same quantity as a value: by its unit, or by its size without one."""
    if said.unit and value.unit:
        return knowledge.units.get(said.unit).dimension == knowledge.units.get(value.unit).dimension
    return said.unit == value.unit or abs(value.value) / _FAR_OFF <= abs(said.value) <= abs(value.value) * _FAR_OFF


def colours(mention: Mention, knowledge: Knowledge) -> bool:
    """Return whether words only say what is asked for, or how: they name no thing."""
    return knowledge.matcher.is_soft(mention) or is_quantity(mention.concepts, knowledge)
