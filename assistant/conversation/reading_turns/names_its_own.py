"""A turn that names a thing of its own and is a whole question by itself, though a way of asking that holds after what
was told says some of its words: "tyre speed limit", after steps of which one has a speed; "STEER LOST, what do I do",
where a step says that something is lost.
"""

from __future__ import annotations

from assistant.conversation.reading_turns.best_then import Best, known_of
from assistant.conversation.reading_turns.traits import FULL
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BandResult, CheckResult, FactResult, LimitResult, ProcedureResult
from assistant.understanding.mentions import BOUNDS, Mention

_TOLD = (BandResult, CheckResult, LimitResult, ProcedureResult, FactResult)


def names_its_own(best: Best, alone: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn names a thing that neither a way of asking nor its record knows, and is answered in full
    by itself by another record; or whether it asks what to do and names what a whole drill is for.
    """
    if alone.reading.has("steps") and best.then.step is None:
        drill = resolve_scored(alone, knowledge)
        if isinstance(drill.result, ProcedureResult) and drill.score >= FULL:
            return drill.record != best.then.record
    said = frozenset(c for element in best.then.elements for c in element.concepts)
    known = known_of(best.then, knowledge) | said
    if not any(known.isdisjoint(m.concepts) for m in things_of_its_own(alone, knowledge)):
        return False
    first = resolve_scored(alone, knowledge)
    return first.score >= FULL and isinstance(first.result, _TOLD) and first.record != best.then.record


def things_of_its_own(alone: Question, knowledge: Knowledge) -> list[Mention]:
    """Return the things that a turn names: no quantity, no bound, and nothing that only asks."""
    kinds = knowledge.lexicon.kinds
    found = [m for m in alone.reading.mentions if m.known and not (m.weak or m.passing)]
    found = [m for m in found if m.concepts.isdisjoint(QUANTITIES | frozenset(BOUNDS))]
    return [m for m in found if not any(kinds.get(c, "").startswith(("ask", "filler")) for c in m.concepts)]
