"""The measure of a thing that a question is after: "tiller breakout | force", "the | range | of the accumulator".

Elsewhere such a word may be said in passing; where a question asks for it, nothing that does not tell it is an answer.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from assistant.understanding.mentions import PLAIN, Mention
from assistant.understanding.words import stem

_OF = frozenset({"of"})
_ARTICLES = frozenset({"the", "a", "an", "my", "our", "each", "one", "every", "its", "your"})
_TRAILING = frozenset({"?", ".", "!", "please", "pls"})
_BREAKING = frozenset({
    "is", "are", "was", "do", "does", "did", "can", "may", "must", "should", "will", "would", "has", "have", "to", "at",
    "by", "with", "if", "when", "i", "we", "you", "they", "it", "that", "this", "and", "or", "but", "not", "in", "from",
    "the", "a", "an", "under", "over", "above", "below", "than", "while", "before", "after", "until", "up", "down",
    "off", ",",
})  # fmt: skip
"""Words after which a measure at the end of a question is not that of the thing before them."""
_TOWARDS = frozenset({"to", "until", "till"})
_WHETHER = frozenset({
    "is", "are", "was", "does", "do", "did", "can", "may", "must", "should", "will", "has", "have", "if", "could",
    "would", "shall", "cannot", "isn", "aren", "don", "doesn", "didn", "couldn", "won", "wouldn", "shouldn", "not",
    "let", "try",
})  # fmt: skip
_FEW = 4
"""Words between a thing and its measure, at most: "the tiller's breakout force"."""


def with_measure(
    mentions: list[Mention], words: Sequence[str], kinds: Mapping[str, str], holds: Callable[[str, str], bool]
) -> list[Mention]:
    """Return the mentions with the measure that is asked for marked as such; holds: looks a word up in a list."""
    if not words or words[0] in _WHETHER:
        return mentions
    places = [i for i, word in enumerate(words) if holds(word, "measures")]
    if not places:
        return mentions
    at = {m.start: m for m in mentions}
    inside = {k for m in mentions if m.end - m.start > 1 for k in m.taken}
    for i in (i for i in places if i not in inside):
        mention = at.get(i)
        if mention is not None and not (mention.is_plain or mention.is_outside or _is_quantity(mention, kinds)):
            continue
        if any(m.start < i and _is_quantity(m, kinds) for m in mentions):
            return mentions  # another one is asked for first: "minutes to cool to take-off temperature"
        if _is_of(i, words, at, kinds) or _ends(i, words, mentions, kinds):
            if mention is None or mention.is_outside:
                concepts = frozenset((PLAIN + stem(words[i]),))
                mention = Mention(i, i + 1, (i,), concepts, frozenset(), False, words[i])
            meant = mention._replace(passing=False, weak=False, measure=True)
            return sorted([*(m for m in mentions if m is not at.get(i)), meant], key=lambda m: m.start)
    return mentions


def _is_quantity(mention: Mention, kinds: Mapping[str, str]) -> bool:
    return not mention.weak and all(kinds.get(c) == "quantity" for c in mention.concepts)


def _names_thing(mention: Mention, kinds: Mapping[str, str]) -> bool:
    if mention.weak or mention.passing:
        return False
    return mention.is_plain or any(not kinds.get(c) and c[0].isalpha() for c in mention.concepts)


def _is_of(i: int, words: Sequence[str], at: Mapping[int, Mention], kinds: Mapping[str, str]) -> bool:
    """Return whether a thing follows of which a word is the measure."""
    if _OF.isdisjoint(words[i + 1 : i + 2]):
        return False
    k = i + 2
    while k < len(words) and words[k] in _ARTICLES:
        k += 1
    return k in at and _names_thing(at[k], kinds)


def _ends(i: int, words: Sequence[str], mentions: Sequence[Mention], kinds: Mapping[str, str]) -> bool:
    """Return whether a word ends the question, not far behind a thing."""
    if any(word not in _TRAILING for word in words[i + 1 :]):
        return False
    before = [m for m in mentions if m.end <= i and _names_thing(m, kinds)]
    if not before or (len(before) == 1 and before[0].is_plain):
        return False
    led = words[max(0, before[-1].start - 1) : before[-1].start]
    return i - before[-1].end < _FEW and _BREAKING.isdisjoint(words[before[-1].end : i]) and _TOWARDS.isdisjoint(led)
