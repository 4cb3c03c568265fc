"""A slip of the finger that makes another ordinary word: "a fat spot on a tyre", "can I sill steer".

Such a word is left as it stands, and what it names would be declined. Where it is no word that questions are put in,
and one that they are put in is one slip from it, the question is tried with that word; it counts only if it is then
answered surely, and no other such word answers as well. A word that was mended may have been another one in the same
way.
"""

from __future__ import annotations

import re
from collections.abc import Sequence, Set
from itertools import combinations, product

from assistant.conversation.reading_turns.readings import question_of, things_named
from assistant.quantities.numbers import STARTERS
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Choices, Declined, Needed, Result
from assistant.understanding.matching import strange
from assistant.understanding.spelling import slips_of

_SURE = 0.72
"""Score from which a question with another word is taken for what was meant."""
_OPEN = (Declined, Choices, Needed)
_SHORTEST = 3
_MOST_WORDS, _MOST_SLIPS = 4, 4
"""How many words of a question may be slips, and how many words each may be a slip of."""


def with_word_meant(
    alone: Question, first: Result, knowledge: Knowledge, variant: str
) -> tuple[Question, Scored] | None:
    """Return a question that is left open with a word or two as they were meant, and what that gives."""
    usual = knowledge.lexicon.usual
    doubtful = _doubtful(alone, first.words if isinstance(first, Declined) else (), usual, knowledge)
    often = sorted(usual - STARTERS) if doubtful else []  # what is said of a number is never changed
    meant = [(word, _slips(word, read, often, knowledge)) for word, read in doubtful]
    able = [(word, slips) for word, slips in meant if 0 < len(slips) <= _MOST_SLIPS]
    for together in (1, 2):
        found = [
            one
            for some in combinations(able, together)
            for slips in product(*(slips for _, slips in some))
            if (one := _tried(dict(zip((word for word, _ in some), slips, strict=True)), alone, knowledge, variant))
        ]
        if len({scored.record for _, scored in found}) == 1:
            question, scored = max(found, key=lambda one: one[1].score)
            return question.with_text(alone.reading.text), scored
        if found:
            return None
    return None


def _tried(
    meant: dict[str, str], alone: Question, knowledge: Knowledge, variant: str
) -> tuple[Question, Scored] | None:
    """Return a question with words in place of others and what answers it, if it is answered surely."""
    said = alone.reading.text
    for word, slip in meant.items():
        said = re.sub(rf"\b{re.escape(word)}\b", slip, said, flags=re.IGNORECASE)
    question = question_of(said, knowledge, variant)
    scored = resolve_scored(question, knowledge)
    sure = scored.score >= _SURE and not isinstance(scored.result, _OPEN)
    return (question, scored) if sure else None


def _is_usual(word: str, usual: Set[str]) -> bool:
    """Return whether questions are put in a word, or it is part of a number."""
    return word.lower() in usual or word.lower() in STARTERS


def _slips(word: str, read: str, often: Sequence[str], knowledge: Knowledge) -> list[str]:
    """Return the words that a word may be a slip of; one that was read as the knowledge's own stays one of those."""
    found = [meant for meant in slips_of(word.lower(), often) if meant != read]
    if read != word.lower() and _is_name(read, knowledge):
        return [meant for meant in found if _is_name(meant, knowledge)]
    return found


def _is_name(word: str, knowledge: Knowledge) -> bool:
    """Return whether a word by itself names a thing that the knowledge tells of."""
    return any(not (m.is_plain or m.is_outside) for m in things_named(knowledge.phrase(word), knowledge))


def _doubtful(
    alone: Question, unexplained: tuple[str, ...], usual: Set[str], knowledge: Knowledge
) -> list[tuple[str, str]]:
    """Return the words that may be slips, each as typed and as read: what nothing explains, or else those that were
    mended and those that questions are not put in.
    """
    reading = alone.reading
    odd = strange(reading, knowledge.matcher)
    if any(not m.is_plain or " " in m.text for m in odd):
        return []
    mended = dict(reading.mended)
    typed = dict.fromkeys(re.findall(r"[^\W\d_]+", reading.text))
    rare = [word for word in typed if len(word) >= _SHORTEST and not (word.isupper() or _is_usual(word, usual))]
    unread = {m.text.lower() for m in odd} - {new for _, new in reading.mended}
    unread = unread or {word.lower() for word in unexplained}.intersection(word.lower() for word in rare)
    if not unread <= {word.lower() for word in rare}:
        return []  # it is no slip
    found = [(word, mended.get(word.lower(), word.lower())) for word in rare if not unread or word.lower() in unread]
    return found if len(found) <= _MOST_WORDS else []
