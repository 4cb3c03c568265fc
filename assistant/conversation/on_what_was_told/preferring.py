"""Which reading of a turn is meant: merged with the question before, carried on from it, or by itself."""

from __future__ import annotations

from itertools import pairwise

from assistant.conversation.context import Context
from assistant.conversation.on_procedures.going_through import quantities
from assistant.conversation.reading_turns.traits import (
    CLEAR,
    FAR_BETTER,
    LONG,
    OPEN,
    STATED,
    asks_anew,
    begins_asking,
    leaves_out,
    names_thing,
    names_unknown,
)  # fmt: skip
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.leaning import ANSWERING
from assistant.resolving.limits import bound_value
from assistant.resolving.ranking import candidates
from assistant.resolving.results import (
    BandResult,
    CheckResult,
    Choices,
    Declined,
    FactResult,
    LimitResult,
    ModelResult,
    Needed,
    ProcedureResult,
    Result,
    ScheduleResult,
    TableResult,
)  # fmt: skip

_LEANING = 0.66
_CLEARLY = 0.08
_OTHER = frozenset({"else", "otherwise"})
_SHORT = 6
_DUST = 1e-9
_BOUNDS = frozenset({"maximum", "minimum"})
_DOING = frozenset({"can", "do", "does", "would", "will", "could", "should", "is", "are"})
_CONFIRMING = frozenset({
    "really", "sure", "correct", "certain", "true", "seriously", "positive", "definitely", "confirm", "again", "check",
    "same", "still", "even", "always", "right", "repeat",
})  # fmt: skip


def prefers_carried(
    alone: Question, first: Scored, second: Scored, third: Scored, usual: bool, knowledge: Knowledge
) -> bool:
    """Return whether the conditions and the subject alone are kept: that gives the quantity asked for, or answers
    as well. usual: the turn is a question of its own, or states were given; else only a clear win counts.
    """
    wanted = alone.reading.asked & QUANTITIES
    if wanted and isinstance(second.result, ProcedureResult) and not _gives(second.result, wanted, knowledge):
        second = second._replace(score=0.0)
    if not usual:
        kinds = (knowledge.lexicon.kinds.get(c) for m in alone.reading.mentions for c in m.concepts)
        asks = bool(alone.reading.asked & QUANTITIES) or begins_asking(alone) or "ask!" in kinds
        sure = _CLEARLY if asks else FAR_BETTER
        answers = not isinstance(third.result, OPEN) and (asks or names_thing(alone, knowledge))
        return answers and third.score >= max(second.score, first.score) + sure
    asked = alone.reading.asked & QUANTITIES
    gives = quantity_of(third.result, knowledge) in asked and quantity_of(second.result, knowledge) not in asked
    if gives and third.score >= _LEANING:
        return True
    same = bool(third.record) and third.record == first.record
    if same and len(alone.reading.words) > LONG // 2 and quantity_of(third.result, knowledge) in asked:
        return not isinstance(third.result, OPEN)  # a long turn with its own subject asks for itself
    if same and isinstance(second.result, OPEN):
        return not isinstance(third.result, OPEN)  # it answers the same, and the conditions stay in mind
    margin = -0.03 if names_thing(alone, knowledge) else 0.03
    return bool(alone.reading.mentions) and third.score >= max(second.score, first.score) + margin


def prefers_merged(
    alone: Question, first: Scored, second: Scored, continues: bool, whole: bool, knowledge: Knowledge
) -> bool:
    """Return whether the question before with the turn in it is meant, rather than the turn alone."""
    if isinstance(second.result, Declined):
        return False
    if isinstance(first.result, Declined):
        return True
    if isinstance(second.result, (Choices, Needed)) and not isinstance(first.result, (Choices, Needed)):
        return False
    if isinstance(second.result, ProcedureResult) and alone.reading.asked & QUANTITIES and not whole:
        return _gives(second.result, alone.reading.asked & QUANTITIES, knowledge)
    if isinstance(first.result, (Choices, Needed)) or whole:
        return whole or isinstance(first.result, Choices) or not leaves_out(alone, second, knowledge)
    if not names_thing(alone, knowledge):
        clear = first.score >= CLEAR and begins_asking(alone) and bool(alone.reading.asked & QUANTITIES)
        return second.score >= (first.score + FAR_BETTER if clear else min(_LEANING, first.score))
    if first.score >= CLEAR and leaves_out(alone, second, knowledge):
        return False
    return second.score >= (_LEANING if continues else first.score + 0.02)


def of_the_quantity(question: Question, found: Scored, knowledge: Knowledge) -> Scored:
    """Return what gives the quantity that a turn asks for, before a procedure that fits hardly better: "how long?"."""
    asked = question.reading.asked & QUANTITIES
    if not asked or not isinstance(found.result, ProcedureResult) or _gives(found.result, asked, knowledge):
        return found
    least = max(_LEANING, found.score - FAR_BETTER)
    for candidate in candidates(question, knowledge):
        if candidate.score < least:
            break
        if candidate.match and quantity_of(candidate.result, knowledge) in asked:
            return Scored(candidate.result, candidate.score, candidate.match.record)
    return found


def _gives(told: ProcedureResult, asked: frozenset[str], knowledge: Knowledge) -> bool:
    """Return whether the one step that is told gives a quantity."""
    return told.step is not None and bool(asked & quantities(told.procedure.steps[told.step], knowledge))


