"""Compile the lexicon: every name of every concept, and what is known of names for reading them.

Runs once for a knowledge base; what it returns is plain and is kept in the cache.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Set
from typing import Any

from assistant.knowledge.base import Base
from assistant.knowledge.records import StateTable
from assistant.quantities.tokens import tokenize
from assistant.understanding.lexicon import GAP, joined_names, name_stems
from assistant.understanding.mentions import ELSEWHERE, OUTSIDE, STATE, VARIANT
from assistant.understanding.packing import by_beginning, pack_names
from assistant.understanding.spelling import allowed_distance, apart, ranked_cost
from assistant.understanding.words import expand, stem


def compile_lexicon(base: Base) -> dict[str, Any]:
    """Return all names by first stem, longest first, and what is known of their concepts."""
    names: dict[tuple[str, ...], list[str]] = defaultdict(list)
    surface: set[str] = set()
    whole: set[str] = set()
    terms = base.terms.values()
    single = {name_stems(name) for term in terms for name in (*term.names, *term.heard) if name.isalpha()}
    for term in terms:
        for name in (*term.names, *term.heard):
            _add(names, surface, name, OUTSIDE + name if term.kind == "outside" else term.id, single)
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
    stated = {item.term for item in base.inputs.values()}
    neutral = _list(base, "neutral_words") | set(str(settings.get("neutral", "")).split())
    return {
        "names": {
            begin: {first: pack_names(by_first[first]) for first in listed}
            for begin, listed in by_beginning(by_first).items()
        },
        "kinds": {t.id: t.kind for t in terms if t.kind != "thing"},
        "implied": {**{t.id: list(t.implies) for t in terms if t.implies}, **_inside(names)},
        "families": {t.id: t.family for t in terms if t.family},
        "wants": {t.id: t.wants for t in terms if t.wants},
        "sets": {t.id: [list(pair) for pair in t.sets] for t in terms if t.sets},
        "shows": {t.id: [t.show, [list(pair) for pair in t.shows]] for t in terms if t.shows},
        "ends": {t.id: [t.show, [list(pair) for pair in t.ends]] for t in terms if t.ends},
        "words": by_beginning(sorted(known | {s for stems in names for s in stems})),
        "lists": {"surface": sorted(surface)},
        "corrections": "".join(f"\n{wrong} {right}" for wrong, right in sorted(corrections.items())) + "\n",
        "neutral": " ".join(sorted(neutral | {stem(word) for word in neutral})),
        "weak": str(settings.get("weak", "")),
        "whole": " ".join(sorted(whole)),
        "shown": _shown(base),
        "stated": sorted(stated),
        "stated_stems": sorted({stems[0] for stems, concepts in names.items() if stated.intersection(concepts)}),
        "variant_numbers": [v.id for v in base.variants.values() if v.id.isdigit()],
    }


def _corrections(base: Base, surface: set[str]) -> dict[str, str]:
    """Return the proper word of each listed misspelling, so that longer names with the word are found as well.

    A misspelling that is ordinary English or part of another name is kept as a name: the sentence decides.
    """
    ordinary = _list(base, "common_words") | surface
    slips = (line.split() for line in _list(base, "slips"))
    found = {pair[0]: pair[1] for pair in slips if len(pair) == 2}
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
    # What only tells how a thing is asked for is no other thing of that name: "EMERGENCY" in capitals is the mode.
    names = {name for term in base.terms.values() if term.kind != "ask!" for name in term.names}
    return {
        term.show.lower(): term.names[0]
        for term in base.terms.values()
        if term.family and term.show.isupper() and term.show.isalpha() and term.show.lower() not in names
    }


def _differing(wrong: tuple[str, ...], proper: list[tuple[str, ...]]) -> list[tuple[str, str]]:
    """Return the words of a misspelling beside the words of the name that it is nearest to."""
    words: list[tuple[str, ...]] = [(word,) for name in proper for word in name]
    alike = words if len(wrong) == 1 else [name for name in proper if len(name) == len(wrong)]
    near = [
        (sum(ranked_cost(a, b, apart(a, b)) for a, b in zip(wrong, name, strict=True)), name)
        for name in alike
        if sum(apart(a, b) for a, b in zip(wrong, name, strict=True)) <= allowed_distance("".join(wrong))
    ]
    if not near:
        return []
    return [(old, new) for old, new in zip(wrong, min(near)[1], strict=True) if old != new and new.isalpha()]


def _inside(names: dict[tuple[str, ...], list[str]]) -> dict[str, list[str]]:
    """Return what the single words inside the names of states and results stand for: "normal retraction"."""
    found: dict[str, set[str]] = defaultdict(set)
    for stems, concepts in names.items():
        for concept in concepts:
            if concept[0] == "=" and len(stems) > 1:
                found[concept].update(c for s in stems for c in names.get((s,), ()) if c[0] not in "=@!")
    return {concept: sorted(inner) for concept, inner in found.items()}


def _add(
    names: dict[tuple[str, ...], list[str]],
    surface: set[str],
    name: str,
    concept: str,
    single: Set[tuple[str, ...]] = frozenset(),
) -> None:
    """Add a name, and its two words written as one; single: the names of one word, which mean only what they name."""
    stems = name_stems(name)
    if not stems or stems[0] == GAP:
        return
    names[stems].append(concept)
    for joined in joined_names(stems, name):
        if joined not in single:  # to "turn around" takes room, and a "turnaround" takes time
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
            for phrase in phrases(listed):
                yield f"{STATE}{item.id}.{value}", phrase
    for table in _tables(base):
        for output in table.outputs:
            for value, _, listed in output.values:
                for phrase in phrases(listed):
                    yield f"={table.id}.{output.id}.{value}", phrase


def phrases(words: str) -> list[str]:
    """Return the phrases of a list of state words, without its groups."""
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
            yield VARIANT + variant.id, name
            yield VARIANT + variant.id, "the " + name.removeprefix("the ")
    for label, record in info.not_here:
        yield ELSEWHERE + record, label


def _tables(base: Base) -> list[StateTable]:
    return [base.records[name] for name in base.ids("tables")]


def _list(base: Base, name: str) -> set[str]:
    try:
        lines = base.word_list(name).splitlines()
    except OSError:
        return set()
    return {line.strip() for line in lines if line.strip() and not line.startswith("#")}
