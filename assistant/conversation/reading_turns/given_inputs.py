"""What a question gives of a calculation's inputs, amounts and choices, and the same said in words again."""

from __future__ import annotations

from assistant.conversation.reading_turns.inheriting import phrase_chosen
from assistant.conversation.reading_turns.like_amounts import unit_word
from assistant.conversation.reading_turns.readings import question_of
from assistant.conversation.reading_turns.switch_words import idle_switches
from assistant.frozen import NamedTuple
from assistant.knowledge.records import Model, ModelInput
from assistant.quantities.amounts import Amount
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_inputs import ISA, bind, deviation
from assistant.resolving.models import resolve_model
from assistant.resolving.results import ModelResult, Needed


class Given(NamedTuple):
    """What a question gives of a calculation's inputs: the amounts, and the phrase that makes each choice."""

    amounts: dict[str, Amount]
    choices: dict[str, str]


def given_before(model: Model, before: Question, knowledge: Knowledge) -> Given:
    """Return what a question gave of a calculation's inputs."""
    places = bind(model, before, knowledge).places
    amounts = {a.start: a for a in before.reading.amounts}
    given = {name: amounts[start] for name, start in places.items() if start in amounts}
    standard = {name: said for name, said in by_the_standard(model, before).items() if name not in given}
    return Given(given, choices_of(model, before, knowledge) | standard)


def by_the_standard(model: Model, question: Question) -> dict[str, str]:
    """Return the temperature that a question takes from the standard atmosphere, in words: "ISA +10"."""
    name = _standard(model, question)
    return {name: _isa(model, question)} if name else {}


def _standard(model: Model, before: Question) -> str:
    """Return the input that a question takes from the standard atmosphere at its altitude: "ISA+10"."""
    takes = {"altitude", "temperature"} <= {i.quantity for i in model.inputs}
    found = (i.id for i in model.inputs if i.quantity == "temperature")
    return next(found, "") if takes and before.reading.has(ISA) else ""


def _isa(model: Model, before: Question) -> str:
    apart = deviation(model, before)
    return f"ISA {apart.value:+g}" if apart else "ISA"


def choices_of(model: Model, question: Question, knowledge: Knowledge) -> dict[str, str]:
    """Return the phrase by which a question makes each choice of a calculation."""
    return {i.id: phrase for i in model.inputs if (phrase := chosen(i, question, knowledge))}


def in_words(model: Model, new: Given, old: Given) -> list[str]:
    """Return each input in words, as the turn gives it or else as it was."""
    found = []
    for item in model.inputs:
        for given in (new, old):
            if item.id in given.amounts:
                found.append(_amount_in_words(given.amounts[item.id], item))
                break
            if item.id in given.choices:
                found.append(given.choices[item.id])
                break
    return found


def _amount_in_words(amount: Amount, item: ModelInput) -> str:
    if item.unit == "count":
        return " ".join((f"{amount.value:.10g}", *item.cues.split()[:2]))  # "3 working brakes"
    return " ".join((*item.cues.split()[:1], f"{amount.value:.10g}", unit_word(amount.unit or item.unit)))


def chosen(item: ModelInput, question: Question, knowledge: Knowledge) -> str:
    """Return the phrase by which a question chooses an input, in whatever words, or by the word that sets it apart."""
    choices = [[phrase.strip() for phrase in words.split(";")] for words, _, _ in item.choices]
    named = phrase_chosen(item, question, knowledge)
    return named or next((phrases[0] for phrases in choices if _sets_apart(phrases, choices, question)), "")


def _sets_apart(phrases: list[str], choices: list[list[str]], question: Question) -> bool:
    """Return whether a question holds what a choice says and no other does: "full", of "FULL; autobrake full"."""
    others = {word for other in choices if other is not phrases for p in other for word in p.lower().split()}
    own = (set(phrase.lower().split()) - others for phrase in phrases)
    said = question.reading.words
    # "No, 52 tonnes" and "on the long one" choose nothing.
    idle = {0} if said[:1] == ("no",) else set()
    idle |= idle_switches(said) | {k for c in question.conditions for k in c.where}  # the "one" of System 1
    words_said = {word for k, word in enumerate(said) if k not in idle}
    return any(words and words <= words_said for words in own)


def worked_out(
    text: str, model: Model, variant: str, knowledge: Knowledge
) -> tuple[Question, ModelResult | Needed | None]:
    """Return a calculation in words as the question that it is, with what it gives or lacks."""
    question = question_of(text, knowledge, variant)._replace(variant=variant, context=True)
    own = knowledge.record(model.id, variant)
    return question, resolve_model(own, bind(own, question, knowledge), question, knowledge)
