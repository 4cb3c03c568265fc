"""What the text of a record knows: of what a mention names, and of single words."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from re import findall

from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import PLAIN, Mention
from assistant.understanding.words import stem


def is_known(mention: Mention, record: str, know: Knowledge) -> bool:
    """Return whether a record knows what a mention names, or what brings it along, be it only in passing."""
    return _knows(know.matcher.vocabulary(record), mention, know)


def is_told(mention: Mention, record: str, know: Knowledge) -> bool:
    """Return whether a record speaks of what a mention names, in what it says or is asked by."""
    if not stems_told(record, know).isdisjoint(stem(word) for word in mention.text.split()):
        return True
    return any(_knows(know.phrase(text).concepts, mention, know) for text in _told(record, know))


def stems_told(record: str, know: Knowledge) -> frozenset[str]:
    """Return the words of what a record says and is asked by, as their inflections are compared."""
    found = know.stems_told.get(record)
    if found is None:
        found = know.stems_told[record] = frozenset().union(*map(stems_said, _told(record, know)))
    return found


def stems_said(text: str) -> frozenset[str]:
    """Return the words of a text, as their inflections are compared."""
    return frozenset(stem(word) for word in findall(r"[a-z]+", text.lower()))


def word_at(words: Collection[str], at: int) -> Mention:
    """Return one word of a question as a mention that no term names."""
    word = tuple(words)[at]
    return Mention(at, at + 1, (at,), frozenset((PLAIN + stem(word),)), frozenset(), False, word)


def named_outright(mentions: Collection[Mention], know: Knowledge) -> Iterator[Mention]:
    """Yield the things of the trade that are named outright."""
    kinds = know.lexicon.kinds
    for mention in mentions:
        if mention.weak or mention.is_plain or mention.is_outside:
            continue
        if any(c[0] not in "@=" and not kinds.get(c) for c in mention.concepts):
            yield mention


def _knows(known: Collection[str], mention: Mention, know: Knowledge) -> bool:
    names = mention.concepts | mention.implied
    if not names.isdisjoint(known):
        return True
    return any(not know.lexicon.implying.get(c, frozenset()).isdisjoint(known) for c in mention.concepts)


def _told(record: str, know: Knowledge) -> Iterator[str]:
    """Yield what a record says and is asked by, without the words that it only passes over."""
    from assistant.understanding.indexing import texts_held  # few questions need it

    found = know.base.records[record]
    also = getattr(found, "also", "")
    for text in texts_held(know.base, found):
        if text != also:
            yield text.replace("[", " ").replace("]", " ")
