"""Understand a turn that follows another: by itself, merged with the question before, or under its conditions.

Nothing of it is needed for a first question, and so it is imported with the first turn that follows one.
"""

from __future__ import annotations

from assistant.conversation.choosing.as_it_stands import as_it_stands
from assistant.conversation.choosing.by_itself import another_judged, by_itself, of_another_size
from assistant.conversation.choosing.completed import completed
from assistant.conversation.choosing.picking import picked
from assistant.conversation.choosing.refining import which_figure
from assistant.conversation.choosing.switching import on_another_variant
from assistant.conversation.context import Context
from assistant.conversation.control_words.amount_instead import amount_instead
from assistant.conversation.control_words.controls import corrected
from assistant.conversation.left_out.carriers import carried_by
from assistant.conversation.left_out.talk_of_somebody import talk_of_somebody
from assistant.conversation.left_out.told_of_oneself import asked_alone
from assistant.conversation.on_calculations.before_the_aside import chosen_for_it
from assistant.conversation.on_calculations.calculations import record_of
from assistant.conversation.on_calculations.counted import counted
from assistant.conversation.on_calculations.figure_assumed import figure_assumed
from assistant.conversation.on_calculations.from_the_result import with_what_was_given
from assistant.conversation.on_calculations.open_calculation import open_calculation
from assistant.conversation.on_calculations.other_circumstances import other_circumstances
from assistant.conversation.on_calculations.unchanged import far_off, leave_asked, not_taken_in, told_already
from assistant.conversation.on_figures.both_schedules import both_at_once
from assistant.conversation.on_figures.figure_for_a_case import figure_for_a_case
from assistant.conversation.on_figures.former_of_told import former_of_told
from assistant.conversation.on_figures.in_another_unit import in_another_unit
from assistant.conversation.on_figures.other_variant import of_the_other
from assistant.conversation.on_figures.ranked import ranked
from assistant.conversation.on_figures.relative_amounts import left_hanging, with_relative
from assistant.conversation.on_figures.that_amount import with_its_condition, with_that_amount
from assistant.conversation.on_figures.told_again import asked_back, before_that, told_in_vain
from assistant.conversation.on_procedures.beside_a_step import beside_a_step
from assistant.conversation.on_procedures.cases_of_steps import case_asked
from assistant.conversation.on_procedures.steps import listed_told, step_by_place
from assistant.conversation.on_states.of_the_thing import of_the_thing
from assistant.conversation.on_states.one_of_them import one_of_them
from assistant.conversation.on_states.pointed_names import with_names
from assistant.conversation.on_states.result_asked import all_normal_again, result_asked
from assistant.conversation.on_states.scenario import without_states
from assistant.conversation.on_states.stands_apart import held, of_another_sense, stands_apart
from assistant.conversation.on_states.state_of_the_last import with_the_last
from assistant.conversation.on_states.supposed_of_it import supposed_of_it
from assistant.conversation.on_verdicts.another_quantity import by_another_quantity
from assistant.conversation.on_verdicts.basis_told import of_its_basis
from assistant.conversation.on_verdicts.judged_again import as_a_verdict
from assistant.conversation.on_verdicts.limit_spoken import of_its_kind
from assistant.conversation.on_verdicts.of_the_verdict import of_the_verdict
from assistant.conversation.on_verdicts.of_which_one import of_which_one
from assistant.conversation.on_verdicts.reading_held import held_for_another
from assistant.conversation.on_verdicts.several_readings import several_readings
from assistant.conversation.on_verdicts.stale_verdicts import by_the_bands, with_the_new_amount
from assistant.conversation.on_what_was_told.asked_then import asked_then
from assistant.conversation.on_what_was_told.elsewhere_again import elsewhere_again
from assistant.conversation.on_what_was_told.far_from_told import far_from_told
from assistant.conversation.on_what_was_told.held_to_a_step import held_to_a_step
from assistant.conversation.on_what_was_told.leaning_on_told import leant_on_told
from assistant.conversation.on_what_was_told.seen_of_it import shown_of_it
from assistant.conversation.reading_turns.one_turn import Turn
from assistant.conversation.reading_turns.traits import OPEN, names_thing
from assistant.knowledge.records import Model
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.reading_asked import lacks_its_reading
from assistant.resolving.results import (
    CheckResult,
    Declined,
    ModelResult,
    Needed,
    ProcedureResult,
    Result,
    ScheduleResult,
    TableResult,
    TablesResult,
)
from assistant.understanding.matching import strange

