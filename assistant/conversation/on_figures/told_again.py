"""A statement or figure told again to a turn that it does not take in is no answer to that turn.

"So 260 is no go?", after the reason for a limit, asks of the limit; "could be a dead bulb" asks of no lamp's colour.
What was told before the last is looked at then, and else it is asked back what is meant.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.offering import offered
from assistant.resolving.results import BothResult, Choices, FactResult, LimitResult, Result
from assistant.understanding.mentions import BOUNDS

_AGAIN = frozenset({
    "again", "repeat", "sure", "really", "still", "same", "confirm", "correct", "right", "check", "said", "isn", "once",
    "more", "come", "always", "positive", "certain", "sorry", "pardon",
})  # fmt: skip
_TOLD = (BothResult, FactResult, LimitResult)
_DUST = 1e-9


def told_in_vain(alone: Question, result: Result, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn is answered with the statement or figure told last, though it names or gives what that
    does not hold.
    """
    before, answer = context.asked, context.answer
    if before is None or answer is None or result != context.result or not isinstance(result, _TOLD):
        return False
    reading = alone.reading
    if not _AGAIN.isdisjoint(reading.words):
        return False
    if not {v.unit.lower() for v in answer.values}.isdisjoint(reading.words):
        return False  # one of the figures told is asked for by its unit
    told = [v.value for v in answer.values] + [a.value for a in before.reading.amounts]
    if any(all(abs(a.value - old) > _DUST for old in told) for a in reading.amounts):
        return True
    said = knowledge.phrase(answer.text).concepts | before.reading.concepts | before.background
    own = knowledge.matcher.vocabulary(answer.entry)
    for mention in reading.mentions:
        kinds = {knowledge.lexicon.kinds.get(c, "") for c in mention.concepts}
        if mention.weak or mention.passing or kinds <= {"ask", "filler", "quantity"} or mention.concepts & BOUNDS:
            continue
        holds = own if "ask!" in kinds else said if mention.says_state else said | own
        if holds.isdisjoint(mention.concepts | mention.implied):
            return True
    return False


def before_that(context: Context) -> Context | None:
    """Return the context with the last turn before that was told otherwise as its last, or None where there is none."""
    turn = next((turn for turn in context.earlier if turn.result != context.result), None)
    if turn is None:
        return None
    return context._replace(asked=turn.asked, result=turn.result, answer=turn.answer, earlier=(), said=None)


def asked_back(context: Context, knowledge: Knowledge) -> Choices | None:
    """Return the record told last, to be asked about in other words."""
    entry = context.answer.entry if context.answer else ""
    return Choices(((entry, offered(knowledge, entry)),)) if entry in knowledge.base.records else None
