"""What an answer says: its words with what they stand for, its numbers with their sense, its yes or no.

The words are read with the reader that reads questions, so that every name, misspelling and way of saying a number that
`ask` understands counts here too.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Mapping, Sequence
from itertools import pairwise

from assistant.frozen import NamedTuple
from assistant.practice.marking.reading import wording
from assistant.practice.marking.reading.amounts import amounts_of, in_percent, with_unnamed
from assistant.practice.marking.reading.bounds_heard import sense_of
from assistant.practice.marking.reading.spoken import written
from assistant.practice.marking.reading.synonyms import fellows
from assistant.quantities.amounts import Amount, amounts_in
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import VARIANT, Mention, Reading
from assistant.understanding.words import stem

_LISTED = re.compile(r"((?:^|[.;,)]\s|\n)\s*(?=\(?\d)|:\s+(?=\(?1[.)]))\(?\d{1,2}[.)]\s+(?=[A-Za-z\d(])")


_ITEM = re.compile(r"(?:^|(?<=\s))[1-9][.)]\s+(?=[A-Za-z\d(])")
"""The number of an item in a list of at least three."""
_SPANS = re.compile(r"(?<=\d)\s*(?:\.{2,}|…)\s*(?=\d)")
_TURNED_TO = re.compile(r"(?<=\d)\s*(?:\.{2,}|…)\s*(?=\d[\d.,]*(?: \w+)? (?:is|was|are|belongs|goes)\b)")
"""Dots behind which another number is spoken of: "205 ... 230 is the one for extending"."""
_BRACKETED = re.compile(r"\((?:\d|[a-d])\)(?=\s)")
_PLURAL = re.compile(r"\((?:s|es)\)")


class Claim(NamedTuple):
    """A number of an answer. sense: as of a figure. former: said to be so no longer. doubted: with a maybe."""

    amount: Amount
    sense: str
    former: bool
    now: bool
    bare: bool = False
    """Whether its unit is only that of the next number: "255 or mach point six"."""
    added: bool = False
    """Whether it is said to be added: "60 % more"."""
    carried: str = ""
    """The unit of the last number before it that has one, which it may share: "six to eleven cm, nine to sixteen"."""


class Said(NamedTuple):
    """An answer as read: plain words, the concepts at each place, the clause that each word stands in."""

    text: str
    reading: Reading
    words: tuple[str, ...]
    concepts: tuple[frozenset[str], ...]
    inner: tuple[frozenset[str], ...]
    """What each word stands for alone, though a longer name holds it."""
    clauses: tuple[int, ...]
    claims: tuple[Claim, ...]
    numbered: frozenset[int]
    """Places that amounts take."""
    fellows: Mapping[int, tuple[frozenset[str], frozenset[str]]]
    """For a word that others may stand for: their plainest forms, and what they name."""

    @property
    def content(self) -> list[Mention]:
        """Mentions that are neither fillers nor only pass by."""
        return [m for m in self.reading.mentions if not m.weak and not m.passing]

    def where(self, concepts: frozenset[str]) -> list[int]:
        """Return the places where any of the concepts stands."""
        return [i for i, here in enumerate(self.concepts) if not (here | self.inner[i]).isdisjoint(concepts)]

    def left(self, place: int, most: int = 40) -> list[str]:
        """Return the words before a place in its clause, nearest last."""
        start = max((i + 1 for i in range(place) if self.clauses[i] != self.clauses[place]), default=0)
        return list(self.words[max(start, place - most) : place])

    def right(self, place: int, most: int = 40) -> list[str]:
        """Return the words from a place to the end of its clause."""
        if place >= len(self.words):
            return []
        end = next(
            (i for i in range(place, len(self.words)) if self.clauses[i] != self.clauses[place]), len(self.words)
        )
        return list(self.words[place : min(end, place + most)])

    def beside(self, places: Iterable[int]) -> set[str]:
        """Return the words of the clauses in which some places stand."""
        here = {self.clauses[i] for i in places}
        return {w for w, c in zip(self.reading.words, self.clauses, strict=True) if c in here}

    def pieces(self, cuts: Collection[str]) -> list[range]:
        """Return the places of the words between some words that part them, piece by piece, without empty pieces."""
        words = self.reading.words
        ends = [-1, *(i for i, word in enumerate(words) if word in cuts), len(words)]
        return [range(a + 1, b) for a, b in pairwise(ends) if b - a > 1]


NO_FELLOWS: tuple[frozenset[str], frozenset[str]] = (frozenset(), frozenset())
"""What a word that stands for no other has in place of its fellows."""


def plain(word: str) -> str:
    """Return the plainest form of a word: the one of its directions or states, else its stem."""
    own = stem(word)
    other = wording.PLAIN.get(word) or wording.PLAIN.get(own)
    return stem(other) if other else own


def _variant(word: str, know: Knowledge) -> set[str]:
    """Return the concept of the one variant in whose names a word stands."""
    variants = list(know.base.variants.values())
    shown = {f"{VARIANT}{v.id}" for v in variants if v.show.lower() == word}
    found = {f"{VARIANT}{v.id}" for v in variants if any(word in name.lower().split() for name in v.names)}
    return shown or (found if len(found) == 1 else set())


def plain_words(words: tuple[str, ...]) -> tuple[str, ...]:
    """Return the plainest forms of words, as those beside them let them be read: "at once", "hotter than"."""
    return tuple(map(_plain_at, ("", *_compared(words)[:-1]), words, (*words[1:], "")))


def _compared(words: tuple[str, ...]) -> tuple[str, ...]:
    """Return words with that of more or less right before its "than": "more thrust than idle"."""
    found = list(words)
    for i in range(2, len(words)):
        if words[i] == "than" and words[i - 1] not in _MEASURED and words[i - 2] in ("more", "less"):
            found[i - 1] = words[i - 2]
    return tuple(found)


_MEASURED = wording.MORE | wording.LESS

def _plain_at(before: str, word: str, after: str) -> str:
    if (before, word) in _SOON:
        return plain("immediately")
    if word == "than" and before in wording.MORE | wording.LESS:
        return plain("above" if before in wording.MORE else "below")
    return plain(_NEARER.get((word, after), word))


_SOON = (("at", "once"), ("straight", "away"), ("right", "away"))
_NEARER = {("next", "to"): "beside", ("back", "of"): "behind", ("rear", "of"): "behind"}


def _unlisted(text: str) -> str:
    """Return a text without the numbers of a list: "1. lever up. 2. wait"."""
    if all(f"{n}." in text or f"{n})" in text for n in (1, 2, 3)):
        text = _ITEM.sub("; ", text)
    text = _SPANS.sub(" to ", _TURNED_TO.sub(", ", _PLURAL.sub("s", _BRACKETED.sub("; ", text))))
    return _LISTED.sub(r"\1", text)


def read_said(text: str, know: Knowledge) -> Said:
    """Return what an answer says; never raises."""
    reading = know.reader.read(_unlisted(written(text)))
    words = reading.words
    here: list[set[str]] = [set() for _ in words]
    inner: list[set[str]] = [set() for _ in words]
    amounts = with_unnamed(amounts_of(reading, know), reading, know)
    numbered = frozenset(i for a in amounts for i in range(a.start, a.end))
    for mention in reading.mentions:
        for i in mention.taken:
            here[i] |= mention.concepts
    for i, word in enumerate(words):
        if i not in numbered and word[0].isalpha():
            for mention in know.phrase(word).mentions:
                inner[i] |= mention.concepts
    for i, word in enumerate(words):
        if i in reading.variant_places or (word[0].isdigit() and i not in numbered):
            here[i] |= _variant(word, know)
    clauses = _clauses(words)
    said = Said(
        text, reading, plain_words(words), tuple(map(frozenset, here)),
        tuple(map(frozenset, inner)), clauses, (), numbered, _fellows(words, numbered, know),
    )  # fmt: skip
    return said._replace(claims=_carrying(_claim(a, said, reading, know) for a in in_percent(amounts, words)))


def _carrying(claims: Iterable[Claim]) -> tuple[Claim, ...]:
    """Return claims with the unit that the last one before them had."""
    found: list[Claim] = []
    unit = ""
    for claim in claims:
        found.append(claim if claim.amount.unit else claim._replace(carried=unit))
        unit = claim.amount.unit or unit
    return tuple(found)


def _fellows(
    words: Sequence[str], numbered: frozenset[int], know: Knowledge
) -> dict[int, tuple[frozenset[str], frozenset[str]]]:
    """Return what the everyday words that stand for others mean: plain words, and the concepts that they name."""
    found = {}
    for i, word in enumerate(words):
        others = fellows(word) if i not in numbered else frozenset()
        if others:
            named = (c for each in others for m in know.phrase(each).mentions if not m.weak for c in m.concepts)
            found[i] = frozenset(map(plain, others)), frozenset(c for c in named if c[0] not in "@~!")
    return found


def _clauses(words: tuple[str, ...]) -> tuple[int, ...]:
    found, clause = [], 0
    for word in words:
        if word in wording.STOPS or word in wording.CONTRASTS:
            clause += 1
        found.append(clause)
    return tuple(found)


def _claim(amount: Amount, said: Said, reading: Reading, know: Knowledge) -> Claim:
    words = reading.words
    before = _within(words, said, amount.start, back=True)
    after = _within(words, said, amount.end, back=False)
    former = bool(wording.FORMER_BEFORE.search(before) or wording.FORMER_AFTER.search(after))
    behind = re.split(r"\bwas\b|\bused to\b", before)[-1]
    if former and wording.NOW.search(behind):
        former = False
    minimum = amount.unit == "min" and amount.raw.endswith(" min")
    bare = minimum or (bool(amount.unit) and not any(a.unit for a in amounts_in(amount.raw, know.units)))
    up = before.endswith("from") and after.startswith(_UPWARD)
    down = before.endswith("from") and _DOWNWARD.match(after) is not None
    sense = "min" if up else "lower" if down else sense_of(before, after) or ("min" if minimum else "")
    if sense in ("min", "higher") and _NOT_UNTIL.search(" ".join(words[max(0, amount.start - 12) : amount.start])):
        sense = "lower"
    added = bool(wording.ADDED.intersection((*before.split()[-4:], *after.split()[:3])))
    return Claim(amount, sense, former, bool(wording.NOW.search(behind if former else before)), bare, added)


_NOT_UNTIL = re.compile(
    r"\b(?:nothing|not (?:do|work|act|function|operate))\b[^.;,]*\b(?:until|till|unless|before)\b[^.;,]*$"
)
"""What holds below a number, put as not holding above it: "nothing until you are doing at least 12 kt"."""
_DOWNWARD = re.compile(r"(?:radio |feet |and )*down(?:wards?)?\b")
_UPWARD = ("up", "on", "and up", "and above")
"""Words after "from" and a number by which the number itself counts."""


def _within(words: tuple[str, ...], said: Said, place: int, back: bool) -> str:
    """Return up to six words on one side of an amount, to the end of the clause or the next number."""
    found: list[str] = []
    steps = range(place - 1, max(-1, place - 7), -1) if back else range(place, min(len(words), place + 6))
    for i in steps:
        if i in said.numbered or words[i] in wording.STOPS:
            break
        found.append(words[i])
        if words[i] in wording.CONTRASTS:
            break
    return " ".join(reversed(found) if back else found)


def side_of(amount: Amount, reading: Reading) -> str:
    """Return on which side of a number a reading speaks: "up" for "more than 60°", "down" for "up to 60°", or ""."""
    return {"min": "up", "higher": "up", "max": "down", "lower": "down"}.get(sense_at(amount, reading), "")


def sense_at(amount: Amount, reading: Reading) -> str:
    """Return which bound a reading makes of one of its numbers, from the words beside it, as `sense_of` does."""
    before = " ".join(reading.words[max(0, amount.start - _NEAR) : amount.start])
    return sense_of(before, " ".join(reading.words[amount.end : amount.end + 3]))


_NEAR = 4
