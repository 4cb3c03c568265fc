"""A turn that leans on what was just told, after it was understood: each way in which that may mean something nearer.

What stands in the paragraph told, who does it, its other case, what shows it, what becomes of the gear: each has a
module of its own and says when it is meant; a later one goes on from what an earlier one has found.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_what_was_told.gear_after import gear_after
from assistant.conversation.on_what_was_told.inside_told import asked_inside
from assistant.conversation.on_what_was_told.seen_of_it import seen_of_it
from assistant.conversation.on_what_was_told.siblings_told import sibling_told
from assistant.conversation.on_what_was_told.subject_first import subject_first
from assistant.conversation.on_what_was_told.wandering import stays_with_it
from assistant.conversation.on_what_was_told.who_then import who_then
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Result


def leant_on_told(
    alone: Question, first: Scored, meant: tuple[Question, Result], context: Context, knowledge: Knowledge
) -> tuple[Question, Result]:
    """Return what a turn asks of what was told last, or what it was understood as.

    first: what the turn gives by itself; meant: how it was understood, and what that gives.
    """
    meant = asked_inside(alone, first, meant, context, knowledge) or meant
    for found in (who_then, sibling_told, seen_of_it, gear_after, stays_with_it):
        meant = found(alone, meant[1], context, knowledge) or meant
    return subject_first(alone, first, meant[1], context, knowledge) or meant
