"""Several readings that a question gives at once and wants judged: "brakes 110, 120, 115 and 240, good to depart?".

So many of one kind are held against each other by the rule on how far apart they may be, whatever else is named.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.knowledge.records import Bands
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limit_candidates import with_each
from assistant.resolving.limits import judge
from assistant.resolving.results import Result

FEWEST = 3
"""Readings of which so many are surely of the like things, and no range."""
APART = "K"
"""The unit of how far readings are apart."""
_READ = frozenset({"temperature", "count"})
_JUDGING = frozenset({
    "ok", "okay", "good", "fine", "alright", "can", "may", "acceptable", "allowed", "problem", "issue", "well",
    "within",
    "permitted", "could", "happy", "legal", "able",
})  # fmt: skip


def readings_compared(question: Question, know: Knowledge) -> Iterator[Result]:
    """Yield the verdicts on all readings of a question by the rules on how far such may be apart."""
    reading = question.reading
    if len(reading.amounts) < FEWEST or _JUDGING.isdisjoint(reading.words) or reading.asked & (QUANTITIES - _READ):
        return
    if any(a.unit not in (None, "deg", "degC", "degF") for a in reading.amounts):
        return
    for name in know.base.ids("bands"):
        bands = know.base.records[name]
        if isinstance(bands, Bands) and bands.unit == APART and _named(bands, question, know):
            judged = judge(bands, question, know, reading.amounts)
            if judged:
                yield with_each(bands, judged, question, know)


def _named(bands: Bands, question: Question, know: Knowledge) -> bool:
    """Return whether a question names what a rule is on: its things, or what it measures of them."""
    about = know.phrase(bands.of).concepts
    return any(not m.weak and not about.isdisjoint(m.concepts) for m in question.reading.mentions)
