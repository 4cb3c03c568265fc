"""What leads to another outcome than the one asked of last, which a turn only names: "and the steering?", after which
single failures cost the autobrake.

Both together would be a harder question, with an answer of its own that nobody asked for.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import OPEN_WORDS, question_of
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BothResult, CauseResult, FactResult, Result
from assistant.resolving.state_causes import TAKING

_LONG = 8
_SURE = 0.9
_LEADING = frozenset({
    "and", "so", "ok", "okay", "then", "now", "what", "about", "how", "for", "or", "which", "ones", "would", "to",
    "well", "right",
})  # fmt: skip
_ASKING = OPEN_WORDS - {"what", "how", "which"}
_TOGETHER = frozenset({"both", "too", "also", "together", "well", "same"})
_EITHER = (FactResult, CauseResult)


def another_outcome(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what leads to the outcome that a short turn names, after what leads to another one was asked."""
    before, words = context.asked, alone.reading.words
    if before is None or not isinstance(context.result, _EITHER) or not before.reading.has("cause", "single"):
        return None
    if alone.reading.amounts or len(words) > _LONG or any(not c.is_result for c in alone.conditions):
        return None
    rest = list(words)
    while rest and rest[0] in _LEADING:
        rest.pop(0)
    if not rest or not (_ASKING | _TOGETHER).isdisjoint(words):
        return None
    for text in _questions(" ".join(rest).rstrip("?. "), alone, before):
        question = question_of(text, knowledge, before.variant)
        found = resolve_scored(question, knowledge)
        if found.score >= _SURE and found.result != context.result and _tells_causes(found, knowledge):
            return question.with_text(alone.reading.text)._replace(context=True), found.result
    return None


def _tells_causes(found: Scored, knowledge: Knowledge) -> bool:
    """Return whether a result tells what leads to something."""
    if isinstance(found.result, (FactResult, BothResult)):
        return bool(found.record) and "cause" in knowledge.matcher.vocabulary(found.record)
    return isinstance(found.result, CauseResult)


def _questions(outcome: str, alone: Question, before: Question) -> tuple[str, ...]:
    """Return the questions that ask for what leads to an outcome, or takes away a thing, of the kind asked before."""
    failures = "single failures" if before.reading.has("single") else "failures"
    taking = [word for word in outcome.split() if word in TAKING]
    if taking:
        return (f"which {failures} cost {' '.join(word for word in outcome.split() if word not in TAKING)}",)
    leading = f"which {failures} lead to {outcome}"
    return (leading,) if any(c.is_result for c in alone.conditions) else (f"which {failures} cost {outcome}", leading)
