"""Understand a turn: by itself, merged with the question before, under its conditions, or as a choice made."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.controls import asks_about, choice, corrected, follows
from assistant.conversation.following import merged_words
from assistant.knowledge.records import Model
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of
from assistant.resolving.choosing import Scored, chosen_record, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.models import bind, cued_parts
from assistant.resolving.results import (
    Choices,
    Declined,
    FactResult,
    LimitResult,
    Needed,
    Result,
    TableResult,
)  # fmt: skip
from assistant.resolving.state_questions import left_open
from assistant.understanding.matching import strange
from assistant.understanding.states import Condition, conditions

_GOOD = 0.8
_CLEAR = 0.9
"""From this score on, a few words are a question of their own."""
_LEANING = 0.66
_CLEARLY = 0.08
_FEW = 4
_OPEN = (Choices, Declined, Needed)
_ASKING = frozenset({"what", "who", "where", "why", "when", "which", "does", "do", "is", "are", "can", "may"})
_PRONOUNS = frozenset({"it", "that", "one", "they", "them", "same"})


def understood(text: str, context: Context, knowledge: Knowledge) -> tuple[Question, Result]:
    """Return the question that a turn asks, completed from the one before where it needs it, with its result."""
    picked = _picked(text, context, knowledge)
    if picked:
        return picked
    # A turn is completed from the last; what it names itself always counts.
    rest = corrected(text) if context.asked else None
    bare = text if rest is None else rest
    alone = question_of(bare, knowledge, context.variant)
    first = resolve_scored(alone, knowledge)
    before = context.asked
    if before is None or strange(alone.reading, knowledge.matcher) or alone.reading.too_long:
        return alone, first.result
    short = len(alone.reading.words) <= _FEW
    if rest is None and not short and not follows(bare) and not _incomplete(alone, first, knowledge):
        return alone, first.result
    merged, whole = _merged(alone, context, knowledge, rest is not None)
    second = _told_anew(merged, alone, context, knowledge)
    if whole and not isinstance(second.result, _OPEN):
        return merged, second.result
    if _supplies(context.result, second.result, alone):
        return merged, second.result
    if context.scenario and not alone.conditions and len(alone.reading.words) <= 2 * _FEW:
        carried = _carried(alone, context, before.conditions or context.scenario, knowledge)
        third = resolve_scored(carried, knowledge)
        if isinstance(third.result, TableResult) and third.result.asked and third.score >= first.score:
            return carried, third.result
    if rest is None and not follows(bare) and not _incomplete(alone, first, knowledge):
        return alone, first.result
    leans = _leans(bare, alone, first, knowledge)
    given = before.conditions or (context.scenario if alone.conditions else ())
    if rest is None or (_names_thing(alone, knowledge) and not leans):
        carried = _carried(alone, context, given, knowledge)
        third = resolve_scored(carried, knowledge)
        usual = bool(given) or (_names_thing(alone, knowledge) and not leans)
        if _prefers_carried(alone, first, second, third, usual, knowledge):
            return carried, third.result
    if _prefers_merged(alone, first, second, rest is not None or leans, whole, knowledge):
        return merged, second.result
    return alone, first.result


def _supplies(asked: Result | None, given: Result, alone: Question) -> bool:
    """Return whether a short turn gives what was asked back for: the calculation runs, or lacks less."""
    if not isinstance(asked, Needed) or len(alone.reading.words) > 2 * _FEW:
        return False
    if isinstance(given, Needed):
        return bool(given.record == asked.record and set(given.names) < set(asked.names))
    record = getattr(given, "model", None) or getattr(given, "schedule", None)
    return bool(record and record.id == asked.record.id)


def question_of(text: str, knowledge: Knowledge, variant: str) -> Question:
    """Return a text as a question of its own."""
    reading = knowledge.reader.read(text)
    losing = reading.asks_loss or reading.has("happens", "steps", "mode")
    found = tuple(conditions(reading, knowledge.states, knowledge.units, losing))
    named = [v for v in reading.variants if v in knowledge.variants]
    return Question(reading, found, named[-1] if named else variant or knowledge.variants[0], bool(named))


def _carried(
    alone: Question, context: Context, given: tuple[Condition, ...], knowledge: Knowledge
) -> Question:
    """Return a turn that asks something else under the conditions given before, of what was spoken of."""
    before, answer = context.asked, context.answer
    assert before is not None
    record = knowledge.base.records.get(answer.entry) if answer else None
    near = tuple(getattr(record, "sources", ()))
    named = {c.input for c in alone.conditions}
    states = [c for c in given if "." not in c.input] or given  # what follows from a state is worked out anew
    kept = tuple(c._replace(where=()) for c in states if c.input not in named)
    variant = alone.variant if alone.named_variant else before.variant
    return alone._replace(
        conditions=(*kept, *alone.conditions),
        variant=variant,
        context=True,
        background=before.reading.concepts,
        near=near,
    )


def _merged(alone: Question, context: Context, knowledge: Knowledge, corrects: bool) -> tuple[Question, bool]:
    """Return the question before with the turn in it, and whether the turn only takes the place of its parts."""
    before = context.asked
    assert before is not None
    found = merged_words(before, alone, knowledge, corrects, _parts(alone, context, knowledge))
    merged = question_of(found.words, knowledge, alone.variant if alone.named_variant else before.variant)
    if alone.named_variant:
        merged = merged._replace(variant=alone.variant, named_variant=True)
    elif not merged.named_variant:
        merged = merged._replace(variant=before.variant, named_variant=before.named_variant)
    text = alone.reading.text
    return merged._replace(reading=merged.reading._replace(text=text), context=True), found.whole


def _parts(alone: Question, context: Context, knowledge: Knowledge) -> dict[int, int]:
    """Return which amounts of the last calculation the turn's amounts stand for, as the words beside them say."""
    model = getattr(context.result, "model", None)
    if not isinstance(model, Model) or context.asked is None:
        return {}
    old = bind(model, context.asked, knowledge).places
    return {start: old[name] for name, start in cued_parts(model, alone, knowledge).items() if name in old}


