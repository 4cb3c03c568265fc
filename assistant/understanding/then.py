"""Ways of asking that hold only for what was just told: compiled by paragraph, and matched to a turn's own words.

Once the ground-lock pins are told of, "do they all come off" asks of their removal; by themselves such words ask of
nothing. Few records stand in a paragraph, so single plain words are enough to tell one from another there.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from sys import intern
from typing import Any

from assistant.frozen import NamedTuple
from assistant.understanding.mentions import Reading
from assistant.understanding.words import stem

_FIELD, _PART, _ONE, _BY = "{", "}", "|", "^"
_SENSES = 2
TOPIC = "topic"
_ELSEWHERE = r"^([A-Z]+ [\w.-]+): (.+)$"
"""A way of asking that is for a record after another paragraph than its own: "ABN 32.4: only two greens"."""
SMALL = frozenset({
    "a", "an", "the", "and", "so", "ok", "okay", "right", "but", "well", "um", "er", "hm", "please", "sorry", "then",
    "is", "are", "was", "were", "be", "am", "do", "does", "did", "can", "could", "would", "will", "should", "shall",
    "i", "me", "my", "we", "us", "our", "you", "your", "it", "its", "that", "this", "these", "those", "them", "they",
    "he", "s", "to", "of", "for", "with", "at", "in", "there", "have", "has", "had", "got", "get", "about", "just",
    "t", "re", "ve", "ll", "d", "must", "may", "now", "thing", "things", "bit", "what", "actually", "anyway", "though",
    "mean", "say", "exactly", "again", "also", "too", "one", "ones", "on", "if", "need", "want", "as", "let",
    "not", "than", "even", "still", "by", "or", "going", "go", "like", "some",
})  # fmt: skip
"""Words that tell nothing apart, unless a way of asking consists of them alone."""


class Element(NamedTuple):
    """A word or a name of a way of asking: its stems, all of which must be said, or concepts, any of which may be."""

    stems: frozenset[str]
    concepts: frozenset[str]


class Then(NamedTuple):
    """A way of asking for a record, or for one of its steps, after something of its paragraph."""

    record: str
    step: int | None
    elements: tuple[Element, ...]


def compiled(reader: Any, base: Any) -> dict[str, list[str]]:
    """Return the ways of asking by the paragraph after which they hold, as text."""
    found: dict[str, list[str]] = defaultdict(list)
    for name in base.order:
        record = base.records[name]
        own = {*_first(record), *_topic(record, base)}
        for step, texts in _texts(record):
            for text in texts:
                elsewhere = re.match(_ELSEWHERE, text)
                packed = _FIELD.join((name, step, _packed(reader, elsewhere[2] if elsewhere else text)))
                for paragraph in (elsewhere[1],) if elsewhere else sorted(own):
                    found[paragraph].append(packed)
    return dict(found)


def _first(record: Any) -> list[str]:
    """Return the paragraph that a record rests on."""
    return [f"{source.document} {source.paragraph}" for source in getattr(record, "sources", ())][:1]


def _topic(record: Any, base: Any) -> set[str]:
    """Return the topic of what is true of all aeroplanes: of such records few stand in one paragraph."""
    documents = {source.document for source in getattr(record, "sources", ())}
    general = documents and all(name in base.documents and base.documents[name].published for name in documents)
    has_topic = bool(getattr(record, "topic", ""))
    return {topic_key(record)} if general and has_topic else set()


def topic_key(record: Any) -> str:
    """Return the name under which the ways of asking after anything of a record's topic are kept."""
    return f"{TOPIC} {getattr(record, 'topic', '')}"


def texts_of(record: Any) -> Iterator[str]:
    """Yield the ways of asking of a record and its steps, as they are written."""
    for _, texts in _texts(record):
        for text in texts:
            elsewhere = re.match(_ELSEWHERE, text)
            yield elsewhere[2] if elsewhere else text


def _texts(record: Any) -> Iterator[tuple[str, Iterable[str]]]:
    yield "", getattr(record, "then", ())
    for index, step in enumerate(getattr(record, "steps", ())):
        yield str(index), step.then


