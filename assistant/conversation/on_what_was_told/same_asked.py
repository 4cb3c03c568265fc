"""The same asked of another thing, or of one that was told: "and the brake dial", after where a lever is."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import is_quantity, question_of
from assistant.conversation.reading_turns.traits import OPEN
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.changes import asks_what_was
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import ChangeResult, FactResult, LimitResult, Result
from assistant.understanding.mentions import STATE, Mention

_SURE = 0.95
_FEW, _LONG = 6, 12
_LEADING = frozenset({
    "and", "so", "ok", "okay", "then", "now", "what", "about", "how", "the", "a", "for", "of", "on", "well", "right",
})  # fmt: skip
_BEFORE = frozenset({
    "was", "were", "did", "used", "use", "to", "be", "before", "formerly", "previously", "earlier", "originally", "old",
    "former", "previous", "it", "that", "one", "figure", "value", "until", "in", "last", "revision", "limit", "s",
    "whats", "has", "been", "had", "is", "changed", "too", "as",
})  # fmt: skip
"""Words by which a turn itself asks what a figure was, beside those that only lead to a thing."""
_POINTING = ("it", "that", "this", "they", "those")
_FOLLOWING = frozenset({"thing", "one", "happens"})
_ARTICLES = frozenset({"that", "this", "the", "those"})
_COLOUR, _COUNTING = "colour", "how many"
_WHETHER = frozenset({"in", "is", "it", "that", "they", "are", "was", "shown", "surely"})
_CLEAR = 0.85
_MOST = 4


def same_asked(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return where, who, how many or what colour, asked last of one thing, for another that a turn only names."""
    before = context.asked
    told = isinstance(context.result, (FactResult, LimitResult))
    if before is None or alone.conditions or alone.reading.amounts or not told:
        return None
    aspect = [m for m in before.reading.mentions if _asks_strictly(m, knowledge) or m.text == _COUNTING]
    if isinstance(context.result, LimitResult) and not any(m.text == _COUNTING for m in aspect):
        return None
    things = knowledge.matcher.telling(alone.reading)
    if len(aspect) != 1 or len(things) != 1 or len(alone.reading.words) > _FEW or _asks_strictly(things[0], knowledge):
        return None
    rest = {w for w in alone.reading.words if w[0].isalpha() and w not in things[0].text.split()}
    if is_quantity(things[0].concepts, knowledge) or not _LEADING.issuperset(rest):
        return None
    the = "" if aspect[0].text == _COUNTING else "the "
    question = question_of(f"{aspect[0].text} {the}{things[0].text}", knowledge, before.variant)
    scored = resolve_scored(question, knowledge)
    told = isinstance(scored.result, (FactResult, LimitResult)) and scored.result != context.result
    if not told or scored.score < _SURE or knowledge.matcher.vocabulary(scored.record).isdisjoint(aspect[0].concepts):
        return None
    return question.with_text(alone.reading.text)._replace(context=True), scored.result


