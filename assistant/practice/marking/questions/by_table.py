"""A state that a question tells before its parts: all of them ask for results of the one table that has it.

Each part by itself may be nearer to a statement on its subject, which says nothing of that state: "System 1 is lost.
Which braking mode have you, and does autobrake work?". So may be what is left, where everything that is lost is told.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.practice.marking.questions.asked import Asked, as_asked, ask
from assistant.practice.marking.questions.parts import LEADS, head_of
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge

_TWO = 2
_LEFT_TO_STOP = re.compile(
    r"\bwhat (?:\w+ ){0,2}(?:is|are|have|has|do|can|will|would)\b[^.?;]*\b(?:left|remains?|still)\b"
    r"[^.?;]*\b(?:slow|stop|brake)\b|"
    r"\bwhat remains (?:to|for)\b[^.?;]*\b(?:slow|stop|brake)|"
    r"\bwhat (?:do|can|will|would|must|should) (?:you|we|i) (?:still )?(?:stop|slow|brake)(?: \w+)? with\b",
    re.IGNORECASE,
)
"""What asks for the means of stopping in a state: "what is left to slow you down"."""


_NORMAL = re.compile(
    r"(?:^|[,;]|\band\b)[^,;.]*?\b(?:everything|all|anything) (?:else|other)\b[^,;.]*\bnormal\b|"
    r"[,;]? (?:with |and )?(?:everything|all) (?:else|other)(?: is)? (?:normal|well|healthy|working)\b",
    re.IGNORECASE,
)
"""What says that nothing else is amiss, which goes without saying: "System 2 and everything else normal"."""


def in_one_table(whole: Asked | None, parts: Sequence[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the row of the state that stands before the parts of a question, where each of them asks for a result."""
    if len(parts) < _TWO or (whole is not None and not isinstance(whole.result, (r.FactResult, r.TableResult))):
        return ()
    head = _NORMAL.sub("", head_of(text, parts)).strip(" ,;")
    if not _tells_state(head, know):
        return ()
    found = [ask(f"{head}. {LEADS.sub('', part)}", know) for part in parts]
    told = [(one[1].question, one[1].result) for one in found if one]
    results = [result for _, result in told if isinstance(result, r.TableResult)]
    if len(results) < len(parts) or len({result.table.id for result in results}) != 1:
        return ()
    if any(len(result.rows) != 1 or result.rows != results[0].rows for result in results):
        return ()
    asked = tuple(dict.fromkeys(name for result in results for name in result.asked))
    labels = tuple(dict.fromkeys(label for result in results for label in result.labels))
    return (as_asked(text, told[0][0], results[0]._replace(asked=asked, labels=labels), know),)


_VALUE = 2
"""Dots in the name of one value of a result: "in EMERGENCY" is a state too."""


def _tells_state(head: str, know: Knowledge) -> bool:
    """Return whether what stands before the parts tells that a thing is in another state than the normal one."""
    reading = know.reader.read(head) if head else None
    return reading is not None and any(c[0] == "@" or c.count(".") == _VALUE for c in reading.concepts)


def means_left(whole: Asked | None, text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return how one stops in a state, where that is asked for and what is lost in it was taken."""
    asks = _LEFT_TO_STOP.search(text)
    if whole is None or asks is None or not isinstance(whole.result, (r.LossResult, r.FactResult)):
        return ()
    head = text[: asks.start()].strip(" ,:;.")
    found = ask(f"{head}. What do you stop with?", know) if head else None
    ruled = found is not None and isinstance(found[1].result, r.TableResult) and len(found[1].result.rows) == 1
    return (found[1]._replace(answer=found[1].answer._replace(question=text)),) if found and ruled else ()
