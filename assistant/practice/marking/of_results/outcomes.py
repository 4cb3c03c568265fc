"""The points of what the state tables give: the results asked for, what is lost, what leads there."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any

from assistant.answering.states import output_words
from assistant.knowledge.records import Fact, StateTable
from assistant.practice.marking.finding.elements import concepts_in, of_its_subject, point
from assistant.practice.marking.of_results.both_apart import both_apart
from assistant.practice.marking.of_results.case_verdicts import done_verdict, implied
from assistant.practice.marking.of_results.derived import there_is
from assistant.practice.marking.of_results.remarks import ACTION, COUNTED, counted_in, measured_in, remarked
from assistant.practice.marking.of_statements.named_half import of_what_is_named
from assistant.practice.marking.points import Point, State
from assistant.practice.marking.questions.asked import Asked
from assistant.practice.marking.questions.parts import POLAR, parts_of, pieces
from assistant.practice.marking.questions.phrased import asks_label
from assistant.practice.marking.questions.turned import asks_loss
from assistant.practice.marking.reading.said import plain
from assistant.resolving import tables
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates
from assistant.resolving.results import CauseResult, TableResult
from assistant.understanding.states import Condition

_CAUSAL = re.compile(
    r"\b(?:what (?:has|have|must have|puts|makes|would|could)|how (?:could|can)|leads?|which failures?|what failures?|"
    r"when|why|loses?)\b"
)
"""What asks for what leads to a state, though no word of the knowledge says so."""
_NEAR_BY = 8
"""Candidates among which a table's own result is looked for."""
_SURE = 0.6


def table_points_of(one: Asked, text: str, know: Knowledge) -> list[Point]:
    """Return the points of one state table."""
    return _table_points(one.result, text, know)


def tables_points(one: Asked, text: str, know: Knowledge) -> list[Point]:
    """Return the points of several state tables."""
    results = one.result.results  # type: ignore[union-attr]
    made = [_table_points(result, text, know, len(results) == 1) for result in results]
    judged = [points for points in made if points and all(p.state or p.verdict for p in points)]
    asks = len(parts_of(text)) < 2 and POLAR.search(text) and not ACTION.search(text)
    return [p for points in (judged if asks and judged else made) for p in points]


def _table_points(result: Any, text: str, know: Knowledge, alone: bool = True) -> list[Point]:
    text = _without_labels(text) if result.labels else text
    names = outputs_asked(result, text, know, alone)
    if len(parts_of(text)) < 2 and POLAR.search(text) and not ACTION.search(text):
        judged = _judged(result, names, text, know)
        if judged:
            return judged
    points = []
    for row in result.rows:
        said = dict(row.outputs)
        told = [output_point(result.table, name, said[name], know) for name in names if name in said]
        made = [of_what_is_named(p, text, know) for p in told]
        made += counted_in(result.table, said, names, text, know) + measured_in(result.table, said, names, text, know)
        points += [_or_lost(p, result.table, know) for p in made] if know.reader.read(text).asks_loss else made
        if ACTION.search(text):
            points += [p for name in names if name in said for p in action_of(result.table, name, said[name], know)]
        points += remarked(result.table, row, text, know)
    return points


def _judged(result: Any, names: list[str], text: str, know: Knowledge) -> list[Point]:
    """Return the yes or no alone that a question on one state asks for; what more there is may be said besides."""
    points = []
    for row in result.rows:
        said = dict(row.outputs)
        for name in (n for n in names if n in said):
            made = output_point(result.table, name, said[name], know)
            points += [made] if made.state else []
    last = know.phrase(pieces(text)[-1]).concepts
    named = [p for p in points if p.state and p.state.subject & last]
    if points or len(names) != 1 or len(result.rows) != 1:
        return named or points
    output = next(o for o in result.table.outputs if o.id == names[0])
    value = dict(result.rows[0].outputs).get(names[0], "")
    there = there_is(output, value, text, know)
    if there:
        return [Point(there, verdict=there), implied(output_point(result.table, names[0], value, know))]
    if not any(_denies(each, output.label) for _, each, _ in output.values):
        verdict = done_verdict(output_words(result.table, names[0], value), text)
        made = output_point(result.table, names[0], value, know)
        return [Point(verdict, verdict=verdict), implied(made)] if verdict else []
    concepts = know.phrase(text).concepts
    named = [v for v, _, _ in output.values if f"={result.table.id}.{output.id}.{v}" in concepts]
    gone = value not in named if named else _denies(output_words(result.table, names[0], value), output.label)
    of_none = any(_denies(each, output.label) for v, each, _ in output.values if v in named)  # "lose the brakes"
    verdict = "no" if gone is not (asks_loss(text) and not of_none) else "yes"
    return [Point(verdict, verdict=verdict)]


def _denies(says: str, label: str) -> bool:
    """Return whether a result says that the thing is not there: "no steering", "do not respond"."""
    return f"no {label}" in says or bool(_NEGATED.search(says.split(",")[0]))


_NEGATED = re.compile(r"\b(?:not|no|cannot)\b")


