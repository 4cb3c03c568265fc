"""What a question only sets its own action against: "come off | rather than be topped up |", "changed instead of
pumped up". It is not asked about, and its words would speak for another record.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.understanding.clauses import STOPS

_AGAINST = (
    ("rather", "than"), ("instead", "of"), ("as", "opposed", "to"), ("and", "not", "just"), ("and", "not", "merely"),
)  # fmt: skip
_MEANS = (("and", "not", "with"), ("instead", "of", "with"), ("rather", "than", "with"))
"""By which it is said with what something is not done: "filled with nitrogen | and not with shop air |"."""
_PLACES = (("but", "not", "at"), ("but", "not", "along"), ("but", "not", "near"), ("and", "not", "at"))
"""By which it is said where something is not: "worn in the middle | but not at the edges |"."""
_LEADS = (*_MEANS, *_AGAINST, *_PLACES)
_LEADING = frozenset(first for first, *_ in _LEADS)
_DOING = frozenset({
    "be", "being", "just", "only", "simply", "merely", "getting", "get", "have", "having", "topped", "pump",
})  # fmt: skip
_ENDINGS = ("ed", "ing")
_NO_DEED = frozenset(("speed", "steering", "braking", "landing", "bearing", "red", "heading", "setting", "taxiing"))
_LONGEST = 6


def without_what_is_set_aside(words: Sequence[str]) -> list[str] | None:
    """Return the words without another action, or place, that the one asked about is set against; None where there is
    none.
    """
    for start in (k for k, word in enumerate(words) if k and word in _LEADING):
        for lead in _LEADS:
            if tuple(words[start : start + len(lead)]) != lead:
                continue
            begin = start + len(lead)
            stops = (k for k in range(begin, len(words)) if words[k] in STOPS or words[k] in ("?", ",", ":"))
            end = next(stops, len(words))
            if begin < end <= begin + _LONGEST and (lead in _PLACES or lead in _MEANS or _is_deed(words[begin])):
                return [*words[:start], *words[end:]]
    return None


def _is_deed(word: str) -> bool:
    return word in _DOING or (word.endswith(_ENDINGS) and word not in _NO_DEED)
