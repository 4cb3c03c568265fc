"""The answer of whoever was named: marked by the program, by the instructor, corrected, taken back."""

from __future__ import annotations

from assistant.practice.keeping.rows import Turn
from assistant.practice.leading import keys
from assistant.practice.leading.keys import Said
from assistant.practice.leading.plan import Suggested, suggestion_of, without_turn
from assistant.practice.leading.standing import (
    ANSWERING,
    Act,
    Keep,
    MarkTurn,
    Standing,
    TakeBack,
    Unpass,
    Withdraw,
)
from assistant.practice.leading.steps import (
    ANSWER_MODE,
    LISTENING,
    Desk,
    Step,
    called_lines,
    note,
    opening_lines,
    put_lines,
    suggested_lines,
    word,
)
from assistant.practice.marking.mark import UNMARKED
from assistant.practice.recall import MISSED, PARTLY, RIGHT, WRONG
from assistant.practice.sitting_marks import MARK, NOTE, Line, take_nothing
from assistant.practice.sitting_words import PASS, UNABLE, breaks_off, control_of, dropped, only_thinks

_NO_KEY = "“{key}” is no key here, and no answer: all stands as it did. ? tells the keys."


def _is_no_key(text: str) -> bool:
    """Whether a text is a single letter: at a prompt of single keys it was meant for one of them, or slipped."""
    bare = text.strip()
    return len(bare) == 1 and bare.isalpha()


