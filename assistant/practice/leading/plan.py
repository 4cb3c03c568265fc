"""What a class means to ask and how far it is, as the plain values that the record keeps with the sitting.

The questions are written once, when the sitting begins; what changes with every turn is small. No name of a person
enters either: seats stand for them.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from assistant.frozen import NamedTuple
from assistant.practice.making.question import Question
from assistant.practice.papers.sets import NoSet, QuestionSet, read_set, written
from assistant.practice.sitting_marks import Taken


class Suggested(NamedTuple):
    """What the program made of an answer before the instructor's mark; no more than is shown and counted."""

    answer: str
    mark: str
    share: float
    missing: tuple[str, ...] = ()
    wrong: tuple[str, ...] = ()
    confused_with: str = ""
    confused: str = ""


class Aims(NamedTuple):
    """What was asked for when the class began. minutes: 0 where questions are counted. think: seconds, 0 by hand."""

    questions: tuple[Question, ...]
    seed: str
    minutes: float = 0.0
    think: float = 0.0
    topics: tuple[str, ...] = ()
    documents: tuple[tuple[str, str], ...] = ()


class Plan(NamedTuple):
    """How far a class is.

    next: the first question not asked yet. asked: of each turn by its number, the question. added: questions that
    carried a case on; they count after those aimed at. shown: the words that an added one is put in. suggested,
    hands: by turn. away: seats. spent: seconds of class, pauses left out. case: turns of the case that goes on.
    unhinted: of each turn with a hint, how many had passed it on before it was given.
    """

    next: int = 0
    asked: Mapping[int, int] = {}
    added: tuple[Question, ...] = ()
    shown: Mapping[int, str] = {}
    suggested: Mapping[int, Suggested] = {}
    hands: Mapping[int, int] = {}
    away: tuple[int, ...] = ()
    spent: float = 0.0
    case: tuple[int, ...] = ()
    more: bool = False
    unhinted: Mapping[int, int] = {}


def without_turn(plan: Plan, number: int) -> Plan:
    """Return a plan as if a turn had never been put; its question, where it was one of those aimed at, stays asked."""
    return plan._replace(
        suggested={turn: each for turn, each in plan.suggested.items() if turn != number},
        asked={turn: each for turn, each in plan.asked.items() if turn != number},
        hands={turn: each for turn, each in plan.hands.items() if turn != number},
        case=tuple(turn for turn in plan.case if turn != number),
        unhinted={turn: each for turn, each in plan.unhinted.items() if turn != number},
    )


def suggestion_of(taken: Taken) -> Suggested:
    """Return what is kept of an answer that was marked."""
    confused = taken.confused
    told = f"{taken.figure} is the {confused.of} ({confused.paragraph})" if confused else ""
    return Suggested(
        taken.answer, taken.mark, taken.share, taken.missing, taken.wrong, confused.record if confused else "", told
    )


def aims_values(aims: Aims, type_id: str) -> dict[str, Any]:
    """Return aims as plain JSON values."""
    chosen = QuestionSet(type_id, aims.seed, aims.questions, aims.documents)
    return {"set": json.loads(written(chosen)), **aims._replace(questions=())._asdict()}


def aims_of(values: Any) -> Aims:
    """Return aims from what was kept. Raises NoSet for what is none."""
    if not isinstance(values, dict) or "set" not in values:
        raise NoSet("it holds no questions")
    chosen = read_set(json.dumps(values["set"]))
    topics = tuple(str(each) for each in values.get("topics") or ())
    minutes, think = float(values.get("minutes") or 0), float(values.get("think") or 0)
    return Aims(chosen.questions, chosen.seed, minutes, think, topics, chosen.documents)


def plan_values(plan: Plan) -> dict[str, Any]:
    """Return a plan as plain JSON values."""
    added = QuestionSet("", "", plan.added, ())
    return {
        **plan._asdict(),
        "added": json.loads(written(added)),
        "suggested": {turn: each._asdict() for turn, each in plan.suggested.items()},
    }


def plan_of(values: Any) -> Plan:
    """Return a plan from what was kept; one that was never kept is at its beginning."""
    if not isinstance(values, dict):
        return Plan()
    return Plan(
        int(values["next"]), _by_turn(values["asked"], int), read_set(json.dumps(values["added"])).questions,
        _by_turn(values["shown"], str), _by_turn(values["suggested"], _suggested), _by_turn(values["hands"], int),
        tuple(map(int, values["away"])), float(values["spent"]), tuple(map(int, values["case"])), bool(values["more"]),
        _by_turn(values.get("unhinted", {}), int),  # a class of an earlier version has none
    )  # fmt: skip


def _by_turn(values: dict[str, Any], read: Any) -> dict[int, Any]:
    return {int(turn): read(value) for turn, value in values.items()}


def _suggested(values: dict[str, Any]) -> Suggested:
    return Suggested(**values)._replace(missing=tuple(values["missing"]), wrong=tuple(values["wrong"]))
