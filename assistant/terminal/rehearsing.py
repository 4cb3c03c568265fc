"""`rehearse`: one learner at the prompt. What is asked comes from the record, what is answered goes into it at once."""

from __future__ import annotations

import sys
from collections.abc import Callable
from datetime import datetime
from random import SystemRandom

from assistant.practice.making import UnknownTopic
from assistant.practice.recall import need_library
from assistant.rendering.text import clean
from assistant.terminal.options import Parsed, UsageProblem
from assistant.terminal.oral import Examination
from assistant.terminal.records import clock, is_typed, opened_record
from assistant.terminal.rehearsal import Rehearsal
from assistant.terminal.screen import Screen, is_dumb, prepare, screen_for
from assistant.terminal.session import Session, open_session
from assistant.terminal.sitting_desk import desk_for
from assistant.terminal.sitting_keeping import Keeping
from assistant.terminal.sitting_people import learner_of, need_day, ready_by
from assistant.terminal.sitting_pool import pool_of
from assistant.terminal.sitting_prompt import Asking, EditedLines, PlainLines
from assistant.terminal.sitting_room import Room, Wanted
from assistant.terminal.sitting_screen import opening

MOST, LONGEST_MIN = 500, 480
_SITTING = ("--learner", "--topic", "--number", "--minutes", "--ready-by", "--seed", "--oral", "--variant", "--plain")


def rehearse(parsed: Parsed) -> int:
    """Hold a rehearsal, or mark answers without a learner; return the exit code. Raises UsageProblem."""
    if parsed.has("--mark"):
        for option in _SITTING:
            if parsed.has(option):
                raise UsageProblem(f"{option} does not go with --mark, which needs no learner")
        from assistant.terminal.marking import mark

        return mark(parsed)
    now, number, minutes = clock(), _count(parsed, "--number", MOST), _count(parsed, "--minutes", LONGEST_MIN)
    session = open_session(parsed, disputes=True, learnt=True)
    topics = tuple(topic.strip() for topic in parsed.values.get("--topic", "").split(",") if topic.strip())
    prepare(sys.stdout, json=False)
    screen = screen_for(parsed, sys.stdout)
    by_hand = is_typed()
    asking: Asking = PlainLines(by_hand) if not by_hand or parsed.has("--plain") or is_dumb() else EditedLines(screen)
    wanted = Wanted(number, minutes, topics, parsed.values.get("--seed") or f"{SystemRandom().getrandbits(64)}")
    if not parsed.has("--hands-free"):
        return sit(parsed, session, wanted, asking, screen, by_hand, now)
    from assistant.terminal.by_ear import opened_by_ear
    from assistant.terminal.rehearsing_by_ear import holds_by_ear

    with opened_by_ear(session, parsed) as by_ear:
        return sit(parsed, session, wanted, asking, screen, by_hand, now, holds_by_ear(by_ear))


def sit(
    parsed: Parsed, session: Session, wanted: Wanted, asking: Asking, screen: Screen, by_hand: bool, now: datetime,
    by_ear: Callable[[Room], bool] | None = None,
) -> int:  # fmt: skip
    """Hold a rehearsal at a prompt, whatever it is, or by ear; return 0. Raises UsageProblem."""
    need_library()
    need_day(parsed, now.date())
    try:
        pool = pool_of(session, wanted.topics, now.date())
    except UnknownTopic as problem:
        raise UsageProblem(clean(str(problem))) from None
    with opened_record(screen.asked_width) as record:
        try:
            learner = learner_of(parsed, record, asking, screen, by_hand)
        except (EOFError, KeyboardInterrupt):
            screen.say("")
            return 0
        learner, day = ready_by(parsed, learner, record, now.date(), screen)
        keeping = Keeping(record, learner, pool.type_id, screen)
        desk = desk_for(session)
        room = Room(record, learner, day, session, pool, desk, asking, screen, keeping, wanted, not by_hand)
        if parsed.has("--oral"):
            opening(session.knowledge, f"Oral examination of {learner.name}", screen)
            Examination(room).hold()
        else:
            opening(session.knowledge, f"Rehearsal of {learner.name}", screen)
            _hold(room, parsed, by_ear)
    return 0


def _hold(room: Room, parsed: Parsed, by_ear: Callable[[Room], bool] | None) -> None:
    """Hold a rehearsal: by ear, aloud while answers are typed, or in silence."""
    if by_ear is not None:
        by_ear(room)
    elif parsed.has("--speak"):
        _hold_aloud(room, parsed)
    else:
        Rehearsal(room).hold()


def _hold_aloud(room: Room, parsed: Parsed) -> None:
    from assistant.terminal.class_voice import ClassVoice
    from assistant.terminal.sitting_voice import TypedVoice
    from assistant.terminal.speaking import chosen_voice

    voice = ClassVoice(room.session, room.screen, settings=chosen_voice(parsed))
    aloud = TypedVoice(voice)
    if isinstance(room.asking, EditedLines):
        room.asking.on_key = aloud.stop
    try:
        Rehearsal(room._replace(voice=aloud)).hold()
        aloud.finish()
    finally:
        voice.close()


def _count(parsed: Parsed, option: str, most: int) -> int | None:
    text = parsed.values.get(option)
    if text is None:
        return None
    if not (text.isascii() and text.isdigit() and 1 <= int(text[:6]) <= most):
        raise UsageProblem(f"{option} takes a number from 1 to {most}, not {clean(text)}")
    return int(text)
