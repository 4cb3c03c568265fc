"""Compile the knowledge for asking: the lexicon of all names, and every way of asking as concepts.

This runs once for a knowledge base; what it returns is plain and is kept in the cache beside the base.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from itertools import chain
from json import dumps
from math import log
from typing import Any

from assistant.knowledge.base import Base
from assistant.knowledge.records import (
    Bands,
    Fact,
    Limit,
    Model,
    Procedure,
    StateTable,
)  # fmt: skip
from assistant.knowledge.shelf import Shelved
from assistant.quantities.tokens import tokenize
from assistant.quantities.units import Units
from assistant.understanding.asks import UNDER
from assistant.understanding.lexicon import Lexicon
from assistant.understanding.mentions import Mention
from assistant.understanding.naming import compile_lexicon, phrases
from assistant.understanding.packing import by_beginning, by_length, pack_ask, pack_numbers
from assistant.understanding.reading import Reader
from assistant.understanding.then import compiled as compiled_then
from assistant.understanding.then import texts_of

OFTEN = 20
"""How often a word must stand in the knowledge to be one that a misspelling is likeliest to be of."""
ASKED = 4
"""How often a word must stand in questions to be one that they are put in."""
SOFT = 0.35
BOUND = 0.45
QUANTITY = 0.8


def derive(base: Base) -> dict[str, Any]:
    """Return everything that understanding needs of a base, as plain JSON values.

    What a question needs little of (names, ways of asking, vocabularies) is shelved, and read when wanted.
    """
    lexicon = compile_lexicon(base)
    units = Units({"units": base.units_data})
    reader = Reader(Lexicon(lexicon), units)
    kinds = lexicon["kinds"]
    asks = [ask for name in base.order for ask in _asks(reader, base, name) if _tells(ask, kinds)]
    vocabulary = {name: sorted(_vocabulary(reader, base, name)) for name in base.order}
    surface = {*lexicon["lists"]["surface"], *_asking_words(base)}
    words = sorted({*chain(*lexicon["words"].values()), *_plain_words(asks, vocabulary)})
    _weigh(asks, lexicon["kinds"])
    packed: dict[str, list[str]] = {}
    for name, *ask in asks:
        packed.setdefault(name, []).append(pack_ask(ask))
    return {
        "lexicon": {
            **lexicon,
            "names": Shelved(lexicon["names"]),
            "words": Shelved(by_beginning(words)),
            "lists": Shelved({"surface": by_length(surface), "frequent": _frequent(base), "asked": _asked(base)}),
        },
        "asks": Shelved(packed),
        "numbers": [len(found) for found in packed.values()],
        "vocabulary": Shelved(vocabulary),
        "knowing": Shelved(_knowing(vocabulary.values())),
        "postings": Shelved(_postings(asks)),
        "then": Shelved(compiled_then(reader, base)),
    }


def _asks(reader: Reader, base: Base, name: str) -> Iterator[list[Any]]:
    """Yield [record, tag, required, optional] for each way of asking; parts are [concepts, weight]."""
    record = base.records[name]
    for tag, texts in _ask_texts(record):
        made = [(_ask(reader, name, tag, text), text) for text in texts]
        full = [ask for ask, text in made if len(ask[2]) > 1 or len(text.split()) < 3]
        # Ways of asking that read alike count once.
        yield from {dumps(ask): ask for ask in full or [ask for ask, _ in made]}.values()


def _tells(ask: list[Any], kinds: dict[str, str]) -> bool:
    """Return whether a way of asking names a thing: one of quantities alone would fit every question."""
    parts = [part for part, _ in ask[2]]
    return any(kinds.get(c) not in ("quantity", "ask", "ask!", "filler") for part in parts for c in part)


def _ask_texts(record: Any) -> Iterator[tuple[str, Iterable[str]]]:
    if not isinstance(record, StateTable):
        # What a figure is of names it in full, whatever shorter ways of asking it has.
        named = getattr(record, "of", "") if isinstance(record, Limit) else ""
        yield "", (*getattr(record, "asks", ()), *((named,) if named else ()))
    if isinstance(record, Limit):
        yield "check", record.check
    if isinstance(record, Procedure):
        for index, step in enumerate(record.steps):
            yield f"step.{index}", step.asks
    if isinstance(record, StateTable):
        for output in record.outputs:
            yield f"output.{output.id}", output.asks
            yield f"{UNDER}{output.id}", output.asks_under


def _asking_words(base: Base) -> set[str]:
    """Return the words of all ways of asking, as written: what a misspelt word may have been."""
    found: set[str] = set()
    for name in base.order:
        for _, texts in _ask_texts(base.records[name]):
            for text in texts:
                found.update(t.text for t in tokenize(text) if t.text.isalpha() and len(t.text) > 3)
        for text in texts_of(base.records[name]):
            found.update(t.text for t in tokenize(text) if t.text.isalpha() and len(t.text) > 3)
    return found


def _frequent(base: Base) -> list[str]:
    """Return the words that stand most often in the texts and ways of asking of all records."""
    texts = (text for name in base.order for text in texts_held(base, base.records[name]))
    found = Counter(t.text for text in texts for t in tokenize(text) if t.text.isalpha() and len(t.text) > 2)
    return sorted(word for word, times in found.items() if times >= OFTEN)


def _asked(base: Base) -> list[str]:
    """Return the words that questions are put in, the most frequent first; the rare ones are left out."""
    counts = next((line for line in base.word_list("word_order").splitlines() if line.startswith(":")), "")
    pieces = counts[1:].split()
    often = [(int(times), word) for word, times in zip(pieces[::2], pieces[1::2], strict=True) if word.isalpha()]
    return [word for times, word in sorted(often, reverse=True) if times >= ASKED]


def _ask(reader: Reader, name: str, tag: str, text: str) -> list[Any]:
    required: list[list[Any]] = []
    optional: list[list[Any]] = []
    inside = False
    for piece in text.replace("[", "\x01[").replace("]", "]\x01").split("\x01"):
        inside = piece.startswith("[")
        for part in _parts(reader, piece.strip("[]")):
            (optional if inside else required).append([part, 1.0])
    return [name, tag, required, optional]


def _parts(reader: Reader, text: str) -> Iterator[list[str]]:
    reading = reader.read(text, mending=False)
    for mention in reading.mentions:
        if not (mention.weak and (mention.is_plain or reader.lexicon.fills(mention.concepts))):
            yield sorted(mention.concepts)
    for amount in reading.amounts:
        yield [f"#{amount.value:g}"]


def _vocabulary(reader: Reader, base: Base, name: str) -> set[str]:
    """Return every concept that the text of a record may explain in a question."""
    found: set[str] = set()
    for text in texts_held(base, base.records[name]):
        reading = reader.read(text.replace("[", " ").replace("]", " "), mending=False)
        for mention in reading.mentions:
            found |= mention.concepts | mention.implied | _inner(reader, mention)
        for amount in reading.amounts:
            unit = reader.units.get(amount.unit).dimension if amount.unit else ""
            found.add(f"#{amount.value:g}")
            if unit:
                found.update((unit, f"#{amount.value:g}:{unit}"))
    if isinstance(base.records[name], Fact):
        found |= set(base.records[name].answers)
    return found


def _inner(reader: Reader, mention: Mention) -> set[str]:
    """Return the single words inside a longer name: a record on the gear lever explains "gear"."""
    inner: set[str] = set()
    words = mention.text.split()
    if len(words) > 1:
        for word in words:
            for part in reader.read(word, mending=False).mentions:
                inner |= part.concepts
    return inner


def texts_held(base: Base, record: Any) -> Iterator[str]:
    """Yield the texts of a record that may explain a question: what it says and how it is asked for."""
    yield from getattr(record, "asks", ())
    yield from getattr(record, "check", ())
    for field in (
        "says",
        "of",
        "also",
        "title",
        "condition",
        "basis",
        "exceeded",
        "above",
        "below",
        "within",
        "says_more",
    ):
        if field != "title" or not isinstance(record, Fact):  # how a fact is offered explains no question
            yield str(getattr(record, field, "") or "")
    yield from getattr(record, "needed", ())
    for step in getattr(record, "steps", ()):
        yield from (step.do, *step.asks, *step.done)
    if isinstance(record, Bands):
        yield from (rule.says for rule in record.rules)
    if isinstance(record, Model):
        for item in record.inputs:
            yield from (item.cues, item.ask, item.id.replace("_", " "))
            yield from (words for words, _, _ in item.choices)
    if isinstance(record, StateTable):
        yield from _table_texts(base, record)
    why = getattr(record, "why", "")
    if why and why in base.records:
        yield getattr(base.records[why], "says", "")


def _table_texts(base: Base, table: StateTable) -> Iterator[str]:
    for name in table.inputs:
        item = base.inputs[name]
        yield " ".join(base.terms[item.term].names[:1]) if item.term in base.terms else ""
        yield from (says for _, says, _ in item.values)
    for output in table.outputs:
        yield output.label
        yield from (*output.asks, *output.asks_under)
        for _, says, words in output.values:
            yield says
            yield from phrases(words)


def _plain_words(asks: list[list[Any]], vocabulary: dict[str, list[str]]) -> set[str]:
    found = {c[1:] for concepts in vocabulary.values() for c in concepts if c.startswith("~")}
    for _, _, required, optional in asks:
        found |= {c[1:] for part, _ in (*required, *optional) for c in part if c.startswith("~")}
    return found


def _weigh(asks: list[list[Any]], kinds: dict[str, str]) -> None:
    """Give each part of an ask its weight: rare concepts tell more, bounds and soft aspects less."""
    holders: dict[str, set[str]] = defaultdict(set)
    for name, tag, required, optional in asks:
        for part, _ in () if tag.startswith(UNDER) else (*required, *optional):
            for concept in part:
                holders[concept].add(name)
    total = len({ask[0] for ask in asks}) or 1
    for _, _, required, optional in asks:
        for part in (*required, *optional):
            rarity = min(log(1 + total / (len(holders[c]) or 1)) for c in part[0])
            part[1] = round(rarity * min(_share(c, kinds) for c in part[0]), 3)


def _share(concept: str, kinds: dict[str, str]) -> float:
    kind = kinds.get(concept, "")
    if concept in ("maximum", "minimum"):
        return BOUND
    return {"ask": SOFT, "ask!": 1.0, "quantity": QUANTITY}.get(kind, 1.0)


def _knowing(vocabularies: Iterable[list[str]]) -> dict[str, str | list[int]]:
    """Return by concept the records that explain it, packed."""
    knowing: dict[str, list[int]] = defaultdict(list)
    for number, vocabulary in enumerate(vocabularies):
        for concept in vocabulary:
            knowing[concept].append(number)
    return {concept: pack_numbers(numbers) for concept, numbers in knowing.items()}


def _postings(asks: list[list[Any]]) -> dict[str, str | list[int]]:
    """Return the ways of asking by concept, packed; those under states are looked for among the tables alone."""
    postings: dict[str, list[int]] = defaultdict(list)
    for index, (_, tag, required, optional) in enumerate(asks):
        parts = () if tag.startswith(UNDER) else (*required, *optional)
        for concept in {c for part, _ in parts for c in part}:
            postings[concept].append(index)
    return {concept: pack_numbers(numbers) for concept, numbers in postings.items()}
