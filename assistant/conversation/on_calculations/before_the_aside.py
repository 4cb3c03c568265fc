"""The calculation before a side question, which a turn goes back to without saying so.

"Is 38 m enough?", after "what clearance is that?", is held against the pavement that came out before; "and with idle",
after "how heavy is the heat sink?", chooses for what was calculated, as the figure told since has no such choice.
"""

from __future__ import annotations

from itertools import pairwise

from assistant.conversation.context import LATELY, Context
from assistant.conversation.on_calculations.enough_for_it import enough_for_it, holds_against
from assistant.conversation.on_calculations.recalculating import recalculated
from assistant.conversation.reading_turns.given_inputs import Given, choices_of, given_before, in_words, worked_out
from assistant.conversation.reading_turns.like_amounts import unit_word
from assistant.conversation.reading_turns.traits import OPEN
from assistant.knowledge.records import Model
from assistant.resolving.amounts_for import fits
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_inputs import cued_parts
from assistant.resolving.results import BandResult, Declined, FactResult, LimitResult, ModelResult, Result
from assistant.resolving.sought import sought_input

_BRIEF, _LONG = 6, 10
_CHOOSING, _LED = frozenset({"with", "without", "using", "no", "on"}), 3
_POINTING = frozenset({"that", "this", "it"})
_ASKING = frozenset({"what", "which", "much"})


def before_the_aside(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the calculation before a side question with what a turn holds against it, or chooses for it."""
    if not isinstance(context.result, (LimitResult, FactResult)):
        return None
    for past in context.earlier[:LATELY]:
        if isinstance(past.result, ModelResult):
            before = context._replace(asked=past.asked, result=past.result, answer=past.answer)
            if holds_against(alone):
                return enough_for_it(alone, before, knowledge)
            if _only_chooses(alone, first, past.result, knowledge) or _only_gives(alone, first, past.result, knowledge):
                return recalculated(alone, first, before, knowledge)
            return _other_way_about(alone, past.asked, past.result, knowledge)
    return None


def chosen_for_it(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the calculation before a side question with what a turn chooses for it, and says no more than that: "and
    with fans", after a cooling time and "when do the plugs melt?", which knows nothing of fans.
    """
    words = alone.reading.words
    if context.asked is None or not isinstance(context.result, (LimitResult, FactResult, BandResult)):
        return None
    if len(words) > _BRIEF or alone.reading.amounts or not _CHOOSING.intersection(words[:_LED]):
        return None
    past = next((p for p in context.earlier[:LATELY] if isinstance(p.result, ModelResult)), None)
    if past is None or not isinstance(past.result, ModelResult):
        return None
    choices = choices_of(past.result.model, alone, knowledge)
    if not choices or not _takes_only(choices, past.result.model, alone, context, knowledge):
        return None
    before = context._replace(asked=past.asked, result=past.result, answer=past.answer)
    return recalculated(alone, Scored(Declined(()), 0.0), before, knowledge)


def _takes_only(
    choices: dict[str, str], model: Model, alone: Question, context: Context, knowledge: Knowledge
) -> bool:
    """Return whether a turn names nothing but what it chooses, which the side question told nothing of."""
    said = frozenset().union(*(knowledge.phrase(phrase).concepts for phrase in choices.values()))
    if any(said.isdisjoint(m.concepts | m.implied) for m in knowledge.matcher.telling(alone.reading)):
        return False
    values = {value for i in model.inputs if i.id in choices for _, value, _ in i.choices}
    if context.asked is None or context.answer is None:
        return False
    spoken = context.asked.reading.concepts | knowledge.phrase(context.answer.text).concepts
    own = frozenset(c for m in knowledge.matcher.telling(alone.reading) for c in m.concepts)
    return context.answer.entry not in values and own.isdisjoint(spoken)


def on_the_figure_told(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the calculation that takes the figure told last, where a turn points at that, asks for its result and
    chooses the rest: "what deceleration is that with FULL?", after a share of the target.
    """
    told = {limit.id for limit in context.result.limits} if isinstance(context.result, LimitResult) else set()
    words = alone.reading.words
    if not told or _POINTING.isdisjoint(words) or alone.reading.amounts or len(words) > _LONG:
        return None
    for name in knowledge.base.ids("models"):
        model = knowledge.base.records[name]
        if not isinstance(model, Model) or model.output not in alone.reading.asked:
            continue
        takes = any(item.default in told for item in model.inputs)
        choices = choices_of(model, alone, knowledge) if takes else {}
        if choices:
            text = " , ".join((model.of, *in_words(model, Given({}, choices), Given({}, {}))))
            question, result = worked_out(text, model, alone.variant, knowledge)
            if isinstance(result, ModelResult):
                return question.with_text(alone.reading.text), result
    return None


def other_way_about(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the calculation told last solved for an input that a turn asks for by a word for it."""
    if context.asked is None or not isinstance(context.result, ModelResult) or len(alone.reading.words) > _LONG:
        return None
    return _other_way_about(alone, context.asked, context.result, knowledge)


def _other_way_about(
    alone: Question, asked: Question, told: ModelResult, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the calculation solved for an input that a turn asks for, where it gives a result: "what steering would I
    need for 35 m?".
    """
    model, amounts = told.model, alone.reading.amounts
    sought = _sought(model, alone)
    if not sought or len(amounts) != 1 or amounts[0].unit is None:
        return None
    if fits(amounts[0], model.output_unit, knowledge.units) is None:
        return None
    old = given_before(model, asked, knowledge)
    rest = Given({n: a for n, a in old.amounts.items() if n != sought}, old.choices)
    amount = f"{amounts[0].value:.10g} {unit_word(amounts[0].unit)}"
    quantity = next(i.quantity for i in model.inputs if i.id == sought)
    text = " , ".join((f"what {quantity} for", f"{model.of} of {amount}", *in_words(model, rest, Given({}, {}))))
    question, result = worked_out(text, model, asked.variant, knowledge)
    solved = isinstance(result, ModelResult) and result.solved == sought
    return (question.with_text(alone.reading.text), result) if result is not None and solved else None


def _sought(model: Model, alone: Question) -> str:
    """Return the input that a turn asks for, by its quantity or by a word for it: "what steering"."""
    led = {two for one, two in pairwise(alone.reading.words) if one in _ASKING}
    named = (i.id for i in model.inputs if i.id in model.inverse and not led.isdisjoint(i.cues.split()))
    return sought_input(model, alone) or next(named, "")


def _only_chooses(alone: Question, first: Scored, told: ModelResult, knowledge: Knowledge) -> bool:
    """Return whether a short turn answers nothing by itself and makes a choice of a calculation."""
    brief = len(alone.reading.words) <= _BRIEF and not alone.reading.amounts
    return brief and isinstance(first.result, OPEN) and bool(choices_of(told.model, alone, knowledge))


def _only_gives(alone: Question, first: Scored, told: ModelResult, knowledge: Knowledge) -> bool:
    """Return whether a short turn answers nothing by itself and says of its amounts which inputs they are."""
    amounts = alone.reading.amounts
    if not amounts or not isinstance(first.result, OPEN) or len(alone.reading.words) > _BRIEF + 1:
        return False
    cued = cued_parts(told.model, alone, knowledge).values()
    return all(amount.start in cued for amount in amounts)
