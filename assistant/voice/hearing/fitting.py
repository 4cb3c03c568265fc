"""How well texts fit a sound, by the recogniser's own probabilities: as wholes, word by word, and in their numbers."""

from __future__ import annotations

import re
from math import exp
from typing import TYPE_CHECKING

from assistant.answering.parts import upper
from assistant.voice.hearing.numbers import number_places, other_numbers

if TYPE_CHECKING:
    from collections.abc import Sequence

    from assistant.voice.hearing.recognising import Floats, Judged, Recogniser
    from assistant.voice.hearing.shares import Reading

_SURE_WORD = 0.6
"""Probability of a word from which on it is taken as it was heard."""
_WORD = re.compile(r"[^\W\d_][\w']*")


def judged_texts(readings: Sequence[Reading], recogniser: Recogniser, samples: Floats) -> dict[str, Judged]:
    """Return how each text fits the sound, all written in one way: how a recogniser set stops tells nothing."""
    written = {reading.text: as_a_question(reading.text) for reading in readings}
    questions = list(dict.fromkeys(written.values()))
    judged = dict(zip(questions, recogniser.judge(samples, questions) if questions else (), strict=False))
    return {text: judged[question] for text, question in written.items()} if judged else {}


def as_a_question(text: str) -> str:
    """Return a text as one question, with a capital and one stop."""
    return f"{upper(text.rstrip('.?! '))}?"


def doubtful(text: str, judged: Judged) -> list[tuple[int, int]]:
    """Return the places of the words that the recogniser was not sure of."""
    found = []
    for word in _WORD.finditer(text):
        chance = 1.0
        for part in judged.parts:
            if part.start < word.end() and part.end > word.start():
                chance *= part.chance
        if chance < _SURE_WORD:
            found.append(word.span())
    return found


def number_chance(text: str, recogniser: Recogniser, samples: Floats) -> tuple[float, str]:
    """Return how likely the numbers of a text are: each part of them, and beside others that sound alike.

    Also the text with the likeliest of these in the place of its own; "" for none.
    """
    alike = other_numbers(text)
    judged = recogniser.judge(samples, [text, *alike])
    if not judged:
        return 1.0, ""
    mine, *others = judged
    places = number_places(text)
    chances = [p.chance for p in mine.parts for start, end in places if p.start < end and p.end > start]
    rivals = {each: other.total - mine.total for each, other in zip(alike, others, strict=True)}
    return min([*chances, _against(mine, others)]), max(rivals, key=rivals.__getitem__, default="")


def _against(mine: Judged, others: list[Judged]) -> float:
    """Return how likely a text is beside those in which only a number sounds a little different."""
    whole = 1.0 + sum(exp(min(20.0, other.total - mine.total)) for other in others)
    return 1 / whole
