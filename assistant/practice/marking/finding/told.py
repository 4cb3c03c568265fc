"""What an answer says of the inputs of a state table: in a state, named alone, or in other words.

A thing that can fail and is named without a state is taken as failed, for it is asked what leads somewhere.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from assistant.frozen import NamedTuple
from assistant.practice.marking.finding.elements import point
from assistant.practice.marking.finding.found import all_groups, enough_of, ways_said, words_said
from assistant.practice.marking.points import Point
from assistant.practice.marking.reading.said import Said, read_said
from assistant.resolving import tables
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import CauseResult
from assistant.understanding.states import Condition, by_number, conditions

Member = tuple[str, str]
Way = frozenset[Member]

_BELOW = frozenset(("below", "under", "less"))
_FOLLOWS = frozenset(("so", "then", "means", "only", "therefore"))
"""Words by which something follows, and is no cause."""
_NO_NAMES = frozenset(("none", "yes", "no"))
_DUST = 1e-6


class Told(NamedTuple):
    """A member as an answer has it: where it begins, and whether it is normal."""

    member: Member
    place: int
    normal: bool


def told_of(words: Sequence[str], result: CauseResult, ways: Sequence[Way], know: Knowledge) -> list[Told]:
    """Return what words say of inputs: their states, things named alone that can fail, members in other words."""
    members = frozenset(member for way in ways for member in way)
    said = read_said(" ".join(_in_full(words, result, know)), know)
    states = [_at_its_edge(c, said, know) for c in conditions(said.reading, know.states, know.units, True)]
    stated = [c for c in states if c.input in know.base.inputs and _is_meant(c, said, members)]
    own = [c for c in stated if c.input in result.table.inputs]
    taken = {place for c in own for place in c.where}
    kept = [c for c in stated if c in own or taken.isdisjoint(c.where)]
    found = [Told((c.input, c.value), min(c.where, default=0), _is_normal(c, know)) for c in kept]
    results = [c for c in (*states, *_results(said, result)) if c.is_result and taken.isdisjoint(c.where)]
    asked = (f"{result.table.id}.{result.output}", result.value)
    found += [Told((c.input, c.value), min(c.where, default=0), False) for c in results if (c.input, c.value) != asked]
    named = {c.input for c in kept}
    for member in sorted(members):
        if member[0] not in named and (place := _place_of(member, said, know)) is not None:
            found.append(Told(member, place, False))
    return found


def _in_full(words: Sequence[str], result: CauseResult, know: Knowledge) -> list[str]:
    """Return words with "switch" as the one switch that the table knows, where nothing else is named by it."""
    names = [_heads(each, know) for each in result.table.inputs]
    heads = {
        head: found[0]
        for head in {h for each in names for h in each}
        if len(found := [each[head] for each in names if head in each]) == 1
    }
    terms = {each.term for each in know.base.inputs.values()}
    named = {i for m in know.phrase(" ".join(words)).mentions if m.concepts & terms for i in m.taken}
    return [heads[w] if w in heads and w.isalpha() and i not in named else w for i, w in enumerate(words)]


def _heads(name: str, know: Knowledge) -> dict[str, str]:
    """Return the last words of an input's longer names, where its states say them and no number tells it apart."""
    item = know.base.inputs[name]
    said = item.values[-1][1].lower()
    if re.search(r"\d", said):
        return {}
    longer = {each.lower().split()[-1]: each for each in know.base.terms[item.term].names if " " in each}
    named = {head for head in longer if not any(c[0] == "@" for c in know.phrase(head).concepts)}
    return {head: longer[head] for head in named.intersection(said.split())}


def _is_meant(condition: Condition, said: Said, members: frozenset[Member]) -> bool:
    """Return whether a state is said itself; one that a word only brings along is, where it is looked for."""
    before = said.reading.words[max(0, condition.where[0] - 1) : condition.where[0]] if condition.where else ()
    if before in (("not",), ("nor",)):
        return False  # "not System 1, but System 2"
    if not condition.implied:
        return True
    return (condition.input, condition.value) in members and _FOLLOWS.isdisjoint(said.reading.words)


def _at_its_edge(condition: Condition, said: Said, know: Knowledge) -> Condition:
    """Return the state of a reading that is said to be below its number: "below 1,400 psi" is empty."""
    amount = next((a for a in said.reading.amounts if condition.where and a.start == condition.where[0]), None)
    if amount is None or _BELOW.isdisjoint(said.reading.words[max(0, amount.start - 2) : amount.start]):
        return condition
    return by_number(condition.input, amount._replace(value=amount.value - _DUST), know.states, know.units) or condition


def _results(said: Said, result: CauseResult) -> Iterator[Condition]:
    """Yield other results of the table that are said by their bare name: "in emergency"."""
    normal = {value for output in result.table.outputs for value, _, _ in output.values[:1]}
    for output in result.table.outputs:
        for value, _, _ in output.values:
            if value not in normal | _NO_NAMES and value in said.reading.words:
                place = said.reading.words.index(value)
                yield Condition(f"{result.table.id}.{output.id}", value, where=(place,))


def _is_normal(condition: Condition, know: Knowledge) -> bool:
    return tables.normal(know.base.inputs[condition.input]) == condition.value


def _place_of(member: Member, said: Said, know: Knowledge) -> int | None:
    """Return where a member is said in words of its own, or by the bare name of a thing with one other state."""
    item = know.base.inputs[member[0]]
    bare = said.where(frozenset((item.term,)))
    if any("not" in said.reading.words[max(0, i - 2) : i] for i in bare):
        return None
    if bare and len(item.values) == 2:
        return bare[0]
    made = _member_point(member, know)
    share, spots = words_said(made, said)
    enough = share >= enough_of(made) and ways_said(made, said) and all_groups(made, said)
    return min(spots) if enough and spots and all(e.weight < 0.7 or e.words for e in made.elements) else None


def _member_point(member: Member, know: Knowledge) -> Point:
    """Return one member of a way as a point."""
    says = next(says for value, says, _ in know.base.inputs[member[0]].values if value == member[1])
    return point(says, know)
