"""The reading judged last, held against what a turn names instead: "and park?", "can I tow with it", after an
accumulator that reads 1,700 psi.

What may be done with a reading is asked once for each purpose, and only the first question gives the reading.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.names_its_own import things_of_its_own
from assistant.conversation.reading_turns.readings import question_of
from assistant.conversation.reading_turns.traits import names_unknown
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.leaning import ANSWERING
from assistant.resolving.results import BandResult, CheckResult, Result

_LONG, _MOST_BEFORE, _FEW = 8, 12, 3
_LEADING = frozenset({"and", "or", "so", "but", "then", "ok", "can", "may", "could", "is", "for", "to"})
_TIMES = frozenset({"s", "min", "h"})
_OPEN = frozenset({"why", "how", "who", "where", "when", "which", "what"})


def held_for_another(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the verdict on the reading judged last by the limit of what a short turn names."""
    before, reading = context.asked, alone.reading
    if before is None or not isinstance(context.result, (BandResult, CheckResult)) or len(reading.words) > _LONG:
        return None
    if not reading.words or reading.amounts or alone.conditions or alone.named_variant:
        return None
    if len(before.reading.amounts) != 1:
        return None
    own = things_of_its_own(alone, knowledge) if _may_be_held(alone) else []
    if not own:
        return None
    for said in _readings_told(before):
        question = question_of(f"{said} , {' '.join(reading.words)}", knowledge, before.variant)
        found = resolve_scored(question, knowledge)
        of = knowledge.phrase(str(getattr(knowledge.base.records.get(found.record), "of", ""))).concepts
        same = all(not of.isdisjoint(m.concepts) for m in own)
        if _judges_it(found, before, same, context) and not names_unknown(found.record, alone, knowledge):
            return question.with_text(reading.text)._replace(context=True), found.result
    return None


def _may_be_held(alone: Question) -> bool:
    """Return whether a turn goes on from a verdict, or asks whether something may be done."""
    words = alone.reading.words
    about = words[:2] in (("what", "about"), ("how", "about"))
    return about or (words[0] in _LEADING and _OPEN.isdisjoint(words[:2]))


def _readings_told(before: Question) -> tuple[str, ...]:
    """Return the words by which a question gave its one reading: without what it was asked for since, and without what
    follows the number, which may say for what it was judged: "330 | at the stand |".
    """
    words = [*before.reading.words]
    end = before.reading.amounts[0].end
    stop = next((k for k in range(end, len(words)) if words[k] in (",", "?", ".")), len(words))
    ends = (stop, end) if stop - end <= _FEW else (stop,)
    return tuple(dict.fromkeys(" ".join(words[:to]) for to in ends if to <= _MOST_BEFORE))


def _judges_it(found: Scored, before: Question, named: bool, context: Context) -> bool:
    """Return whether a result judges the same reading by something else than what judged it last, or is the verdict
    told, whose name holds what the turn names: "for take-off" says what was meant.
    How long something lasts is not held against other times.
    """
    result, given = found.result, before.reading.amounts[0].value
    last = context.answer.entry if context.answer else ""
    if found.score < ANSWERING or (found.record == last and not (result == context.result and named)):
        return False
    if before.reading.amounts[0].unit in _TIMES:
        return False
    if isinstance(result, BandResult):
        return result.given == given
    return isinstance(result, CheckResult) and len(result.checks) == 1 and result.checks[0].given == given
