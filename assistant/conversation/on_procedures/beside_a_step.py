"""The step before or after the one that a turn names: "what comes after the reverse?", of the procedure gone through.

The step that is named itself would look like the answer, and be the wrong one.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_procedures.going_through import gone_through, stems
from assistant.knowledge.records import Step
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import ProcedureResult, Result
from assistant.understanding.words import stem

_LONG = 10
_AFTER = frozenset({"after", "follows", "following", "once"})
_BEFORE = frozenset({"before", "precedes", "preceding"})
_ASKING = frozenset({"what", "whats", "which"})
_LEADING = _ASKING | {
    "and", "so", "ok", "okay", "then", "is", "s", "comes", "come", "next", "do", "i", "we", "step", "item", "the",
    "one", "straight", "right", "immediately", "just", "happens", "goes", "thing", "must", "should", "directly", "now",
    "to", "be", "done",
}  # fmt: skip
_SMALL = frozenset({
    "the", "a", "an", "that", "is", "are", "i", "we", "have", "has", "been", "done", "step", "item", "one", "of", "to",
    "it", "my", "bit", "part", "thing", "s",
})  # fmt: skip


def beside_a_step(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the step next to the one that a turn names, or all of them where several may be meant."""
    gone, words = gone_through(context), alone.reading.words
    if gone is None or len(words) > _LONG or alone.reading.amounts:
        return None
    at = next((k for k, word in enumerate(words) if word in _AFTER | _BEFORE), None)
    if at is None or _ASKING.isdisjoint(words[:at]) or not _LEADING.issuperset(words[:at]):
        return None
    named = frozenset(
        stem(part) for word in words[at + 1 :] if word[0].isalnum() and word not in _SMALL for part in word.split("-")
    )
    steps = gone.told.procedure.steps
    place = _place(named, steps)
    if place is None:
        return None
    beside = None if place < 0 else place + (1 if words[at] in _AFTER else -1)
    if beside is not None and beside < 0:
        return None
    return gone.asked_by(alone), ProcedureResult(gone.told.procedure, beside, alone=beside is not None)


def _place(named: frozenset[str], steps: tuple[Step, ...]) -> int | None:
    """Return the index of the step that holds all words by which it is named, -1 where several do; None for none."""
    fitting = [i for i, step in enumerate(steps) if named and named <= stems(step)]
    if not fitting:
        return None
    # A step that only looks back at the one before it ("wait from the pull") is not named by its words.
    named_by = [i for i in fitting if i - 1 not in fitting or " from the " not in steps[i].do]
    return named_by[0] if len(named_by) == 1 else -1
