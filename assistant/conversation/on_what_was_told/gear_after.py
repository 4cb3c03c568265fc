"""Whether the gear goes up or stays down after what was just told: "and the wheels, up or down after that?".

Such a turn names no more than the gear and its two positions, and would be answered with the order of a retraction or
a speed for it; what the verdict or the statement told last says of the gear is meant.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_what_was_told.with_the_subject import with_the_subject
from assistant.conversation.reading_turns.readings import question_of
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BandResult, CheckResult, FactResult, ProcedureResult, Result

_GEAR = frozenset({"gear", "wheels", "undercarriage", "legs", "undercart", "dunlops"})
_MOVED = frozenset({
    "up", "down", "raise", "raised", "retract", "retracted", "leave", "left", "stay", "stays", "lift", "stow", "keep",
    "raising", "retracting", "leaving", "keeping", "selected", "select",
})  # fmt: skip
_SMALL = frozenset({
    "and", "the", "so", "do", "does", "i", "we", "you", "should", "can", "may", "must", "shall", "then",
    "after", "that", "it", "afterwards", "or", "is", "are", "of", "what", "about", "be", "to", "in", "where",
    "our", "my", "them", "go", "goes", "come", "comes", "bring", "put", "pull", "ok", "okay", "right", "now",
    "still", "a", "have", "not", "s", "this", "case", "will", "would", "with", "just", "away",
})  # fmt: skip
_LEVER, _ENDS = frozenset({"gear", "lever"}), frozenset({"up", "down", "dn"})
_TOLD = (BandResult, CheckResult, FactResult, ProcedureResult)
_ASKED = "do i raise the gear"
_LONG = 12


def gear_after(
    alone: Question, result: Result, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return what was told, or the statement beside it, of whether the gear is raised, to a turn on that alone."""
    words = {w for w in alone.reading.words if w[0].isalpha()}
    told = context.result
    if len(words) > _LONG or words.isdisjoint(_GEAR) or words.isdisjoint(_MOVED) or context.asked is None:
        return None
    if not words <= _GEAR | _MOVED | _SMALL or not isinstance(told, _TOLD):
        return None
    if isinstance(told, ProcedureResult):
        done = {w.strip(",.").lower() for step in told.procedure.steps for w in step.do.split()}
        own = isinstance(result, ProcedureResult) and result.procedure.id == told.procedure.id
        return None if own or done.isdisjoint(_LEVER) or done.isdisjoint(_ENDS) else (alone, told._replace(step=None))
    if isinstance(told, FactResult):
        says = set(told.fact.says.lower().replace(",", " ").split())
        named = not says.isdisjoint(_GEAR) and not says.isdisjoint({"retract", "down", "retracted"})
        return (alone, told) if named and not {"leave", "left", "keep", "not"}.isdisjoint(says) else None
    question = question_of(_ASKED, knowledge, context.asked.variant)
    found = with_the_subject(question, resolve_scored(question, knowledge), context, knowledge)
    return (found[0].with_text(alone.reading.text), found[1]) if found and found[1] != result else None
