"""What steers a sitting whether an answer is awaited or marked: say again, standby, help, stop."""

from __future__ import annotations

from assistant.practice.sitting_marks import ASKED, NOTE, Line
from assistant.practice.sitting_state import ANSWERING, END, OVER, STANDING_BY, After, State
from assistant.practice.sitting_summary import counts_line
from assistant.practice.sitting_words import GO, STOP, Control, control_of

BROKEN_OFF = "Say what is to stand instead: the whole answer. It is marked only then."
STILL_THINKING = "Take your time; the question stands."
NO_ANSWER = "“{text}” was not taken for an answer; type it again if it is one."
_HELP = (
    "Answer in your own words; numbers with their unit. Several points: say them all.",
    "“hint” helps a little (it then counts as prompted). “pass”, “unable” or “don't know” shows the answer.",
    "“say again” repeats the question, “standby” pauses, “disregard” drops what you typed.",
    "In an answer, what follows “correction” replaces what came before it.",
    "After the mark: “why”, “overrule” if the mark is not fair, or any question of your own.",
    "“stop” or Ctrl-D ends; every answer is kept as soon as it is marked.",
)


def again(state: State, control: Control, text: str) -> After:
    """Return the question once more."""
    assert state.put is not None
    return After(state, (Line(state.put.question.text, ASKED),))


def stand_by(state: State, control: Control, text: str) -> After:
    """Return the sitting in a pause, after which time says nothing of how well it is known."""
    after = state._replace(phase=STANDING_BY, back=state.phase, timed=False)
    return After(after, (Line("Standing by; take your time.", NOTE),))


def how_far(state: State, control: Control, text: str) -> After:
    """Return how the sitting has gone so far."""
    told = counts_line(state.given) if state.given else "Nothing was answered yet."
    return After(state, (Line(f"{told} The line over a question says how far it is; “stop” ends at any time.", NOTE),))


def stop(state: State, control: Control, text: str) -> After:
    """Return the sitting ended."""
    return After(state._replace(phase=OVER), (), END)


def tell_help(state: State, control: Control, text: str) -> After:
    """Return what can be typed."""
    return After(state, tuple(Line(each, NOTE) for each in _HELP))


def go_on(state: State, text: str) -> After:
    """Return the sitting after a pause, whatever was typed to end it, where it stood before."""
    control = control_of(text, (STOP, GO))
    if control and control.name == STOP:
        return After(state._replace(phase=OVER), (), END)
    after = state._replace(phase=state.back)
    if state.back == ANSWERING and state.put is not None:
        return After(after, (Line(state.put.question.text, ASKED),))
    return After(after)
