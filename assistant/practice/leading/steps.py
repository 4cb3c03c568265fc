"""What every step of leading a class is made of: the desk it is led with, what follows, the lines that are shown."""

from __future__ import annotations

from collections.abc import Callable
from random import Random

from assistant.frozen import NamedTuple
from assistant.practice.asking.pool import section_name
from assistant.practice.keeping.rows import Asking, Turn
from assistant.practice.leading.case import Further
from assistant.practice.leading.plan import Suggested
from assistant.practice.leading.standing import BREAK, Act, Standing
from assistant.practice.making.question import Question
from assistant.practice.marking.mark import UNMARKED
from assistant.practice.papers.paper import points_told
from assistant.practice.recall import PARTLY
from assistant.practice.sitting_marks import ASKED, CITED, HEAD, MARK, MARK_SHOWN, NOTE, Line, Taken, cited_line

ANSWER_MODE, LISTENING, ENDING = "answer", "listening", "ending"
"""What the next line is, if not what it usually would be: an answer, typed or by ear; a word on the end."""
NAMED = "named"
"""Kind of line that calls a person."""


class Desk(NamedTuple):
    """What a class is led with.

    take: an answer to a question as marked. asking: a question as it is put, with what is kept of its record.
    further: the question that carries a case on; reason: "why?" after one. Both None where there is none.
    """

    chance: Random
    take: Callable[[Question, str], Taken]
    asking: Callable[[Question, str], Asking]
    further: Callable[[Question], Further | None]
    reason: Callable[[Question], Further | None]
    looked_back: Callable[[tuple[Question, ...]], tuple[str, ...]]
    hears: bool = False
    """Whether an answer can be taken by ear."""
    key_elsewhere: Callable[[], bool] = lambda: False
    """Whether another terminal shows the key, so that it need not stand before the class."""
    keeps: Callable[[], bool] = lambda: True
    """Whether what is done stays when the program ends."""
    names_failure: Callable[[Question], bool] = lambda question: True
    """Whether a question tells of a failure, from which a case may go on."""


class Step(NamedTuple):
    """What follows: acts to carry out in their order, lines to show, what to say aloud, the mode of what is next."""

    acts: tuple[Act, ...] = ()
    lines: tuple[Line, ...] = ()
    aloud: str = ""
    mode: str = ""


def put_lines(standing: Standing, turn: Turn) -> tuple[Line, ...]:
    """Return a question as the class sees it."""
    question = standing.question(turn)
    return (head(standing, turn.number, question), Line(turn.asking.question, ASKED))


def opening_lines(standing: Standing) -> tuple[Line, ...]:
    """Return what is shown when a class begins or goes on: the question that stands, or the last one with its mark."""
    turn = standing.current
    if standing.phase == BREAK:
        return ()
    if turn is None:
        return last_lines(standing)
    return (*put_lines(standing, turn), *called_lines(standing, turn))


def last_lines(standing: Standing) -> tuple[Line, ...]:
    """Return the mark that was given last, with its question, so that it can be seen that it is in."""
    last = standing.last
    if last is None:
        return ()
    who = standing.name_of(last.seat) or "the class"
    return (Line(f"Last: {who}, question {last.number}: {word(last.mark)}.", MARK), Line(last.asking.question, NOTE))


def head(standing: Standing, number: int, question: Question | None) -> Line:
    """Return the line over a question: its number, what is left, its section."""
    section = f"  {question.section}" if question and question.section else ""
    if standing.aims.minutes:
        left = max(round(standing.aims.minutes - standing.plan.spent / 60), 0)
        return Line(f"Question {number}, {left} min left{section}", HEAD)
    if standing.plan.asked.get(number, 0) >= len(standing.aims.questions):
        return Line(f"Question {number}, the case goes on{section}", HEAD)
    return Line(f"Question {number}, {standing.left} more after it{section}", HEAD)


def hint_of(question: Question) -> str:
    """Return the hint of a question as a class may hear it: with the document to think of, not its paragraph."""
    text = question.hint
    for source in question.sources:
        text = text.replace(f"{source.document} {source.paragraph}", f"the {source.document}")
    name = section_name(question.section)
    return f"{text.rstrip('.')}, {name}." if text and name and text.rstrip(".").endswith(_documents(question)) else text


def _documents(question: Question) -> tuple[str, ...]:
    return tuple(source.document for source in question.sources)


def called_lines(standing: Standing, turn: Turn) -> tuple[Line, ...]:
    """Return who has a question, with the answer that was typed for it, if anybody has it."""
    seat = next((each for each in standing.seats if each.id == turn.seat), None)
    if seat is None:
        return ()
    suggested = standing.suggested(turn)
    return (Line(called(seat.name, seat.team), NAMED), *(suggested_lines(suggested) if suggested else ()))


def called(name: str, team: str) -> str:
    """Return the words that call somebody."""
    return f"{name}, please." if not team or name.endswith(f"({team})") else f"{name} ({team}), please."


def suggested_lines(found: Suggested) -> tuple[Line, ...]:
    """Return an answer with the program's mark; what it lacks is for the key."""
    answer = Line(f"Answer: {found.answer}", NOTE)
    if found.mark == UNMARKED:
        return (answer, Line("The program cannot mark this one: mark it yourself.", NOTE))
    points = f" ({len(found.missing)} missing)" if found.mark == PARTLY and found.missing else ""
    return (answer, Line(f"The program's mark: {word(found.mark)}{points}.", MARK))


def key_of(standing: Standing, turn: Turn) -> tuple[Line, ...]:
    """Return the key of a question with its points and its paragraphs."""
    question = standing.question(turn)
    told = points_told(question) if question is not None else ()
    told = () if all(point in turn.asking.expected for point in told) else told
    cited = cited_line(question.sources) if question is not None else "; ".join(turn.asking.sources)
    return (
        Line(f"Key: {turn.asking.expected}"),
        *(Line(f"- {point}") for point in told),
        *([Line(cited, CITED)] if cited else []),
    )


def note(text: str) -> tuple[Line, ...]:
    """Return a remark as lines."""
    return (Line(text, NOTE),)


def word(mark: str) -> str:
    """Return a mark as it stands within a sentence."""
    return MARK_SHOWN.get(mark, mark).rstrip(".").lower()
