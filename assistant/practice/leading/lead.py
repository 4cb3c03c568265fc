"""An instructor leads a class: where it stands and a line that was typed in; acts and lines to show out.

    step = said(standing, mode, "w 250 kt", desk)
    carry out step.acts; show step.lines; go on with step.mode and prompt(...)

Pure: chance, the marker and the knowledge are the caller's, handed over as a Desk.
"""

from __future__ import annotations

from collections.abc import Callable
from random import Random
from typing import NamedTuple

from assistant.practice.keeping.rows import Asking, Turn
from assistant.practice.leading import keys
from assistant.practice.leading.case import Further
from assistant.practice.leading.keys import Said, understood
from assistant.practice.leading.naming import next_seat
from assistant.practice.leading.plan import Plan, Suggested, suggestion_of
from assistant.practice.leading.standing import (
    ANSWERING,
    BETWEEN,
    BREAK,
    OVER,
    THINKING,
    Act,
    Call,
    End,
    Hint,
    Join,
    Keep,
    MarkTurn,
    Pause,
    Put,
    Show,
    Standing,
    TakeBack,
    Withdraw,
)
from assistant.practice.making.question import Question
from assistant.practice.marking.mark import UNMARKED
from assistant.practice.papers.paper import points_told
from assistant.practice.recall import MISSED, PARTLY, RIGHT, WRONG
from assistant.practice.sitting_marks import ASKED, CITED, HEAD, MARK, MARK_SHOWN, NOTE, Line, Taken, cited_line

ANSWER_MODE, ENDING = "answer", "ending"
"""What the next line is, if not what it usually would be: an answer whatever it looks like; a word on the end."""
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


class Step(NamedTuple):
    """What follows: acts to carry out in their order, lines to show, what to say aloud, the mode of what is next."""

    acts: tuple[Act, ...] = ()
    lines: tuple[Line, ...] = ()
    aloud: str = ""
    mode: str = ""


def said(standing: Standing, mode: str, text: str, desk: Desk) -> Step:
    """Return what follows from a line that was typed."""
    if mode == ENDING:
        return _on_ending(text)
    if mode == ANSWER_MODE and text.strip():
        return _answer(standing, Said(keys.ANSWER, text), desk)
    if mode == ANSWER_MODE:
        return Step(lines=_note("No answer was typed; the question stands."))
    asked = understood(text, standing.phase)
    return _BY_PHASE[standing.phase].get(asked.what, _not_now)(standing, asked, desk)


def prompt(standing: Standing, mode: str = "") -> str:
    """Return what is expected now, in lines of at most 40 columns."""
    if mode == ANSWER_MODE:
        return "The answer, as given (Enter: none):\n> "
    if mode == ENDING:
        return "End the class? y ends, Enter goes on: "
    phase = standing.phase
    if phase == THINKING:
        return "Enter the name, h hint, s say again,\nk key, b pause, ? more: "
    if phase == ANSWERING:
        return _answering_prompt(standing)
    if phase == BETWEEN:
        return _between_prompt(standing)
    return {BREAK: "Pause. Enter goes on, e ends: ", OVER: ""}[phase]


def opening_lines(standing: Standing) -> tuple[Line, ...]:
    """Return what is shown when a class begins or goes on: how far it is, and the question that stands."""
    turn = standing.current
    if turn is None or standing.phase == BREAK:
        return ()
    return (*put_lines(standing, turn), *_called_lines(standing, turn))


def put_lines(standing: Standing, turn: Turn) -> tuple[Line, ...]:
    """Return a question as the class sees it."""
    question = standing.question(turn)
    return (_head(standing, turn.number, question), Line(turn.asking.question, ASKED))


# --- a question is put


def _put_next(standing: Standing, asked: Said, desk: Desk) -> Step:
    if standing.all_asked:
        return _ask_end(standing, asked, desk)
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
    lines = (_head(after, number, question), Line(shown, ASKED))
    return Step((Put(desk.asking(question, shown), plan),), lines, shown)


