"""A turn that names a thing by its number or its place among those spoken of, read with the thing's own name.

"Number two has failed as well", with System 1 lost; "the other one goes too"; "how long before that one bites", after a
setting.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.conversation.context import Context
from assistant.conversation.readings import question_of
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import FactResult, LimitResult, ModelResult

_LONG = 14
_NUMBERED = r"^(.+) (\d)$"
_FIGURES = {"one": "1", "two": "2", "three": "3", "four": "4", "first": "1", "second": "2", "third": "3"}
_CARDINALS = frozenset({"one", "two", "three", "four", "1", "2", "3", "4"})
_NUMBER = frozenset({"number", "no", "num", "nr"})
_NOUNS = frozenset({"one", "system"})
_BEFORE = frozenset({
    "and", "now", "then", "what", "if", "about", "so", "with", "lose", "losing", "lost", "say", "suppose", "but", "ok",
    "how", "next", "plus", "also", "without", "minus", "lets", "meanwhile", "later", "right", ",",
})  # fmt: skip
_AFTER = frozenset({
    "fails", "failed", "goes", "gone", "went", "quits", "dies", "died", "drops", "is", "has", "as", "too", "also",
    "lost", "out", "now", "fail", "go", "failing", "packs", "s", "drains", "dropped", "comes", "came", "back", "?",
})  # fmt: skip
_POINTING = frozenset({"that", "this"})
_UNTAKEN = frozenset({"which", "what"})


def with_names(alone: Question, context: Context, knowledge: Knowledge) -> Question:
    """Return a turn with the names of the things that it only numbers or points at, else as it is."""
    words = list(alone.reading.words)
    if context.asked is None or len(words) > _LONG:
        return alone
    found = _by_number(words, context, knowledge) or _that_one(words, context, knowledge)
    if found is None:
        return alone
    at, end, name = found
    text = " ".join((*words[:at], name, *words[end:]))
    return question_of(text, knowledge, context.variant).with_text(alone.reading.text)


def _by_number(words: list[str], context: Context, knowledge: Knowledge) -> tuple[int, int, str] | None:
    """Return where a turn numbers one of some numbered things, of which another's state was given, and its name."""
    if _FIGURES.keys().isdisjoint(words) and not {"1", "2", "other"}.intersection(words):
        return None
    for name, number in _numbered(context, knowledge):
        if name in words or f"{name}s" in words or any(w in words for w in name.split()):
            return None  # named in full
        for at, end, said in _said_numbers(words, number):
            other = f"{name} {said}"
            if other in {n for t in knowledge.base.inputs.values() for n in knowledge.base.terms[t.term].names}:
                return at, end, other
    return None


def _numbered(context: Context, knowledge: Knowledge) -> Iterator[tuple[str, str]]:
    """Yield the names and the numbers of the numbered things whose states were given last."""
    given = (*(context.asked.conditions if context.asked else ()), *context.scenario)
    for condition in dict.fromkeys(c.input for c in given if not c.is_result):
        term = knowledge.base.terms.get(knowledge.base.inputs[condition].term)
        found = re.match(_NUMBERED, term.names[0]) if term else None
        if found:
            yield found.group(1), found.group(2)


def _said_numbers(words: list[str], number: str) -> Iterator[tuple[int, int, str]]:
    """Yield where a number of a thing is said, and which; number: that of the thing whose state was given."""
    for k, word in enumerate(words):
        figure = _FIGURES.get(word, word if word.isdigit() else "")
        after = words[k + 1 : k + 2]
        if figure and k and words[k - 1] in _NUMBER:
            yield k - 1, k + 1, figure
        elif word in ("first", "second") and words[k - 1 : k] == ["the"] and (not after or after[0] in _NOUNS | _AFTER):
            yield k - 1, k + 1 + (after[:1] == ["one"]), figure
        elif word == "other" and words[k - 1 : k] == ["the"] and (not after or after[0] in _NOUNS | _AFTER):
            yield k - 1, k + 1 + bool(_NOUNS.intersection(after)), "2" if number == "1" else "1"
        elif figure and word in _CARDINALS and _BEFORE.issuperset(words[:k]) and _AFTER.intersection(after):
            yield k, k + 1, figure


def _that_one(words: list[str], context: Context, knowledge: Knowledge) -> tuple[int, int, str] | None:
    """Return where a turn points at "that one", and the name of the one among its like that was told last."""
    at = next((k for k, w in enumerate(words[:-1]) if w in _POINTING and words[k + 1] == "one"), None)
    if at is None or context.answer is None or not isinstance(context.result, (FactResult, LimitResult, ModelResult)):
        return None
    families = knowledge.lexicon.families
    known = knowledge.phrase(context.answer.text.split(". ")[0]).mentions
    asked = context.asked.reading.mentions if context.asked else ()
    for mention in (*(m for m in known if len(families.keys() & m.concepts) == 1), *asked):
        concept = next((c for c in sorted(mention.concepts) if c in families), "")
        if concept in knowledge.base.terms and knowledge.base.terms[concept].show:
            return at, at + 2, mention.text if len(mention.taken) > 1 else knowledge.base.terms[concept].names[0]
    return None
