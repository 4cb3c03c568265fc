"""Understand a turn: by itself, merged with the question before, under its conditions, or as a choice made."""

from __future__ import annotations

from typing import NamedTuple

from assistant.conversation.calculations import other_calculation, supplies, with_its_amounts
from assistant.conversation.chatter import without_chatter
from assistant.conversation.context import Context
from assistant.conversation.controls import corrected, follows
from assistant.conversation.in_scenario import clearly_carried, in_scenario
from assistant.conversation.picking import picked
from assistant.conversation.preferring import prefers_carried, prefers_merged, told_anew
from assistant.conversation.readings import carried, merged
from assistant.conversation.readings import question_of as question_of
from assistant.conversation.scenario import added
from assistant.conversation.steps import step_asked, step_by_place
from assistant.conversation.traits import FEW, OPEN, incomplete, is_fragment, names_thing, only_states, stands_alone
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Declined, Result
from assistant.understanding.matching import strange


class _Turn(NamedTuple):
    """A turn as a question of its own, with what that gives; corrects: it opens as a correction."""

    text: str
    alone: Question
    first: Scored
    corrects: bool


def understood(text: str, context: Context, knowledge: Knowledge) -> tuple[Question, Result]:
    """Return the question that a turn asks, completed from the one before where it needs it, with its result."""
    found = picked(text, context, knowledge)
    if found:
        return found
    # A turn is completed from the last; what it names itself always counts.
    rest = corrected(text) if context.asked else None
    bare = text if rest is None else rest
    alone = question_of(bare, knowledge, context.variant)
    placed = step_by_place(alone, context)
    if placed:
        return placed
    turn = _Turn(bare, alone, resolve_scored(alone, knowledge), rest is not None)
    if isinstance(turn.first.result, Declined):
        bare = without_chatter(alone, knowledge)
        heard = _answering(turn, bare, context, knowledge) if bare else turn
        turn, alone = heard, heard.alone
    lost = alone.reading.too_long or strange(alone.reading, knowledge.matcher)
    found = None if context.asked is None or lost else _completed(turn, context, knowledge)
    return found or (alone, turn.first.result)


def _answering(turn: _Turn, bare: str, context: Context, knowledge: Knowledge) -> _Turn:
    """Return a turn without its chatter, where that is answered; else as it was."""
    alone = question_of(bare, knowledge, context.variant)
    first = resolve_scored(alone, knowledge)
    if isinstance(first.result, OPEN):
        return turn
    reading = alone.reading._replace(text=turn.alone.reading.text)
    return turn._replace(text=bare, alone=alone._replace(reading=reading), first=first)


def _completed(turn: _Turn, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the question that the one before makes of a turn, or None where it stands by itself."""
    alone, first = turn.alone, turn.first
    asks_itself = not turn.corrects and not follows(turn.text) and not incomplete(alone, first, knowledge)
    if not turn.corrects:
        found = added(alone, context, knowledge)
        if found is None and alone.conditions:
            found = in_scenario(alone, first, context, knowledge)
        long = asks_itself and len(alone.reading.words) > FEW
        if found or long or stands_alone(alone, first, knowledge):
            return found or clearly_carried(alone, first, context, knowledge)
    found = other_calculation(alone, first, context, knowledge)
    return found or _merged_or_carried(turn, asks_itself, context, knowledge)


def _merged_or_carried(
    turn: _Turn, asks_itself: bool, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return a turn in the words of the question before, or under its states and on its subject, whichever is meant."""
    alone, first = turn.alone, turn.first
    whole, replaces = merged(alone, context, knowledge, turn.corrects)
    second = told_anew(whole, alone, context, knowledge)
    replaces = replaces or only_states(alone, context, knowledge)
    if supplies(context.result, second.result, alone) or (replaces and not isinstance(second.result, OPEN)):
        return whole, second.result
    found = (
        in_scenario(alone, first, context, knowledge)
        or step_asked(alone, context, knowledge)
        or with_its_amounts(alone, first, context, knowledge)
    )
    if found or asks_itself:
        return found
    leans = is_fragment(turn.text, alone, first, knowledge)
    found = _carried_on(turn, whole, second, leans, context, knowledge)
    if found is None and prefers_merged(alone, first, second, turn.corrects or leans, replaces, knowledge):
        return whole, second.result
    return found


def _carried_on(
    turn: _Turn, whole: Question, second: Scored, leans: bool, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return a turn under the states and on the subject of the question before, where that answers better."""
    own = names_thing(turn.alone, knowledge) and not leans
    if context.asked is None or (turn.corrects and not own):
        return None
    given = context.asked.conditions or (context.scenario if turn.alone.conditions else ())
    question = carried(turn.alone, context, given, knowledge)
    third = resolve_scored(question, knowledge)
    if not prefers_carried(turn.alone, turn.first, second, third, bool(given) or own, knowledge):
        return None
    # What answers the merged question as well is remembered by it: what follows goes on from the whole.
    return (whole if second.record and second.record == third.record else question), third.result
