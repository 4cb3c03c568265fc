"""A turn that leaves out the verb of the question before: "and a hydraulic system as lost?", after when the accumulator
counts as empty. What stands before and behind its "as" takes the place of its like there.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import question_of, things_named
from assistant.conversation.reading_turns.traits import OPEN
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Result
from assistant.understanding.clauses import asking

_AS = "as"
_OPENING = frozenset(("and", "or", "but", "what", "about", "how", "then", "so", ","))
_HAS_A_VERB = frozenset(("is", "are", "was", "has", "have", "goes", "fails", "well", "soon", "long", "if"))
"""Words of a turn that leaves out no verb, or whose "as" joins no predicate: "as well"."""
_MOST, _SURE = 10, 0.8


def gapped(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the question before with what a turn without a verb puts in the place of its parts, if that is sure."""
    before, words = context.asked, list(alone.reading.words)
    if before is None or _AS not in words or len(words) > _MOST or not _HAS_A_VERB.isdisjoint(words):
        return None
    if asking(words, marks=False) or alone.reading.amounts:
        return None
    text = _filled(words, before, knowledge)
    if not text:
        return None
    question = question_of(text, knowledge, alone.variant if alone.named_variant else before.variant)
    found = resolve_scored(question, knowledge)
    if isinstance(found.result, OPEN) or found.score < _SURE or found.result == context.result:
        return None
    return question.with_text(alone.reading.text)._replace(context=True), found.result


def _filled(words: Sequence[str], before: Question, knowledge: Knowledge) -> str:
    """Return the words of the question before with the thing and the predicate of a turn, or none."""
    old = before.reading.words
    own = [word for word in words if word != "?"]
    while own and own[0] in _OPENING:
        own.pop(0)
    at = own.index(_AS)
    place = next((k for k in range(len(old) - 1, 0, -1) if old[k] == _AS), 0)
    things = [m for m in things_named(before.reading, knowledge) if m.end <= place]
    if not at or at == len(own) - 1 or not things:
        return ""
    thing = things[-1]
    return " ".join((*old[: thing.start], *own[:at], *old[thing.end : place], *own[at:], "?"))
