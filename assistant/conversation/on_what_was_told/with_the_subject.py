"""A short turn with the thing spoken of before in its words, where only what knows of both can be meant.

"And fully charged", after what an accumulator is pre-charged to, is asked of the accumulator; "do I raise the gear?",
after a tyre that burst on take-off, of a gear with such a tyre.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.like_amounts import figure
from assistant.conversation.reading_turns.readings import merged, question_of, things_named
from assistant.conversation.reading_turns.traits import OPEN
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BandResult, CheckResult, FactResult, LimitResult, ProcedureResult, Result
from assistant.understanding.mentions import Mention

_SURE = 0.9
_AHEAD = 0.02
_OF_THE_VERDICT, _BEHIND, _CERTAIN = 0.85, 0.05, 2.0
_WHETHER = frozenset({"do", "should", "can", "may", "must", "shall", "could", "would"})
_LONG = 8
_MOST = 4
_POINTING = frozenset({"it", "its", "they", "them"})
_STRANGE = frozenset({"else", "normally", "usually", "why", "again", "and", "instead"})
_FRAGMENT = frozenset({"as", "with", "without", "if", "at", "in", "on", "for", "from"})
"""Words that begin a part of the question before."""
_LEADING = frozenset({"and", "so", "ok", "okay", "then", "now", "but", "well", "right", "or"})


def with_the_subject(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the statement or the figure that knows of all that a short turn names, and of the thing spoken of before
    as well; where what the turn gives by itself knows of that thing, or answers better, there is none.
    """
    before = context.asked
    words = [w for w in alone.reading.words if w[0].isalnum()]
    while words and words[0] in _LEADING:
        words.pop(0)
    if before is None or not 1 < len(words) <= _LONG or alone.conditions or alone.reading.amounts:
        return None
    given = any(not c.is_result for c in before.conditions)
    if (given and not _asks_about(words)) or not _STRANGE.isdisjoint(words) or alone.named_variant:
        return None
    if not knowledge.matcher.telling(alone.reading):
        return None
    if words[0] in _FRAGMENT or figure(alone.reading) or merged(alone, context, knowledge, False)[1]:
        return None
    best: tuple[Question, Scored] | None = None
    after = _after_verdict(alone, context)
    leads = alone.reading.words[0] in _LEADING and words[0] == "the" and len(words) < _MOST
    about = leads or _asks_about(words)
    words = words[2:] if _asks_about(words) else words
    for thing in _things(alone, context, knowledge):
        if not after and _known_of(first, thing, knowledge):
            return None
        question = question_of(f"{' '.join(words)} , {thing.text}", knowledge, before.variant)
        found = resolve_scored(question, knowledge)
        ahead = _SURE if about else max(_SURE, _score(first) + _AHEAD)
        least = _least(first, found, context, knowledge) if after else ahead
        meant = isinstance(found.result, (FactResult, LimitResult)) and found.result not in context.told_lately
        better = found.score >= least and (best is None or found.score > best[1].score)
        if meant and better and _knows(found, thing, alone, knowledge):
            best = question, found
    return (best[0].with_text(alone.reading.text)._replace(context=True), best[1].result) if best else None


def _asks_about(words: list[str]) -> bool:
    """Return whether a turn only asks what there is of a thing: "what about the doors"."""
    return len(words) > 2 and words[0] in ("what", "how") and words[1] == "about"


def _after_verdict(alone: Question, context: Context) -> bool:
    """Return whether a turn asks whether something is to be done, after a verdict that says what is."""
    judged = isinstance(context.result, (BandResult, CheckResult, ProcedureResult))
    return judged and not _WHETHER.isdisjoint(alone.reading.words[:2])


def _least(first: Scored, found: Scored, context: Context, knowledge: Knowledge) -> float:
    """Return how well a record must answer after a verdict: what stands in its paragraph is meant before others."""
    told = knowledge.base.records.get(context.answer.entry) if context.answer else None
    record = knowledge.base.records.get(found.record) if found.record else None
    same = set(getattr(told, "sources", ())) & set(getattr(record, "sources", ()))
    return max(_OF_THE_VERDICT, _score(first) - _BEHIND) if same else _CERTAIN


def _score(first: Scored) -> float:
    return 0.0 if isinstance(first.result, OPEN) else first.score


def _known_of(first: Scored, thing: Mention, knowledge: Knowledge) -> bool:
    """Return whether what a turn gives by itself knows of a thing."""
    open_yet = isinstance(first.result, OPEN) or not first.record
    return not open_yet and not knowledge.matcher.vocabulary(first.record).isdisjoint(thing.concepts)


def _knows(found: Scored, thing: Mention, alone: Question, knowledge: Knowledge) -> bool:
    """Return whether a record knows of a thing, and of each that a turn names."""
    said = knowledge.matcher.vocabulary(found.record) if found.record else frozenset()
    named = (thing, *knowledge.matcher.telling(alone.reading))
    return all(not said.isdisjoint(m.concepts | m.implied) for m in named)


def _things(alone: Question, context: Context, knowledge: Knowledge) -> list[Mention]:
    """Return the things that the last question named that a turn does not name itself, else those before it."""
    mine = {c for m in knowledge.matcher.telling(alone.reading) for c in m.concepts}
    families = knowledge.lexicon.families_of
    own = families(mine)
    found: dict[frozenset[str], Mention] = {}
    for asked in _asked(context):
        for m in things_named(asked.reading, knowledge):
            if not (mine & m.concepts or own & families(m.concepts)):
                found.setdefault(m.concepts, m)
        if found and _POINTING.isdisjoint(asked.reading.words):
            break
    return list(found.values())[:_MOST]


def _asked(context: Context) -> Iterator[Question]:
    assert context.asked is not None
    yield context.asked
    if context.asked.background:
        yield from (past.asked for past in context.earlier[:1])
