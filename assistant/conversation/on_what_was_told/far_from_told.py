"""A turn that is asked back, for it would be answered from elsewhere and nothing speaks for that being meant.

"So what should I use?", after the least pressure of the accumulator, says nothing of lamps: a record of another
paragraph that knows little of what was spoken of was not asked for, however well a word or two fit it. It is offered
then, and not told.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.conversation.context import LATELY, Context
from assistant.conversation.on_what_was_told.wandering import is_elsewhere, record_told
from assistant.conversation.reading_turns.one_turn import Turn
from assistant.conversation.reading_turns.traits import OPEN
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.offering import offered
from assistant.resolving.results import Choices, Result

_HALF = 0.51


def far_from_told(
    question: Question, turn: Turn, result: Result, context: Context, knowledge: Knowledge
) -> Choices | None:
    """Return the record offered that a turn would be answered with, where nothing speaks for its being meant.

    question: how the turn was understood; one that was put into the words of the question before holds those.
    """
    told = record_told(result)
    record = told.id if told else ""
    if not record or context.asked is None or result in context.told_lately:
        return None
    if not all(is_elsewhere(record, past, knowledge, _HALF) for past in _lately(context)):
        return None
    if not _says_too_little(question, turn, record, context, knowledge):
        return None
    return Choices(((record, offered(knowledge, record)),))


def _says_too_little(
    question: Question, turn: Turn, record: str, context: Context, knowledge: Knowledge
) -> bool:
    """Return whether a turn answers nothing by itself and stands for no part of the question before."""
    if not isinstance(turn.first.result, OPEN):
        return False
    alone = turn.alone
    own_words = question.reading.words == alone.reading.words
    return own_words and not alone.conditions and not _knows_the_answer(record, context, knowledge)


def _lately(context: Context) -> Iterator[Context]:
    """Yield the context as it is, and as it was after each of the turns before."""
    yield context
    for turn in context.earlier[:LATELY]:
        yield context._replace(asked=turn.asked, result=turn.result, answer=turn.answer)


def _knows_the_answer(record: str, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a record knows of one of a family that was told just now: the setting, the mode."""
    said = knowledge.phrase(context.answer.text.partition(". ")[0]).concepts if context.answer else frozenset()
    told = {c for c in said if c in knowledge.lexicon.families}
    return not knowledge.matcher.vocabulary(record).isdisjoint(told)
