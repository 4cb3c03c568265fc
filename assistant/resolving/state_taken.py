"""What takes some results of the state tables and leaves others, of whatever tables: the smallest sets of states."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from itertools import pairwise

from assistant.knowledge.records import StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CauseResult
from assistant.resolving.state_asked import Scored, left_open
from assistant.resolving.taken_and_kept import LOST, Called, Said, things_said
from assistant.understanding.states import Condition
from assistant.understanding.words import stem

_SCORE, _ALONE, _WEIGHT = 1.09, 0.93, 7.0
_SINGLE = "single"


def taken_candidates(question: Question, know: Knowledge) -> Iterator[Scored]:
    """Yield what leads to all that a question says is lost while all is there that it says is kept."""
    reading = question.reading
    if reading.amounts or left_open(question, know):
        return
    called = _called(know)
    things = {k for m in reading.mentions if not called.terms.keys().isdisjoint(m.concepts) for k in m.taken}
    states = [c for c in question.conditions if not c.is_result and not c.implied and things.isdisjoint(c.where)]
    given = tuple(c for c in states if not c.asked)
    said = things_said(reading, called, frozenset(k for c in states for k in c.where), know.phrase)
    if not any(s.polarity == LOST for s in said) or len(given) < len(states):
        return
    if not _rests_on(said, given, know) or (len(said) == 1 and "when" in reading.words):
        return  # "when do I lose the tiller": at a speed as well
    found = _leading(said, given, called, question, know)
    if found.sets != ((),):  # what follows from the states given has its reason, and nothing else leads there
        yield _ALONE if len(said) == 1 else _SCORE, _WEIGHT, found


@lru_cache(maxsize=2)
def _called(know: Knowledge) -> Called:
    """Return what the tables call their results, with the values that they have at best and at worst."""
    terms: dict[str, tuple[str, str]] = {}
    normal, lost, first = {}, {}, set()
    worst = _worst(know)
    for table in state_tables.tables(know.base):
        best, least = (state_tables.outputs(table, each, know.base) for each in ({}, worst))
        first.add((table.id, table.outputs[0].id))
        for output in table.outputs:
            of = table.id, output.id
            normal[of], lost[of] = best[output.id], least[output.id]
            terms.update(dict.fromkeys((output.id, *output.goes), of))
    called = (know.base.terms[name].names[0] for name in terms if name in know.base.terms)
    names = frozenset(stem(name) for name in called if " " not in name)
    return Called(terms, normal, lost, names, frozenset(first))


def _rests_on(said: list[Said], given: tuple[Condition, ...], know: Knowledge) -> bool:
    """Return whether all the states given matter to what is lost or kept: others ask for something else."""
    inputs = frozenset().union(*(know.base.records[s.table].inputs for s in said))
    return all(c.input in inputs for c in given)


def _leading(
    said: list[Said], given: tuple[Condition, ...], called: Called, question: Question, know: Knowledge
) -> CauseResult:
    """Return the sets with what they lead to: what is lost first, and of what is kept what is so in all of them."""
    wanted = [(know.base.records[s.table], s.output, _value(s, called)) for s in said]
    fixed = {c.input: c.value for c in given}
    found = state_tables.joint_sets(wanted, know.base, fixed)
    kept = [(know.base.records[s.table], s.output) for s in said if s.polarity != LOST]
    sets = [each for each in found if all(_works(table, out, {**fixed, **dict(each)}, know) for table, out in kept)]
    ordered = sorted(zip(said, wanted, strict=True), key=lambda pair: pair[0].polarity != LOST)
    also = []
    for one, (table, output, value) in ordered[1:]:
        now = {state_tables.outputs(table, {**fixed, **dict(s)}, know.base)[output] for s in sets}
        if one.polarity == LOST or len(now) == 1 or not sets:
            best = called.normal[one.table, one.output]
            also.append((table, output, value if one.polarity == LOST else now.pop() if now else best))
    table, output, value = ordered[0][1]
    return CauseResult(table, output, value, tuple(sets), _asks_single(question), given, tuple(also))


def _works(table: StateTable, output: str, state: dict[str, str], know: Knowledge) -> bool:
    """Return whether a result that is kept rests on what can fail: wheels that are centred in the air steer nothing,
    whatever works.
    """
    now = state_tables.outputs(table, state, know.base)[output]
    return state_tables.outputs(table, {**state, **_worst(know)}, know.base)[output] != now


def _worst(know: Knowledge) -> dict[str, str]:
    return {name: know.states.failed(name) for name in know.states.failures}


def _value(said: Said, called: Called) -> str:
    """Return the value that a result is to have; "!value" for any but that: of "NORMAL braking" lost any other."""
    lost = called.lost[said.table, said.output]
    if said.polarity == LOST:
        return f"!{said.value}" if said.value else lost
    return said.value or f"!{lost}"


def _asks_single(question: Question) -> bool:
    words = question.reading.words
    return question.reading.has(_SINGLE) or any(w == _SINGLE and b != "every" for b, w in pairwise(("", *words)))
