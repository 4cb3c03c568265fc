"""The terms that a recogniser is told to expect: names of the knowledge that ordinary English does not have."""

from __future__ import annotations

from assistant.resolving.knowing import Knowledge
from assistant.understanding.lexicon import GAP
from assistant.understanding.matching import STRANGE

_MOST = 40
_LONGEST_NAME = 4
"""Words of a name; what is longer is a way of asking."""


def terms_expected(knowledge: Knowledge, most: int = _MOST) -> str:
    """Return names of things, those that most records speak of first, as one sentence."""
    things = [term for term in knowledge.base.terms.values() if term.kind == "thing" and term.names]
    weights = {term.id: knowledge.matcher.weight(term.id) for term in things}
    spoken_of = [term for term in things if weights[term.id] != STRANGE]
    spoken_of.sort(key=lambda term: weights[term.id])  # the more records speak of it, the less it weighs
    names = dict.fromkeys(term.names[0] for term in spoken_of)
    rare = [name for name in names if _is_of_the_trade(name, knowledge)]
    return ", ".join(rare[:most]) + "." if rare else ""


def _is_of_the_trade(name: str, knowledge: Knowledge) -> bool:
    words = name.split()
    if GAP in name or len(words) > _LONGEST_NAME or any(word[0].isdigit() for word in words):
        return False
    return not all(knowledge.reader.is_ordinary(word) for word in words)
