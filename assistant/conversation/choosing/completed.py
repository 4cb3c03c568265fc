"""The question that the one before makes of a turn: its readings are tried in their order.

Nothing of it is needed for a first question, and so it is imported with the first turn that follows one.
"""

from __future__ import annotations

from assistant.conversation.choosing.amending import amended
from assistant.conversation.choosing.before_refined import before_refined, on_what_was_told
from assistant.conversation.choosing.refining import refined
from assistant.conversation.context import Context
from assistant.conversation.control_words.controls import follows
from assistant.conversation.on_calculations.before_the_aside import (
    before_the_aside,
    on_the_figure_told,
    other_way_about,
)
from assistant.conversation.on_calculations.calculated_lately import calculated_lately, onward
from assistant.conversation.on_calculations.calculations import other_calculation, supplies, with_its_amounts
from assistant.conversation.on_calculations.other_basis import other_basis
from assistant.conversation.on_calculations.why_calculated import why_calculated
from assistant.conversation.on_procedures.cases_of_steps import case_asked
from assistant.conversation.on_procedures.going_on import leads_on, reported_done, what_now
from assistant.conversation.on_procedures.going_through import step_leant_on
from assistant.conversation.on_procedures.steps import step_asked, step_named
from assistant.conversation.on_states.another_outcome import another_outcome
from assistant.conversation.on_states.cause_told import cause_told
from assistant.conversation.on_states.in_scenario import (
    at_another_reading,
    clearly_carried,
    in_scenario,
    loss_asked,
    result_named,
)
from assistant.conversation.on_states.indication_asked import indication_asked
from assistant.conversation.on_states.next_mode import next_mode
from assistant.conversation.on_states.result_asked import result_asked
from assistant.conversation.on_states.scenario import other_scenario
from assistant.conversation.on_states.states_put_right import put_right
from assistant.conversation.on_verdicts.by_its_rule import by_its_rule, leave_by_its_limit
from assistant.conversation.on_verdicts.held_against import held_against, judged_lately, verdict_again, whether_within
from assistant.conversation.on_verdicts.one_of_both import one_of_both
from assistant.conversation.on_what_was_told.gapped import gapped
from assistant.conversation.on_what_was_told.in_place_of_it import in_place_of_it
from assistant.conversation.on_what_was_told.other_way import other_way
from assistant.conversation.on_what_was_told.preferring import (
    asks_manner,
    asks_other,
    figure_for_another,
    of_another,
    of_another_quantity,
    of_the_quantity,
    other_instead,
    prefers_carried,
    prefers_merged,
    tells_again,
    told,
    told_anew,
    told_in_all,
)
from assistant.conversation.on_what_was_told.said_in_full import of_the_subject, under_states
from assistant.conversation.on_what_was_told.same_asked import (
    colour_again,
    former_asked,
    same_asked,
    state_of_it,
    thing_told,
)
from assistant.conversation.on_what_was_told.told_of_it import first_of, told_again, told_of_it
from assistant.conversation.on_what_was_told.with_the_subject import with_the_subject
from assistant.conversation.reading_turns.one_turn import Turn
from assistant.conversation.reading_turns.readings import carried, merged, pointed_at
from assistant.conversation.reading_turns.traits import (
    FEW,
    FULL,
    OPEN,
    incomplete,
    is_fragment,
    leaves_out,
    names_thing,
    only_states,
    stands_alone,
)  # fmt: skip
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.controls_in_use import now_in_vain
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import (
    BandResult,
    CheckResult,
    Choices,
    FactResult,
    LimitResult,
    ModelResult,
    Needed,
    Result,
    TableResult,
)  # fmt: skip

_AHEAD = 0.05


