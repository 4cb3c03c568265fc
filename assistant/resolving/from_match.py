"""What one matching record answers to a question: a candidate for each kind of record, with its penalties."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from assistant.knowledge.records import Bands, Fact, Limit, Model, Procedure, Schedule
from assistant.resolving import claims
from assistant.resolving import limits as limit_rules
from assistant.resolving.candidates import Candidate, amount_penalty, state_penalty
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limit_candidates import of_bands, of_limit
from assistant.resolving.model_candidates import of_model
from assistant.resolving.results import FactResult, ProcedureResult
from assistant.resolving.schedule_candidates import of_schedule
from assistant.resolving.siblings import case_named, sibling_named
from assistant.resolving.state_asked import left_open
from assistant.resolving.steps_held import asked_of_a_step
from assistant.understanding.asked_singly import asks_singly
from assistant.understanding.matching import Match

_OTHER_STATE = 0.6
_SEVERAL = 2
_OF_A_SIBLING = 0.5
_HELD = 1.05
"""A verdict by a figure of a step goes before the drill, where a verdict is asked for."""


def from_match(match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    """Return what a matching record answers; nothing when its kind is answered from elsewhere."""
    record = know.record(match.record, question.variant)
    maker = _MAKERS.get(type(record))
    sibling = sibling_named(match, question, know) or case_named(match, question, know)
    if sibling:
        match = match._replace(barred=(*match.barred, sibling), score=match.score * _OF_A_SIBLING)
    found = maker(record, match, question, know) if maker else ()
    if know.is_general_record(match.record, question.variant):
        # What is true of all aeroplanes steps back behind what this type's own documents say.
        return [c._replace(score=c.score * 0.96) for c in found]
    return found


def _fact(fact: Fact, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    against = amount_penalty(match, question.reading.amounts, know)
    # A figure that is only believed ("the gear speed is 300, right?") is there to be corrected.
    score = match.score * (against**0.3 if against < 1 and claims.believed(question) else against)
    other = _speaks_of_another(fact, question, know) or _speaks_of_fewer(fact, question, know)
    score *= state_penalty(match, question, know) * (_OTHER_STATE if other else 1.0)
    yield Candidate(score, match.matched, FactResult(fact), match)


def _speaks_of_fewer(fact: Fact, question: Question, know: Knowledge) -> bool:
    """Return whether a statement is titled by one failure, and another of its like is given as well: "the gear with
    System 2 lost", where both are.
    """
    if len(question.stated) < _SEVERAL:
        return False
    given = {c.input: c.value for c in question.conditions if not c.is_result and not c.implied}
    titled = dict(know.phrase_states(fact.title))
    if not titled or any(given.get(name) != value for name, value in titled.items()):
        return False
    terms = {name: know.base.inputs[name].term for name in given}
    families = {name: know.lexicon.families.get(terms[name], "") for name in given}
    kinds = {families[name] for name in titled} - {""}
    more = (name for name in given if name not in titled and families[name] in kinds)
    return any(given[name] == know.states.failed(name) for name in more)


def _speaks_of_another(fact: Fact, question: Question, know: Knowledge) -> bool:
    """Return whether a statement holds in a state of a thing, or is titled by one, that the question says is not so."""
    if all(c.implied for c in question.conditions):
        return False
    titled = (pair for pair in know.phrase_states(fact.title) if pair[0] in know.states.failures)
    held = (*fact.when, *titled)
    if not held:
        return False  # most statements hold whatever is lost
    undecided = left_open(question, know)
    given = {c.input: c.value for c in question.conditions if not c.implied and undecided.isdisjoint(c.where)}
    return any(limit_rules.is_so(name, value, given, know) is False for name, value in held)


def _procedure(procedure: Procedure, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    step = int(match.tag.split(".")[1]) if match.tag.startswith("step.") else None
    score = match.score * amount_penalty(match, question.reading.amounts, know) ** 0.5
    held = asked_of_a_step(procedure, question, know)
    if held:
        yield Candidate(match.score * _HELD, match.matched, held, match)
    memory = "memory" in question.reading.words
    if question.reading.has("steps"):
        score *= 1.08
    if step is None and asks_singly(question.reading.words):
        yield Candidate(score, match.matched, ProcedureResult(procedure, 0, memory, alone=True), match)
        return
    yield Candidate(score, match.matched, ProcedureResult(procedure, step, memory), match)


_MAKERS: dict[type, Callable[[Any, Match, Question, Knowledge], Iterable[Candidate]]] = {
    Fact: _fact, Limit: of_limit, Bands: of_bands, Schedule: of_schedule, Procedure: _procedure, Model: of_model,
}  # fmt: skip
"""State tables are missing: they are answered by the states a question gives, whatever it matches."""
