"""A turn on the limit spoken of: a reading held against it, the limit of a verdict, or how far a reading is from it.

"21?", after an altitude in thousands of feet, "is 200 ok", after a speed: said right after one limit, a bare reading
is of that one, though it would come nearer to another.
"""

from __future__ import annotations

from assistant.conversation.context import LATELY, Context
from assistant.conversation.control_words.controls_of_changes import believes
from assistant.conversation.on_verdicts.figures_nearby import before_the_side_question, limits_told, of_the_pair
from assistant.conversation.reading_turns.given_inputs import choices_of
from assistant.conversation.reading_turns.readings import things_named
from assistant.knowledge.records import Bands, Limit
from assistant.quantities.amounts import Amount
from assistant.resolving import limits as limit_rules
from assistant.resolving.amounts_for import fits
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.reading_asked import judging_bands, to_judge, whether_well
from assistant.resolving.results import (
    BandResult,
    ChangeResult,
    CheckResult,
    FactResult,
    LimitResult,
    ModelResult,
    Needed,
    Result,
)  # fmt: skip

_MOST_WORDS = 9
_TIMES = 3.0
"""How many times larger or smaller than a limit a bare reading of it may be."""
_LARGER = {"kg": (1000.0,), "ft": (1000.0, 100.0)}
"""By how much a bare number may stand for more: 57 for 57,000 kg, 21 for 21,000 ft, 210 for a flight level."""
_LARGE = 10_000.0
_DUST = 1e-9
_OPEN = frozenset({"why", "how", "when", "where", "who", "whose", "which", "by", "than", "per", "another"})
_READS = frozenset({
    "is", "it", "s", "showing", "shows", "show", "reads", "reading", "read", "indicating", "says", "measures",
})  # fmt: skip
_OURS = frozenset({"ours", "mine", "my", "our"})
_POINTING = frozenset({"those", "these", "other", "of", "step", "number", "no"})
_LIMIT = frozenset({"limit", "limits", "maximum", "max", "minimum", "min", "most", "least", "figure"})
_MARGIN = frozenset({"margin", "spare", "over", "under", "off", "out", "gap", "short", "far", "room"})
_BESIDE = _LIMIT | _MARGIN | {
    "what", "whats", "s", "is", "was", "were", "are", "the", "how", "much", "many", "by", "am", "i", "we", "it", "that",
    "this", "then", "so", "and", "again", "to", "go", "from", "be", "me", "of", "but", "there", "left", "have", "got",
    "do", "does", "leave", "leaves", "re", "m", "supposed", "remind", "say", "ok", "sorry", "hm", "in", "hand",
}  # fmt: skip


_LIMIT_ASKED = _LIMIT | {"temperature", "below", "under"}
_BESIDE_RESULT = frozenset({
    "temperature", "temp", "one", "for", "on", "take", "off", "take-off", "takeoff", "departure", "depart", "which",
    "below", "under", "cool", "cooling", "may", "can", "read", "reads", "they", "brake", "brakes", "hot", "hottest",
    "has", "they're", "with", "these", "at", "get", "down", "a", "?", ".", ",", "allowed", "as",
})  # fmt: skip


def of_its_kind(
    alone: Question, question: Question, result: Result, context: Context
) -> Result:
    """Return the limit that a turn asks for, where its verdict would be on a bare amount of the turn before that was
    judged in another unit there: 190 °C are no minutes.
    """
    told = context.result
    if alone.reading.amounts or not isinstance(result, CheckResult) or not isinstance(told, CheckResult):
        return result
    last, new = told.checks[0], result.checks[0]
    bare = not any(a.unit == new.unit for a in question.reading.amounts)
    other = len(result.checks) == 1 and new.unit != last.unit and abs(new.given - last.given) < _DUST
    return LimitResult((new.limit,)) if other and bare else result


