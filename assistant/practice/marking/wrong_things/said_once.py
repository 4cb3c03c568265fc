"""One name that two parts of a question ask for with more or less of it: "a gas spring" and "a spring"."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.practice.marking.finding.found import Held
from assistant.practice.marking.reading.said import Said


def not_twice(held: tuple[Held, ...], said: Said) -> tuple[Held, ...]:
    """Return points without those of which every word is another's too and is said but once: "a spring" of two."""
    words = [frozenset(w for e in h.point.elements if not e.given for w in e.words) for h in held]
    made = list(held)
    for n, one in enumerate(held):
        if not one.share or not words[n] or one.point.figures or one.point.verdict or one.point.state:
            continue
        others = ((m, other) for m, other in enumerate(held) if m != n and other.share and not other.point.figures)
        wider = [m for m, other in others if words[n] < words[m] and _are_names(one, other)]
        if wider and all(said.words.count(w) <= len(wider) for w in words[n]) and _of_parts(held, [n, *wider]):
            made[n] = one._replace(share=0.0, places=())
    return tuple(made)


def _are_names(one: Held, other: Held) -> bool:
    """Return whether two points are names of two things, not the same name twice and no step or account."""
    texts = one.point.text.lower(), other.point.text.lower()
    short = all(len(text.split()) <= _NAME for text in texts)
    return short and texts[0] not in texts[1] and texts[1] not in texts[0]


_NAME = 4


def _of_parts(held: Sequence[Held], indices: Sequence[int]) -> bool:
    """Return whether points answer different parts of a question."""
    return len({held[n].point.labels for n in indices}) == len(indices)
