"""A turn on the schedule told last: where it gives another value, or what the other control has there.

"Where does it get down to one degree?", after what the pedals give at 80 kt, asks the schedule the other way round;
"what has the tiller got at that speed?" asks another schedule at the input that was given, or that came out.
"""

from __future__ import annotations

from itertools import pairwise
from math import isinf

from assistant.conversation.context import Context
from assistant.conversation.on_figures.on_the_schedule import at_amount
from assistant.conversation.reading_turns.readings import question_of, things_named
from assistant.conversation.reading_turns.traits import LONG
from assistant.knowledge.records import Limit, Schedule
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import LimitResult, Result, ScheduleResult
from assistant.resolving.schedules import resolve_schedule
from assistant.understanding.mentions import Mention
from assistant.understanding.words import stem

_WHERE = frozenset({"where", "when"})
_RATE = frozenset({"fast", "slow", "slowly", "high", "heavy"})
_AT = frozenset({"at", "doing", "by", "with"})
_MOST = frozenset({"max", "maximum", "most", "full"})
_BESIDE = frozenset({
    "the", "on", "it", "what", "whats", "s", "is", "its", "that", "ever", "gives", "give", "can", "do", "does",
    "amount", "of", "all", "and", "so", "then", "at",
    "get", "have", "deflection", "there", "to", "go", "it's", "what's",
})  # fmt: skip
_MEMBERS = {"feet": "pedal", "foot": "pedal", "hand": "tiller", "hands": "tiller"}
"""By what one steers, where the control is not named."""
_OWN = frozenset({"i'm", "i", "we", "we're", "re", "m"})
"""Words of a turn that says how fast one goes: "when I'm down to 60"."""
_GETTING = frozenset({"get", "got", "have", "see", "give", "allowed"})
"""Words of what one gets of a control, whoever asks: "at what speed do I | get | 5"."""
_JUST = frozenset({"just", "only", "exactly", "about", "still"})


