"""A paper of questions as plain text: the questions with room to write, and apart from them the key with paragraphs."""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.answering.answer import Citation
from assistant.frozen import NamedTuple
from assistant.practice.making.question import MEMORY, STEPS, Question
from assistant.practice.making.wording import content
from assistant.rendering.text import NARROWEST, sources_line, wrap

FORMATIVE = "Formative, not a record of qualification."
_FOR_STEPS, _FOR_WORDS = 8, 3
"""Lines to write on by what is asked for: as many whatever the key holds, so that they do not count its points."""
_SEVERAL = 2
_BRACKETED = re.compile(r"\(([^()]*\bor\b[^()]*)\)")


class Paper(NamedTuple):
    """What is printed.

    title: what it is about. caution: the deference to the approved documents, with the revisions loaded. number: the
    seed that gives the same paper again.
    """

    title: str
    caution: str
    number: str
    questions: tuple[Question, ...]


def lines_to_write(question: Question) -> int:
    """Return how many lines there are for an answer: one for a figure, as many for each drill, a few for the rest."""
    if question.key.values and not question.key.points:
        return 1
    return _FOR_STEPS if question.form in (STEPS, MEMORY) or question.key.ordered else _FOR_WORDS


def points_told(question: Question) -> tuple[str, ...]:
    """Return the points of a key where the full answer does not already list them one by one.

    None where it tells some of them in brackets, joined by "or": in a list each would look as if it sufficed by itself.
    """
    points = question.key.points
    if question.form in (STEPS, MEMORY) or len(points) < _SEVERAL:
        return ()
    ways = [content(text) for text in _BRACKETED.findall(question.key.says)]
    nested = any(sum(content(point) <= way for point in points) >= _SEVERAL for way in ways)
    return () if nested else points


def cited(question: Question) -> str:
    """Return the paragraphs that a key rests on, with their revisions."""
    sources: Iterable[Citation] = question.sources
    return sources_line(sources)


def questions_text(paper: Paper, width: int, closing: bool = True) -> str:
    """Return the paper for those who answer: numbered questions with ruled lines.

    closing: end with the caution, which stands once in what is read as one.
    """
    width = max(width, NARROWEST)
    rule = "_" * (width - 4)
    found = [*wrap(paper.title, width), "", _blank("Name", width), _blank("Date", width), ""]
    for number, question in enumerate(paper.questions, 1):
        found += wrap(f"{number:>2}. {_with_section(question)}", width, "    ")
        found += [f"    {rule}" for _ in range(lines_to_write(question))]
        found.append("")
    if closing:
        found += _closing(paper, width)
    return "\n".join(found) + "\n"


def key_text(paper: Paper, width: int) -> str:
    """Return the key for whoever marks: each question with its full answer, its points and its paragraphs."""
    width = max(width, NARROWEST)
    found = [*wrap(f"Key to: {paper.title}", width), ""]
    for number, question in enumerate(paper.questions, 1):
        found += wrap(f"{number:>2}. {question.text}", width, "    ")
        found += [f"    {line}" for line in wrap(question.key.says, width - 4)]
        for point in points_told(question):
            found += [f"    {line}" for line in wrap(f"- {point}", width - 4, "  ")]
        found += [f"    {line}" for line in wrap(cited(question), width - 4)]
        found.append("")
    found += _closing(paper, width)
    return "\n".join(found) + "\n"


def _closing(paper: Paper, width: int) -> list[str]:
    return [*wrap(f"{FORMATIVE} Paper {paper.number}.", width), *wrap(paper.caution, width)]


def _with_section(question: Question) -> str:
    return f"{question.text} [{question.section}]" if question.section else question.text


def _blank(label: str, width: int) -> str:
    return f"{label} ".ljust(min(width, 40), "_")