def told_anew(merged: Question, alone: Question, context: Context, knowledge: Knowledge) -> Scored:
    """Return what the merged question gives; a statement just told is not meant again by a turn that names more."""
    found = resolve_scored(merged, knowledge)
    again = found.result == context.result and isinstance(found.result, (FactResult, LimitResult))
    if again and found.record and (names_thing(alone, knowledge) or asks_anew(alone, context, knowledge)):
        other = resolve_scored(merged, knowledge, avoid=(found.record,))
        return other if not isinstance(other.result, (Declined, Choices)) and other.score >= ANSWERING else found
    return found


def told(context: Context) -> frozenset[str]:
    """Return the records that were told last."""
    entry = {context.answer.entry} if context.answer else set()
    result = context.result
    if isinstance(result, FactResult):
        entry.add(result.fact.id)
    elif isinstance(result, LimitResult):
        entry.update(limit.id for limit in result.limits)
    return frozenset(entry)


def told_in_all(context: Context, knowledge: Knowledge) -> frozenset[str]:
    """Return the records that were told last, and those that only give a figure of them."""
    past = told(context)
    sources = {s for name in past for s in getattr(knowledge.base.records.get(name), "sources", ())}
    values = {value.value for value in context.answer.values} if context.answer else set()
    limits = (knowledge.base.records[name] for name in knowledge.base.ids("limits"))
    figures = ((limit, bound_value(limit)) for limit in limits if not sources.isdisjoint(limit.sources))
    return past.union(limit.id for limit, figure in figures if figure and figure.value in values)


def asks_other(alone: Question) -> bool:
    """Return whether a turn asks for more than what was told: "what else?"."""
    return not _OTHER.isdisjoint(alone.reading.words)


def tells_again(result: Result, alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a result is what was told last, though the turn asks or names more than the question before: it
    was not understood then. One that only wants it confirmed may be told it again.
    """
    if result != context.result or context.asked is None:
        return False
    named = isinstance(result, (TableResult, ModelResult)) and names_thing(alone, knowledge)
    if not isinstance(result, STATED) and not named:
        return False
    if asks_other(alone) or (isinstance(result, LimitResult) and (asks_manner(alone) or alone.reading.has("steps"))):
        return True
    if isinstance(result, CheckResult) and asks_manner(alone):
        return True
    if alone.reading.amounts and isinstance(result, (FactResult, LimitResult)):
        return not any(_is_told(amount.value, context) for amount in alone.reading.amounts)
    if alone.reading.amounts or alone.named_variant or not _CONFIRMING.isdisjoint(alone.reading.words):
        return False
    units = {value.unit.lower() for value in context.answer.values} if context.answer else set()
    if not units.isdisjoint(alone.reading.words):
        return False  # one of the figures told is asked for by its unit
    if isinstance(result, (CheckResult, BandResult)) and alone.reading.has("steps"):
        return False  # a verdict says what is to be done
    known = context.asked.reading.concepts | context.asked.background | _BOUNDS
    return any(not m.weak and known.isdisjoint(m.concepts) for m in alone.reading.mentions)


def asks_manner(alone: Question) -> bool:
    """Return whether a turn asks how something is done, which no figure says: "how can the driver see it?"."""
    words = alone.reading.words
    manner = any(one == "how" and other in _DOING for one, other in pairwise(words))
    return manner and not alone.reading.asked & QUANTITIES


def _is_told(value: float, context: Context) -> bool:
    """Return whether the last answer, or the question that it answered, holds a figure."""
    told = [v.value for v in context.answer.values] if context.answer else []
    asked = [a.value for a in context.asked.reading.amounts] if context.asked else []
    return any(abs(value - figure) < _DUST for figure in (*told, *asked))


def of_another_quantity(alone: Question, third: Scored, knowledge: Knowledge) -> bool:
    """Return whether a verdict takes a turn's bare number for another quantity than the turn names."""
    if not isinstance(third.result, CheckResult) or any(a.unit for a in alone.reading.amounts):
        return False
    named = {c for m in alone.reading.mentions for c in (*m.concepts, *m.implied) if c in QUANTITIES}
    return bool(named) and quantity_of(third.result, knowledge) not in named


def figure_for_another(alone: Question, second: Scored, context: Context) -> bool:
    """Return whether the figure told is asked for of what a turn names: "and for putting the gear down normally"."""
    figures = (LimitResult, CheckResult)
    asks = "for" in alone.reading.words[:2] and second.score >= ANSWERING and isinstance(context.result, figures)
    return asks and isinstance(second.result, figures) and second.result != context.result


def other_instead(alone: Question, second: Result, last: Result | None) -> bool:
    """Return whether a turn says that another thing had been "instead", and another procedure is for that."""
    if "instead" not in alone.reading.words or not isinstance(last, ProcedureResult):
        return False
    return isinstance(second, ProcedureResult) and second.procedure.id != last.procedure.id


def of_another(alone: Question, second: Scored, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn names another thing for what was asked last, and asks nothing of its own: the same record
    answers it otherwise ("nose tyres?", after a speed of the main ones; "another's 169", after a verdict).
    """
    told = context.answer.entry if context.answer else ""
    if not told or second.record != told or second.result == context.result or isinstance(second.result, OPEN):
        return False
    if not isinstance(second.result, (ModelResult, ScheduleResult, BandResult, CheckResult)):
        return False
    if names_unknown(second.record, alone, knowledge):
        return False  # "pavement width at 60", after a steering order
    asks = any(knowledge.lexicon.kinds.get(c, "")[:3] == "ask" for m in alone.reading.mentions for c in m.concepts)
    bounded = bool(alone.reading.asked & (QUANTITIES | _BOUNDS))
    return not asks and not bounded and len(alone.reading.words) <= _SHORT
