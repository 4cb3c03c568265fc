"""Questions on procedures: all steps in order, the memory items, and single steps."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.knowledge.records import NOT_ASKED, Procedure, Step
from assistant.practice.making.drafting import Desk, asked_wordings, expected
from assistant.practice.making.question import MEMORY, STEP, STEPS, Draft, Key

_OF_A_PART = frozenset(("when", "where", "who", "why"))
"""First words that ask for a part of a step alone, where the key is what is done."""


def procedure_drafts(name: str, desk: Desk) -> Iterator[Draft]:
    """Yield drafts for a procedure whole, from memory, and step by step."""
    record: Procedure = desk.record(name)
    steps = tuple(step.do for step in record.steps)
    memory = tuple(step.do for step in record.steps if step.memory)
    if len(steps) > 1:
        yield _whole(STEPS, record, steps, desk)
    if memory:
        yield _whole(MEMORY, record, memory, desk)
    for step in record.steps:
        wordings = [step.quiz] if step.quiz else _wordings(step, desk)
        if wordings and step.quiz != (NOT_ASKED,):
            key = Key(points=(step.do,), values=tuple(expected(value) for value in step.values))
            hint = desk.hint("paragraph", record.sources)
            yield Draft(STEP, record.id, record.topic, key, tuple(wordings), hint, 2)


def _wordings(step: Step, desk: Desk) -> list[tuple[str, ...]]:
    return asked_wordings((ask for ask in step.asks if ask.split()[0] not in _OF_A_PART), desk)


def _whole(form: str, record: Procedure, points: tuple[str, ...], desk: Desk) -> Draft:
    wordings = [desk.wording.sentences(form, title=record.title), *asked_wordings(record.asks, desk)]
    key = Key(points=points, ordered=len(points) > 1)
    hint = desk.hint("steps" if len(points) > 1 else "step", record.sources, n=len(points))
    return Draft(form, record.id, record.topic, key, tuple(wordings), hint, 2)
