"""States that no thing and state word say: words that name their thing by themselves, and names that tell of things."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.understanding.binding import other_value
from assistant.understanding.condition import Condition, StateWords
from assistant.understanding.grouping import past_links
from assistant.understanding.mentions import Mention, Reading
from assistant.understanding.not_yet import is_offered

_NONE = frozenset(("no", "nothing", "none", "without"))
_OF_THE = frozenset(("of", "the", "my", "our", "these", "those"))


def alone(states: Iterable[Mention], used: set[int], known: StateWords, found: list[Condition]) -> list[Condition]:
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


def implied(reading: Reading, known: StateWords, found: list[Condition]) -> list[Condition]:
    """Return what names bring along: "no hydraulics" says that both systems are lost."""
    telling = [m for m in reading.mentions if not known.sets.keys().isdisjoint(m.concepts)]
    if not telling:
        return []
    taken = {c.input for c in found}
    return [
        Condition(name, value, implied=True, where=mention.taken)
        for mention in telling
        if not is_offered(mention, reading.words)
        for concept in sorted(mention.concepts)
        for name, value in _meant(mention, known.sets.get(concept, ()), reading, known)
        if name not in taken
    ]


def _meant(
    mention: Mention, pairs: Sequence[Sequence[str]], reading: Reading, known: StateWords
) -> Iterable[Sequence[str]]:
    """Return what a name says of things, or the contrary: "nothing but System 2 | has failed"."""
    mixed = len({value == known.normal(name) for name, value in pairs}) > 1
    if pairs and not mixed and _denies_failure(mention, reading):
        return [(name, known.normal(name)) for name, _ in pairs]
    if not mixed or not mention.text.startswith("nothing"):
        return pairs
    after = mention.end, past_links(reading.words, mention.end)
    fails = any(s.start in after and "@lost" in s.concepts for s in reading.mentions)
    return [(name, other_value(name, value, known) or value) for name, value in pairs] if fails else pairs


def _denies_failure(mention: Mention, reading: Reading) -> bool:
    """Return whether a name that says that things are gone only denies a failure: "no hydraulics | failure"."""
    before = [word for word in reading.words[max(0, mention.start - 3) : mention.start] if word not in _OF_THE]
    if before[-1:] == ["none"] or before[-1:] == ["neither"]:
        return True  # "none of the | hydraulics has failed"
    if mention.text.split()[0] not in _NONE:
        return False
    return any(s.start == mention.end and "@lost" in s.concepts for s in reading.mentions)
