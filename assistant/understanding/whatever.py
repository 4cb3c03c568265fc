"""A quantity that is said not to matter: "what triggers it | regardless of height |".

It is not asked for, and what is stated of it alone is no answer.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from assistant.understanding.clauses import asks_whether
from assistant.understanding.mentions import BOUNDS, Mention

_LEADS = (
    ("regardless", "of"), ("irrespective", "of"), ("independent", "of"), ("independently", "of"), ("whatever",),
    ("no", "matter", "what"), ("no", "matter", "how"), ("no", "matter",),
)  # fmt: skip
_FIRST = frozenset(first for first, *_ in _LEADS)
_BETWEEN = frozenset(("the", "our", "my", "its", "how", "what"))


def without_what_does_not_matter(
    mentions: list[Mention], words: Sequence[str], kinds: Mapping[str, str]
) -> list[Mention]:
    """Return the mentions without the quantities that are said not to matter, unless it is asked whether they do."""
    if _FIRST.isdisjoint(words) or asks_whether(words):
        return mentions
    return [m for m in mentions if not (_is_quantity(m, kinds) and _does_not_matter(m.start, words))]


def _is_quantity(mention: Mention, kinds: Mapping[str, str]) -> bool:
    return all(kinds.get(c) == "quantity" and c not in BOUNDS for c in mention.concepts)


def _does_not_matter(at: int, words: Sequence[str]) -> bool:
    """Return whether the words before a place say that what stands there does not matter."""
    while at and words[at - 1] in _BETWEEN and words[at - 2 : at - 1] != ["matter"]:
        at -= 1
    return any(list(words[max(0, at - len(lead)) : at]) == list(lead) for lead in _LEADS)
