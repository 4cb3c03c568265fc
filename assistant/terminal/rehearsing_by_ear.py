"""A rehearsal held by ear: by itself, or in the middle of a conversation by ear."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from random import SystemRandom

from assistant.practice.asking.pool import Pool
from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import Learner
from assistant.practice.recall import need_library
from assistant.practice.sitting_marks import Line
from assistant.rendering.text import clean, wrap
from assistant.terminal.by_ear import ByEar
from assistant.terminal.options import Parsed
from assistant.terminal.records import clock, opened_record
from assistant.terminal.rehearsal import Rehearsal
from assistant.terminal.screen import Screen
from assistant.terminal.session import Session
from assistant.terminal.sitting_desk import desk_for
from assistant.terminal.sitting_ear import SpokenLines, ends_with
from assistant.terminal.sitting_keeping import Keeping
from assistant.terminal.sitting_pool import pool_of
from assistant.terminal.sitting_prompt import PlainLines
from assistant.terminal.sitting_room import Room, Wanted
from assistant.terminal.sitting_voice import lines_said
from assistant.voice.asking import Asker

NOBODY = "I do not know who rehearses. End this, and name yourself once with the option learner."
ENDED = "That was the rehearsal. Ask when you are ready."


def holds_by_ear(by_ear: ByEar) -> Callable[[Room], bool]:
    """Return what holds a rehearsal by ear in a room, and returns whether silences ended it."""

    def hold(room: Room) -> bool:
        knowledge, screen = room.session.knowledge, room.screen

        def speech(lines: Iterable[Line]) -> str:
            return lines_said(lines, knowledge, by_ear.aloud.settings)

        def show(text: str) -> None:
            screen.say("\n".join(wrap(clean(text), screen.width)))

        asker = Asker(by_ear.listener, by_ear.aloud, by_ear.sounds, by_ear.ear, by_ear.phrase, by_ear.pace)
        lines = SpokenLines(asker, room.desk, knowledge, speech, show)
        Rehearsal(room._replace(asking=lines, voice=lines, by_ear=True, piped=False)).hold()
        ends_with(lines)
        return lines.busy

    return hold


def rehearse_meanwhile(parsed: Parsed, session: Session, screen: Screen, by_ear: ByEar) -> str | None:
    """Hold a rehearsal in the middle of a conversation; return what is said then, or None where silences ended it."""
    need_library()
    with opened_record(screen.asked_width) as record:
        learner = _who(parsed, record)
        if learner is None:
            return NOBODY
        pool, wanted = _asked_of(session)
        keeping = Keeping(record, learner, pool.type_id, screen)
        room = Room(record, learner, learner.ready_by, session, pool, desk_for(session), PlainLines(False), screen,
                    keeping, wanted)  # fmt: skip
        return None if holds_by_ear(by_ear)(room) else ENDED


def _asked_of(session: Session) -> tuple[Pool, Wanted]:
    return pool_of(session, (), clock().date()), Wanted(None, None, (), f"{SystemRandom().getrandbits(64)}")


def _who(parsed: Parsed, record: Record) -> Learner | None:
    """Return who rehearses: whoever is named, or the only one in the record."""
    known, name = record.learners(), parsed.values.get("--learner")
    if name is not None:
        return record.find(name) or record.enrol(name)
    return known[0] if len(known) == 1 else None
