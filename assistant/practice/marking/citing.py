"""An answer without the paragraphs that it names rightly: whoever says where it stands in the books claims no figure.

"Within LIM 3.1: 240 kt" is an answer of 240 kt. A paragraph that the full answer does not name stays, and is wrong.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.practice.marking.points import Need

_CITED = re.compile(r"\s*\(([A-Z]{2,} (?:[A-Z]\.)?\d+(?:\.\d+)*)\)|\b([A-Z]{2,} (?:[A-Z]\.)?\d+(?:\.\d+)*)")


def uncited(answer: str, need: Need) -> str:
    """Return an answer without the paragraphs that its question's full answer or sources name."""
    named = frozenset(_named(need))
    return _CITED.sub(lambda m: "" if (m.group(1) or m.group(2)) in named else m.group(), answer)


def miscited(answer: str, need: Need) -> tuple[str, ...]:
    """Return the paragraphs that an answer names of a document of the full answer, and that this does not name."""
    named = frozenset(_named(need))
    books = {one.partition(" ")[0] for one in named}
    told = [one or other for one, other in _CITED.findall(answer)]
    return tuple(one for one in told if one not in named and one.partition(" ")[0] in books)


def _named(need: Need) -> Iterable[str]:
    yield from (f"{s.document} {s.paragraph}" for s in need.sources)
    books = {s.document for s in need.sources}  # "STEADY 1.4" is no paragraph
    yield from (one or other for one, other in _CITED.findall(need.expected) if one or other.split()[0] in books)
