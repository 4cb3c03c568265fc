"""An answer taken and marked in a sitting, and the lines that tell of it: alone or before a class, typed or heard.

taken = take(question, "280, correction 255", marker, knowledge)
for line in mark_lines(taken): show it
record.note_answer(learner, type_id, note_on(item, question.text, taken.answer, taken.mark, taken.share, …))
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from assistant.answering.answer import Citation
from assistant.frozen import NamedTuple
from assistant.practice.making.question import OWN, WHY_OF, Question
from assistant.practice.marking.mark import NOTHING, UNMARKED, Mark, Marker
from assistant.practice.marking.own_key import mark_own, need_of_key
from assistant.practice.marking.points import Need
from assistant.practice.recall import MISSED, PARTLY, RIGHT, WRONG
from assistant.practice.sitting_confusing import Taken as TakenFor
from assistant.practice.sitting_confusing import taken_for
from assistant.practice.sitting_words import corrected, plain
from assistant.quantities.show import exact_shown
from assistant.rendering.text import sources_line
from assistant.resolving.knowing import Knowledge

TEXT, HEAD, ASKED, MARK, NOTE, CITED = "text", "head", "asked", "mark", "note", "cited"
MARK_SHOWN = {RIGHT: "Right.", PARTLY: "Partly right.", WRONG: "Wrong.", MISSED: "Missed.", UNMARKED: "Not marked."}
_STEP = re.compile(r"(?:(?<=:)|;) (\d{1,2}\. )")
"""Where another step of a procedure begins, which is told on a line of its own."""
_FIGURE = re.compile(r"(?<![\w.])\d[\d,]*(?:\.\d+)?")
_LONGEST = 2_000
"""Characters of an answer that are marked: a few minutes of speech."""
_REMARKS = (" Rule: ", " That is with ", " That is step ", " Assumed: ", " Formerly ", " Also needed: ", " Working: ")
"""What a full answer adds to what was asked for."""
_BY_HEART = 3
"""Words from which on an answer can be the book's own."""
_FEW = 2
"""Paragraphs that are each told with their revision."""


class Line(NamedTuple):
    """Something to be shown: a text of any length, and what it is, by which the edge may colour and indent it."""

    text: str
    kind: str = TEXT


class Taken(NamedTuple):
    """An answer as it was marked.

    answer: what counted of it. missing, wrong: in words. expected: the full answer. confused: what was taken for it.
    """

    answer: str
    mark: str
    share: float
    missing: tuple[str, ...]
    wrong: tuple[str, ...]
    expected: str
    sources: tuple[Citation, ...]
    confused: TakenFor | None = None
    figure: str = ""
    """The figure of the record that it was taken for, as it is shown."""
    former: str = ""
    """What is told where an answer gave what held before a revision: then it was taken for nothing else."""


def take(question: Question, said: str, marker: Marker, know: Knowledge) -> Taken:
    """Return an answer with its mark; never raises for any text. After CORRECTION only what follows counts."""
    answer = corrected(said)[:_LONGEST]
    found = _verbatim(question, answer) or _marked(question, answer, marker, know)
    confused = taken_for(question, answer, know) if found.mark == WRONG else None
    shown = exact_shown(confused.figure.value, confused.figure.unit, know.units) if confused else ""
    taken = _taken(question, answer, found)._replace(confused=confused, figure=shown)
    for change in know.base.changes.values() if found.mark == WRONG else ():
        if change.record == question.entry and question.variant in ("", know.variants[0]):
            taken = once_true(taken, change.formerly, change.since)
    return taken


def once_true(taken: Taken, formerly: str, since: str) -> Taken:
    """Return an answer that gave what held before a revision as such: with that told, and taken for nothing else."""
    former = _FIGURE.search(formerly)
    given = [each.replace(",", "") for each in _FIGURE.findall(f"{taken.answer} {taken.figure}")]
    if taken.mark != WRONG or former is None or former[0].replace(",", "") not in given:
        return taken
    told = f"{formerly.split(':')[0].split('. ')[0]} was the former value, until {since}."
    return taken._replace(confused=None, figure="", former=told)


def take_nothing(question: Question, said: str) -> Taken:
    """Return what PASS, UNABLE and "don't know" count as: missed, with every point missing."""
    return Taken(said, MISSED, 0.0, (), (), question.key.says, question.sources)


