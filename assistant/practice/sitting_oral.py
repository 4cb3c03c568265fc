"""An oral examination as a pure core: one turn after another until knowledge runs out, then a debrief by paragraph.

The examiner says how an answer was and goes on; what should have been said is told at the end, paragraph by paragraph,
and there a mark can be overruled by its number.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.frozen import NamedTuple
from assistant.practice.asking.pool import Item
from assistant.practice.marking.mark import UNMARKED
from assistant.practice.recall import MARKS, MISSED, PARTLY, RIGHT, WRONG
from assistant.practice.sitting_marks import (
    ASKED,
    HEAD,
    MARK,
    MARK_SHOWN,
    NOTE,
    Line,
    answer_lines,
    overruled,
    take_nothing,
)
from assistant.practice.sitting_scenes import Turn
from assistant.practice.sitting_state import ANSWERING, END, KEEP, NEXT, OVER, REMARK, STANDING_BY, Desk, Given, Put
from assistant.practice.sitting_steering import BROKEN_OFF, NO_ANSWER, STILL_THINKING
from assistant.practice.sitting_words import (
    AGAIN,
    CORRECTION,
    DISPUTE,
    DISREGARD,
    GO,
    HELP,
    HINT,
    PASS,
    SOURCE,
    STANDBY,
    STANDING,
    STOP,
    THEN,
    UNABLE,
    WHY,
    asks_back,
    breaks_off,
    control_of,
    dropped,
    mark_named,
    only_thinks,
)
from assistant.rendering.text import sources_line

DEBRIEFED = "debriefed"
ENOUGH, OVER_WITH = 2, 3
"""Answers not right in a row, after which the scene goes on to its next failure, and after which it is over."""
_WORDS = (AGAIN, STANDBY, UNABLE, PASS, DISREGARD, HINT, HELP, STOP, WHY, SOURCE, THEN, CORRECTION, DISPUTE,
          STANDING)  # fmt: skip
_MINE = "The questions are mine here: answer, “say again”, or “pass”."
_SHORT = {RIGHT: "Right.", PARTLY: "In part.", WRONG: "That is not right.", MISSED: "Noted."}
_ONWARD = "We leave that, and go on."
_RAN_OUT = "That is as far as you know it. We leave it there."
_NO_MORE = "That is as far as the loaded documents go."
_OVERRULE = re.compile(r"(?:i )?overrule\s+(?:number |no )?(\d{1,3})\s+(?:as |to )?(.+)", re.IGNORECASE)
_HELP = (
    "Answer as you would aloud, with figures and their units. Each question goes on from the one before.",
    "“say again” gives the whole situation, “hint” helps, “standby” pauses, “pass” or “unable” goes on.",
    "“stop” or Ctrl-D ends, and the debrief follows.",
)


class Oral(NamedTuple):
    """Where an examination stands. turns: of this scene, with the records that they are of. at: the one that stands."""

    phase: str = ANSWERING
    turns: tuple[tuple[Turn, Item], ...] = ()
    at: int = 0
    given: tuple[Given, ...] = ()
    weak: int = 0
    """Answers not right in a row."""
    hinted: bool = False
    remarked: int | None = None
    """Which answer another mark was put to last, by its place."""


class After(NamedTuple):
    """What follows: the examination, lines to show, what is to be done (or nothing).

    act: KEEP the last answer, or keep it and put the NEXT scene; keep the mark that was put to another (REMARK); END.
    """

    oral: Oral
    lines: tuple[Line, ...] = ()
    act: str = ""


def begin(oral: Oral, turns: Sequence[tuple[Turn, Item]], number: int) -> After:
    """Return the examination with another scene begun, the `number`th."""
    after = oral._replace(phase=ANSWERING, turns=tuple(turns), at=0, weak=0, hinted=False)
    return After(after, (Line(f"Scenario {number}", HEAD), Line(turns[0][0].said, ASKED)))


def said(oral: Oral, text: str, desk: Desk) -> After:
    """Return what follows from a line that was typed."""
    if oral.phase == STANDING_BY:
        return _after_pause(oral._replace(phase=ANSWERING), text, desk)
    if oral.phase == DEBRIEFED:
        return _after_debrief(oral, text)
    return _answered(oral, text, desk)


def _after_pause(oral: Oral, text: str, desk: Desk) -> After:
    """Return the examination after a pause, and what was typed to end it taken for what it is, the answer above all."""
    after = After(oral, (Line(_turn(oral).said, ASKED),))
    if control_of(text, (GO,)):
        return after
    reached = _answered(oral, text, desk)
    answered = len(reached.oral.given) > len(oral.given) and control_of(text, _WORDS) is None
    if answered and reached.oral.given[-1].taken.mark == MISSED:
        return After(oral, (*after.lines, Line(NO_ANSWER.format(text=text.strip()), NOTE)))
    return reached


def prompt(oral: Oral) -> str:
    """Return what is asked for, in a line of 40 columns."""
    return {
        ANSWERING: "Answer, hint, pass or stop: ",
        STANDING_BY: "Enter to go on, or stop: ",
        DEBRIEFED: "Enter ends; or: overrule 3 right: ",
    }[oral.phase]


def debrief_lines(given: Sequence[Given]) -> list[Line]:
    """Return every answer under its paragraph: right, or what was missing and the full answer."""
    lines = [Line("Debrief, by paragraph", HEAD)]
    for heading, numbers in _by_paragraph(given).items():
        right = sum(given[number].taken.mark == RIGHT for number in numbers)
        lines += [Line(""), Line(f"{heading}: {right} of {len(numbers)} right", MARK)]
        for number in numbers:
            lines += _told(number + 1, given[number])
    return lines


def _by_paragraph(given: Sequence[Given]) -> dict[str, list[int]]:
    """Return the places of answers by the first paragraph of each, in the order of the documents."""
    found: dict[str, list[int]] = {}
    for number, each in enumerate(given):
        heading = sources_line(each.taken.sources[:1]) or each.put.item.paragraph
        found.setdefault(heading, []).append(number)
    return dict(sorted(found.items()))


def _told(number: int, given: Given) -> list[Line]:
    taken = given.taken
    shown = f"{MARK_SHOWN[taken.mark].rstrip('.')}{' (overruled)' if given.was_overruled else ''}"
    lines = [Line(f"{number}. {shown}: {given.put.question.text}")]
    if taken.mark == RIGHT:
        return lines
    if taken.answer:
        lines.append(Line(f"You said: {taken.answer}", NOTE))
    if taken.mark == PARTLY and taken.missing:
        lines.append(Line(f"Missing: {'; '.join(taken.missing)}.", NOTE))
    return [*lines, *answer_lines(taken.expected, taken.sources)]


def _turn(oral: Oral) -> Turn:
    return oral.turns[oral.at][0]


def _answered(oral: Oral, text: str, desk: Desk) -> After:
    question = _turn(oral).question
    if not text.strip():
        return After(oral, (Line("Nothing was typed. Answer, or “pass”.", NOTE),))
    control = control_of(text, _WORDS)
    name = control.name if control else DISREGARD if dropped(text) else ""
    if name in (PASS, UNABLE):
        return _marked(oral, Given(_put(oral), take_nothing(question, text.strip()), MISSED, oral.hinted))
    if name:
        return _steered(oral, name)
    if only_thinks(text):
        return After(oral, (Line(STILL_THINKING, NOTE),))
    if breaks_off(text):
        return After(oral, (Line(BROKEN_OFF, NOTE),))
    if asks_back(text):
        return After(oral, (Line(_MINE, NOTE),))
    taken = desk.take(question, text)
    if taken.mark == UNMARKED:
        taken = taken._replace(mark=MISSED)
    return _marked(oral, Given(_put(oral), taken, taken.mark, oral.hinted))


def _steered(oral: Oral, name: str) -> After:
    turn = _turn(oral)
    if name == AGAIN:
        return After(oral, (Line(turn.question.text, ASKED),))
    if name == HINT:
        return After(oral._replace(hinted=True), (Line(turn.question.hint or "There is no hint on this.", NOTE),))
    if name == STANDBY:
        return After(oral._replace(phase=STANDING_BY), (Line("Standing by; take your time.", NOTE),))
    if name == DISREGARD:
        return After(oral, (Line("Disregarded. The question stands:", NOTE), Line(turn.said, ASKED)))
    if name == HELP:
        return After(oral, tuple(Line(each, NOTE) for each in _HELP))
    if name == STANDING:
        return After(oral, (Line("How it went is told at the end; “stop” ends it now.", NOTE),))
    if name in (WHY, SOURCE, THEN, DISPUTE):
        return After(oral, (Line(_MINE, NOTE),))
    if name == CORRECTION:
        return After(oral, (Line("Say the whole answer as it is to be.", NOTE),))
    return After(oral._replace(phase=OVER), (), END)


def _put(oral: Oral) -> Put:
    turn, item = oral.turns[oral.at]
    return Put(turn.question, item)


def _marked(oral: Oral, given: Given) -> After:
    """Return the examination with an answer marked, and the next turn; its end when knowledge has run out."""
    weak = oral.weak + 1 if given.taken.mark in (WRONG, MISSED) else 0
    after = oral._replace(given=(*oral.given, given), weak=weak, hinted=False, at=oral.at + 1)
    told = Line(_SHORT[given.taken.mark], MARK)
    if weak >= ENOUGH:
        place = _next_step(oral) if weak < OVER_WITH else None
        if place is None:
            return After(after._replace(at=len(oral.turns)), (told, Line(_RAN_OUT, NOTE)), NEXT)
        after = after._replace(at=place)
        return After(after, (told, Line(_ONWARD, NOTE), Line(_turn(after).said, ASKED)), KEEP)
    if after.at >= len(after.turns):
        return After(after, (told, Line(_NO_MORE, NOTE)), NEXT)
    return After(after, (told, Line(_turn(after).said, ASKED)), KEEP)


def _next_step(oral: Oral) -> int | None:
    """Return the place of the next turn with one more failure, if the scene has one."""
    step = _turn(oral).step
    return next((place for place, (turn, _) in enumerate(oral.turns) if place > oral.at and turn.step > step), None)


def _after_debrief(oral: Oral, text: str) -> After:
    found = _OVERRULE.fullmatch(text.strip())
    if not found:
        if control_of(text, (GO, STOP, PASS)):
            return After(oral._replace(phase=OVER), (), END)
        return After(oral, (Line("Type “overrule”, a number and a mark, such as: overrule 3 right.", NOTE),))
    place, mark = int(found[1]) - 1, mark_named(found[2])
    if not 0 <= place < len(oral.given) or mark not in MARKS:
        return After(oral, (Line(f"A number from 1 to {len(oral.given)}, and right, partly, wrong or missed.", NOTE),))
    given = oral.given[place]
    changed = given._replace(taken=overruled(given.taken, mark))
    after = oral._replace(given=(*oral.given[:place], changed, *oral.given[place + 1 :]), remarked=place)
    return After(after, (Line(f"{place + 1}. {MARK_SHOWN[mark].rstrip('.')}: your mark, recorded.", MARK),), REMARK)