_SURE = 0.9
_MAY = frozenset({"can", "may", "could", "allowed", "permitted", "legal"})
_POINTING = frozenset({"it", "that", "this", "them", "those", "one"})


def understood_after(text: str, context: Context, knowledge: Knowledge) -> tuple[Question, Result]:
    """Return the question that a turn asks, completed from the one before where it needs it, with its result."""
    # A turn is completed from the last; what it names itself always counts.
    text = of_the_other(text, context, knowledge) or text
    rest = corrected(text) or amount_instead(text, knowledge)
    bare = (carried_by(text, context, knowledge) or text) if rest is None else rest
    alone = asked_alone(bare, knowledge, context.variant)
    given = with_that_amount(alone, context, knowledge) or with_relative(alone, context, knowledge)
    if given is None and left_hanging(alone, knowledge):
        return alone, asked_back(context, knowledge) or Declined(())
    whole = given is None
    given = given or with_its_condition(alone, context, knowledge)
    well = of_the_thing(alone, context, knowledge) if given is None else None
    alone = with_names(given or alone, context, knowledge)
    alone = with_the_last(alone, context, knowledge) or alone
    well = well or all_normal_again(alone, context, knowledge)
    context = without_states(alone, context, knowledge)
    well = well or elsewhere_again(alone, context, knowledge)
    well = well or talk_of_somebody(alone, context)
    well = well or (by_itself(alone, context, knowledge) if rest is None and whole else None)
    placed = well or former_of_told(alone, context, knowledge)
    placed = placed or beside_a_step(alone, context, knowledge) or case_asked(alone, context)
    placed = placed or step_by_place(alone, context) or listed_told(alone, context)
    placed = placed or chosen_for_it(alone, context, knowledge)
    placed = placed or figure_assumed(alone, context, knowledge)
    placed = placed or counted(alone, context, knowledge)
    placed = placed or ranked(alone, context, knowledge) or in_another_unit(alone, context, knowledge)
    placed = placed or of_the_verdict(alone, context, knowledge) or of_which_one(alone, context, knowledge)
    placed = placed or held_for_another(alone, context, knowledge)
    placed = placed or of_its_basis(alone, context, knowledge)
    placed = placed or figure_for_a_case(alone, context, knowledge)
    placed = placed or by_another_quantity(alone, context, knowledge)
    placed = placed or both_at_once(alone, context, knowledge)
    placed = placed or several_readings(alone, context, knowledge)
    placed = placed or open_calculation(alone, rest is not None, context, knowledge)
    placed = placed or other_circumstances(alone, context, knowledge)
    placed = placed or supposed_of_it(alone, context, knowledge)
    placed = placed or held_to_a_step(alone, context, knowledge) or shown_of_it(alone, context, knowledge)
    placed = placed or asked_then(alone, context, knowledge)
    if placed:
        return placed
    other = on_another_variant(alone, context, knowledge) or one_of_them(alone, context, knowledge)
    if other:
        return other
    turn, alone = as_it_stands(bare, alone, rest is not None, context, knowledge)
    lost = alone.reading.too_long or strange(alone.reading, knowledge.matcher)
    # A word that no record knows may still be part of a way of asking for a result: "gear up on the go-around?".
    complete = result_asked(alone, turn.first, context, knowledge) if lost else _completed(turn, context, knowledge)
    question, result = complete or (alone, turn.first.result)
    if _asked_alone(turn, question, result, context, knowledge):
        return alone._replace(held=held(turn.first.result, result, context, knowledge)), turn.first.result
    if not lost and not turn.corrects:
        said = question, result
        question, result = leant_on_told(turn.alone, turn.first, said, context, knowledge)
    question, result = as_a_verdict(alone, question, result, context, knowledge)
    result = by_the_bands(alone, result, context, knowledge)
    result = of_its_kind(alone, question, with_the_new_amount(alone, result, knowledge), context)
    beside = _asked_beside(turn, result, context, knowledge)
    if beside:
        return alone, beside
    same = told_already(alone, result, context)
    if same and context.asked:
        return context.asked.with_text(text), same
    if told_in_vain(alone, result, context, knowledge):
        if turn.first.score >= _SURE and turn.first.result != result:
            return alone, turn.first.result
        return _on_what_came_before(text, context, knowledge) or (question, asked_back(context, knowledge) or result)
    unclear = not_taken_in(alone, result, context, knowledge) or which_figure(alone, result, knowledge)
    unclear = unclear or far_off(alone, question, result, context, knowledge)
    unclear = unclear or far_from_told(question, turn, result, context, knowledge)
    return question, unclear or result


