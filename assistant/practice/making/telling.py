"""Whether the full answer to one question gives away another's, and an order in which none that does comes first."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache

from assistant.practice.making.question import MEMORY, STEPS, Question
from assistant.practice.making.wording import content

_content = lru_cache(4096)(content)
_OF_IT = 0.75
"""Share of what a question names, from which on an answer from elsewhere that names it too is on the same thing."""


_WORDED = 3
"""Words from which on a step can be told by others than its own: "flaps up" stands in many a question."""


def tells(before: Question, question: Question) -> bool:
    """Whether who has heard a question and its full answer has been told that of another, or a step of it."""
    if _names_a_step(_content(before.text), question):
        return True
    said = _content(before.key.says)
    if not _holds_answer(said, question):
        return False
    return _shares_paragraph(before, question) or _names(said | _content(before.text), question)


def place_for(question: Question, chosen: Sequence[Question]) -> int | None:
    """Return where among questions in their order another one may stand, the last place that it can; None if nowhere:
    it tells what comes after, and is told by what comes before.
    """
    first = max((place + 1 for place, each in enumerate(chosen) if tells(question, each)), default=0)
    last = min((place for place, each in enumerate(chosen) if tells(each, question)), default=len(chosen))
    return last if first <= last else None


def none_told_before(questions: Iterable[Question]) -> tuple[Question, ...]:
    """Return questions in an order in which none is told by one before it, as far as there is one."""
    found: list[Question] = []
    for question in questions:
        place = place_for(question, found)
        found.insert(len(found) if place is None else place, question)
    return tuple(found)


def _holds_answer(said: frozenset[str], question: Question) -> bool:
    key = question.key
    if key.values:
        return f"{key.values[0].value:g}" in {word.replace(",", "") for word in said}
    if key.points:
        return all(_content(point) <= said for point in key.points)
    new = _content(key.says) - _content(question.text)
    return bool(new) and new <= said


def _names_a_step(asked: frozenset[str], question: Question) -> bool:
    """Whether the words of a question alone hold most of a step that another one asks for."""
    if question.form not in (STEPS, MEMORY):
        return False
    steps = [words for point in question.key.points if len(words := _content(point)) >= _WORDED]
    return any(len(words & asked) >= _OF_IT * len(words) for words in steps)


def _shares_paragraph(one: Question, other: Question) -> bool:
    cited = {(source.document, source.paragraph) for source in one.sources}
    return not cited.isdisjoint((source.document, source.paragraph) for source in other.sources)


def _names(said: frozenset[str], question: Question) -> bool:
    """Whether an answer from elsewhere is on what a question asks about, by the words it is asked in."""
    words = frozenset(word for word in _content(question.text) if not word[0].isdigit())
    return bool(words) and len(words & said) >= _OF_IT * len(words)
