"""What a question is after, of which a record that fits it otherwise says nothing: it would answer another question.

A statement, a figure or a drill may fit by most words and still be beside the point: it tells what lamps mean to who
asks how they are tested, or of the lamp of a leg to who asks of the light of a door. What it is asked for and does not
know bars it; it is then no more than what is known nearby.
"""

from __future__ import annotations

from collections.abc import Callable

from assistant.resolving.beside_acts import (
    act_unknown,
    choice_unknown,
    drill_for_supposed,
    failure_unknown,
    no_member_told,
    not_allowed,
    nothing_to_do,
    only_a_figure,
    supposed_unknown,
)
from assistant.resolving.beside_asked import Asked, what_is_asked
from assistant.resolving.beside_things import (
    failing,
    faulty,
    kind_untold,
    lacking,
    none_known,
    one_unknown,
    reason_of_another,
    refusing,
)
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.record_words import is_known, named_outright, stems_told
from assistant.resolving.results import (
    BandResult,
    CheckResult,
    FactResult,
    LimitResult,
    ModelResult,
    Needed,
    ProcedureResult,
    Result,
    ScheduleResult,
    TableResult,
)  # fmt: skip
from assistant.understanding.mentions import Mention
from assistant.understanding.words import stem

_Look = Callable[[Candidate, str, Asked, Knowledge], Mention | None]
_LOOKED_AT, _LEAST = 8, 0.3
"""How many of the best candidates, and down to what score, are looked at: no other one can answer."""
_HALVED = 0.5
_TOLD = (FactResult, LimitResult, ProcedureResult)
_WORKED_OUT = (ModelResult, Needed, BandResult)
_OF_ACTS: tuple[_Look, ...] = (act_unknown, only_a_figure)
_OF_CHECKS: tuple[_Look, ...] = (choice_unknown,)
_OF_SCHEDULES: tuple[_Look, ...] = (supposed_unknown,)
_LOOKS: tuple[_Look, ...] = (
    *_OF_ACTS, none_known, one_unknown, failing, faulty, refusing, lacking, drill_for_supposed, supposed_unknown,
    not_allowed, nothing_to_do, no_member_told, failure_unknown, reason_of_another, kind_untold,
)  # fmt: skip
_OF_EACH: frozenset[_Look] = frozenset((
    only_a_figure, drill_for_supposed, not_allowed, nothing_to_do, no_member_told, failure_unknown,
    reason_of_another,
))  # fmt: skip
"""What speaks against one record, and not against all that have no word of the same."""


def without_beside(found: list[Candidate], question: Question, know: Knowledge) -> list[Candidate]:
    """Return the candidates with those barred that say nothing of what a question is after.

    What the best of them has no word of, none of the others may lack either: the next best would be further off still.
    """
    best = sorted((c for c in found if c.score >= _LEAST and c.match), key=lambda c: -c.score)[:_LOOKED_AT]
    lacks = _lacking(best, question, know)
    of_all, first = lacks[id(best[0])] if best else (False, None)
    whole = first if of_all else None
    return [_less(_barred(c, lacks.get(id(c), (False, None))[1], whole, know), question, know) for c in found]


def _lacking(best: list[Candidate], question: Question, know: Knowledge) -> dict[int, tuple[bool, Mention | None]]:
    """Return by the identity of each candidate what a question is after and its record says nothing of, and whether no
    other may lack it.
    """
    looks = {id(c): _looks(c, question) for c in best}
    if not any(looks.values()):
        return dict.fromkeys(looks, (False, None))
    asked = what_is_asked(question, know)
    return {id(c): _missing(c, looks[id(c)], asked, know) for c in best}


def _looks(candidate: Candidate, question: Question) -> tuple[_Look, ...]:
    """Return the looks that are taken at a candidate: what is barred already needs none."""
    if candidate.match is None or candidate.match.barred:
        return ()
    if isinstance(candidate.result, _TOLD):
        return _LOOKS
    if isinstance(candidate.result, CheckResult):
        return _OF_CHECKS
    if isinstance(candidate.result, ScheduleResult):
        return () if question.reading.amounts else _OF_SCHEDULES
    return _OF_ACTS if isinstance(candidate.result, _WORKED_OUT) and not question.reading.amounts else ()


def _missing(
    candidate: Candidate, looks: tuple[_Look, ...], asked: Asked, know: Knowledge
) -> tuple[bool, Mention | None]:
    record = candidate.match.record if candidate.match else ""
    for look in looks:
        missing = look(candidate, record, asked, know)
        if missing is not None:
            return look not in _OF_EACH, missing
    return False, None


def _barred(candidate: Candidate, missing: Mention | None, whole: Mention | None, know: Knowledge) -> Candidate:
    if missing is None and whole is not None and _lacks(candidate, whole, know):
        missing = whole
    if missing is None or candidate.match is None or candidate.match.barred:
        return candidate
    match = candidate.match._replace(barred=(missing,))
    return candidate._replace(score=candidate.score * _HALVED, match=match)


def _lacks(candidate: Candidate, missing: Mention, know: Knowledge) -> bool:
    """Return whether a candidate's record has no word of something either."""
    if candidate.match is None or not isinstance(candidate.result, (*_TOLD, *_WORKED_OUT)):
        return False
    record = candidate.match.record
    return not is_known(missing, record, know) and stem(missing.text) not in stems_told(record, know)


def _less(candidate: Candidate, question: Question, know: Knowledge) -> Candidate:
    if not _is_row_beside(candidate.result, question, know):
        return candidate
    return candidate._replace(score=candidate.score * _HALVED)


def _is_row_beside(result: Result, question: Question, know: Knowledge) -> bool:
    """Return whether a row of a state table says nothing of what a question is after."""
    if not isinstance(result, TableResult):
        return False
    return _counts_another(result, question, know) or _only_where(result, question, know)


def _counts_another(result: TableResult, question: Question, know: Knowledge) -> bool:
    """Return whether it is asked how many there are of something that no row told speaks of: "System 2 out, how many
    applications".
    """
    words = question.reading.words
    at = next((i + 2 for i in range(len(words) - 1) if words[i : i + 2] == ("how", "many")), 0)
    things = [m for m in named_outright(question.reading.mentions, know) if 0 < at <= m.start <= at + 2]
    if not things:
        return False
    says = {(o.id, value): told for o in result.table.outputs for value, told, _ in o.values}
    told = (know.phrase(says[each]).concepts for row in result.rows for each in row.outputs if each in says)
    return frozenset().union(*told).isdisjoint(things[0].concepts)


def _only_where(result: TableResult, question: Question, know: Knowledge) -> bool:
    """Return whether a state is told to who asks to be allowed something, and only says where: "can I fly on"."""
    given = question.conditions
    if result.asked or not given or not question.reading.has("can") or not all(c.implied for c in given):
        return False
    where = {k for c in given for k in c.where}
    return all(not where.isdisjoint(m.taken) for m in named_outright(question.reading.mentions, know))
