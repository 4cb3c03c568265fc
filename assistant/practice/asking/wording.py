"""A record in a line: what it is called, what it says, and a mark of its content by which a change is seen."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Mapping
from typing import Any

from assistant.knowledge import records as kinds
from assistant.knowledge.library_records import Override
from assistant.quantities.show import exact_shown
from assistant.quantities.units import Units

_NOT_CONTENT = frozenset((
    "asks", "asks_under", "check", "also", "also_said", "topic", "answers", "sources", "inverse", "needs", "quiz",
    "then", "done", "rehearsed", "cues", "ask", "why", "chooses", "opens",
))  # fmt: skip
"""Fields that say how a record is asked for, marked or rehearsed, or where it stands, not what it says."""
_OF_ONE_KIND: Mapping[type, tuple[frozenset[str], frozenset[str]]] = {
    kinds.Fact: (frozenset({"title", "points", "when"}), frozenset()),
    kinds.TableRule: (frozenset(), frozenset({"then"})),
}
"""Fields that are none of what one kind says, and fields that are of it, though not of others."""


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


def content_of(record: Any, overrides: Iterable[Override] = (), said: str = "") -> str:
    """Return a short mark of what a record says, of the base and of every variant; how it is asked does not enter.

    said: its statement, kept with the mark, so that what it was can be told once it is otherwise.
    """
    held = (_essence(record), [(each.variant, _essence(each.fields)) for each in overrides])
    return f"{hashlib.blake2b(repr(held).encode(), digest_size=8).hexdigest()} {said}"


def parted(then: str, now: str) -> tuple[str, str] | None:
    """Return in what two marks of content differ: both statements, or only what is said of the same. None if in
    nothing, or where the first is of a record that was kept without its statement: that cannot be told.

    Both are empty where the statements are the same, and what they stand for is not.
    """
    (mark, _, before), (current, _, after) = then.partition(" "), now.partition(" ")
    if mark == current or not before:
        return None
    if before == after:
        return "", ""
    head, _, tail = before.partition(": ")
    other, _, end = after.partition(": ")
    if tail and end and head == other:
        return tail.rstrip("."), end.rstrip(".")
    return before.rstrip("."), after.rstrip(".")


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
        less, more = _OF_ONE_KIND.get(type(value), (frozenset(), frozenset()))
        left_out = (_NOT_CONTENT | less) - more
        return tuple(_essence(part) for name, part in zip(value._fields, value, strict=True) if name not in left_out)
    return tuple(map(_essence, value)) if isinstance(value, tuple) else value
