"""Which of several things is meant, after what holds with one of them lost was told of both: "system two"."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import question_of
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Declined, FactResult, Result, TableResult
from assistant.understanding.mentions import Mention

_MOST_WORDS = 7
_EITHER = "either"
_PLACES = {
    "one": 1, "1": 1, "first": 1, "two": 2, "2": 2, "second": 2, "three": 3, "3": 3, "third": 3,
}  # fmt: skip
_SMALL = frozenset({
    "it", "is", "s", "the", "one", "number", "no", "and", "if", "what", "about", "say", "with", "in",
    "case", "of", "for",
    "i", "think", "we", "lost", "gone", "was", "that", "so", "ok", "then", "or", "suppose", "let", "system",
    "sys", "hyd",
    "a", "its", "um", "er", "well", "now", "?", ".", ",", "!", "how", "has", "been", "be", "were", "d", "had",
})  # fmt: skip


def one_of_them(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the question before with the one thing in it that a turn names, where it spoke of any one of several."""
    before, words = context.asked, alone.reading.words
    if before is None or len(words) > _MOST_WORDS or not _told_of_several(context.result):
        return None
    either = next((m for m in before.reading.mentions if _is_either(m, knowledge)), None)
    if either is None:
        return None
    terms = sorted(i for i in either.implied if i in knowledge.states.by_term)
    meant = _meant(alone, terms, knowledge)
    if not meant:
        return None
    said = [w for k, w in enumerate(before.reading.words) if k not in either.taken[1:]]
    said[either.taken[0]] = knowledge.base.terms[meant].show or knowledge.base.terms[meant].names[0]
    question = question_of(" ".join(said), knowledge, before.variant)
    result = resolve_scored(question, knowledge).result
    return None if isinstance(result, Declined) else (question.with_text(alone.reading.text), result)


def _told_of_several(result: Result | None) -> bool:
    """Return whether a statement was told, or what holds in each of several cases."""
    return isinstance(result, FactResult) or (isinstance(result, TableResult) and len(result.rows) > 1)


def _is_either(mention: Mention, knowledge: Knowledge) -> bool:
    return any(knowledge.lexicon.kinds.get(c) == _EITHER for c in mention.concepts)


def _meant(alone: Question, terms: list[str], knowledge: Knowledge) -> str:
    """Return the one of some things that a turn names, by its name or by its place, and nothing besides."""
    reading = alone.reading
    named = {c for m in reading.mentions for c in m.concepts if c in terms}
    places = {k for m in reading.mentions if named & m.concepts for k in m.taken}
    rest = [w for k, w in enumerate(reading.words) if k not in places]
    counted = [w for w in rest if w in _PLACES]
    if len(named) == 1 and _SMALL.issuperset(rest):
        return named.pop()
    if named or not counted or not (_SMALL | _PLACES.keys()).issuperset(rest):
        return ""
    place = _PLACES[next((w for w in counted if w != "one"), "one")]
    return terms[place - 1] if place <= len(terms) else ""