def _asked_alone(turn: Turn, question: Question, result: Result, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn is no more than what it asks by itself, whatever the one before makes of it."""
    if of_another_sense(turn.alone, question, knowledge):
        return True
    if turn.corrects:
        return False
    if _may_it_be_done(turn, result) or _drill_asked(turn, result):
        return True
    apart = stands_apart(turn.alone, turn.first, (question, result), context, knowledge)
    return apart or _calculation_asked(turn, result, context, knowledge)


def _may_it_be_done(turn: Turn, result: Result) -> bool:
    """Return whether a turn asks in full whether something may be done at an amount, and would be told a calculation:
    "at 22,000 ft can I extend", after a speed that depends on the height.
    """
    first, reading = turn.first, turn.alone.reading
    asks = not _MAY.isdisjoint(reading.words) and bool(reading.amounts) and isinstance(first.result, CheckResult)
    return asks and first.score >= _SURE and isinstance(result, (ModelResult, ScheduleResult))


def _drill_asked(turn: Turn, result: Result) -> bool:
    """Return whether a turn asks in full what to do about a label, and would be told a result: "STEER LOST what do"."""
    drill = isinstance(turn.first.result, ProcedureResult) and turn.first.score >= _SURE
    return drill and turn.alone.reading.has("steps") and isinstance(result, (TableResult, TablesResult))


def _on_what_came_before(text: str, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what a turn asks of what was told before the last, where that answers it otherwise."""
    past = before_that(context)
    found = picked(text, past, knowledge) or understood_after(text, past, knowledge) if past else None
    return None if found is None or isinstance(found[1], OPEN) or found[1] in context.told_lately else found


def _asked_beside(turn: Turn, result: Result, context: Context, knowledge: Knowledge) -> Result | None:
    """Return what a turn asks by itself, or is asked back, where the result it would have is not what it asks of."""
    if leave_asked(turn.alone, turn.first, result, context) or another_judged(turn, result, context, knowledge):
        return turn.first.result
    if of_another_size(turn.alone, result, context, knowledge):
        return asked_back(context, knowledge) or turn.first.result
    return None


def _calculation_asked(turn: Turn, result: Result, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn asks in full for another calculation than the last, and nothing spoken of completes it:
    "stopping distance?", after a cooling time, is asked back for what it lacks.
    """
    first, told = turn.first, context.result
    if not isinstance(result, (*OPEN, ModelResult)) and result != told:
        return False
    if not isinstance(first.result, Needed) or first.score < _SURE or isinstance(told, Needed):
        return False
    if not isinstance(first.result.record, Model) or not _POINTING.isdisjoint(turn.alone.reading.words):
        return False
    if not names_thing(turn.alone, knowledge):
        return False
    return first.result.record.id not in (record_of(result), record_of(told))


def _completed(turn: Turn, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the question that the one before makes of a turn, or None where it stands by itself."""
    if lacks_its_reading(turn.alone, turn.first.result, turn.first.score):
        return None
    found = completed(turn, context, knowledge)
    return with_what_was_given(turn.alone, *found, context, knowledge) if found else None
