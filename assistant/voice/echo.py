"""Whether the microphone heard the loudspeaker: the words that were being said, in their order.

Common words are in every answer and in every question; so only the others count, and a question is never taken for
what an answer says.
"""

from __future__ import annotations

import re
from difflib import SequenceMatcher

from assistant.understanding.lexicon import Lexicon
from assistant.voice.hearing.wording import said_words
from assistant.voice.speaking.phrases import sentences

_ENOUGH = 4
"""Words that tell something, from which on their order shows what they are of."""
_SHARE = 0.7
_RUN = 3
"""Words in one piece that are an echo, where few of them tell anything."""
_ASKS = re.compile(r"^\W*(?:and |so |but |okay )?(?:what|which|who|how|why|where|when|can|may|is|are|do|does|should)\b")


class Echo:
    """Compares what was heard with what was being said, by the words that the lexicon does not hold to be common."""

    def __init__(self, lexicon: Lexicon) -> None:
        self._lexicon = lexicon

    def is_heard(self, heard: str, said: str) -> bool:
        """Return whether what was heard while something was said is that very thing."""
        mine, spoken = said_words(heard), said_words(said)
        if not mine or heard.rstrip().endswith("?") or _ASKS.match(heard.lower()):
            return False
        telling = [word for word in mine if self._tells(word)]
        if len(telling) >= _ENOUGH:
            others = [word for word in spoken if self._tells(word)]
            return _in_order(telling, others) >= _SHARE * len(telling)
        return len(mine) >= _RUN and f" {' '.join(mine)} " in f" {' '.join(spoken)} "

    def _tells(self, word: str) -> bool:
        return len(word) > 2 and word not in self._lexicon.neutral and word not in self._lexicon.weak


def rest_from(heard: str, said: str) -> str:
    """Return what was being said from the sentence on in which it was heard."""
    parts, mine = sentences(said), said_words(heard)
    matched = [_in_order(mine, said_words(part)) for part in parts]
    if not matched:
        return said
    return " ".join(parts[matched.index(max(matched)) :])


def _in_order(some: list[str], others: list[str]) -> int:
    blocks = SequenceMatcher(None, some, others, autojunk=False).get_matching_blocks()
    return sum(block.size for block in blocks)
