"""What a turn asks by itself that nothing answered at once: without what it tells besides, or with a slip mended."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.one_turn import Turn
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Choices, Declined

_THIS, _FAR = "this", 5
"""What a question behind a tale may say, and the words of the shortest tale."""


def as_it_stands(
    text: str, alone: Question, corrects: bool, context: Context, knowledge: Knowledge
) -> tuple[Turn, Question]:
    """Return a turn with what it gives by itself, and the question that it is read as."""
    turn = Turn(text, alone, resolve_scored(alone, knowledge), corrects)
    if isinstance(turn.first.result, Declined):
        turn = _beside_the_story(turn, context, knowledge)
    elif _THIS in alone.reading.words[_FAR:]:
        from assistant.conversation.left_out.tales import asked_of_this_one  # few questions tell of another one first

        found = asked_of_this_one(alone, context.variant, knowledge)
        turn = turn._replace(text=found[0], alone=found[1], first=found[2]) if found else turn
        alone = turn.alone
    if isinstance(turn.first.result, (Declined, Choices)):
        turn = _as_meant(turn, context, knowledge)
        alone = turn.alone
    return turn, alone


def _beside_the_story(turn: Turn, context: Context, knowledge: Knowledge) -> Turn:
    """Return a turn without what it only tells besides, or the frame that it is put in, where what is left is
    answered; else as it was.
    """
    from assistant.conversation.left_out.chatter import without_story  # most questions need none of these
    from assistant.conversation.left_out.framing import without_frame
    from assistant.conversation.left_out.tales import without_tale

    found = without_story(turn.alone, context.variant, knowledge)
    found = found or without_frame(turn.alone, context.variant, knowledge)
    found = found or without_tale(turn.alone, context.variant, knowledge)
    return turn._replace(text=found[0], alone=found[1], first=found[2]) if found else turn


def _as_meant(turn: Turn, context: Context, knowledge: Knowledge) -> Turn:
    """Return a turn left open with a word that is a slip of another as that one, where it is answered then."""
    from assistant.conversation.left_out.real_words import with_word_meant

    found = with_word_meant(turn.alone, turn.first.result, knowledge, context.variant)
    return turn._replace(alone=found[0], first=found[1]) if found else turn
