"""What a turn turns of a calculation's inputs without a figure of its own: "make that a headwind", "fans?"."""

from __future__ import annotations

from assistant.conversation.reading_turns.given_inputs import Given
from assistant.knowledge.records import Model
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.mentions import Mention

_PROPERLY = frozenset({"properly", "correctly", "right", "should"})
_USUAL = _PROPERLY | {"book", "normal", "standard", "proper", "usual", "nominal", "correct", "published", "specified"}
"""Words for a figure as it is taken where nothing is said of it."""
_NONE = frozenset({"no", "nil", "without", "zero", "calm", "none", "any"})
_NOTHING = "0"
_MOST_WORDS = 9
_BESIDE = frozenset({"and", "the", "with", "what", "about", "but", "so", "ok", "then", "?", ".", ",", "now"})


def turned(model: Model, alone: Question, old: Given) -> tuple[Given, Given]:
    """Return an amount as another input of its kind, which a turn names without one: "make that a headwind"."""
    words = set(alone.reading.words)
    optional = [i for i in model.inputs if i.default and i.cues]
    for item in (i for i in optional if i.id not in old.amounts and not words.isdisjoint(i.cues.split())):
        for other in optional:
            alike = other.unit == item.unit and other.id in old.amounts and words.isdisjoint(other.cues.split())
            if alike:
                rest = {name: amount for name, amount in old.amounts.items() if name != other.id}
                return Given({item.id: old.amounts[other.id]}, {}), old._replace(amounts=rest)
    return Given({}, {}), old


def switched(model: Model, alone: Question, old: Given, knowledge: Knowledge) -> Given:
    """Return the other choice of one that goes by a thing on or off, which a turn names alone: "fans?"."""
    words = [w for w in alone.reading.words if w not in _BESIDE]
    for item in model.inputs if len(words) == 1 and alone.reading.mentions else ():
        phrases = [p.strip() for choice, _, _ in item.choices for p in choice.split(";")]
        things = [named for phrase in phrases if (named := thing_of(phrase, knowledge))]
        if len(things) == len(phrases) == 2 and all(things[0].concepts & m.concepts for m in alone.reading.mentions):
            return Given({}, {item.id: next(p for p in phrases if p != old.choices.get(item.id))})
    return Given({}, {})


def thing_of(phrase: str, knowledge: Knowledge) -> Mention | None:
    """Return the thing that a phrase switches: the fans of "fans on"."""
    mentions = [m for m in knowledge.phrase(phrase).mentions if not m.weak and not m.is_plain]
    named = [m for m in mentions if not all(c.startswith("@") for c in m.concepts)]
    return named[0] if len(named) == 1 and len(phrase.split()) > 1 else None


def usual_again(model: Model, alone: Question, old: Given, knowledge: Knowledge) -> tuple[str, ...]:
    """Return the input that was given, and that a turn puts back to what is taken as usual: "at its book pressure"."""
    if not may_be_usual(alone):
        return ()
    known = knowledge.matcher.vocabulary(model.id)
    for item in model.inputs:
        named = item.quantity in alone.reading.concepts or _PROPERLY.intersection(alone.reading.words)
        if item.default and item.id in old.amounts and item.unit != "count" and named:
            others = (m for m in knowledge.matcher.telling(alone.reading) if not _USUAL.issuperset(m.text.split()))
            return (item.id,) if all((known | {item.quantity}) & (m.concepts | m.implied) for m in others) else ()
    return ()


def taken_away(model: Model, alone: Question, old: Given) -> tuple[str, ...]:
    """Return the inputs given before of which a turn says that there is nothing: "no wind", after a headwind."""
    words = alone.reading.words
    if alone.reading.amounts or len(words) > _MOST_WORDS or _NONE.isdisjoint(words):
        return ()
    for item in model.inputs:
        if item.default == _NOTHING and item.id in old.amounts and item.id in words:
            return (item.id,)
        of = item.assumed.split()[1:2] if item.assumed.split()[:1] == ["no"] else []
        if of and of[0] in words:
            alike = (i.id for i in model.inputs if i.default == item.default and i.unit == item.unit)
            return tuple(name for name in alike if name in old.amounts)
    return ()


def may_be_usual(alone: Question) -> bool:
    """Return whether a short turn says of a figure that it is as usual."""
    words = alone.reading.words
    if words[:1] in (("which",), ("what",)) and words[1:2] != ("about",) and words[1:2] != ("if",):
        return False  # "which clearance is normal?" asks for the figure
    return not _USUAL.isdisjoint(words) and not alone.reading.amounts and len(words) <= _MOST_WORDS
