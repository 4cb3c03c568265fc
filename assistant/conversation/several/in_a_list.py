"""Several things in one list, each answered by a record of its own: "how long do A, B and C take?".

The question is asked once with each thing of the list in the place of them all. How much of the words around the commas
belongs to the list is not said: every way that is worded alike is tried, and the one by which all are answered best is
meant. Nothing is told unless each thing is surely answered, and by another record.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from assistant.conversation.reading_turns.readings import is_quantity
from assistant.conversation.several.parting import may_join
from assistant.conversation.several.surely import SURE, Sure, surely
from assistant.resolving.asked_quantity import quantity_of
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import FactResult

_READ = 300
_BREAKS = r"\s*,\s*(?:(?:and|&)\s+)?|\s+(?:and|&)\s+"
_NAMES = r"(?:an?|the|its|their)\b"
_OPENS = r"(?:an?|the|its|their|in|on|at|for|with|without|by|to|of|from|below|above|after|when|while)\b"
_ASKS = (
    r"(?:(?:and|at|in|on|by|to|up to|from|for|with|after|below|above|until|of) )*"
    r"(?:what|which|who|whom|where|when|why|how)\b"
)
_POLAR = r"(?:is|are|am|may|can|could|do|does|did|has|have|had|will|would|should|shall|must|was|were|if)\b"
_TOGETHER = r"\b(?:which of|between|both|or|than|versus|vs|differ\w*|total|sum|together|apart|compare\w*)\b"
_MOST, _LONG, _AROUND = 5, 6, 5
"""Things of a list, words of one in its midst, and words of one at its ends, at the most."""
_NEAR = 0.6
"""How well each of three figures of one quantity must be answered."""
_TWO = 2


def each_listed(text: str, knowledge: Knowledge, variant: str = "") -> list[Sure]:
    """Return what answers each thing of the list in a text; nothing unless all are answered."""
    pieces = _pieces(text) if may_join(text) else []
    if not pieces or not all(_names_a_thing(piece, knowledge) for piece in pieces[1:-1]):
        return []
    known: dict[str, Sure | None] = {}
    asks = re.search(_ASKS, text[:_READ], re.IGNORECASE) is not None
    least = _NEAR if asks else SURE
    best: tuple[tuple[float, float], list[Sure]] | None = None
    for texts in _ways(pieces):
        found: list[Sure] = []
        for each in texts:
            if each not in known:
                known[each] = surely(each, knowledge, variant, least)
            one = known[each]
            if one is None or not _goes_with(one, found, len(texts), asks):
                break
            found.append(one)
        if len(found) < len(texts) or not _well_enough(found, knowledge):
            continue
        rank = min(one.score for one in found), sum(one.score for one in found)
        best = (rank, found) if best is None or rank > best[0] else best
    return best[1] if best else []


def _goes_with(one: Sure, found: Sequence[Sure], things: int, asks: bool) -> bool:
    """Return whether a thing is answered by another record than those before it, and all in one manner; two things are
    only by figures, and so is what asks nothing, which may tell states one after another.
    """
    if isinstance(one.result, FactResult) and (things == _TWO or not asks):
        return False
    return all(type(one.result) is type(other.result) and one.record != other.record for other in found)


def _well_enough(found: Sequence[Sure], knowledge: Knowledge) -> bool:
    """Return whether each thing is surely answered, or all by figures of one quantity."""
    sure = min(one.score for one in found) >= SURE
    return sure or (len(found) > _TWO and _of_one_quantity(found, knowledge))


def _of_one_quantity(found: Sequence[Sure], knowledge: Knowledge) -> bool:
    """Return whether figures of one quantity answer all things, so that none of them may be another matter."""
    kinds = {quantity_of(one.result, knowledge) for one in found}
    return len(kinds) == 1 and "" not in kinds


def _names_a_thing(piece: str, knowledge: Knowledge) -> bool:
    """Return whether what stands in the midst of a list is a thing of one, and no aside: "in inches", "either side"."""
    things = (m for m in knowledge.matcher.telling(knowledge.reader.read(piece)) if not m.is_plain)
    return any(not is_quantity(m.concepts, knowledge) for m in things)


def _pieces(text: str) -> list[str]:
    """Return what commas and an "and" part of a text, where that may be a list."""
    plain = text[:_READ].strip(" ?.!")
    pieces = re.split(_BREAKS, plain, flags=re.IGNORECASE)
    return pieces if _TWO <= len(pieces) <= _MOST and _may_list(plain, pieces) else []


def _ways(pieces: Sequence[str]) -> Iterator[list[str]]:
    """Yield a question once with each thing of its list alone, in each way that the list may be meant."""
    head, tail = pieces[0].split(), pieces[-1].split()
    for first in _starts(head, pieces[1], len(pieces) == _TWO):
        for last in dict.fromkeys((*range(1, min(_AROUND, len(tail)) + 1), len(tail))):
            before, after = " ".join(head[: len(head) - first]), " ".join(tail[last:])
            things = [" ".join(head[len(head) - first :]), *pieces[1:-1], " ".join(tail[:last])]
            yield [" ".join(part for part in (before, thing, after) if part) for thing in things]


def _may_list(text: str, pieces: Sequence[str]) -> bool:
    """Return whether commas and an "and" part the things of a list, and no questions, told parts or alternatives."""
    if _asks_whether(text) or re.search(_TOGETHER, text, re.IGNORECASE):
        return False
    if any(not each or re.match(f"{_ASKS}|{_POLAR}", each, re.IGNORECASE) for each in pieces[1:]):
        return False
    if len(pieces) == _TWO and "," in text:
        return False
    return all(len(each.split()) <= _LONG for each in pieces[1:-1]) and not re.search(r"[;:?.]\s", text)


def _asks_whether(text: str) -> bool:
    """Return whether a question is to be answered by yes or no: "does a …", also behind where or when it asks that."""
    if re.match(_POLAR, text, re.IGNORECASE):
        return True
    later = re.search(rf"\b(?:do|does|did) {_NAMES}", text, re.IGNORECASE)
    return later is not None and re.search(_ASKS, text, re.IGNORECASE) is None


def _starts(head: Sequence[str], second: str, two: bool) -> Sequence[int]:
    """Return how many words at the end of what stands before a list may be its first thing: it begins as the second.

    two: whether there are only two things, which must begin alike then.
    """
    sizes = range(1, min(_AROUND, len(head)) + 1)
    opens = re.match(_OPENS, second, re.IGNORECASE)
    if opens is None:
        return () if two else sizes
    own = _NAMES if re.match(_NAMES, second, re.IGNORECASE) else re.escape(opens.group()) + r"\b"
    alike = [n for n in sizes if re.match(own, head[-n], re.IGNORECASE)]
    near = [n for n in sizes if re.match(_OPENS, head[-n], re.IGNORECASE)]
    return alike[:1] or (() if two else near[:1] or sizes)
