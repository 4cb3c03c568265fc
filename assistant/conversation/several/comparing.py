"""Two figures held against each other: "which is higher, VLE or VLO extension", "how much lower is A than B"."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.answering.answer import ANSWER, Answer
from assistant.answering.parts import difference_unit
from assistant.conversation.reading_turns.readings import question_of
from assistant.conversation.several.two_things import Half
from assistant.quantities.show import given_shown
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import LimitResult

_COMPARING = frozenset({
    "higher", "lower", "faster", "slower", "more", "less", "greater", "smaller", "bigger", "larger", "longer",
    "shorter", "heavier", "lighter", "hotter", "cooler", "tighter", "stricter", "stronger", "weaker", "quicker",
    "sooner", "later", "wider", "narrower", "difference", "differ", "compare", "compared", "gap", "margin", "below",
    "above",
})  # fmt: skip
_AGAINST = frozenset({
    "than", "which", "or", "difference", "differ", "compare", "compared", "gap", "margin", "versus", "vs",
})  # fmt: skip
_BETWEEN = (("than", "versus", "vs"), ("or",), ("and",), ("to", "with"))
"""Words that may join the two, the plainest first."""
_BARE = _COMPARING | {
    "which", "what", "whats", "is", "are", "the", "how", "much", "many", "by", "do", "does", "between", "a", "of", "it",
    "one", "s", ",", "?", ".", ":", "in", "from", "than", "may", "be", "knots", "knot", "kt", "degrees",
}  # fmt: skip
_LEFT_UNSAID = 3
"""Words at the end of the first part that the second may take the place of."""
_SAME = 1e-9


def compared_things(question: Question, knowledge: Knowledge) -> tuple[Half, Half] | None:
    """Return the two figures that a question holds against each other, each as it is asked for by itself."""
    words = question.reading.words
    given = any(not c.is_result and not c.implied for c in question.conditions)
    if not compares(question) or question.reading.amounts or given:
        return None
    own = {words[k] for k in question.reading.variant_places}
    for first, second in _parted(words):
        one = _alone(first, question, knowledge)
        others = (second, *_filled(first, second, own))
        for other in (_alone(part, question, knowledge) for part in others) if one else ():
            if one and other and one[1] != other[1]:
                return one[0], other[0]
    return None


def compares(question: Question) -> bool:
    """Return whether a question holds things against each other: "which is higher", "lower than", "the gap between"."""
    words = question.reading.words
    return not _COMPARING.isdisjoint(words) and not _AGAINST.isdisjoint(words)


def _parted(words: tuple[str, ...]) -> Iterator[tuple[list[str], list[str]]]:
    """Yield what stands before and after each word that may join the two, without what only compares."""
    plainest = next((joins for joins in _BETWEEN if not set(joins).isdisjoint(words)), ())
    for at, word in enumerate(words):
        if word in plainest:
            first, second = ([w for w in part if w not in _BARE] for part in (words[:at], words[at + 1 :]))
            if first and second:
                yield first, second


def _filled(first: list[str], second: list[str], variants: set[str]) -> Iterator[list[str]]:
    """Yield the second part with what it leaves to the first to say: "the limit for take-off or for parking".

    variants: words that name variants; one that names its own is left none of the first's.
    """
    for kept in range(len(first) - 1, max(0, len(first) - 1 - _LEFT_UNSAID), -1):
        if variants.isdisjoint(second) or variants.isdisjoint(first[:kept]):
            yield [*first[:kept], *second]


def _alone(words: list[str], question: Question, knowledge: Knowledge) -> tuple[Half, str] | None:
    half = question_of(" ".join(words), knowledge, question.variant)
    found = resolve_scored(half, knowledge)
    told = isinstance(found.result, LimitResult) and len(found.result.limits) == 1
    return (Half(half, found.result), found.record) if told and found.record else None


def difference(one: Answer, two: Answer, knowledge: Knowledge) -> str:
    """Return how the first figure stands to the second, where both measure the same."""
    if one.outcome != ANSWER or two.outcome != ANSWER or not one.values or not two.values:
        return ""
    first, second = one.values[0], two.values[0]
    if knowledge.units.get(first.unit).dimension != knowledge.units.get(second.unit).dimension:
        return ""
    apart = first.value - knowledge.units.convert(second.value, second.unit, first.unit)
    if abs(apart) < _SAME:
        return "They are the same."
    shown = given_shown(abs(apart), difference_unit(first.unit), knowledge.units)
    return f"The first is {shown} {'higher' if apart > 0 else 'lower'} than the second."
