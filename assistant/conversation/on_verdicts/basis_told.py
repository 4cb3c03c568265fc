"""Whether the figure told last is of the kind that a turn names: "is that ground speed", after the tyre limit."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import LimitResult, Result

_LONG = 7
_BESIDE = frozenset({
    "is", "are", "that", "this", "it", "the", "a", "and", "so", "in", "as", "then", "really", "actually", "over",
    "those", "knots", "kt", "s", "or", "what", "number", "figure",
})  # fmt: skip
_GROUND = "ground"


def of_its_basis(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the figure told last, which says of what kind it is, where a turn asks whether it is over the ground and
    it is.
    """
    told, words = context.result, alone.reading.words
    if context.asked is None or not isinstance(told, LimitResult) or len(told.limits) != 1 or alone.reading.amounts:
        return None
    basis = told.limits[0].basis
    if _GROUND not in basis or _GROUND not in words or len(words) > _LONG:
        return None
    said = {w for w in words if w[0].isalpha()}
    if not said <= _BESIDE | set(basis.split()):
        return None
    return context.asked.with_text(alone.reading.text)._replace(context=True), told
