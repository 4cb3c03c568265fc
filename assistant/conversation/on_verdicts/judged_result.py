"""A verdict on what was calculated last: "is that too hot to take off?", "and can I lower it up there?".

The value that came out, or the altitude that it is for, is put in the place of the words that point at it, and the
turn is read as the question about that amount: it is never held against an amount that went in.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.given_inputs import choices_of, given_before
from assistant.conversation.reading_turns.like_amounts import unit_word
from assistant.conversation.reading_turns.readings import question_of
from assistant.frozen import NamedTuple
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BandResult, BothResult, CheckResult, LimitResult, ModelResult, Result

_MOST_WORDS = 12
_SURE = 0.6
_DUST = 0.06
_WHETHER = frozenset({
    "is", "are", "can", "may", "do", "does", "will", "would", "should", "too", "ok", "okay", "allowed", "within",
    "over", "above", "still", "am", "could",
})  # fmt: skip
_OPEN = frozenset({"what", "which", "why", "how", "when", "where", "who", "whose", "if", "without"})
_THAT = frozenset({"that", "it", "this", "there", "then", "they", "those"})
_PLACE: tuple[tuple[str, ...], ...] = (
    ("up", "there"), ("at", "that", "height"), ("at", "that", "altitude"), ("at", "that", "level"), ("that", "high"),
    ("from", "there"), ("there",), ("that", "height"), ("this", "high"), ("up", "here"),
)  # fmt: skip
_FURTHER = frozenset({"after", "at", "of", "from", "for", "by", "without", "in"})
_LEFT = frozenset({"with", "at", "on", "like", "?"})
"""What is left behind where a word that points is taken away."""
_JUDGED = frozenset({"degC", "kt", "psi", "percent", "Mach"})


class _Value(NamedTuple):
    """What is to be judged, in its unit, and where in a turn it is pointed at; ends: behind all, or in its place."""

    value: float
    unit: str
    words: tuple[str, ...]


def judged_result(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the verdict on what the last calculation gave that a turn asks for, or None where it asks for none."""
    told, words = context.result, alone.reading.words
    if not isinstance(told, ModelResult) or context.asked is None or alone.reading.amounts or not words:
        return None
    asking = words[:-1] if words[-1] == "too" else words  # "and mine too"
    if len(words) > _MOST_WORDS or _WHETHER.isdisjoint(asking) or not _OPEN.isdisjoint(words):
        return None
    if _tells_which(words) or (words[0] not in _WHETHER and choices_of(told.model, alone, knowledge)):
        return None  # "for a tyre that is not rotating" chooses otherwise what was calculated
    if alone.reading.asked & (QUANTITIES - {told.model.output, "temperature", "speed", "altitude", "height"}):
        return None
    if alone.named_variant and words[0] not in _WHETHER:
        return None  # "that's on an L"
    variant = alone.variant if alone.named_variant else context.asked.variant
    for each in _values(told, words, context.asked, knowledge):
        question = question_of(" ".join(each.words), knowledge, variant)
        found = resolve_scored(question, knowledge)
        if found.score >= _SURE and _judges(found.result, each.value):
            return question.with_text(alone.reading.text)._replace(context=True), found.result
    return None


def _tells_which(words: tuple[str, ...]) -> bool:
    """Return whether "that is" tells which thing is meant, and does not ask: "a tyre that is not rotating"."""
    return any(one in ("that", "which") and two in ("is", "are") for one, two in pairwise(words[1:]))


def _values(told: ModelResult, words: tuple[str, ...], before: Question, knowledge: Knowledge) -> Iterator[_Value]:
    """Yield the amounts that a turn may ask a verdict on: the place where it was asked for, else what came out."""
    place = next((p for p in _PLACE for k in range(len(words)) if words[k : k + len(p)] == p), None)
    altitude = given_before(told.model, before, knowledge).amounts.get("altitude") if place else None
    if place and altitude:
        start = next(k for k in range(len(words)) if words[k : k + len(place)] == place)
        unit = altitude.unit or "ft"
        rest = (*words[:start], "at", f"{altitude.value:.10g}", unit_word(unit), *words[start + len(place) :])
        yield _Value(knowledge.units.convert(altitude.value, unit, "ft"), "ft", rest)
        return
    if told.solved or len(told.values) != 1 or told.values[0].unit not in _JUDGED:
        return
    value = round(told.values[0].value, 1)
    amount = (f"{value:.10g}", unit_word(told.values[0].unit))
    k = next((k for k, word in enumerate(words) if word in _THAT), None)
    if k is not None:
        yield _Value(value, told.values[0].unit, (*words[:k], *amount, *words[k + 1 :]))
    left = [w for w in words if w not in _THAT]
    while left and left[-1] in _LEFT:
        left.pop()
    yield _Value(value, told.values[0].unit, (*amount, ",", *left))
    yield _Value(value, told.values[0].unit, (*_what(told), *amount, ",", *left))


def _what(told: ModelResult) -> list[str]:
    """Return what came out in the calculation's own words: the "brake temperature" of one "after a stop"."""
    words = told.model.of.split()
    return words[: next((k for k, word in enumerate(words) if word in _FURTHER), len(words))]


def _judges(result: Result, value: float) -> bool:
    """Return whether a result is a verdict on an amount."""
    parts: tuple[Result, ...] = (result.first, result.second) if isinstance(result, BothResult) else (result,)
    for each in parts:
        if isinstance(each, CheckResult) and any(abs(c.given - value) < _DUST for c in each.checks):
            return True
        if isinstance(each, BandResult) and abs(each.given - value) < _DUST:
            return True
        if isinstance(each, LimitResult) and each.claimed is not None and abs(each.claimed - value) < _DUST:
            return True
    return False
