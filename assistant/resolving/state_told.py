"""What follows from states that a text only tells, and asks nothing: "we've got System 2 at 900 psi"."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.state_asked import Scored, content_of, fails_unknown, is_well, left_open, unused_amounts
from assistant.resolving.state_losses import loss
from assistant.understanding.clauses import asking
from assistant.understanding.states import Condition

_SCORE = 1.002
_WEIGHT = 8.0
_GIVING = frozenset({"with", "if", "after", "when", "without", "once", "what", "how"})
"""Words that give a state to a question, said before it or still to come."""


def told_candidates(
    inputs: tuple[Condition, ...], question: Question, know: Knowledge, excused: Collection[int]
) -> Iterator[Scored]:
    """Yield all that changes with the states given, where a text tells of failures and of nothing else."""
    failed = [c for c in inputs if not is_well(c, know)]
    if not failed or all(c.implied for c in inputs) or question.unsaid or any(c.is_result for c in question.conditions):
        return
    if asking(question.reading.words) or unused_amounts(question) < 1:
        return
    between = {k for c in inputs if c.where for k in range(min(c.where), max(c.where))}
    if any(m.start not in between for m in content_of(question, know, excused)):
        return
    given = {k for c in inputs for k in c.where}
    if any(word in _GIVING and k not in given for k, word in enumerate(question.reading.words)):
        return
    if question.reading.asks_loss or left_open(question, know) or fails_unknown(question):
        return
    found = loss(inputs, know)
    if found.lost:
        yield _SCORE, _WEIGHT, found
