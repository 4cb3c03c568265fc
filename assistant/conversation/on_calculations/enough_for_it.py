"""An amount held against what was calculated last: "so 30 m is enough?", "would 2,300 m of runway do".

What the calculation was made from stays as it was given: the amount is the room or the time that there is, and none of
what went in.
"""

from __future__ import annotations

from math import log

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.given_inputs import given_before
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_inputs import cued_parts
from assistant.resolving.results import ModelResult, Result

_ENOUGH = "enough"
_MOST_WORDS, _BRIEF = 14, 3
_STRONG = frozenset({
    "enough", "sufficient", "suffice", "suffices", "plenty", "cover", "covers", "available", "ample", "fit", "fits",
    "adequate", "insufficient", "short", "tight", "little", "narrow", "room", "spare", "suit", "suits", "cut", "cuts",
})  # fmt: skip
"""Words that hold an amount against what is needed."""
_WEAK = frozenset({
    "ok", "okay", "fine", "do", "does", "alright", "manage", "good", "happy", "got", "have", "legal", "safe",
    "works", "work", "acceptable", "possible", "only", "just", "there's", "theres",
})  # fmt: skip
"""Words that may do so: beside an amount that is none of what went in."""
_ASKS = frozenset({
    "is", "will", "would", "can", "could", "does", "do", "ok", "okay", "fine", "alright", "got", "have", "works",
    "safe",
})  # fmt: skip
_LEAD = frozenset({"ok", "okay", "so", "and", "right", "fine", "good", "well", "then", "but", "hm"})
_OPEN = frozenset({"what", "how", "which", "why", "when", "where", "who", "if"})
_PLACES = frozenset({
    "runway", "taxiway", "tarmac", "strip", "apron", "available", "room", "space", "left", "stand", "turnaround",
    "gate", "ground", "wide", "long", "pavement", "concrete", "remaining", "ahead",
})  # fmt: skip
_COMPARING = frozenset({"under", "over", "below", "above", "within", "inside", "exceed", "exceeds"})
"""Words that hold an amount against what came out where they lead it, in a question: "is that under 2,700"."""
_ONLY = frozenset({"only", "just"})
_POINTED = frozenset({"that", "it", "this"})
_NEAR = log(3.0)


def enough_for_it(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the calculation told last with a turn's one amount held against it, where the turn asks no more."""
    told, words, amounts = context.result, alone.reading.words, alone.reading.amounts
    if not isinstance(told, ModelResult) or context.asked is None or len(amounts) != 1 or told.solved:
        return None
    if dict(told.model.extra).get("verdict") != _ENOUGH or len(words) > _MOST_WORDS or not told.values:
        return None
    asks_open = not _OPEN.isdisjoint(words) and _STRONG.isdisjoint(words)
    if alone.named_variant or alone.conditions or (asks_open and _ONLY.isdisjoint(words)):
        return None
    if not _is_meant(alone, told, context.asked, knowledge) or _names_else(alone, told, knowledge):
        return None
    held = told._replace(against=_in_unit(amounts[0], told, knowledge), weighed=tuple(words))
    return context.asked.with_text(alone.reading.text), held


def holds_against(alone: Question) -> bool:
    """Return whether a turn asks by a strong word if its one amount is enough: "is 38 m enough"."""
    words = alone.reading.words
    return len(alone.reading.amounts) == 1 and not _STRONG.isdisjoint(words) and _OPEN.isdisjoint(words)


def _in_unit(amount: Amount, told: ModelResult, knowledge: Knowledge) -> float | None:
    """Return an amount in the unit of what was calculated, a bare one as it is."""
    return fits(amount, told.model.output_unit, knowledge.units)


def _is_meant(alone: Question, told: ModelResult, before: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn holds its amount against the result, by its words, its unit and its size."""
    amount = alone.reading.amounts[0]
    given = _in_unit(amount, told, knowledge)
    if given is None or given <= 0 or amount.unit == "count":
        return False
    if _is_compared(alone, told, knowledge):
        return True
    words = _beside(alone)
    again = bool(told.weighed) and len(alone.reading.words) <= _BRIEF  # "2,500?", after what was not enough
    strong = not _STRONG.isdisjoint(words) or (again and amount.unit is not None)
    if not strong and not again and _WEAK.isdisjoint(words):
        return False
    if amount.unit is not None and strong:
        return True
    if not strong and amount.start in cued_parts(told.model, alone, knowledge).values():
        return False  # "it's thirty out, ok"
    apart = min(abs(log(given / value.value)) for value in told.values if value.value > 0)
    old = given_before(told.model, before, knowledge).amounts.values()
    alike = any(fits(a, told.model.output_unit, knowledge.units) is not None for a in old)
    if not strong and not again and alike and _ASKS.isdisjoint(words):
        return False  # "go with 1,750"
    if again and told.against:
        apart = min(apart, abs(log(given / told.against)))
    others = [abs(log(given / a.value)) for a in old if a.value > 0 and (amount.unit in (None, a.unit))]
    return apart < _NEAR and (strong or all(apart <= other for other in others))


def _is_compared(alone: Question, told: ModelResult, knowledge: Knowledge) -> bool:
    """Return whether a question asks if what came out is under, or over, an amount that comes near it."""
    amount, words = alone.reading.amounts[0], alone.reading.words
    led = bool(amount.start) and words[amount.start - 1] in _COMPARING and not _ASKS.isdisjoint(words[:2])
    given = _in_unit(amount, told, knowledge)
    near = given is not None and any(v.value > 0 and abs(log(given / v.value)) < _NEAR for v in told.values)
    return led and near and not _POINTED.isdisjoint(words)


def _beside(alone: Question) -> set[str]:
    """Return the words of a turn beside its amount, without those that lead on: "ok, 1,750"."""
    amount = alone.reading.amounts[0]
    words = [(k, w) for k, w in enumerate(alone.reading.words) if not amount.start <= k < amount.end]
    while words and words[0][1] in _LEAD and words[0][0] < amount.start:
        words.pop(0)
    return {w for _, w in words}


def _names_else(alone: Question, told: ModelResult, knowledge: Knowledge) -> bool:
    """Return whether a turn names a thing that the calculation does not speak of, and no room or time that there is."""
    known = knowledge.matcher.vocabulary(told.model.id)
    beside = _PLACES | _STRONG | _WEAK
    return any(
        known.isdisjoint(m.concepts | m.implied)
        and not beside.issuperset(m.text.split())
        and not all(c[0] == "@" for c in m.concepts)  # "still fine" is no state here
        for m in knowledge.matcher.telling(alone.reading)
    )
