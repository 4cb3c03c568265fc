"""A question on the procedure just told, which names no other: "below what speed?", "how long with the lever up?"."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import ProcedureResult, Result
from assistant.understanding.reading import Mention

_LONG = 8
_POINTING = frozenset({"that", "it", "this"})
_IN_VAIN = frozenset({"still", "nothing", "unchanged", "joy"})
_COMMON = frozenset({
    "if", "it", "the", "a", "is", "still", "does", "do", "not", "and", "then", "no", "in", "on", ",", "?",
})  # fmt: skip
_SAME = {"time": "duration", "acceleration": "deceleration", "temperature_difference": "temperature"}


def step_asked(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the one step of the procedure just told that gives the quantity which a short turn asks for, or that
    begins with what the turn says has happened: "and if it is still amber?".
    """
    told = context.result
    if not isinstance(told, ProcedureResult) or len(alone.reading.words) > _LONG or alone.reading.amounts:
        return None
    asked = alone.reading.asked & QUANTITIES or {c for m in alone.reading.mentions for c in m.concepts & QUANTITIES}
    giving = [i for i, step in enumerate(told.procedure.steps) if asked & _quantities(step.do, knowledge)]
    things = [m for m in alone.reading.mentions if not knowledge.matcher.is_soft(m) and not m.concepts & QUANTITIES]
    if not asked:
        giving = _begun_by(told, things, alone.reading.words, knowledge) or _after(told, things, alone, knowledge)
    elif told.step in giving and not things:
        giving = [told.step]
    elif things:
        speaking = [i for i in giving if _speaks_of(told, i, things, knowledge)]
        giving = speaking if speaking or not _POINTING.intersection(alone.reading.words) else giving
    if len(giving) != 1:
        return None
    return alone, told._replace(step=giving[0])


def _begun_by(
    told: ProcedureResult, things: list[Mention], words: tuple[str, ...], knowledge: Knowledge
) -> list[int]:
    """Return the steps for a case ("If still amber, …") whose case holds all that a turn says."""
    cases = {i: step.do.partition(",")[0] for i, step in enumerate(told.procedure.steps) if step.do[:3] == "If "}
    read = {i: knowledge.phrase(case) for i, case in cases.items()}
    if things:
        return [i for i, case in read.items() if all(not m.concepts.isdisjoint(case.concepts) for m in things)]
    return [i for i, case in read.items() if not (set(words) & set(case.words)) <= _COMMON]


def _after(told: ProcedureResult, things: list[Mention], alone: Question, knowledge: Knowledge) -> list[int]:
    """Return the step after the one that a turn says has been done in vain: "pressed it, still stuck"."""
    if not things or _IN_VAIN.isdisjoint(alone.reading.words):
        return []
    said = [knowledge.phrase(step.do).concepts for step in told.procedure.steps]
    done = [i for i, known in enumerate(said) if not things[0].concepts.isdisjoint(known)]
    return [done[0] + 1] if len(done) == 1 and done[0] + 1 < len(said) else []


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
