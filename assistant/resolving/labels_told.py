"""The labels that show with a state, where a question asks which memo or caution comes with it as well."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from assistant.knowledge.records import Fact, StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Result, TableResult, TablesResult
from assistant.understanding.clauses import asking
from assistant.understanding.condition import Condition, is_result

_WITH_LABEL = frozenset(("show", "shown_to", "warning", "amber", "white", "red", "can"))
"""Concepts that may stand beside a label of which it is asked whether it shows."""
_OPEN = frozenset({"what", "which", "how", "why", "where", "when", "who"})
_ASKED = "warning"
"""The concept of what a label is: a memo, a caution, a message."""
_LABELS = frozenset(("caption", "captions", "light", "lights", "indication", "indications", "annunciation", "alert"))
"""Other words for it."""
_BEING_TOLD = frozenset(("told", "know", "warned", "alerted", "notice", "notified"))


def with_labels(result: Result, question: Question, know: Knowledge) -> Result:
    """Return a result with the labels that show in its state, where the question asks for such."""
    if not isinstance(result, (TableResult, TablesResult)) or not _asks_label(question):
        return result
    told = tuple(dict.fromkeys((*labels_of(question.conditions, know), *labels_ended(question, know))))
    if isinstance(result, TableResult):
        return result._replace(labels=told) if len(result.rows) == 1 else result
    if any(len(one.rows) > 1 for one in result.results):
        return result
    return TablesResult((*result.results[:-1], result.results[-1]._replace(labels=told)))


def _asks_label(question: Question) -> bool:
    reading = question.reading
    places = {m.start for m in reading.mentions if _ASKED in m.concepts}
    places |= {k for k, word in enumerate(reading.words) if word in _LABELS}
    asks = asking(reading.words)
    said = {reading.words[k] for k in asks}
    return not asks.isdisjoint(places) or ("how" in said and not _BEING_TOLD.isdisjoint(said))


def label_shown(question: Question, know: Knowledge) -> TableResult | None:
    """Return whether a label shows in the state given, where just that is asked: "hyd 2 lost: RESERVE BRAKE?"."""
    reading = question.reading
    asks = asking(reading.words) if question.conditions else frozenset()
    shows = know.states.shows.keys()
    named = [m for m in reading.mentions if m.start in asks and not shows.isdisjoint(m.concepts)]
    given = tuple(c for c in question.conditions if not c.is_result)
    if len(named) != 1 or not given or any(not {*named[0].taken}.isdisjoint(c.where) for c in given):
        return None
    told = {k for c in given for k in c.where}
    rest = [m for m in reading.mentions if m is not named[0] and not m.weak and m.start not in told]
    alone = all(not _WITH_LABEL.isdisjoint(m.concepts) or any(c in know.states.sets for c in m.concepts) for m in rest)
    if not alone or not _OPEN.isdisjoint(reading.words):
        return None
    label, pairs = next(know.states.shows[c] for c in named[0].concepts if c in know.states.shows)
    table = _table_of([name for name, _ in pairs], given, know)
    if table is None:
        return None
    state = {c.input: c.value for c in given}
    holds = all(_holds(name, value, state, know) for name, value in pairs)
    row = state_tables.row(table, given, know.base)
    return TableResult(table, (row,), (), label=(label, holds)) if row.conditions else None


def _table_of(names: list[str], given: tuple[Condition, ...], know: Knowledge) -> StateTable | None:
    """Return the table that a label rests on, where a state given bears on it."""
    for table in state_tables.tables(know.base):
        mine = any(n.startswith(table.id + ".") if is_result(n) else n in table.inputs for n in names)
        if mine and any(c.input in table.inputs for c in given):
            return table
    return None


def labels_of(conditions: Iterable[Condition], know: Knowledge) -> Iterator[Fact]:
    """Yield what is known of each label that shows in the states given."""
    state = {c.input: c.value for c in conditions if not c.is_result}
    for concept, (label, pairs) in know.states.shows.items():
        if all(_holds(name, value, state, know) for name, value in pairs):
            fact = _about(concept, label, know)
            if fact is not None:
                yield fact


def labels_ended(question: Question, know: Knowledge) -> Iterator[Fact]:
    """Yield what is known of each label that tells that a result has gone which the question names: "FIRM is armed
    and System 2 fails, what becomes of the autobrake, and which caption tells me".
    """
    state = {c.input: c.value for c in question.conditions if not c.is_result}
    named = frozenset().union(*(m.concepts | m.implied for m in question.reading.mentions))
    for concept, (label, pairs) in know.lexicon.ends.items() if state else ():
        spoken_of = all(name.split(".", 1)[1] in named for name, _ in pairs)
        if spoken_of and not any(_holds(name, value, state, know) for name, value in pairs):
            fact = _about(concept, label, know)
            if fact is not None:
                yield fact


def label_holds(concept: str, conditions: Iterable[Condition], know: Knowledge) -> bool:
    """Return whether a label shows in the states given, what is not named being normal."""
    state = {c.input: c.value for c in conditions if not c.is_result}
    return all(_holds(name, value, state, know) for name, value in know.states.shows[concept][1])


def _holds(name: str, value: str, state: dict[str, str], know: Knowledge) -> bool:
    if not is_result(name):
        return state.get(name, know.states.normal(name)) == value
    table, output = name.split(".", 1)
    return state_tables.outputs(know.base.records[table], state, know.base).get(output) == value


def _about(concept: str, label: str, know: Knowledge) -> Fact | None:
    """Return the statement that tells when a label shows."""
    for match in know.matcher.rank(know.phrase(f"{label} meaning")):
        fact = know.base.records[match.record]
        if concept in match.concepts and isinstance(fact, Fact):
            return fact
    return None
