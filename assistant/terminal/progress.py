"""`progress`: how somebody stands, as text, JSON or a page; the record out, in again, and a person out of it."""

from __future__ import annotations

import json
import sys
from datetime import date, datetime
from typing import Any

from assistant.conversation.opening import Knowledge
from assistant.practice.asking.pool import Pool, drillable
from assistant.practice.keeping.learners import RESERVED, name_key
from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import Learner
from assistant.practice.making.selecting import own_records
from assistant.practice.progress.overview import Overview, overview
from assistant.rendering.text import clean, wrap
from assistant.terminal.disputes import kept_disputes
from assistant.terminal.options import PROGRESS, Parsed, UsageProblem
from assistant.terminal.progress_files import ACTIONS
from assistant.terminal.records import DONE, clock, has_record, need_content, opened_record, somebody, write_own
from assistant.terminal.screen import Screen, prepare, screen_for
from assistant.terminal.session import open_session

NOTHING_YET = "Nothing is recorded yet. The record begins with the first answer of a rehearsal or a class."


def progress(parsed: Parsed) -> int:
    """Do what is asked of the record; return the exit code. Raises UsageProblem and BrokenKnowledge."""
    prepare(sys.stdout, parsed.has("--json"))
    screen = screen_for(parsed, sys.stdout)
    word = name_key(parsed.words[0]) if parsed.words else ""
    if word in RESERVED:
        _without_options(parsed, word)
        return ACTIONS[word](parsed, screen)
    return _show(parsed, screen)


def day_of(text: str, today: date) -> date:
    """Return the day to be ready by. Raises UsageProblem for what is no day, or is over."""
    try:
        day = date.fromisoformat(text)
    except ValueError:
        raise UsageProblem(f"--ready-by takes a day such as {today:%Y-%m-%d}, not {clean(text)}") from None
    if day < today:
        raise UsageProblem(f"--ready-by {day} is over; today is {today}")
    return day


def _without_options(parsed: Parsed, word: str) -> None:
    for option in ("--json", "--page", "--ready-by"):
        if parsed.has(option):
            raise UsageProblem(f"{option} does not go with: {PROGRESS.name} {word}")


def _show(parsed: Parsed, screen: Screen) -> int:
    now = clock()
    asked = day_of(parsed.values["--ready-by"], now.date()) if parsed.has("--ready-by") else None
    session = open_session(parsed, learnt=True)
    knowledge = session.knowledge
    disputed = kept_disputes(knowledge.base.type_info.id)
    pool = drillable(knowledge.base, now.date(), disputed, variant=session.variant)
    name = " ".join(parsed.words)
    if not has_record():  # nothing is made only to say that there is nothing
        if name:
            raise UsageProblem(f"there is no {clean(name)} in the record; it is empty")
        return _shown([], knowledge, parsed, screen)
    with opened_record(parsed.width) as record:
        need_content(record)
        people = [somebody(record, name)] if name else list(record.learners())
        own = own_records(knowledge)
        seen = [_overview(record, each, _met(pool, own, record, each), now, asked) for each in people]
    return _shown(seen, knowledge, parsed, screen)


def _met(pool: Pool, own: frozenset[str], record: Record, learner: Learner) -> Pool:
    """Return what a learner is to know: the type's own, and of what is true of all aeroplanes what was ever asked."""
    return pool.only(records=own | record.latest(learner, pool.type_id).keys())


def _overview(record: Record, learner: Learner, pool: Pool, now: datetime, asked: date | None) -> Overview:
    kept = learner.ready_by if learner.ready_by and learner.ready_by >= now.date() else None
    return overview(record, learner, pool, now, asked or kept)


def _shown(seen: list[Overview], knowledge: Knowledge, parsed: Parsed, screen: Screen) -> int:
    code = _write_page(seen, knowledge, parsed, screen) if parsed.has("--page") else DONE
    if parsed.has("--json"):
        screen.say(json.dumps(_values(seen, knowledge, bool(parsed.words)), ensure_ascii=False))
    elif not parsed.has("--page"):
        screen.say("\n".join(_lines(seen, knowledge, screen.width)))
    return code


def _values(seen: list[Overview], knowledge: Knowledge, named: bool) -> dict[str, Any]:
    from assistant.practice.progress.plain import overview_values

    values = [overview_values(each, knowledge.deference) for each in seen]
    return values[0] if named else {"learners": values}


def _lines(seen: list[Overview], knowledge: Knowledge, width: int) -> list[str]:
    from assistant.practice.progress.lines import overview_lines, people_lines

    if not seen:
        return wrap(NOTHING_YET, width)
    show = people_lines(seen, knowledge.type_name, knowledge.deference, width) if len(seen) > 1 else None
    return show or overview_lines(seen[0], knowledge.type_name, knowledge.deference, width)


def _write_page(seen: list[Overview], knowledge: Knowledge, parsed: Parsed, screen: Screen) -> int:
    from assistant.practice.progress.page import MARK, people_page, progress_page

    if not seen:
        raise UsageProblem("there is nobody in the record to make a page of")
    name, deference = knowledge.type_name, knowledge.deference
    page = people_page(seen, name, deference) if len(seen) > 1 else progress_page(seen[0], name, deference)
    return write_own(parsed.values["--page"], page, MARK, "a page of progress", screen)