def _told_anew(merged: Question, alone: Question, context: Context, knowledge: Knowledge) -> Scored:
    """Return what the merged question gives; a statement just told is not meant again by a turn that names more."""
    found = resolve_scored(merged, knowledge)
    again = found.result == context.result and isinstance(found.result, (FactResult, LimitResult))
    if again and found.record and _names_thing(alone, knowledge):
        other = resolve_scored(merged, knowledge, avoid=found.record)
        return other if not isinstance(other.result, (Declined, Choices)) else found
    return found


def _prefers_carried(
    alone: Question, first: Scored, second: Scored, third: Scored, usual: bool, knowledge: Knowledge
) -> bool:
    """Return whether the conditions and the subject alone are kept: that gives the quantity asked for, or answers
    as well. usual: the turn is a question of its own, or states were given; else only a clear win counts.
    """
    if not usual:
        answers = not isinstance(third.result, _OPEN) and (alone.reading.asked & QUANTITIES or _asks(alone))
        return bool(answers) and third.score >= max(second.score, first.score) + _CLEARLY
    asked = alone.reading.asked & QUANTITIES
    gives = quantity_of(third.result, knowledge) in asked and quantity_of(second.result, knowledge) not in asked
    if gives and third.score >= _LEANING:
        return True
    if third.record and third.record == first.record and isinstance(second.result, _OPEN):
        return not isinstance(third.result, _OPEN)  # it answers the same, and the conditions stay in mind
    margin = -0.03 if _names_thing(alone, knowledge) else 0.03
    return bool(alone.reading.mentions) and third.score >= max(second.score, first.score) + margin


def _asks(alone: Question) -> bool:
    return bool(_ASKING.intersection(alone.reading.words[:3]))


def _prefers_merged(
    alone: Question, first: Scored, second: Scored, continues: bool, whole: bool, knowledge: Knowledge
) -> bool:
    """Return whether the question before with the turn in it is meant, rather than the turn alone."""
    if isinstance(second.result, Declined):
        return False
    if isinstance(first.result, Declined):
        return True
    if isinstance(second.result, (Choices, Needed)) and not isinstance(first.result, (Choices, Needed)):
        return False
    if isinstance(first.result, (Choices, Needed)) or whole:
        return True
    if not _names_thing(alone, knowledge):
        return second.score >= min(_LEANING, first.score)
    if first.score >= _CLEAR and _leaves_out(alone, second, knowledge):
        return False
    return second.score >= (_LEANING if continues else first.score + 0.02)