def answer(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return an answer as the program marks it; the mark is only kept once the instructor lets it stand."""
    if not asked.rest:
        return Step(mode=ANSWER_MODE)
    turn = standing.current
    question = standing.question(turn) if turn is not None else None
    if turn is None or question is None or turn.seat is None:
        return Step(lines=note("Nobody has been named for this question yet: Enter names."))
    if dropped(asked.rest):
        return Step(lines=note("Disregarded; the question stands."))
    if only_thinks(asked.rest):
        return Step(lines=note("No answer yet; the question stands."), mode=ANSWER_MODE)
    if breaks_off(asked.rest):
        return Step(lines=note("And what instead? Type the whole answer; it is marked only then."), mode=ANSWER_MODE)
    nothing = control_of(asked.rest, (PASS, UNABLE)) is not None
    taken = take_nothing(question, asked.rest) if nothing else desk.take(question, asked.rest)
    found = suggestion_of(taken)
    plan = standing.plan._replace(suggested={**standing.plan.suggested, turn.number: found})
    return Step((Keep(plan),), suggested_lines(found))


def listen(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return that the answer is to be heard, where there is an ear for it."""
    if not desk.hears:
        return Step(lines=note("No microphone is in use: begin or go on with --listen. a takes a typed answer."))
    return Step(lines=note("Listening. A silence is no answer."), mode=LISTENING)


def said_answer(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return a text that steers nothing as the answer of whoever was named; a letter that is no key is none."""
    if _is_no_key(asked.rest):
        return Step(lines=note(_NO_KEY.format(key=asked.rest.strip())))
    return answer(standing, Said(keys.ANSWER, asked.rest), desk)


def keep_mark(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return the program's mark as it is, if it made one."""
    turn = standing.current
    suggested = standing.suggested(turn) if turn is not None else None
    if suggested is None or suggested.mark == UNMARKED:
        return Step(lines=note("Mark it with r, p, w or m; or type the answer, and it is marked."))
    return mark(standing, Said(keys.MARK, mark=suggested.mark), desk)


def mark(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return the mark that the instructor gave, with what was said if that was typed too."""
    turn = standing.current
    assert turn is not None
    if turn.seat is None and asked.mark != MISSED:
        return Step(lines=note("Nobody has been named for this question yet: Enter names."))
    acts, lines = _marked(standing, turn, asked, desk)
    return Step(acts, (*lines, *_stands_after(standing, turn)))


def _marked(standing: Standing, turn: Turn, asked: Said, desk: Desk) -> tuple[tuple[Act, ...], tuple[Line, ...]]:
    """Return a turn marked; what was said then stands with the turn alone, and goes when its person is forgotten."""
    suggested, plan = standing.suggested(turn), standing.plan
    question = standing.question(turn)
    if asked.rest and question is not None:
        suggested = suggestion_of(desk.take(question, asked.rest))
        plan = plan._replace(suggested={**plan.suggested, turn.number: suggested})
    by_program = suggested.mark if suggested and suggested.mark != UNMARKED else ""
    share = _share(asked.mark, suggested)
    confused = suggested.confused_with if suggested and asked.mark in (WRONG, PARTLY, MISSED) else ""
    answer = (suggested.answer if suggested else "") or turn.answer
    mark = MarkTurn(turn.id, asked.mark, share, answer, by_program, confused)
    overruled = f" The program marked it {word(by_program)}." if by_program not in ("", asked.mark) else ""
    line = Line(f"{standing.name_of(turn.seat) or 'The class'}: {word(asked.mark)}.{overruled}", MARK)
    if suggested is None:
        return (mark,), (line,)
    kept = plan._replace(
        suggested={**plan.suggested, turn.number: suggested._replace(answer="", wrong=(), confused="")}
    )
    return (mark, Keep(kept)), (line,)


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


def correct(standing: Standing, asked: Said, desk: Desk) -> Step:
    """CORRECTION: while an answer is awaited, another answer; after the mark, another mark or answer."""
    if standing.phase == ANSWERING:
        if asked.mark and not asked.rest:
            return mark(standing, asked, desk)
        return answer(standing, Said(keys.ANSWER, asked.rest), desk)
    last = standing.last
    if last is None:
        return Step(lines=note("There is no mark yet to correct."))
    question = standing.question(last)
    if not asked.mark and asked.rest and question is not None:
        taken = desk.take(question, asked.rest)
        asked = asked._replace(mark=taken.mark if taken.mark != UNMARKED else last.mark)
    if not asked.mark:
        return Step(lines=note("Say what it is to be: correction right, partly, wrong or missed."))
    acts, lines = _marked(standing, last, asked, desk)
    return Step(acts, lines)


def said_late(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return what was said, kept after the mark was given by a key: the report tells what was taken for what."""
    last = standing.last
    if _is_no_key(asked.rest):
        return Step(lines=note(_NO_KEY.format(key=asked.rest.strip())))
    if last is None or not last.mark or last.seat is None:
        return Step(lines=note("Enter puts the first question."))
    acts, _ = _marked(standing, last, Said(keys.MARK, asked.rest, last.mark), desk)
    name = standing.name_of(last.seat)
    return Step(acts, (Line(f"Kept as what {name} said: {asked.rest}. The mark stays: {word(last.mark)}.", NOTE),))


def undo(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return the last mark taken back, so that its question stands again; before that a pass of the one that stands.

    What was put because of that mark, the same question to somebody else or a case that goes on, is taken back too.
    """
    turn, last = standing.current, standing.last
    if turn is not None and turn.passed:
        return _unpassed(standing, turn)
    if last is None:
        return Step(lines=note("There is no mark to take back."))
    follows = _put_because_of(standing, last)
    plan = without_turn(standing.plan, follows.number) if follows else standing.plan
    if follows and standing.plan.asked[follows.number] >= len(standing.aims.questions):
        plan = plan._replace(added=plan.added[:-1])
    kept = {turn: each for turn, each in plan.suggested.items() if turn != last.number}
    hands = {turn: each for turn, each in plan.hands.items() if turn != last.number}
    lines = (
        Line(f"The mark is taken back: {word(last.mark)}.", NOTE),
        *put_lines(standing, last),
        *called_lines(standing._replace(plan=plan._replace(suggested=kept)), last),
    )
    withdrawn = (Withdraw(follows.id),) if follows else ()
    return Step((*withdrawn, TakeBack(), Keep(plan._replace(suggested=kept, hands=hands))), lines)


def _unpassed(standing: Standing, turn: Turn) -> Step:
    """Return a question given back to whoever passed it on last; what somebody else answered meanwhile is dropped."""
    kept = {number: each for number, each in standing.plan.suggested.items() if number != turn.number}
    plan = standing.plan._replace(suggested=kept)
    back = turn._replace(seat=turn.passed[-1], passed=turn.passed[:-1])
    lines = (*note("The pass is taken back."), *called_lines(standing._replace(plan=plan), back))
    return Step((Unpass(turn.id), Keep(plan)), lines)


def _put_because_of(standing: Standing, last: Turn) -> Turn | None:
    """Return the turn that stands, if it was put only since an earlier one was marked, and nothing was said to it."""
    turn = standing.current
    place = standing.plan.asked.get(turn.number) if turn is not None else None
    if turn is None or place is None or turn.number < last.number or standing.suggested(turn):
        return None
    same = place == standing.plan.asked.get(last.number)
    return turn if same or place >= len(standing.aims.questions) else None