def _head(standing: Standing, number: int, question: Question | None) -> Line:
    section = f"  {question.section}" if question and question.section else ""
    if standing.aims.minutes:
        left = max(round(standing.aims.minutes - standing.plan.spent / 60), 0)
        return Line(f"Question {number}, {left} min left{section}", HEAD)
    if standing.plan.asked.get(number, 0) >= len(standing.aims.questions):
        return Line(f"Question {number}, the case goes on{section}", HEAD)
    return Line(f"Question {number}, {standing.left} more after it{section}", HEAD)


# --- somebody is named


def _call(standing: Standing, asked: Said, desk: Desk) -> Step:
    turn = standing.current
    assert turn is not None
    others = tuple(each for each in standing.turns if each.id != turn.id)
    refused = (*turn.passed, *([turn.seat] if turn.seat is not None else []), *_had(standing, turn))
    seat = next_seat(standing.seats, (*others, turn) if refused else others, desk.chance, refused, standing.plan.away)
    if seat is None:
        told = "Everybody here has had this question: m marks it missed, d withdraws it." if refused else _NOBODY
        return Step(lines=_note(told))
    return Step((Call(turn.id, seat.id),), (Line(_called(seat.name, seat.team), NAMED),), seat.name)


_NOBODY = "Nobody is here to be named: add NAME, or back NAME."


def _had(standing: Standing, turn: Turn) -> tuple[int, ...]:
    """Return the seats that had the same question in another turn of it."""
    place = standing.plan.asked.get(turn.number)
    return tuple(
        each.seat for each in standing.turns
        if each.id != turn.id and each.seat is not None and standing.plan.asked.get(each.number) == place
    )  # fmt: skip


def _called(name: str, team: str) -> str:
    return f"{name}, please." if not team else f"{name} ({team}), please."


def _called_lines(standing: Standing, turn: Turn) -> tuple[Line, ...]:
    seat = next((each for each in standing.seats if each.id == turn.seat), None)
    if seat is None:
        return ()
    suggested = standing.suggested(turn)
    return (Line(_called(seat.name, seat.team), NAMED), *(_suggested_lines(suggested) if suggested else ()))


