"""What else may have been said: words that sound like what was heard, in an order in which questions are put.

"Has each like God" is two words that were never said together, and sounds almost as "has each leg got". Every stretch
of the sounds of what was heard is held against the sounds of all words that questions here are made of; through them
the ways are looked for that are likely as questions and cost little by their sounds. Whether one of them was said is
for the recogniser to judge, which is asked how well each fits. Numbers stay as they were heard.
"""

from __future__ import annotations

import re
from functools import cached_property
from math import inf
from typing import TYPE_CHECKING

from assistant.frozen import NamedTuple
from assistant.quantities.tokens import words_of
from assistant.voice.hearing import sounds
from assistant.voice.hearing.usage import BEGINNING, END, NUMBER, counted_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence
    from typing import Any

    from assistant.voice.hearing.sounds import Sounding
    from assistant.voice.hearing.usage import Usage

_LONGEST = 13
"""Sounds of a stretch, and of a word."""
_A_SOUND = 7.0
"""What a unit of sound that is another weighs beside the natural logarithm of how likely the words are."""
_A_WORD = 2.0
"""What each word adds, since more words are never likelier."""
_FARTHEST, _MOST_COST = 0.5, 2.4
_AT_A_PLACE, _FROM_A_PLACE, _WAYS = 6, 24, 12
"""Words kept for one stretch, from one place on, and ways kept at each place."""
_ALIKE, _BEHIND = 3, 9.0
"""Ways kept that have the same last words, and how far a way may be behind the best at its place."""
_LEAST_COUNT = 2
_EXPLAINS = 1.5
"""What each sound that a word accounts for is worth where the words from one place on are chosen."""
_LIKE_WORDS = frozenset({"1", "2", "4", "8", "one", "two", "four", "eight"})
_CONTRACTED = re.compile(
    r"^((?:wo|ca|do|is|does|did|was|were|has|have|had|would|should|could|must|are)n(?=t$)"
    r"|(?:they|you)(?=ve$|re$|ll$)|we(?=ve$)|i(?=ve$|m$)|(?:what|where|who|how|that|there)(?=s$))"
)
"""A contraction written without its apostrophe, which is said otherwise than the word that is written so."""


class Piece(NamedTuple):
    """A word as it was heard, with the place of its sounds. counted: as it is counted."""

    text: str
    counted: str
    start: int
    end: int


class Arc(NamedTuple):
    """A word that may have been said there: written as text, up to a place, at a cost of sounds."""

    text: str
    counted: str
    end: int
    cost: float


class Rewording(NamedTuple):
    """A text that may have been said, and what its sounds cost, as the mean for each sound."""

    text: str
    cost: float


class Way(NamedTuple):
    """Words up to a place: what was gained, the last two, what the sounds cost, and the last word's text.

    before: the way to it. key: one for all ways that are counted alike.
    """

    gain: float
    one: str
    two: str
    cost: float
    text: str
    before: Way | None
    key: int


