"""A turn that asks what one sees of what was just told: "how would I know it's in?", after who inserts the pin.

Lights, messages, memos and marks are told by statements of their own, often in another paragraph. The one that tells of
the very thing spoken of is meant, before any other that the turn's few words would fit.
"""

from __future__ import annotations

import re

from assistant.conversation.context import Context
from assistant.conversation.on_what_was_told.inside_told import on_the_subject
from assistant.conversation.on_what_was_told.wandering import stands_elsewhere
from assistant.conversation.reading_turns.readings import things_named
from assistant.knowledge.records import Fact
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Declined, FactResult, Result
from assistant.understanding.mentions import Mention

_LONG = 12
_SEEING = (
    r"\b(?:how (?:would|will|do|can|could|am|are|did|should) (?:i|we|you|one|he|she|they|the \w+(?: \w+)?)"
    r"(?: going to| supposed to| ever)? (?:know|see|tell|notice|realise|spot)"
    r"|how (?:would|could|should|might) (?:i|we|you|one|he|she|they|the \w+(?: \w+)?) have (?:known|seen|told|noticed"
    r"|spotted)|what (?:would|could|should|might) (?:have )?(?:told|shown|warned|alerted|tipped|tell|warn|alert|tip)"
    r"|how.?(?:d|ll) (?:i|we|you|one|he|she|they) (?:know|see|tell|notice|spot)"
    r"|what(?:.?s| is| would| will| do| does| am| are|.?ll|.?d)?(?: i| we| you| one)?(?: going to| gonna| get to)?"
    r" (?:see|shows?|tells?|lights?|indicates?|warns?|appears?|comes? (?:up|on))"
    r"|(?:what|which|any|is there (?:a|an|any)|do i get (?:a|an|any)|what.?s the|what is the)"
    r" (?:light|lamp|message|caption|indication|warning|memo|caution|sign|annunciation|annunciator)"
    r"|(?:is|does) (?:it|that|anything|something) (?:be |get )?"
    r"(?:shown?|indicated|annunciated|light(?: up)?|come up|flagged)"
    r"|what gives it away)\b")
_TELLS = r"^([A-Z][A-Z -]+[A-Z]) \([^)]*\)(?!,)|^(A \w+ (?:band|mark|line|flag)\b.*) shows the "
_IT = frozenset({"it", "its", "they", "one", "that"})
_LEAST, _AHEAD, _LEAST_SPOKEN = 0.6, 0.1, 2


def seen_of_it(
    alone: Question, result: Result, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the statement of what shows the thing told last, to a short turn that asks what one sees of it."""
    given = _spoken_of(alone, context, knowledge)
    if given is None:
        return None
    found = _shown(given, knowledge)
    if found is None:
        return (alone, Declined(())) if stands_elsewhere(result, context, knowledge) else None
    if FactResult(found) in (result, context.result):
        return None
    return on_the_subject(alone, context, knowledge), FactResult(found)


def shown_of_it(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the statement of what shows the thing told last in the state that a turn says: "what tells me it's set",
    which goes before all that its few words could ask for.
    """
    at = next((k for k, word in enumerate(alone.reading.words) if word in _IT), len(alone.reading.words))
    states = [m.concepts for m in alone.reading.mentions if m.says_state and m.start > at]
    given = _spoken_of(alone, context, knowledge) if states else None
    found = _shown(given.union(*states), knowledge) if given else None
    if found is None or FactResult(found) == context.result or not _asked_of(found, context, knowledge):
        return None
    return on_the_subject(alone, context, knowledge), FactResult(found)


def _asked_of(fact: Fact, context: Context, knowledge: Knowledge) -> bool:
    """Return whether the thing whose case a label shows was asked about, and not only told of by the way."""
    found = re.match(_TELLS, fact.says)
    case = knowledge.phrase(fact.says[found.end() :] if found else fact.says).mentions
    things = [m for m in case if not (m.weak or m.says_state)]
    asked = context.asked.reading.concepts if context.asked else frozenset()
    return bool(things) and not asked.isdisjoint(things[0].concepts)


def _spoken_of(alone: Question, context: Context, knowledge: Knowledge) -> frozenset[str] | None:
    """Return the concepts of what was spoken of and of the states that a short turn says, where it asks what shows."""
    text = alone.reading.text[:120]
    if context.asked is None or context.answer is None or len(alone.reading.words) > _LONG:
        return None
    if alone.reading.amounts or alone.reading.asked & QUANTITIES or not re.search(_SEEING, text, flags=re.IGNORECASE):
        return None
    given = context.asked.reading.concepts | context.asked.background | _told(context, knowledge)
    if any(given.isdisjoint(m.concepts | m.implied) for m in _named(alone, knowledge)):
        return None
    return given


def _named(alone: Question, knowledge: Knowledge) -> list[Mention]:
    """Return the things that a turn names besides what shows and where it is seen."""
    text = re.sub(_SEEING, " ", alone.reading.text[:120], flags=re.IGNORECASE)
    place = r"\b(?:on|in|from) (?:the )?(?:flight deck|cockpit|here|front|seats?)\b"
    text = re.sub(place, " ", text, flags=re.IGNORECASE)
    return things_named(knowledge.reader.read(text), knowledge) if text.strip(" ?.!,") else []


def _told(context: Context, knowledge: Knowledge) -> frozenset[str]:
    """Return the concepts of what was told last, by its title and its words."""
    record = knowledge.base.records.get(context.answer.entry) if context.answer else None
    parts = [str(getattr(record, field, "")) for field in ("title", "of", "says")]
    parts.append(context.answer.text.partition(". ")[0] if context.answer else "")
    return knowledge.phrase(" ; ".join(filter(None, parts))).concepts


def _shown(given: frozenset[str], knowledge: Knowledge) -> Fact | None:
    """Return the one statement of a light, a message or a mark whose label or whose case is among some concepts."""
    ranked = []
    for name in knowledge.base.ids("facts"):
        fact = knowledge.base.records[name]
        found = re.match(_TELLS, fact.says)
        if found:
            ranked.append((_share(fact.says, found, given, knowledge), name))
    ranked.sort(reverse=True)
    if not ranked or ranked[0][0] < _LEAST or (len(ranked) > 1 and ranked[1][0] > ranked[0][0] - _AHEAD):
        return None
    record = knowledge.base.records[ranked[0][1]]
    return record if isinstance(record, Fact) else None


def _share(says: str, found: re.Match[str], given: frozenset[str], knowledge: Knowledge) -> float:
    """Return how much of what shows, or of the case that it shows, was spoken of."""
    label = knowledge.phrase(found.group(1) or found.group(2)).concepts
    if label and label <= given:
        return 2.0
    case = re.split(r"[,.;]", says[found.end() :].lstrip(" :"))[0]
    weights = {m: knowledge.matcher.mention_weight(m) for m in knowledge.phrase(case).mentions if not m.weak}
    spoken = [m for m in weights if not m.concepts.isdisjoint(given)]
    whole = sum(weights.values())
    return sum(map(weights.__getitem__, spoken)) / whole if len(spoken) >= _LEAST_SPOKEN else 0.0
