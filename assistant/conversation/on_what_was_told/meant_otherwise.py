"""What speaks against a short turn asking for more of what was told: it adds a state, goes on, or asks by itself."""

from __future__ import annotations

from itertools import pairwise

from assistant.conversation.context import Context
from assistant.conversation.on_calculations.on_the_same import on_the_same
from assistant.conversation.on_procedures.going_through import GOING_ON, gone_through
from assistant.conversation.on_verdicts.judged_before import calculation_judged
from assistant.conversation.reading_turns.best_then import Best
from assistant.conversation.reading_turns.given_inputs import choices_of
from assistant.conversation.reading_turns.names_its_own import names_its_own
from assistant.conversation.reading_turns.other_orders import only_turns
from assistant.conversation.reading_turns.readings import merged
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.leaning import ANSWERING
from assistant.resolving.model_inputs import cued_parts
from assistant.resolving.results import (
    BandResult,
    CheckResult,
    Choices,
    Declined,
    LimitResult,
    ModelResult,
    Needed,
    ProcedureResult,
    Result,
    ScheduleResult,
    TableResult,
)
from assistant.resolving.state_shown import asks_what_shows
from assistant.understanding.mentions import BOUNDS
from assistant.understanding.then import Then

_BRIEF, _WHOLE = 7, 5
_CHANGED = "changed"
_SURE = 0.95
_GIVING = frozenset({"with", "at", "from", "if"})
_MEMOS = frozenset({"memo", "memos"})
_ASKING = frozenset({"what", "which", "when", "where", "how"})
_JUDGED = (BandResult, CheckResult, ModelResult, ScheduleResult)


