"""What a turn asks of what was just told, in words that hold only there: "do they all come off", of the pins told of.

The ways of asking stand with the records, and hold after the paragraph of each (`understanding/then.py`).
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.control_words.controls_of_changes import asks_since
from assistant.conversation.on_figures.same_quantity import of_the_same_quantity
from assistant.conversation.on_procedures.cases_of_steps import comes_again
from assistant.conversation.on_procedures.going_on import reported_done
from assistant.conversation.on_procedures.going_through import GOING_ON, gone_through, quantities
from assistant.conversation.on_states.in_scenario import states_given
from assistant.conversation.on_states.result_asked import output_asked
from assistant.conversation.on_what_was_told.inside_told import gives_what_is_asked, on_the_subject
from assistant.conversation.on_what_was_told.meant_otherwise import (
    asks_by_itself,
    asks_what_is_shown,
    goes_on,
    is_meant_otherwise,
    is_of_the_result,
    of_another_quantity,
)
from assistant.conversation.on_what_was_told.preferring import asks_manner
from assistant.conversation.reading_turns.best_then import Best, best_then
from assistant.conversation.reading_turns.paragraphs_told import paragraphs_of, told_lately
from assistant.conversation.reading_turns.readings import merged, things_named
from assistant.knowledge.records import Procedure
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of, tells_quantity
from assistant.resolving.choosing import chosen_record, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.ranking import candidates
from assistant.resolving.results import Choices, FactResult, LimitResult, ProcedureResult, Result

_LONG = 12
_FULLY, _CLEARLY = 0.9, 0.1


def asked_then(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the record or the step of the paragraphs told lately that a short turn asks for in words of its own."""
    words = alone.reading.words
    if context.asked is None or context.answer is None or len(words) > _LONG:
        return None
    if (alone.reading.unit is not None and "how" not in words) or comes_again(words):
        return None  # the same is wanted in another unit, or what was reset shows once more
    if reported_done(alone, context) or (
        # a result of the states given, or what shows then: "does the gear still retract"
        context.scenario and (output_asked(alone, states_given(context), knowledge) or asks_what_is_shown(words))
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
            if asks_since(alone.reading.text) or "since" in words or goes_on(result, alone, context):
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


def _result(best: Best, alone: Question, context: Context, knowledge: Knowledge) -> Result | None:
    assert context.asked is not None
    variant = alone.variant if alone.named_variant else context.asked.variant
    record = knowledge.record(best.then.record, variant)
    if isinstance(record, Procedure):
        return ProcedureResult(record, best.then.step)
    found = chosen_record(best.then.record, alone._replace(variant=variant), knowledge)
    return None if of_another_quantity(found, alone, context, knowledge) else found


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
