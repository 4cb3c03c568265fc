"""What a person says beside the question: a greeting, an excuse, what the day is like.

"Sim check on Thursday, so be kind. How long does the gear need to retract?" A sentence that names nothing of the trade
only keeps the question beside it from being understood; the question is then read without it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.clauses import asking
from assistant.understanding.matching import strange
from assistant.understanding.mentions import OUTSIDE, Mention

_ENDS = frozenset((".", "!", "?", ";"))
_SPEAKERS = frozenset({"i", "we", "my", "our", "me", "us", "im", "ive", "you", "your"})
_POINTING = frozenset({"it", "its", "that", "this", "they", "them", "their", "he", "she", "his", "her", "there"})
"""Words by which a question may speak of what the other sentence named."""


def without_chatter(question: Question, knowledge: Knowledge) -> str:
    """Return the words of a question without the sentences that name nothing of the trade, or nothing to go on."""
    words = question.reading.words
    unknown = strange(question.reading, knowledge.matcher)
    if not unknown or any(c.startswith(OUTSIDE) for m in unknown for c in m.concepts):
        return ""
    kept = [part for part in _sentences(words) if not _is_chatter(part, question, unknown, knowledge)]
    if len(kept) == len(list(_sentences(words))):
        return ""
    rest = [words[i] for part in kept for i in part]
    asks = any(w.isalpha() for w in rest) and (asking(rest) or rest[-1] == "?")
    return "" if not asks or _POINTING.intersection(rest) else " ".join(rest)


def _sentences(words: Sequence[str]) -> Iterator[range]:
    """Yield the places of each sentence; where nothing is punctuated, what is told before it is asked is one."""
    starts = [0, *(i + 1 for i, word in enumerate(words) if word in _ENDS), len(words)]
    for start, end in pairwise(starts):
        if start >= end:
            continue
        asks = asking(words[start:end])
        first = min(asks, default=0)
        if first and _SPEAKERS.intersection(words[start : start + first]):
            yield range(start, start + first)
            yield range(start + first, end)
        else:
            yield range(start, end)


def _is_chatter(part: range, question: Question, unknown: Sequence[Mention], knowledge: Knowledge) -> bool:
    """Return whether a sentence holds something unknown, and nothing that a question of the trade rests on."""
    inside = [m for m in question.reading.mentions if m.start in part]
    rests = any(a.start in part for a in question.reading.amounts)
    rests = rests or any(k in part for c in question.conditions for k in c.where)
    known = any(m not in unknown and not knowledge.matcher.is_soft(m) for m in inside)
    return any(m in unknown for m in inside) and not rests and not known