def overruled(taken: Taken, mark: str) -> Taken:
    """Return an answer with another mark, put in the place of the program's."""
    share = {RIGHT: 1.0, PARTLY: taken.share if 0.5 <= taken.share < 1 else 0.5}.get(mark, 0.0)
    return taken._replace(mark=mark, share=share)


def mark_lines(taken: Taken) -> list[Line]:
    """Return what is told of a mark: the mark, what is wrong and missing, the full answer, its paragraphs."""
    lines = [Line(_mark_line(taken), MARK)]
    if taken.former:
        lines.append(Line(taken.former, NOTE))
    if taken.confused:
        of, paragraph = taken.confused.of, taken.confused.paragraph
        lines.append(Line(f"{taken.figure} is the {_inside(of)} ({paragraph}).", NOTE))
    if taken.mark == PARTLY and taken.missing:
        lines.append(Line(f"Missing: {'; '.join(taken.missing)}.", NOTE))
    return [*lines, *answer_lines(taken.expected, taken.sources)]


def answer_lines(expected: str, sources: Iterable[Citation]) -> list[Line]:
    """Return the full answer and the paragraphs that it rests on."""
    cited = cited_line(tuple(sources))
    return [*map(Line, _STEP.sub(r"\n\1", expected).split("\n")), *([Line(cited, CITED)] if cited else [])]


def cited_line(sources: Sequence[Citation]) -> str:
    """Return paragraphs with their revisions; of many, each document and its revision once."""
    if len(sources) <= _FEW:
        return sources_line(sources)
    documents: dict[tuple[str, str], list[str]] = {}
    for source in sources:
        documents.setdefault((source.document, source.revision), []).append(source.paragraph)
    return "; ".join(
        f"{name} {', '.join(dict.fromkeys(paragraphs))}" + (f" (revision {revision})" if revision else "")
        for (name, revision), paragraphs in documents.items()
    )


def _marked(question: Question, answer: str, marker: Marker, know: Knowledge) -> Mark:
    try:
        if question.form == OWN and (question.key.points or question.key.values):
            return mark_own(_own_need(question, know), answer, know)
        if question.text.startswith(WHY_OF) and marker.mark(question.text, question.key.says).mark != RIGHT:
            return NOTHING  # the reason that was told is not the one that this would be marked by
        return marker.mark(asked_text(question, know), answer)
    except Exception:  # a fault at one answer must not end the sitting: whoever sits there marks it
        return NOTHING


def _own_need(question: Question, know: Knowledge) -> Need:
    key = question.key
    values = [(each.value, each.unit) for each in key.values]
    return need_of_key(question.text, key.points, values, key.ordered, know, key.says, question.sources)


def _verbatim(question: Question, answer: str) -> Mark | None:
    """Return that an answer in the book's own words, or of every point of the key in its own, is right."""
    says, points = question.key.says, question.key.points
    wholes = {plain(says), *(plain(says[: says.index(part)]) for part in _REMARKS if part in says)}
    if not question.key.verdict and not question.key.sets:
        wholes.add(plain(" ".join(points)))
    if len(answer.split()) < _BY_HEART or plain(answer) not in wholes:
        return None
    return Mark(RIGHT, 1.0, (), (), says, question.sources)


def asked_text(question: Question, know: Knowledge) -> str:
    """Return a question as it is marked: with the variant in words, where it is about another than the base."""
    variant = question.variant
    if not variant or variant == know.variants[0] or variant not in know.base.variants:
        return question.text
    show = know.base.variants[variant].show
    return question.text if show in question.text else f"On the {show}: {question.text[:1].lower()}{question.text[1:]}"


def _taken(question: Question, answer: str, found: Mark) -> Taken:
    expected, sources = question.key.says or found.expected, question.sources or found.sources
    wrong = tuple(each for each in found.wrong if each != answer.strip())
    return Taken(answer, found.mark, found.share, found.missing, wrong, expected, sources)


def _mark_line(taken: Taken) -> str:
    shown = MARK_SHOWN[taken.mark]
    if taken.mark == WRONG and taken.wrong:
        return f"{shown.rstrip('.')}: {'; '.join(taken.wrong).rstrip('.')}."
    if taken.mark == MISSED and taken.answer and taken.missing:
        return "Missed: that does not say what was asked for."
    return shown


def _inside(text: str) -> str:
    """Return what a record is of as it stands within a sentence."""
    return text if text[:2].isupper() else text[:1].lower() + text[1:]
