"""Which things a question says are in which state: "system two gone", "bypass pin in", "no anti-skid".

Things and state words stand in a row with little between them; a state word belongs to the thing it stands
next to, before ("loss of System 1") or after ("Systems 1 and 2 both out"), and is used once.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, NamedTuple

from assistant.knowledge.base import Base
from assistant.quantities.amounts import Amount
from assistant.quantities.units import Units
from assistant.understanding.reading import STATE, Mention, Reading

_JOINS = frozenset({
    "and", "or", "both", "the", "my", "our", "&", "+", ",", "plus", "as", "well", "also", "either", "together",
})  # fmt: skip
_BEFORE = frozenset({
    "of", "the", "in", "my", "our", "a", "an", "its", "from", "to", "both", "on", "for", "all", "complete", "total",
    "with", "without", "any", "your", "got", "has", "have",
})  # fmt: skip
_STOPS = frozenset({".", ";", "?"})
_LINKS = frozenset({
    "is", "are", "has", "have", "had", "been", "be", "being", "to", "stay", "stays", "stayed", "now", "both", "still",
    "all", "was", "were", "the", "get", "gets", "got", "go", "goes", "will", "must", "just",
})  # fmt: skip
_WITH = frozenset(("with", "using", "plus", "use"))
_USED = frozenset(("@on", "@in", "@pulled", "@held"))
_ANDS = frozenset({"and", "but", ",", "with", "plus"})
_NEAR = 2
_FAR = 6
_NOT = frozenset(("not", "never", "nor"))
_BELOW = frozenset(("below", "under", "beneath", "<"))
_ABOVE = frozenset(("above", "over", "beyond", ">"))


class Condition(NamedTuple):
    """A thing in a state: an input's id, or `table.output` for a state table's result that is given."""

    input: str
    value: str
    remark: str = ""
    implied: bool = False
    where: tuple[int, ...] = ()
    """Indices of the tokens that said it."""


class StateWords(NamedTuple):
    """What the binding needs to know of a base: input and output names, and their words for states."""

    by_term: Mapping[str, Sequence[str]]
    values: Mapping[str, Sequence[tuple[str, Sequence[str], bool]]]
    numbers: Mapping[str, Sequence[Sequence[Any]]]
    failures: frozenset[str]
    sets: Mapping[str, Sequence[Sequence[str]]]


class _Group(NamedTuple):
    start: int
    end: int
    inputs: tuple[str, ...]
    either: bool


def state_words(base: Base, sets: Mapping[str, Sequence[Sequence[str]]]) -> StateWords:
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
    here = {term: [pair for pair in pairs if pair[0] in values] for term, pairs in sets.items()}
    return StateWords(by_term, values, numbers, frozenset(failures), here)


def _groups(words: str) -> list[str]:
    return [part for part in words.replace(";", " ").replace(",", " ").split() if part.startswith(STATE)]


def conditions(
    reading: Reading, known: StateWords, units: Units, losing: bool = False, asks_mode: bool = False
) -> list[Condition]:
    """Return the states that a question gives, in the order in which they are said.

    losing: the question asks what goes with a thing ("what do I lose with System 1"), so that a thing that
    can fail, and has no state of its own, is taken as failed. asks_mode: it asks what mode is left, for which
    the same holds where no state is said at all.
    """
    states = _states(reading)
    groups = _input_groups(reading, known, states)
    used: set[int] = set()
    found: list[Condition] = []
    bare: list[_Group] = []
    for index, group in enumerate(groups):
        following = groups[index + 1].start if index + 1 < len(groups) else len(reading.words)
        earlier = groups[index - 1].end if index else 0
        bound = _bind(reading, group, states, used, earlier, following, known)
        bound = bound or _numbered(reading, group, following, known, units)
        bound = bound or _in_use(reading, group, known)
        if not bound:
            bare.append(group)
        found.extend(bound)
    if losing or (asks_mode and not found):
        found.extend(_failed(bare, known, {c.input for c in found}))
    found.extend(_alone(states, used, known, found))
    found.extend(_implied(reading, known, found))
    found.extend(_results_named(reading, found))
    return _settled(found)


def _failed(groups: Iterable[_Group], known: StateWords, stated: set[str]) -> list[Condition]:
    """Return the things that can fail, and whose state was not said, as failed."""
    return [
        Condition(name, failed(name, known), where=tuple(range(group.start, group.end)))
        for group in groups
        for name in group.inputs
        if name in known.failures and name not in stated
    ]


def failed(name: str, known: StateWords) -> str:
    """Return the value of an input that can fail when it has: the one beside its normal one."""
    return known.values[name][1][0]


def _results_named(reading: Reading, found: list[Condition]) -> list[Condition]:
    """Results of tables that are named outright: "ALTERNATE braking"."""
    taken = {c.input for c in found}
    result = []
    for mention in reading.mentions:
        for concept in sorted(mention.concepts):
            if concept.startswith("="):
                name, value = concept[1:].rsplit(".", 1)
                if name not in taken:
                    result.append(Condition(name, value, where=mention.taken))
    return result


def _states(reading: Reading) -> list[Mention]:
    return [m for m in reading.mentions if any(c.startswith(STATE) for c in m.concepts)]


def _input_groups(reading: Reading, known: StateWords, states: list[Mention]) -> list[_Group]:
    groups: list[_Group] = []
    for mention in reading.mentions:
        names = tuple(i for c in sorted(mention.concepts | mention.implied) for i in known.by_term.get(c, ()))
        if not names:
            continue
        last = groups[-1] if groups else None
        between = reading.words[last.end : mention.start] if last else ()
        alike = last is not None and not between and _alike(last, names, known)
        joins = alike or (bool(between) and len(between) <= 3 and all(w in _JOINS for w in between))
        if last and mention.start >= last.end and joins and not _have_own(reading, last, mention, states):
            groups[-1] = _Group(last.start, mention.end, (*last.inputs, *names), "or" in between)
        elif not last or mention.start >= last.end:
            groups.append(_Group(mention.start, mention.end, names, False))
    return groups


def _alike(last: _Group, names: tuple[str, ...], known: StateWords) -> bool:
    """Return whether things named without a word between them are of one kind: "sys 1 sys 2 lost"."""
    one, other = last.inputs[-1], names[0]
    return one != other and _common_words(one, known) == _common_words(other, known)


def _common_words(name: str, known: StateWords) -> list[tuple[str, list[str]]]:
    """Return the values of an input with the words for them that it has not to itself."""
    return [(value, [g for g in groups if "." not in g]) for value, groups, _ in known.values[name]]


def _have_own(reading: Reading, last: _Group, mention: Mention, states: list[Mention]) -> bool:
    """Return whether two joined things have a state each: "loss of System 1 and hyd 2 is working"."""
    words = reading.words
    before = any(s.end <= last.start and all(w in _BEFORE for w in words[s.end : last.start]) for s in states)
    after = any(
        mention.end <= s.start <= mention.end + 2 and all(w in _LINKS for w in words[mention.end : s.start])
        for s in states
    )
    return before and after


def _bind(
    reading: Reading, group: _Group, states: list[Mention], used: set[int], earlier: int, following: int,
    known: StateWords,
) -> list[Condition]:  # fmt: skip
    before = [s for s in states if earlier <= s.start and s.end <= group.start and s.start not in used]
    after = [s for s in states if group.end <= s.start < following and s.start not in used]
    nearest = before[-1] if before else None
    if nearest and after and after[0].holds("can") and (
        after[0].end >= len(reading.words) - 1 or reading.words[after[0].end] in (",", ".", "right", "isn't")
    ):
        after = []  # "without anti-skid ok?": the last word asks, and says no state
    if nearest and all(w in _BEFORE for w in reading.words[nearest.end : group.start]):
        bound = _as_conditions(reading, group, nearest, known)
        other = after and _adjacent(reading, group, after[0]) and not _leads(reading, after[0], following)
        asks = _asks_what_goes(reading, nearest)
        if bound and not (other and (nearest.weak or asks)):
            used.add(nearest.start)
            return bound
    for state in after:
        between = reading.words[group.end : state.start]
        if _leads(reading, state, following) and (len(between) > _NEAR or _ANDS.intersection(between)):
            continue  # it belongs to the thing after it: "and no System 2", "following the failure of System 2"
        loose = len(between) > _NEAR and not all(w in _LINKS for w in between)
        if _STOPS.intersection(between) or len(between) > _FAR or (state.weak and loose):
            continue
        if state.text == "no" and "," in between:
            continue  # "it is on System 1, no?": it asks to be confirmed
        if any(a.end == state.start and group.end < a.start for a in reading.amounts) and _ANDS.intersection(between):
            continue  # "fans, 25 out": the word goes with the number
        bound = _as_conditions(reading, group, state, known)
        if bound:
            used.add(state.start)
            return bound
    return []


def _asks_what_goes(reading: Reading, state: Mention) -> bool:
    """Return whether a word asks what is lost, and says no state: "what is lost with the switch OFF"."""
    if not state.holds("lose"):
        return False
    before = reading.words[max(0, state.start - 3) : state.start]
    return state.text == "lose" or (state.text == "lost" and bool({"what", "whats"}.intersection(before)))


def _in_use(reading: Reading, group: _Group, known: StateWords) -> list[Condition]:
    """ "With the fans": a thing that is chosen, named without a state after "with", is in use."""
    before = [
        w
        for w in reading.words[max(0, group.start - 3) : group.start]
        if w not in ("the", "my", "our", "brake", "all", "a")
    ]
    if not before or before[-1] not in _WITH:
        return []
    results = [name for name in group.inputs if "." in name]
    where = tuple(range(group.start, group.end))
    if results:
        return [Condition(name, "yes", where=where) for name in results]
    return [
        Condition(name, value, where=where)
        for name in group.inputs
        if name not in known.failures
        for value, groups, _ in known.values[name]
        if _USED.intersection(groups)
    ]


def _leads(reading: Reading, state: Mention, following: int) -> bool:
    """Return whether a state stands right before the next thing."""
    return following < len(reading.words) and all(w in _BEFORE for w in reading.words[state.end : following])


def _adjacent(reading: Reading, group: _Group, state: Mention) -> bool:
    return state.start - group.end <= 1


def _as_conditions(reading: Reading, group: _Group, state: Mention, known: StateWords) -> list[Condition]:
    before = reading.words[max(0, group.start - 2) : group.start]
    negated = (state.start > 0 and reading.words[state.start - 1] in _NOT) or "neither" in before
    found: list[Condition] = []
    where = (*range(group.start, group.end), *state.taken)
    for name in group.inputs:
        value = _value(name, state, known)
        if value is None:
            continue
        if negated:
            others = [v for v, _, _ in known.values[name] if v != value]
            if len(others) != 1:
                continue
            value = others[0]
        found.append(Condition(name, value, where=where))
    return found


def _value(name: str, state: Mention, known: StateWords) -> str | None:
    for value, groups, _ in known.values[name]:
        if any(group in state.concepts and "." in group for group in groups):
            return value
    # The state that is not normal is what people mention: it goes first where a word fits both.
    for value, groups, _ in reversed(known.values[name]) if "." not in name else known.values[name]:
        if any(group in state.concepts for group in groups):
            return value
    return None


def _numbered(reading: Reading, group: _Group, following: int, known: StateWords, units: Units) -> list[Condition]:
    for amount in reading.amounts:
        if not group.end <= amount.start < following or amount.start - group.end > _FAR:
            continue
        side = _bound_said(reading, amount)
        bound = [c for name in group.inputs if (c := by_number(name, amount, known, units, side))]
        if bound:
            return bound
    return []


def _bound_said(reading: Reading, amount: Amount) -> int:
    """Return -1 or 1 for a reading that is said to be below or above an amount, else 0."""
    before = reading.words[max(0, amount.start - 2) : amount.start]
    return -1 if _BELOW.intersection(before) else 1 if _ABOVE.intersection(before) else 0


def by_number(name: str, amount: Amount, known: StateWords, units: Units, side: int = 0) -> Condition | None:
    """Return the state of an input that a reading of it means, where its documents define one.

    side: -1 for a reading that is only said to be below the amount, 1 for one above it.
    """
    for test, value, unit, state, remark in known.numbers.get(name, ()):
        if amount.unit and unit and units.get(amount.unit).dimension != units.get(unit).dimension:
            return None
        if not amount.unit and unit and not 0.1 * value <= amount.value <= 10 * value:
            return None
        given = units.convert(amount.value, amount.unit, unit) if unit and amount.unit else amount.value
        if passes(test, given + side * 1e-6 * abs(value), value):
            return Condition(name, state, remark, where=tuple(range(amount.start, amount.end)))
    return None


def passes(test: str, given: float, value: float) -> bool:
    """Return whether a value passes a test of a knowledge file."""
    if test == "below":
        return given < value
    if test == "up to":
        return given <= value
    if test == "over":
        return given > value
    if test == "from":
        return given >= value
    return test == "otherwise"


def _alone(states: Iterable[Mention], used: set[int], known: StateWords, found: list[Condition]) -> list[Condition]:
    """State words that name their thing by themselves: "airborne"."""
    taken = {c.input for c in found}
    result: list[Condition] = []
    for state in states:
        if state.start in used:
            continue
        for name, values in known.values.items():
            if name in taken:
                continue
            for value, groups, alone in values:
                if alone and any(group in state.concepts for group in groups):
                    result.append(Condition(name, value, implied=True, where=state.taken))
    return result


def _implied(reading: Reading, known: StateWords, found: list[Condition]) -> list[Condition]:
    taken = {c.input for c in found}
    return [
        Condition(name, value, implied=True, where=mention.taken)
        for mention in reading.mentions
        for concept in sorted(mention.concepts)
        for name, value in known.sets.get(concept, ())
        if name not in taken
    ]


def _settled(found: list[Condition]) -> list[Condition]:
    """Return one condition for each thing: the one said last, as people correct themselves."""
    last = {c.input: c for c in found}
    return list(last.values())
