"""Schedules: the value at an input, the inputs that give a value, and what lies beyond the ends."""

from __future__ import annotations

from math import isinf

from assistant.knowledge.records import Limit, Schedule
from assistant.physics.schedule import inputs_for, value_at
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.deflections import names_side
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_choices import is_part
from assistant.resolving.results import Needed, ScheduleResult

_HERE = frozenset(("now", "currently", "current", "present", "presently"))
"""Words by which a question means an input that it does not give: "at our current speed"."""
_BELOW_ZERO = "It is not below zero."
_WHEN = frozenset({"when", "where"})
_DOWN_TO = tuple(
    f"{word} to" for word in ("down", "fall", "falls", "fallen", "drop", "drops", "dropped", "fade", "fades", "faded")
)
_SLOWING = frozenset({"slow", "slows", "slowed", "slowing"})
_GOING = _SLOWING | {"i", "we", "you", "i'm", "we're", "aeroplane", "speed"}
"""Words of a question in which somebody, and not a figure, comes down to an amount."""
_OWN, _HAVING = frozenset({"i", "we", "you"}), frozenset({"have", "get", "got", "left"})


def resolve_schedule(schedule: Schedule, question: Question, know: Knowledge) -> ScheduleResult | Needed | None:
    """Return the reading that the question's amount asks for; Needed when it names none."""
    inputs, outputs = _amounts(schedule, question, know)
    if inputs and inputs[-1] < 0:
        return Needed(schedule, (f"the {schedule.basis or schedule.input}",), (schedule.input,), _BELOW_ZERO)
    if inputs:
        return _forward(schedule, inputs[-1], question, know)._replace(against=outputs[-1] if outputs else None)
    if outputs:
        return _inverse(schedule, outputs[-1])
    if not _HERE.isdisjoint(question.reading.words) or has_it(question.reading.words):
        return Needed(schedule, (f"the {schedule.basis or schedule.input}",), (schedule.input,))
    if asks_input(schedule, question, know):
        return None
    if question.reading.has(schedule.input, "speed") or question.context:
        return Needed(schedule, (f"the {schedule.basis or schedule.input}",), (schedule.input,))
    return None


def asks_input(schedule: Schedule, question: Question, know: Knowledge) -> bool:
    """Return whether a question asks up to what input something holds, which is no reading of a schedule then."""
    words = " ".join(question.reading.words)
    name = schedule.basis or schedule.input
    return any(f"{lead} what {each}" in words for lead in _BOUNDING for each in {name, schedule.input})


_BOUNDING = ("up to", "until", "above", "below", "past")


def has_it(words: tuple[str, ...]) -> bool:
    """Return whether a question asks how much one has of it: "how much tiller have i got"."""
    return words[:2] == ("how", "much") and not _OWN.isdisjoint(words) and not _HAVING.isdisjoint(words)


def is_point(limit: Limit, schedule: Schedule) -> bool:
    """Return whether a figure is an input at which a schedule begins to fall, bends or ends."""
    figure = limit.maximum or limit.minimum or limit.value
    if figure is None or figure.unit != schedule.input_unit or set(limit.sources).isdisjoint(schedule.sources):
        return False
    return any(x == figure.value for x, _ in schedule.points)


def leftover(schedule: Schedule, question: Question, know: Knowledge) -> list[Amount]:
    """Return the amounts that a schedule has no use for."""
    inputs, outputs = _amounts(schedule, question, know)
    # An input with an output is a belief on one point of it: "40 degrees at 50 knots, right?" is told what it is there.
    used = bool(inputs) + bool(outputs)
    return list(question.reading.amounts[used:])


def _amounts(schedule: Schedule, question: Question, know: Knowledge) -> tuple[list[float], list[float]]:
    inputs: list[float] = []
    outputs: list[float] = []
    greatest = max(y for _, y in schedule.points)
    wants_input = question.reading.has(schedule.input) and not question.reading.has(schedule.output)
    says_inverse = wants_input and _says_inverse(question)
    measured = (a for a in question.reading.amounts if a.unit)
    read_at = any(fits(a, schedule.input_unit, know.units) is not None for a in measured)
    believed = read_at and not names_side(question.reading.words)  # "25 left at 12 kt" is an order
    for amount in question.reading.amounts:
        as_input = fits(amount, schedule.input_unit, know.units)
        as_output = fits(amount, schedule.output_unit, know.units)
        if is_part(amount):
            continue  # "half tiller" is a part of it, and no speed
        if amount.unit is None:
            inverse = says_inverse or _falls_to(question.reading.words, amount)
            inverse = inverse or (wants_input and _is_its_own(amount, schedule, question))
            inverse = (inverse or believed) and abs(amount.value) <= greatest
            (outputs if inverse else inputs).append(amount.value)
        elif as_input is not None:
            inputs.append(as_input)
        elif as_output is not None:
            outputs.append(as_output)
    return inputs, outputs


def _falls_to(words: tuple[str, ...], amount: Amount) -> bool:
    """Return whether a question asks when a figure has come down to an amount: "when is the tiller down to 30"; not
    when somebody has slowed to it.
    """
    asks = not _WHEN.isdisjoint(words[: amount.start]) and _GOING.isdisjoint(words)
    return asks and " ".join(words[: amount.start]).endswith(_DOWN_TO)


def _is_its_own(amount: Amount, schedule: Schedule, question: Question) -> bool:
    """Return whether a bare number stands right behind the figure that it is of, and what that is read at is named
    apart from both: "kt at pedal limit | 3 |"; not "tiller limit at speed 30".
    """
    mentions = question.reading.mentions
    before = next((m for m in mentions if m.end == amount.start), None)
    read_at = [m for m in mentions if m.holds(schedule.input)]
    if before is None or before in read_at or not read_at:
        return False
    return all(m.start > amount.end or m.end < before.start for m in read_at)


def _says_inverse(question: Question) -> bool:
    """Return whether the speed is what is asked for: "speed for 10 tiller", "at what speed"."""
    words = question.reading.words
    if not _SLOWING.isdisjoint(words):
        return False  # "when we slow to 40" gives the speed
    return any(w in words for w in ("which", "what", "when", "where", "fast")) or "speed for" in " ".join(words)


def _forward(schedule: Schedule, given: float, question: Question, know: Knowledge) -> ScheduleResult:
    value = value_at(schedule.points, abs(given))
    others = []
    for variant in know.variants:
        if variant != question.variant:
            other = value_at(know.record(schedule.id, variant).points, abs(given))
            if abs(other - value) > 1e-9:
                others.append((variant, other))
    return ScheduleResult(schedule, abs(given), value, other=tuple(others))


def _inverse(schedule: Schedule, output: float) -> ScheduleResult:
    found = tuple(
        (max(i.low, schedule.points[0][0]), i.high if not isinf(i.high) else float("inf"))
        for i in inputs_for(schedule.points, abs(output))
    )
    return ScheduleResult(schedule, abs(output), None, found)
