"""The states that a question gives, seen together with what it asks.

Words for failing never end ("croaked", "let go"), and those for working are few: a thing that can fail, and of which
something is told that nothing explains, has failed. Where nothing at all is told of it, its state is unsaid.
"""

from __future__ import annotations

from collections.abc import Iterable

from assistant.frozen import NamedTuple
from assistant.resolving.knowing import Knowledge
from assistant.understanding.clauses import STOPS
from assistant.understanding.counting_as import counted_as
from assistant.understanding.grouping import Group
from assistant.understanding.mentions import Reading
from assistant.understanding.states import Condition, Stated, failing, in_doubt, is_forgotten, stated

_DENYING = frozenset(("not", "never", "no", "cannot", "without"))
_STATES_FAILED = frozenset(("@lost", "@off", "@out", "@empty"))
_DETERMINERS = frozenset(("the", "my", "our", "a", "an"))
_NAMING = frozenset(("is", "are", "only", "just", "on", "by", "from", "of", "but"))
_UNSURE = frozenset(("unknown", "unclear", "uncertain", "unsure", "doubtful", "suspect", "questionable"))
_BEING = frozenset(("is", "are", "still", "both", "all"))
_CUTS = STOPS | {"and", "but", "with", "while", "so", "if"}
"""Where what is told of a thing ends."""


class GivenStates(NamedTuple):
    """Conditions, and the ids of inputs that were told of without a state that is understood."""

    conditions: tuple[Condition, ...]
    unsaid: tuple[str, ...] = ()


def given_states(reading: Reading, know: Knowledge) -> GivenStates:
    """Return the states that a text gives, and the things that it leaves without one."""
    losing = reading.asks_loss or reading.has("happens", "steps")
    found = _not_counted(stated(reading, know.states, know.units, losing, _asks_mode(reading)), reading, know)
    if not found.bare or not _asks_result(reading, found.conditions, know):
        return GivenStates(found.conditions)
    there = [group for group in found.bare if _tells_presence(reading, group)]
    failed = [group for group in found.bare if group not in there and _tells_failure(reading, group)]
    told = [*there, *failed]
    left = [group for group in found.bare if group not in told and not _is_named(reading, group)]
    forgotten = {name for group in left if is_forgotten(reading.words, group) for name in group.inputs}
    rest = [name for group in left for name in group.inputs]
    named = {c.input for c in found.conditions}
    more = [
        Condition(name, know.states.normal(name), where=tuple(range(group.start, group.end)))
        for group in there
        for name in group.inputs
        if name not in named
    ]
    unsaid = tuple(dict.fromkeys(n for n in rest if n in know.states.failures or n in forgotten))
    return GivenStates((*found.conditions, *more, *failing(failed, know.states, named)), unsaid)


def _not_counted(found: Stated, reading: Reading, know: Knowledge) -> Stated:
    """Return the states told without that which it is asked whether a thing counts as, and what its reading says, but
    for one that all is well in: "treat it as lost" may follow.
    """
    asked = counted_as(reading.words)
    if not any(m.says_state and not asked.isdisjoint(m.taken) for m in reading.mentions):
        return found
    read = asked.union(k for a in reading.amounts for k in range(a.start, a.end))
    normal = know.states.normal
    left = tuple(
        c for c in found.conditions if c.is_result or read.isdisjoint(c.where) or c.value == normal(c.input)
    )
    return Stated(left, () if len(left) < len(found.conditions) else found.bare)


def _asks_mode(reading: Reading) -> bool:
    """Return whether a mode is asked for and none is named: "is NORMAL braking on System 1?" loses nothing."""
    return "mode" in reading.named and not any(m.names_result for m in reading.mentions)


def _asks_result(reading: Reading, conditions: Iterable[Condition], know: Knowledge) -> bool:
    """Return whether a result of a state table is asked for."""
    said = {k for c in conditions for k in c.where}
    return any(m.whole and not m.under_states for m in know.matcher.rank_among(know.tables, reading, excused=said))


def _tells_failure(reading: Reading, group: Group) -> bool:
    """Return whether something is told of a thing that no term names, or that is denied: it does not do its work."""
    words = reading.words
    end = next((i for i in range(group.end, len(words)) if words[i] in _CUTS), len(words))
    begin = next((i + 1 for i in range(group.start - 1, -1, -1) if words[i] in _CUTS), 0)
    rest = words[group.end : end]
    if in_doubt(words, group) or not _UNSURE.isdisjoint(rest):
        return False
    after = [m for m in reading.mentions if group.end <= m.start < end]
    if _DENYING.intersection(rest):
        return True
    if after and after[0].start <= group.end + 1 and _STATES_FAILED.intersection(after[0].concepts):
        return True
    told = [m for m in after if not m.weak]
    if told:
        return told[0].is_plain
    before = [m for m in reading.mentions if begin <= m.start < group.start and not m.weak]
    return bool(before) and before[-1].is_plain and group.start - before[-1].end <= 2 and end - group.end <= 1


def _is_named(reading: Reading, group: Group) -> bool:
    """Return whether a thing is only named: "all I have left is the accumulator", "braking on the accumulator"."""
    before = [w for w in reading.words[max(0, group.start - 3) : group.start] if w not in _DETERMINERS]
    return before[-1:] != [] and before[-1] in _NAMING


def _tells_presence(reading: Reading, group: Group) -> bool:
    """Return whether nothing more is told of a thing than that it is there."""
    told = list(reading.words[group.end : group.end + 4])
    while told and told[0] in _BEING:
        told.pop(0)
    return told[:1] == ["there"] and (len(told) == 1 or told[1] in _CUTS)
