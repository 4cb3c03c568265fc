"""A turn that changes what the last calculation was made from: "and with three brakes", "twenty minutes, no fans".

What a turn gives is laid into the inputs of the calculation before, and the rest stays as it was. Nothing is taken
for such a turn that names another thing, asks another quantity, or gives an amount that is no input of it.
"""

from __future__ import annotations

from math import log

from assistant.conversation.context import Context
from assistant.conversation.on_calculations.turned_inputs import (
    may_be_usual,
    switched,
    taken_away,
    thing_of,
    turned,
    usual_again,
)
from assistant.conversation.reading_turns.given_inputs import (
    Given,
    by_the_standard,
    choices_of,
    chosen,
    given_before,
    in_words,
)
from assistant.conversation.reading_turns.readings import question_of
from assistant.frozen import NamedTuple
from assistant.knowledge.records import Model, ModelInput
from assistant.quantities.amounts import Amount
from assistant.quantities.units import Units
from assistant.resolving.amounts_for import fits
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_inputs import ISA, bind, chooses, cued_parts, deviation
from assistant.resolving.models import resolve_model
from assistant.resolving.results import ModelResult, Result

_MOST_WORDS = 14
_SURE = 0.9
_SAME = "same"
_NONE = "0"
_LEAD = frozenset({"ok", "okay", "right", "fine", "good", "well", "back", "go", "going"})
_NEAR, _FAR = log(3.0), log(12.0)
"""How far a bare number may be from one that it surely, and at most, takes the place of."""
_THOUSANDS = 5000.0
"""From this altitude, or mass, a bare number may stand for as many thousands."""
_IN_THOUSANDS = frozenset({"ft", "kg"})
_SIGNED = frozenset({"deg", "degC", "count"})
_ALL = frozenset({"all", "every"})
_NUMBERS = frozenset({"four", "4"})
_POINTING = frozenset({"them", "it", "those", "these"})
_SWITCHING = frozenset({"with", "without", "on", "off", "no"})
_ENDING = frozenset({"with", "without"})


class _Like(NamedTuple):
    """An input that an amount may stand for: how far it is from what was given, and the unit it is in then."""

    apart: float
    unit: str
    times: float
    name: str


