"""Who is meant by what was told, for a turn that only asks that: "so who do I call?", after a verdict."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_what_was_told.inside_told import on_the_subject
from assistant.conversation.reading_turns.traits import OPEN
from assistant.knowledge.records import Fact
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import FactResult, LimitResult, ProcedureResult, Result

_LONG = 8
_WHO = frozenset({"who", "whom"})
_DOING = frozenset({
    "call", "tell", "ring", "phone", "contact", "inform", "ask", "deals", "deal", "does", "do", "can", "may", "with",
    "that", "it", "i", "we", "then", "so", "and", "should", "for", "to", "this", "must", "has", "get", "let", "know",
    "ok", "now", "s", "is", "out", "in", "handles", "sorts", "about", "speak", "up", "report", "would", "them", "these",
})  # fmt: skip


def who_then(
    alone: Question, result: Result, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the one statement of the paragraphs told last that says who, where a turn asks no more and its result
    stands elsewhere.
    """
    words = {w for w in alone.reading.words if w.isalpha()}
    if context.asked is None or context.answer is None or not words & _WHO or len(words) > _LONG:
        return None
    if not words <= _WHO | _DOING or not isinstance(result, (*OPEN, FactResult, LimitResult, ProcedureResult)):
        return None
    cited = {(s.document, s.paragraph) for s in context.answer.sources}
    if isinstance(result, FactResult) and _stands_in(result.fact, cited):
        return None
    facts = (knowledge.base.records[name] for name in knowledge.base.ids("facts"))
    found = [fact for fact in facts if "who" in fact.answers and _stands_in(fact, cited)]
    return (on_the_subject(alone, context, knowledge), FactResult(found[0])) if len(found) == 1 else None


def _stands_in(fact: Fact, cited: set[tuple[str, str]]) -> bool:
    return any((s.document, s.paragraph) in cited for s in fact.sources)