def schedule_again(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the schedule told last, or its like, read as a short turn asks that says no more; else None."""
    told, words = context.result, alone.reading.words
    if not isinstance(told, ScheduleResult) or context.asked is None or alone.conditions or len(words) > LONG:
        return None
    if len(alone.reading.amounts) > 1 or _compares(alone):
        return None
    variant = alone.variant if alone.named_variant else context.asked.variant
    most = _its_most(alone, told.schedule, variant, knowledge)
    if most:
        return context.asked.with_text(alone.reading.text)._replace(context=True), most
    other = _other_the_same_way(alone, told, variant, knowledge) or _of_the_other(alone, told, variant, knowledge)
    if other or not alone.reading.amounts:
        return other
    amount = alone.reading.amounts[0]
    schedule = _other_named(alone, told.schedule, knowledge) or told.schedule
    if not _is_about(alone, schedule, knowledge):
        return None
    if told.value is None and amount.unit is not None and fits(amount, told.schedule.input_unit, knowledge.units):
        return at_amount(told.schedule, amount, alone.reading.text, variant, knowledge)
    if _asks_where(alone, amount, schedule, knowledge):
        return _where(schedule, amount, alone.reading.text, variant, knowledge)
    return None


def _its_most(alone: Question, schedule: Schedule, variant: str, knowledge: Knowledge) -> LimitResult | None:
    """Return the most that a schedule ever gives, where a turn asks no more: "the max on it"."""
    words = {w for w in alone.reading.words if w[0].isalpha()}
    if alone.reading.amounts or words.isdisjoint(_MOST) or not words <= _MOST | _BESIDE or not schedule.top:
        return None
    record = knowledge.record(schedule.top, variant)
    return LimitResult((record,)) if isinstance(record, Limit) else None


def spoken_input(told: ScheduleResult) -> float | None:
    """Return the one input that a schedule was read at, or that came out where it gives a value."""
    if told.value is not None:
        return told.given
    low, high = told.found[0] if len(told.found) == 1 else (0.0, 1.0)
    return low if low == high and not isinf(low) else None


def _compares(alone: Question) -> bool:
    """Return whether a turn holds a value against the one told: "how much more than 40 degrees"."""
    return "than" in alone.reading.words


def _is_about(alone: Question, schedule: Schedule, knowledge: Knowledge) -> bool:
    said = knowledge.matcher.vocabulary(schedule.id)
    return all(said & (m.concepts | m.implied) for m in _things(alone, knowledge))


def _things(alone: Question, knowledge: Knowledge) -> list[Mention]:
    """Return the things that a turn names; "does it drop to" is none."""
    return [m for m in things_named(alone.reading, knowledge) if m.text.split()[-1] != "to"]


def _asks_where(alone: Question, amount: Amount, schedule: Schedule, knowledge: Knowledge) -> bool:
    """Return whether a turn asks for the input at which a schedule gives an amount."""
    words = alone.reading.words
    if amount.unit is None:
        if not _is_output(words, amount, schedule):
            return False
    elif fits(amount, schedule.output_unit, knowledge.units) is None:
        return False
    how = any(one == "how" and other in _RATE for one, other in pairwise(words))
    asked = alone.reading.asked if amount.unit is None else alone.reading.concepts
    return how or not _WHERE.isdisjoint(words) or schedule.input in asked


def _where(
    schedule: Schedule, amount: Amount, text: str, variant: str, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    question = question_of(f"{schedule.of} {amount.value:.10g} {_word(schedule.output_unit)}", knowledge, variant)
    result = resolve_schedule(knowledge.record(schedule.id, variant), question, knowledge)
    return (question.with_text(text), result) if isinstance(result, ScheduleResult) else None


def _word(unit: str) -> str:
    return "degrees" if unit == "deg" else unit


def _other_the_same_way(
    alone: Question, told: ScheduleResult, variant: str, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return where another schedule, which a turn names, gives a bare number: "and when is the tiller down to 30", or
    "and the tiller to 30" where it was asked before at what speed the pedals give something.
    """
    other = _other_named(alone, told.schedule, knowledge)
    if other is None or not alone.reading.amounts or alone.reading.amounts[0].unit is not None:
        return None
    amount, words = alone.reading.amounts[0], alone.reading.words
    likely = _is_output(words, amount, other) or _says_nothing_there(amount, other)
    asks = _asks_where(alone, amount, other, knowledge) or (told.value is None and likely)
    return _where(other, amount, alone.reading.text, variant, knowledge) if asks else None


def _is_output(words: tuple[str, ...], amount: Amount, schedule: Schedule) -> bool:
    """Return whether a bare number may be what a schedule gives, and is not said to be where it is read."""
    at = amount.start
    while at and words[at - 1] in _JUST:
        at -= 1
    before = words[at - 1] if at else ""
    got = _OWN.isdisjoint(words) or before in _GETTING
    return before not in _AT and _may_come_out(amount, schedule) and got


def _says_nothing_there(amount: Amount, schedule: Schedule) -> bool:
    """Return whether a number may be what a schedule gives, and as an input would be one at which it has not begun to
    change: "and the pedals at 4", after the speed at which the tillers give 10 degrees.
    """
    (_, full), (begins, still) = schedule.points[:2]
    return _may_come_out(amount, schedule) and full == still and amount.value < begins


def _may_come_out(amount: Amount, schedule: Schedule) -> bool:
    """Return whether a schedule ever gives as much as a number."""
    return amount.value <= max(y for _, y in schedule.points)


def _of_the_other(
    alone: Question, told: ScheduleResult, variant: str, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return another schedule of the same kind, which a turn names, at the input that it gives or that was told."""
    last, at = told.schedule, spoken_input(told)
    if alone.reading.amounts:
        at = fits(alone.reading.amounts[0], last.input_unit, knowledge.units)
    steered = {c for m in alone.reading.mentions if _is_member(m) for c in m.concepts}
    if at is None or not (alone.reading.asked & QUANTITIES) - steered <= {last.input, last.output}:
        return None
    other = _other_named(alone, last, knowledge)
    if other is None:
        return None
    amount = Amount(0, 0, at, other.input_unit, "", False, False)
    return at_amount(other, amount, alone.reading.text, variant, knowledge)


def _other_named(alone: Question, last: Schedule, knowledge: Knowledge) -> Schedule | None:
    """Return another schedule of the same kind that a turn names, or None."""
    for name in knowledge.base.ids("schedules"):
        other = knowledge.base.records[name]
        if not isinstance(other, Schedule) or other.id == last.id:
            continue
        alike = (other.input_unit, other.output_unit) == (last.input_unit, last.output_unit)
        if alike and _names(alone, other, last, knowledge):
            return other
    return None


def _names(alone: Question, other: Schedule, last: Schedule, knowledge: Knowledge) -> bool:
    """Return whether a turn names what another schedule is of and not what the last is, and nothing strange to it."""
    own, past = stem(other.of.split()[0]), stem(last.of.split()[0])
    stems = {stem(_MEMBERS.get(word, word)) for word in alone.reading.words}
    if own not in stems or past in stems:
        return False
    known = knowledge.matcher.vocabulary(other.id)
    things = _things(alone, knowledge)
    return all(
        known & (m.concepts | m.implied) or _is_member(m) or own in {stem(w) for w in m.text.split()} for m in things
    )


def _is_member(mention: Mention) -> bool:
    """Return whether a name is by what one steers: "and by hand"."""
    return mention.text.split()[-1] in _MEMBERS
