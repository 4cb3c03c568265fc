"""What kind of failure a question means by the words before it: "one single | hydraulic | failure"."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import CauseResult, Result

_FAILURES = frozenset(("failure", "failures", "fault", "faults"))
_COUNTING = frozenset(("single", "one", "any", "a", "the", "more", "two", "which", "what"))


def of_the_kind(result: Result, words: Sequence[str], know: Knowledge) -> Result:
    """Return the sets of the kind of failure that is named before the others; all alike where none is of it."""
    if not isinstance(result, CauseResult):
        return result
    kinds = [words[k - 1] for k, word in enumerate(words) if k and word in _FAILURES and words[k - 1] not in _COUNTING]
    if not kinds or result.others:
        return result
    inside = tuple(s for s in result.sets if s and all(is_of_kind(name, kinds, know) for name, _ in s))
    if not inside or len(inside) == len(result.sets):
        return result
    return result._replace(sets=inside, others=tuple(s for s in result.sets if s not in inside))


def is_of_kind(name: str, kinds: Collection[str], know: Knowledge) -> bool:
    """Return whether an input is called by one of some words: "which system" means none of the switches."""
    term = know.base.terms[know.base.inputs[name].term]
    first = {called.lower().split()[0] for called in term.names}
    return not first.isdisjoint(kinds) or term.names[0].lower().split()[-1] in kinds