def outputs_asked(result: Any, text: str, know: Knowledge, alone: bool = True) -> list[str]:
    """Return the outputs that the last sentence of a question names; those it was read as asking for otherwise."""
    asking = [s for s in re.split(r"(?<=[.?!:;])\s+", text.strip()) if s][-1:]
    concepts = know.phrase(asking[0]).concepts if asking else frozenset()
    found = [o.id for o in result.table.outputs if names_output(o, concepts, know)]
    if asking and _HOW_TO.search(asking[0]):
        found += [o.id for o in result.table.outputs if _is_manner(o) and o.id not in found]
    found = [name for name in found if name in result.asked or len(found) > 1] or found
    if found and set(found) < set(result.asked):
        return found
    asked_for = {*result.asked, *found}
    asks = _without_labels(asking[0]) if asking and result.labels else "".join(asking)
    parts = [p for p in parts_of(asks) if not COUNTED.search(p)]
    if alone and len(asked_for) < min(len(parts), len(result.table.outputs)) == 2:
        return [o.id for o in result.table.outputs][:2]
    return list(dict.fromkeys([*result.asked, *found])) or [o.id for o in result.table.outputs]


def _without_labels(text: str) -> str:
    """Return a question without the parts that ask which light or memo shows: the label told answers those."""
    for part in (p for p in parts_of(text) if asks_label(p)):
        text = re.sub(rf"[,;]?\s*(?:\band\s+)?{re.escape(part.removeprefix('and '))}", "", text)
    return text


_HOW_TO = re.compile(
    r"\bhow (?:do|does|can|would|should|must|will) (?:\w+ ){1,2}"
    r"(?:stop|brake|slow|press|apply|use the (?:pedals|brakes))\b|"
    r"\bwhat (?:else |then |still )?(?:stops|slows) (?:you|it|us|the)\b|\btechnique\b",
    re.IGNORECASE,
)
"""What asks for the manner of braking."""


def _is_manner(output: Any) -> bool:
    """Return whether an output tells how something is done, as its ways of asking say."""
    return any(ask.startswith("how do I ") for ask in output.asks_under)


def names_output(output: Any, concepts: frozenset[str], know: Knowledge) -> bool:
    """Return whether concepts name an output of a state table, as its label has it: all of "pedal steering"."""
    own = [m.concepts - _OF_ALL for m in know.phrase(output.label).mentions if not m.weak]
    return all(each & concepts for each in own if each) and any(own)


_OF_ALL = frozenset(("brake", "gear"))


def table_results(result: Any) -> Iterable[Any]:
    """Return the results of state tables that a result holds: itself, or its parts."""
    parts: Iterable[Any] = getattr(result, "results", ())
    return (result,) if isinstance(result, TableResult) else parts


def values_of(result: Any, output: str) -> set[str | None]:
    """Return the values that an output has in the rows that apply."""
    return {dict(row.outputs).get(output) for row in result.rows}


def output_point(table: StateTable, name: str, value: str, know: Knowledge) -> Point:
    """Return one result of a state table as a point."""
    words = output_words(table, name, value).split(": ")[0]
    output = next(o for o in table.outputs if o.id == name)
    if value in ("yes", "no"):
        of = f"={table.id}.{output.id}"
        subject = next(m.concepts for m in know.phrase(output.label).mentions if not m.weak)
        made = point(words, know, state=State(subject, value == "yes", (f"{of}.no", f"{of}.yes")))
        return made._replace(negated=value == "no", figures=())
    return _by_value(both_apart(of_its_subject(point(words, know, kept=True, state=None)), know), value, know)


def _or_lost(made: Point, table: StateTable, know: Knowledge) -> Point:
    """Let the normal result, which is lost, do for the one that is left: "NORMAL" for ALTERNATE."""
    for output in table.outputs:
        normal = output.values[0][0]
        left = {f"={table.id}.{output.id}.{value}" for value, _, _ in output.values[1:]}
        if normal not in ("yes", "no") and any(e.concepts & left for e in made.elements):
            gone = frozenset((f"={table.id}.{output.id}.{normal}",)) | concepts_in(output.values[0][1], know)
            if any(f"no {output.label}" in says for _, says, _ in output.values if says.startswith(made.text)):
                gone |= concepts_in(output.label, know)
            return made._replace(elements=tuple(e._replace(concepts=e.concepts | gone) for e in made.elements))
    return made


def states_beside(one: Asked, told: Iterable[Point], know: Knowledge) -> list[Point]:
    """Return what else is there or not in a state, which need not be said, and may not be contradicted."""
    held = {p.text for p in told}
    made = [
        output_point(result.table, name, value, know)
        for result in table_results(one.result) if len(result.rows) == 1
        for name, value in result.rows[0].outputs if value in ("yes", "no")
    ]  # fmt: skip
    return [p._replace(optional=True) for p in made if p.text not in held]


def action_of(table: StateTable, name: str, value: str, know: Knowledge) -> list[Point]:
    """Return what a result says to do: "the parking brake does not hold: use chocks"."""
    action = output_words(table, name, value).partition(": ")[2]
    return [point(action, know)] if action else []


