"""What lies just past a bound, told by the one step that leads there: "one knot more and you're outside".

The step is no figure of its own. It must lead to the side that the bound forbids, else it turns the bound round.
"""

from __future__ import annotations

from assistant.practice.marking.finding.equal import same_kind
from assistant.practice.marking.points import Figure, Need
from assistant.practice.marking.reading.said import Claim, Said
from assistant.practice.marking.reading.wording import word_set
from assistant.resolving.knowing import Knowledge

_PAST = {
    "max": word_set("above beyond extra faster further higher hotter longer more over past too"),
    "min": word_set("below beneath less lower short shy under slower fewer"),
}
_SIDES = {"lower": "min", "higher": "max"}
_BEHIND = 2


def steps_past(claim: Claim, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether a number is the one step that leads past a bound that is asked for."""
    amount = claim.amount
    if amount.value != 1 or not (amount.unit or amount.spoken):
        return False
    words = said.reading.words
    unit = amount.unit is None and words[amount.end : amount.end + 1]
    following = words[amount.end : amount.end + _BEHIND + bool(unit)]
    bounds = [f for p in need.points for f in p.figures if amount.unit is None or same_kind(amount, f, know.units)]
    return any(not _forbidden(f).isdisjoint(following) for f in bounds)


def _forbidden(figure: Figure) -> frozenset[str]:
    """Return the words that lead to the side which a figure forbids: to either, where it is no bound."""
    sense = _SIDES.get(figure.sense, figure.sense)
    return _PAST.get(sense, frozenset(w for words in _PAST.values() for w in words))
