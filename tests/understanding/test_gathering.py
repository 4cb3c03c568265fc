"""What is gathered in groups, and left out early, is what weighing every way of asking by itself would give."""

from __future__ import annotations

import random
from collections.abc import Mapping

import pytest

from assistant.understanding.gathering import worth_a_match
from assistant.understanding.packing import bits_of

_MATCHED, _WITH_TIES, _TOO_COMMON = 60, 180, 1500


def _one_by_one(gains: Mapping[str, float], holding: Mapping[str, list[int]]) -> list[tuple[int, frozenset[str]]]:
    """Return what the module is to return, in the plainest way."""
    common = {concept for concept in gains if len(holding[concept]) > _TOO_COMMON}
    counted = [concept for concept in gains if concept not in common]
    numbers = {number for concept in counted for number in holding[concept]}
    held = {n: [concept for concept in gains if n in holding[concept]] for n in numbers}
    weights = {n: sum(gains[concept] for concept in held[n] if concept not in common) for n in numbers}
    first = {n: min(counted.index(c) for c in held[n] if c in counted) for n in numbers}
    ordered = sorted(numbers, key=lambda n: (-round(weights[n], 6), first[n], n))
    least = weights[ordered[_MATCHED - 1]] - 1e-6 if len(ordered) >= _MATCHED else 0.0
    return [(n, frozenset(held[n])) for n in ordered if weights[n] >= least][:_WITH_TIES]


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("sizes", [(3, 9), (1, 5, 40, 80, 200), (10, 70, 70, 300, 600, 900), (4, 30, 1600, 2000)])
def test_the_best_are_those_that_weighing_each_by_itself_gives(seed: int, sizes: tuple[int, ...]) -> None:
    pick = random.Random(seed)
    holding = {f"c{k}": pick.sample(range(2500), size) for k, size in enumerate(sizes)}
    # No two sets of concepts weigh the same, so that there is one right order.
    gains = {concept: pick.choice((0.3, 1.0)) * (9 - k + pick.random()) for k, concept in enumerate(holding)}
    bits = {concept: bits_of(numbers) for concept, numbers in holding.items()}
    assert worth_a_match(gains, bits) == _one_by_one(gains, holding)


def test_nothing_is_gathered_of_what_no_way_of_asking_holds() -> None:
    assert worth_a_match({"tiller": 2.0}, {"tiller": 0}) == []
    assert worth_a_match({}, {}) == []


def test_what_is_everywhere_counts_where_nothing_else_does() -> None:
    found = worth_a_match({"gear": 0.1}, {"gear": bits_of(range(2000))})
    assert [number for number, _ in found] == list(range(_WITH_TIES))
