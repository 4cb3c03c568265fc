"""The knowledge of one type, ready to be asked: records are built only when somebody wants them.

A start asks for a handful of records out of hundreds, so a base opens in the time that JSON takes to parse.
"""

from __future__ import annotations

import os
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from functools import cached_property
from typing import Any, Generic, TypeVar

from assistant.knowledge import records as kinds
from assistant.knowledge.library_records import Change, Document, Outline, Override, Term, TypeInfo, Variant

RecordT = TypeVar("RecordT")
Compiled = dict[str, Any]
"""A base as JSON: `records` {kind: {id: values in field order}}, `places` {kind: {id: [file, line]}}…"""

ANSWERING = ("facts", "limits", "bands", "schedules", "tables", "procedures", "models", "outlines")
"""Kinds whose records answer questions; their ids are unique among all of them."""

RECORDS: dict[str, Any] = {
    "documents": Document,
    "terms": Term,
    "inputs": kinds.TableInput,
    "facts": kinds.Fact,
    "limits": kinds.Limit,
    "bands": kinds.Bands,
    "schedules": kinds.Schedule,
    "tables": kinds.StateTable,
    "procedures": kinds.Procedure,
    "models": kinds.Model,
    "changes": Change,
    "variants": Variant,
    "overrides": Override,
    "outlines": Outline,
}

_PARTS: dict[Any, dict[str, Any]] = {
    kinds.Fact: {"values": kinds.Value},
    kinds.Limit: dict.fromkeys(("maximum", "minimum", "value", "second"), kinds.Value),
    kinds.Bands: {"rules": kinds.BandRule},
    kinds.StateTable: {
        "outputs": kinds.TableOutput, "rules": kinds.TableRule, "reasons": kinds.TableReason, "means": kinds.TableMeans,
    },
    kinds.Procedure: {"steps": kinds.Step},
    kinds.Step: {"values": kinds.Value},
    kinds.Model: {"inputs": kinds.ModelInput},
}
"""Attributes that hold records themselves, beside `sources`, which always does."""
_SINGLE = ("maximum", "minimum", "value", "second")


class Lazy(Mapping[str, RecordT], Generic[RecordT]):
    """Records by id, each built when first asked for."""

    def __init__(self, plain: dict[str, tuple[Any, Mapping[str, list[Any]]]]) -> None:
        self._plain = plain
        self._built: dict[str, RecordT] = {}

    def __getitem__(self, name: str) -> RecordT:
        try:
            return self._built[name]  # nearly always: a question looks up a hundred
        except KeyError:
            record, kept = self._plain[name]
            found: RecordT = build(record, kept[name])
            self._built[name] = found
            return found

    def __contains__(self, name: object) -> bool:
        return name in self._plain

    def __iter__(self) -> Iterator[str]:
        return iter(self._plain)

    def __len__(self) -> int:
        return len(self._plain)


