"""Another calculation on what the last one was given: "each brake's bit of that, in a rejected take-off?".

What the turn chooses or gives besides, and all that was given before, make up the whole of another calculation, which
is the one that the turn asks for: by the quantity that it names, or by a thing that the last one does not speak of. A
figure that this calculation takes anyway ("0.65 of the energy") is no answer to such a turn.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.given_inputs import Given, choices_of, given_before, in_words, worked_out
from assistant.conversation.reading_turns.readings import things_named
from assistant.conversation.reading_turns.traits import CLEAR, LONG, OPEN
from assistant.frozen import NamedTuple
from assistant.knowledge.records import Model, ModelInput
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BothResult, CheckResult, FactResult, LimitResult, ModelResult, Result
from assistant.understanding.words import stem

_POINTING = frozenset({"that", "it", "this", "them", "they", "those", "these", "which"})
_EACH = frozenset({"each", "per", "every", "single", "individual"})
_ONE = "one"
_ALIKE = {
    "length": frozenset({"length", "distance", "width"}), "duration": frozenset({"duration", "time"}),
    "time": frozenset({"duration", "time"}), "temperature difference": frozenset({"temperature"}),
}  # fmt: skip
"""Quantities by which a result of one is asked for."""
_HOW = {
    ("how", "long"): "duration", ("how", "far"): "length", ("how", "hot"): "temperature", ("how", "wide"): "length",
}  # fmt: skip
_UNITS = {
    "seconds": "duration", "minutes": "duration", "metres": "length", "meters": "length", "degrees": "temperature",
    "hotter": "temperature",
}  # fmt: skip
_LATER = frozenset({"after", "later"})
_MUCH = "much"
_TOGETHER = frozenset({"together", "altogether", "total"})
_SMALL = frozenset({"a", "an", "the", "of", "at", "for", "to", "in", "by", "on", "and", "from", "with"})


class _Fit(NamedTuple):
    """How well a calculation fits a turn: by what it is asked for, and by how much of its name the turn holds."""

    rank: tuple[int, ...]
    model: Model
    text: str


def on_the_same(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the other calculation that a turn goes on to with what the last one was given, or None."""
    told, before = context.result, context.asked
    if not isinstance(told, ModelResult) or before is None or told.solved or alone.conditions:
        return None
    if len(alone.reading.words) > LONG + 2 or len(alone.reading.amounts) > 1:
        return None
    asked = _asked(alone, told)
    if not asked and _wants_each(alone, told, knowledge):
        return before.with_text(alone.reading.text), told  # it is each one's already
    itself = _itself(alone, first, told)
    asked = frozenset({itself.output}) if itself else asked
    if not (asked or _of_each(alone)) or not (itself or _may_lean(alone, first)):
        return None
    fitting = [f for f in _fitting(alone, told, before, asked, knowledge) if itself in (None, f.model)]
    found = max(fitting, default=None, key=lambda fit: fit.rank)
    if found is None:
        return None
    variant = alone.variant if alone.named_variant else before.variant
    question, result = worked_out(found.text, found.model, variant, knowledge)
    if not isinstance(result, ModelResult) or not result.values:
        return None
    return question.with_text(alone.reading.text), result


def _words(alone: Question) -> set[str]:
    return {part for word in alone.reading.words for part in word.replace("\u2019", "'").split("'")}


def _of_each(alone: Question) -> bool:
    """Return whether a turn asks for each of several: "per brake", "one brake", and not "the short one"."""
    ones = {k + 1 for k, word in enumerate(alone.reading.words) if word == _ONE}
    named = any(m.start in ones and not m.weak for m in alone.reading.mentions)
    return named or not _EACH.isdisjoint(_words(alone))


def _wants_each(alone: Question, told: ModelResult, knowledge: Knowledge) -> bool:
    """Return whether a turn wants no more than each one's share of what was told of each: "per brake?"."""
    if alone.reading.amounts or _EACH.isdisjoint(told.model.of.split()) or not _of_each(alone):
        return False
    return not choices_of(told.model, alone, knowledge) and _is_about(alone, told.model, knowledge)


def _asked(alone: Question, told: ModelResult) -> frozenset[str]:
    """Return the quantities that a turn asks for, by name, by how it asks or by the unit that it wants."""
    words = alone.reading.words
    units = frozenset(w for a in alone.reading.amounts for w in words[a.start : a.end])
    how = {kind for (one, two), kind in _HOW.items() if any(words[k : k + 2] == (one, two) for k in range(len(words)))}
    by_unit = {_UNITS[word] for word in words if word in _UNITS and word not in units}
    later = {"temperature"} if alone.reading.amounts and not _LATER.isdisjoint(words) else set()
    named = frozenset(alone.reading.asked & QUANTITIES)
    part = any(words[k] == "of" and words[k + 1] in _POINTING for k in range(len(words) - 1))
    if part and not (named - {"ratio"} or how or by_unit or later) and _MUCH in words:
        return frozenset({told.model.output})  # "how much of that do the brakes take"
    if not (named or how or by_unit or later) and not _TOGETHER.isdisjoint(words):
        return frozenset({told.model.output})  # "and all of them together"
    return (named - {"ratio"} if part else named) | how | by_unit | later  # "how much of that" asks for as much of it


