"""What is lost, and what stays, under the states that a question gives."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

from assistant.knowledge.records import Fact, Source, StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.loss_asked import asks_what_is_left, asks_what_is_out
from assistant.resolving.results import LossResult
from assistant.resolving.state_asked import (
    UNEXPLAINED,
    Scored,
    barring,
    content_of,
    fails_unknown,
    is_well,
    left_open,
    told_differs,
    turns_off_unknown,
)
from assistant.understanding.asides import besides
from assistant.understanding.clauses import asking
from assistant.understanding.matching import Match
from assistant.understanding.mentions import RESULT
from assistant.understanding.states import Condition

_ALL = frozenset(("what", "everything", "whatever", "all"))
_JOINS = frozenset(("and", "also", "plus", ",", "&"))
_NEAR = 3
_IN_PASSING = 0.7
"""Share left where nothing has failed, and a state is only said by the way: "after lift-off, what have I got to …"."""


def loss_candidates(
    inputs: tuple[Condition, ...], matches: list[Match], question: Question, know: Knowledge,
    excused: Collection[int],
) -> Iterator[Scored]:  # fmt: skip
    """Yield everything that the states given change, where a question asks what goes or what happens."""
    losing = bool(inputs) and (
        _asks_what_goes(matches, question, know, excused) or _asks_what_is_gone(inputs, question, know)
    )
    if not inputs or not (losing or question.reading.says("happens", "steps")):
        return
    if question.reading.has("cause", "single") and any("=" in c[0] for c in question.reading.concepts):
        return  # what leads to a result is asked, under the states given
    if all(is_well(c, know) for c in inputs) and fails_unknown(question):
        return  # "both systems ok, BC dead, what have I got": something that is not understood has failed
    if left_open(question, know) or turns_off_unknown(question):
        return  # "a system": one of two, and not both of them
    if not losing and not question.reading.has("happens") and any(c.implied for c in inputs):
        return
    content = content_of(question, know, excused)
    known = _told_by_tables(know)
    barred = [m for m in content if known.isdisjoint(m.concepts)]
    score = 1.01 if losing else 0.84
    asks = _asked_concepts(question) if losing else frozenset()
    told = [m for m in matches if not asks or not (asks.isdisjoint(m.concepts) or _set_aside(m, question))]
    asked = any(m.whole and m.share > 0.5 for m in told) and not _asks_all(question)
    if asked or _asks_of_others(inputs, matches, question, know):
        score = 0.7
    if all(c.implied for c in inputs) and _asks_what_there_is(question):
        score *= _IN_PASSING
    if question.reading.has("cause"):
        score *= 0.9  # it asks what leads to the state that it names
    found = _with_what_stays(loss(inputs, know), matches, question, know)
    if not found.lost and not found.facts:
        score *= 0.8  # nothing follows from it, so that something else is asked
    now = {(table.id, output): value for table, output, value in (*found.lost, *found.kept)}
    score *= UNEXPLAINED if told_differs([now], question, know) else 1.0
    yield score * barring(barred, know), 2.0, found


def _asks_what_is_gone(inputs: tuple[Condition, ...], question: Question, know: Knowledge) -> bool:
    """Return whether it is asked what has gone or is left, with something failed, and nothing is named of it."""
    if all(is_well(c, know) for c in inputs):
        return False
    places = frozenset(k for c in inputs for k in c.where)
    return asks_what_is_out(question.reading, places) or asks_what_is_left(question.reading, places)


def _asked_concepts(question: Question) -> frozenset[str]:
    """Return the concepts in what asks: "the gear was put down by free fall, | what have I lost |" asks for no gear."""
    asks = asking(question.reading.words, marks=False)
    return frozenset().union(*(m.concepts | m.implied for m in question.reading.mentions if m.start in asks))


def _with_what_stays(found: LossResult, matches: list[Match], question: Question, know: Knowledge) -> LossResult:
    """Return what is lost with the results asked for of tables that the states do not touch: they stay as they are.

    Where it is asked what is left, and nothing is named of it, all of them are told.
    """
    kept, sources = list(found.kept), list(found.sources)
    asked = [(know.base.records[m.record], m.output) for m in matches if m.whole]
    if asks_what_is_left(question.reading, frozenset(k for c in found.conditions for k in c.where)):
        asked += [(table, output.id) for table in state_tables.tables(know.base) for output in table.outputs]
    for table, output in asked:
        if any(c.input in table.inputs for c in found.conditions):
            continue
        stays = (table, output, state_tables.outputs(table, {}, know.base)[output])
        if stays not in kept:
            kept.append(stays)
            sources.extend(state_tables.row(table, (), know.base).sources)
    return found._replace(kept=tuple(kept), sources=tuple(dict.fromkeys(sources)))


def _asks_what_there_is(question: Question) -> bool:
    """Return whether it is asked what somebody has, and not what goes: "what have I got to free it"."""
    lost = [m.text.split() for m in question.reading.mentions if "lose" in m.concepts]
    has = bool(lost) and all("have" in said or "got" in said for said in lost)
    return has and "not" not in question.reading.words


def _asks_all(question: Question) -> bool:
    """Return whether all that is lost is asked for, beside a result: "what have I lost, and which mode am I in"."""
    words = question.reading.words
    lost = [m for m in question.reading.mentions if "lose" in m.concepts]
    return any(
        not _ALL.isdisjoint(words[max(0, m.start - _NEAR) : m.end])
        and not _JOINS.isdisjoint(words[m.end : m.end + _NEAR])
        for m in lost
    )


def _set_aside(match: Match, question: Question) -> bool:
    """Return whether a result is named only as lost already: "what do we lose, apart from powered extension"."""
    aside = besides(question.reading.words)
    named = [m for m in question.reading.mentions if not match.concepts.isdisjoint(m.concepts | m.implied)]
    return bool(aside) and any(m.start in aside for m in named)


def _asks_of_others(
    inputs: tuple[Condition, ...], matches: list[Match], question: Question, know: Knowledge
) -> bool:
    """Return whether results are asked for that the states given do not touch: "autobrake after a free fall"."""
    asked = {m.record for m in matches if m.whole}
    asked |= {c.table for c in question.conditions if c.is_result and c.asked}
    return bool(asked) and not any(c.input in know.base.records[name].inputs for name in asked for c in inputs)


def _asks_what_goes(
    matches: list[Match], question: Question, know: Knowledge, excused: Collection[int]
) -> bool:
    """Return whether it is asked what is lost, and not only told that a thing is: "we lose System 1; which mode?"."""
    reading = question.reading
    losing = [m for m in reading.mentions if "lose" in m.concepts]
    if any(m.start not in excused for m in losing):
        return True
    if not losing or not reading.asks_loss:
        return reading.asks_loss
    if any(c.is_result and c.asked for c in question.conditions):
        return False
    asks = asking(reading.words, marks=False)
    content = [m for m in content_of(question, know, excused) if not asks or m.start in asks]
    whole = [m.record for m in matches if m.whole]
    known = _told_by_tables(know)
    told = [m for m in content if not known.isdisjoint(m.concepts)]
    if not told:
        return not content  # "I lose the controller: how do I keep straight": no table tells
    return not any(all(know.matcher.vocabulary(t) & m.concepts for m in told) for t in whole)


def _told_by_tables(know: Knowledge) -> frozenset[str]:
    """Return the concepts that any state table explains."""
    return frozenset().union(*(know.matcher.vocabulary(t.id) for t in state_tables.tables(know.base)))


def _overtaken(fact: Fact, state: Mapping[str, str], know: Knowledge) -> bool:
    """Return whether more has failed than a statement speaks of, and a result that it names is no longer so."""
    failures = {name for name, value in state.items() if value != know.states.normal(name)}
    if failures <= {name for name, _ in fact.when}:
        return False
    named = (c[1:].rsplit(".", 1) for c in know.matcher.vocabulary(fact.id) if c.startswith(RESULT))
    for result, value in named:
        table, output = result.split(".", 1)
        record = know.base.records[table]
        known = (state_tables.outputs(record, each, know.base).get(output) for each in ({}, state))
        if value not in known:
            return True
    return False


def loss(inputs: tuple[Condition, ...], know: Knowledge) -> LossResult:
    """Return everything that differs from normal under some conditions, across all tables."""
    lost: list[tuple[StateTable, str, str]] = []
    kept: list[tuple[StateTable, str, str]] = []
    state = {c.input: c.value for c in inputs}
    sources: list[Source] = []
    for table in state_tables.tables(know.base):
        if not any(c.input in table.inputs for c in inputs):
            continue
        normal = state_tables.outputs(table, {}, know.base)
        now = state_tables.outputs(table, state, know.base)
        sources.extend(state_tables.row(table, inputs, know.base).sources)
        for output in table.outputs:
            (lost if now[output.id] != normal[output.id] else kept).append((table, output.id, now[output.id]))
    facts = tuple(
        fact
        for fact in know.facts_in_states
        if any(k in state for k, _ in fact.when)
        and all(state.get(k, know.states.normal(k)) == v for k, v in fact.when)
        and not _overtaken(fact, state, know)
    )
    sources.extend(s for fact in facts for s in fact.sources)
    return LossResult(inputs, tuple(lost), tuple(kept), facts, tuple(dict.fromkeys(sources)))
