"""A list with too much in it: "up, off and down" of a lever with two positions.

What is listed beside the things asked for is claimed to be one of them.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.practice.marking.finding.found import Held, element_said
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import CONTRASTS, NEGATORS, word_set
from assistant.resolving.knowing import Knowledge

_CUTS = word_set(", ; . / and & then plus or :") | CONTRASTS
_MOST = 2
"""Words of an item of a bare list."""
_LEAST = 2
"""Items of a list that name things asked for."""
_IDLE = word_set("""
    a all also amp an are both each er etc finally first five four i is it just last lastly of ok okay only position
    positions right s second setting settings sir so that the them then there these they third those three two um us
    we well yes you erm ones one uh hm mode modes
""")


def too_many(held: Sequence[Held], need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the items of a bare list that are none of the things asked for."""
    if any(h.point.figures or h.point.verdict or h.point.state for h in held):
        return []
    names = [e for e in (e for h in held for e in h.point.elements) if not e.given and e.weight > _TELLING]
    if len(names) < _LEAST or need.ordered or need.polar or need.cause or need.loss or not _lists(need):
        return []
    items = [[i for i in piece if said.reading.words[i] not in _IDLE] for piece in said.pieces(_CUTS)]
    named = [item for item in items if item and any(set(element_said(e, said, item)[1]) for e in names)]
    if len(named) < _LEAST or any(len(item) > _MOST for item in named):
        return []
    own = frozenset(map(plain, know.phrase(need.expected).words)) | need.words | need.asked
    kinds = know.lexicon.kinds
    known = {c for c in need.said | need.question.concepts if c[0] not in "@~" and kinds.get(c, "thing") == "thing"}
    return [
        " ".join(said.reading.words[i] for i in item)
        for item in items
        if item and item not in named and len(item) <= _MOST
        and all(said.words[i] not in own and said.reading.words[i].isalpha() for i in item)
        and _AGAIN.isdisjoint(said.reading.words[i] for i in item)
        and all(said.concepts[i].isdisjoint(known) for i in item)
    ]  # fmt: skip


_TELLING = 0.7


_AGAIN = NEGATORS | word_set("same ditto likewise")


def _lists(need: Need) -> bool:
    """Return whether a question asks which things there are."""
    words = need.question.words
    return bool(_ASKING.intersection(words)) and not _OTHERWISE.intersection(words)


_ASKING = word_set("which what name list give state")
_OTHERWISE = word_set("why when where who how means mean happens")
