"""An instructor leads a class: where it stands and a line that was typed in; acts and lines to show out.

    step = said(standing, mode, "w 250 kt", desk)
    carry out step.acts; show step.lines; go on with step.mode and prompt(...)

Pure: chance, the marker and the knowledge are the caller's, handed over as a Desk.
"""

from __future__ import annotations

from collections.abc import Callable

from assistant.practice.leading import helping, judging, keys, putting
from assistant.practice.leading.case import can_go_on
from assistant.practice.leading.keys import Said, understood
from assistant.practice.leading.standing import ANSWERING, BETWEEN, BREAK, OVER, THINKING, Standing
from assistant.practice.leading.steps import ANSWER_MODE, ENDING, LISTENING, Desk, Step, note, word
from assistant.practice.marking.mark import UNMARKED


def said(standing: Standing, mode: str, text: str, desk: Desk) -> Step:
    """Return what follows from a line that was typed."""
    if mode == ENDING:
        return helping.on_ending(text)
    asked = understood(text, standing.phase)
    if mode in (ANSWER_MODE, LISTENING) and not text.strip():
        return Step(lines=note("There was no answer; the question stands."))
    steers = asked.what in _EVEN_THEN and len(text.strip()) > 1
    if mode in (ANSWER_MODE, LISTENING) and not steers:
        return judging.answer(standing, Said(keys.ANSWER, text), desk)
    return _BY_PHASE[standing.phase].get(asked.what, helping.not_now)(standing, asked, desk)


def prompt(standing: Standing, mode: str = "") -> str:
    """Return what is expected now, in lines of at most 40 columns."""
    if mode == ANSWER_MODE:
        return "The answer, as given. Enter: none.\n> "
    if mode == ENDING:
        return "End the class? y ends. Enter: go on: "
    phase = standing.phase
    if phase == THINKING:
        return "Enter: call a name. h hint, s say again,\nk key, b pause, ? more: "
    if phase == ANSWERING:
        return _answering_prompt(standing)
    if phase == BETWEEN:
        return _between_prompt(standing)
    return {BREAK: "Pause. Enter: go on. e ends: ", OVER: ""}[phase]


def _answering_prompt(standing: Standing) -> str:
    turn = standing.current
    suggested = standing.suggested(turn) if turn is not None else None
    if suggested is not None and suggested.mark != UNMARKED:
        return f"Enter: keep “{word(suggested.mark)}”. r right,\np partly, w wrong, m missed, ? more: "
    return "r right, p partly, w wrong, m missed,\na answer, n next person, ? more: "


def _between_prompt(standing: Standing) -> str:
    first = "Enter: end the class" if standing.all_asked else "Enter: next question"
    more = ", more: ask on" if standing.time_is_over and standing.left else ""
    if standing.last is None:
        return f"{first}. e ends, ? more: "
    last = standing.question(standing.last)
    goes_on = ", g goes on" if last is not None and can_go_on(last) else ""
    return f"{first}{more}.\nn same to another{goes_on}, u undo,\nk key, or what was said; ? more: "


_EVEN_THEN = (keys.SAY, keys.PAUSE, keys.CORRECT, keys.FORGET, keys.REASON, keys.ON)
"""What steers in words of its own even where an answer is awaited, whatever it looks like."""
_Doer = Callable[[Standing, Said, Desk], Step]
_ALWAYS: dict[str, _Doer] = {
    keys.TELL: helping.tell_help,
    keys.UNDO: judging.undo,
    keys.PAUSE: helping.pause,
    keys.END: helping.ask_end,
    keys.SAY: helping.again,
    keys.KEY: helping.show_key,
    keys.CLASS: helping.show_class,
    keys.ADD: helping.add,
    keys.AWAY: helping.away,
    keys.BACK: helping.away,
    keys.HANDS: helping.hands,
    keys.FORGET: helping.forget,
    keys.CORRECT: judging.correct,
}
_BY_PHASE: dict[str, dict[str, _Doer]] = {
    THINKING: {
        **_ALWAYS,
        keys.ENTER: putting.call,
        keys.HINTED: helping.hint,
        keys.DROP: helping.drop,
    },
    ANSWERING: {
        **_ALWAYS,
        keys.ENTER: judging.keep_mark,
        keys.MARK: judging.mark,
        keys.ANSWER: judging.answer,
        keys.LISTEN: judging.listen,
        keys.SAID: judging.said_answer,
        keys.HINTED: helping.hint,
        keys.NEXT: putting.call,
        keys.DROP: helping.drop,
    },
    BETWEEN: {
        **_ALWAYS,
        keys.ENTER: putting.put_next,
        keys.NEXT: putting.same_to_next,
        keys.ON: putting.case_goes_on,
        keys.REASON: putting.reason,
        keys.MORE: helping.more,
        keys.SAID: judging.said_late,
        keys.MARK: judging.correct,
    },
    BREAK: {
        keys.ENTER: helping.resume,
        keys.END: helping.ask_end,
        keys.TELL: helping.tell_help,
        keys.PAUSE: helping.not_now,
    },
    OVER: {},
}
