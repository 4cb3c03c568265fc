"""`rehearse`: one learner at the prompt. What is asked comes from the record, what is answered goes into it at once."""

from __future__ import annotations

import sys
from datetime import datetime
from random import SystemRandom

from assistant.answering.answer import Answer
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn
from assistant.practice.making import Question, UnknownTopic
from assistant.practice.marking.mark import Marker
from assistant.practice.recall import need_library
from assistant.practice.sitting_marks import Taken, take
from assistant.practice.sitting_state import Desk
from assistant.rendering.text import clean
from assistant.terminal.disputes import keep_disputes, kept_disputes
from assistant.terminal.options import Parsed, UsageProblem
from assistant.terminal.oral import Examination
from assistant.terminal.records import clock, is_typed, opened_record
from assistant.terminal.rehearsal import Rehearsal
from assistant.terminal.screen import Screen, is_dumb, prepare, screen_for
from assistant.terminal.session import Session, open_session
from assistant.terminal.sitting_keeping import Keeping
from assistant.terminal.sitting_people import learner_of, ready_by
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
    session = open_session(parsed, disputes=True)
    topics = tuple(topic.strip() for topic in parsed.values.get("--topic", "").split(",") if topic.strip())
    prepare(sys.stdout, json=False)
    screen = screen_for(parsed, sys.stdout)
    by_hand = is_typed()
    asking: Asking = PlainLines(by_hand) if not by_hand or parsed.has("--plain") or is_dumb() else EditedLines(screen)
    wanted = Wanted(number, minutes, topics, parsed.values.get("--seed") or f"{SystemRandom().getrandbits(64)}")
    return sit(parsed, session, wanted, asking, screen, by_hand, now)


def sit(
    parsed: Parsed, session: Session, wanted: Wanted, asking: Asking, screen: Screen, by_hand: bool, now: datetime
) -> int:
    """Hold a rehearsal at a prompt, whatever it is; return 0. Raises UsageProblem."""
    need_library()
    with opened_record(screen.asked_width) as record:
        try:
            learner = learner_of(parsed, record, asking, screen, by_hand)
        except (EOFError, KeyboardInterrupt):
            screen.say("")
            return 0
        learner, day = ready_by(parsed, learner, record, now.date(), screen)
        try:
            pool = pool_of(session, wanted.topics, now.date())
        except UnknownTopic as problem:
            raise UsageProblem(clean(str(problem))) from None
        keeping = Keeping(record, learner, pool.type_id, screen)
        desk = desk_for(session)
        room = Room(record, learner, day, session, pool, desk, asking, screen, keeping, wanted, not by_hand)
        if parsed.has("--oral"):
            opening(session.knowledge, f"Oral examination of {learner.name}", screen)
            Examination(room).hold()
        else:
            opening(session.knowledge, f"Rehearsal of {learner.name}", screen)
            Rehearsal(room).hold()
    return 0


def desk_for(session: Session) -> Desk:
    """Return what a sitting works with: the marker, and the assistant's answers to questions of the learner's own."""
    know = session.knowledge
    marker = Marker(know)

    def marked(question: Question, text: str) -> Taken:
        return take(question, text, marker, know)

    def reply(question: Question, text: str) -> Answer:
        return _reply(question, text, session.variant, know)

    return Desk(marked, reply)


def _reply(question: Question, text: str, variant: str, know: Knowledge) -> Answer:
    """Return what is answered to a text that follows a question; a record set aside there stays so."""
    type_id = know.base.type_info.id
    before = kept_disputes(type_id)
    try:
        _, context = answer_turn(question.text, Context(variant=question.variant or variant, disputed=before), know)
        answer, context = answer_turn(text, context, know)
    except Exception as fault:  # a fault at one question must not end the sitting
        return Session(know).unanswered(text, f"This met a fault in the program ({type(fault).__name__}).")
    if context.disputed != before:
        keep_disputes(type_id, context.disputed)
    return answer


def _count(parsed: Parsed, option: str, most: int) -> int | None:
    text = parsed.values.get(option)
    if text is None:
        return None
    if not (text.isascii() and text.isdigit() and 1 <= int(text[:6]) <= most):
        raise UsageProblem(f"{option} takes a number from 1 to {most}, not {clean(text)}")
    return int(text)
