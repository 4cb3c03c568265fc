"""How a class begins: one that was not ended goes on, or people and questions are gathered for a new one."""

from __future__ import annotations

import os
from random import SystemRandom

from assistant.conversation.opening import Knowledge
from assistant.practice.asking.pool import Pool
from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import Seated, Sitting
from assistant.practice.leading.plan import Aims, aims_values
from assistant.practice.leading.roster import Roster, in_teams, read_roster, typed_roster
from assistant.practice.leading.shown import count as counted
from assistant.practice.papers.sets import QuestionSet, written
from assistant.rendering.text import clean
from assistant.terminal.class_prompt import Lines
from assistant.terminal.class_questions import LONGEST_MIN, questions_for, topics_of, whole
from assistant.terminal.class_report import kept_files, report_on
from assistant.terminal.key_sign import key_is_elsewhere
from assistant.terminal.options import Parsed, UsageProblem
from assistant.terminal.records import DONE, write_own
from assistant.terminal.screen import Screen, remark
from assistant.terminal.session import Session
from assistant.terminal.sheet import set_file
from assistant.terminal.sitting_screen import say

LONGEST_THINK, MOST_TEAMS = 300, 20
_LARGEST = 2_000_000
_NAMED = 4
"""People by whose names a class that stands is told."""
_SECOND_VIEW = "The key is shown by: downlock class --key-here, in a terminal that the class does not see."
_VIEW_IS_OPEN = "The key is shown in the other terminal, once k reveals it; c then shows it to the class."
_ROSTER_PROMPT = "Names, with commas between; a team in\nbrackets: Ana (Red). Enter when all are\nin: "
_GOES_ON = "Enter goes on with it, new begins\nanother, end just ends it: "


def unfinished(record: Record, pool: Pool, know: Knowledge, lines: Lines, screen: Screen) -> Sitting | int | None:
    """Return the class to go on with, None to begin another, or the exit code once it is ended."""
    found = record.sittings.all(know.base.type_info.id, open_only=True)
    if not found:
        return None
    sitting = found[0]
    people = _people_named([seat.name for seat in record.sittings.seats(sitting.id)])
    asked = len({turn.number for turn in record.sittings.turns(sitting.id)})
    title = f"“{sitting.title}”, " if sitting.title else ""
    size = f"{people}, {counted(asked, 'question')} so far"
    say(
        f"A class has not ended: {title}{size}, begun "
        f"{sitting.began.astimezone():%Y-%m-%d %H:%M}.", screen,
    )  # fmt: skip
    while True:
        word = lines.ask(_GOES_ON).strip().lower()
        if word == "":
            return record.sittings.resume(sitting.id)
        if word in ("new", "end"):
            kept = record.sittings.end(sitting.id)
            if word == "end":
                return report_on(kept, record, know, pool, screen, kept_files(kept))
            say(f"Class {kept.id} is ended; downlock class report {kept.id} tells of it.", screen)
            return None
        say("Type new or end, or just Enter.", screen)


def _people_named(names: list[str]) -> str:
    """Return how many people there are, and the first of them by their names."""
    more = f" and {len(names) - _NAMED} more" if len(names) > _NAMED else ""
    return f"{counted(len(names), 'person', 'people')} ({', '.join(names[:_NAMED])}{more})"


def begun(
    parsed: Parsed, record: Record, session: Session, pool: Pool, lines: Lines, screen: Screen, files: dict[str, str]
) -> Sitting | int:  # fmt: skip
    """Return a new class with its people and its questions, or the exit code where that cannot be."""
    if parsed.has("--save"):
        set_file(parsed)
    chosen = questions_for(parsed, session, pool)
    if isinstance(chosen, int):
        return chosen
    if parsed.has("--save"):
        code = write_own(set_file(parsed), written(chosen), '"downlock questions"', "a set of questions", screen)
        if code != DONE:
            return code
    people = _people(parsed, lines, screen)
    aims = _aims(parsed, chosen)
    options = {**aims_values(aims, session.knowledge.base.type_info.id), "files": files}
    title = parsed.values.get("--title") or ", ".join(aims.topics)
    sitting = record.sittings.begin(session.knowledge.base.type_info.id, people, title, None, options)
    say(_begins(aims, len(people), parsed.has("--set")), screen)
    say(_VIEW_IS_OPEN if key_is_elsewhere() else _SECOND_VIEW, screen)
    return sitting


def _aims(parsed: Parsed, chosen: QuestionSet) -> Aims:
    minutes, think = whole(parsed, "--minutes", 1, LONGEST_MIN), whole(parsed, "--think", 1, LONGEST_THINK)
    return Aims(chosen.questions, chosen.seed, minutes, think, topics_of(parsed), chosen.documents)


def _begins(aims: Aims, people: int, of_a_set: bool) -> str:
    """Return who and how much, and how the same questions are had again."""
    length = f"{aims.minutes:.0f} minutes" if aims.minutes else counted(len(aims.questions), "question")
    again = "" if of_a_set else f" --seed {aims.seed} asks the same again."
    return f"{counted(people, 'person', 'people')}, {length}.{again}"


def _people(parsed: Parsed, lines: Lines, screen: Screen) -> tuple[Seated, ...]:
    """Return who is in the class. Raises UsageProblem where nobody is."""
    roster = _roster(parsed, lines, screen)
    for note in roster.notes:
        remark(clean(note), screen.asked_width)
    if not roster.people:
        raise UsageProblem("there is nobody in the class; name people with --roster FILE or --names")
    teams = whole(parsed, "--teams", 2, MOST_TEAMS)
    if not teams:
        return roster.people
    place = {each.name: number for number, each in enumerate(roster.people)}
    dealt = in_teams(SystemRandom().sample(roster.people, len(place)), teams)
    return tuple(sorted(dealt, key=lambda each: place[each.name]))


def _roster(parsed: Parsed, lines: Lines, screen: Screen) -> Roster:
    if parsed.has("--names"):
        return typed_roster(parsed.values["--names"])
    if not parsed.has("--roster"):
        return typed_roster(_typed_names(lines, screen))
    path = parsed.values["--roster"]
    try:
        with open(os.path.expanduser(path), "rb") as file:
            return read_roster(file.read(_LARGEST), os.path.basename(path))
    except OSError as error:
        raise UsageProblem(f"cannot read {clean(path)}: {error.strerror or 'unreadable'}") from None


def _typed_names(lines: Lines, screen: Screen) -> str:
    names: list[str] = []
    while True:
        text = lines.ask(_ROSTER_PROMPT if not names else "More names, or Enter when all are in: ")
        if not text.strip():
            if names:
                return ", ".join(names)
            say("A class needs at least one name.", screen)
            continue
        names.append(text)
