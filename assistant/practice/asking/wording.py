"""A record in a line: what it is called, what it says, and a mark of its content by which a change is seen."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from typing import Any

from assistant.knowledge import records as kinds
from assistant.knowledge.library_records import Override
from assistant.quantities.show import exact_shown
from assistant.quantities.units import Units

_NOT_CONTENT = frozenset({"asks", "check", "also", "topic", "answers", "sources", "inverse", "needs"})
"""Fields that say how a record is asked for or where it stands, not what it says."""


def title(record: Any) -> str:
    """Return what a record is called: "maximum speed with the gear down, VLE"; of a fact, its first sentence."""
    if isinstance(record, kinds.Procedure):
        return record.title
    if isinstance(record, kinds.Fact):
        return _first_sentence(record.says)
    return str(record.of)


def statement(record: Any, units: Units) -> str:
    """Return what a record says, as one line."""
    if isinstance(record, kinds.Fact):
        return record.says
    if isinstance(record, kinds.Limit):
        return f"{record.of}: {_figures(record, units)}"
    if isinstance(record, kinds.Procedure):
        return f"{record.title}: {'; '.join(step.do for step in record.steps)}"
    if isinstance(record, kinds.Schedule):
        points = ", ".join(
            f"{exact_shown(y, record.output_unit, units)} at {exact_shown(x, record.input_unit, units)}"
            for x, y in record.points
        )
        return f"{record.of}: {points}"
    return str(getattr(record, "says", "") or record.of)


def content_of(record: Any, overrides: Iterable[Override] = ()) -> str:
    """Return a short mark of what a record says, of the base and of every variant; how it is asked does not enter."""
    said = (_essence(record), [(each.variant, _essence(each.fields)) for each in overrides])
    return hashlib.blake2b(repr(said).encode(), digest_size=8).hexdigest()


def _figures(record: kinds.Limit, units: Units) -> str:
    named = (
        ("", record.value),
        ("at least ", record.minimum),
        ("at most ", record.maximum),
        ("and at most ", record.second),
    )
    return ", ".join(
        f"{lead}{exact_shown(figure.value, figure.unit, units)}" for lead, figure in named if figure is not None
    )


def _first_sentence(text: str) -> str:
    """The text up to its first full stop that ends a sentence, without that stop."""
    for i, sign in enumerate(text[:-2]):
        if sign == "." and text[i + 1] == " " and text[i + 2].isupper():
            return text[:i]
    return text.removesuffix(".")


def _essence(value: Any) -> Any:
    if hasattr(value, "_fields"):
        return tuple(
            _essence(part) for name, part in zip(value._fields, value, strict=True) if name not in _NOT_CONTENT
        )
    return tuple(map(_essence, value)) if isinstance(value, tuple) else value
