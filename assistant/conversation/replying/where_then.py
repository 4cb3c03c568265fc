"""Where something is, or is done, that was just told of: "where then", "from where" asks a place before a paragraph."""

from __future__ import annotations

import re

from assistant.answering.answer import ANSWER, Answer
from assistant.conversation.composing import composed
from assistant.conversation.context import Context
from assistant.conversation.on_what_was_told.asked_then import asked_then
from assistant.conversation.reading_turns.readings import question_of
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import FactResult, ProcedureResult

_BARE = re.compile(
    r"^\W*(?:(?:and|so|ok|okay|sorry|right|but|er|um|hm|then|well)\W+)*(?:from |at |to )?(?:where|whereabouts)"
    r"(?: (?:then|exactly|now|though|again|precisely|on (?:it|them)|about))?\W*$", re.IGNORECASE)  # fmt: skip
_PLACED = re.compile(
    r"\b(?:in|on|at|behind|beside|under|by|inside|below|above|ahead|left of|right of|straight) "
    r"(?:or behind\b|the\b|each\b|a\b|an\b|its\b|ahead\b)|\bbehind\b|\bonly ahead\b", re.IGNORECASE)  # fmt: skip


def asks_bare_place(text: str) -> bool:
    """Return whether a turn asks no more than where: "sorry, where", "where then?"."""
    return len(text) < 60 and bool(_BARE.match(text))


def place_told(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return the place: of a record beside the one told, or in what was told, which did not tell where something is."""
    last, before = context.answer, context.asked
    if last is None or before is None or last.outcome != ANSWER:
        return None
    question = question_of("where", knowledge, before.variant)
    found = asked_then(question, context, knowledge)
    if found and isinstance(found[1], FactResult) and found[1] != context.result:
        answer = composed(text, found[0].with_text(text), found[1], knowledge)
        return answer, context._replace(asked=found[0], result=found[1], answer=answer)
    told = context.result
    if not isinstance(told, (FactResult, ProcedureResult)) or "where" in before.reading.words:
        return None
    return (last._replace(question=text), context) if _PLACED.search(last.text) else None