def recalculated(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the last calculation with what a turn changes of it, or None where the turn is about something else."""
    before, told = context.asked, context.result
    if before is None or not isinstance(told, ModelResult) or told.solved or len(alone.reading.words) > _MOST_WORDS:
        return None
    model = told.model
    alone = _with_the_thing(alone, model, knowledge)
    about = _is_about(alone, model, knowledge)
    if not (about or may_be_usual(alone)) or _stands_by_itself(first, model):
        return None
    old = given_before(model, before, knowledge)
    gone = usual_again(model, alone, old, knowledge)
    if not (about or gone):
        return None
    gone += taken_away(model, alone, old)
    old = _without(old, *gone)
    every = _counted_in_full(model, alone, knowledge)
    if every:
        alone, old = _without_numbers(alone), _without(old, every)
    standard = by_the_standard(model, alone)
    apart = deviation(model, alone) if standard else None
    # "Half" is a setting, and no number, and the 10 of "ISA+10" no temperature.
    counted = [a for a in alone.reading.amounts if not chooses(a, model) and a is not apart]
    numbers = alone._replace(reading=alone.reading._replace(amounts=tuple(counted)))
    amounts = _amounts(model, numbers, old, knowledge)
    new = Given(amounts or {}, choices_of(model, alone, knowledge) | standard)
    if amounts is None:
        return None
    if not (amounts or new.choices or alone.named_variant or every or gone):
        other = switched(model, alone, old, knowledge)
        new, old = (other, old) if other.choices else turned(model, alone, old)
        if not (new.amounts or new.choices):
            return None
    old = _without(old, *_put_out(model, new))
    variant = alone.variant if alone.named_variant else before.variant
    question = question_of(" , ".join((model.of, *in_words(model, new, old))), knowledge, variant)
    named = {c.input for c in question.conditions}
    kept = tuple(c._replace(where=()) for c in before.conditions if c.input not in named)
    question = question._replace(conditions=(*kept, *question.conditions), variant=variant, context=True)
    model = knowledge.record(model.id, variant)
    result = resolve_model(model, bind(model, question, knowledge), question, knowledge)
    if not isinstance(result, ModelResult) or not result.values or result == told:
        return None
    return question.with_text(alone.reading.text), _held_as_before(result, told, alone)


def _put_out(model: Model, new: Given) -> tuple[str, ...]:
    """Return the inputs of which there is none where nothing is said, that another one of their kind puts out: a
    tailwind, by a headwind.
    """
    none = [i for i in model.inputs if i.default == _NONE and not i.choices]
    given = [i for i in none if i.id in new.amounts]
    return tuple(i.id for i in none if i not in given and any(i.quantity == g.quantity for g in given))


def _held_as_before(result: ModelResult, told: ModelResult, alone: Question) -> ModelResult:
    """Return a result held against the amount that the last one was: "and with FULL", after "is 1,500 m enough"."""
    if not told.weighed or alone.reading.asked & QUANTITIES:
        return result
    return result._replace(against=told.against, weighed=told.weighed)


def _stands_by_itself(first: Scored, model: Model) -> bool:
    """Return whether a turn is answered well by another calculation, or a verdict, without the one before."""
    other = getattr(first.result, "model", None)
    return first.score >= _SURE and isinstance(other, Model) and other.id != model.id


def _is_about(alone: Question, model: Model, knowledge: Knowledge) -> bool:
    """Return whether a turn names and asks nothing that the calculation does not speak of."""
    known = knowledge.matcher.vocabulary(model.id) | {i.quantity for i in model.inputs}
    same = _SAME in alone.reading.text.lower().split()  # its words may name what it points at
    chosen = _of_its_choices(alone, model)
    named = frozenset(c for m in alone.reading.mentions if chosen.issuperset(m.taken) for c in m.concepts)
    asked = (alone.reading.asked & QUANTITIES) - named
    about = asked <= {model.output} or (same and asked <= {i.quantity for i in model.inputs})
    standard = bool(by_the_standard(model, alone))
    # A state is said of something: what it is said of has to be known.
    told = {m.taken for c in alone.conditions for m in alone.reading.mentions if c.where and m.start in c.where}
    return about and all(
        m.weak or m.passing or not known.isdisjoint(m.concepts | m.implied) or (same and m.text == _SAME)
        or (m.start == 0 and m.text in _LEAD) or chosen.issuperset(m.taken) or (m.says_state and told)
        or (standard and m.holds(ISA))
        for m in alone.reading.mentions
    )


def _of_its_choices(alone: Question, model: Model) -> frozenset[int]:
    """Return the places of a turn where it says a choice in several words, which name nothing else: "whole travel"."""
    words = alone.reading.words
    phrases = {tuple(p.split()) for i in model.inputs for said, _, _ in i.choices for p in said.lower().split(";")}
    found = (
        range(k, k + len(phrase)) for phrase in phrases if len(phrase) > 1
        for k in range(len(words)) if words[k : k + len(phrase)] == phrase
    )  # fmt: skip
    return frozenset(k for each in found for k in each)


def _counted_in_full(model: Model, alone: Question, knowledge: Knowledge) -> str:
    """Return the input that counts things, where a turn says that all of them are there: "all four again"."""
    words = alone.reading.words
    item = next((i for i in model.inputs if i.unit == "count" and i.default and i.cues), None)
    if item is None or _ALL.isdisjoint(words):
        return ""
    counted = knowledge.phrase(item.cues).concepts
    at = next(k for k, word in enumerate(words) if word in _ALL)
    beside = words[at + 1 : at + 3]
    named = any(not counted.isdisjoint(knowledge.phrase(word).concepts) for word in beside)
    return item.id if named or not _NUMBERS.isdisjoint(beside) or beside[:2] == ("of", "them") else ""


def _without_numbers(alone: Question) -> Question:
    """Return a turn without the number of things that are all there."""
    kept = tuple(a for a in alone.reading.amounts if a.unit not in ("count", None) or a.raw not in _NUMBERS)
    return alone._replace(reading=alone.reading._replace(amounts=kept))


def _without(old: Given, *names: str) -> Given:
    amounts = {k: amount for k, amount in old.amounts.items() if k not in names}
    return Given(amounts, {k: phrase for k, phrase in old.choices.items() if k not in names})


def _amounts(model: Model, alone: Question, old: Given, knowledge: Knowledge) -> dict[str, Amount] | None:
    """Return the amounts of a turn by input, or None where one is none of them.

    The words beside an amount say which it is; else it takes the place of the amount that it is nearest to.
    """
    cued = {start: name for name, start in cued_parts(model, alone, knowledge).items()}
    found: dict[str, Amount] = {}
    for amount in alone.reading.amounts:
        fitting = [i for i in model.inputs if fits(amount, i.unit, knowledge.units) is not None]
        given = ((old.amounts[i.id], i) for i in fitting if i.id in old.amounts)
        like = sorted(_Like(*_apart(amount, past, i.unit, knowledge.units), i.id) for past, i in given)
        near = {each.name: each for each in like}
        name = cued.get(amount.start, "")
        if name in near and near[name].apart > _FAR and like[0].apart < _NEAR:
            name = like[0].name  # "at 230", after a speed at an altitude
        elif not name and like and like[0].apart <= _FAR:
            name = like[0].name
        if not name and len(fitting) == 1 and amount.unit is not None:
            name = fitting[0].id
        name = name or _near_the_usual(amount, fitting, old, alone, knowledge)
        if not name:
            return None
        bare = amount.unit is None and name in near
        unit = near[name].unit if bare else amount.unit
        found[name] = amount._replace(unit=unit, value=amount.value * (near[name].times if bare else 1.0))
    return found


def _near_the_usual(
    amount: Amount, fitting: list[ModelInput], old: Given, alone: Question, knowledge: Knowledge
) -> str:
    """Return the one input, taken as usual before, that a bare amount comes near to the usual figure of."""
    found = []
    for item in fitting if amount.unit is None and amount.value > 0 else ():
        usual = knowledge.figure(item.default, alone.variant) if item.default and item.id not in old.amounts else None
        if usual and usual.unit == item.unit and item.choices and abs(log(amount.value / usual.value)) < _NEAR / 2:
            found.append(item.id)
    return found[0] if len(found) == 1 else ""


def _apart(amount: Amount, old: Amount, unit: str, units: Units) -> tuple[float, str, float]:
    """Return how far an amount is from one before, as a ratio, and in which unit a bare one is then meant, and how
    many times it; amounts in one unit are alike whatever their size. "48,000" may stand for 50 tonnes, "35" for
    30,000 ft.
    """
    if amount.unit is not None:
        return (0.0 if amount.unit == old.unit else 1.0), amount.unit, 1.0
    own = old.unit or unit
    if amount.value <= 0 or old.value <= 0:
        return (0.0 if old.unit in _SIGNED else abs(amount.value - old.value)), own, 1.0
    found = [(abs(log(amount.value / old.value)), own, 1.0)]
    if own in _IN_THOUSANDS and old.value >= _THOUSANDS and abs(log(amount.value * 1000.0 / old.value)) < _NEAR:
        found.append((abs(log(amount.value * 1000.0 / old.value)), own, 1000.0))
    if old.unit and old.unit != unit and old.unit != "deg":
        found.append((abs(log(amount.value / units.convert(old.value, old.unit, unit))), unit, 1.0))
    return min(found)


def _with_the_thing(alone: Question, model: Model, knowledge: Knowledge) -> Question:
    """Return a turn with what it points at named, or leaves unsaid, where that is what the calculation chooses by:
    "with them on", "how long without?".
    """
    words = alone.reading.words if alone.reading.amounts else _pointing_at_it(alone.reading.words)
    if _POINTING.isdisjoint(words) or _SWITCHING.isdisjoint(words) or not _switches_it(words):
        return alone
    for item in model.inputs:
        for phrase in (p.strip() for words_of, _, _ in item.choices for p in words_of.split(";")):
            thing = thing_of(phrase, knowledge)
            if thing:
                text = " ".join(thing.text if w in _POINTING else w for w in words)
                named = question_of(text, knowledge, alone.variant)
                if chosen(item, named, knowledge):
                    return named.with_text(alone.reading.text)
    return alone


def _pointing_at_it(words: tuple[str, ...]) -> tuple[str, ...]:
    """Return the words of a turn with what it points at, where it ends with what switches it alone."""
    last = next((k for k in range(len(words) - 1, -1, -1) if words[k][0].isalpha()), -1)
    ends = last >= 0 and words[last] in _ENDING
    return (*words[: last + 1], "them", *words[last + 1 :]) if ends else words


def _switches_it(words: tuple[str, ...]) -> bool:
    """Return whether what a turn points at stands beside what switches it: "with them on", "put it off"."""
    at = [k for k, word in enumerate(words) if word in _POINTING]
    return any(w in _SWITCHING for k in at for w in (*words[max(0, k - 1) : k], *words[k + 1 : k + 3]))
