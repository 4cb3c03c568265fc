"""The records of a library around those that answer: documents, terms, what changed, variants, the type itself."""

from __future__ import annotations

from typing import Any

from assistant.frozen import NamedTuple
from assistant.knowledge.records import Source


class Document(NamedTuple):
    """A document of the library that a type's records may cite."""

    id: str
    title: str
    revision: str
    effective: str
    validated: str = ""
    review_by: str = ""
    temporary_revisions: tuple[str, ...] = ()
    published: bool = False
    """True for a public source (a regulation, a handbook), which has no revision in force here."""
    paragraphs: tuple[str, ...] = ()
    """Those that may be cited, as written: one, or a range; empty when they are not listed."""


class Term(NamedTuple):
    """A concept and the ways it is written, misspelt and misheard."""

    id: str
    names: tuple[str, ...]
    heard: tuple[str, ...] = ()
    kind: str = "thing"
    implies: tuple[str, ...] = ()
    family: str = ""
    """Terms of one family replace one another in a follow-up ("and lowering it?")."""
    sets: tuple[tuple[str, str], ...] = ()
    """Inputs of state tables that the bare mention sets: free-fall extension sets the lever to pulled."""
    shows: tuple[tuple[str, str], ...] = ()
    """Of a label: the inputs, or a table's result (`table.output`), that hold where it is told to show."""
    ends: tuple[tuple[str, str], ...] = ()
    """Of a label: the results (`table.output`) that were there before, and have gone where it shows."""
    wants: str = ""
    """For a question word: the quantity or aspect that it asks for."""
    show: str = ""
    say: str = ""
    misspelt: tuple[str, ...] = ()
    """Spellings too far from the names, or too short, for the general correction."""


class Change(NamedTuple):
    """What a revision changed: the paragraph, the former value and the value now."""

    id: str
    subject: str
    formerly: str
    now: str
    since: str
    record: str
    sources: tuple[Source, ...]


class Override(NamedTuple):
    """How a variant differs from the base type in one record."""

    variant: str
    record: str
    fields: tuple[tuple[str, Any], ...]
    sources: tuple[Source, ...]
    says: str = ""


class Variant(NamedTuple):
    """A variant of the type; the first listed is the base."""

    id: str
    names: tuple[str, ...]
    show: str
    sources: tuple[Source, ...] = ()


class Outline(NamedTuple):
    """A briefing's ordered items: (title, record or calculation id, when it applies)."""

    id: str
    title: str
    items: tuple[tuple[str, str, str], ...]
    sources: tuple[Source, ...] = ()


class TypeInfo(NamedTuple):
    """What is said of a type as a whole."""

    id: str
    name: str
    names: tuple[str, ...] = ()
    operator: str = ""
    operator_names: tuple[str, ...] = ()
    caution: str = ""
    examples: tuple[str, ...] = ()
    not_here: tuple[tuple[str, str], ...] = ()
    """(labels of other fleets, the record that says what this type has instead)."""
