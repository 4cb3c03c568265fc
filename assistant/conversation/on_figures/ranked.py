"""The first or the last of some figures that go together: "and the top one", after what two settings give."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import question_of
from assistant.frozen import NamedTuple
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import bound_value
from assistant.resolving.results import LimitResult, Result
from assistant.understanding.mentions import Mention

_STRONGEST = frozenset({"top", "highest", "strongest", "hardest", "max", "maximum", "fiercest"})
_WEAKEST = frozenset({"bottom", "lowest", "weakest", "gentlest", "softest", "lightest", "min", "minimum", "mildest"})
_HIGHEST = _STRONGEST | {"biggest", "greatest", "largest", "longest", "most"}
_LOWEST = _WEAKEST | {"smallest", "least", "shortest", "quickest"}
_MIDDLE = frozenset({"middle", "medium", "mid", "between"})
_REMAINING = frozenset({"last", "other", "third", "remaining"})
_RANKS = _HIGHEST | _LOWEST | _MIDDLE | _REMAINING
_BESIDE = frozenset({
    "and", "so", "ok", "then", "now", "what", "about", "how", "the", "one", "setting", "of", "them", "for", "is",
    "s", "which", "at", "on", "with", "in", "two", "three", "four", "all", "those", "these", "lot",
})  # fmt: skip
_BOUNDS = frozenset({"max", "maximum", "min", "minimum", "most", "least"})
_ONES = frozenset({"one", "setting"})
_LONG = 7


class _One(NamedTuple):
    """One of some things with the figure asked for of it."""

    value: float
    question: Question
    result: Result


def ranked(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the figure that was told last of one thing, of the one among its like that has the most or the least."""
    words = [w for w in alone.reading.words if w[0].isalnum()]
    said = [w for w in words if w in _RANKS]
    if len(said) != 1 or context.asked is None or len(words) > _LONG or not _BESIDE.issuperset({*words} - {*said}):
        return None
    if said[0] in _BOUNDS and _ONES.isdisjoint(words):
        return None  # the bound of what was told is asked for
    if not isinstance(context.result, LimitResult) or alone.conditions:
        return None
    figure = bound_value(context.result.limits[0])
    if figure and figure.quantity == "duration" and said[0] in _STRONGEST | _WEAKEST:
        return None  # the strongest one need not take the longest
    families = knowledge.lexicon.families
    for mention in context.asked.reading.mentions:
        family = next((families[c] for c in sorted(mention.concepts) if c in families), "")
        ones = sorted(_all(family, mention, context.asked, knowledge), key=lambda one: one.value) if family else []
        if said[0] in _REMAINING:
            ones = _not_told(ones, context)
            return _told(ones[0], alone) if len(ones) == 1 else None
        if len(ones) > 1 and (said[0] not in _MIDDLE or len(ones) > 2):
            one = ones[len(ones) // 2 if said[0] in _MIDDLE else -(said[0] in _HIGHEST)]
            return _told(one, alone)
    return None


def _told(one: _One, alone: Question) -> tuple[Question, Result]:
    return one.question.with_text(alone.reading.text)._replace(context=True), one.result


def _not_told(ones: list[_One], context: Context) -> list[_One]:
    """Return those of some figures that were not told lately: "and the last one?"."""
    return [one for one in ones if one.result not in context.told_lately]


def _all(family: str, mention: Mention, before: Question, knowledge: Knowledge) -> list[_One]:
    """Return the figures that the question before gives of each of a family."""
    words, found = before.reading.words, {}
    for concept in (c for c, name in knowledge.lexicon.families.items() if name == family):
        term = knowledge.base.terms.get(concept)
        if term is None:
            continue
        text = " ".join((*words[: mention.start], term.names[0], *words[mention.end :]))
        question = question_of(text, knowledge, before.variant)
        result = resolve_scored(question, knowledge).result
        figure = bound_value(result.limits[0]) if isinstance(result, LimitResult) else None
        if figure and isinstance(result, LimitResult):
            found[result.limits[0].id] = _One(figure.value, question, result)
    return list(found.values())
