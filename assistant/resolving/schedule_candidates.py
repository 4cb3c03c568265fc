"""What a matching schedule answers to a question: what there is at an amount, what it lacks, or all of it."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.knowledge.records import Schedule
from assistant.resolving.candidates import Candidate, state_penalty
from assistant.resolving.controls_in_use import moved_in_vain
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.read_at_an_order import read_at_an_order
from assistant.resolving.results import Needed, ScheduleResult
from assistant.resolving.schedules import asks_input, has_it, leftover, resolve_schedule
from assistant.understanding.matching import Match

_HAD = 1.4
"""How much more a schedule is worth where it is asked how much of it one has."""
_NOW = frozenset({"at", "now", "current", "currently", "present", "doing"})
"""Words by which a question means one speed, though it does not say which."""
_MOVED_IN_VAIN = 1.45
"""What it gains that a control does nothing, over what its schedule gives."""
_UP_TO_WHAT = 0.6
"""A schedule as a whole, where it is asked up to what input something holds, which a figure of its own may tell."""


def of_schedule(schedule: Schedule, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    """Yield what a schedule gives at an amount, or asks for, or is as a whole."""
    idle = moved_in_vain(schedule, question, know)
    if idle:
        yield Candidate(min(1.2, match.score * _MOVED_IN_VAIN), match.matched + 1.0, idle, match)
        return
    result = resolve_schedule(schedule, question, know)
    if not schedule.works:
        match = match._replace(score=match.score * state_penalty(match, question, know))
    if isinstance(result, ScheduleResult):
        rest = len(leftover(schedule, question, know)) + read_at_an_order(question, know)
        yield Candidate(min(1.2, match.score * 1.12) * 0.6**rest, match.matched + 0.6, result, match)
    elif isinstance(result, Needed):
        here = 1.15 if _NOW.intersection(question.reading.words) else 0.93
        here = _HAD if has_it(question.reading.words) else here
        yield Candidate(match.score * here, match.matched, result, match)
    else:
        shown = 0.93 if question.reading.has("maximum", "list_all", schedule.output) else 0.7
        shown = _UP_TO_WHAT if asks_input(schedule, question, know) else shown
        yield Candidate(match.score * shown, match.matched, ScheduleResult(schedule, float("nan"), None), match)
