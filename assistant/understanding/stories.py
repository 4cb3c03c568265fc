"""What a question only tells beside what it asks: "Big bang at 118 kt, a tyre has let go. Stop or go?".

A word that nothing explains narrows what is asked. In a sentence of its own that asks nothing it is most often part of
the story, and bars nothing.
"""

from __future__ import annotations

from assistant.understanding.clauses import asking, parted
from assistant.understanding.mentions import Reading

_ENDS = frozenset((".", "!", ";", "?", ",", ":"))
_SENTENCE = frozenset((".", "!", ";", "?"))
_SPEAKERS = frozenset({"i", "we", "my", "our", "he", "she", "they", "you", "your", "his", "her"})
_POINTING = frozenset({"it", "its", "them", "their", "one", "those", "these"})
"""Words by which what is asked may be asked of something that the story names."""
_NEAR = 3
"""Words between a thing and its figure: "the tow bar is 3 m long"."""


def told_aside(reading: Reading) -> frozenset[int]:
    """Return the places of the words in sentences that ask nothing, where another one asks, with all clauses of these:
    "tug connected, beacon on."; none where that points at what they name, and they name nothing that is known.
    """
    words = reading.words
    if _ENDS.isdisjoint(words[:-1]):
        return frozenset()
    sentences = parted(words, _ENDS)
    asks = asking(words) or frozenset(sentences[-1])
    whole = [part for part in parted(words, _SENTENCE) if asks.isdisjoint(part) and words[part[-1]] in _SENTENCE]
    telling = [
        part
        for part in sentences
        if asks.isdisjoint(part) and (_tells(part, reading) or any(part[0] in sentence for sentence in whole))
    ]
    told = frozenset(i for part in telling for i in part)
    points = not _POINTING.isdisjoint(word for i, word in enumerate(words) if i not in told)
    if not told or len(told) == len(words) or (points and not _names_known(reading, told)):
        return frozenset()
    measured = (a for a in reading.amounts if a.unit or a.raw[:1].isdigit())
    return told.difference(k for a in measured for k in range(a.start - _NEAR, a.end + _NEAR))


def _tells(part: range, reading: Reading) -> bool:
    """Return whether a part tells something, and is no bare name that the rest is asked of: "the yacht, …"."""
    ends = reading.words[part[-1]] in _SENTENCE
    return ends or not _SPEAKERS.isdisjoint(reading.words[i] for i in part) or _names_known(reading, frozenset(part))


def _names_known(reading: Reading, told: frozenset[int]) -> bool:
    """Return whether some places name a thing that is known, or a variant."""
    known = any(m.start in told and m.known and not (m.is_plain or m.weak) for m in reading.mentions)
    return known or not told.isdisjoint(reading.variant_places)
