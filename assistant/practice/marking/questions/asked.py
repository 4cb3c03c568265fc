"""One answer that a question asks for, as the resolvers give it."""

from __future__ import annotations

import re
from collections.abc import Collection
from typing import Any

from assistant.answering.answer import Answer
from assistant.conversation.composing import composed, finished
from assistant.conversation.reading_turns.readings import question_of
from assistant.frozen import NamedTuple
from assistant.resolving import results as r
from assistant.resolving import tables
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question


class Asked(NamedTuple):
    """One answer that the question asks for."""

    question: Question
    result: r.Result
    answer: Answer


def ask(text: str, know: Knowledge, variant: str = "") -> tuple[float, Asked] | None:
    """Return what answers a text taken as a question of its own, with its score, if anything does."""
    question = question_of(text, know, variant)
    scored = resolve_scored(question, know)
    if isinstance(scored.result, (r.Declined, r.Choices, r.Needed)):
        return None
    return scored.score, as_asked(text, question, scored.result, know)


def as_asked(text: str, question: Question, result: r.Result, know: Knowledge) -> Asked:
    """Return a result of a question with its answer composed."""
    return Asked(question, result, finished(composed(text, question, result, know), know))


def measures(concepts: frozenset[str], know: Knowledge) -> bool:
    """Return whether concepts only say what is asked for: a quantity, an aspect."""
    return all(know.lexicon.kinds.get(c) in ("quantity", "ask", "ask!") for c in concepts)


def things(question: Question, know: Knowledge) -> frozenset[str]:
    """Return the concepts of the things that a question is about."""
    return frozenset(
        c for m in question.reading.mentions if not know.matcher.is_soft(m) and not measures(m.concepts, know)
        for c in m.concepts
    )  # fmt: skip


def said_whole(part: str, before: str, know: Knowledge) -> str:
    """Return a part with the thing that stands before it in the place of "it": "where is the STEER switch"."""
    names = [m for m in know.phrase(before).mentions if not know.matcher.is_soft(m) and not measures(m.concepts, know)]
    return _PRONOUN.sub(f"the {names[0].text}", part, count=1) if names else part


_PRONOUN = re.compile(r"\b(?:it|they|them)\b", re.IGNORECASE)


def record_of(result: r.Result) -> Any:
    """Return the one record that a result comes from, if it is one."""
    for name in ("fact", "bands", "schedule", "table", "procedure", "model", "limit", "record"):
        if hasattr(result, name):
            return getattr(result, name)
    if isinstance(result, r.LimitResult):
        return result.limits[0]
    if isinstance(result, r.CheckResult):
        return result.checks[0].limit
    return None


def listed_in(record: Any) -> tuple[str, ...]:
    """Return the points that a record lists in words; the points of a schedule are numbers, and tell nothing."""
    return tuple(p for p in getattr(record, "points", ()) if isinstance(p, str))


def is_same(one: Asked, other: Asked) -> bool:
    """Return whether two parts of a question were answered from one record, and with the same words."""
    return record_of(one.result) is record_of(other.result) and one.answer.text == other.answer.text


def the_one_asked(one: Asked, text: str, know: Knowledge) -> Asked:
    """Return the one of two statements told together that a question names more of."""
    result: Any = one.result
    if not isinstance(result, r.BothResult):
        return one
    both = (result.first, result.second)
    told = [each for each in both if isinstance(each, r.FactResult)]
    if len(told) == 1 and _DOES.match(one.answer.question):  # what a thing does is no figure
        return one._replace(result=told[0])
    asked = know.reader.read(text).concepts
    return one._replace(result=max((result.first, result.second), key=lambda each: len(asked & _named(each, know))))


_DOES = re.compile(
    r"(?:.*[.:;] )?(?:and )?what (?:does|do|will|would) (?:the |a |an )?\w+(?: \w+)? (?:then )?do\b", re.IGNORECASE
)


def _named(result: Any, know: Knowledge) -> frozenset[str]:
    """Return the concepts that the name of a result's record holds."""
    record = record_of(result)
    return know.phrase(getattr(record, "of", "") or getattr(record, "says", "")).concepts


def bare_names(know: Knowledge, wanted: Collection[str]) -> dict[str, str]:
    """Return the family of results of state tables by their bare name: "emergency" is a braking mode too."""
    found = {}
    for table, output in ((t, o) for t in tables.tables(know.base) for o in t.outputs):
        names = [c for v, _, _ in output.values for c in (f"={table.id}.{output.id}.{v}", f"{v}_{output.id}")]
        families = [know.lexicon.families.get(c) for c in names]
        family = next((f for f in families if f in wanted), "")
        found.update({value: family for value, _, _ in output.values if family})
    return found
