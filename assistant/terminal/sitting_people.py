"""Who sits down to rehearse, and until when: named on the command line, known from the record, or asked for."""

from __future__ import annotations

from datetime import date

from assistant.answering.parts import upper
from assistant.practice.keeping.learners import NameProblem
from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import Learner
from assistant.rendering.text import clean
from assistant.terminal.options import Parsed, UsageProblem
from assistant.terminal.progress import day_of
from assistant.terminal.records import nearest_name
from assistant.terminal.screen import Screen
from assistant.terminal.sitting_prompt import Asking
from assistant.terminal.sitting_screen import say

NEVER = "none"
"""What --ready-by takes to forget the day."""


def learner_of(parsed: Parsed, record: Record, asking: Asking, screen: Screen, by_hand: bool) -> Learner:
    """Return who rehearses. Raises UsageProblem where nobody can be asked, EOFError and KeyboardInterrupt."""
    known = record.learners()
    if "--learner" in parsed.values:
        try:
            return _enrolled(parsed.values["--learner"], record, screen)
        except NameProblem as problem:
            raise UsageProblem(f"--learner: {problem}") from None
    if len(known) == 1:
        return known[0]
    if not by_hand:
        names = ", ".join(each.name for each in known)
        raise UsageProblem(f"say who rehearses: --learner NAME{f' (there is {clean(names)})' if names else ''}")
    return _asked(known, record, asking, screen)


def _asked(known: tuple[Learner, ...], record: Record, asking: Asking, screen: Screen) -> Learner:
    names = ", ".join(each.name for each in known)
    say(f"In the record: {names}." if names else "Your record stays on this machine.", screen)
    while True:
        text, _ = asking.ask("Your name: ")
        try:
            return _enrolled(text, record, screen)
        except NameProblem as problem:
            say(f"{upper(str(problem))}.", screen)


def _enrolled(name: str, record: Record, screen: Screen) -> Learner:
    """Return who has a name; somebody new is told so, since a name mistyped begins a record of its own."""
    found = record.find(name)
    if found is not None:
        return found
    near = nearest_name(record, name)
    learner = record.enrol(name)
    say(f"{learner.name} is new in the record{f' (there is {near})' if near else ''}.", screen)
    return learner


def need_day(parsed: Parsed, today: date) -> None:
    """Raise UsageProblem where --ready-by names no day to come, before anybody is written down."""
    written = parsed.values.get("--ready-by", "")
    if written not in ("", NEVER):
        day_of(written, today)


def ready_by(
    parsed: Parsed, learner: Learner, record: Record, today: date, screen: Screen
) -> tuple[Learner, date | None]:
    """Return the learner with the day to be ready by kept, and that day if it is not over. Raises UsageProblem."""
    written = parsed.values.get("--ready-by", "")
    if written == NEVER:
        return record.set_ready_by(learner, None), None
    if written:
        day = day_of(written, today)
        return (record.set_ready_by(learner, day) if day != learner.ready_by else learner), day
    if learner.ready_by and learner.ready_by < today:
        say(f"The day to be ready by, {learner.ready_by}, is over; --ready-by sets another.", screen)
        return learner, None
    return learner, learner.ready_by
