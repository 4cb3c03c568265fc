"""A candidate for what answers a question, and what speaks against one: amounts and states its record does not know."""

from __future__ import annotations

from collections.abc import Collection

from assistant.frozen import NamedTuple
from assistant.quantities.amounts import Amount
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Result
from assistant.understanding.matching import Match

_ANY = " any "
_MORE = frozenset(("more", "above", "over", "beyond"))
_CLEARLY = 0.45
"""The share of a question that a way of asking explains, from which on its statement is clearly asked for."""
_NEAR = 4
"""Words between "any" and the quantity that it is of: "any nose-wheel angle"."""
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
        held = (f"#{amount.value:g}:{dimension}" if dimension else f"#{amount.value:g}") in vocabulary
        held = held or dimension in _whatever_it_is(match.record, know) or _beyond(amount, match, know)
        penalty *= 1.0 if held else 0.62
    return penalty


def _beyond(amount: Amount, match: Match, know: Knowledge) -> bool:
    """Return whether a statement that is clearly asked for holds beyond a figure that an amount is beyond: "at more
    than 55°", of 60 degrees.
    """
    says = getattr(know.base.records.get(match.record), "says", "")
    if not amount.unit or not match.whole or match.share < _CLEARLY or _MORE.isdisjoint(says.lower().split()):
        return False
    told = know.phrase(says)
    above = (a for a in told.amounts if not _MORE.isdisjoint(told.words[max(0, a.start - 2) : a.start]))
    return any(a.unit == amount.unit and a.value < amount.value for a in above)


def _whatever_it_is(record: str, know: Knowledge) -> frozenset[str]:
    """Return the quantities of which a statement holds whatever they are: "at any nose-wheel angle"."""
    says = getattr(know.base.records.get(record), "says", "")
    if _ANY not in says:
        return frozenset()
    words = know.phrase(says).words
    after = {w for i, word in enumerate(words) if word == "any" for w in words[i + 1 : i + 1 + _NEAR]}
    named = frozenset().union(*(know.phrase(word).concepts for word in sorted(after)))
    return frozenset(c for c in named if know.lexicon.kinds.get(c) == "quantity")


def state_penalty(match: Match, question: Question, know: Knowledge) -> float:
    """States that a statement does not speak of speak against it."""
    if not question.conditions:
        return 1.0
    vocabulary = know.matcher.vocabulary(match.record)
    terms = {know.base.inputs[name].term for name in question.stated}
    return 0.62 ** sum(t not in vocabulary and vocabulary.isdisjoint(know.lexicon.implying.get(t, ())) for t in terms)
