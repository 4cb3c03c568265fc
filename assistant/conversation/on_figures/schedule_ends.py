"""A turn that asks where a schedule ends, or begins to fall: "where's it all gone", "full until when".

Said after a value of a schedule, or after a figure of it, such words ask for the input there. With an amount they ask
what is left at it: "don't they quit altogether at a hundred?" gives a speed and no angle.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_figures.on_the_schedule import at_amount
from assistant.conversation.reading_turns.like_amounts import unit_word
from assistant.conversation.reading_turns.readings import question_of, things_named
from assistant.knowledge.records import Limit, Schedule
from assistant.resolving.amounts_for import fits
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import bound_value
from assistant.resolving.results import LimitResult, Needed, Result, ScheduleResult, limits_of
from assistant.resolving.schedules import is_point, resolve_schedule
from assistant.understanding.mentions import Mention

_MOST_WORDS = 10
_BRIEF = 4
_GONE = frozenset({"@lost", "@empty"})
_OUT = frozenset({
    "gone", "dead", "nothing", "none", "zero", "nil", "end", "ends", "ending", "ended", "finish", "finished",
    "finishes", "useless", "worthless", "lose", "lost", "stops", "stop", "stopped", "kills", "kill", "faded", "out",
    "quit", "quits", "dies", "die", "died", "disappears", "vanishes", "vanished", "disappeared",
})  # fmt: skip
_WHOLE = frozenset({"full", "fully", "whole", "lot", "entire", "everything", "complete"})
_BEGINS = frozenset({
    "start", "starts", "starting", "begin", "begins", "beginning", "taper", "tapers", "tapering", "drop", "drops",
    "dropping", "falling", "fall", "falls", "reducing", "decreasing",
})  # fmt: skip
_ASKING = frozenset({"when", "where", "what", "which", "from", "until", "till", "up", "by", "at", "after", "above"})
_TO = frozenset({"to", "until", "till"})
_SMALL = frozenset({"it", "they", "them", "that", "this", "all", "down", "off", "away", "more", "no", "go", "i"})
_HOW = frozenset({"how", "why", "who", "whose"})


def schedule_end(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return where the schedule spoken of ends or begins to fall, or what it gives at an amount, as a turn asks."""
    words, amounts = alone.reading.words, [a for a in alone.reading.amounts if a.value]
    if context.asked is None or len(words) > _MOST_WORDS or len(amounts) > 1 or alone.conditions:
        return None
    out = not _OUT.isdisjoint(words) or bool(alone.reading.concepts & _GONE)
    begins = not (_WHOLE | _BEGINS).isdisjoint(words) or ("all" in words and not out and words[-1] in _TO)
    if not (out or begins) or not _HOW.isdisjoint(words):
        return None
    schedule = _spoken_of(context, knowledge)
    if schedule is None or _names_else(alone, schedule, knowledge):
        return None
    variant = alone.variant if alone.named_variant else context.asked.variant
    if amounts:
        fitting = fits(amounts[0], schedule.input_unit, knowledge.units) is not None
        return at_amount(schedule, amounts[0], alone.reading.text, variant, knowledge) if fitting and out else None
    if len(words) > _BRIEF and _ASKING.isdisjoint(words):
        return None
    return _end(knowledge.record(schedule.id, variant), begins, alone.reading.text, variant, knowledge)


def _spoken_of(context: Context, knowledge: Knowledge) -> Schedule | None:
    """Return the schedule told or asked about last, or of which a figure was told."""
    told = context.result
    if isinstance(told, ScheduleResult):
        return told.schedule
    if isinstance(told, Needed) and isinstance(told.record, Schedule):
        return told.record
    limits = limits_of(told)
    for name in knowledge.base.ids("schedules") if limits else ():
        found = knowledge.base.records[name]
        if isinstance(found, Schedule) and all(found.top == limit.id or is_point(limit, found) for limit in limits):
            return found
    return None


def _names_else(alone: Question, schedule: Schedule, knowledge: Knowledge) -> bool:
    """Return whether a turn names or asks something that the schedule does not speak of."""
    if not (alone.reading.asked & QUANTITIES) <= {schedule.input, schedule.output}:
        return True
    known = knowledge.matcher.vocabulary(schedule.id)
    things = (m for m in things_named(alone.reading, knowledge) if not _says_end(m))
    return any(known.isdisjoint(m.concepts | m.implied) for m in things)


def _says_end(mention: Mention) -> bool:
    """Return whether a name only says that something ends or is whole: "gone", "drop off", "full"."""
    return bool(mention.concepts & _GONE) or not (_OUT | _WHOLE | _BEGINS).isdisjoint(mention.text.split()) or (
        _SMALL.issuperset(mention.text.split())
    )


def _end(
    schedule: Schedule, begins: bool, text: str, variant: str, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the figure that is stated for an end of a schedule, else the inputs at which it gives that."""
    values = [y for _, y in schedule.points]
    value = max(values) if begins else min(values)
    at = [x for x, y in schedule.points if y == value]
    edge = at[-1] if begins else at[0]
    for name in knowledge.base.ids("limits"):
        limit = knowledge.record(name, variant)
        figure = bound_value(limit)
        if isinstance(limit, Limit) and figure and figure.value == edge and is_point(limit, schedule):
            asked = question_of(limit.of, knowledge, variant)
            return asked.with_text(text)._replace(context=True), LimitResult((limit,))
    question = question_of(f"{schedule.of} {value:.10g} {unit_word(schedule.output_unit)}", knowledge, variant)
    result = resolve_schedule(schedule, question, knowledge)
    return (question.with_text(text), result) if isinstance(result, ScheduleResult) else None
