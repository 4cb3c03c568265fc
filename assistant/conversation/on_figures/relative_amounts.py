"""An amount that a turn gives by how far it is from the one spoken of: "ten knots slower?", "half that speed".

The turn is put in words with the amount that this comes to, so that whatever takes an amount takes it.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.conversation.context import Context
from assistant.conversation.on_figures.schedule_again import spoken_input
from assistant.conversation.reading_turns.given_inputs import given_before
from assistant.conversation.reading_turns.like_amounts import unit_word
from assistant.conversation.reading_turns.readings import question_of, things_named
from assistant.conversation.reading_turns.traits import OPEN
from assistant.frozen import NamedTuple
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CheckResult, ModelResult, ScheduleResult

_MOST_WORDS, _BRIEF = 9, 5
_ORDERS = "total_order"
_BY = {
    "slower": ("speed", -1), "faster": ("speed", 1), "quicker": ("speed", 1),
    "lighter": ("mass", -1), "heavier": ("mass", 1),
    "hotter": ("temperature", 1), "warmer": ("temperature", 1), "cooler": ("temperature", -1),
    "colder": ("temperature", -1), "longer": ("", 1), "shorter": ("", -1), "later": ("time", 1), "sooner": ("time", -1),
    "earlier": ("time", -1), "higher": ("", 1), "lower": ("", -1), "more": ("", 1), "less": ("", -1), "fewer": ("", -1),
}  # fmt: skip
"""Words that say what of an amount changes, and which way."""
_MOVED = frozenset({
    "slower", "faster", "quicker", "lighter", "heavier", "hotter", "warmer", "cooler", "colder",
})  # fmt: skip
_TIMES = {"half": 0.5, "twice": 2.0, "double": 2.0}
_OF = frozenset({"that", "the", "of", "it", "this"})
_THAN = "than"


class _Spoken(NamedTuple):
    """An amount spoken of: its value and unit, and the word that leads it, or ""."""

    value: float
    unit: str
    cue: str


def with_relative(alone: Question, context: Context, knowledge: Knowledge) -> Question | None:
    """Return a turn with the amount that it gives relative to one spoken of, or None where it gives none so."""
    words = alone.reading.words
    if context.asked is None or len(words) > _MOST_WORDS or _THAN in words or alone.conditions:
        return None
    if _BY.keys().isdisjoint(words) and _TIMES.keys().isdisjoint(words):
        return None
    named = things_named(alone.reading, knowledge)
    if any(_TIMES.keys().isdisjoint(m.text.split()) for m in named):
        return None
    found = _further(alone, context, knowledge) or _times(alone, context, knowledge)
    if found is None:
        return None
    text = f"{found.cue or 'at'} {found.value:.10g} {unit_word(found.unit)}"
    return question_of(text, knowledge, alone.variant).with_text(alone.reading.text)


def left_hanging(alone: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn gives no more than how far an amount is from one that was not spoken of: it is no amount
    itself.
    """
    words, amounts = alone.reading.words, alone.reading.amounts
    if len(amounts) != 1 or len(words) > _BRIEF or _THAN in words or amounts[0].unit is None:
        return False
    at = next((k for k, word in enumerate(words) if word in _MOVED), None)
    beside = at is not None and at in (amounts[0].end, amounts[0].start - 1)
    return beside and not any(m.start != at for m in things_named(alone.reading, knowledge))


def _further(alone: Question, context: Context, knowledge: Knowledge) -> _Spoken | None:
    """Return what an amount more or less than the one spoken of comes to."""
    words, amounts = alone.reading.words, alone.reading.amounts
    at = next((k for k, word in enumerate(words) if word in _BY), None)
    if at is None or len(amounts) != 1 or amounts[0].unit == "count":
        return None
    amount = amounts[0]
    beside = at in (amount.end, amount.start - 1, amount.end - 1) or words[at + 1 : at + 2] == ("by",)
    dimension, way = _BY[words[at]]
    if not beside or (amount.unit is None and not dimension):
        return None
    found = [s for s in _spoken(context, knowledge) if _is_of(amount, s, dimension, knowledge)]
    if len(found) != 1:
        return None
    spoken = found[0]
    step = amount.value if amount.unit in (None, spoken.unit) else _step(amount, spoken.unit, knowledge)
    value = spoken.value + way * step
    return spoken._replace(value=value) if value > 0 or spoken.unit == "degC" else None


def _step(amount: Amount, unit: str, knowledge: Knowledge) -> float:
    """Return how far an amount reaches in a unit; degrees are as far in all of them."""
    if amount.unit is None or amount.unit in ("deg", "degC", "K"):
        return amount.value
    return knowledge.units.convert(amount.value, amount.unit, unit)


def _is_of(amount: Amount, spoken: _Spoken, dimension: str, knowledge: Knowledge) -> bool:
    own = knowledge.units.get(spoken.unit).dimension
    if dimension and own != dimension:
        return False
    return amount.unit is None or fits(amount, spoken.unit, knowledge.units) is not None


def _times(alone: Question, context: Context, knowledge: Knowledge) -> _Spoken | None:
    """Return half of the one amount spoken of, or twice that."""
    words = alone.reading.words
    at = next((k for k, word in enumerate(words) if word in _TIMES), None)
    if at is None or words[at + 1 : at + 2] == () or words[at + 1] not in _OF:
        return None
    found = list(_spoken(context, knowledge))
    named = alone.reading.concepts
    of_kind = [s for s in found if knowledge.units.get(s.unit).dimension in named]
    found = of_kind or found
    return found[0]._replace(value=found[0].value * _TIMES[words[at]]) if len(found) == 1 else None


def _spoken(context: Context, knowledge: Knowledge) -> Iterator[_Spoken]:
    """Yield the amounts that the last calculation, schedule or verdict was given; a turn left open gave none."""
    told = context.result
    if isinstance(told, OPEN) and context.earlier:
        past = context.earlier[0]
        before = context._replace(asked=past.asked, result=past.result, earlier=context.earlier[1:])
        yield from _spoken(before, knowledge)
    if isinstance(told, ScheduleResult):
        at = spoken_input(told)
        if at is not None:
            yield _Spoken(at, told.schedule.input_unit, "")
    elif isinstance(told, CheckResult):
        for value, unit in {(check.given, check.unit) for check in told.checks}:
            yield _Spoken(value, unit, "")
    elif isinstance(told, ModelResult) and told.model.function != _ORDERS and context.asked is not None:
        given = given_before(told.model, context.asked, knowledge).amounts
        for item in told.model.inputs:
            if item.id in given:
                amount = given[item.id]
                yield _Spoken(amount.value, amount.unit or item.unit, item.cues.split(" ")[0])
