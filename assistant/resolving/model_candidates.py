"""What a matching calculation answers to a question: its result, what it lacks, or the state in which it is idle."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.knowledge.records import Model
from assistant.resolving import claims
from assistant.resolving.asked_quantity import asked_of
from assistant.resolving.candidates import OPEN, UNCOMPARED, Candidate, state_penalty
from assistant.resolving.controls_in_use import set_in_vain
from assistant.resolving.deflections import deflections
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_inputs import Binding, bind
from assistant.resolving.models import resolve_model
from assistant.resolving.results import ModelResult, Needed, TableResult
from assistant.resolving.steering_order import resolve_order
from assistant.understanding.clauses import asks_whether
from assistant.understanding.matching import Match

_WHEN = frozenset({"when", "until", "till", "long", "soon", "time", "minutes", "wait", "before", "already", "yet"})
"""Words by which a time is asked for."""
_COMPARING = frozenset({
    "enough", "within", "inside", "says", "say", "said", "told", "reckons", "thinks", "claims", "right", "true",
    "correct", "wrong", "sufficient", "suffice", "would", "could", "fit",
})  # fmt: skip
"""Words by which a result that is given wants to be judged."""
_WHOLE_STORY, _MOSTLY, _OF_STORY = 3, 0.7, 1.8
"""Amounts, and the share of a way of asking, from which on a calculation is meant whatever words a story has besides;
what it regains for each of them.
"""
_AS_SOUGHT = 1.15
"""What a calculation gains whose input is what is asked for."""
_ASKED_ITSELF = 0.6
"""What remains of asking back for what a question itself asks for."""
_OF_A_PART = 1.25
"""What asks for a part of a control is no question of its limit: "half tiller at 40 kt"."""
_IN_VAIN = 1.2
"""What it gains that a setting does not work, over the calculation with it."""


def of_model(model: Model, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    """Yield what a calculation gives or lacks, where the words that it needs are said."""
    if model.function == "total_order":
        yield from _order(model, match, question, know)
        return
    if model.function == "remaining" and not question.reading.amounts:
        return  # the whole number is asked for, and nothing has been used
    if model.needs and not all(any(question.reading.has(c) for c in _concepts(know, n)) for n in model.needs):
        return
    binding = bind(model, question, know)
    result = resolve_model(model, binding, question, know)
    if result is None:
        return
    if isinstance(result, ModelResult) and not result.values:
        named = _named_by_figure(question, know)
        if named:
            yield from of_model(know.record(model.id, named.variant), match, named, know)
            return
    idle = set_in_vain(model, binding, question, know)
    yield from _in_vain(idle, match) if idle else _worked_out(result, binding, match, question)


def _in_vain(idle: TableResult, match: Match) -> Iterable[Candidate]:
    """Yield the state in which a setting does not work, in the place of the calculation with it."""
    yield Candidate(min(1.2, match.score * _IN_VAIN), match.matched + 1.0, idle, match)


def _worked_out(
    result: ModelResult | Needed, binding: Binding, match: Match, question: Question
) -> Iterable[Candidate]:
    """Yield a calculation, or what it lacks, by how much of the question it has a use for."""
    match = _without_story(match, binding)
    score = match.score * 0.62 ** len(binding.left) * (1 - 0.03 * min(binding.cost, 12))
    if isinstance(result, Needed):
        score *= _ASKED_ITSELF if _wants_missing(result, question) or _wants_known(result, question) else 1.0
        share = binding.amounts_used / (binding.amounts_used + len(binding.missing))
        base = 0.93 if match.whole else 0.84
        yield Candidate(score * (base + 0.06 * share), match.matched + 0.2 * binding.amounts_used, result, match)
    elif result.values or result.note:
        if result.model.output == "duration" and _asks_leave(question):
            score *= UNCOMPARED
        if result.against is not None and not _compares(question):
            score *= UNCOMPARED
        yield _calculated(result, binding, score, match)


def _asks_leave(question: Question) -> bool:
    """Return whether a question asks if something may be done, and for no time: "OAT 12, brakes 245, may I go"."""
    reading = question.reading
    return reading.has("can") and not reading.has("duration") and not _WHEN.intersection(reading.words)


def _without_story(match: Match, binding: Binding) -> Match:
    """Return a match without the ordinary words that bar it, where a calculation has a use for every amount of a
    story: "52 tonnes on board".
    """
    used = binding.amounts_used >= _WHOLE_STORY and not binding.left and match.covered >= _MOSTLY
    if not match.barred or not used or any(not m.is_plain or not m.known or m.mended for m in match.barred):
        return match
    return match._replace(barred=(), score=match.score * _OF_STORY ** len(match.barred))


def _wants_missing(result: Needed, question: Question) -> bool:
    """Return whether what a calculation lacks is itself asked for: "above which altitude does the Mach number …"."""
    lacking = {i.quantity for i in result.record.inputs if i.id in result.names} - {result.record.output}
    asked = question.reading.asked
    near = {c for m in question.reading.mentions if m.concepts & asked for c in m.implied}
    return bool(lacking) and lacking <= asked | near


def _wants_known(result: Needed, question: Question) -> bool:
    """Return whether what is asked for is a figure that a calculation takes by itself: "by what do I multiply …"."""
    known = {i.quantity for i in result.record.inputs if i.default and i.id not in result.names}
    return bool(asked_of(question.reading) & known - {result.record.output})


def _named_by_figure(question: Question, know: Knowledge) -> Question | None:
    """Return a question whose bare figure, which nothing can be calculated from, is the variant of that name."""
    bare = [a for a in question.reading.amounts if a.unit is None and f"{a.value:g}" in know.variants]
    if len(bare) != 1:
        return None
    reading = question.reading._replace(amounts=tuple(a for a in question.reading.amounts if a is not bare[0]))
    variant = question.variant if question.named_variant else f"{bare[0].value:g}"
    return question._replace(reading=reading, variant=variant)


def _compares(question: Question) -> bool:
    """Return whether a result that is given is to be held against the one calculated: "would 1,200 m do?"."""
    reading = question.reading
    whether = "is" in reading.words and OPEN.isdisjoint(reading.words)
    whether = whether or asks_whether(reading.words) or reading.has("can") or claims.believed(question)
    return whether or not _COMPARING.isdisjoint(reading.words)


def _order(model: Model, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    result = resolve_order(model, question, know)
    if isinstance(result, TableResult):
        yield Candidate(1.5, match.matched + 1.0, result)  # whatever quantity is asked for
    elif result is not None:
        score = 1.1 if isinstance(result, ModelResult) else 0.9
        score = _OF_A_PART if any(d.part != 1.0 for d in deflections(question, know)) else score
        bar = 0.5 ** len(match.barred) * state_penalty(match, question, know)
        yield Candidate(max(match.score, score * bar), match.matched + 1.0, result, match)


def _calculated(result: ModelResult, binding: Binding, score: float, match: Match) -> Candidate:
    """Return a calculation; one that has a use for every amount of a question is hardly meant otherwise."""
    score *= 1.06 if binding.amounts_used else 0.97
    if binding.amounts_used >= 3 and not binding.left and match.open and binding.cost < 3.4:
        score = max(score + 0.25, 0.76 - 0.02 * binding.cost)
    if result.solved and not binding.left and (result.against is not None or result.solved == binding.sought):
        score *= _AS_SOUGHT
    # A model that is meant only by certain words, and they were said, comes before one that is meant without them.
    score = min(1.15, score) * (1.03 if result.model.needs else 1.0)
    return Candidate(score, match.matched + 0.35 * binding.amounts_used, result, match)


def _concepts(know: Knowledge, phrase: str) -> set[str]:
    return {c for m in know.phrase(phrase).mentions for c in m.concepts}
