"""Records as checks see them: what problems call one, and where it is written."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from assistant.frozen import NamedTuple
from assistant.knowledge.base import RECORDS, Base
from assistant.knowledge.problems import Problem, suggestion
from assistant.knowledge.shapes import SHAPES


class Named(NamedTuple):
    """A record with what problems call it and where it is written."""

    record: Any
    label: str
    file: str
    line: int

    def problem(self, message: str, advice: str) -> Problem:
        """A problem at this record."""
        return Problem(self.file, self.line, f"{self.label} {message}", advice)

    def unknown(self, what: str, name: str, known: Iterable[str], otherwise: str) -> Problem:
        """A problem for a reference to something that does not exist."""
        return self.problem(f"names the unknown {what} '{name}'", suggestion(name, known, otherwise))


def of_kind(base: Base, *wanted: str) -> Iterator[Named]:
    """The records of some kinds, in file order."""
    for kind in wanted:
        found = base.overrides if kind == "overrides" else _listed(base, kind)
        for name, record in zip(base.ids(kind), found, strict=True):
            file, line = base.place(name, kind)
            yield Named(record, f"{SHAPES[kind].one} '{name}'", file, line)


def every_record(base: Base) -> Iterator[Named]:
    """All records of all kinds."""
    return of_kind(base, *RECORDS)


def _listed(base: Base, kind: str) -> Iterator[Any]:
    own: dict[str, Mapping[str, Any]] = {
        "documents": base.documents,
        "terms": base.terms,
        "inputs": base.inputs,
        "variants": base.variants,
        "changes": base.changes,
    }
    found = own.get(kind, base.records)
    return (found[name] for name in base.ids(kind))