def completed(turn: Turn, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the question that the one before makes of a turn, or None where it stands by itself."""
    alone, first = turn.alone, turn.first
    righted = put_right(alone, turn.corrects, context, knowledge)
    if righted:
        return righted
    asks_itself = not turn.corrects and not follows(turn.text) and not incomplete(alone, first, knowledge)
    further = None if turn.corrects else _fails_as_well(alone, context, knowledge)
    if further:
        return further
    again = None if turn.corrects else _of_what_was_set(alone, context, knowledge)
    again = again or gapped(alone, context, knowledge)
    again = again or (None if turn.corrects else by_its_rule(alone, first, context, knowledge))
    again = again or (None if turn.corrects else leave_by_its_limit(alone, context, knowledge))
    again = again or other_way_about(alone, context, knowledge)
    again = again or other_basis(alone, context, knowledge)
    again = again or amended(alone, first, context, knowledge) or refined(alone, first, context, knowledge)
    if again:
        return again
    if not turn.corrects:
        found = reported_done(alone, context) or leads_on(alone, context, knowledge)
        found = found or case_asked(alone, context) or what_now(alone, context)
        found = found or cause_told(alone, context, knowledge)
        if found:
            return found
        found = step_named(alone, first.score, context, knowledge)
        found = found or step_leant_on(alone, first.score, context, knowledge)
        if found and not _another_asked(alone, context, knowledge):
            return found
        found = next_mode(alone, context, knowledge) or indication_asked(alone, context, knowledge)
        found = found or another_outcome(alone, context, knowledge) or loss_asked(alone, context, knowledge)
        found = found or result_named(alone, context, knowledge)
        found = found or result_asked(alone, first, context, knowledge)
        found = found or other_scenario(alone, context, knowledge)
        found = found or colour_again(alone, context, knowledge)
        found = found or other_way(alone, context, knowledge)
        found = found or state_of_it(alone, context, knowledge) or same_asked(alone, context, knowledge)
        found = found or former_asked(alone, context, knowledge)
        if found is None and isinstance(first.result, OPEN):
            found = thing_told(alone, context, knowledge)
        found = found or why_calculated(alone, first, context, knowledge)
        found = found or on_the_figure_told(alone, first, context, knowledge)
        found = found or before_the_aside(alone, first, context, knowledge)
        found = found or calculated_lately(alone, first, context, knowledge)
        found = found or onward(alone, first, context, knowledge)
        found = found or in_place_of_it(alone, first, context, knowledge)
        found = found or _told_of_states(alone, first, context, knowledge)
        found = found or of_the_subject(alone, first, context, knowledge)
        found = found or with_the_subject(alone, first, context, knowledge)
        if found is None and alone.conditions:
            found = in_scenario(alone, first, context, knowledge)
        long = asks_itself and len(alone.reading.words) > FEW
        if found or long or stands_alone(alone, first, knowledge):
            return found or clearly_carried(alone, first, context, knowledge)
    found = _reading_given(alone, first, turn.corrects, context, knowledge)
    found = found or other_calculation(alone, first, context, knowledge)
    found = found or _merged_or_carried(turn, asks_itself, context, knowledge)
    return None if found and _asks_another(turn, found[1], context) else found


def _asks_another(turn: Turn, result: Result, context: Context) -> bool:
    """Return whether a turn that would be told the figure told last again asks for another one in full."""
    told = context.result
    if turn.corrects or not isinstance(result, LimitResult) or not isinstance(told, LimitResult):
        return False
    if result.limits != told.limits:
        return False
    first, whole = turn.first, len(turn.alone.reading.words) >= FEW
    another = isinstance(first.result, LimitResult) and first.result.limits != result.limits
    return whole and another and first.score >= FULL


def _of_what_was_set(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what a turn's states make of the setting told last, or the one of two things whose reading was told."""
    if context.asked is None:
        return None
    found = now_in_vain(alone, context.asked, context.result, knowledge)
    return found or one_of_both(alone, context, knowledge)


def _fails_as_well(
    alone: Question, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return what holds with a failure more, after a verdict on the reading that told of the one before."""
    failures = knowledge.states.failures
    failed = any(c.input in failures and c.value == knowledge.states.failed(c.input) for c in alone.conditions)
    if not failed or not context.scenario or not isinstance(context.result, (CheckResult, BandResult)):
        return None
    return None if alone.reading.amounts else other_scenario(alone, context, knowledge)


def _told_of_states(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return what is told of a short turn under the states given; what follows from them goes before a statement."""
    said = under_states(alone, first, context, knowledge)
    if said is None or not isinstance(said[1], FactResult):
        return said
    follows_from = in_scenario(alone, first, context, knowledge)
    if follows_from is None or not isinstance(follows_from[1], TableResult):
        return said
    return follows_from


def _reading_given(
    alone: Question, first: Scored, corrects: bool, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return what another reading makes of the results told last, or what judges it of what was spoken of before."""
    if not alone.reading.amounts or isinstance(context.result, (ModelResult, Needed, CheckResult)):
        return None
    whole, _ = merged(alone, context, knowledge, corrects)
    row = at_another_reading(alone, whole, context, knowledge)
    if row:
        return whole, row
    return judged_lately(alone, first, told_anew(whole, alone, context, knowledge).result, context, knowledge)


def _merged_or_carried(
    turn: Turn, asks_itself: bool, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return a turn in the words of the question before, or under its states and on its subject, whichever is meant."""
    alone, first = turn.alone, turn.first
    whole, replaces = merged(alone, context, knowledge, turn.corrects)
    second = told_anew(whole, alone, context, knowledge)
    replaces = replaces or only_states(alone, context, knowledge)
    again = tells_again(second.result, alone, context, knowledge)
    # One word in the place of its like asks the same of it, though that be asked back: "dry?", after a wet runway.
    brief = len(alone.reading.words) < FEW - 1 and isinstance(second.result, Choices)
    takes = replaces and not again and (brief or not isinstance(second.result, OPEN))
    found = None if turn.corrects else before_refined(alone, second, context, knowledge)
    found = found or (on_what_was_told(alone, second, context, knowledge) if takes else None)
    if found is None and (second.result == context.result or not takes):
        found = step_asked(alone, context, knowledge)
    found = found or verdict_again(alone, context, knowledge)
    if found is None and not isinstance(first.result, CheckResult):
        found = whether_within(alone, context, knowledge)
    if found:
        return found
    meant = takes or supplies(context.result, second.result, alone) or of_another(alone, second, context, knowledge)
    meant = meant or figure_for_another(alone, second, context)
    if meant or other_instead(alone, second.result, context.result):
        return whole, second.result
    found = in_scenario(alone, first, context, knowledge) or with_its_amounts(alone, first, context, knowledge)
    if found or asks_itself:
        return found
    if again or isinstance(second.result, OPEN):
        checked = held_against(alone, context, knowledge)
        if checked:
            return checked
    if again:
        return told_of_it(alone, first, context, knowledge) or told_again(alone, first, whole, second, knowledge)
    leans = is_fragment(turn.text, alone, first, knowledge)
    found = _carried_on(turn, whole, second, leans, context, knowledge)
    if found is None and prefers_merged(alone, first, second, turn.corrects or leans, replaces, knowledge):
        return whole, second.result
    return found


def _another_asked(alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn puts a thing in the place of its like, and so asks for another procedure."""
    whole, replaces = merged(alone, context, knowledge, False)
    result = resolve_scored(whole, knowledge).result if replaces else context.result
    gone, told = (getattr(each, "procedure", None) for each in (result, context.result))
    return result != context.result and not isinstance(result, OPEN) and (gone is None or gone != told)


def _carried_on(
    turn: Turn, whole: Question, second: Scored, leans: bool, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return a turn under the states and on the subject of the question before, where that answers better."""
    own = names_thing(turn.alone, knowledge) and not leans
    if context.asked is None or (turn.corrects and not own):
        return None
    given = context.asked.conditions or (context.scenario if turn.alone.conditions else ())
    question = carried(turn.alone, context, given, knowledge)
    third = of_the_quantity(question, resolve_scored(question, knowledge), knowledge)
    if third.record and third.result in context.told_lately:
        more = asks_other(turn.alone) or (isinstance(third.result, LimitResult) and asks_manner(turn.alone))
        past = (told_in_all(context, knowledge) if more else told(context)) | {third.record}
        other = resolve_scored(question, knowledge, avoid=past)
        behind = _AHEAD if third.result == context.result else 2 * _AHEAD
        as_well = more or other.score >= third.score - behind
        third = other if as_well and not isinstance(other.result, OPEN) else third
    spoken = pointed_at(turn.alone, context, knowledge)
    first = first_of(turn.alone, turn.first, third, context, knowledge)
    few = len(turn.alone.reading.words) < FEW and leaves_out(turn.alone, third, knowledge)
    if few or of_another_quantity(turn.alone, third, knowledge):
        return None
    if not prefers_carried(turn.alone, first, second, third, bool(given or spoken) or own, knowledge):
        return None
    # What answers the merged question as well is remembered by it: what follows goes on from the whole.
    return (whole if second.record and second.record == third.record else question), third.result