def is_meant_otherwise(best: Best, alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether what was offered, asked or told before speaks against a way of asking after some paragraphs."""
    if _is_beside_the_offer(best.then.record, context) or _of_another_like(best.then, alone, context, knowledge):
        return True
    return _no_longer_so(best.then, context, knowledge) or _adds_a_state(best, alone, context, knowledge)


def _of_another_like(then: Then, alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a record tells of one of a family, RTO, where another one of it was asked of last and the turn
    names none.
    """
    asks = "how" in alone.reading.words[:2] or bool(alone.reading.asked & QUANTITIES)
    if not asks or "come" in alone.reading.words:
        return False  # "the last resort?" tells the other one by what it is
    asked = context.asked.reading.concepts if context.asked else frozenset()
    record, families_of = knowledge.base.records[then.record], knowledge.lexicon.families_of
    told = knowledge.phrase(str(getattr(record, "title", "") or getattr(record, "of", ""))).concepts
    own = frozenset(c for c in told if c in knowledge.lexicon.families)
    if then.step is not None or not own or not own.isdisjoint(asked | alone.reading.concepts):
        return False
    return not families_of(own).isdisjoint(families_of(frozenset(c for c in asked if c in knowledge.lexicon.families)))


def _no_longer_so(then: Then, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a record tells what follows from a state that what is told now has put in another."""
    when = dict(getattr(knowledge.base.records[then.record], "when", ()) or ())
    asked = context.asked.conditions if context.asked else ()
    return any(when.get(c.input, c.value) != c.value for c in (*asked, *context.scenario))


def _adds_a_state(best: Best, alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn adds a failure to the states given before, or puts one of them in another state, or adds
    one which no words that hold then speak of: what follows from all of them is asked.
    """
    if context.asked is None or not context.asked.conditions:
        return False
    barred = knowledge.states.failures | {c.input for c in context.asked.conditions}
    return any(c.input in barred or best.explained.isdisjoint(c.where) for c in alone.conditions)


def asks_what_is_shown(words: tuple[str, ...]) -> bool:
    """Return whether words ask what shows, of whatever kind: a memo asked for is one that a paragraph tells of, and "at
    what" asks for a figure.
    """
    return asks_what_shows(words) and _MEMOS.isdisjoint(words) and ("at", "what") not in pairwise(words)


def of_another_quantity(result: Result | None, alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a figure is of another quantity than the one told last, to a turn that asks for none itself: "and
    going up", after how long the gear takes to come down, asks for no speed, though a speed was told of before.
    """
    if not isinstance(result, LimitResult) or not isinstance(context.result, LimitResult):
        return False
    asks = alone.reading.asked & QUANTITIES or alone.reading.unit or alone.reading.says(*BOUNDS)
    if asks or not _ASKING.isdisjoint(alone.reading.words):
        return False
    if not set(_places(result.limits[0])).isdisjoint(_places(context.result.limits[0])):
        return False  # it stands where the last figure does
    return quantity_of(result, knowledge) != quantity_of(context.result, knowledge)


def _places(record: object) -> list[tuple[str, str]]:
    return [(s.document, s.paragraph) for s in getattr(record, "sources", ())]


def is_of_the_result(alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn asks of what was worked out last, or for more of the same calculation."""
    return _goes_on_from_the_result(alone, context, knowledge) or _asks_of_the_same(alone, context, knowledge)


def asks_by_itself(best: Best, result: Result, alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn asks in full for something else than a way of asking after some paragraphs gives."""
    if _takes_the_place(alone, result, context, knowledge) or _asks_itself(best, alone, knowledge):
        return True
    if _asks_the_former(best, alone) or names_its_own(best, alone, knowledge):
        return True
    return _asks_a_figure(best, result, alone, context, knowledge)


def _goes_on_from_the_result(alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn asks of what was worked out: "how much of that", "is there a caution for that", or turns
    it round, or chooses otherwise what was judged.
    """
    past = calculation_judged(context)
    if past and isinstance(past.result, ModelResult) and choices_of(past.result.model, alone, knowledge):
        return True
    if isinstance(context.result, ModelResult) and (
        only_turns(alone.reading) or _gives_inputs(alone, context.result, knowledge)
    ):
        return True
    if "that" not in alone.reading.words:
        return False
    follows = isinstance(context.result, TableResult) and alone.reading.has("warning")
    return follows or isinstance(context.result, ModelResult)


def _asks_of_the_same(alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn asks no more than a quantity that is worked out from what the last calculation was given:
    "how long does it take", after a stopping distance.
    """
    if not isinstance(context.result, ModelResult) or alone.reading.amounts or not alone.reading.asked & QUANTITIES:
        return False
    if any(not (m.weak or m.passing or m.concepts & QUANTITIES) for m in alone.reading.mentions):
        return False
    return on_the_same(alone, Scored(Declined(()), 0.0), context, knowledge) is not None


def _gives_inputs(alone: Question, told: ModelResult, knowledge: Knowledge) -> bool:
    """Return whether a turn only gives amounts, each by a word for an input of the calculation told last: "with the
    accumulator at 1,500 only".
    """
    amounts, words = alone.reading.amounts, alone.reading.words
    if not amounts or words[0] not in _GIVING or alone.reading.asked & QUANTITIES - {told.model.output}:
        return False
    cued = cued_parts(told.model, alone, knowledge).values()
    return all(amount.start in cued for amount in amounts)


def goes_on(result: Result, alone: Question, context: Context) -> bool:
    """Return whether a turn goes on in a procedure, whose step it may seem to name was told: "and then the lever?"."""
    gone = gone_through(context)
    if gone is None or GOING_ON.isdisjoint(alone.reading.words) or not isinstance(result, ProcedureResult):
        return False
    return result.procedure == gone.told.procedure and result.step is not None and result.step <= gone.step


def _asks_a_figure(best: Best, result: Result, alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn asks a figure that a limit tells better than a step: where no step was told of, or the turn
    asks for it in full by itself.
    """
    if not isinstance(result, ProcedureResult) or not alone.reading.asked & QUANTITIES:
        return False
    named = (c for element in best.then.elements for c in element.concepts)
    if gone_through(context) is None and all(c in QUANTITIES or c in BOUNDS for c in named):
        return True
    if len(alone.reading.words) <= _BRIEF or not alone.reading.says(*BOUNDS):
        return False
    first = resolve_scored(alone, knowledge)
    return isinstance(first.result, LimitResult) and first.score >= ANSWERING


def _asks_itself(best: Best, alone: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn asks in full for a figure of another record: "max speed with the gear down"."""
    if len(alone.reading.words) < _WHOLE or not (alone.reading.says(*BOUNDS) and alone.reading.asked & QUANTITIES):
        return False
    first = resolve_scored(alone, knowledge)
    return isinstance(first.result, LimitResult) and first.score >= _SURE and first.record != best.then.record


def _asks_the_former(best: Best, alone: Question) -> bool:
    """Return whether a turn asks what a figure was before its change, which no step tells: "what did it use to be"."""
    said = (_CHANGED in element.concepts for element in best.then.elements)
    return best.then.step is not None and alone.reading.has(_CHANGED) and not any(said)


def _takes_the_place(alone: Question, result: Result, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn only names another of what was judged or calculated last: "in a bend?", after 9 kt."""
    if isinstance(context.result, ModelResult) and isinstance(result, LimitResult):
        return True  # a figure is calculated anew
    if isinstance(context.result, Needed):  # what was asked back for is given
        return isinstance(resolve_scored(merged(alone, context, knowledge, False)[0], knowledge).result, _JUDGED)
    if not isinstance(context.result, _JUDGED):
        return False
    whole, replaces = merged(alone, context, knowledge, False)
    return replaces and isinstance(resolve_scored(whole, knowledge).result, _JUDGED)


def _is_beside_the_offer(record: str, context: Context) -> bool:
    """Return whether one thing alone was offered, and a record is another: nothing of its paragraph was told yet."""
    offered = context.result.options if isinstance(context.result, Choices) else ()
    return len(offered) == 1 and offered[0][0] != record
