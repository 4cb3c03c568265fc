"""A turn that changes something, and whose calculation comes out as it was told last: it was not understood.

The same number again would look like the answer to what was changed; it is asked back instead what is meant.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_verdicts.limit_spoken import asks_margin
from assistant.conversation.reading_turns.given_inputs import given_before
from assistant.conversation.reading_turns.traits import names_unknown
from assistant.conversation.reading_turns.turned_round import only_with
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_inputs import cued_parts
from assistant.resolving.offering import offered
from assistant.resolving.results import (
    BandResult,
    CheckResult,
    Choices,
    FactResult,
    LimitResult,
    ModelResult,
    Needed,
    Result,
    ScheduleResult,
)  # fmt: skip

_SIDES = frozenset({"left", "right", "port", "starboard"})
_ORDERS = "total_order"
_AGAIN = frozenset({
    "again", "repeat", "sure", "really", "still", "same", "confirm", "correct", "right", "check", "so", "said", "isn",
})  # fmt: skip
_DUST = 1e-9
_LEAVE = frozenset({"may", "can", "could", "should", "must"})
_FAIRLY = 0.7
_FAR, _LEAST, _MANY = 8.0, 1.0, 4.0


def not_taken_in(alone: Question, result: Result, context: Context, knowledge: Knowledge) -> Choices | None:
    """Return what is asked back where a turn gives what its calculation, told again, did not take in."""
    words = set(alone.reading.words)
    orders = isinstance(result, ModelResult) and result.model.function == _ORDERS
    again = _AGAIN - _SIDES if orders else _AGAIN  # "his was right" is no "right" that agrees
    if context.asked is None or context.result is None or not again.isdisjoint(words):
        return None
    if asks_margin(alone):
        return None
    record = _same_again(result, context.result)
    if not record or not (_gives_anew(alone, result, context) or names_unknown(record, alone, knowledge)):
        return None
    return Choices(((record, offered(knowledge, record)),))


def leave_asked(alone: Question, first: Scored, result: Result, context: Context) -> bool:
    """Return whether a turn asks if something may be done, and is answered with that, and not with the calculation told
    last: "may I take the reading with the fans still blowing?".
    """
    again = isinstance(result, ModelResult) and bool(_same_again(result, context.result)) if context.result else False
    asks = bool(_LEAVE.intersection(alone.reading.words[:1])) and not alone.reading.amounts
    return again and asks and first.score >= _FAIRLY and isinstance(first.result, (FactResult, LimitResult))


def far_off(alone: Question, question: Question, result: Result, context: Context, know: Knowledge) -> Choices | None:
    """Return what is asked back where a turn's bare number has taken the place of one that it is nowhere near: a speed
    of 1,240 kt after one of 120.
    """
    if _unlikely(alone, question, result, know):
        assert isinstance(result, ModelResult)
        return Choices(((result.model.id, offered(know, result.model.id)),))
    told, before = context.result, context.asked
    bare = [a.value for a in alone.reading.amounts if a.unit is None]
    if not bare or before is None or not isinstance(result, ModelResult) or not isinstance(told, ModelResult):
        return None
    if result.model.id != told.model.id or result.solved or told.solved:
        return None
    new, old = (given_before(told.model, each, know).amounts for each in (question, before))
    for name in new.keys() & old.keys():
        value, past = new[name].value, old[name].value
        if value in bare and new[name].unit == old[name].unit and past > 0 and not past / _FAR <= value <= past * _FAR:
            return Choices(((told.model.id, offered(know, told.model.id)),)) if value > _LEAST else None
    return None


def _unlikely(alone: Question, question: Question, result: Result, know: Knowledge) -> bool:
    """Return whether a turn's amount was taken, with no word beside it, for a figure that is taken as usual elsewhere
    and that it is many times as much as: the width of a pavement for an edge clearance.
    """
    if not isinstance(result, ModelResult) or not alone.reading.amounts:
        return False
    given = [a.value for a in alone.reading.amounts]
    new = given_before(result.model, question, know).amounts
    cued = cued_parts(result.model, alone, know)
    for item in result.model.inputs:
        usual = know.figure(item.default, question.variant) if item.default and item.id in new else None
        if usual is None or item.id in cued or item.unit != result.model.output_unit:
            continue
        if new[item.id].value in given and new[item.id].value > _MANY * usual.value:
            return True
    return False


def _same_again(result: Result, told: Result) -> str:
    """Return the id of the calculation or schedule of two results that say the same, or ""."""
    if isinstance(result, ModelResult) and isinstance(told, ModelResult):
        same = result.model.id == told.model.id and result.values == told.values
        return result.model.id if same and result.against is None else ""
    if isinstance(result, ScheduleResult) and isinstance(told, ScheduleResult):
        same = result.schedule.id == told.schedule.id and result.given == told.given and result.value == told.value
        return result.schedule.id if same and result.against is None else ""
    if isinstance(result, BandResult) and isinstance(told, BandResult):
        return result.bands.id if result.bands.id == told.bands.id and result.given == told.given else ""
    if isinstance(result, CheckResult) and result == told:
        return result.checks[0].limit.id
    return ""


def _gives_anew(alone: Question, result: Result, context: Context) -> bool:
    """Return whether a turn holds an amount that was not given before, or another side of a control, or turns something
    round.
    """
    before, answer = context.asked, context.answer
    assert before is not None
    past = [a.value for a in before.reading.amounts] + ([v.value for v in answer.values] if answer else [])
    anew = any(all(abs(a.value - old) > _DUST for old in past) for a in alone.reading.amounts)
    orders = isinstance(result, ModelResult) and result.model.function == _ORDERS
    if anew or only_with(alone.reading):
        return True
    return orders and not _SIDES.isdisjoint(alone.reading.words) and len(alone.reading.words) < 8


def told_already(alone: Question, result: Result, context: Context) -> Result | None:
    """Return the calculation told last, for a turn that only names it again and would lack all it was given."""
    told = context.result
    if not isinstance(result, Needed) or not isinstance(told, ModelResult) or alone.reading.amounts:
        return None
    return told if result.record == told.model and not alone.conditions and not alone.named_variant else None
