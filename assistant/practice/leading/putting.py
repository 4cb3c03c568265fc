"""Questions put to a class, and who is named for them: the next one, the same to somebody else, a case that goes on."""

from __future__ import annotations

from collections.abc import Callable

from assistant.practice.keeping.rows import Turn
from assistant.practice.leading.case import Further
from assistant.practice.leading.helping import ask_end
from assistant.practice.leading.keys import Said
from assistant.practice.leading.naming import next_seat
from assistant.practice.leading.plan import Plan
from assistant.practice.leading.standing import Call, Put, Standing
from assistant.practice.leading.steps import NAMED, Desk, Step, called, head, note
from assistant.practice.making.question import Question
from assistant.practice.sitting_marks import ASKED, MARK, NOTE, Line

_NOBODY = "Nobody is here to be named: add NAME, or back NAME."


def put_next(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return the next question put to the class, or the end once all are asked."""
    if standing.all_asked:
        return ask_end(standing, asked, desk)
    place = standing.plan.next
    plan = standing.plan._replace(next=place + 1, case=())
    return _put(standing, plan, place, standing.questions[place].text, desk)


def _put(standing: Standing, plan: Plan, place: int, shown: str, desk: Desk) -> Step:
    number = standing.next_number
    questions = (*standing.aims.questions, *plan.added)
    question = questions[place]
    plan = plan._replace(
        asked={**plan.asked, number: place},
        suggested={turn: each for turn, each in plan.suggested.items() if turn != number},
        hands={turn: count for turn, count in plan.hands.items() if turn != number},
        case=(*plan.case, number),
    )
    after = standing._replace(plan=plan)
    lines = (head(after, number, question), Line(shown, ASKED))
    return Step((Put(desk.asking(question, shown), plan),), lines, shown)


def call(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return who is named; of a question that somebody has, who it is passed on to."""
    turn = standing.current
    assert turn is not None
    others = tuple(each for each in standing.turns if each.id != turn.id)
    refused = (*turn.passed, *([turn.seat] if turn.seat is not None else []), *_had(standing, turn))
    seat = next_seat(standing.seats, (*others, turn) if refused else others, desk.chance, refused, standing.plan.away)
    if seat is None:
        told = "Everybody here has had this question: m marks it missed, d withdraws it." if refused else _NOBODY
        return Step(lines=note(told))
    lines: tuple[Line, ...] = (Line(called(seat.name, seat.team), NAMED),)
    if turn.seat is not None:
        lines = (Line(f"{standing.name_of(turn.seat)} passes it on: missed.", NOTE), *lines)
    return Step((Call(turn.id, seat.id),), lines, seat.name)


def _had(standing: Standing, turn: Turn) -> tuple[int, ...]:
    """Return the seats that had the same question in another turn of it."""
    place = standing.plan.asked.get(turn.number)
    return tuple(
        each.seat for each in standing.turns
        if each.id != turn.id and each.seat is not None and standing.plan.asked.get(each.number) == place
    )  # fmt: skip


def same_to_next(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return the question that was just marked, put to the next person as a turn of its own."""
    last = standing.last
    place = standing.plan.asked.get(last.number) if last is not None else None
    if last is None or place is None:
        return Step(lines=note("No question was asked yet: Enter puts the first."))
    refused = tuple(
        each.seat for each in standing.turns
        if each.seat is not None and standing.plan.asked.get(each.number) == place
    )  # fmt: skip
    if next_seat(standing.seats, standing.turns, desk.chance, refused, standing.plan.away) is None:
        return Step(lines=note("Everybody here has had this question. Enter puts the next one."))
    step = _put(standing, standing.plan, place, last.asking.question, desk)
    return step._replace(lines=(Line("The same question to somebody else; Enter names.", NOTE), *step.lines[1:]))


def case_goes_on(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return the case with one more failure, or looked back on where nothing further can fail."""
    question = _of_the_case(standing)
    if question is not None and not desk.names_failure(question):
        return Step(lines=note("This question names nothing that has failed: a case goes on from one that does."))
    return _carried_on(standing, desk, desk.further, "Nothing further can fail that would change this.")


def reason(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return “why?” put to the class, where a reason is stated."""
    return _carried_on(standing, desk, desk.reason, "No reason for this is stated in what is loaded.")


def _carried_on(
    standing: Standing, desk: Desk, further: Callable[[Question], Further | None], otherwise: str
) -> Step:  # fmt: skip
    question = _of_the_case(standing)
    found = further(question) if question is not None else None
    if found is None or any(each.text == found.question.text for each in standing.plan.added):
        return Step(lines=(Line(otherwise, NOTE), *_looking_back(standing, desk)))
    plan = standing.plan._replace(added=(*standing.plan.added, found.question))
    place = len(standing.aims.questions) + len(plan.added) - 1
    return _put(standing, plan, place, found.shown, desk)


def _of_the_case(standing: Standing) -> Question | None:
    """Return the question from which a case goes on: the last one that is not a "why"."""
    asked = [standing.question(turn) for turn in standing.turns if turn.number in standing.plan.case]
    known = [question for question in asked if question is not None]
    return next((each for each in reversed(known) if each.form != "reason"), known[-1] if known else None)


def _looking_back(standing: Standing, desk: Desk) -> tuple[Line, ...]:
    """Return the debrief of a case of several steps, by paragraph."""
    asked = [standing.question(turn) for turn in standing.turns if turn.number in standing.plan.case]
    known = tuple(dict.fromkeys(question for question in asked if question is not None))
    if len(known) < 2:
        return ()
    return (Line("The case, looked back on:", MARK), *(Line(f"- {each}") for each in desk.looked_back(known)))
