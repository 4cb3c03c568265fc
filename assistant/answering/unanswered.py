"""Composers for what cannot be answered yet, or at all: what is missing, what may be chosen, what is not known."""

from __future__ import annotations

from assistant.answering.heard import asked_heard, choices_heard, near_heard, unexplained_heard
from assistant.answering.parts import Parts, joined, named, stop, upper
from assistant.knowledge.records import Bands, Limit
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge, Question

KNOWN_NEARBY = " Known nearby: "
"""What goes before that which is known of something near what is not."""


def needed(result: r.Needed, question: Question, know: Knowledge) -> Parts:
    """A question back, for what is missing."""
    what, whose = joined(list(result.missing)), named(result.record.of)
    single = len(result.missing) == 1
    if isinstance(result.record, Bands):
        text = f"Give {what}, to be judged: {result.record.of}."
    elif isinstance(result.record, Limit):
        text = f"Give {what}, to be held against the limit: {result.record.of}."
    else:
        text = f"Give {what}: {whose} depends on it." if single else f"Give {what}. {upper(whose)} depends on them."
    asked = result.names[0] if result.names else ""
    aloud = ((text, asked_heard(result.missing[0], asked, know)),) if result.missing else ()
    if result.hint:
        text += " " + stop(result.hint)
    return Parts(text, result.record.sources, result.record.id, needs=result.names, aloud=aloud)


def choices(result: r.Choices, question: Question, know: Knowledge) -> Parts:
    """What may be chosen, numbered."""
    names = [name for _, name in result.options]
    if len(names) == 1 and not result.about:
        return Parts(f"Do you mean: {names[0]}? Say yes, or ask in other words.", choices=tuple(names))
    listed = [f"{i}. {name}" for i, name in enumerate(names, 1)]
    lead = result.about or "Which do you mean?"
    aloud = (("; ".join(listed), choices_heard(result.options, know)),)
    return Parts(f"{lead} {'; '.join(listed)}.", choices=tuple(names), aloud=aloud)


def declined(result: r.Declined, question: Question, know: Knowledge) -> Parts:
    """That it is not known, what was not understood, and what is known nearby."""
    if result.why == "empty":
        return Parts("I read no question there. Ask about the landing gear, the brakes or the steering.")
    if result.why == "too long":
        return Parts("That is longer than I read. Ask it in a sentence or two.")
    if result.why and not result.near:
        return Parts(stop(result.why))
    words = joined([f"“{w}”" for w in result.words[:3]])
    text = f"I don't have that: nothing loaded explains {words}." if words else "I don't have that in what is loaded."
    text = stop(result.why) if result.why else text
    aloud = [(f"explains {words}.", f"explains {unexplained_heard(result.words[:3])}.")] if words else []
    if result.near:
        text += f"{KNOWN_NEARBY}{'; '.join(result.near)}."
        aloud.append(("; ".join(result.near), near_heard(result.near, know)))
    return Parts(text, aloud=tuple(aloud))
