"""What is said to somebody who doubts the last answer without a reason, and how many steps a procedure has."""

from __future__ import annotations

from assistant.answering.answer import ANSWER, Answer
from assistant.answering.compose import citations
from assistant.conversation.composing import finished, replied
from assistant.conversation.context import Context
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import ProcedureResult

_HOW = 'If your documents say otherwise, say "dispute" and what speaks against it.'


def doubted(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return the last answer with where it stands, and how it is disputed; None where nothing was told."""
    last = context.answer
    if last is None or last.outcome != ANSWER or not last.entry or not last.sources:
        return None
    where = "; ".join(dict.fromkeys(f"{source.document} {source.paragraph}" for source in last.sources))
    words = last.text if last.text.endswith((".", "!", "?")) else f"{last.text}."
    return finished(last._replace(question=text, text=f"{words} So says {where}. {_HOW}"), knowledge), context


def steps_counted(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return how many steps the procedure told last has; None where none was."""
    told = context.result
    if not isinstance(told, ProcedureResult):
        return None
    count = len(told.procedure.steps)
    words = f"{count} step{'s' if count != 1 else ''}: {told.procedure.title}."
    answer = replied(text, ANSWER, words, knowledge)
    return answer._replace(entry=told.procedure.id, sources=citations(told.procedure.sources, knowledge)), context
