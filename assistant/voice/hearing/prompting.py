"""What a recogniser is told to expect: first the terms of the trade, then, for a second hearing, the questions near.

What was half understood says which records it may be about; told how these are asked for, a recogniser hears the rest.
"""

from __future__ import annotations

from collections.abc import Iterable

from assistant.resolving.knowing import Knowledge
from assistant.understanding.lexicon import GAP
from assistant.understanding.matching import STRANGE

_MOST = 40
_NEAREST, _MOST_ASKS = 6, 14
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


def questions_near(texts: Iterable[str], knowledge: Knowledge) -> str:
    """Return ways of asking for the records that some texts come nearest to, as one sentence; "" for none."""
    near: dict[str, float] = {}
    for text in texts:
        for match in knowledge.matcher.rank(knowledge.reader.read(text))[:_NEAREST]:
            record = knowledge.base.records.get(match.record)
            asks = [*getattr(record, "asks", ())[:2], getattr(record, "of", "")]
            for ask in filter(None, asks):
                near[ask] = max(match.score, near.get(ask, 0.0))
    best = sorted(near, key=lambda ask: -near[ask])[:_MOST_ASKS]
    return (", ".join(best).replace("[", "").replace("]", "") + ".") if best else ""


def _is_of_the_trade(name: str, knowledge: Knowledge) -> bool:
    words = name.split()
    if GAP in name or len(words) > _LONGEST_NAME or any(letter.isdigit() for letter in name):
        return False
    return not all(knowledge.reader.is_ordinary(word) for word in words)
