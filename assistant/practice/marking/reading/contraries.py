"""Words that cannot both be meant of one thing, by their plainest form: left and right, open and closed."""

from __future__ import annotations

from assistant.practice.marking.reading.said import plain
from assistant.practice.marking.reading.wording import OPPOSITES

_PAIRS = frozenset((plain(one), plain(two)) for one, two in OPPOSITES)
OTHER = {
    word: frozenset(two if one == word else one for one, two in _PAIRS if word in (one, two))
    for word in {each for pair in _PAIRS for each in pair}
}
"""For each word those that are its contrary."""
