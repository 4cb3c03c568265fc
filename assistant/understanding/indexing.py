"""Compile the knowledge for asking: the lexicon of all names, and every way of asking as concepts.

This runs once for a knowledge base; what it returns is plain and is kept in the cache beside the base.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator
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
from assistant.quantities.tokens import tokenize
from assistant.quantities.units import Units
from assistant.understanding.lexicon import GAP, Lexicon, joined_names, name_stems
from assistant.understanding.reading import OUTSIDE, PLAIN, STATE, Mention, Reader
from assistant.understanding.spelling import allowed_distance, apart
from assistant.understanding.words import expand, stem

SOFT = 0.35
BOUND = 0.45
QUANTITY = 0.8


def derive(base: Base) -> dict[str, Any]:
    """Return everything that understanding needs of a base, as plain JSON values.

    What a question needs little of (names, ways of asking, vocabularies) is kept as text and read when wanted:
    a start then parses a few long strings, and not tens of thousands of short ones.
    """
    lexicon = compile_lexicon(base)
    units = Units({"units": base.units_data})
    reader = Reader(Lexicon(lexicon), units)
    kinds = lexicon["kinds"]
    asks = [ask for name in base.order for ask in _asks(reader, base, name) if _tells(ask, kinds)]
    vocabulary = {name: sorted(_vocabulary(reader, base, name)) for name in base.order}
    lexicon["surface"] = " ".join(sorted({*lexicon["surface"].split(), *_asking_words(base)}))
    lexicon["words"] = " ".join(sorted({*lexicon["words"].split(), *_plain_words(asks, vocabulary)}))
    _weigh(asks, lexicon["kinds"])
    return {
        "lexicon": {**lexicon, "names": {first: dumps(found) for first, found in lexicon["names"].items()}},
        "asks": [dumps(ask) for ask in asks],
        "of": [ask[0] for ask in asks],
        "vocabulary": {name: "\n".join(concepts) for name, concepts in vocabulary.items()},
        "postings": {concept: " ".join(map(str, found)) for concept, found in _postings(asks).items()},
    }


# --- the lexicon


def compile_lexicon(base: Base) -> dict[str, Any]:
    """Return all names by first stem, longest first, and what is known of their concepts."""
    names: dict[tuple[str, ...], list[str]] = defaultdict(list)
    surface: set[str] = set()
    whole: set[str] = set()
    terms = base.terms.values()
    for term in terms:
        for name in (*term.names, *term.heard):
            _add(names, surface, name, OUTSIDE + name if term.kind == "outside" else term.id)
    known = {s for stems in names for s in stems}
    corrections = _corrections(base, surface)
    for term in terms:
        for name in term.misspelt:
            # A misspelling of several words is left to mending, which would otherwise take its words for known.
            if len(name.split()) == 1 and name not in corrections:
                names[name_stems(name)].append(term.id)
    for concept, name in (*_state_names(base), *_type_names(base, whole)):
        _add(names, surface, name, concept)
    by_first: dict[str, list[list[list[str]]]] = defaultdict(list)
    for stems, concepts in names.items():
        by_first[stems[0]].append([list(stems), sorted(set(concepts))])
    for found in by_first.values():
        found.sort(key=lambda entry: (-len([s for s in entry[0] if s != GAP]), entry[0]))
    settings = base.settings
    neutral = _list(base, "neutral_words") | set(str(settings.get("neutral", "")).split())
    return {
        "names": dict(by_first),
        "kinds": {t.id: t.kind for t in terms if t.kind != "thing"},
        "implied": {**{t.id: list(t.implies) for t in terms if t.implies}, **_inside(names)},
        "families": {t.id: t.family for t in terms if t.family},
        "wants": {t.id: t.wants for t in terms if t.wants},
        "sets": {t.id: [list(pair) for pair in t.sets] for t in terms if t.sets},
        "words": " ".join(sorted(known | {s for stems in names for s in stems})),
        "surface": " ".join(sorted(surface)),
        "corrections": "".join(f"\n{wrong} {right}" for wrong, right in sorted(corrections.items())) + "\n",
        "neutral": " ".join(sorted(neutral | {stem(word) for word in neutral})),
        "weak": str(settings.get("weak", "")),
        "whole": " ".join(sorted(whole)),
        "shown": _shown(base),
        "variant_numbers": [v.id for v in base.variants.values() if v.id.isdigit()],
    }


def _corrections(base: Base, surface: set[str]) -> dict[str, str]:
    """Return the proper word of each listed misspelling, so that longer names with the word are found as well.

    A misspelling that is ordinary English or part of another name is kept as a name: the sentence decides.
    """
    ordinary = _list(base, "common_words") | surface
    found: dict[str, str] = {}
    for term in base.terms.values():
        proper = [tuple(name.lower().split()) for name in term.names]
        for name in term.misspelt:
            wrong = tuple(name.lower().split())
            for old, new in _differing(wrong, proper):
                if old not in ordinary and old.isalpha():
                    found.setdefault(old, new)
    return found


def _shown(base: Base) -> dict[str, str]:
    """Return the labels of one word that are shown in capitals and are common words otherwise, with a full name."""
    names = {name for term in base.terms.values() for name in term.names}
    return {
        term.show.lower(): term.names[0]
        for term in base.terms.values()
        if term.family and term.show.isupper() and term.show.isalpha() and term.show.lower() not in names
    }


def _differing(wrong: tuple[str, ...], proper: list[tuple[str, ...]]) -> list[tuple[str, str]]:
    """Return the words of a misspelling beside the words of the name that it is nearest to."""
    words: list[tuple[str, ...]] = [(word,) for name in proper for word in name]
    alike = words if len(wrong) == 1 else [name for name in proper if len(name) == len(wrong)]
    ranked = sorted((sum(apart(a, b) for a, b in zip(wrong, name, strict=True)), name) for name in alike)
    if not ranked or ranked[0][0] > allowed_distance("".join(wrong)):
        return []
    return [(old, new) for old, new in zip(wrong, ranked[0][1], strict=True) if old != new and new.isalpha()]


def _inside(names: dict[tuple[str, ...], list[str]]) -> dict[str, list[str]]:
    """Return what the single words inside the names of states and results stand for: "normal retraction"."""
    found: dict[str, set[str]] = defaultdict(set)
    for stems, concepts in names.items():
        for concept in concepts:
            if concept[0] == "=" and len(stems) > 1:
                found[concept].update(c for s in stems for c in names.get((s,), ()) if c[0] not in "=@!")
    return {concept: sorted(inner) for concept, inner in found.items()}


def _add(names: dict[tuple[str, ...], list[str]], surface: set[str], name: str, concept: str) -> None:
    stems = name_stems(name)
    if not stems or stems[0] == GAP:
        return
    names[stems].append(concept)
    for joined in joined_names(stems, name):
        names[joined].append(concept)
        surface.update(joined)
    surface.update(w for token in tokenize(name) for w in expand(token.text) if w.isalpha())


def _state_names(base: Base) -> Iterator[tuple[str, str]]:
    """Yield names of states: the word groups, an input's own words, the values of a table's outputs."""
    for group, words in base.lists.items():
        for word in words:
            yield STATE + group, word
    for item in base.inputs.values():
        for value, _, listed in item.values:
            for phrase in _phrases(listed):
                yield f"{STATE}{item.id}.{value}", phrase
    for table in _tables(base):
        for output in table.outputs:
            for value, _, listed in output.values:
                for phrase in _phrases(listed):
                    yield f"={table.id}.{output.id}.{value}", phrase


def _phrases(words: str) -> list[str]:
    return [part.strip() for part in words.split(";") if part.strip() and not part.strip().startswith("@")]


def _type_names(base: Base, whole: set[str]) -> Iterator[tuple[str, str]]:
    info = base.type_info
    for name in (info.name, *info.names, info.operator, *info.operator_names):
        if name:
            yield "type:" + info.id, name
    for variant in base.variants.values():
        for name in variant.names:
            whole.update(t for t in name.lower().split() if t[0].isdigit() and t[-1].isalpha())
    for variant in base.variants.values():
        for name in variant.names:
            yield "variant:" + variant.id, name
            yield "variant:" + variant.id, "the " + name.removeprefix("the ")
    for label, record in info.not_here:
        yield "elsewhere:" + record, label


def _tables(base: Base) -> list[StateTable]:
    return [base.records[name] for name in base.ids("tables")]


def _list(base: Base, name: str) -> set[str]:
    try:
        lines = base.word_list(name).splitlines()
    except OSError:
        return set()
    return {line.strip() for line in lines if line.strip() and not line.startswith("#")}


# --- ways of asking


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


def _asking_words(base: Base) -> set[str]:
    """Return the words of all ways of asking, as written: what a misspelt word may have been."""
    found: set[str] = set()
    for name in base.order:
        for _, texts in _ask_texts(base.records[name]):
            for text in texts:
                found.update(t.text for t in tokenize(text) if t.text.isalpha() and len(t.text) > 3)
    return found


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
        filler = all(reader.lexicon.kinds.get(c) == "filler" for c in mention.concepts)
        plain = all(c.startswith(PLAIN) for c in mention.concepts)
        if not (mention.weak and (filler or plain)):
            yield sorted(mention.concepts)
    for amount in reading.amounts:
        yield [f"#{amount.value:g}"]


def _vocabulary(reader: Reader, base: Base, name: str) -> set[str]:
    """Return every concept that the text of a record may explain in a question."""
    found: set[str] = set()
    for text in _texts(base, base.records[name]):
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


def _texts(base: Base, record: Any) -> Iterator[str]:
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
        yield str(getattr(record, field, "") or "")
    yield from getattr(record, "needed", ())
    for step in getattr(record, "steps", ()):
        yield from (step.do, *step.asks)
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
        yield from output.asks
        for _, says, words in output.values:
            yield says
            yield from _phrases(words)


def _plain_words(asks: list[list[Any]], vocabulary: dict[str, list[str]]) -> set[str]:
    found = {c[1:] for concepts in vocabulary.values() for c in concepts if c.startswith("~")}
    for _, _, required, optional in asks:
        found |= {c[1:] for part, _ in (*required, *optional) for c in part if c.startswith("~")}
    return found


def _weigh(asks: list[list[Any]], kinds: dict[str, str]) -> None:
    """Give each part of an ask its weight: rare concepts tell more, bounds and soft aspects less."""
    holders: dict[str, set[str]] = defaultdict(set)
    for name, _, required, optional in asks:
        for part, _ in (*required, *optional):
            for concept in part:
                holders[concept].add(name)
    total = len({ask[0] for ask in asks}) or 1
    for _, _, required, optional in asks:
        for part in (*required, *optional):
            rarity = min(log(1 + total / len(holders[c])) for c in part[0])
            part[1] = round(rarity * min(_share(c, kinds) for c in part[0]), 3)


def _share(concept: str, kinds: dict[str, str]) -> float:
    kind = kinds.get(concept, "")
    if concept in ("maximum", "minimum"):
        return BOUND
    return {"ask": SOFT, "ask!": 1.0, "quantity": QUANTITY}.get(kind, 1.0)


def _postings(asks: list[list[Any]]) -> dict[str, list[int]]:
    postings: dict[str, list[int]] = defaultdict(list)
    for index, (_, _, required, optional) in enumerate(asks):
        for concept in {c for part, _ in (*required, *optional) for c in part}:
            postings[concept].append(index)
    return dict(postings)
