"""A candidate for what answers a question, and what speaks against one: amounts and states its record does not know."""

from __future__ import annotations

from collections.abc import Collection

from assistant.frozen import NamedTuple
from assistant.quantities.amounts import Amount
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Result
from assistant.understanding.matching import Match

UNCOMPARED = 0.8
"""What is left of a result where what it would be held against is hardly meant so."""
OPEN = frozenset({"what", "which", "how", "when", "where", "why"})
"""Words by which more is asked than whether something is so."""


class Candidate(NamedTuple):
    """A result with its score and how much of the question's weight stands behind it."""

    score: float
    weight: float
    result: Result
    match: Match | None = None


def amount_penalty(match: Match, amounts: Collection[Amount], know: Knowledge) -> float:
    """Numbers that a statement does not hold speak against it."""
    penalty = 1.0
    if not amounts:
        return penalty
    vocabulary = know.matcher.vocabulary(match.record)
    for amount in amounts:
        dimension = know.units.get(amount.unit).dimension if amount.unit else ""
        if (f"#{amount.value:g}:{dimension}" if dimension else f"#{amount.value:g}") not in vocabulary:
            penalty *= 0.62
    return penalty


def state_penalty(match: Match, question: Question, know: Knowledge) -> float:
    """States that a statement does not speak of speak against it."""
    if not question.conditions:
        return 1.0
    vocabulary = know.matcher.vocabulary(match.record)
    terms = {know.base.inputs[name].term for name in question.stated}
    return 0.62 ** sum(t not in vocabulary and vocabulary.isdisjoint(know.lexicon.implying.get(t, ())) for t in terms)
