"""An amount held against the figure of a step: "is 220 slow enough?", "five minutes do?", after a procedure told.

Such a turn asks of the step that was told last, that it names, or that alone has a figure of its kind; what is loaded
of that figure judges it.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.conversation.asked_then import step_named_by
from assistant.conversation.context import Context
from assistant.conversation.controls_of_changes import believes
from assistant.conversation.going_through import Gone, gone_through, stems
from assistant.conversation.paragraphs_told import paragraphs_of
from assistant.knowledge.records import Bands, Limit, Procedure, Value
from assistant.quantities.amounts import Amount
from assistant.resolving import limits as limit_rules
from assistant.resolving.amounts_for import fits
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BandResult, CheckResult, Result
from assistant.understanding.words import stem

_LONG = 11
_TIMES = 2.5
"""How many times larger or smaller than the figure of a step a bare number may be that is held against it."""
_ASKING = frozenset({"what", "which", "when", "where", "why", "who", "how", "if"})
_INSTEAD = frozenset({"was", "were", "when", "because", "since", "but", "sorry", "no"})


def held_to_a_step(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the verdict on the one amount of a short turn by the step of the procedure gone through that it means."""
    words, amounts = alone.reading.words, alone.reading.amounts
    gone = gone_through(context) if len(amounts) == 1 and len(words) <= _LONG else None
    if gone is None or alone.named_variant or believes(alone.reading.text):
        return None
    if not gone.at_once and not _of_a_step(context, gone.told.procedure, knowledge):
        return None
    if not _ASKING.isdisjoint(words) or not _INSTEAD.isdisjoint(words) or alone.reading.asked & QUANTITIES:
        return None
    named = step_named_by(alone, gone.told.procedure.id, paragraphs_of(gone.told.procedure), knowledge)
    if named is None and _names_another(alone, gone.told.procedure, knowledge):
        return None
    step = _step_meant(alone, amounts[0], gone, named, knowledge)
    if step is None:
        return None
    found = _judged(gone.told.procedure, step, amounts[0], alone, knowledge)
    return (gone.asked_by(alone), found) if found else None


def _of_a_step(context: Context, procedure: Procedure, knowledge: Knowledge) -> bool:
    """Return whether what was told since is a verdict, or a figure of the procedure: it is still gone through."""
    if isinstance(context.result, BandResult):
        return True
    if isinstance(context.result, CheckResult):
        judged = {s for check in context.result.checks for s in check.limit.sources}
        return bool(judged & set(procedure.sources)) or _takes_the_figure(context.result, procedure, knowledge)
    return context.answer is not None and bool(set(context.answer.sources) & set(procedure.sources))


def _takes_the_figure(told: CheckResult, procedure: Procedure, knowledge: Knowledge) -> bool:
    """Return whether a verdict is by a limit whose figure is one of a step's."""
    figures = [f for step in procedure.steps for f in _figures(step.do, knowledge)]
    limits = [check.limit for check in told.checks]
    return any(_holds(limit, Value(f.value, f.unit or "")) for limit in limits for f in figures)


def _names_another(alone: Question, procedure: Procedure, knowledge: Knowledge) -> bool:
    """Return whether a turn names what the procedure knows nothing of."""
    known = knowledge.matcher.vocabulary(procedure.id)
    named = (m for m in knowledge.matcher.telling(alone.reading) if not m.concepts & QUANTITIES)
    return any(known.isdisjoint(m.concepts | m.implied) for m in named)


def _step_meant(
    alone: Question, amount: Amount, gone: Gone, named: int | None, knowledge: Knowledge
) -> int | None:
    """Return the step whose figure an amount is held against."""
    steps = gone.told.procedure.steps
    given = [_figures(step.do, knowledge) for step in steps]
    fitting = [i for i, figures in enumerate(given) if any(_is_like(amount, f, knowledge) for f in figures)]
    if named in fitting:
        return named
    said = {stem(w) for w in alone.reading.words if w.isalpha()} & {"up", "down", "out", "lower", "rais", "pull"}
    by_word = [i for i in fitting if said & stems(steps[i])]
    if said and len(by_word) == 1 < len(fitting):
        return by_word[0]
    if gone.told.step in fitting:
        return gone.told.step
    # Of several, the one that comes next is meant.
    return next((i for i in fitting if i >= gone.step), fitting[0] if len(fitting) == 1 else None)


def _figures(text: str, knowledge: Knowledge) -> list[Amount]:
    return [amount for amount in knowledge.phrase(text).amounts if amount.unit]


def _is_like(amount: Amount, figure: Amount, knowledge: Knowledge) -> bool:
    """Return whether an amount may be held against a figure: by its unit, or by its size without one."""
    given = fits(amount, figure.unit or "", knowledge.units)
    if given is None:
        return False
    return amount.unit is not None or figure.value / _TIMES <= given <= figure.value * _TIMES


def _judged(
    procedure: Procedure, step: int, amount: Amount, alone: Question, knowledge: Knowledge
) -> Result | None:
    """Return what is loaded of the figure of a step, with an amount held against it."""
    for figure in _figures(procedure.steps[step].do, knowledge):
        if not _is_like(amount, figure, knowledge):
            continue
        unit = figure.unit or ""
        given = amount if amount.unit else amount._replace(unit=unit)
        for record in _records_of(Value(figure.value, unit), procedure, step, knowledge):
            if isinstance(record, Bands):
                judged = limit_rules.judge(record, alone, knowledge, (given,))
                if judged:
                    return judged
            elif found := limit_rules.check(record, given, alone, knowledge):
                return CheckResult((found,))
    return None


def _records_of(figure: Value, procedure: Procedure, step: int, knowledge: Knowledge) -> Iterator[Bands | Limit]:
    """Yield the bands and limits that hold a figure of a step, those of the procedure's paragraph first."""
    own = set(procedure.sources)
    limits = [knowledge.base.records[name] for name in knowledge.base.ids("limits")]
    bands = (knowledge.base.records[name] for name in knowledge.base.ids("bands"))
    yield from (b for b in bands if own & set(b.sources) and any(_same(figure, r.value, r.unit) for r in b.rules))
    holding = [limit for limit in limits if _holds(limit, figure)]
    yield from (limit for limit in holding if own & set(limit.sources))
    done = knowledge.phrase(procedure.steps[step].do).concepts
    others = [limit for limit in holding if limit.maximum and not limit.when and not own & set(limit.sources)]
    others.sort(key=lambda limit: -len(done & knowledge.phrase(limit.of).concepts))
    yield from (limit for limit in others if done & knowledge.phrase(limit.of).named)


def _holds(limit: Limit, figure: Value) -> bool:
    bound = limit_rules.bound_value(limit)
    return bound is not None and _same(figure, bound.value, bound.unit)


def _same(figure: Value, value: float, unit: str) -> bool:
    return figure.value == value and unit in ("", figure.unit)
