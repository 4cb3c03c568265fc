"""An amount held against the figure of a step: "is 220 slow enough?", "five minutes do?", after a procedure told.

Such a turn asks of the step that was told last, that it names, or that alone has a figure of its kind; what is loaded
of that figure judges it.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.control_words.controls_of_changes import believes
from assistant.conversation.on_procedures.going_through import Gone, gone_through, stems
from assistant.conversation.on_what_was_told.asked_then import step_named_by
from assistant.conversation.reading_turns.paragraphs_told import paragraphs_of
from assistant.knowledge.records import Procedure, Value
from assistant.quantities.amounts import Amount
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BandResult, CheckResult, Result
from assistant.resolving.steps_held import figures_in, holds, is_like, judged_by_step
from assistant.understanding.words import stem

_LONG = 11
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
    found = judged_by_step(gone.told.procedure, step, amounts[0], alone, knowledge)
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
    figures = [f for step in procedure.steps for f in figures_in(step.do, knowledge)]
    limits = [check.limit for check in told.checks]
    return any(holds(limit, Value(f.value, f.unit or "")) for limit in limits for f in figures)


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
    given = [figures_in(step.do, knowledge) for step in steps]
    fitting = [i for i, figures in enumerate(given) if any(is_like(amount, f, knowledge) for f in figures)]
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
