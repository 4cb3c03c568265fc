"""Two numbers said without a stop between them: "above four hundred five minutes is the most".

A reader of questions takes them for one, four hundred and five. They are two where the full answer or the question has
both, the second in the unit that is said, and not the one that they would make.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.practice.marking.points import Need
from assistant.quantities.amounts import Amount, amounts_in
from assistant.resolving.knowing import Knowledge

_SMALL = "one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|forty|fifty"
_ROW = re.compile(
    rf"\b((?:(?:{_SMALL}|a|\w+teen) )?(?:(?:{_SMALL}) thousand|thousand|hundred)) ((?:{_SMALL}) [a-z]+)\b",
    re.IGNORECASE,
)


def apart(answer: str, need: Need, know: Knowledge) -> str:
    """Return an answer with a stop between two numbers that were said as one."""
    if not _ROW.search(answer):
        return answer
    known = set(_known(need))
    return _ROW.sub(lambda found: _parted(found, known, know), answer)


def _parted(found: re.Match[str], known: set[tuple[float, str]], know: Knowledge) -> str:
    first, second, whole = (_only(text, know) for text in (found[1], found[2], found[0]))
    if first is None or second is None or whole is None or not second.unit:
        return found[0]
    two = first.value in {value for value, _ in known} and (second.value, second.unit) in known
    return f"{found[1]}, {found[2]}" if two and (whole.value, whole.unit) not in known else found[0]


def _only(text: str, know: Knowledge) -> Amount | None:
    """Return the one amount of a text."""
    amounts = amounts_in(text, know.units)
    return amounts[0] if len(amounts) == 1 else None


def _known(need: Need) -> Iterator[tuple[float, str]]:
    """Yield the numbers of the question and of the full answer."""
    yield from ((a.value, a.unit or "") for a in need.allowed)
    yield from ((f.value, f.unit) for f in need.extra)
    yield from ((f.value, f.unit) for p in need.points for f in p.figures)
