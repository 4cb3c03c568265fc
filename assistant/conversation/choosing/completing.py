"""Understand a turn: a choice made, a first question by itself, or one that follows another."""

from __future__ import annotations

from assistant.conversation.choosing.as_it_stands import as_it_stands
from assistant.conversation.choosing.picking import picked
from assistant.conversation.choosing.refining import which_figure
from assistant.conversation.context import Context
from assistant.conversation.left_out.carriers import carried_by
from assistant.conversation.left_out.told_of_oneself import asked_alone
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Result

_BRIEF, _FEW = 8, 3


def understood(text: str, context: Context, knowledge: Knowledge) -> tuple[Question, Result]:
    """Return the question that a turn asks, completed from the one before where it needs it, with its result."""
    found = picked(text, context, knowledge)
    if found:
        return found
    if context.asked is None:
        return _by_itself(text, context, knowledge)
    from assistant.conversation.choosing.after_another import understood_after  # a first question starts without it

    return understood_after(text, context, knowledge)


def _by_itself(text: str, context: Context, knowledge: Knowledge) -> tuple[Question, Result]:
    """Return a first question with its result."""
    bare = carried_by(text, context, knowledge) or text
    alone = asked_alone(bare, knowledge, context.variant)
    turn, alone = as_it_stands(bare, alone, False, context, knowledge)
    unclear = which_figure(alone, turn.first.result, knowledge)
    if unclear is None and _may_be_vague(alone):
        from assistant.conversation.choosing.vague_opening import asked_of_what  # few questions need it

        unclear = asked_of_what(alone, turn.first.result, knowledge)
    return alone, unclear or turn.first.result


def _may_be_vague(alone: Question) -> bool:
    """Return whether a first question is short and points at something, or names hardly anything."""
    words = alone.reading.words
    return len(words) <= _BRIEF and not alone.reading.amounts and len(alone.reading.mentions) <= _FEW