class Base:
    """What is known of one type: language, principles and the type's own documents, as frozen records."""

    def __init__(self, compiled: Compiled, root: str = "", derived: dict[str, Any] | None = None) -> None:
        self.compiled = compiled
        self.root = root
        self.derived: dict[str, Any] = derived or {}
        """What a later layer computed from this base (its index), kept beside it in the cache."""
        self.documents: Lazy[Document] = self._lazy("documents")
        self.terms: Lazy[Term] = self._lazy("terms")
        self.inputs: Lazy[kinds.TableInput] = self._lazy("inputs")
        self.variants: Lazy[Variant] = self._lazy("variants")
        """In file order: the first is the base."""
        self.changes: Lazy[Change] = self._lazy("changes")
        self.records: Lazy[Any] = self._lazy(*ANSWERING)
        """Every record that answers, whatever its kind."""
        self._kind = {name: kind for kind in ANSWERING for name in compiled["records"].get(kind, ())}
        self.lists: dict[str, list[str]] = compiled["words"]
        """Word groups by name, without the @."""
        self.units_data: list[Any] = compiled["units"]
        self._overrides: tuple[Override, ...] | None = None
        self._variant_records: dict[tuple[str, str], Any] = {}
        self.decided: dict[int, tuple[kinds.StateTable, dict[tuple[str | None, ...], kinds.TableRule]]] = {}
        """By the identity of a table: itself, and the rule that decides for each of its states asked so far."""
        self.leading: dict[int, tuple[kinds.StateTable, dict[Any, list[tuple[tuple[str, str], ...]]]]] = {}
        """The same way, the sets of inputs that lead to results, by what was looked for."""
        self.settings: dict[str, Any] = compiled["settings"]
        self.pronunciations: dict[str, str] = compiled["pronunciations"]
        """How written forms are said, in ordinary words."""
        self.phonemes: dict[str, str] = compiled["phonemes"]
        """How words are pronounced, in the International Phonetic Alphabet."""
        self.radio_words: dict[str, str] = compiled["radio_words"]
        """Words of a number as they are said on the radio."""
        self.labels: dict[str, str] = compiled["labels"]
        """How a label in capitals is said with the kind of thing it names: "NORMAL", "normal mode"."""
        self.respelt: dict[str, str] = compiled["respelt"]
        """What is said, as an engine must be given it that reads plain text."""

    @property
    def order(self) -> list[str]:
        """Ids of the records that answer, in file order."""
        ids: list[str] = self.compiled["order"]
        return ids

    @property
    def type_info(self) -> TypeInfo:
        """What is said of the type as a whole; nothing when its description could not be read."""
        return TypeInfo(*map(_freeze, self.compiled["type"] or ("", "")))

    @property
    def overrides(self) -> tuple[Override, ...]:
        """How the variants differ, in file order."""
        if self._overrides is None:
            listed = self.compiled["records"].get("overrides", {}).values()
            self._overrides = tuple(self._override(values) for values in listed)
        return self._overrides

    def lacks(self, name: str, known: Iterable[str]) -> bool:
        """Whether a name refers to nothing; one of a record that is there but broken is a problem already.

        Where a file could not be read, that name may stand in it.
        """
        return name not in known and name not in self.compiled["broken"] and not self.may_stand_unread(name)

    def may_stand_unread(self, name: str) -> bool:
        """Whether a name may stand in a file that could not be read: what only points to it is no problem then."""
        unread = self.compiled.get("unread")
        if not unread:
            return False
        from assistant.knowledge.unread import may_stand

        return may_stand(name, unread)

    def kind(self, name: str) -> str:
        """The kind of an answering record, as its list is called in files: "limits"."""
        return self._kind[name]

    def ids(self, kind: str) -> list[str]:
        """Ids of one kind, in file order."""
        return list(self.compiled["records"].get(kind, ()))

    def having(self, kind: str, field: str) -> list[str]:
        """Ids of the records of one kind that say something in a field, in file order; none is built for it."""
        at = RECORDS[kind]._fields.index(field)
        return [name for name, values in self.compiled["records"].get(kind, {}).items() if values[at]]

    @cached_property
    def standing_on(self) -> Mapping[kinds.Source, list[str]]:
        """Ids of the facts and limits by what they rest on, in file order; none is built for it."""
        found: dict[kinds.Source, list[str]] = defaultdict(list)
        for kind in ("facts", "limits"):
            at = RECORDS[kind]._fields.index("sources")
            for name, values in self.compiled["records"].get(kind, {}).items():
                for source in _attribute(RECORDS[kind], "sources", values[at]):
                    found[source].append(name)
        return found

    @cached_property
    def tables(self) -> tuple[kinds.StateTable, ...]:
        """The state tables, which nearly every question is held against, in file order."""
        return tuple(self.records[name] for name in self.ids("tables"))

    @cached_property
    def limits_of_cases(self) -> list[str]:
        """The ids of the limits that hold in a stated case alone; none is built for it, and each is looked at once."""
        return self.having("limits", "applies")

    def place(self, name: str, kind: str = "") -> tuple[str, int]:
        """The file and line where a record is written."""
        file, line = self.compiled["places"][kind or self._kind[name]][name]
        return file, line

    def record(self, name: str, variant: str | None = None) -> Any:
        """A record as it stands for a variant: what differs is replaced, and the source of that comes first.

        A schedule whose `top` differs follows it. Raises KeyError for an unknown id.
        """
        if not variant:
            return self.records[name]
        held = self._variant_records.get((name, variant))
        if held is None:
            held = self._variant_records[name, variant] = self._for_variant(name, variant)
        return held

    def _for_variant(self, name: str, variant: str) -> Any:
        record = self.records[name]
        for override in self.overrides:
            if override.variant == variant and override.record == name:
                record = _overridden(record, override)
            elif override.variant == variant and getattr(record, "top", "") == override.record:
                record = self._follow_top(record, override)
        return record

    def word_list(self, name: str) -> str:
        """The text of language/NAME.txt, read from the disk now; one word a line, # begins a comment line."""
        with open(os.path.join(self.root, "language", f"{name}.txt"), encoding="utf-8") as file:
            return file.read()

    def _lazy(self, *names: str) -> Lazy[Any]:
        found = self.compiled["records"]
        return Lazy({name: (RECORDS[kind], found[kind]) for kind in names for name in found.get(kind, ())})

    def _override(self, values: list[Any]) -> Override:
        variant, record, fields, *rest = values
        kind = RECORDS[self._kind[record]] if record in self._kind else None
        built = tuple((name, _attribute(kind, name, value)) for name, value in fields)
        sources, says = rest
        return Override(variant, record, built, _attribute(None, "sources", sources), says)

    def _follow_top(self, schedule: kinds.Schedule, override: Override) -> kinds.Schedule:
        before = stated(self.records[override.record])
        after = stated(self.record(override.record, override.variant))
        if before is None or after is None:
            return schedule
        points = list(schedule.points)
        for index, (given, output) in enumerate(points):
            if output != before.value:
                break
            points[index] = (given, after.value)
        return schedule._replace(points=tuple(points), sources=_first(override.sources, schedule.sources))


def build(record: Any, values: list[Any]) -> Any:
    """A frozen record from its plain values."""
    return record(
        *(_attribute(record, name, value) for name, value in zip(record._fields, values, strict=True))
    )


def stated(record: Any) -> kinds.Value | None:
    """The figure of a limit: its value, else its maximum, else its minimum."""
    if not isinstance(record, kinds.Limit):
        return None
    return record.value or record.maximum or record.minimum


def _attribute(record: Any, name: str, value: Any) -> Any:
    part = kinds.Source if name == "sources" else _PARTS.get(record, {}).get(name)
    if part is None or value is None:
        return _freeze(value)
    if record is kinds.Limit and name in _SINGLE:
        return build(part, value)
    return tuple(build(part, item) for item in value)


def _freeze(value: Any) -> Any:
    return tuple(map(_freeze, value)) if isinstance(value, (list, tuple)) else value


def _overridden(record: Any, override: Override) -> Any:
    changed = dict(override.fields)
    return record._replace(**changed, sources=_first(override.sources, record.sources))


def _first(front: tuple[kinds.Source, ...], others: tuple[kinds.Source, ...]) -> tuple[kinds.Source, ...]:
    return front + tuple(source for source in others if source not in front)
