"""A thing that is named only as what another one is not: "System 2 instead of System 1 has failed"."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.understanding.binding import Binder, conditions_of
from assistant.understanding.condition import Condition, StateWords, is_result
from assistant.understanding.grouping import Group, names_another

_NEAR = 7
"""Words that may stand between the two: "instead of System 1 it was | System 2"."""


def set_against(
    words: Sequence[str], groups: list[Group], known: StateWords
) -> tuple[list[Group], list[tuple[Group, Group]]]:
    """Return the groups without those that are what another is not, and these with the other one."""
    against: list[tuple[Group, Group]] = []
    for index, group in enumerate(groups):
        straight = index > 0 and words[groups[index - 1].end : group.start] == ("not",)  # "System 2 not System 1"
        if not known.failures.issuperset(group.inputs) or not (straight or names_another(words, group.start)):
            continue
        beside = [*groups[max(0, index - 1) : index], *groups[index + 1 : index + 2]]
        other = next((g for g in beside if _gap(g, group) <= _NEAR and _alike(g, group, known)), None)
        if other is not None:
            against.append((group, other))
    left_out = [group for group, _ in against]
    return [group for group in groups if group not in left_out], against


def contrasted(
    against: Sequence[tuple[Group, Group]], found: Sequence[Condition], binder: Binder
) -> list[Condition]:
    """Return the things that another is in a state instead of: failed where that one is normal, else normal.

    Where the state stands beside the one that is not in it, the other has it: "it is not System 1 that has gone, …".
    """
    known = binder.known
    result: list[Condition] = []
    for group, other in against:
        said = next((c for c in found if c.input in other.inputs), None)
        if said is None:
            bound = binder.bind(group, 0, len(binder.words))
            state = bound.state if bound else None
            own = conditions_of(other.inputs, state, False, other.places, known) if state else []
            result.extend(own)
            said = own[0] if own else None
        if said is None:
            continue
        failed = said.value == known.normal(said.input)
        for name in group.inputs:
            value = known.failed(name) if failed else known.normal(name)
            result.append(Condition(name, value, where=group.places))
    return result


def _gap(one: Group, other: Group) -> int:
    return max(other.start - one.end, one.start - other.end)


def _alike(one: Group, other: Group, known: StateWords) -> bool:
    return not any(is_result(name) for name in one.inputs) and known.failures.issuperset(one.inputs) and one != other
