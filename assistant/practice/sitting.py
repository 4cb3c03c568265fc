"""A rehearsal of one learner as a pure core: a state and what happened in, a state and lines out.

    after = put(state, Put(question, item, choice.why, was))       the next question
    after = said(after.state, "255 kt", 4.2, desk)                 a line that was typed, and the seconds before it
    show after.lines; do what after.act says; ask with prompt(after.state)

Clock, chance, screen, keyboard and the record of learners are the caller's.
"""

from __future__ import annotations

from collections.abc import Callable

from assistant.practice.asking.choosing import CHANGED
from assistant.practice.asking.pool import GENERAL, Item, section_name
from assistant.practice.marking.mark import UNMARKED
from assistant.practice.recall import MISSED
from assistant.practice.sitting_marked import on_the_mark, own_mark
from assistant.practice.sitting_marks import (
    ASKED,
    HEAD,
    NOTE,
    Line,
    Taken,
    answer_lines,
    mark_lines,
    once_true,
    take_nothing,
)
from assistant.practice.sitting_state import (
    ANSWERING,
    END,
    KEEP,
    MARKED,
    OVERRULING,
    STANDING_BY,
    After,
    Desk,
    Given,
    Put,
    State,
)
from assistant.practice.sitting_steering import (
    BROKEN_OFF,
    NO_ANSWER,
    STILL_THINKING,
    again,
    go_on,
    how_far,
    stand_by,
    stop,
    tell_help,
)
from assistant.practice.sitting_words import (
    AGAIN,
    CORRECTION,
    DISPUTE,
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
    UNABLE,
    WHY,
    Control,
    asks_back,
    breaks_off,
    control_of,
    dropped,
    only_thinks,
)

_WORDS = (AGAIN, STANDBY, UNABLE, PASS, DISREGARD, HINT, HELP, STOP, OVERRULE, WHY, SOURCE, THEN, CORRECTION, DISPUTE,
          STANDING)  # fmt: skip
_BAR = 8


def put(state: State, asked: Put, far: str, share: float) -> After:
    """Return the sitting with a question put. far: how far it is, in words ("3/12"); share: the same, 0 to 1."""
    after = state._replace(phase=ANSWERING, put=asked, hinted=False, timed=True, unmarked=False)
    return After(after, (_head(asked.item, far, share), *_asked(asked)))


def said(state: State, text: str, seconds: float | None, desk: Desk) -> After:
    """Return what follows from a line that was typed, `seconds` after the prompt stood there if that was measured."""
    if state.phase == STANDING_BY:
        return _after_pause(state, text, desk)
    if state.phase == OVERRULING:
        return own_mark(state, text)
    if state.phase == MARKED:
        return on_the_mark(state, text, desk)
    return _answered(state, text, seconds, desk)


def prompt(state: State, last: bool = False) -> str:
    """Return what is asked for: everything that may be typed, in a line of 40 columns. last: no question follows."""
    if state.phase == MARKED and last:
        return "Enter to end; why, overrule: "
    return {
        ANSWERING: "Answer, hint, pass or stop: ",
        MARKED: "Enter for next; why, overrule, stop: ",
        OVERRULING: "Mark: right, partly, wrong or missed: ",
        STANDING_BY: "Enter to go on, or stop: ",
    }[state.phase]


def _head(item: Item, far: str, share: float) -> Line:
    """Return the line over a question: how far the sitting is, and which section this is of."""
    full = min(int(share * _BAR), _BAR)
    section = "General" if item.section == GENERAL else f"{item.section} {section_name(item.section)}"
    return Line(f"{far} [{'#' * full}{'.' * (_BAR - full)}] {section}", HEAD)


def _asked(asked: Put) -> tuple[Line, ...]:
    note: tuple[Line, ...] = ()
    if asked.why == CHANGED and asked.was:
        note = (Line(f"A revision has changed this since you were last asked ({asked.was.since}).", NOTE),)
    elif asked.again:
        note = (Line("Once more, since it was missed:", NOTE),)
    return (*note, Line(asked.question.text, ASKED))


# --- while an answer is awaited


def _after_pause(state: State, text: str, desk: Desk) -> After:
    """Return the sitting after a pause, and what was typed to end it taken for what it is: often it is the answer."""
    after = go_on(state, text)
    if after.act == END or control_of(text, (GO,)):
        return after
    if state.back != ANSWERING:
        says_more = control_of(text, _WORDS) is not None or asks_back(text)
        return on_the_mark(after.state, text, desk) if says_more else after
    reached = _answered(after.state, text, None, desk)
    if reached.act == KEEP and reached.state.given[-1].taken.mark == MISSED and not control_of(text, _WORDS):
        return After(after.state, (*after.lines, Line(NO_ANSWER.format(text=text.strip()), NOTE)))
    return reached