class Rewords:
    """Finds what may have been said, for the words of one usage."""

    def __init__(self, usage: Usage, sounding: Sounding, said: Mapping[str, str]) -> None:
        """Take what to look among. said: abbreviations and how they are said."""
        self._usage = usage
        self._sounding = sounding
        self._said = {short.lower(): words.lower() for short, words in said.items() if short.isalpha()}
        self._found: dict[tuple[int, ...], list[tuple[int, int, float]]] = {}

    def of_text(self, text: str, most: int) -> list[Rewording]:
        """Return the likeliest ways that a text may have been meant, the likeliest first."""
        pieces, said = self._pieces(text)
        return self._reworded(pieces, said, most) if said else []

    def _pieces(self, text: str) -> tuple[list[Piece], list[int]]:
        pieces: list[Piece] = []
        said: list[int] = []
        for word in words_of(text):
            counted = counted_words(word)
            numbers = self._sounds(word)
            if counted and numbers:
                pieces.append(Piece(word, counted[0], len(said), len(said) + len(numbers)))
                said += numbers
        return pieces, said

    def _sounds(self, word: str) -> list[int]:
        """Return the sounds of a word as it is said: by its letters, as a contraction, or as it is written."""
        if word[:1].isdigit():
            return sounds.numbers(self._sounding.of_text(word))
        said = self._said.get(word)
        if said is not None:
            return sounds.numbers(self._sounding.of(said.split()))
        whole = _CONTRACTED.sub(r"\1'", word)
        return sounds.numbers(self._sounding.word(whole if self._sounding.has(whole) else word.replace("'", "")))

    def _reworded(self, pieces: Sequence[Piece], said: Sequence[int], most: int) -> list[Rewording]:
        arcs = self._arcs(pieces, said)
        ways: list[list[Way]] = [[] for _ in range(len(said) + 1)]
        tops = [-inf] * (len(said) + 1)
        ways[0] = [Way(0.0, BEGINNING, BEGINNING, 0.0, "", None, 0)]
        for at in range(len(said)):
            here = arcs.get(at, ())
            words = [arc.counted for arc in here]
            for way in _best(ways[at]):
                self._go_on(way, here, self._usage.steps(way.one, way.two, words), ways, tops)
        ends = [w._replace(gain=w.gain + self._usage.steps(w.one, w.two, (END,))[0]) for w in ways[-1]]
        ends.sort(key=lambda each: -each.gain)
        found = {way.key: way for way in reversed(ends)}
        best = sorted(found.values(), key=lambda each: -each.gain)[:most]
        return [Rewording(_text(way), way.cost / len(said)) for way in best]

    def warm(self) -> None:
        """Make the sounds of all words ready, which the first text would have to wait for."""
        self.of_text("warm", 1)

    def _go_on(
        self, way: Way, arcs: Sequence[Arc], steps: Sequence[float], ways: list[list[Way]], tops: list[float]
    ) -> None:
        for arc, step in zip(arcs, steps, strict=True):
            same = arc.counted == NUMBER == way.two
            gain = way.gain - _A_SOUND * arc.cost + (0.0 if same else step + _A_WORD)
            if gain < tops[arc.end] - _BEHIND:
                continue
            tops[arc.end] = max(gain, tops[arc.end])
            one, two = (way.one, way.two) if same else (way.two, arc.counted)
            key = way.key if same else hash((way.key, arc.counted))
            ways[arc.end].append(Way(gain, one, two, way.cost + arc.cost, arc.text, way, key))

    def _arcs(self, pieces: Sequence[Piece], said: Sequence[int]) -> dict[int, list[Arc]]:
        arcs: dict[int, list[Arc]] = {}
        fixed = (piece for i, piece in enumerate(pieces) if _is_kept(pieces, i))
        within = {at for piece in fixed for at in range(piece.start, piece.end)}
        for start in range(len(said)):
            if start not in within:
                arcs[start] = self._from(start, said, within)
        for piece in pieces:
            arcs.setdefault(piece.start, []).append(Arc(piece.text, piece.counted, piece.end, 0.0))
        return arcs

    def _from(self, start: int, said: Sequence[int], within: set[int]) -> list[Arc]:
        window = tuple(said[start : start + _LONGEST])
        for size in range(1, len(window) + 1):
            if start + size - 1 in within:
                window = window[: size - 1]
                break
        found = self._found.get(window)
        if found is None:
            found = self._found[window] = self._near(window)
        words = self._vocabulary[0]
        return [Arc(words[word], words[word], start + size, cost) for word, size, cost in found]

    def _near(self, window: tuple[int, ...]) -> list[tuple[int, int, float]]:
        """Return words near the beginning of some sounds: which, how many of the sounds, at what cost."""
        import numpy as np

        if not window:
            return []
        _, coded, lengths, rare = self._vocabulary
        found: list[tuple[float, int, int, float]] = []
        for size, cost in enumerate(_costs(window, coded, lengths), 1):
            worth = cost * _A_SOUND + rare
            least = np.minimum(_MOST_COST, _FARTHEST * np.maximum(lengths, size))
            worth[cost > least] = np.inf
            for word in np.argpartition(worth, _AT_A_PLACE)[:_AT_A_PLACE]:
                if worth[word] < np.inf:
                    found.append((float(worth[word]) - _EXPLAINS * size, int(word), size, float(cost[word])))
        found.sort()
        return [each[1:] for each in found[:_FROM_A_PLACE]]

    @cached_property
    def _vocabulary(self) -> tuple[list[str], Any, Any, Any]:
        """Words, their sounds as numbers in rows of one length, how many each has, and how rare each is."""
        import numpy as np

        usual = {w for w, n in self._usage.words.items() if n >= _LEAST_COUNT and w.isalpha()}
        known = {word: self._sounds(word) for word in sorted(usual)}
        longest_first = sorted(known.items(), key=lambda pair: -len(pair[1]))
        known = {word: said for word, said in longest_first if 0 < len(said) <= _LONGEST}
        coded = np.array([said + [0] * (_LONGEST - len(said)) for said in known.values()], dtype=np.intp)
        lengths = np.array([len(said) for said in known.values()], dtype=np.intp)
        rare = np.array([-self._usage.alone(word) for word in known], dtype=np.float32) / 2
        return list(known), coded, lengths, rare


def _costs(window: Sequence[int], coded: Any, lengths: Any) -> Iterable[Any]:
    """Yield for each beginning of some sounds what it costs to take it for each word, of which the longest come first.

    A row holds the cost for each beginning of a word; what is beyond a word's end is never looked at.
    """
    import numpy as np

    table = sounds.costs()
    adding = table[0][coded]
    row = np.concatenate([np.zeros((len(coded), 1), np.float32), np.cumsum(adding, axis=1)], axis=1)
    places = np.arange(len(coded))
    reach = [int((lengths > j).sum()) for j in range(coded.shape[1])]
    for sound in window:
        taken, lost = table[sound][coded], table[sound, 0]
        new = np.zeros_like(row)
        new[:, 0] = row[:, 0] + lost
        both = np.minimum(row[:, :-1] + taken, row[:, 1:] + lost)
        for j, end in enumerate(reach):
            np.minimum(both[:end, j], new[:end, j] + adding[:end, j], out=new[:end, j + 1])
        row = new
        yield row[places, lengths]


def _is_kept(pieces: Sequence[Piece], i: int) -> bool:
    """Return whether a piece is a number: one that sounds like a little word may be no number if it stands alone."""
    if pieces[i].counted != NUMBER:
        return False
    beside = (piece.counted for piece in (*pieces[max(0, i - 1) : i], *pieces[i + 1 : i + 2]))
    return pieces[i].text not in _LIKE_WORDS or NUMBER in beside


def _best(ways: list[Way]) -> list[Way]:
    """Return the best of the ways that have come to one place, of those with the same last words a few."""
    ways.sort(key=lambda each: -each.gain)
    found: list[Way] = []
    seen: set[int] = set()
    alike: dict[tuple[str, str], int] = {}
    for way in ways:
        last = way.one, way.two
        if way.key not in seen and alike.get(last, 0) < _ALIKE:
            seen.add(way.key)
            alike[last] = alike.get(last, 0) + 1
            found.append(way)
        if len(found) >= _WAYS or way.gain < ways[0].gain - _BEHIND:
            break
    return found


def _text(way: Way | None) -> str:
    words: list[str] = []
    while way is not None:
        words.append(way.text)
        way = way.before
    return " ".join(reversed(words)).strip()
