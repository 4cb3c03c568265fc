"""The amounts of an answer or a phrase, with those that stand inside names, count things or pass for a variant."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from assistant.practice.marking.reading import wording
from assistant.quantities.amounts import Amount, amounts_in
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import Reading


def in_percent(amounts: Sequence[Amount], words: Sequence[str]) -> list[Amount]:
    """Return amounts with those in percent that stand in one list with a percentage: "90, 80 and 65 percent"."""
    found = list(amounts)
    for i in range(len(found) - 2, -1, -1):
        one, other = found[i], found[i + 1]
        listed = set(words[one.end : other.start]) <= {",", "and", "or", "/"} and (one.end < other.start or one.spoken)
        if one.unit is None and other.unit == "percent" and listed and one.value > 1:
            found[i] = one._replace(unit="percent")
    return found


def amounts_of(reading: Reading, know: Knowledge) -> tuple[Amount, ...]:
    """Return the amounts of a reading, with those that stand inside a name: "800 psi or less" names a technique."""
    taken = {i for a in reading.amounts for i in range(a.start, a.end)}
    inside = [
        Amount(mention.start + a.start, mention.start + a.end, a.value, a.unit, a.raw, a.spoken, a.approx)
        for mention in reading.mentions
        if mention.end - mention.start > 1 and taken.isdisjoint(mention.taken)
        for a in amounts_in(" ".join(reading.words[mention.start : mention.end]), know.units)
        if a.unit
    ]
    counts = [
        Amount(m.start, m.start + 1, float(_COUNTS[reading.words[m.start]]), None, reading.words[m.start], True, False)
        for m in reading.mentions
        if m.end - m.start > 1 and reading.words[m.start] in _COUNTS and reading.words[m.start + 1].endswith("s")
        and taken.isdisjoint(m.taken)
    ]  # fmt: skip
    taken |= {a.start for a in counts}
    more = (*inside, *counts, *(a for a in _of_them(reading.words) if a.start not in taken))
    return tuple(sorted((*reading.amounts, *more), key=lambda a: a.start)) if more else reading.amounts


def with_unnamed(amounts: Sequence[Amount], reading: Reading, know: Knowledge) -> tuple[Amount, ...]:
    """Return amounts with the bare numbers that might name a variant, and stand as no name does: "; 120 max"."""
    words = ("", *reading.words, "", "")
    variants = {i for i in reading.variant_places if words[i + 2] not in _BOUNDING}
    taken = {i for a in amounts for i in range(a.start, a.end)} | variants
    found = [
        Amount(i, i + 1, float(word), None, word, False, False) for i, word in enumerate(reading.words)
        if i not in taken and word in know.lexicon.variant_numbers and words[i + 2] not in (":", "-")
        and (words[i] not in _NAMING or words[i + 2] in _BOUNDING)
    ]  # fmt: skip
    found += [
        a for a in (amounts_in(" ".join(reading.words), know.units) if reading.variants else ())
        if a.unit is None and a.end - a.start > 1 and f"{a.value:g}" in know.lexicon.variant_numbers
        and taken.isdisjoint(range(a.start, a.end)) and words[a.start] not in _NAMING
    ]  # fmt: skip
    return tuple(sorted((*amounts, *found), key=lambda a: a.start))


_NAMING = wording.word_set("a an basic for on ordinary plain standard the this")
"""Words before the number of a variant."""
_BOUNDING = wording.word_set("allowed bound degree degrees limit max maximum permitted we you")
"""Words behind a number that is a bound: "the 120 allowed"."""


def _of_them(words: Sequence[str]) -> Iterator[Amount]:
    """Yield the counts of "six of them", which a question says of people."""
    for i, word in enumerate(words[:-2]):
        if words[i + 1 : i + 3] == ("of", "them") and word in _SMALL:
            yield Amount(i, i + 1, float(_SMALL[word]), None, word, True, False)


_SMALL = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8, "ten": 10}


_COUNTS = {"two": 2, "three": 3, "four": 4, "six": 6, "6": 6}
"""Numbers that a name may begin with: "three pins"."""
