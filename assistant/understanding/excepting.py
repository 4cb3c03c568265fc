"""A thing that is the only one of its kind in a state: "everything has gone but the accumulator"."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.understanding.binding import Binder
from assistant.understanding.clauses import STOPS
from assistant.understanding.condition import Condition, StateWords, is_result
from assistant.understanding.grouping import Group, failing, past_links
from assistant.understanding.mentions import ALL_WELL

_EXCEPT = (
    ("apart", "from"), ("other", "than"), ("except", "for"), ("save", "for"), ("but",), ("except",), ("excepting",),
    ("bar",), ("barring",), ("save",),
)  # fmt: skip
_ARTICLES = frozenset(("the", "my", "our", "a", "an"))
_ALL = frozenset(("everything", "all"))
_VERBS = frozenset(("is", "has", "was", "reads", "says", "shows", "holds", "at", "still", "indicates"))
"""After a thing: it is told of by itself, and is no exception."""
_FURTHEST = 8


def excepted(binder: Binder, group: Group) -> list[Condition]:
    """Return what an exception says of things and of the others of their kind: those with a pressure of their own.

    "Nothing works except System 1": the other sources of pressure have failed.
    """
    words, known = binder.words, binder.known
    at = _exception(words, group.start)
    if at < 0 or any(is_result(name) for name in group.inputs):
        return []
    least = max(0, at - _FURTHEST)
    begin = next((k + 1 for k in range(at - 1, least - 1, -1) if words[k] in STOPS), least)
    clause = range(begin, at)
    if any(ALL_WELL in m.concepts and m.start in clause for m in binder.reading.mentions):
        return []  # "nothing has failed except System 2"
    after = range(group.end, past_links(words, group.end) + 1)
    named = _VERBS.isdisjoint(words[group.end : group.end + 1]) and _named_lost(binder, clause)
    whole = next((k for k in range(group.end, min(group.end + 2, len(words))) if words[k] in _ALL), -1)
    if whole >= 0 and _says_lost(binder, range(whole, min(whole + _FURTHEST, len(words)))):
        return _alone(group, known)  # "apart from System 1, everything has gone"
    fails = named or _says_lost(binder, clause) or _says_lost(binder, after)
    if "nothing" in words[begin:at]:
        return failing([group], known, set()) if fails else _alone(group, known)
    return _alone(group, known) if named or (fails and not _ALL.isdisjoint(words[begin:at])) else []


def _named_lost(binder: Binder, places: range) -> bool:
    """Return whether a name there says that several things have failed: "all hydraulics lost"."""
    known = binder.known
    named = (m.concepts for m in binder.reading.mentions if m.start in places)
    pairs = (known.sets.get(c, ()) for concepts in named for c in concepts)
    return any(len(each) > 1 and all(n in known.failures and v == known.failed(n) for n, v in each) for each in pairs)


def _exception(words: Sequence[str], start: int) -> int:
    """Return where the words for an exception begin before a place, or -1."""
    while start and words[start - 1] in _ARTICLES:
        start -= 1
    for said in _EXCEPT:
        if tuple(words[max(0, start - len(said)) : start]) == said:
            return start - len(said)
    return -1


def _says_lost(binder: Binder, places: range) -> bool:
    """Return whether a word for having failed stands there, and not "nothing" alone."""
    return any(
        s.start in places and not {"@lost", "@empty"}.isdisjoint(s.concepts) and "nothing" not in s.text.split()
        for s in binder.states
    )


def _alone(group: Group, known: StateWords) -> list[Condition]:
    """Return things as the only ones that are well of those that have a pressure of their own."""
    sources = [name for name in known.numbers if name in known.failures]
    if not set(group.inputs) <= set(sources):
        return []
    return [
        Condition(name, known.normal(name) if name in group.inputs else known.failed(name), where=group.places)
        for name in sources
    ]