def _itself(alone: Question, first: Scored, told: ModelResult) -> Model | None:
    """Return another calculation that a turn asks for by itself, on figures taken as usual of which the last one was
    given others.
    """
    other = getattr(first.result, "model", None)
    if not isinstance(first.result, ModelResult) or not isinstance(other, Model) or alone.reading.amounts:
        return None
    shared = {i.id for i in other.inputs if i.cues} & {i.id for i in told.model.inputs if i.cues}
    return other if other.id != told.model.id and shared else None


def _may_lean(alone: Question, first: Scored) -> bool:
    """Return whether a turn may be no question of its own: it is left open, points at what was told, or is answered
    with a figure that another calculation takes of the same.
    """
    if isinstance(first.result, OPEN) or first.score < CLEAR - 0.2:
        return True
    figures = (LimitResult, CheckResult, BothResult, FactResult)
    return isinstance(first.result, figures) and (_of_each(alone) or not _POINTING.isdisjoint(_words(alone)))


def _fitting(
    alone: Question, told: ModelResult, before: Question, asked: frozenset[str], knowledge: Knowledge
) -> Iterator[_Fit]:
    """Yield the calculations that a turn makes up with what was given before, each with its words."""
    old = given_before(told.model, before, knowledge)
    own = {i.id: i for i in told.model.inputs}
    stems = {stem(word) for word in _words(alone) if word not in _SMALL}
    for name in knowledge.base.ids("models"):
        model = knowledge.base.records[name]
        if not isinstance(model, Model) or model.id == told.model.id or not _is_about(alone, model, knowledge):
            continue
        if not _gives(model, asked, told.model):
            continue
        given = _whole(model, alone, old, own, knowledge)
        if given is None:
            continue
        named = {stem(word) for word in (*model.of.lower().split(), *model.id.split("-"))}
        each = _of_each(alone) != _EACH.isdisjoint(model.of.split())
        sources = bool({s.document for s in model.sources} & {s.document for s in told.model.sources})
        like = len(named & {stem(word) for word in told.model.of.lower().split()})
        rank = (int(each), len(named & stems), int(sources), like, -len(model.inputs))
        yield _Fit(rank, model, " , ".join((model.of, *in_words(model, given, Given({}, {})))))


def _gives(model: Model, asked: frozenset[str], last: Model) -> bool:
    """Return whether a calculation gives what is asked for, or more of what the last one gave."""
    if not asked:
        return model.output == last.output
    return model.output in asked or not _ALIKE.get(model.output, frozenset()).isdisjoint(asked)


def _whole(
    model: Model, alone: Question, old: Given, own: dict[str, ModelInput], knowledge: Knowledge
) -> Given | None:
    """Return all that a calculation takes, from the turn and from what was given before; None where it lacks any, or
    takes nothing of what was given.
    """
    chosen = choices_of(model, alone, knowledge)
    amounts: dict[str, Amount] = {}
    choices: dict[str, str] = {}
    left = [a for a in alone.reading.amounts if not _counts_all(a, alone)]
    for item in model.inputs:
        alike = item.id in own and own[item.id].unit == item.unit
        if item.id in chosen:
            choices[item.id] = chosen[item.id]
        elif alike and item.id in old.amounts:
            amounts[item.id] = old.amounts[item.id]
        elif alike and item.id in old.choices:
            choices[item.id] = old.choices[item.id]
        elif left and _may_stand_for(left[0], item, alone, knowledge):
            amount = left.pop()
            amounts[item.id] = amount._replace(unit=amount.unit if amount.unit not in (None, "deg") else item.unit)
        elif not item.default:
            return None
    shared = [name for name in amounts if name in old.amounts]
    lost = [name for name in old.amounts if name not in amounts]
    if left or not shared or any(own[name].quantity != model.output for name in lost):
        return None
    return Given(amounts, choices)


def _may_stand_for(amount: Amount, item: ModelInput, alone: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn's amount may be an input: one that is needed, or that its unit or a word beside it says."""
    if fits(amount, item.unit, knowledge.units) is None or not (item.cues or not item.default):
        return False
    said = not set(item.cues.split()).isdisjoint(_words(alone) - _SMALL)
    return not item.default or amount.unit is not None or said


def _counts_all(amount: Amount, alone: Question) -> bool:
    """Return whether a number only counts all that there are: "the total for all four"."""
    return amount.unit == "count" and alone.reading.words[max(0, amount.start - 1)] == "all"


def _is_about(alone: Question, model: Model, knowledge: Knowledge) -> bool:
    """Return whether a turn names no thing that a calculation does not speak of."""
    known = knowledge.matcher.vocabulary(model.id)
    return all(known & (m.concepts | m.implied) for m in things_named(alone.reading, knowledge))
