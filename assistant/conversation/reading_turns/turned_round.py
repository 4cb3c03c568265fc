"""Turn round what the question before said: "and without?"."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Protocol

from assistant.answering.parts import condition_words
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.mentions import Reading
from assistant.understanding.states import Condition

_PAIR = 2
_WITH = {"with": "with", "without": "without", "w/o": "without"}
_BESIDE_WITH = frozenset({
    "and", "an", "so", "ok", "okay", "or", "then", "now", "what", "about", "how", "if", "them", "it", "any", "that",
    "those", "the", "same", "but", "again", "right", "fine", "well", "yes", "sure", "good", "thanks", "anyway",
})  # fmt: skip


class Places(Protocol):
    """What is put in the place of words of the question before, and what of the turn is used up."""

    used: set[int]
    drop: set[int]

    def replace(self, old: Sequence[int], new: Sequence[str], used: Iterable[int]) -> None:
        """Put words in the place of some of the question before; used: the turn's own that they stand for."""


def only_with(reading: Reading) -> bool:
    """Return whether a turn says no more than with or without what was spoken of."""
    said = [w for w in reading.words if w in _WITH]
    return len(said) == 1 and _BESIDE_WITH.issuperset(w for w in reading.words if w[0].isalpha() and w not in _WITH)


def replace_with(before: Question, reading: Reading, places: Places, know: Knowledge) -> None:
    """Put "without" in the place of "with" before a thing, or the other way about, where a turn says no more."""
    if not only_with(reading):
        return
    said = [_WITH[w] for w in reading.words if w in _WITH]
    words, everything = before.reading.words, range(len(reading.words))
    starts = {m.start for m in before.reading.mentions}
    for k in range(len(words) - 1, -1, -1):
        if words[k] not in _WITH or not starts & {k + 1, k + 2}:
            continue
        state = _state_behind(before, k, know)
        if state is not None:  # "without" turns the state round, and "with" once more
            said_so = condition_words(state, know).removeprefix("the ").split()
            places.replace(state.where, said_so, everything)
            return
        if _WITH[words[k]] != said[0]:
            places.replace((k,), said, everything)
            return
    if said == ["without"] and _leave_off(before, places, everything, know):
        return
    given = [c for c in before.conditions if c.where and not c.is_result]
    for condition in reversed(given if said == ["without"] else ()):
        for mention in before.reading.mentions:
            if set(mention.taken) < set(condition.where) and not any(c[0] == "@" for c in mention.concepts):
                places.replace(condition.where, ("without", *mention.text.split()), everything)
                return


def _state_behind(before: Question, at: int, know: Knowledge) -> Condition | None:
    """Return the other state of the thing behind a "with", where it says a state in words: "with the fans on"."""
    things = [m for m in before.reading.mentions if m.start in (at + 1, at + 2)]
    for condition in before.conditions:
        values = [value for value, _, _ in know.states.values.get(condition.input, ())]
        said = [m for m in before.reading.mentions if set(m.taken) <= set(condition.where) and m not in things]
        stated = any(c[0] == "@" for m in (*said, *things) for c in m.concepts)
        here = any(set(m.taken) & set(condition.where) for m in things)
        if here and stated and len(values) == _PAIR and not condition.is_result:
            other = values[1 - values.index(condition.value)]
            return condition._replace(value=other)
    return None


def _leave_off(before: Question, places: Places, everything: range, know: Knowledge) -> bool:
    """Put "without" before the last thing that may be chosen, where none is said of it: "fan time constant"."""
    given = {c.input for c in before.conditions}
    for mention in reversed(before.reading.mentions):
        inputs = {i for c in (*mention.concepts, *mention.implied) for i in know.states.by_term.get(c, ())}
        if len(inputs) == 1 and not inputs & (given | know.states.failures):
            places.replace(mention.taken, ("without", *mention.text.split()), everything)
            return True
    return False
