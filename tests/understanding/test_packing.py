"""What is packed for the cache comes out as it went in."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.understanding.packing import (
    numbers_of,
    pack_ask,
    pack_names,
    pack_numbers,
    unpack_ask,
    unpack_names,
    unpack_numbers,
    unpack_part,
)

WORDS = st.text(st.characters(codec="utf-8", exclude_characters="{}|^\n\t"), min_size=1, max_size=12)
PARTS = st.lists(st.tuples(st.lists(WORDS, min_size=1, max_size=3, unique=True), st.sampled_from((0.35, 1.0, 4.125))))


@given(WORDS, PARTS, PARTS)
def test_a_way_of_asking_comes_out_as_it_went_in(tag: str, required: list, optional: list) -> None:
    found = unpack_ask(pack_ask([tag, required, optional]))

    assert found[0] == tag
    for was, now in ((required, found[1]), (optional, found[2])):
        assert [(frozenset(concepts), weight) for concepts, weight in was] == [*map(unpack_part, now)]


@given(st.sets(st.integers(0, 3000)))
def test_numbers_come_out_as_they_went_in(numbers: set[int]) -> None:
    packed = pack_numbers(sorted(numbers))

    assert numbers_of(unpack_numbers(packed), 40) == sorted(numbers)[:40]


NAMES = st.lists(st.tuples(st.lists(WORDS, max_size=4), st.lists(WORDS, min_size=1, max_size=4)), min_size=1)


@given(NAMES)
def test_names_come_out_as_they_went_in(names: list) -> None:
    names = [(["the", *rest], concepts) for rest, concepts in names]
    packed = pack_names(names)
    seconds = {"", *(stems[1] for stems, _ in names if len(stems) > 1)}
    found = sorted(name for second in seconds for name in unpack_names(packed, "the", second))

    assert found == [(place, tuple(stems), tuple(concepts)) for place, (stems, concepts) in enumerate(names)]
    assert not unpack_names(packed, "the", "no such word")


@pytest.mark.parametrize("concept", ["a{b", "a}b", "a^b", "a\nb"])
def test_a_concept_that_holds_a_mark_is_refused(concept: str) -> None:
    with pytest.raises(ValueError, match="holds a mark"):
        pack_ask(["", [[[concept], 1.0]], []])