def _by_value(made: Point, value: str, know: Knowledge) -> Point:
    """Let the bare name of a result do for it: "emergency" for EMERGENCY braking; not what else is called so."""
    named = frozenset(c for c in concepts_in(value, know) if c[0] != "@")
    elements = (
        e._replace(concepts=e.concepts | named, words=(plain(value),)) if plain(value) in e.words else e
        for e in made.elements
    )
    return made._replace(elements=tuple(elements))


def loss_points(one: Asked, text: str, know: Knowledge) -> list[Point]:
    """Return what a document lists as lost, where one does; else what the tables say that no longer works."""
    listed = _listed_loss(one, text, know)
    for table in tables.tables(know.base):
        listed = [_or_lost(p, table, know) for p in listed]
    if listed:
        return listed
    result: Any = one.result
    lost = [(t, o, v) for t, o, v in result.lost if v == "no" or o in ("mode", "steering")] or result.lost
    points = [_or_lost(output_point(t, o, v, know), t, know) for t, o, v in lost]
    for fact in result.facts:
        points += [point(p, know) for p in fact.points]
    return points or [point(one.answer.text, know)]


def _listed_loss(one: Asked, text: str, know: Knowledge) -> list[Point]:
    for candidate in candidates(one.question, know)[:8]:
        fact = getattr(candidate.result, "fact", None)
        if fact and fact.points and candidate.match and not candidate.match.barred and candidate.score >= _SURE:
            made = [point(p, know) for p in fact.points]
            if any(p.state for p in made):  # it says what is gone, and not only what is done then
                return made
    return []


def cause_points(one: Asked, text: str, know: Knowledge) -> list[Point]:
    """Return a point for each set of failures that leads to a result: all of its members are to be said."""
    from assistant.answering.parts import conditions_words

    result: Any = one.result
    sets = sorted(result.sets, key=len)
    if result.single:
        sets = [s for s in sets if len(s) == len(sets[0])] if sets else []
    return [
        Point(conditions_words(tuple(Condition(n, v) for n, v in chosen), know), way=frozenset(chosen), kept=True)
        for chosen in sets if chosen
    ] or [point(one.answer.text, know)]  # fmt: skip


def cause_of(one: Asked, know: Knowledge) -> Asked:
    """Return the state table's own result in place of a statement of it, where what leads to a result is asked."""
    fact = getattr(one.result, "fact", None)
    reading = one.question.reading
    causal = reading.has("cause", "single") or _CAUSAL.search(" ".join(reading.words))
    if fact is None or not causal or re.search(r"\bworks? (?:only )?if\b", fact.says):
        return one
    for candidate in candidates(one.question, know)[:_NEAR_BY]:
        if isinstance(candidate.result, CauseResult) and candidate.score >= _SURE and candidate.result.sets:
            return one._replace(result=candidate.result) if _tells_all(fact, know) else one
    opening = _opening(fact, know)
    for concept in (*sorted(reading.concepts), *opening):
        found = _causes_of(concept, know)
        if found and (concept in opening or _names_all(fact, found, know)) and _tells_all(fact, know):
            return one._replace(result=found)
    return one


def causes_behind(one: Asked, text: str, know: Knowledge) -> CauseResult | None:
    """Return what leads to the result that a question "when" names, where a statement of it was taken."""
    if not _WHEN.search(text):
        return None
    found = (_causes_of(concept, know) for concept in sorted(know.reader.read(text).concepts))
    return next((each for each in found if each), None)


_WHEN = re.compile(r"\bwhen (?:are|is|do|does|will|would)\b", re.IGNORECASE)


def figures_of(one: Asked, know: Knowledge) -> list[Point]:
    """Return the points of a statement that give a figure, which no state table tells."""
    return [made for text in one.result.fact.points if (made := point(text, know)).figures]  # type: ignore[union-attr]


def _opening(fact: Fact, know: Knowledge) -> list[str]:
    """Return the result that a statement begins with: "The pedals do not steer with ..."."""
    return [
        f"={table.id}.{output.id}.{value}"
        for table in tables.tables(know.base)
        for output in table.outputs
        for value, says, _ in output.values
        if fact.says.startswith(says.split(":")[0] + " ")
    ]


def _tells_all(fact: Fact, know: Knowledge) -> bool:
    """Return whether a statement has no figure but in its points."""
    figures = [a for p in fact.points for a in know.phrase(p).amounts]
    return len(figures) >= len(know.phrase(fact.says).amounts)


def _causes_of(concept: str, know: Knowledge) -> CauseResult | None:
    """Return what leads to a result that a concept names, unless it is the normal one."""
    if concept[0] != "=" or concept.count(".") < 2:
        return None
    table, output, value = concept[1:].split(".", 2)
    record = know.base.records[table]
    found = tables.causes(record, output, value, know, False, ())
    return found if found.sets and found.sets != ((),) else None


def _names_all(fact: Fact, found: CauseResult, know: Knowledge) -> bool:
    """Return whether a statement names every input that leads to a result."""
    terms = {know.base.inputs[name].term for chosen in found.sets for name, _ in chosen}
    return terms <= know.phrase(fact.says).concepts
