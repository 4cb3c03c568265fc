"""The last calculation on another basis, which only a more general one may choose: "for a tyre not rotating yet"."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.given_inputs import choices_of, worked_out
from assistant.conversation.reading_turns.like_amounts import unit_word
from assistant.conversation.reading_turns.readings import question_of
from assistant.knowledge.records import Model, ModelInput
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_choices import chosen
from assistant.resolving.model_inputs import bind
from assistant.resolving.results import ModelResult, Result

_MOST_WORDS = 10


def other_basis(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return a calculation of the same quantity from the inputs of the last one, with a choice that the last one does
    not know and that a turn makes.
    """
    told, before = context.result, context.asked
    if not isinstance(told, ModelResult) or before is None or told.solved or alone.reading.amounts:
        return None
    if len(alone.reading.words) > _MOST_WORDS or not alone.reading.asked & QUANTITIES <= {told.model.output}:
        return None
    for name in knowledge.base.ids("models"):
        model = knowledge.base.records[name]
        if isinstance(model, Model) and _is_alike(model, told.model):
            made = choices_of(model, alone, knowledge)
            plain = {i.id: _plainly(i, model, alone, knowledge) for i in model.inputs if i.id in made}
            made |= {name: phrase for name, phrase in plain.items() if phrase}
            found = _worked_out(model, made, told.model, before, alone, knowledge) if made else None
            if found:
                return found
    return None


def _is_alike(model: Model, last: Model) -> bool:
    """Return whether a calculation gives the same as another and takes all that it needs from it, but for choices."""
    own = {i.id: i.unit for i in last.inputs}
    needed = [i for i in model.inputs if not i.default]
    more = [i for i in model.inputs if i.default and i.choices and i.id not in own]
    same = model.id != last.id and (model.output, model.output_unit) == (last.output, last.output_unit)
    covered = all(own.get(i.id) == i.unit for i in needed) and len(last.inputs) == len(needed)
    return same and covered and bool(needed and more)


def _plainly(item: ModelInput, model: Model, alone: Question, knowledge: Knowledge) -> str:
    """Return the words that make, and make alone, the choice that a turn says in most words: "unspun", of what is "not
    rotating".
    """
    said = f" {' '.join(alone.reading.words)} "
    phrases = [[p.strip() for p in words.split(";")] for words, _, _ in item.choices]
    held = [(len(p.split()), k) for k, each in enumerate(phrases) for p in each if f" {p.lower()} " in said]
    own = phrases[max(held)[1]] if held else []
    questions = ((p, question_of(f"{model.of} , {p}", knowledge, "")) for p in own)
    return next((p for p, question in questions if len(chosen(item, question, knowledge)) == 1), "")


def _worked_out(
    model: Model, made: dict[str, str], last: Model, before: Question, alone: Question, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    variant = alone.variant if alone.named_variant else before.variant
    given = bind(knowledge.record(last.id, variant), before, knowledge).given
    parts = [model.of]
    for item in model.inputs:
        bounds = given.get(item.id, ())
        if len(bounds) == 1:
            parts.append(f"{' '.join(item.cues.split()[:1])} {bounds[0].value:.10g} {unit_word(item.unit)}")
    question, result = worked_out(" , ".join((*parts, *made.values())), model, variant, knowledge)
    return (question.with_text(alone.reading.text), result) if isinstance(result, ModelResult) else None
