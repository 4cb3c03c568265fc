"""What is known of things that can be in one state or another: their names, and the words for their states."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from assistant.frozen import NamedTuple
from assistant.knowledge.base import Base
from assistant.understanding.mentions import STATE


class Condition(NamedTuple):
    """A thing in a state: an input's id, or `table.output` for a state table's result that is given."""

    input: str
    value: str
    remark: str = ""
    implied: bool = False
    where: tuple[int, ...] = ()
    """Indices of the tokens that said it."""
    asked: bool = False
    """A result that is only asked about, or believed: "is anti-skid lost when …", "that means ALTERNATE, right?"."""

    @property
    def is_result(self) -> bool:
        """Return whether it is a table's result, and no input."""
        return is_result(self.input)

    @property
    def table(self) -> str:
        """The state table that a result is of."""
        return self.input.partition(".")[0]

    @property
    def output(self) -> str:
        """The output of its table that a result is."""
        return self.input.partition(".")[2]


_NAME_WORDS = 3
_SAYS_MORE = frozenset({
    "only", "just", "alone", "is", "has", "are", "the", "on", "in", "with", "and", "no", "my", "at", "says", "reads",
    "shows", "…", "of", "to", "by", "empty", "charged", "down", "dropped", "sunk",
})  # fmt: skip
"""Words by which a name says more than what is meant."""


class StateWords(NamedTuple):
    """What the binding needs to know of a base: input and output names, and their words for states."""

    by_term: Mapping[str, Sequence[str]]
    values: Mapping[str, Sequence[tuple[str, Sequence[str], bool]]]
    numbers: Mapping[str, Sequence[Sequence[Any]]]
    failures: frozenset[str]
    sets: Mapping[str, Sequence[Sequence[str]]]
    counted: Mapping[int, str]
    """Terms of the things that a bare number may stand for: "1" where there is one System 1."""
    shows: Mapping[str, tuple[str, Sequence[Sequence[str]]]] = {}
    """Labels, as they are written, with what holds where they are told to show."""
    named: Mapping[tuple[str, str], str] = {}
    """Terms that name one state that is chosen, by themselves: "free fall" is the free-fall lever pulled."""
    read_on: Mapping[str, str] = {}
    """Terms of instruments, with the input whose number they show."""
    sources: Mapping[str, Sequence[tuple[tuple[str, ...], str]]] = {}
    """Names of the things that have a pressure of their own and can fail, by their first words, with their inputs."""

    def normal(self, name: str) -> str:
        """Return the value that a thing has where nothing is said; a result's is the one that works."""
        values = self.values[name]
        return values[1][0] if is_result(name) else values[0][0]

    def failed(self, name: str) -> str:
        """Return the value of an input that can fail when it has: the one beside its normal one."""
        return self.values[name][1][0]


def state_words(
    base: Base,
    sets: Mapping[str, Sequence[Sequence[str]]],
    shows: Mapping[str, tuple[str, Sequence[Sequence[str]]]] | None = None,
) -> StateWords:
    """Return the state words of a base's inputs, and of the yes-or-no outputs of its tables."""
    by_term: dict[str, list[str]] = {}
    values: dict[str, list[tuple[str, list[str], bool]]] = {}
    numbers: dict[str, Sequence[Sequence[Any]]] = {}
    failures: set[str] = set()
    for item in base.inputs.values():
        by_term.setdefault(item.term, []).append(item.id)
        values[item.id] = [
            (value, [*_groups(words), f"{STATE}{item.id}.{value}"], "alone" in words.split())
            for value, _, words in item.values
        ]
        if item.number:
            numbers[item.id] = item.number
        if item.failure:
            failures.add(item.id)
    for name in base.ids("tables"):
        for output in base.records[name].outputs:
            named = {value for value, _, _ in output.values}
            if output.id in base.terms and named == {"yes", "no"}:
                by_term.setdefault(output.id, []).append(f"{name}.{output.id}")
                values[f"{name}.{output.id}"] = [
                    ("no", ["@lost", "@off"], False),
                    ("yes", ["@working", "@on"], False),
                ]
    read_on = {item.read_on: item.id for item in base.inputs.values() if item.read_on}
    here = {term: [pair for pair in pairs if pair[0] in values] for term, pairs in sets.items()}
    chosen = {term: pairs[0] for term, pairs in here.items() if len(pairs) == 1 and pairs[0][0] not in failures}
    names = {(name, value): term for term, (name, value) in chosen.items()}
    sources = _sources(base, [name for name in numbers if name in failures])
    return StateWords(
        by_term, values, numbers, frozenset(failures), here, _counted(base), shows or {}, names, read_on, sources
    )


def _sources(base: Base, inputs: Sequence[str]) -> dict[str, list[tuple[tuple[str, ...], str]]]:
    """Return the names of some inputs by their first words, those left out that say more than a name."""
    found: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for item in inputs:
        term = base.terms.get(base.inputs[item].term)
        for name in term.names if term else ():
            words = tuple(name.lower().split())
            if len(words) <= _NAME_WORDS and _SAYS_MORE.isdisjoint(words):
                found.setdefault(words[0], []).append((words, item))
    return found


def _counted(base: Base) -> dict[int, str]:
    """Return the terms of inputs that are named with a number at the end, where no two have the same."""
    found: dict[int, set[str]] = {}
    for item in base.inputs.values():
        for name in base.terms[item.term].names if item.term in base.terms else ():
            kind, number = numbered(name)
            if kind:
                found.setdefault(number, set()).add(item.term)
    return {number: terms.pop() for number, terms in found.items() if len(terms) == 1}


def numbered(name: str) -> tuple[str, int]:
    """Return what a name with a number at its end begins with, and the number: "Hydraulic System", 1; else nothing."""
    first, _, last = name.rpartition(" ")
    return (first, int(last)) if last.isdigit() else ("", 0)


def _groups(words: str) -> list[str]:
    return [part for part in words.replace(";", " ").replace(",", " ").split() if part.startswith(STATE)]


def alike(one: str, other: str, known: StateWords) -> bool:
    """Return whether two things are of one kind: the same words say of both in which state they are."""
    return one != other and _common_words(one, known) == _common_words(other, known)


def _common_words(name: str, known: StateWords) -> list[tuple[str, list[str]]]:
    """Return the values of an input with the words for them that it has not to itself."""
    return [(value, [g for g in groups if "." not in g]) for value, groups, _ in known.values[name]]


def is_result(name: str) -> bool:
    """Return whether a name is a table's result, and no input."""
    return "." in name