def limit_spoken(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what a short turn asks of the one limit told or judged last, where it names nothing else."""
    told, words = context.result, alone.reading.words
    if context.asked is None or not words or len(words) > _MOST_WORDS or alone.conditions:
        return None
    paired = of_the_pair(alone, context, knowledge)
    aside = None if paired else before_the_side_question(alone, context, knowledge)
    if paired or aside:
        return paired or (_reading(alone, aside.result, aside.asked, knowledge) if aside else None)
    if isinstance(told, (LimitResult, CheckResult)) and whether_well(alone):
        return _asked_back(alone, told, context.asked, knowledge)
    held = isinstance(told, CheckResult) and len(told.checks) == 1 and not context.asked.reading.amounts
    held = held or isinstance(told, (ChangeResult, FactResult))
    if isinstance(told, LimitResult) or (held and alone.reading.amounts):
        return _reading(alone, told, context.asked, knowledge)
    if isinstance(told, ModelResult):
        return _of_the_calculation(alone, told, context.asked, knowledge)
    if alone.reading.amounts or not _BESIDE.issuperset(words):
        return None
    for past, before in ((told, context.asked), *((turn.result, turn.asked) for turn in context.earlier[:LATELY])):
        if isinstance(past, LimitResult):
            return None  # it is asked of that one
        if isinstance(past, (CheckResult, BandResult)):
            return _asked_again(alone, past, before, knowledge)
    return None


def _reading(
    alone: Question, told: Result | None, before: Question, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the verdict on a turn's one amount, where it is one of the limit that was told."""
    amounts, words = alone.reading.amounts, alone.reading.words
    if not _OPEN.isdisjoint(words[2:] if words[:2] == ("how", "about") else words):
        return None
    limits = limits_told(told, knowledge)
    if len(limits) != 1 or len(amounts) != 1 or believes(alone.reading.text):
        return None
    variant = alone.variant if alone.named_variant else before.variant
    limit = knowledge.record(limits[0].id, variant)
    asked = alone.reading.asked & QUANTITIES
    things = (m for m in things_named(alone.reading, knowledge) if not _READS.issuperset(m.text.split()))
    if any(things) or not asked <= {quantity_of(LimitResult((limit,)), knowledge)}:
        return None
    question = before.with_text(alone.reading.text)._replace(variant=variant)
    bands = judging_bands(limit, knowledge)
    judged = _judged_by(bands, amounts[0], limit, alone._replace(variant=variant), knowledge) if bands else None
    if judged:
        return question, judged
    amount = _of_the_limit(amounts[0], limit, alone, knowledge)
    found = limit_rules.check(limit, amount, alone, knowledge) if amount else None
    return (question, CheckResult((found,))) if found else None


def _judged_by(bands: Bands, amount: Amount, limit: Limit, alone: Question, knowledge: Knowledge) -> Result | None:
    """Return the band in which a reading of a stated figure falls, a bare one where it comes near it."""
    figure = limit.value
    if figure is None or (amount.unit is None and not figure.value / 2 <= amount.value <= figure.value * 2):
        return None
    measured = amount if amount.unit else amount._replace(unit=figure.unit)
    return limit_rules.judge(bands, alone, knowledge, (measured,))


def _asked_back(
    alone: Question, told: LimitResult | CheckResult, before: Question, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Ask for a reading of the limit told last, where it is asked if one's own is well: "is ours ok"."""
    limits = limits_told(told, knowledge)
    kind = to_judge(limits[0], alone, knowledge) if len(limits) == 1 else ""
    own = not _OURS.isdisjoint(alone.reading.words) and not things_named(alone.reading, knowledge)
    if not kind or not own:
        return None
    return before.with_text(alone.reading.text), Needed(limits[0], (f"the {kind}",), (kind,))


def _of_the_limit(amount: Amount, limit: Limit, alone: Question, knowledge: Knowledge) -> Amount | None:
    """Return an amount in the limit's unit, a bare one where it comes near it."""
    figure = limit_rules.bound_value(limit)
    if figure is None or not figure.value or not (limit.maximum or limit.minimum):
        return None
    if amount.unit not in (None, "deg"):
        return amount if fits(amount, figure.unit, knowledge.units) is not None else None
    if amount.unit == "deg":
        return amount if figure.unit in ("deg", "degC") else None
    before = alone.reading.words[amount.start - 1] if amount.start else ""
    if before in _POINTING or _tops_a_schedule(limit, knowledge):
        return None
    larger = _LARGER.get(figure.unit, ()) if figure.value >= _LARGE else ()
    for times in (1.0, *larger):
        value = amount.value * times
        if figure.value / _TIMES <= value <= figure.value * _TIMES:
            return amount._replace(value=value, unit=figure.unit)
    return None


def _tops_a_schedule(limit: Limit, knowledge: Knowledge) -> bool:
    """Return whether a limit is the most that a schedule gives: a bare number after it is one that this is read at."""
    schedules = (knowledge.base.records[name] for name in knowledge.base.ids("schedules"))
    return any(getattr(schedule, "top", "") == limit.id for schedule in schedules)


def _of_the_calculation(
    alone: Question, told: ModelResult, before: Question, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the limit that the last calculation goes to, where a turn asks for that: "what's the limit then"."""
    words = alone.reading.words
    if alone.reading.amounts or _LIMIT_ASKED.isdisjoint(words) or not (_BESIDE | _BESIDE_RESULT).issuperset(words):
        return None
    chosen = choices_of(told.model, before, knowledge)
    by_phrase = {p.strip(): value for i in told.model.inputs for w, value, _ in i.choices for p in w.split(";")}
    names = [by_phrase.get(phrase, "") for phrase in chosen.values()]
    limits = [each for name in names if isinstance(each := knowledge.base.records.get(name), Limit) and each.maximum]
    limits = limits or [limit for limit in (told.to, told.limit) if limit]
    if len(limits) != 1:
        return None
    variant = alone.variant if alone.named_variant else before.variant
    question = before.with_text(alone.reading.text)._replace(context=True, variant=variant)
    return question, LimitResult((knowledge.record(limits[0].id, variant),))


def _asked_again(
    alone: Question, told: CheckResult | BandResult, before: Question, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the limit of the verdict told last, or the verdict, which says how far a reading is from it."""
    words = alone.reading.words
    question = before.with_text(alone.reading.text)._replace(context=True)
    if not _MARGIN.isdisjoint(words):
        return question, told
    if _LIMIT.isdisjoint(words) or len(before.reading.amounts) > 1:
        return None
    if isinstance(told, CheckResult) and len(told.checks) == 1:
        limit = knowledge.record(told.checks[0].limit.id, before.variant)
        return question, LimitResult((limit,))
    return question, told


def asks_margin(alone: Question) -> bool:
    """Return whether a turn asks no more than how far a reading is from its limit."""
    words = alone.reading.words
    return not _MARGIN.isdisjoint(words) and _BESIDE.issuperset(words)