def _answered(state: State, text: str, seconds: float | None, desk: Desk) -> After:
    if state.put is None:
        return After(state)
    if not text.strip():
        return After(state, (Line("Nothing was typed. Type your answer; “pass” if you do not know it.", NOTE),))
    control = control_of(text, _WORDS)
    if control is not None:
        return _STEERING[control.name](state, control, text)
    if dropped(text):
        return After(state, (Line("Disregarded. The question stands:", NOTE), *_asked(state.put)[-1:]))
    if only_thinks(text):
        return After(state, (Line(STILL_THINKING, NOTE),))
    if breaks_off(text):
        return After(state, (Line(BROKEN_OFF, NOTE),))
    if asks_back(text):
        line = "That is a question. Answer first, or “pass”; after the mark you may ask anything."
        return After(state, (Line(line, NOTE),))
    taken, was = desk.take(state.put.question, text), state.put.was
    if was is not None and not taken.former:
        taken = once_true(taken, was.formerly, was.since)
    return _marked(state, taken, seconds if state.timed else None)


def _passed(state: State, control: Control, text: str) -> After:
    assert state.put is not None
    return _marked(state, take_nothing(state.put.question, text.strip()), None)


def _marked(state: State, taken: Taken, hesitation: float | None) -> After:
    """Return the sitting with an answer marked; one that cannot be marked asks for the learner's own mark."""
    assert state.put is not None
    given = Given(state.put, taken, taken.mark, state.hinted, hesitation)
    if taken.mark == UNMARKED:
        told = Line("This cannot be marked here: mark it yourself.", NOTE)
        lines = (*answer_lines(taken.expected, taken.sources), told)
        after = state._replace(phase=OVERRULING, given=(*state.given, given), unmarked=True)
        return After(after, lines)
    after = state._replace(phase=MARKED, given=(*state.given, given))
    return After(after, (*mark_lines(taken), *_revised(state.put)), KEEP)


def _revised(asked: Put) -> tuple[Line, ...]:
    """Return what a revision changed in what was asked: since the last time, or with the revision loaded."""
    if asked.was:
        return (Line(asked.was.news, NOTE),)
    return tuple(
        Line(f"New with {change.since}: {change.subject} was {change.formerly}, now {change.now}.", NOTE)
        for change in asked.item.changes[:2]
        if change.formerly and change.formerly not in asked.question.key.says
    )


def _hint(state: State, control: Control, text: str) -> After:
    assert state.put is not None
    if state.hinted:
        return After(state, (Line(f"There is no other hint. {state.put.question.hint}", NOTE),))
    return After(state._replace(hinted=True), (Line(state.put.question.hint or "There is no hint on this.", NOTE),))


def _disregard(state: State, control: Control, text: str) -> After:
    assert state.put is not None
    return After(state, (Line("Disregarded. The question stands:", NOTE), *_asked(state.put)[-1:]))


def _not_yet(state: State, control: Control, text: str) -> After:
    """Return a mark put in place of the one before, though the next question stands already."""
    if not state.given:
        return After(state, (Line("There is no mark yet to overrule.", NOTE),))
    line = "“overrule” follows the mark, before Enter. This question stands; “stop” or an answer goes on."
    return After(state, (Line(line, NOTE),))


def _answer_first(state: State, control: Control, text: str) -> After:
    """Return that what was typed has its meaning after the mark; it is no answer, and so is not marked."""
    line = f"“{text.strip()}” is for after the mark. Answer first, or “pass”; the question stands."
    return After(state, (Line(line, NOTE),))


def _corrects(state: State, control: Control, text: str) -> After:
    line = "Type the whole answer as it is to be: it is marked only once it is given."
    return After(state, (Line(line, NOTE),))


_STEERING: dict[str, Callable[[State, Control, str], After]] = {
    AGAIN: again, STANDBY: stand_by, UNABLE: _passed, PASS: _passed, DISREGARD: _disregard, HINT: _hint,
    HELP: tell_help, STOP: stop, OVERRULE: _not_yet, WHY: _answer_first, SOURCE: _answer_first, THEN: _answer_first,
    CORRECTION: _corrects, DISPUTE: _answer_first, STANDING: how_far,
}  # fmt: skip


def missed_once(state: State) -> tuple[str, ...]:
    """Return the records that were missed in this sitting and not asked again since, in their order."""
    last: dict[str, list[str]] = {}
    for each in state.given:
        last.setdefault(each.put.item.record, []).append(each.word)
    return tuple(record for record, words in last.items() if words == [MISSED])
