"""Lists of amounts for the ear: each amount apart, and a pause between its name and it."""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.answering.parts import upper
from assistant.rendering.twice import sentences_of

_LABELLED = r"([A-Za-z][\w’' -]*) (?=\d[\d,.]*( ?[^\s\d.;,]+)(?:[.;]|$))"
_LONGEST_LABEL = 7
"""Words of a name that is said apart from its amount; more are a sentence."""
_JOINING = frozenset({
    "a", "about", "above", "after", "all", "an", "and", "are", "as", "at", "before", "below", "between", "by", "code",
    "exactly", "for", "from", "has", "hold", "holds", "in", "is", "lasts", "least", "minus", "most", "need", "needs",
    "no", "of", "off", "on", "only", "or", "over", "past", "reads", "revision", "row", "shows", "so", "step", "take",
    "takes", "than", "the", "to", "under", "until", "wait", "was", "when", "with", "within",
})  # fmt: skip
"""Words after which an amount follows without a pause."""
_NO_ITEM = "which|then|with|so|if|and|or|at|in|when|where|whichever|whatever|is|are|was|by|from|to|that|below|above"
_ITEM = rf", (?:and |or )?(?=[^\W\d][^,.;:]*\d)(?!(?:{_NO_ITEM}) )"
_CROWDED, _ITEMS = 14, 3
"""Words of a sentence, and amounts listed in it, from which each is said apart."""
_VERBS = frozenset({"is", "are", "has", "have", "was"})
_NAME = r"(?P<name>(?:^|(?<=: ))[^\W\d][\w’' -]*?) (?=(?:Mach )?\d)"


def crowd_parted(text: str, signs: Iterable[str]) -> str:
    """The amounts that a long sentence lists become sentences, so that each can be taken in."""

    def parted(sentence: str) -> str:
        if len(sentence.split()) < _CROWDED or len(re.findall(_ITEM, sentence)) < _ITEMS - 1:
            return sentence
        pieces = re.split(_ITEM, sentence)
        amounts = [piece for piece in pieces if re.search(rf"\d ?(?:{units})(?!\w)", piece)]
        return ". ".join(upper(_name_apart(piece)) for piece in pieces) if len(amounts) >= _ITEMS else sentence

    if text.count(",") < _ITEMS - 1:
        return text
    units = "|".join(re.escape(sign.strip()) for sign in signs)
    return " ".join(parted(sentence) for sentence in sentences_of(text))


def _name_apart(piece: str) -> str:
    """A pause between the name of an item and its amount: "Retracting, 205 kt"."""

    def said(match: re.Match[str]) -> str:
        words = match["name"].lower().split()
        joins = words[-1] in _JOINING or not _VERBS.isdisjoint(words)
        return match[0] if joins else f"{match['name']}, "

    return re.sub(_NAME, said, piece, count=1)


def labels_apart(text: str, signs: Iterable[str]) -> str:
    """A name and its amount, alone between stops, are heard apart: "Nose wheels, 22 m"."""
    units = frozenset(signs)
    begun = (". ", "; ", ": ", ", ") if ";" in text else (". ",)

    def said(match: re.Match[str]) -> str:
        words = match[1].split()
        begins = match.start() == 0 or match.string[match.start() - 2 : match.start()] in begun
        apart = begins and match[2] in units and 1 < len(words) <= _LONGEST_LABEL and not words[-2].isdigit()
        return f"{match[1]}, " if apart and words[-1].lower() not in _JOINING else f"{match[1]} "

    return re.sub(_LABELLED, said, text)
