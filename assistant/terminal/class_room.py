"""`class`: an instructor quizzes a class aloud. What is asked, who is named and how it is marked goes into the record
at once, so that a class goes on from where it stood, whatever ended the program.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from random import SystemRandom
from typing import TYPE_CHECKING

from assistant.conversation.opening import Knowledge
from assistant.practice.asking.due import asking_on
from assistant.practice.asking.pool import Pool, drillable
from assistant.practice.keeping.learners import NameProblem
from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import PAUSED, Asking, Sitting
from assistant.practice.leading import case
from assistant.practice.leading.holding import Holder
from assistant.practice.leading.keys import at_once
from assistant.practice.leading.lead import prompt, said
from assistant.practice.leading.standing import OVER, THINKING, Standing
from assistant.practice.leading.steps import LISTENING, Desk, opening_lines
from assistant.practice.making.question import Question
from assistant.practice.marking.mark import Marker
from assistant.practice.papers.sets import NoSet
from assistant.practice.sitting_marks import Taken, take
from assistant.rendering.text import clean
from assistant.terminal.class_begin import LONGEST_THINK, MOST_TEAMS, begun, unfinished
from assistant.terminal.class_prompt import KeyedLines, Lines, PipedLines
from assistant.terminal.class_questions import LONGEST_MIN, whole
from assistant.terminal.class_report import files_of, kept_files, report_on
from assistant.terminal.class_voice import ClassVoice
from assistant.terminal.disputes import kept_disputes
from assistant.terminal.key_sign import key_is_elsewhere
from assistant.terminal.options import Parsed, UsageProblem
from assistant.terminal.records import (
    BROKEN,
    DONE,
    NOT_WRITTEN,
    clock,
    is_typed,
    need_content,
    opened_record,
    tell_news,
)
from assistant.terminal.screen import Screen, complain, is_dumb, prepare, screen_for
from assistant.terminal.session import Session, open_session
from assistant.terminal.sitting_screen import opening, say, show
from assistant.terminal.speaking import chosen_voice
from assistant.voice.hearing.recognising import HearingProblem

if TYPE_CHECKING:
    from assistant.terminal.class_ear import ClassEar

REPORT = "report"
HOW_TO_LEAVE = "e ends the class; Ctrl-D leaves it as it stands, to go on later."
KEPT = "The class is kept as it stands; downlock class goes on from here."
NOT_KEPT = "The class is not kept: the record could not be written. What was asked is lost with this window."


def lead_class(parsed: Parsed) -> int:
    """Lead a class, show its key, or report on one; return the exit code. Raises UsageProblem, BrokenKnowledge."""
    _check(parsed)
    files = files_of(parsed)
    session = open_session(parsed, disputes=True, learnt=True)
    prepare(sys.stdout, json=False)
    screen = screen_for(parsed, sys.stdout)
    know = session.knowledge
    type_id = know.base.type_info.id
    pool = drillable(know.base, clock().date(), kept_disputes(type_id), variant=session.variant)
    with opened_record(parsed.width) as record:
        if parsed.has("--key-here"):
            code = _show_key(record, type_id, screen, parsed)
        elif parsed.words:
            code = _report(parsed, record, know, pool, screen, files)
        else:
            code = _lead(parsed, record, session, pool, screen, files)
    return code


def _check(parsed: Parsed) -> None:
    if parsed.words and parsed.words[0] != REPORT:
        raise UsageProblem(f"{clean(parsed.words[0])} has no place here; write: downlock class report [NUMBER]")
    if len(parsed.words) > 2 or (len(parsed.words) == 2 and not parsed.words[1].isdigit()):
        raise UsageProblem("write: downlock class report [NUMBER], the number of a class")
    if parsed.has("--roster") and parsed.has("--names"):
        raise UsageProblem("name the people with --roster or with --names, not both")
    if parsed.has("--names-too") and not parsed.has("--xapi"):
        raise UsageProblem("--names-too goes with --xapi")
    whole(parsed, "--teams", 2, MOST_TEAMS)
    whole(parsed, "--think", 1, LONGEST_THINK)
    whole(parsed, "--minutes", 1, LONGEST_MIN)
    whole(parsed, "--difficulty", 1, 3)


def _show_key(record: Record, type_id: str, screen: Screen, parsed: Parsed) -> int:
    from assistant.terminal.class_key import KeyView

    try:
        KeyView(record, type_id, screen, parsed.has("--plain")).follow()
    except KeyboardInterrupt:
        screen.say("")
    return DONE


def _report(
    parsed: Parsed, record: Record, know: Knowledge, pool: Pool, screen: Screen, files: dict[str, str]
) -> int:  # fmt: skip
    need_content(record)
    found = record.sittings.all(know.base.type_info.id)
    if not found:
        raise UsageProblem("there is no class in the record yet; begin one with: downlock class")
    number = int(parsed.words[1][:9]) if len(parsed.words) == 2 else found[0].id
    sitting = next((each for each in found if each.id == number), None)
    if sitting is None:
        known = ", ".join(str(each.id) for each in found[:10])
        raise UsageProblem(f"there is no class {number} in the record; there is {known}")
    return report_on(sitting, record, know, pool, screen, files, parsed.has("--names-too"))


def _lead(
    parsed: Parsed, record: Record, session: Session, pool: Pool, screen: Screen, files: dict[str, str]
) -> int:  # fmt: skip
    by_hand = is_typed()
    lines: Lines = PipedLines(by_hand) if not by_hand or parsed.has("--plain") or is_dumb() else KeyedLines(screen)
    try:
        sitting = unfinished(record, pool, session.knowledge, lines, screen)
        if sitting is None:
            sitting = begun(parsed, record, session, pool, lines, screen, files)
    except (EOFError, KeyboardInterrupt):
        screen.say("")
        return DONE
    if isinstance(sitting, int):
        return sitting
    opening(session.knowledge, "Class", screen)  # only where there is a class: not above what is wrong with a roster
    voice = ClassVoice(session, screen, settings=chosen_voice(parsed)) if parsed.has("--speak") else None
    ear = _ear(session) if parsed.has("--listen") else None
    try:
        desk, hear = desk_for(session, pool, ear is not None), ear.hear if ear is not None else None
        desk = desk._replace(keeps=lambda: record.saved)
        ended = ClassRoom(record, sitting, desk, lines, screen, voice, hear).hold()
    except NoSet as problem:
        complain(f"class {sitting.id} cannot go on: {problem}; it is ended")
        record.sittings.end(sitting.id)
        return BROKEN
    finally:
        for each in (voice, ear):
            if each is not None:
                each.close()
    if not ended:
        say(KEPT if record.saved else NOT_KEPT, screen)
        return DONE if record.saved else NOT_WRITTEN
    kept = record.sittings.get(sitting.id)
    return report_on(
        kept, record, session.knowledge, pool, screen, files or kept_files(kept), parsed.has("--names-too")
    )


def _ear(session: Session) -> ClassEar | None:
    """Return what hears answers; None, told, where nothing can: the class goes on with keys."""
    from assistant.terminal.class_ear import ClassEar

    try:
        ear = ClassEar(session)
    except HearingProblem as problem:
        complain(f"answers are not heard: {problem}")
        return None
    if ear.lacks:
        complain(ear.lacks)
    return ear


def desk_for(session: Session, pool: Pool, hears: bool) -> Desk:
    """Return what the class is led with: chance, the marker, the knowledge."""
    know = session.knowledge
    marker, chance = Marker(know), SystemRandom()

    def marked(question: Question, text: str) -> Taken:
        return take(question, text, marker, know)

    def asking(question: Question, shown: str) -> Asking:
        sources = tuple(f"{each.document} {each.paragraph}, revision {each.revision}" for each in question.sources)
        item = pool.get(question.entry)
        if item is None:
            return Asking(question.entry, shown, question.key.says, sources, question.form)
        return asking_on(item, shown, question.key.says, sources, question.form)

    def further(question: Question) -> case.Further | None:
        return case.gone_on(question, know, f"{chance.getrandbits(64)}")

    def reason(question: Question) -> case.Further | None:
        return case.why(question, know)

    return Desk(
        chance, marked, asking, further, reason, lambda questions: case.debrief(questions, know), hears,
        key_is_elsewhere, names_failure=lambda question: bool(case.told_in(question, know)),
    )  # fmt: skip


class ClassRoom:
    """A class at a prompt: a line typed, what follows from it kept, then shown. Raises NoSet for a broken plan."""

    def __init__(
        self, record: Record, sitting: Sitting, desk: Desk, lines: Lines, screen: Screen,
        voice: ClassVoice | None = None, hear: Callable[[], str] | None = None,
    ) -> None:  # fmt: skip
        self._record = record
        self._desk = desk
        self._lines = lines
        self._screen = screen
        self._voice = voice
        self._hear = hear
        self._holder = Holder(record.sittings, sitting.id, time.monotonic)
        self._named_by_hand = False
        self._mode = ""

    def hold(self) -> bool:
        """Lead the class until it is ended, or left as it stands; whether it was ended."""
        standing = self._holder.standing
        if standing.sitting.state == PAUSED:
            self._record.sittings.resume(standing.sitting.id)
            standing = self._holder.look()
        show(opening_lines(standing), self._screen)
        while standing.phase != OVER:
            try:
                text = self._next(standing)
            except KeyboardInterrupt:
                say(HOW_TO_LEAVE, self._screen)
                continue
            except EOFError:
                self._screen.say("")
                return False
            standing = self._after(text)
        return True

    def _after(self, text: str) -> Standing:
        """Return where the class stands after a line."""
        if self._voice is not None:
            self._voice.stop()
        before = self._holder.look()
        step = said(before, self._mode, text, self._desk)
        try:
            standing = self._holder.do(step.acts)
        except (NameProblem, LookupError) as problem:  # a name that cannot be; somebody removed meanwhile
            say(f"{problem}.", self._screen)
            return self._holder.look()
        self._mode = step.mode
        self._named_by_hand = before.current is not None and not step.acts
        show(step.lines, self._screen)
        if self._voice is not None and step.aloud:
            self._voice.say(step.aloud)
        tell_news(self._record, self._screen.asked_width)
        return standing

    def _next(self, standing: Standing) -> str:
        """Return the next line: typed, or heard where the answer is awaited by ear."""
        if self._mode != LISTENING or self._hear is None:
            return self._lines.ask(prompt(standing, self._mode), self._keys(standing), self._thinking(standing))
        try:
            return self._hear()
        except HearingProblem as problem:
            say(f"{problem}.", self._screen)
            return ""

    def _keys(self, standing: Standing) -> str:
        return "" if self._mode else at_once(standing.phase)

    def _thinking(self, standing: Standing) -> float:
        """Return the seconds after which somebody is named without a key, if that was asked for."""
        waits = standing.phase == THINKING and not self._mode and not self._named_by_hand
        return standing.aims.think if waits else 0.0
