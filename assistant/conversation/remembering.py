"""What a turn leaves behind for the next: what was asked, how it was answered, which states and variant hold on."""

from __future__ import annotations

from assistant.answering.answer import DECLINE, Answer
from assistant.conversation.context import Context
from assistant.conversation.returning import with_topic
from assistant.conversation.scenario import says_all_normal
from assistant.resolving.knowing import Question
from assistant.resolving.results import Choices, ProcedureResult, Result, TableResult, TablesResult
from assistant.understanding.clauses import asking
from assistant.understanding.mentions import STATE

_SHOWING = frozenset(("warning", "amber", "white", "red", "show", "shown_by", "shown_to"))
"""Concepts beside a label that is told to show."""


def _only_told(question: Question) -> bool:
    """Return whether a turn tells states and nothing besides: "STEER LOST has come up", "TOW PIN memo on"."""
    said = {k for c in question.conditions for k in c.where}
    rest = (m for m in question.reading.mentions if not (m.weak or m.passing) and said.isdisjoint(m.taken))
    told = all(not _SHOWING.isdisjoint(m.concepts) or all(c.startswith(STATE) for c in m.concepts) for m in rest)
    return bool(said) and told and not question.reading.amounts and not asking(question.reading.words)


def remembered(context: Context, question: Question, result: Result, answer: Answer) -> Context:
    """Return the context after a turn; what was declined leaves it as it was, and is what "say again" repeats."""
    if answer.outcome == DECLINE:
        return context._replace(said=answer)
    offered = tuple(name for name, _ in result.options) if isinstance(result, Choices) else ()
    if isinstance(result, TableResult) and len(result.rows) > 1:
        offered = tuple("" for _ in result.rows)
    variant = context.variant
    if question.named_variant and not question.reading.mentions and not question.reading.amounts:
        variant = question.variant
    told = isinstance(result, (TableResult, TablesResult))  # what follows from them was told: they were meant
    told = told or (not isinstance(result, ProcedureResult) and _only_told(question))
    outright = {c.where for c in question.conditions if not c.implied}  # "only the accumulator" tells of all three
    given = tuple(c for c in question.conditions if not c.is_result and (told or not c.implied or c.where in outright))
    return context._replace(
        variant=variant, asked=question, result=result, answer=answer, offered=offered,
        scenario=given or (() if says_all_normal(question.reading) else context.scenario),
        earlier=with_topic(context), said=None,
    )  # fmt: skip
