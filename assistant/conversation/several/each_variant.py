"""A calculation or a schedule asked for on two variants at once: "tiller limit at 30 kt, on one and the other"."""

from __future__ import annotations

from assistant.conversation.reading_turns.readings import question_of
from assistant.conversation.several.two_things import Half
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.leaning import ANSWERING
from assistant.resolving.results import CheckResult, ModelResult, ScheduleResult

_BESIDE = frozenset({
    "vs", "versus", "and", "or", "against", "compared", "compare", "to", "than", "on", "the", "for", "both", "/", ",",
    "with", "of", "a",
})  # fmt: skip


def at_each_variant(question: Question, knowledge: Knowledge) -> list[Half] | None:
    """Return the question asked of each variant that it names, where each gives a figure at the amounts given."""
    reading = question.reading
    names = [name for name in knowledge.variants if name in reading.variants]
    if len(names) < 2 or not reading.amounts or not _named_together(question):
        return None
    text = " ".join(_without_variants(question))
    found = []
    for name in names:
        half = question_of(text, knowledge, name)
        scored = resolve_scored(half, knowledge)
        result = scored.result
        told = isinstance(result, CheckResult) or (isinstance(result, ModelResult) and bool(result.values))
        told = told or (isinstance(result, ScheduleResult) and result.value is not None)
        if not told or scored.score < ANSWERING:
            return None
        found.append(Half(half, result))
    return found


def _named_together(question: Question) -> bool:
    """Return whether nothing stands between the names but what joins them; "the same as on the other" is no such."""
    words = question.reading.words
    at = [k for k in range(len(words)) if k in question.reading.variant_places or _is_number(k, question)]
    return bool(at) and all(words[k] in _BESIDE for k in range(at[0], at[-1]) if k not in at)


def _without_variants(question: Question) -> list[str]:
    """Return the words of a question without the names of variants and what joins them."""
    reading = question.reading
    kept = [k for k in range(len(reading.words)) if k not in reading.variant_places and not _is_number(k, question)]
    gone = set(range(len(reading.words))) - set(kept)
    return [reading.words[k] for k in kept if not _joins(k, gone, reading.words)]


def _joins(at: int, gone: set[int], words: tuple[str, ...]) -> bool:
    """Return whether a word only leads to a name that is left out, or joins two."""
    step = at
    while step < len(words) and words[step] in _BESIDE:
        step += 1
    return words[at] in _BESIDE and (step in gone or step == len(words))


def _is_number(at: int, question: Question) -> bool:
    """Return whether a word is a number that is the name of a variant, and no amount."""
    reading = question.reading
    amount = any(a.start <= at < a.end for a in reading.amounts)
    return not amount and reading.words[at] in {name.lower() for name in reading.variants}
