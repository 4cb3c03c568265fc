"""A turn that only denies and gives another amount: "no, 60", "nope one thirty knots".

The "no" belongs to no thing then ("no reverse"), and is no answer: the amount takes the place of the one before.
"""

from __future__ import annotations

from assistant.resolving.knowing import Knowledge

_MOST_WORDS = 9
_NUMBERED = 5
"""Below this number, one behind "no" may be of one of several things: "no 2"."""
_NO = ("no", "nope", "nah", "negative", "not")
_BESIDE = frozenset({
    ",", ".", "sorry", "make", "it", "it's", "its", "s", "that", "is", "was", "to", "be", "say", "said", "i", "ought",
    "knots", "wait", "actually", "at", "there", "we", "re", "are", "should", "have", "meant",
})  # fmt: skip


def amount_instead(text: str, knowledge: Knowledge) -> str | None:
    """Return what follows the word by which a turn denies, where that is an amount and no more; else None."""
    if text[:2].lower() not in ("no", "na", "ne"):
        return None
    first, _, rest = text.strip().partition(" ")
    if first.lower().rstrip(",.;:") not in _NO or not rest:
        return None
    reading = knowledge.reader.read(rest)
    if len(reading.amounts) != 1 or len(reading.words) > _MOST_WORDS or reading.amounts[0].unit == "count":
        return None
    taken = range(reading.amounts[0].start, reading.amounts[0].end)
    if first[-1].isalpha() and taken.start == 0 and reading.amounts[0].value < _NUMBERED and len(reading.words) > 1:
        return None  # "no 2 brake"
    beside = (word for k, word in enumerate(reading.words) if k not in taken)
    return rest.lstrip(" ,.;:") if _BESIDE.issuperset(beside) else None