def _leaves_out(alone: Question, second: Scored, knowledge: Knowledge) -> bool:
    """Return whether a record says nothing of a thing that the turn itself names."""
    if not second.record:
        return False
    said = knowledge.matcher.vocabulary(second.record)
    things = [m for m in alone.reading.mentions if not knowledge.matcher.is_soft(m)]
    return any(said.isdisjoint(m.concepts) for m in things)


def _incomplete(question: Question, scored: Scored, knowledge: Knowledge) -> bool:
    """Return whether a turn may lean on the one before: it names no thing, or does not answer by itself."""
    if isinstance(scored.result, (Declined, Choices, Needed)):
        return True
    if len(question.reading.words) <= 8 and _PRONOUNS.intersection(question.reading.words):
        return True
    few = len(question.reading.words) <= 4 and scored.score < _CLEAR
    return few or scored.score < _GOOD or not _names_thing(question, knowledge)


def _names_thing(question: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn names a thing other than those whose state it gives."""
    said = frozenset(k for c in question.conditions for k in c.where)
    return any(
        not knowledge.matcher.is_soft(m) and not is_quantity(m.concepts, knowledge) and m.start not in said
        for m in question.reading.mentions
    )


def _leans(text: str, question: Question, first: Scored, knowledge: Knowledge) -> bool:
    """Return whether a turn is plainly a fragment of the question before: "and with fans", "the retraction one"."""
    words = question.reading.words
    if len(words) > 8:
        return False
    asks = any(w in _ASKING for w in words[1:]) and not asks_about(text)
    if (follows(text) and not asks) or _PRONOUNS.intersection(words):
        return True
    return len(words) <= 4 and (first.score < _CLEAR or not _names_thing(question, knowledge))


def is_quantity(concepts: frozenset[str], knowledge: Knowledge) -> bool:
    """Return whether concepts only say what is asked for: a quantity, an aspect, a state."""
    return all(knowledge.lexicon.kinds.get(c) in ("quantity", "ask", "ask!") or c.startswith("@") for c in concepts)


def _picked(text: str, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the record chosen among those offered, by its number."""
    if not context.offered or context.asked is None:
        return None
    index = choice(text, len(context.offered))
    if isinstance(context.result, TableResult):
        index = _named_row(text, context.result, knowledge)
    elif index is None:
        index = _named_choice(text, context, knowledge)
    if index is None:
        return None
    if isinstance(context.result, TableResult):
        row = context.result.rows[index]
        left = left_open(context.asked, knowledge)
        words = [w for k, w in enumerate(context.asked.reading.words) if k not in left]
        settled = question_of(f"{' '.join(words)} , {text}", knowledge, context.asked.variant)
        return settled._replace(conditions=row.conditions), context.result._replace(rows=(row,))
    result = chosen_record(context.offered[index], context.asked, knowledge)
    return (context.asked, result) if result else None


def _named_row(text: str, shown: TableResult, knowledge: Knowledge) -> int | None:
    """Return the case, of those shown, whose things a short turn names: "system two", "the second one"."""
    reading = knowledge.reader.read(text)
    named = {i for m in reading.mentions for c in m.concepts for i in knowledge.states.by_term.get(c, ())}
    if not named or len(reading.words) > 6:
        return None if named else choice(text, len(shown.rows))
    fits = [index for index, row in enumerate(shown.rows) if named <= {c.input for c in row.conditions}]
    return fits[0] if len(fits) == 1 else None


def _named_choice(text: str, context: Context, knowledge: Knowledge) -> int | None:
    """Return the offered record that a short turn names and the others do not: "the retraction one"."""
    reading = knowledge.reader.read(text)
    content = [m for m in reading.mentions if not knowledge.matcher.is_soft(m)]
    if not content or len(reading.words) > 6 or reading.amounts or not all(context.offered):
        return None
    fits = [
        index
        for index, name in enumerate(context.offered)
        if all(not m.concepts.isdisjoint(_offer_concepts(name, knowledge)) for m in content)
    ]
    return fits[0] if len(fits) == 1 else None


def _offer_concepts(name: str, knowledge: Knowledge) -> frozenset[str]:
    record = knowledge.base.records[name]
    text = getattr(record, "of", "") or getattr(record, "title", "") or record.asks[0]
    return knowledge.phrase(text).concepts
