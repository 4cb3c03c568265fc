"""A question on the procedure just told, which names no other: "below what speed?", "how long with the lever up?"."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import ProcedureResult, Result
from assistant.understanding.reading import Mention

_LONG = 8
_SAME = {"time": "duration", "acceleration": "deceleration", "temperature_difference": "temperature"}


def step_asked(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the one step of the procedure just told that gives the quantity which a short turn asks for."""
    told = context.result
    if not isinstance(told, ProcedureResult) or len(alone.reading.words) > _LONG or alone.reading.amounts:
        return None
    asked = alone.reading.asked & QUANTITIES or {c for m in alone.reading.mentions for c in m.concepts & QUANTITIES}
    giving = [i for i, step in enumerate(told.procedure.steps) if asked & _quantities(step.do, knowledge)]
    things = [m for m in alone.reading.mentions if not knowledge.matcher.is_soft(m) and not m.concepts & QUANTITIES]
    if things:
        giving = [i for i in giving if _speaks_of(told, i, things, knowledge)]
    if len(giving) != 1:
        return None
    return alone, told._replace(step=giving[0])


def _quantities(text: str, knowledge: Knowledge) -> set[str]:
    """Return the quantities whose amounts a step gives."""
    found = set()
    for amount in knowledge.phrase(text).amounts:
        dimension = knowledge.units.get(amount.unit).dimension if amount.unit else "count"
        found.add(_SAME.get(dimension, dimension))
    return found


def _speaks_of(told: ProcedureResult, index: int, things: list[Mention], knowledge: Knowledge) -> bool:
    """Return whether a step, or the one before it, speaks of all that the turn names."""
    steps = told.procedure.steps[max(0, index - 1) : index + 1]
    said = frozenset().union(*(knowledge.phrase(step.do).concepts for step in steps))
    return all(not thing.concepts.isdisjoint(said) for thing in things)
