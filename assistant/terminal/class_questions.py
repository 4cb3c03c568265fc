"""What a class is asked: a set that was kept, questions of the instructor's own, and those made from the knowledge."""

from __future__ import annotations

from random import SystemRandom

from assistant.conversation.opening import Knowledge
from assistant.practice.asking.pool import Pool
from assistant.practice.making import Question, UnknownTopic, make_questions
from assistant.practice.making.question import CALCULATION, FORMS, LONG_SUMS
from assistant.practice.making.selecting import own_records
from assistant.practice.making.telling import none_told_before
from assistant.practice.papers.sets import QuestionSet, set_of
from assistant.rendering.text import clean
from assistant.terminal.options import Parsed, UsageProblem
from assistant.terminal.screen import complain
from assistant.terminal.session import Session
from assistant.terminal.sheet import opened_set, own_questions

USUAL, MOST, LONGEST_MIN = 12, 200, 480
"""Questions when neither a number nor minutes are named; the most of each that may be."""
_HARDEST, _EASIEST = 3, 2
"""The greatest difficulty, and what is asked at least of a class for which it was named: no plain recall."""
_A_MINUTE = 2
"""Questions that a class gets through in a minute at most."""


def questions_for(parsed: Parsed, session: Session, pool: Pool) -> QuestionSet | int:
    """Return what the class is to be asked, or the exit code where a file cannot be used. Raises UsageProblem."""
    know = session.knowledge
    if parsed.has("--set"):
        return _from_set(parsed, know)
    own = own_questions(parsed, know)
    if isinstance(own, int):
        return own
    seed = parsed.values.get("--seed") or str(SystemRandom().randrange(100_000, 1_000_000))
    number = wanted(parsed)
    made = _made(parsed, session, pool, seed, max(0, number - len(own)))
    questions = _mixed(made, own[:number], seed)
    if not questions:
        raise UsageProblem("there is no question on this that may be asked today; name other topics")
    if len(questions) < number and not parsed.has("--minutes"):
        complain(f"there are only {len(questions)} questions that differ on this; all of them are taken")
    return set_of(questions, seed, know)


def wanted(parsed: Parsed) -> int:
    """Return how many questions are to be ready. Raises UsageProblem."""
    if parsed.has("--number") and parsed.has("--minutes"):
        raise UsageProblem("name the questions with --number or the time with --minutes, not both")
    if parsed.has("--minutes"):
        return min(int(whole(parsed, "--minutes", 1, LONGEST_MIN) * _A_MINUTE), MOST)
    return whole(parsed, "--number", 1, MOST, USUAL)


def whole(parsed: Parsed, option: str, least: int, most: int, otherwise: int = 0) -> int:
    """Return the whole number of an option. Raises UsageProblem for what is none, or out of bounds."""
    text = parsed.values.get(option)
    if text is None:
        return otherwise
    if not (text.isascii() and text.isdigit() and least <= int(text[:6]) <= most):
        raise UsageProblem(f"{option} takes a number from {least} to {most}, not {clean(text)}")
    return int(text)


def topics_of(parsed: Parsed) -> tuple[str, ...]:
    """Return the topics that were named."""
    return tuple(each.strip() for each in parsed.values.get("--topic", "").split(",") if each.strip())


def _from_set(parsed: Parsed, know: Knowledge) -> QuestionSet | int:
    for name in ("--topic", "--number", "--seed", "--own", "--difficulty", "--save"):
        if parsed.has(name):
            raise UsageProblem(f"{name} does not go with --set, which holds its questions already")
    return opened_set(parsed.values["--set"], know)


def _made(parsed: Parsed, session: Session, pool: Pool, seed: str, number: int) -> tuple[Question, ...]:
    """Return questions on what may be asked today: nothing disputed, nothing whose document is out of force."""
    if not number:
        return ()
    hardest = whole(parsed, "--difficulty", 1, 3, 3)
    aloud = [form for form in FORMS if parsed.has("--difficulty") or form not in (*LONG_SUMS, CALCULATION)]
    know, topics = session.knowledge, topics_of(parsed)
    own = own_records(know)
    allowed = frozenset(item.record for item in pool.items if topics or item.record in own)
    easiest = _EASIEST if hardest == _HARDEST and parsed.has("--difficulty") else 1
    try:
        return make_questions(
            know, seed, number, topics, entries=allowed, forms=aloud, variant=session.variant, hardest=hardest,
            easiest=easiest,
        )  # fmt: skip
    except UnknownTopic as problem:
        raise UsageProblem(clean(str(problem))) from None


def _mixed(made: tuple[Question, ...], own: tuple[Question, ...], seed: str) -> tuple[Question, ...]:
    """Return own questions spread among the others, but so that no answer gives away what comes after it."""
    if not own or not made:
        return none_told_before((*own, *made))
    apart = len(made) / len(own)
    placed = [(place + 0.0, question) for place, question in enumerate(made)]
    placed += [((place + 0.5) * apart - 0.5, question) for place, question in enumerate(own)]
    return none_told_before(question for _, question in sorted(placed, key=lambda pair: pair[0]))
