"""Two schedules of the same kind where a question names what neither is of: "the steering limit at 60 knots".

The tillers and the pedals are limited by the same speed, in the same unit. A question that names neither of them is
answered by one of the two only by chance: it is asked back which is meant.
"""

from __future__ import annotations

from collections.abc import Iterable

from assistant.knowledge.records import Schedule
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.offering import offered
from assistant.resolving.results import Choices, Result, ScheduleResult
from assistant.understanding.words import stem


def which_schedule(best: Iterable[Result], question: Question, know: Knowledge) -> Choices | None:
    """Return the schedules to choose from, where one is among the best answers that a question does not name."""
    found = next((each for each in best if isinstance(each, ScheduleResult)), None)
    if found is None or question.context or not question.reading.amounts:
        return None
    alike = [s for s in _schedules(know) if _kind(s) == _kind(found.schedule)]
    if len(alike) < 2 or not question.reading.has("maximum", "minimum"):
        return None
    said = {c for m in question.reading.mentions for c in m.concepts | m.implied}
    stems = {stem(word) for word in question.reading.words}
    owns = [schedule.of.split()[0] for schedule in alike]
    if any(stem(own) in stems or any(c.startswith(own) for c in said) for own in owns):
        return None
    if not question.reading.has("steering"):
        return None
    return Choices(tuple((s.id, offered(know, s.id)) for s in alike))


def _schedules(know: Knowledge) -> list[Schedule]:
    found = (know.base.records[name] for name in know.base.ids("schedules"))
    return [s for s in found if isinstance(s, Schedule)]


def _kind(schedule: Schedule) -> tuple[str, str]:
    return schedule.input_unit, schedule.output_unit
