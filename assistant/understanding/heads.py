"""The thing that a question is after, of which a record must know, or it answers another question.

It is what "which" and "how much" stand before, what something is said to be "of", and what has the size asked for: "how
heavy must the | tug | be", "| tug | weight". What else a question names may be a circumstance.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from assistant.understanding.mentions import Mention, Reading

_ARTICLES = frozenset(("the", "my", "our", "a", "an", "each", "one", "your"))
_AUXILIARY = _ARTICLES | {"is", "are", "was", "must", "should", "may", "can", "will", "would", "could"}
_BEFORE = _AUXILIARY | {"two", "both", "three", "four"}
_SIZES = frozenset(("mass", "weight", "length", "pressure", "temperature"))
"""Quantities that a thing has; what moves, lasts or counts may be named in other words."""
_LASTING = "duration"
_OWN = ("where", "what colour", "which colour", "how hot", "how heavy")
"""What asks for the place, look or measure of just the thing after it."""


def things_of(reading: Reading, kinds: Mapping[str, str]) -> dict[int, Mention]:
    """Return the things of the trade that a question names, by where they begin; kinds: those of concepts."""
    return {m.start: m for m in reading.mentions if _is_thing(m, kinds)}


def heads(reading: Reading, things: Mapping[int, Mention]) -> frozenset[int]:
    """Return where those of a question's things begin that it is after."""
    if not things:
        return frozenset()
    found = set(_named_by(reading, things))
    for mention in reading.mentions:
        if not mention.concepts.isdisjoint(_SIZES) or _LASTING in mention.concepts:
            found.update(_of_size(mention, things, reading.words))
    return frozenset(found)


def counted(reading: Reading, things: Mapping[int, Mention]) -> frozenset[int]:
    """Return where the things begin that are counted or looked for, or whose look or measure is asked: "how many |
    uplocks |". What is known of another thing, though it belongs to it, tells nothing of these.
    """
    if not things:
        return frozenset()
    found: set[int] = set()
    for mention in reading.mentions:
        if mention.measure:
            found.update(_measured(mention, things, reading.words))
        if mention.text.startswith(_OWN) or (mention.text == "how many" and not mention.weak):
            found.update(_next_thing(mention.end, things, reading.words))
        elif reading.words[mention.end - 1 : mention.end + 1] == ("far", "apart"):
            found.update(_next_thing(mention.end + 1, things, reading.words))
    return frozenset(found)


def _measured(measure: Mention, things: Mapping[int, Mention], words: Sequence[str]) -> Iterator[int]:
    """Yield the things of which a measure is: the last one named after "of", or those in a row before the measure."""
    named = list(_next_thing(measure.end + 1, things, words))
    if named:
        yield named[-1]
        return
    end = max((thing.end for thing in things.values() if thing.end <= measure.start), default=-1)
    ends = {thing.end: start for start, thing in things.items()}
    while end in ends:  # "spoiler extension | time" is no time of another extension
        yield ends[end]
        end = ends[end]


def _next_thing(at: int, things: Mapping[int, Mention], words: Sequence[str]) -> Iterator[int]:
    """Yield the things that stand in a row at a place, past the articles before them: "autobrake | selector"."""
    while at < len(words) and words[at] in _BEFORE:
        at += 1
    while at in things:
        yield at
        at = things[at].end


def _is_thing(mention: Mention, kinds: Mapping[str, str]) -> bool:
    """Return whether a mention names a thing of the trade, and no state, quantity or what is asked."""
    if mention.weak or mention.is_plain or mention.text.startswith(("which ", "what ")):
        return False
    named = [c for c in mention.concepts if c[0] != "@"]
    return bool(named) and not any(c[0] == "=" or kinds.get(c) for c in named)


def _named_by(reading: Reading, things: Mapping[int, Mention]) -> Iterator[int]:
    """Yield the things after "which", "what" and "how much", and those that something is of."""
    words = reading.words
    for start, mention in things.items():
        before = start
        while before and words[before - 1] in _ARTICLES:
            before -= 1
        if mention.end in things:
            continue  # it only says what kind of the next thing is meant
        asked = words[max(0, start - 1) : start] in (("which",), ("what",))
        asked = asked or words[max(0, start - 2) : start] == ("how", "much")
        of = words[max(0, before - 1) : before] == ("of",) and words[max(0, before - 2) : before - 1] != ("out",)
        if asked or (of and mention.end >= len(words) - 1):
            yield start


def _of_size(asked: Mention, things: Mapping[int, Mention], words: Sequence[str]) -> Iterator[int]:
    """Yield the thing whose size is asked for."""
    how = asked.text.startswith("how ")
    if asked.text == "how far":
        return
    if _LASTING in asked.concepts and not (how and words[asked.end : asked.end + 1] in (("is",), ("are",))):
        return
    if not how:
        yield from (m.start for m in things.values() if m.end == asked.start)
        return
    at = asked.end
    while at < len(words) and words[at] in _AUXILIARY:
        at += 1
    if at > asked.end and at in things:
        yield at
