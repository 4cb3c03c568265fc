"""A turn that only names another case of what was told: "for landing", after the greatest mass for taxiing.

What stands beside the statement or the figure told, and is asked for in its words with the turn's own in the place of
one, is meant before anything that knows of the turn's words alone.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.conversation.context import Context
from assistant.conversation.on_what_was_told.inside_told import on_the_subject
from assistant.conversation.reading_turns.readings import is_quantity
from assistant.conversation.reading_turns.traits import ASKING, OPEN
from assistant.knowledge.records import Fact, Limit, Procedure
from assistant.resolving import limits as limit_rules
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import bound_value
from assistant.resolving.results import (
    FactResult,
    LimitResult,
    NotApplicable,
    ProcedureResult,
    Result,
    records_of,
)  # fmt: skip
from assistant.understanding.mentions import Mention

_LONG = 11
_Told = Fact | Limit | Procedure
_WHOLE, _CLEARLY = 0.97, 1e-6
_ELSEWHERE = (*OPEN, FactResult, LimitResult, ProcedureResult, NotApplicable)
_ASKING = ASKING | {
    "how", "was", "were", "did", "has", "have", "will", "would", "should", "must", "could", "who", "whose", "tell",
}  # fmt: skip
_BEFORE = frozenset({
    "and", "so", "ok", "okay", "then", "now", "but", "right", "well", "hm", "um", "er", "oh", ",", "or", "yes", "fine",
})  # fmt: skip
_LEADING = frozenset({"about", "if"})
_STRANGE = frozenset({
    "why", "else", "normally", "usually", "again", "before", "instead", "not", "no", "really", "sure", "back", "same",
    "formerly", "previously", "also", "both",
})  # fmt: skip


def sibling_told(
    alone: Question, result: Result, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the statement or figure beside the one told last which a turn that asks nothing itself names the case of,
    where its result is another one's, or what was told already.
    """
    told = records_of(context.result) if context.result else ()
    if not told or context.asked is None or len(alone.reading.words) > _LONG or alone.named_variant:
        return None
    if isinstance(told[0], Limit) and len(alone.reading.amounts) == 1 and isinstance(result, (*OPEN, LimitResult)):
        found = _where_it_applies(told[0], alone, context, knowledge)
        return _of_it(found, alone, result, context, knowledge)
    again = result == context.result
    if not (again or isinstance(result, _ELSEWHERE)) or _asks(alone, knowledge) or alone.reading.amounts:
        return None
    things = knowledge.matcher.telling(alone.reading)
    if not things or any(m.is_outside for m in things):
        return None
    if not again and _stands_beside(result, told) and not _of_another_title(things, told[0], knowledge):
        return None
    return _of_it(_best(things, told, alone, context, knowledge), alone, result, context, knowledge)


