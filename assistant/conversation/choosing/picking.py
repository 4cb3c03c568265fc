"""What a turn picks among the choices or the cases offered: by number, or by a name that only one of them has."""

from __future__ import annotations

import re

from assistant.conversation.context import Context
from assistant.conversation.control_words.controls import choice, corrected
from assistant.conversation.reading_turns.readings import question_of
from assistant.resolving.choosing import chosen_record, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.offering import offered
from assistant.resolving.results import Result, TableResult
from assistant.resolving.state_asked import left_open

_CASES = 2
_OTHER = r"^\W*(?:(?:and|or|no|so|ok|now|what|how|about|if|it|is|it's|for|with|say)\W+)*the other(?: one| case)?\W*$"
"""A turn that picks the case, of two, which was not told."""


def picked(text: str, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the record chosen among those offered, by its number."""
    text, context = _picked_anew(text, context)
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
    name = context.offered[index]
    result = chosen_record(name, context.asked, knowledge)
    return (_settled(name, context.asked, knowledge), result) if result else None


def _picked_anew(text: str, context: Context) -> tuple[str, Context]:
    """Return the cases that one was picked of last, with what a turn picks instead: "no wait, I meant one"."""
    past = context.earlier[0] if context.earlier else None
    if context.offered or past is None or not isinstance(past.result, TableResult) or len(past.result.rows) < _CASES:
        return text, context
    rows, told = past.result.rows, context.result
    bare = corrected(text)
    if not isinstance(told, TableResult) or told.table != past.result.table or len(told.rows) != 1:
        return text, context
    if bare is None and re.match(_OTHER, text, re.IGNORECASE) and len(rows) == _CASES and told.rows[0] in rows:
        bare = str(2 - rows.index(told.rows[0]))
    if bare is None:
        return text, context
    before = context._replace(asked=past.asked, result=past.result, answer=past.answer, offered=("",) * len(rows))
    return bare, before


def _settled(name: str, asked: Question, knowledge: Knowledge) -> Question:
    """Return the question with what was picked in its words, so that what follows goes on from it."""
    if name not in knowledge.base.records:
        return asked
    words = f"{' '.join(asked.reading.words).rstrip('?. ')} , {offered(knowledge, name)}"
    settled = question_of(words, knowledge, asked.variant)
    settled = settled._replace(conditions=asked.conditions, named_variant=asked.named_variant, context=True)
    return settled if resolve_scored(settled, knowledge).record == name else asked


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
    content = knowledge.matcher.telling(reading)
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
