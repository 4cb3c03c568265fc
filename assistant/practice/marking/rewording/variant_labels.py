"""Figures told by the label of a variant before each: "50X: 16 m; 50: 14 m", where the label may be a number."""

from __future__ import annotations

import re

from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import VARIANT


def labels_named(answer: str, need: Need, know: Knowledge) -> str:
    """Return an answer in which a variant's label before its own figure is put as the name that it is: "on the 50"."""
    shows = {v.show: f"{VARIANT}{v.id}" for v in know.base.variants.values()}
    if not any(show in answer for show in shows):
        return answer
    label = "|".join(sorted(map(re.escape, shows), key=len, reverse=True))
    answer = re.sub(rf"(?<=\w) \(({label})\)", r" on the \1", answer)
    row = re.compile(rf"(^|[;,.(\n]\s*|\band )({label})(\s*[:=]|\s[-–—])\s*(?=(\d[\d,.]*))")
    found = row.findall(answer)
    dashed = len({name for _, name, _, _ in found}) == 1 and found[0][2].strip() not in (":", "=")
    if not found or dashed:  # "50 - 90 psi" alone is a range
        return answer
    told = [(shows[name], float(number.strip(".,").replace(",", ""))) for _, name, _, number in found]
    return row.sub(r"\1on the \2 ", answer) if all(_is_its_own(*each, need) for each in told) else answer


def _is_its_own(variant: str, value: float, need: Need) -> bool:
    """Return whether a figure is what the variant that stands before it has."""
    others = [f.value for c, f in need.elsewhere if c == variant]
    return value in (others or [f.value for p in need.points for f in p.figures])


def of_the_other(need: Need, said: Said) -> list[str]:
    """Return the figures that an answer tells of two variants the wrong way about: "14 m on the 50X"."""
    marks = [(c.amount.start, "", c.amount.value) for c in said.claims]
    named = sorted({c for c, _ in need.elsewhere if c.startswith(VARIANT)})
    spots = [(i, v) for v in named for i in said.where(frozenset((v,)))]
    own = [(i, c) for i, here in enumerate(said.concepts) for c in here if c.startswith(VARIANT) and c not in named]
    firsts = [(i, v) for i, v in (*spots, *own) if i == 0 or v not in said.concepts[i - 1]]
    if len(marks) == _TWO and len(firsts) == 1 and firsts[0][1] in named:
        return _given_to(firsts[0], marks, need, said)
    row = sorted([*marks, *((i, v, 0.0) for i, v in firsts)])
    pairs = list(zip(row[::2], row[1::2], strict=False))
    if len(row) != _TWO * _TWO or any(bool(one[1]) == bool(two[1]) for one, two in pairs):
        return []
    told = [(one[1] or two[1], two[2] if one[1] else one[2]) for one, two in pairs]
    mine = {f.value for p in need.points for f in p.figures}
    other = {f.value for c, f in need.elsewhere if c in named}
    swapped = all(value in (mine if variant in named else other) for variant, value in told)
    found = [f"{value:g} for {variant.partition(':')[2]}" for variant, value in told]
    return found if swapped and mine != other else []


_TWO = 2
_COMPARING = frozenset(("not", "unlike", "than", "like", "instead"))
"""Words with which a thing is only set against the one that is spoken of."""


def _given_to(spot: tuple[int, str], marks: list[tuple[int, str, float]], need: Need, said: Said) -> list[str]:
    """Return the figure asked for, where it is told of the other variant: "190, the short one has 205"."""
    place, variant = spot
    mine = {f.value for p in need.points for f in p.figures}
    other = {f.value for c, f in need.elsewhere if c == variant}
    here = [value for at, _, value in marks if said.clauses[at] == said.clauses[place]]
    clause = {w for i, w in enumerate(said.reading.words) if said.clauses[i] == said.clauses[place]}
    if not _COMPARING.isdisjoint(clause):
        return []
    values = {value for _, _, value in marks}
    exchanged = len(here) == 1 and here[0] in mine - other and not values.isdisjoint(other - mine)
    return [f"{here[0]:g} for {variant.partition(':')[2]}"] if exchanged else []
