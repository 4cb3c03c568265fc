"""What a turn leaves behind for the next: what was asked, how it was answered, which states and variant hold on."""

from __future__ import annotations

from assistant.answering.answer import DECLINE, Answer
from assistant.conversation.context import Context
from assistant.conversation.returning import with_topic
from assistant.conversation.scenario import says_all_normal
from assistant.resolving.knowing import Question
from assistant.resolving.results import Choices, Result, TableResult, TablesResult


def remembered(context: Context, question: Question, result: Result, answer: Answer) -> Context:
    """Return the context after a turn; what was declined leaves it as it was."""
    if answer.outcome == DECLINE:
        return context
    offered = tuple(name for name, _ in result.options) if isinstance(result, Choices) else ()
    if isinstance(result, TableResult) and len(result.rows) > 1:
        offered = tuple("" for _ in result.rows)
    variant = context.variant
    if question.named_variant and not question.reading.mentions and not question.reading.amounts:
        variant = question.variant
    told = isinstance(result, (TableResult, TablesResult))  # what follows from them was told: they were meant
    outright = {c.where for c in question.conditions if not c.implied}  # "only the accumulator" tells of all three
    given = tuple(c for c in question.conditions if not c.is_result and (told or not c.implied or c.where in outright))
    return context._replace(
        variant=variant, asked=question, result=result, answer=answer, offered=offered,
        scenario=given or (() if says_all_normal(question.reading) else context.scenario),
        earlier=with_topic(context), said=None,
    )  # fmt: skip