def _packed(reader: Any, text: str) -> str:
    reading = reader.read(text, mending=False)
    taken: set[int] = set()
    parts = []
    for mention in reading.mentions:
        kinds = reader.lexicon.kinds
        concepts = sorted(c for c in mention.concepts if c[0].isalpha() and kinds.get(c) not in ("ask", "filler"))
        if mention.weak:
            continue
        if len(concepts) > _SENSES:
            concepts = []  # a word of many senses stands for itself alone
        taken.update(mention.taken)
        parts.append((sorted({stem(reading.words[k]) for k in mention.taken}), concepts))
    rest = [w for k, w in enumerate(reading.words) if k not in taken and w[0].isalnum()]
    telling = [w for w in rest if w not in SMALL] or ([] if parts else rest)
    parts += [([stem(w)], []) for w in telling]
    return _PART.join(f"{_ONE.join(stems)}{_BY}{_ONE.join(concepts)}" for stems, concepts in parts)


class Thens:
    """Ways of asking by the paragraphs after which they hold, those of each read when it is first told of."""

    def __init__(self, kept: Mapping[str, list[str]]) -> None:
        self._kept = kept
        self._read: dict[str, tuple[Then, ...]] = {}
        self._elements: dict[str, Element] = {}
        """By how they are kept: the same few words are said of many records."""

    def after(self, paragraph: str) -> tuple[Then, ...]:
        """Return the ways of asking that hold after a paragraph."""
        found = self._read.get(paragraph)
        if found is None:
            found = self._read[paragraph] = tuple(map(self._unpacked, self._kept.get(paragraph, ())))
        return found

    def _unpacked(self, text: str) -> Then:
        name, step, parts = text.split(_FIELD)
        return Then(intern(name), int(step) if step else None, tuple(map(self._element, parts.split(_PART))))

    def _element(self, part: str) -> Element:
        found = self._elements.get(part)
        if found is None:
            stems, concepts = part.split(_BY)
            named = frozenset(concepts.split(_ONE)) if concepts else frozenset()
            found = self._elements[part] = Element(frozenset(stems.split(_ONE)), named)
        return found


class Turn(NamedTuple):
    """The words of a turn: the places of those that tell, by stem and by what they name; and what the longer names at
    places within them stand for.
    """

    stems: Mapping[str, list[int]]
    concepts: Mapping[str, list[int]]
    telling: frozenset[int]
    within: Mapping[int, frozenset[str]]


def words_of(reading: Reading) -> Turn:
    """Return a turn as ways of asking are matched to it."""
    stems: dict[str, list[int]] = defaultdict(list)
    concepts: dict[str, list[int]] = defaultdict(list)
    telling = set()
    within: dict[int, frozenset[str]] = {}
    for place, word in enumerate(reading.words):
        if word[0].isalnum():
            stems[stem(word)].append(place)
            if word not in SMALL:
                telling.add(place)
    for mention in reading.mentions:
        for concept in mention.telling:
            concepts[concept] += mention.taken
        if len(mention.taken) > 1 and any(c[0].isalpha() for c in mention.concepts):
            within.update(dict.fromkeys(mention.taken, mention.concepts | mention.implied))
    return Turn(stems, concepts, frozenset(telling), within)


def said_in(turn: Turn, then: Then, within: bool = False) -> frozenset[int] | None:
    """Return the places of the words of a turn that a way of asking explains, or None where it is not said whole.

    within: whether a word within a longer name counts, though that names another thing.
    """
    explained: set[int] = set()
    for stems, concepts in then.elements:
        named = [place for c in concepts for place in turn.concepts.get(c, ())]
        other = not within and len(then.elements) == 1
        if stems <= turn.stems.keys() and not (other and _of_another_name(stems, concepts, turn)):
            explained.update(place for s in stems for place in turn.stems[s])
        elif not named:
            return None
        explained.update(named)
    return frozenset(explained)


def _of_another_name(stems: frozenset[str], concepts: frozenset[str], turn: Turn) -> bool:
    """Return whether the words of a name are said within a longer one alone, which names another thing: the brake of a
    parking brake, where the brakes are asked for.
    """
    places = [place for s in stems for place in turn.stems[s]]
    if not concepts or len(stems) > 1:
        return False
    return all(concepts.isdisjoint(turn.within.get(place, concepts)) for place in places)


def word_for_word(turn: Turn, then: Then) -> int:
    """Return how many words of a way of asking are said as they stand."""
    return sum(len(stems) for stems, _ in then.elements if stems <= turn.stems.keys())
