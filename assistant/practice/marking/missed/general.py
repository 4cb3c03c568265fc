"""Answers to a why that tell no cause, but what people do or what any thing is like: "no lamp proves anything".

A cause is told by its word, "because", or of the thing asked about, "it", "they", "the light". What begins with people,
with any thing of a kind or with an order, and names nothing more of the aeroplane, is a remark.
"""

from __future__ import annotations

import re

from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said
from assistant.resolving.knowing import Knowledge

_OF_ANY = re.compile(
    r"(?:well|oh|but|and|just|really|[,.])* ?(?:no|any|every|one|a|an|all|never|always|do not|you|we|people|nobody|"
    r"no one|everybody|everyone|anybody|pilots|crews?|hot|good)\b"
)
_OWN = re.compile(r"(?:i|we|me)(?: would| will| d| always| never| just| usually)* [a-z]+")
"""What somebody does: "I'd look at the bars instead"."""
_CAUSE = re.compile(r"\b(?:because|cause|cos|since|due to|so that|so it|so they|so as|otherwise|or else)\b|^to ")
_LIKE = re.compile(r"(?:it|they|that)(?: all)? looks? like\b|(?:it|that)(?: is| was)? what .* (?:wants?|says?|asks?)\b")
"""How it looks, and who wants it so."""


_KIND = frozenset(("a", "all", "an", "any", "every", "no", "one"))
_SUBJECT = 3
"""Words within which any thing of a kind is named: "no lamp", "a hot brake"."""


def is_general(need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether an answer to a why, which holds nothing needed, tells of people or of any thing alone."""
    text = " ".join(said.reading.words)
    if not need.question.has("why") or said.claims or _CAUSE.search(text):
        return False
    if _OWN.match(text) or _LIKE.match(text):
        return True
    return _OF_ANY.match(text) is not None and not _names_more(need, said, know)


def _names_more(need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether an answer names a part, a system or a quantity that the question has not."""
    asked = frozenset(c for m in need.question.mentions for c in m.concepts) | {"lamp", "show"}
    kinds = know.lexicon.kinds
    first = _SUBJECT if said.reading.words[0] in _KIND else 0
    named = (m.concepts for m in said.content if m.start >= first and m.concepts.isdisjoint(asked))
    return any(c[0] not in "~@!" and kinds.get(c, "thing") in ("thing", "quantity") for each in named for c in each)
