"""What a turn asks of what was just told, in words that hold only there: "do they all come off", of the pins told of.

The ways of asking stand with the records, and hold after the paragraph of each (`understanding/then.py`).
"""

from __future__ import annotations

from itertools import pairwise

from assistant.conversation.best_then import Best, best_then
from assistant.conversation.cases_of_steps import comes_again
from assistant.conversation.context import Context
from assistant.conversation.controls_of_changes import asks_since
from assistant.conversation.given_inputs import choices_of
from assistant.conversation.going_on import reported_done
from assistant.conversation.going_through import GOING_ON, gone_through, quantities
from assistant.conversation.in_scenario import states_given
from assistant.conversation.inside_told import gives_what_is_asked, on_the_subject
from assistant.conversation.judged_before import calculation_judged
from assistant.conversation.names_its_own import names_its_own
from assistant.conversation.on_the_same import on_the_same
from assistant.conversation.other_orders import only_turns
from assistant.conversation.paragraphs_told import paragraphs_of, told_lately
from assistant.conversation.preferring import asks_manner
from assistant.conversation.readings import merged, things_named
from assistant.conversation.result_asked import output_asked
from assistant.conversation.same_quantity import of_the_same_quantity
from assistant.knowledge.records import Procedure
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of, tells_quantity
from assistant.resolving.choosing import Scored, chosen_record, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.leaning import ANSWERING
from assistant.resolving.model_inputs import cued_parts
from assistant.resolving.ranking import candidates
from assistant.resolving.results import (
    BandResult,
    CheckResult,
    Choices,
    Declined,
    FactResult,
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

_LONG = 12
_BRIEF, _WHOLE = 7, 5
_CHANGED = "changed"
_SURE = 0.95
_FULLY, _CLEARLY = 0.9, 0.1
_GIVING = frozenset({"with", "at", "from", "if"})
_MEMOS = frozenset({"memo", "memos"})
_ASKING = frozenset({"what", "which", "when", "where", "how"})
_JUDGED = (BandResult, CheckResult, ModelResult, ScheduleResult)


def asked_then(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the record or the step of the paragraphs told lately that a short turn asks for in words of its own."""
    words = alone.reading.words
    if context.asked is None or context.answer is None or len(words) > _LONG:
        return None
    if (alone.reading.unit is not None and "how" not in words) or comes_again(words):
        return None  # the same is wanted in another unit, or what was reset shows once more
    if reported_done(alone, context) or (
        # a result of the states given, or what shows then: "does the gear still retract"
        context.scenario and (output_asked(alone, states_given(context), knowledge) or _asks_what_shows(words))
    ):  # fmt: skip
        return None
    again = _step_told_gives(alone, context, knowledge)
    if again or is_of_the_result(alone, context, knowledge):
        return again
    figures = _figures_told(alone, context, knowledge)
    for paragraphs in told_lately(context, knowledge):
        best = _best(alone, paragraphs, figures, context, knowledge)
        result = _result(best, alone, context, knowledge) if best else None
        if best and result is not None and _gives(result, best, alone, knowledge):
            if isinstance(context.result, Choices) and best.then.record not in dict(context.result.options):
                return None  # what was only offered was not told of
            if asks_since(alone.reading.text) or "since" in words or _goes_on(result, alone, context):
                return None
            if asks_by_itself(best, result, alone, context, knowledge):
                return None
            another = of_the_same_quantity(alone, result, context, knowledge)
            result = _step_of(result, best, alone, context, knowledge)
            fuller = another or _said_more_fully(best, result, alone, context, knowledge)
            return fuller or (_remembered_by(result, alone, context, knowledge), result)
    return None


def _best(
    alone: Question, paragraphs: tuple[str, ...], figures: frozenset[int], context: Context, knowledge: Knowledge
) -> Best | None:
    """Return the way of asking after some paragraphs that explains a turn, where it may be meant."""
    best = best_then(alone, paragraphs, figures, knowledge)
    return None if best is None or is_meant_otherwise(best, alone, context, knowledge) else best


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


def _asks_what_shows(words: tuple[str, ...]) -> bool:
    """Return whether words ask what shows, of whatever kind: a memo asked for is one that a paragraph tells of, and "at
    what" asks for a figure.
    """
    return asks_what_shows(words) and _MEMOS.isdisjoint(words) and ("at", "what") not in pairwise(words)


def _of_another_quantity(result: Result | None, alone: Question, context: Context, knowledge: Knowledge) -> bool:
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


def _said_more_fully(
    best: Best, result: Result, alone: Question, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the statement or figure that a turn asks for in full with what was told in mind, where the way of asking
    leaves a thing unsaid that the turn names: "below what pressure is it empty", where "what pressure" is one.
    """
    left = [m for m in things_named(alone.reading, knowledge) if best.explained.isdisjoint(m.taken)]
    left += [m for m in alone.reading.mentions if m.says_state and not m.weak and best.explained.isdisjoint(m.taken)]
    if not left or asks_manner(alone) or not isinstance(result, (FactResult, LimitResult)):
        return None
    question = on_the_subject(alone, context, knowledge)
    found = [c for c in candidates(question, knowledge)[:12] if c.match]
    fuller = next((c for c in found if isinstance(c.result, (FactResult, LimitResult))), None)
    if fuller is None or fuller.match is None or fuller.score < _FULLY or fuller.match.barred:
        return None
    own = next((c.score for c in found if c.match and c.match.record == best.then.record), 0.0)
    if own > fuller.score - _CLEARLY or fuller.result == context.result:
        return None
    named = all(m.concepts & fuller.match.concepts for m in left)
    return (question, fuller.result) if named and gives_what_is_asked(fuller.result, alone, knowledge) else None


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


def _remembered_by(result: Result, alone: Question, context: Context, knowledge: Knowledge) -> Question:
    """Return the question that is remembered: what follows goes on from the procedure, or from the question before with
    the turn in it, where that is answered with the same.
    """
    gone = gone_through(context)
    if gone and isinstance(result, ProcedureResult) and result.procedure == gone.told.procedure:
        return gone.asked_by(alone)
    whole, _ = merged(alone, context, knowledge, False)
    if resolve_scored(whole, knowledge).result == result:
        return whole
    question = on_the_subject(alone, context, knowledge)
    assert context.asked is not None
    given = {c.input for c in question.conditions}
    kept = tuple(c for c in context.asked.conditions if not c.where and not c.is_result and c.input not in given)
    return question._replace(conditions=(*kept, *question.conditions))  # a failure stays in mind


def _figures_told(alone: Question, context: Context, knowledge: Knowledge) -> frozenset[int]:
    """Return the places of the amounts of a turn that are figures of the procedure gone through."""
    gone = gone_through(context) if alone.reading.amounts else None
    steps = gone.told.procedure.steps if gone else ()
    told = {amount.value for step in steps for amount in knowledge.phrase(step.do).amounts}
    return frozenset(k for a in alone.reading.amounts if a.value in told for k in range(a.start, a.end))


def _goes_on(result: Result, alone: Question, context: Context) -> bool:
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


def _step_told_gives(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the step told last to a turn that asks no more than a quantity which that step gives: "how much?"."""
    told, asked = context.result, alone.reading.asked & QUANTITIES
    if not isinstance(told, ProcedureResult) or told.step is None or told.step >= len(told.procedure.steps):
        return None
    if any(not m.weak and not m.concepts & QUANTITIES for m in alone.reading.mentions) or context.asked is None:
        return None
    if alone.reading.amounts or not GOING_ON.isdisjoint(alone.reading.words):
        return None
    if not asked & quantities(told.procedure.steps[told.step], knowledge):
        return None
    return context.asked.with_text(alone.reading.text), told._replace(alone=False)


def step_named_by(alone: Question, procedure: str, paragraphs: tuple[str, ...], knowledge: Knowledge) -> int | None:
    """Return the step of a procedure that a turn names in words which hold only after its paragraph."""
    places = frozenset(k for a in alone.reading.amounts for k in range(a.start, a.end))
    best = best_then(alone, paragraphs, places, knowledge)
    return best.then.step if best and best.then.record == procedure else None


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


def _result(best: Best, alone: Question, context: Context, knowledge: Knowledge) -> Result | None:
    assert context.asked is not None
    variant = alone.variant if alone.named_variant else context.asked.variant
    record = knowledge.record(best.then.record, variant)
    if isinstance(record, Procedure):
        return ProcedureResult(record, best.then.step)
    found = chosen_record(best.then.record, alone._replace(variant=variant), knowledge)
    return None if _of_another_quantity(found, alone, context, knowledge) else found


def _step_of(result: Result, best: Best, alone: Question, context: Context, knowledge: Knowledge) -> Result:
    """Return the step of another procedure that a turn asks for with its name: "and on extension, how fast?"."""
    told = getattr(context.result, "procedure", None)
    if not isinstance(result, ProcedureResult) or result.step is not None or result.procedure == told:
        return result
    named = {c for m in knowledge.phrase(result.procedure.title).mentions for c in m.concepts}
    rest = {k for m in alone.reading.mentions if not m.weak and named.isdisjoint(m.concepts) for k in m.taken}
    rest -= best.explained
    step = step_named_by(alone, result.procedure.id, paragraphs_of(result.procedure), knowledge) if rest else None
    return result if step is None else result._replace(step=step)


def _gives(result: Result, best: Best, alone: Question, knowledge: Knowledge) -> bool:
    """Return whether the quantity that a turn asks for is given, where the way of asking does not name it."""
    # "How" alone explains no "how heavy": its last word says what is asked for.
    left = (m for m in alone.reading.mentions if m.taken and max(m.taken) not in best.explained)
    asked = alone.reading.asked & QUANTITIES & frozenset(c for m in left for c in m.concepts)
    if not asked:
        return True
    if isinstance(result, ProcedureResult) and best.then.step is not None:
        return bool(asked & quantities(result.procedure.steps[best.then.step], knowledge))
    stated = isinstance(result, FactResult) and tells_quantity(result, asked, knowledge)
    return stated or quantity_of(result, knowledge) in asked
