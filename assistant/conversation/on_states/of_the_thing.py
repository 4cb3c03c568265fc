"""A turn that asks of the one thing whose state was given, and of no state of it: "who puts it in", after the steering
with a pin in; "where is that switch", after one was put off.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import question_of
from assistant.resolving.choosing import resolve
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.record_words import named_outright
from assistant.resolving.results import BothResult, FactResult, LimitResult, Result

_LONG = 7
_ASKED = ("who", "where", "function")
_POINTING = frozenset(("that", "this", "the"))


def of_the_thing(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return a short turn asked of the thing whose state was given, where a statement answers it; else None."""
    words, reading = alone.reading.words, alone.reading
    given = [c.input for c in context.scenario if not c.is_result]
    if len(given) != 1 or len(words) > _LONG or reading.amounts or not reading.has(*_ASKED):
        return None
    names = knowledge.base.terms[knowledge.base.inputs[given[0]].term].names
    found = _pointed_at(alone, names, knowledge)
    if found is None:
        return None
    at, end, name = found
    question = question_of(" ".join((*words[:at], name, *words[end:])), knowledge, context.variant)
    result = resolve(question, knowledge)
    # What is not known of "that switch" is told of no other one.
    told = isinstance(result, (FactResult, LimitResult, BothResult)) or end - at > 1
    return (question.with_text(reading.text)._replace(context=True), result) if told else None


def _pointed_at(alone: Question, names: tuple[str, ...], knowledge: Knowledge) -> tuple[int, int, str] | None:
    """Return where a turn points at a thing, and a name by which it is told from others of its kind."""
    words = alone.reading.words
    for k, word in enumerate(words):
        kind = words[k + 1 : k + 2]
        if word in _POINTING and kind:
            name = next((n for n in names if n.endswith(f" {kind[0]}")), "")
            if name:
                return k, k + 2, name
        if word == "it" and not any(named_outright(alone.reading.mentions, knowledge)):
            return k, k + 1, next((n for n in names if " " in n), names[0])
    return None