def _of_it(
    found: Result | None, alone: Question, result: Result, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return what was found with the turn on the subject spoken of, unless the turn was understood so already."""
    return None if found is None or found == result else (on_the_subject(alone, context, knowledge), found)


def _asks(alone: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn asks something itself."""
    words = alone.reading.words
    if not _STRANGE.isdisjoint(words):
        return True
    first = next((k for k, word in enumerate(words) if word not in _BEFORE), 0)
    if not _ASKING.isdisjoint(words[first : first + 1]) and _LEADING.isdisjoint(words[first + 1 : first + 2]):
        return True
    if alone.reading.asked & QUANTITIES and "about" not in words:
        return True
    return any(knowledge.lexicon.kinds.get(c) == "ask!" for m in alone.reading.mentions for c in m.concepts)


def _where_it_applies(
    told: Limit, alone: Question, context: Context, knowledge: Knowledge
) -> Result | None:
    """Return the figure beside the one told that applies at an amount of another kind: "eighty degrees?", after the
    speed on a straight.
    """
    unit, (amount, *_) = alone.reading.amounts[0].unit, alone.reading.amounts
    bound = bound_value(told)
    if unit is None or bound is None or amount.unit == bound.unit or context.asked is None:
        return None
    for name in knowledge.base.ids("limits"):
        other = knowledge.record(name, context.asked.variant)
        beside = other.applies and set(other.sources) & set(told.sources) and _is_like(other, told)
        if beside and limit_rules.applies(other, alone, knowledge):
            return LimitResult((other,))
    return None


def _stands_beside(result: Result, told: tuple[_Told, ...]) -> bool:
    """Return whether a result is a statement or figure of the paragraph told last."""
    sources = {source for record in told for source in record.sources}
    return any(not sources.isdisjoint(record.sources) for record in records_of(result))


def _best(
    things: list[Mention], told: tuple[_Told, ...], alone: Question, context: Context, knowledge: Knowledge
) -> Result | None:
    """Return the one record beside those told that is asked for by a turn in the words of the question before."""
    assert context.asked is not None
    families = knowledge.lexicon.families
    mine = {families[c] for m in things for c in m.concepts if c in families}
    before = context.asked.reading.concepts | context.asked.background | _titled(told[0], knowledge)
    given = frozenset(c for c in before if families.get(c) not in mine or c in QUANTITIES)
    if not any(m.concepts.isdisjoint(before) for m in things):
        return None
    beside = frozenset(_beside(told, knowledge))
    ranked = [
        m
        for m in knowledge.matcher.rank_among(beside, alone.reading, given) if beside
        if m.covered >= _WHOLE and m.open and not m.tag and _knows_all(m.record, things, knowledge)
        and any(not thing.concepts.isdisjoint(m.concepts) for thing in things)
    ]  # fmt: skip
    ranked.sort(key=lambda m: -m.score)
    if not ranked or (len(ranked) > 1 and ranked[1].score > ranked[0].score - _CLEARLY):
        return None
    record = knowledge.record(ranked[0].record, context.asked.variant)
    if isinstance(record, Procedure):
        return ProcedureResult(record)
    return LimitResult((record,)) if isinstance(record, Limit) else FactResult(record)


def _titled(record: _Told, knowledge: Knowledge) -> frozenset[str]:
    return knowledge.phrase(record.of if isinstance(record, Limit) else record.title).concepts


def _beside(told: tuple[_Told, ...], knowledge: Knowledge) -> Iterator[str]:
    """Yield the ids of the records of the same kind in the paragraphs told, and of like figures anywhere."""
    own, first = {record.id for record in told}, told[0]
    if isinstance(first, Procedure):
        yield from _of_one_name(first, knowledge)
        return
    records, standing = knowledge.base.records, knowledge.base.standing_on
    if isinstance(first, Limit):
        beside = (name for name in knowledge.base.ids("limits") if _is_like(records[name], first))
    else:
        beside = (name for record in told for source in record.sources for name in standing.get(source, ()))
    yield from (name for name in beside if name not in own)


def _of_one_name(told: Procedure, knowledge: Knowledge) -> Iterator[str]:
    """Yield the ids of the other procedures that the same name begins: of a message, in another phase."""
    named = {c for m in knowledge.matcher.telling(knowledge.phrase(told.title)) for c in m.concepts}
    for name in knowledge.base.ids("procedures"):
        other = knowledge.base.records[name]
        first = knowledge.matcher.telling(knowledge.phrase(other.title))[:1]
        if name != told.id and first and not named.isdisjoint(first[0].concepts):
            yield name


def _of_another_title(things: list[Mention], told: _Told, knowledge: Knowledge) -> bool:
    """Return whether a turn names another of the family of a thing in a procedure's title: "on extension?"."""
    if not isinstance(told, Procedure):
        return False
    title, families = _titled(told, knowledge), knowledge.lexicon.families_of
    return any(families(m.concepts) & families(title) and title.isdisjoint(m.concepts | m.implied) for m in things)


def _is_like(one: Limit, other: Limit) -> bool:
    """Return whether two figures are of one unit."""
    mine, theirs = bound_value(one), bound_value(other)
    return mine is not None and theirs is not None and mine.unit == theirs.unit


def _knows_all(record: str, things: list[Mention], knowledge: Knowledge) -> bool:
    said = knowledge.matcher.vocabulary(record)
    return all(not said.isdisjoint(m.concepts | m.implied) for m in things if not is_quantity(m.concepts, knowledge))
