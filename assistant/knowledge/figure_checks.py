"""Whether figures that stand in more than one record agree: what was changed in one place is easily left in another.

They are told to whoever keeps the knowledge, and keep nothing from being answered: each record says what it says, and
which of two is in force only the documents tell.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from assistant.knowledge.base import Base
from assistant.knowledge.named import of_kind
from assistant.knowledge.problems import Problem
from assistant.knowledge.records import Limit, Source, Value

_NUMBER = re.compile(r"\d[\d,]*(?:\.\d+)?")


def contradictions(base: Base) -> list[Problem]:
    """Return the figures of a base that do not agree."""
    return sorted({*changes_hold(base), *statements_agree(base)})


def changes_hold(base: Base) -> Iterator[Problem]:
    """What a change says to hold now is what its record states, unless a later change of the record goes on from it."""
    changes = [named for named in of_kind(base, "changes") if named.record.record in base.records]
    for named in changes:
        change = named.record
        others = (each.record for each in changes if each is not named and each.record.record == change.record)
        if any(_numbers(other.formerly) == _numbers(change.now) for other in others):
            continue
        record = base.records[change.record]
        figures = _figures(record) if isinstance(record, Limit) else []
        if not _numbers(change.now) <= ({each.value for each in figures} or _all_numbers(record)):
            but = f"and that states {', '.join(map(_shown, figures))}" if figures else "which that does not state"
            message = f"says that '{change.record}' is now {change.now}, {but}"
            yield named.problem(message, "mend the one that is not in force, or add the change that came after")


def statements_agree(base: Base) -> Iterator[Problem]:
    """A figure of a statement is one that a limit of its paragraphs states, where limits there are in its unit.

    Nothing is said while a limit may be missing.
    """
    if base.compiled["broken"] or base.compiled["unread"]:
        return
    stated = _stated(base)
    for named in of_kind(base, "facts"):
        for value in named.record.values:
            known = {
                each for source in named.record.sources for each in stated.get(source, ()) if each[1] == value.unit
            }
            if known and value.unit != "count" and (value.value, value.unit) not in known:
                shown = ", ".join(f"{figure:g} {unit}" for figure, unit in sorted(known))
                cited = ", ".join(f"{each.document} {each.paragraph}" for each in named.record.sources)
                message = f"states {_shown(value)}, and the limits of {cited} state {shown}"
                yield named.problem(message, "mend the one that is not in force")


def _stated(base: Base) -> dict[Source, set[tuple[float, str]]]:
    """The figures of limits by their paragraphs, with those of variants."""
    found: dict[Source, set[tuple[float, str]]] = {}
    for named in of_kind(base, "limits"):
        records = [named.record, *(base.record(named.record.id, variant) for variant in base.variants)]
        for record in records:
            for source in (*named.record.sources, *record.sources):
                found.setdefault(source, set()).update((each.value, each.unit) for each in _figures(record))
    return found


def _figures(limit: Limit) -> list[Value]:
    return [each for each in (limit.maximum, limit.minimum, limit.value, limit.second) if each is not None]


def _numbers(text: str) -> frozenset[float]:
    return frozenset(float(each.replace(",", "")) for each in _NUMBER.findall(text))


def _all_numbers(part: Any) -> frozenset[float]:
    """Every number in a record, in its texts too."""
    if isinstance(part, str):
        return _numbers(part)
    if isinstance(part, tuple):
        return frozenset[float]().union(*map(_all_numbers, part))
    return frozenset((float(part),)) if isinstance(part, (int, float)) else frozenset()


def _shown(value: Value) -> str:
    return f"{value.value:g} {value.unit}"
