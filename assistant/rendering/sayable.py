"""Tell capitals that are a word ("STEER") from an abbreviation, which is said letter by letter ("TODR").

No list of words is at hand where answers are spoken; how English words begin and end tells most. What it does not
tell is an entry of the pronunciations.
"""

from __future__ import annotations

import re

_VOWELS = frozenset("AEIOUY")
_TWO_LETTERS = frozenset({
    "AM", "AN", "AS", "AT", "BE", "BY", "DO", "GO", "HE", "IF", "IN", "IS", "IT", "ME", "MY", "NO", "OF", "OH",
    "ON", "OR", "SO", "TO", "UP", "US", "WE",
})  # fmt: skip
_LONGEST_ABBREVIATION = 5
_BEGINNINGS = frozenset({
    "BL", "BR", "CH", "CHR", "CL", "CR", "DR", "DW", "FL", "FR", "GH", "GL", "GN", "GR", "KN", "PH", "PL", "PR",
    "PS", "RH", "SC", "SCH", "SCR", "SH", "SHR", "SK", "SL", "SM", "SN", "SP", "SPL", "SPR", "SQ", "ST", "STR",
    "SW", "TH", "THR", "TR", "TW", "WH", "WR",
})  # fmt: skip
_ENDINGS = frozenset({
    "BB", "BS", "CH", "CK", "CS", "CT", "DD", "DS", "DZ", "FF", "FT", "GG", "GH", "GN", "GS", "HT", "KS", "LB", "LD",
    "LF", "LK", "LL", "LM", "LN", "LP", "LS", "LT", "MB", "MN", "MP", "MS", "ND", "NG", "NK", "NN", "NS", "NT",
    "NX", "PP", "PS", "PT", "RB", "RC", "RD", "RF", "RG", "RK", "RL", "RM", "RN", "RP", "RR", "RS", "RT", "SH", "SK",
    "SM", "SP", "SS", "ST", "TH", "TS", "TT", "TZ", "VS", "WD", "WK", "WL", "WN", "WS", "XT", "ZZ",
})  # fmt: skip
"""Consonants that English words begin and end with: what else does, or has no vowel, is an abbreviation."""


def is_sayable(word: str) -> bool:
    """Return whether capitals may be a word: by their vowels, and the consonants that short ones begin and end with."""
    if len(word) == 2:
        return word in _TWO_LETTERS
    if not _VOWELS & set(word) or len(word) > _LONGEST_ABBREVIATION:
        return bool(_VOWELS & set(word))
    first, *_, last = re.split("[AEIOUY]+", word)
    return (len(first) < 2 or first in _BEGINNINGS) and (len(last) < 2 or last[-2:] in _ENDINGS)
