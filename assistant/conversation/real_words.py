"""A slip of the finger that makes another ordinary word: "a fat spot on a tyre", "the long boy's main tyres".

Such a word is left as it stands, and what it names would be declined. Where it is the only thing that nothing
explains, and one of the words that are used most is one slip from it, the question is tried with that word; it counts
only if it is then answered surely, and no other such word answers as well. A word that was mended may have been another
one in the same way.
"""

from __future__ import annotations

import re

from assistant.conversation.readings import question_of
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Choices, Declined, Needed
from assistant.understanding.matching import strange
from assistant.understanding.spelling import slips_of

_SURE = 0.72
"""Score from which a question with another word is taken for what was meant."""
_OPEN = (Declined, Choices, Needed)


def with_word_meant(alone: Question, knowledge: Knowledge, variant: str) -> tuple[Question, Scored] | None:
    """Return a question that is left open with one word as it was meant, and what that gives."""
    found = []
    doubtful = _doubtful(alone, knowledge)
    often = sorted(knowledge.lexicon.frequent) if doubtful else []
    for word, read in doubtful:
        for meant in slips_of(word, often):
            if meant == read:
                continue
            said = re.sub(rf"\b{re.escape(word)}\b", meant, alone.reading.text, flags=re.IGNORECASE)
            question = question_of(said, knowledge, variant)
            scored = resolve_scored(question, knowledge)
            if scored.score >= _SURE and not isinstance(scored.result, _OPEN):
                found.append((scored.score, question, scored))
    if not found or len({scored.record for _, _, scored in found}) > 1:
        return None
    _, question, scored = max(found, key=lambda one: one[0])
    return question.with_text(alone.reading.text), scored


def _doubtful(alone: Question, knowledge: Knowledge) -> list[tuple[str, str]]:
    """Return the words that may be slips, each as typed and as read: those that were mended, and the one that nothing
    explains.
    """
    odd = strange(alone.reading, knowledge.matcher)
    if len(odd) > 1 or any(not m.is_plain or " " in m.text for m in odd):
        return []
    mended = [pair for pair in alone.reading.mended if len(pair[0]) > 3]
    known = {new for _, new in alone.reading.mended}
    return [*mended, *((m.text, "") for m in odd if m.text not in known)]
