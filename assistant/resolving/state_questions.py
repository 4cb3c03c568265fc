"""Questions about states: which row fits, what is lost, and what leads to a result."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from assistant.knowledge.records import StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.asks_whence import may_ask
from assistant.resolving.failure_kind import of_the_kind
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.state_asked import Scored, left_open, only_told, output_matches
from assistant.resolving.state_causes import cause_candidates
from assistant.resolving.state_indications import indication_candidates
from assistant.resolving.state_losses import loss_candidates
from assistant.resolving.state_results import result_candidates
from assistant.resolving.state_rows import row_candidates
from assistant.resolving.state_shown import shown_candidates
from assistant.resolving.state_spared import spared_candidates
from assistant.resolving.state_told import told_candidates
from assistant.resolving.switch_unnamed import switch_candidates
from assistant.understanding.clauses import asking
from assistant.understanding.matching import Match
from assistant.understanding.states import Condition

_OTHER_TABLE = 0.75
_NEARLY = 0.9


def _asked_outright(matches: list[Match], question: Question, excused: Collection[int]) -> list[Match]:
    """Return the ways of asking of which more is said than what tells a state.

    "Anti-skid is off, | can I still set the parking brake" asks for no anti-skid.
    """
    asks = asking(question.reading.words) if matches else frozenset()
    if not asks:
        return []
    said = [m for m in question.reading.mentions if m.start in asks or m.start not in excused]
    named = frozenset().union(*(m.concepts | m.implied for m in said))
    return [m for m in matches if m.whole and not named.isdisjoint(m.concepts)]


def _filled(match: Match, inputs: tuple[Condition, ...], know: Knowledge) -> Match:
    """Return a way of asking as whole of which only what its words bring along is unsaid, where a state that decides it
    is given: "System 1 is gone, gear up?".
    """
    table = know.base.records[match.record]
    told = isinstance(table, StateTable) and any(c.input in table.inputs and not c.implied for c in inputs)
    return match._replace(covered=1.0) if told and match.covered >= _NEARLY else match


def _only_told(table: StateTable, question: Question) -> bool:
    """Return whether a question names results of a table only in what it tells."""
    return not any(c.is_result and c.asked and c.input.startswith(table.id + ".") for c in question.conditions)


def state_candidates(question: Question, know: Knowledge, excused: Collection[int]) -> Iterator[Scored]:
    """Yield what the state tables answer to a question."""
    inputs = tuple(c for c in question.conditions if not c.is_result)
    matches = [_filled(m, inputs, know) for m in output_matches(question, know, excused)]
    undecided = left_open(question, know)
    settled = tuple(c for c in inputs if not undecided.intersection(c.where))
    matches = [m for m in matches if not only_told(m.record, question, know, excused)]
    outright = _asked_outright(matches, question, excused)
    if outright:
        matches = [m for m in matches if m in outright or not m.whole]
    meant = {m.record for m in matches if m.whole}
    for table in state_tables.tables(know.base):
        if table.id in question.results_named and not (outright and _only_told(table, question)):
            meant.add(table.id)
    for table in state_tables.tables(know.base):
        own = [m for m in matches if m.record == table.id]
        fits = inputs or own or table.id in question.results_named
        for score, weight, result in row_candidates(table, inputs, own, question, know, excused) if fits else ():
            # Where a result of one table is asked for, the others have nothing to say.
            yield score * (1.0 if not meant or table.id in meant else _OTHER_TABLE), weight, result
        yield from result_candidates(table, own, question, know, excused)
        for score, weight, cause in cause_candidates(table, settled, own, question, know, excused):
            yield score, weight, of_the_kind(cause, question.reading.words, know)
    yield from indication_candidates(question, know, excused)
    yield from loss_candidates(inputs, matches, question, know, excused)
    yield from spared_candidates(question, know, excused)
    yield from shown_candidates(inputs, question, know, excused)
    yield from told_candidates(inputs, question, know, excused)
    yield from switch_candidates(question, know)
    if may_ask(question.reading.words):
        from assistant.resolving.state_taken import taken_candidates  # few first questions ask so

        for score, weight, cause in taken_candidates(question, know):
            yield score, weight, of_the_kind(cause, question.reading.words, know)
