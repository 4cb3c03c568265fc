"""What a whole question is answered by, taken as one: without what only says how to answer, in the order asked for."""

from __future__ import annotations

import re

from assistant.answering.answer import ANSWER
from assistant.conversation.composing import composed
from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import question_of
from assistant.conversation.turn import answer_turn
from assistant.practice.marking.questions.asked import Asked, as_asked, ask
from assistant.practice.marking.questions.parts import FORM, POLAR, pieces
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates

ORDER_ASKED = re.compile(
    r"\b(?:in (?:what |which |the right )?order|the order of|sequence|step by step)\b", re.IGNORECASE
)
_NEAREST = 8
_PART = 0.75
"""Share of a question's words below which what was answered is one part of it."""
STEPS = 0.65
"""Score from which a procedure is meant where steps are asked for."""
_NOTHING = re.compile(
    r"(?:the |both )?(?:\w+ ){1,2}(?:centred|centered|neutral|untouched|free|at zero)$", re.IGNORECASE
)


def asked_whole(text: str, know: Knowledge) -> Asked | None:
    """Return what answers a question as a whole; asked without what only says how to answer where that keeps it off."""
    one = _told(text, know)
    left = _without_form(text) if one is None and POLAR.search(text) else text
    return one if left == text else _told(left, know)


def _without_form(text: str) -> str:
    """Return a question without its last sentences that only say how to answer: "Yes or no, and give the limit."."""
    sentences = re.split(r"(?<=[.?!])\s+", text.strip())
    while len(sentences) > 1 and all(FORM.match(piece) for piece in pieces(sentences[-1])):
        sentences.pop()
    return " ".join(sentences)


def _told(text: str, know: Knowledge) -> Asked | None:
    answer, context = answer_turn(text, Context(), know)
    if answer.outcome != ANSWER or context.asked is None or context.result is None:
        return None
    if not answer.text.startswith(composed(text, context.asked, context.result, know).text[:40]):
        return None  # it was answered in two halves, of which the context remembers the second alone
    if len(context.asked.reading.words) < _PART * len(question_of(text, know, "").reading.words):
        return None  # or the first alone
    one = _in_order(text, Asked(context.asked, context.result, answer), know)
    return _without_nothing(text, one, know) if isinstance(one.result, r.ModelResult) else one


def _in_order(text: str, one: Asked, know: Knowledge) -> Asked:
    """Return the statement of a sequence where one is asked for, though another on its subject comes first."""
    if not ORDER_ASKED.search(text) or not isinstance(one.result, r.FactResult) or "steps" in one.result.fact.answers:
        return one
    for candidate in candidates(one.question, know)[:_NEAREST]:
        fact = getattr(candidate.result, "fact", None)
        if fact and "steps" in fact.answers and candidate.match and not candidate.match.barred:
            return as_asked(text, one.question, candidate.result, know) if candidate.score >= STEPS else one
    return one


def _without_nothing(text: str, one: Asked, know: Knowledge) -> Asked:
    """Return a calculation without what is said to add nothing to it: "pedals centred"."""
    left = [piece for piece in pieces(text) if not _NOTHING.match(piece)]
    found = ask(", ".join(left), know) if len(left) < len(pieces(text)) else None
    return found[1] if found and found[1].answer.entry == one.answer.entry else one