def former_asked(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what another figure was before, which a turn only names: "and the brake temperature", after what the
    retraction speed was before.
    """
    before = context.asked
    if before is None or alone.reading.amounts or alone.conditions:
        return None
    itself = alone.reading.has("changed") or asks_what_was(alone)
    if not itself and not isinstance(context.result, ChangeResult):
        return None
    plain = _LEADING | _BEFORE
    things = [m for m in alone.reading.mentions if not m.weak and not plain.issuperset(m.text.split())]
    said = {k for m in things for k in m.taken}
    rest = {w for k, w in enumerate(alone.reading.words) if w[0].isalpha() and k not in said}
    if not things or not plain.issuperset(rest) or len(alone.reading.words) > (_FEW if rest <= _LEADING else _LONG):
        return None
    named = " ".join(w for k, w in enumerate(alone.reading.words) if k in said)
    question = question_of(f"what was the {named} before", knowledge, before.variant)
    scored = resolve_scored(question, knowledge)
    if not isinstance(scored.result, ChangeResult) or scored.result == context.result:
        return None
    return question.with_text(alone.reading.text)._replace(context=True), scored.result


def _asks_strictly(mention: Mention, knowledge: Knowledge) -> bool:
    return any(knowledge.lexicon.kinds.get(c) == "ask!" for c in mention.concepts)


def state_of_it(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what a turn asks with the thing told last in the place of "it", where it says in what state that is:
    "say it fails", "and if that sticks".
    """
    words = list(alone.reading.words)
    at = next((k for k, w in enumerate(words) if w in _POINTING), None)
    if context.asked is None or at is None or alone.conditions or alone.reading.amounts or len(words) > _LONG:
        return None
    if not isinstance(context.result, FactResult) or not any(_says_state(m) for m in alone.reading.mentions):
        return None
    if alone.reading.asked & QUANTITIES:
        return None  # "what pressure do they run at" gives no state
    end = at + 2 if words[at + 1 : at + 2] and words[at + 1] in _FOLLOWING else at + 1
    for thing in _things_told(context, knowledge):
        text = " ".join((*words[:at], "the", thing, *words[end:]))
        question = question_of(text, knowledge, context.asked.variant)
        scored = resolve_scored(question, knowledge)
        if scored.score >= _SURE and not isinstance(scored.result, OPEN) and scored.result != context.result:
            return question.with_text(alone.reading.text)._replace(context=True), scored.result
    return None


def thing_told(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what a turn asks of a thing told last, which it names in short: "where's that button?"."""
    words = list(alone.reading.words)
    if context.asked is None or context.answer is None or alone.reading.amounts or len(words) > _LONG:
        return None
    told = [m.text.split() for m in knowledge.phrase(context.answer.text).mentions if " " in m.text]
    for k in (k for k, word in enumerate(words[1:], 1) if words[k - 1] in _ARTICLES):
        for name in (name for name in told if name[-1] == words[k] and knowledge.phrase(" ".join(name)).mentions):
            text = " ".join((*words[:k], *name, *words[k + 1 :]))
            question = question_of(text, knowledge, context.asked.variant)
            scored = resolve_scored(question, knowledge)
            if scored.score >= _CLEAR and isinstance(scored.result, (FactResult, LimitResult)):
                return question.with_text(alone.reading.text)._replace(context=True), scored.result
    return None


def _says_state(mention: Mention) -> bool:
    """Return whether a word says in what state a thing is, and is not too common to be taken for that."""
    return not mention.weak and ("stuck" in mention.concepts or any(c.startswith(STATE) for c in mention.concepts))


def _things_told(context: Context, knowledge: Knowledge) -> list[str]:
    """Return the things that the statement told last names, those first that the question before did not."""
    assert isinstance(context.result, FactResult) and context.asked is not None
    known = context.asked.reading.concepts
    told = knowledge.matcher.telling(knowledge.phrase(context.result.fact.says))
    things = [m for m in told if not is_quantity(m.concepts, knowledge) and not _says_state(m)]
    things.sort(key=lambda m: not m.concepts.isdisjoint(known))
    return [m.text for m in things][:_MOST]


def colour_again(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the statement told last, which says a colour, to a turn that only asks whether it is one: "in red?"."""
    if context.asked is None or not isinstance(context.result, FactResult) or alone.reading.amounts:
        return None
    things = knowledge.matcher.telling(alone.reading)
    families = knowledge.lexicon.families_of
    if len(things) != 1 or families(things[0].concepts) != {_COLOUR} or len(alone.reading.words) > _FEW:
        return None
    rest = {w for w in alone.reading.words if w[0].isalpha() and w not in things[0].text.split()}
    if not (_LEADING | _WHETHER).issuperset(rest) or not _WHETHER & rest:
        return None
    said = knowledge.phrase(context.result.fact.says)
    told = {m.text for m in said.mentions if _COLOUR in families(m.concepts)}
    return (context.asked.with_text(alone.reading.text), context.result) if len(told) == 1 else None
