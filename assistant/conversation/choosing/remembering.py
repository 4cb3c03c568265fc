"""What a turn leaves behind for the next: what was asked, how it was answered, which states and variant hold on."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answering.answer import DECLINE, Answer
from assistant.conversation.choosing.returning import with_topic
from assistant.conversation.context import Context
from assistant.conversation.control_words.all_well import says_all_normal
from assistant.conversation.reading_turns.traits import STATED
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import (
    Choices,
    LimitResult,
    ModelResult,
    ProcedureResult,
    Result,
    ScheduleResult,
    TableResult,
    TablesResult,
)  # fmt: skip
from assistant.understanding.clauses import asking
from assistant.understanding.mentions import STATE
from assistant.understanding.states import Condition

_SUPPOSING = frozenset({
    "if", "suppose", "supposing", "imagine", "say", "assume", "assuming", "would", "when", "whenever", "once", "with",
    "without", "were", "could", "might", "unless", "until", "after", "before", "while", "during",
})  # fmt: skip
"""Words before a state that is only part of what is asked."""
_TOLD = (*STATED, ModelResult, ScheduleResult)
_SHOWING = frozenset(("warning", "amber", "white", "red", "show", "shown_by", "shown_to"))
"""Concepts beside a label that is told to show."""


def _only_told(question: Question) -> bool:
    """Return whether a turn tells states and nothing besides: "STEER LOST has come up", "TOW PIN memo on"."""
    said = {k for c in question.conditions for k in c.where}
    rest = (m for m in question.reading.mentions if not (m.weak or m.passing) and said.isdisjoint(m.taken))
    told = all(not _SHOWING.isdisjoint(m.concepts) or all(c.startswith(STATE) for c in m.concepts) for m in rest)
    return bool(said) and told and not question.reading.amounts and not asking(question.reading.words)


def remembered(
    context: Context, question: Question, result: Result, answer: Answer, knowledge: Knowledge
) -> Context:
    """Return the context after a turn; what was declined leaves it as it was, and is what "say again" repeats."""
    if answer.outcome == DECLINE:
        return context._replace(said=answer)
    offered = tuple(name for name, _ in result.options) if isinstance(result, Choices) else ()
    if isinstance(result, TableResult) and len(result.rows) > 1:
        offered = tuple("" for _ in result.rows)
    variant = context.variant
    if question.named_variant and not question.reading.mentions and not question.reading.amounts:
        variant = question.variant
    question = _without_what_it_takes(question, result)
    told = isinstance(result, (TableResult, TablesResult))  # what follows from them was told: they were meant
    told = told or (not isinstance(result, ProcedureResult) and _only_told(question))
    outright = {c.where for c in question.conditions if not c.implied}  # "only the accumulator" tells of all three
    given = tuple(c for c in question.conditions if not c.is_result and (told or not c.implied or c.where in outright))
    left = () if says_all_normal(question.reading) else context.scenario
    if left and _left_behind(context, question, result):
        left = tuple(Condition(c.input, knowledge.states.normal(c.input)) for c in left if not c.is_result)
    held = given or left
    if given and not question.context and not told and all(c.value == knowledge.states.normal(c.input) for c in given):
        named = {c.input for c in given}  # "the pressure of a full accumulator" mends nothing else
        held = (*(c for c in left if c.input not in named), *given)
    if left and given and not context.supposed and not question.context and _supposes(question, given):
        held = left  # what is only asked about takes no place of what was told
    return context._replace(
        variant=variant, asked=question, result=result, answer=answer, offered=offered, scenario=held,
        supposed=_supposed(context, question, given), earlier=with_topic(context), said=None,
    )  # fmt: skip


def _without_what_it_takes(question: Question, result: Result) -> Question:
    """Return a question without the state of which it is only asked when a thing counts as being in it: "when is System
    1 lost", which is told by a figure.
    """
    words = question.reading.words
    if not isinstance(result, LimitResult) or "when" not in words[:2]:
        return question
    asks = asking(words)
    kept = (c for c in question.conditions if not (c.where and asks.issuperset(c.where)))
    return question._replace(conditions=tuple(kept))


def _supposed(context: Context, question: Question, given: tuple[Condition, ...]) -> bool:
    """Return whether the states that hold are no more than part of a question: none of them was told as a fact."""
    new = [c for c in given if c.where]
    if not new:
        return context.supposed
    return _supposes(question, new) and (context.supposed or len(new) == len(given))


def _supposes(question: Question, new: Sequence[Condition]) -> bool:
    """Return whether the states that a turn gives are only asked about, or what it asks for a case."""
    words = question.reading.words
    asks = asking(words)
    placed = [c for c in new if c.where]
    told = any(asks.isdisjoint(c.where) and _SUPPOSING.isdisjoint(words[: max(c.where) + 1]) for c in placed)
    return bool(placed) and not told


def _left_behind(context: Context, question: Question, result: Result) -> bool:
    """Return whether a state that was only supposed is left by a second turn that asks in full for something else."""
    before = context.asked
    if not context.supposed or before is None:
        return False
    aside = (question.context, question.conditions, before.context, before.conditions)
    return not any(aside) and isinstance(result, _TOLD) and isinstance(context.result, _TOLD)
