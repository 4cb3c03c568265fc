"""After the mark: why, a question of the learner's own, the mark overruled, and on to the next question."""

from __future__ import annotations

from assistant.answering.answer import ANSWER
from assistant.practice.making.question import STEP, Question
from assistant.practice.sitting_marks import ASKED, CITED, MARK, MARK_SHOWN, NOTE, Line, mark_lines, overruled
from assistant.practice.sitting_state import (
    END,
    KEEP,
    MARKED,
    NEXT,
    OVER,
    OVERRULING,
    REMARK,
    WAITING,
    After,
    Desk,
    State,
)
from assistant.practice.sitting_steering import how_far, stand_by, stop, tell_help
from assistant.practice.sitting_words import (
    AGAIN,
    DISREGARD,
    GO,
    HELP,
    HINT,
    OVERRULE,
    PASS,
    SOURCE,
    STANDBY,
    STANDING,
    STOP,
    THEN,
    WHY,
    Control,
    asks_back,
    control_of,
    corrects,
    dropped,
    mark_named,
    only_thinks,
)
from assistant.rendering.text import sources_line

_WORDS = (STANDING, GO, THEN, WHY, SOURCE, OVERRULE, AGAIN, STANDBY, STOP, HELP, PASS, DISREGARD, HINT)
_NO_REASON = "The reason is not stated in what is loaded."


def answers_next(state: State, text: str) -> bool:
    """Whether a line after the mark is meant for the next question, where no line is typed only to go on to it."""
    if state.phase != MARKED or not text.strip() or asks_back(text) or corrects(text):
        return False
    control = control_of(text, _WORDS)
    return control is None or control.name in (PASS, HINT)


def on_the_mark(state: State, text: str, desk: Desk) -> After:
    """Return what follows from a line typed after the mark: a control, or else a question of the learner's own."""
    control = control_of(text, _WORDS)
    last = state.given[-1]
    if control is None and (dropped(text) or corrects(text)):
        control = Control(DISREGARD)
    if control is None and only_thinks(text):
        return After(state, (Line("The answer is marked; Enter goes on.", NOTE),))
    onward = control is not None and control.name == THEN and last.put.question.form == STEP
    if control is None or control.name in (WHY, SOURCE) or onward:
        return After(state, _replied(last.put.question, text, desk))
    if control.name in (GO, THEN, PASS):
        return After(state._replace(phase=WAITING, put=None), (), NEXT)
    if control.name == OVERRULE:
        return own_mark(state, control.rest) if control.rest else After(state._replace(phase=OVERRULING))
    if control.name == AGAIN:
        return After(state, (Line(last.put.question.text, ASKED), *mark_lines(last.taken)))
    if control.name in (DISREGARD, HINT):
        return After(state, (Line("The answer is marked already; “overrule” puts your own mark in its place.", NOTE),))
    return {STANDBY: stand_by, STOP: stop, HELP: tell_help, STANDING: how_far}[control.name](state, control, text)


def _replied(question: Question, text: str, desk: Desk) -> tuple[Line, ...]:
    """Return what the assistant says to a question of the learner's own, or to "why"."""
    answer = desk.reply(question, text)
    if answer.text.startswith(_NO_REASON):
        return (Line(_NO_REASON),)
    cited = sources_line(answer.sources[:3]) if answer.outcome == ANSWER else ""
    working = (Line(f"Working: {answer.working}"),) if answer.working else ()
    return (Line(answer.text), *working, *((Line(cited, CITED),) if cited else ()))


def own_mark(state: State, text: str) -> After:
    """Return the last answer with the learner's own mark, kept as overruled where it differs from the program's."""
    mark, last = mark_named(text), state.given[-1]
    if not mark:
        return _no_mark(state, text)
    given = last._replace(taken=overruled(last.taken, mark), marked=mark if state.unmarked else last.marked)
    after = state._replace(phase=MARKED, given=(*state.given[:-1], given), unmarked=False)
    if state.unmarked:
        return After(after, (Line(MARK_SHOWN[mark], MARK),), KEEP)
    if mark == last.taken.mark:
        return After(after, (Line(f"It is marked so already: {MARK_SHOWN[mark].lower()}", NOTE),))
    back = mark == last.marked
    told = "the program's own mark again." if back else "your mark, recorded as overruled."
    return After(after, (Line(f"{MARK_SHOWN[mark].rstrip('.')}: {told}", MARK),), REMARK)


def _no_mark(state: State, text: str) -> After:
    control = control_of(text, (STOP, GO, DISREGARD))
    if state.unmarked:
        if control and control.name == STOP:  # what nobody marked is no answer
            return After(state._replace(phase=OVER, given=state.given[:-1]), (), END)
    elif control:
        if control.name == STOP:
            return After(state._replace(phase=OVER), (), END)
        return After(state._replace(phase=MARKED), (Line("The mark stands.", NOTE),))
    return After(state._replace(phase=OVERRULING), (Line("That is no mark: right, partly, wrong or missed.", NOTE),))