def _same_to_next(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return the question that was just marked, put to the next person as a turn of its own."""
    last = standing.last
    place = standing.plan.asked.get(last.number) if last is not None else None
    if last is None or place is None:
        return Step(lines=_note("No question was asked yet: Enter puts the first."))
    refused = tuple(
        each.seat for each in standing.turns
        if each.seat is not None and standing.plan.asked.get(each.number) == place
    )  # fmt: skip
    if next_seat(standing.seats, standing.turns, desk.chance, refused, standing.plan.away) is None:
        return Step(lines=_note("Everybody here has had this question. Enter puts the next one."))
    step = _put(standing, standing.plan, place, last.asking.question, desk)
    return step._replace(lines=(Line("The same question to somebody else; Enter names.", NOTE), *step.lines[1:]))


# --- the answer and its mark


def _answering_prompt(standing: Standing) -> str:
    turn = standing.current
    suggested = standing.suggested(turn) if turn is not None else None
    if suggested is not None and suggested.mark != UNMARKED:
        return f"Enter keeps “{_word(suggested.mark)}”; r right,\np partly, w wrong, m missed, ? more: "
    return "r right, p partly, w wrong, m missed,\na answer, n next person, ? more: "


def _answer(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return an answer as the program marks it; the mark is only kept once the instructor lets it stand."""
    if not asked.rest:
        return Step(mode=ANSWER_MODE)
    turn = standing.current
    question = standing.question(turn) if turn is not None else None
    if turn is None or question is None or turn.seat is None:
        return Step(lines=_note("Nobody has been named for this question yet: Enter names."))
    found = suggestion_of(desk.take(question, asked.rest))
    plan = standing.plan._replace(suggested={**standing.plan.suggested, turn.number: found})
    return Step((Keep(plan),), _suggested_lines(found))


def _said(standing: Standing, asked: Said, desk: Desk) -> Step:
    return _answer(standing, Said(keys.ANSWER, asked.rest), desk)


def _suggested_lines(found: Suggested) -> tuple[Line, ...]:
    answer = Line(f"Answer: {found.answer}", NOTE)
    if found.mark == UNMARKED:
        return (answer, Line("The program cannot mark this one: mark it yourself.", NOTE))
    points = f" ({len(found.missing)} missing)" if found.mark == PARTLY and found.missing else ""
    return (answer, Line(f"The program's mark: {_word(found.mark)}{points}.", MARK))


def _keep_mark(standing: Standing, asked: Said, desk: Desk) -> Step:
    turn = standing.current
    suggested = standing.suggested(turn) if turn is not None else None
    if suggested is None or suggested.mark == UNMARKED:
        return Step(lines=_note("Mark it with r, p, w or m; or type the answer, and it is marked."))
    return _mark(standing, Said(keys.MARK, mark=suggested.mark), desk)


def _mark(standing: Standing, asked: Said, desk: Desk) -> Step:
    turn = standing.current
    assert turn is not None
    if turn.seat is None and asked.mark != MISSED:
        return Step(lines=_note("Nobody has been named for this question yet: Enter names."))
    acts, lines = _marked(standing, turn, asked, desk)
    return Step(acts, (*lines, *_stands_after(standing, turn)))


def _marked(standing: Standing, turn: Turn, asked: Said, desk: Desk) -> tuple[tuple[Act, ...], tuple[Line, ...]]:
    suggested, plan = standing.suggested(turn), standing.plan
    question = standing.question(turn)
    if asked.rest and question is not None:
        suggested = suggestion_of(desk.take(question, asked.rest))
        plan = plan._replace(suggested={**plan.suggested, turn.number: suggested})
    by_program = suggested.mark if suggested and suggested.mark != UNMARKED else ""
    share = _share(asked.mark, suggested)
    confused = suggested.confused_with if suggested and asked.mark in (WRONG, PARTLY, MISSED) else ""
    answer = suggested.answer if suggested else ""
    mark = MarkTurn(turn.id, asked.mark, share, answer, by_program, confused)
    overruled = f" The program's mark was {_word(by_program)}." if by_program not in ("", asked.mark) else ""
    line = Line(f"{standing.name_of(turn.seat) or 'The class'}: {_word(asked.mark)}.{overruled}", MARK)
    return ((mark,) if plan is standing.plan else (Keep(plan), mark)), (line,)


def _share(mark: str, suggested: Suggested | None) -> float:
    if mark == RIGHT:
        return 1.0
    if mark != PARTLY:
        return 0.0
    return suggested.share if suggested and 0 < suggested.share < 1 else 0.5


def _stands_after(standing: Standing, marked: Turn) -> tuple[Line, ...]:
    """Return the question that stands once an earlier one has been marked anew."""
    waiting = [turn for turn in standing.turns if turn.phase != "marked" and turn.id != marked.id]
    return opening_lines(standing._replace(turns=tuple(waiting))) if waiting else ()


def _correct(standing: Standing, asked: Said, desk: Desk) -> Step:
    """CORRECTION: while an answer is awaited, another answer; after the mark, another mark or answer."""
    if standing.phase == ANSWERING:
        if asked.mark and not asked.rest:
            return _mark(standing, asked, desk)
        return _answer(standing, Said(keys.ANSWER, asked.rest), desk)
    last = standing.last
    if last is None:
        return Step(lines=_note("There is no mark yet to correct."))
    question = standing.question(last)
    if not asked.mark and asked.rest and question is not None:
        taken = desk.take(question, asked.rest)
        asked = asked._replace(mark=taken.mark if taken.mark != UNMARKED else last.mark)
    if not asked.mark:
        return Step(lines=_note("Say what it is to be: correction right, partly, wrong or missed."))
    acts, lines = _marked(standing, last, asked, desk)
    return Step(acts, lines)


def _said_late(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return what was said, kept after the mark was given by a key: the report tells what was taken for what."""
    last = standing.last
    if last is None or not last.mark or last.seat is None:
        return Step(lines=_note("Enter puts the first question."))
    acts, _ = _marked(standing, last, Said(keys.MARK, asked.rest, last.mark), desk)
    name = standing.name_of(last.seat)
    return Step(acts, (Line(f"Kept as what {name} said: {asked.rest}. The mark stays: {_word(last.mark)}.", NOTE),))


def _undo(standing: Standing, asked: Said, desk: Desk) -> Step:
    last = standing.last
    if last is None:
        return Step(lines=_note("There is no mark to take back."))
    plan = standing.plan
    kept = {turn: each for turn, each in plan.suggested.items() if turn != last.number}
    hands = {turn: each for turn, each in plan.hands.items() if turn != last.number}
    lines = (
        Line(f"The mark is taken back: {_word(last.mark)}.", NOTE),
        *put_lines(standing, last),
        *_called_lines(standing._replace(plan=plan._replace(suggested=kept)), last),
    )
    return Step((TakeBack(), Keep(plan._replace(suggested=kept, hands=hands))), lines)


# --- help for the class


def _hint(standing: Standing, asked: Said, desk: Desk) -> Step:
    turn = standing.current
    question = standing.question(turn) if turn is not None else None
    if turn is None or question is None or not question.hint:
        return Step(lines=_note("There is no hint on this one."))
    return Step((Hint(turn.id),), (Line(f"Hint: {question.hint}"),), question.hint)


def _again(standing: Standing, asked: Said, desk: Desk) -> Step:
    turn = standing.current or standing.last
    if turn is None:
        return Step(lines=_note("No question was asked yet."))
    question = standing.question(turn)
    lines: tuple[Line, ...] = (Line(turn.asking.question, ASKED),)
    if question is not None and question.text != turn.asking.question:
        lines = (*lines, Line(question.text, NOTE))
    return Step((), lines, " ".join(line.text for line in lines))


def _key(standing: Standing, asked: Said, desk: Desk) -> Step:
    turn = standing.current or standing.last
    if turn is None:
        return Step(lines=_note("No question was asked yet."))
    acts = (Show(turn.id),) if turn is standing.current else ()
    return Step(acts, key_of(standing, turn))


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


# --- between two questions


def _between_prompt(standing: Standing) -> str:
    first = "Enter ends the class" if standing.all_asked else "Enter the next question"
    more = ", more asks on" if standing.time_is_over and standing.left else ""
    if standing.last is None:
        return f"{first}, e ends,\n? more: "
    return f"{first}{more},\nn same to another, g goes on, u undo,\nk key, or what was said; ? more: "


def _case_goes_on(standing: Standing, asked: Said, desk: Desk) -> Step:
    return _carried_on(standing, desk, desk.further, "Nothing further can fail that would change this.")


def _reason(standing: Standing, asked: Said, desk: Desk) -> Step:
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


def _hands(standing: Standing, asked: Said, desk: Desk) -> Step:
    turn = standing.last if standing.current is None else standing.current
    count = int(asked.rest[:6])
    if turn is None or not 0 < count <= len(standing.seats):
        return Step(lines=_note(f"hands takes a number from 1 to {len(standing.seats)}."))
    plan = standing.plan._replace(hands={**standing.plan.hands, turn.number: count})
    return Step((Keep(plan),), _note(f"Kept: {count} of {len(standing.seats)} thought the same."))


def _more(standing: Standing, asked: Said, desk: Desk) -> Step:
    if not standing.left:
        return Step(lines=_note("All questions are asked. Enter ends."))
    return Step((Keep(standing.plan._replace(more=True)),), _note("The class goes on without a limit of time."))


# --- who is here, pauses, the end


def _add(standing: Standing, asked: Said, desk: Desk) -> Step:
    if any(each.name.casefold() == asked.rest.casefold() for each in standing.seats):
        return Step(lines=_note(f"{asked.rest} is in the class already."))
    return Step((Join(asked.rest),), _note(f"{asked.rest} is in the class now."))


def _away(standing: Standing, asked: Said, desk: Desk) -> Step:
    wanted = asked.rest.casefold()
    found = [seat for seat in standing.seats if seat.name.casefold().startswith(wanted)]
    if len(found) != 1:
        told = "nobody" if not found else f"more than one ({', '.join(seat.name for seat in found)})"
        return Step(lines=_note(f"{asked.rest} names {told} of the class."))
    there = tuple(each for each in standing.plan.away if each != found[0].id)
    gone = asked.what == keys.AWAY
    plan = standing.plan._replace(away=(*there, found[0].id) if gone else there)
    return Step((Keep(plan),), _note(f"{found[0].name} is {'not named from now on' if gone else 'named again'}."))


def _drop(standing: Standing, asked: Said, desk: Desk) -> Step:
    turn = standing.current
    assert turn is not None
    plan = standing.plan
    kept = plan._replace(
        suggested={number: each for number, each in plan.suggested.items() if number != turn.number},
        asked={number: each for number, each in plan.asked.items() if number != turn.number},
        case=tuple(number for number in plan.case if number != turn.number),
    )
    return Step((Withdraw(turn.id), Keep(kept)), _note("The question is withdrawn, and counts for nobody."))


def _forget(standing: Standing, asked: Said, desk: Desk) -> Step:
    turn = standing.current
    if turn is None or standing.suggested(turn) is None:
        return Step(lines=_note("Disregarded."))
    kept = {number: each for number, each in standing.plan.suggested.items() if number != turn.number}
    return Step((Keep(standing.plan._replace(suggested=kept)),), _note("Disregarded; the question stands."))


def _pause(standing: Standing, asked: Said, desk: Desk) -> Step:
    return Step((Pause(True),), _note("The class pauses; nothing is lost if you close this window."))


def _resume(standing: Standing, asked: Said, desk: Desk) -> Step:
    after = standing._replace(sitting=standing.sitting._replace(state="open"))
    return Step((Pause(False),), opening_lines(after))


def _ask_end(standing: Standing, asked: Said, desk: Desk) -> Step:
    if standing.phase == BETWEEN and standing.all_asked and asked.what == keys.ENTER:
        return Step((End(),))
    lines = _note("A question stands; it will not count.") if standing.current is not None else ()
    return Step(lines=lines, mode=ENDING)


def _on_ending(text: str) -> Step:
    if text.strip().lower() in ("y", "yes", "e", "end", "stop", "affirm", "affirmative"):
        return Step((End(),))
    return Step(lines=_note("The class goes on."))


def _help(standing: Standing, asked: Said, desk: Desk) -> Step:
    return Step(lines=tuple(Line(each, NOTE) for each in keys.HELP_LINES))


def _not_now(standing: Standing, asked: Said, desk: Desk) -> Step:
    return Step(lines=_note(_NOT_NOW.get(standing.phase, "That has no meaning now.")))


_NOT_NOW = {
    THINKING: "Nobody has been named yet: Enter names; ? tells what else may be typed.",
    ANSWERING: "That has no meaning while an answer is awaited; ? tells what may be typed.",
    BETWEEN: "That has no meaning between two questions; ? tells what may be typed.",
    BREAK: "The class pauses: Enter goes on, e ends.",
}


def _note(text: str) -> tuple[Line, ...]:
    return (Line(text, NOTE),)


def _word(mark: str) -> str:
    """Return a mark as it stands within a sentence."""
    return MARK_SHOWN.get(mark, mark).rstrip(".").lower()


_Doer = Callable[[Standing, Said, Desk], Step]
_ALWAYS: dict[str, _Doer] = {
    keys.TELL: _help, keys.UNDO: _undo, keys.PAUSE: _pause, keys.END: _ask_end, keys.SAY: _again, keys.KEY: _key,
    keys.ADD: _add, keys.AWAY: _away, keys.BACK: _away, keys.HANDS: _hands, keys.FORGET: _forget,
    keys.CORRECT: _correct,
}  # fmt: skip
_BY_PHASE: dict[str, dict[str, _Doer]] = {
    THINKING: {**_ALWAYS, keys.ENTER: _call, keys.HINTED: _hint, keys.DROP: _drop, keys.NEXT: _call},
    ANSWERING: {
        **_ALWAYS, keys.ENTER: _keep_mark, keys.MARK: _mark, keys.ANSWER: _answer, keys.SAID: _said,
        keys.HINTED: _hint, keys.NEXT: _call, keys.DROP: _drop,
    },
    BETWEEN: {
        **_ALWAYS, keys.ENTER: _put_next, keys.NEXT: _same_to_next, keys.ON: _case_goes_on, keys.REASON: _reason,
        keys.MORE: _more, keys.SAID: _said_late, keys.MARK: _correct,
    },
    BREAK: {keys.ENTER: _resume, keys.END: _ask_end, keys.TELL: _help, keys.PAUSE: _not_now},
    OVER: {},
}  # fmt: skip
