"""An answer without the paragraphs that it names rightly: whoever says where it stands in the books claims no figure.

"Within LIM 3.1: 240 kt" is an answer of 240 kt. A paragraph that the full answer does not name stays, and is wrong.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.practice.marking.points import Need
from assistant.resolving.knowing import Knowledge

_CITED = re.compile(r"\s*\(([A-Z]{2,} (?:[A-Z]\.)?\d+(?:\.\d+)*)\)|\b([A-Z]{2,} (?:[A-Z]\.)?\d+(?:\.\d+)*)")


def uncited(answer: str, need: Need, know: Knowledge) -> str:
    """Return an answer without the paragraphs that its question's full answer or sources name, nor those of other
    documents.
    """
    named = frozenset(_named(need))
    asked = {p.text for p in need.points}  # a revision may be what is asked for
    others = set(know.base.documents) - {one.partition(" ")[0] for one in named}

    def left(found: re.Match[str]) -> str:
        cited = found.group(1) or found.group(2)
        if cited in asked:
            return found.group()
        return "" if cited in named or cited.partition(" ")[0] in others else found.group()

    return _CITED.sub(left, answer)


def miscited(answer: str, need: Need) -> tuple[str, ...]:
    """Return the paragraphs that an answer names of a document of the full answer, and that this does not name."""
    named = frozenset(_named(need))
    books = {one.partition(" ")[0] for one in named}
    told = [one or other for one, other in _CITED.findall(answer)]
    asked = {p.text for p in need.points}
    return tuple(one for one in told if one not in named | asked and one.partition(" ")[0] in books)


def _named(need: Need) -> Iterable[str]:
    yield from (f"{s.document} {s.paragraph}" for s in need.sources)
    books = {s.document for s in need.sources}  # "STEADY 1.4" is no paragraph
    yield from (one or other for one, other in _CITED.findall(need.expected) if one or other.split()[0] in books)
