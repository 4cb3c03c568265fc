"""Fewer of what a calculation counts: "one brake is dead, so three", after an energy that four brakes share."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import question_of
from assistant.knowledge.records import Model, ModelInput
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_choices import said
from assistant.resolving.model_inputs import bind
from assistant.resolving.results import ModelResult, Needed, Result
from assistant.understanding.mentions import Reading

_LONG = 12
_NUMBERS = {"one": 1, "two": 2, "three": 3, "four": 4, "both": 2}
_OUT = frozenset({
    "dead", "out", "lost", "gone", "failed", "fails", "inop", "inoperative", "unserviceable", "deactivated", "less",
    "disabled", "locked", "missing", "isolated", "dragging", "seized", "u/s", "bad", "without", "minus", "broken",
    "not", "isn", "doesn", "down", "lose", "loses", "losing", "lacks", "quit", "died", "off", "fail",
})  # fmt: skip
_POINTING = frozenset({"one", "both"})
"""Numbers that may as well point at something."""
_LEADING = frozenset({"at", "from", "to"})
_BESIDE = frozenset({
    "so", "and", "with", "on", "only", "just", "of", "them", "the", "is", "are", "left", "remain", "remaining", "that",
    "leaves", "leaving", "us", "what", "if", "about", "how", "then", "now", "we", "have", "has", "had", "got", "one",
    "it", "there", "were", "was", "say", "suppose", "working", "work", "works", "good", "serviceable", "operative", "s",
    "t", "ve", "a", "ones", "these", "those", "using", "instead", "but", "ok", "make", "do", "does", "been", "any",
    "more", "all", "still", "can", "use", "take", "taking", "share", "sharing", "i", "my", "our", "as", "to", "which",
})  # fmt: skip


def counted(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the calculation told last with as many of what it counts as a turn says are left, or with those gone."""
    before, told = context.asked, context.result
    model = told.model if isinstance(told, ModelResult) else told.record if isinstance(told, Needed) else None
    if before is None or not isinstance(model, Model) or len(alone.reading.words) > _LONG:
        return None
    item = next((i for i in model.inputs if i.unit == "count" and i.default and i.cues), None)
    figure = knowledge.figure(item.default, before.variant) if item else None
    number = _number(alone.reading, item, figure.value, knowledge) if item and figure else None
    if item is None or number is None:
        return None
    question = _with_number(number, item, model, before, alone, knowledge)
    found = resolve_scored(question, knowledge).result
    last = getattr(found, "model", None) or getattr(found, "record", None)
    return (question, found) if last == model else None


def _number(reading: Reading, item: ModelInput, all_of_them: float, knowledge: Knowledge) -> float | None:
    """Return how many a turn says are left, where it says nothing else."""
    amounts = {a.start: a for a in reading.amounts}
    if any(a.unit not in (None, "count") for a in reading.amounts):
        return None
    values = {k: amounts[k].value for k in amounts}
    values |= {k: float(_NUMBERS[w]) for k, w in enumerate(reading.words) if w in _NUMBERS and k not in values}
    values = {k: v for k, v in values.items() if k == 0 or reading.words[k - 1] not in _LEADING}
    if not values or any(v != int(v) or not 0 < v <= all_of_them for v in values.values()):
        return None
    if not _says_no_more(reading, values, item, knowledge):
        return None
    left = [k for k in sorted(values) if _OUT.isdisjoint(reading.words[max(0, k - 3) : k + 5])]
    gone = not _OUT.isdisjoint(reading.words)
    if len(values) > 1 and gone:
        return values[max(values)] if max(values) > min(values) + 1 else None
    value = values[left[-1]] if left else values[max(values)]
    number = all_of_them - value if gone and not left else value
    says = gone or bool(amounts) or any(reading.words[k] not in _POINTING for k in values)
    return number if 0 < number <= all_of_them and says else None


def _says_no_more(reading: Reading, values: Iterable[int], item: ModelInput, knowledge: Knowledge) -> bool:
    own = knowledge.phrase(item.cues).concepts | knowledge.phrase(f"{item.cues} {item.assumed}").concepts
    named = {k for m in reading.mentions if not own.isdisjoint(m.concepts) for k in m.taken}
    skip = named.union(values)
    rest = (w for k, w in enumerate(reading.words) if k not in skip and w[0].isalpha())
    return all(w in _BESIDE or w in _OUT or w in _NUMBERS for w in rest)


def _with_number(
    number: float, item: ModelInput, model: Model, before: Question, alone: Question, knowledge: Knowledge
) -> Question:
    """Return the question before with how many there are in the place of what it said of that."""
    words = list(before.reading.words)
    at = bind(model, before, knowledge).places.get(item.id)
    if at is not None:
        words[at] = f"{number:g} working {item.id}"
        if at and words[at - 1] == "all":
            words[at - 1] = ","
        text = " ".join(words)
    else:
        chosen = set(_chosen(item, before, knowledge))
        kept = " ".join(w for k, w in enumerate(words) if k not in chosen).rstrip("?. ")
        text = f"{kept} , {number:g} working {item.id}"
    question = question_of(text, knowledge, before.variant)
    return question.with_text(alone.reading.text)._replace(
        context=True, variant=before.variant, named_variant=before.named_variant, background=before.background
    )


def _chosen(item: ModelInput, before: Question, knowledge: Knowledge) -> Iterable[int]:
    """Yield the places of the names by which the question before chose how many there are."""
    for words, _, _ in item.choices:
        for phrase in (p.strip() for p in words.split(";")):
            if said(phrase, before, knowledge):
                named = knowledge.phrase(phrase).concepts
                yield from (k for m in before.reading.mentions if not named.isdisjoint(m.concepts) for k in m.taken)
