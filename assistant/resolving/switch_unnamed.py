"""A switch that is told to be off and is not named, where more than one may be: which is asked back.

"What do I lose with the switch off" may ask of any switch that a state rests on; each leads elsewhere.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.offering import offered
from assistant.resolving.results import Choices
from assistant.resolving.state_asked import Scored, turns_off_unknown

_OFF = "off"
_SCORE = 0.98


def switch_candidates(question: Question, know: Knowledge) -> Iterator[Scored]:
    """Yield the choice between what each switch does that can be off, where one is and it is not said which."""
    if not turns_off_unknown(question):
        return
    options: dict[str, str] = {}
    for table in state_tables.tables(know.base):
        for reason in table.reasons:
            for name, value in reason.when:
                if value == _OFF and len(reason.when) == 1:
                    options.setdefault(name, reason.why)
    records = dict.fromkeys(options.values())
    if len(options) > 1:
        yield _SCORE, 1.0, Choices(tuple((record, offered(know, record)) for record in records))
