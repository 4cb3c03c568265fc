"""The ways of asking that are worth a match: those that hold the most of a question, by the weight of what they hold.

Many ways of asking hold the same of a question, and are kept and weighed together: a question has a thousand ways of
asking, and a few dozen such groups. What a group holds is written as bits of a number, one for each concept, and so are
the ways of asking in it, one for each of them: what two have in common is found by one step, however many they are.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence

from assistant.understanding.packing import numbers_of

_MOST, _TIED = 60, 120
"""Ways of asking that are matched, and how many more that are worth as much as the last of them."""
_EVERYWHERE = 1500
"""Ways of asking that hold a concept from which it tells nothing apart."""
_SURVEYED = 24
"""Groups that are so few that all are looked at sooner than it is known which of them can be left out."""
_DUST = 1e-9
"""What sums of the same weights may differ by."""

_Groups = dict[int, int]
"""Ways of asking by what they hold, both as bits."""


class _Weights(dict[int, float]):
    """The weight of what is held, by its bits; always summed in one order, so that ties come out alike in every run."""

    def __init__(self, gains: Sequence[float]) -> None:
        super().__init__({0: 0.0})
        self._gains = gains

    def __missing__(self, bits: int) -> float:
        last = bits.bit_length() - 1
        found = self[bits] = self[bits ^ 1 << last] + self._gains[last]
        return found


def worth_a_match(gains: Mapping[str, float], holding: Mapping[str, int]) -> list[tuple[int, frozenset[str]]]:
    """Return the ways of asking that hold the most of a question, best first, each with the concepts that it holds.

    gains: what each concept of the question counts for, the rarest first. holding: the ways of asking that hold it, as
    bits.
    """
    some = {concept: 1 << place for place, concept in enumerate(gains) if holding[concept]}
    common = [concept for concept in some if holding[concept].bit_count() > _EVERYWHERE]
    telling = [concept for concept in some if concept not in common] or common[:1]
    weights = _Weights([*gains.values()])
    # What counts the most comes first, so that it shows early what else can come among the best.
    telling.sort(key=gains.__getitem__, reverse=True)
    best = _best(_grouped([(some[c], gains[c], holding[c]) for c in telling], weights), weights)
    held = {bits: frozenset(c for c in telling if bits & some[c]) for bits in {bits for _, bits in best}}
    found = [(number, held[bits]) for number, bits in best]
    for concept in common:
        holders = holding[concept]
        found = [(n, concepts | {concept} if holders >> n & 1 else concepts) for n, concepts in found]
    return found


def _grouped(telling: Sequence[tuple[int, float, int]], weights: Mapping[int, float]) -> _Groups:
    """Return the ways of asking that hold something of a question; telling: bit, gain and holders of what tells.

    Left out are those that cannot come among the best, with all that is still to be looked at.
    """
    whole = rest = sum(gain for _, gain, _ in telling)
    groups: _Groups = {}
    closed = False
    for bit, gain, holders in telling:
        if len(groups) > _SURVEYED and whole > 2 * rest:
            least = _nth(groups, weights) - _DUST
            closed = closed or least > rest
            if closed:
                groups = {bits: members for bits, members in groups.items() if weights[bits] + rest >= least}
        alone = holders
        for bits, members in list(groups.items()):
            both = members & alone
            if both:
                groups[bits | bit] = both
                alone ^= both
                if both == members:
                    del groups[bits]
                else:
                    groups[bits] = members ^ both
        if alone and not closed:
            groups[bit] = alone
        rest -= gain
    return groups


def _best(groups: _Groups, weights: Mapping[int, float]) -> list[tuple[int, int]]:
    """Return those worth the most with what they hold, best first; among equals first those with something rare."""
    least = _nth(groups, weights) - _DUST
    tiers: dict[tuple[float, int], list[int]] = defaultdict(list)
    for bits in groups:
        if weights[bits] >= least:
            tiers[-weights[bits], bits & -bits].append(bits)
    best: list[tuple[int, int]] = []
    for tier in sorted(tiers):
        left = _MOST + _TIED - len(best)
        if not left:
            break
        found = [(number, bits) for bits in tiers[tier] for number in numbers_of(groups[bits], left)]
        best += sorted(found) if len(tiers[tier]) > 1 else found
    return best[: _MOST + _TIED]


def _nth(groups: _Groups, weights: Mapping[int, float]) -> float:
    """Return the weight that as many as are matched have, or more than it; nothing where there are fewer."""
    missing = _MOST
    for bits in sorted(groups, key=weights.__getitem__, reverse=True):
        missing -= groups[bits].bit_count()
        if missing <= 0:
            return weights[bits]
    return 0.0
