"""Both of the things of a kind that are numbered, where a question says no more of them: "both lost, anti-skid off"."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.understanding.condition import Condition, StateWords
from assistant.understanding.grouping import Group
from assistant.understanding.mentions import Mention

_BETWEEN = frozenset({"are", "is", "have", "has", "been", "of", "them", "now", "were", "had", "gone", "just"})
_PAIR = 2


def both_lost(
    words: Sequence[str], states: Iterable[Mention], groups: Iterable[Group], known: StateWords
) -> tuple[list[Condition], Mention | None]:
    """Return the failures that "both" with a word for it tells, and that word; nothing where anything is named before
    them that they may be, or between.
    """
    at = words.index("both")
    if any(group.start < at for group in groups):
        return [], None
    lost = (s for s in states if s.start > at and "@lost" in s.concepts)
    state = next((s for s in lost if _BETWEEN.issuperset(words[at + 1 : s.start])), None)
    numbered = [name for term in known.counted.values() for name in known.by_term.get(term, ())]
    numbered = [name for name in dict.fromkeys(numbered) if name in known.failures]
    if state is None or len(numbered) != _PAIR:
        return [], None
    return [Condition(name, known.failed(name), where=(at, *state.taken)) for name in numbered], state
