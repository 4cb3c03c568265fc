"""Readers and fields that several kinds of record share."""

from __future__ import annotations

from typing import Any

from assistant.knowledge import records
from assistant.knowledge.fields import Field, part, row
from assistant.knowledge.readers import (
    AMOUNT,
    BAD,
    IDENTIFIER,
    SOURCES,
    TEXT,
    TEXTS,
    UNIT,
    WORDS,
    YES_NO,
    Reader,
    Reading,
    many,
    mapping,
)
from assistant.knowledge.yaml_lines import Items, Node


def keyed(*fields: Field) -> Reader:
    """A mapping of names to rows, read as rows that begin with the name."""
    pairs = mapping(row(*fields))

    def read(node: Node, label: str, reading: Reading) -> Any:
        found = pairs.read(node, label, reading)
        return BAD if found is BAD else [[name, *rest] for name, rest in found]

    return Reader(read, pairs.schema)


def outputs() -> Reader:
    """The columns of a state table, by name; a column's own name comes first in its record."""
    values = keyed(Field("says", TEXT, required=True), Field("words", TEXT))
    columns = mapping(
        part(
            records.TableOutput,
            Field("asks", TEXTS, required=True),
            Field("values", values, required=True),
            Field("label", TEXT),
            Field("asks_under", TEXTS, about="ways of asking that are for it only where a state of its table is given"),
            Field("shown", YES_NO, about="yes for what an instrument shows"),
            Field("goes", TEXTS, about="the terms in whose names it is said to be lost or kept"),
            Field("quiz", TEXTS, about="questions by which alone it is rehearsed, as they follow a state"),
        )
    )

    def read(node: Node, label: str, reading: Reading) -> Any:
        found = columns.read(node, label, reading)
        return BAD if found is BAD else [[name, *column[1:]] for name, column in found]

    return Reader(read, columns.schema)


def alternatives() -> Reader:
    """Conditions of a rule: a mapping all of which must hold, or a list of such, any of which must."""
    conditions = mapping(TEXT, empty=True)
    several = many(conditions)

    def read(node: Node, label: str, reading: Reading) -> Any:
        if isinstance(node, Items):
            return several.read(node, label, reading)
        found = conditions.read(node, label, reading)
        return BAD if found is BAD else [found]

    return Reader(read, several.schema)


def _raw(node: Node, label: str, reading: Reading) -> Any:
    return node


RAW = Reader(_raw, {"type": "object", "minProperties": 1})
"""Left as it stands, to be read once the record that it changes is known."""

ID = Field("id", IDENTIFIER, required=True, about="unique within its kind; other records refer to it")
ASKS = Field("asks", TEXTS, required=True, about="the telling words of each question that it answers")
ALSO = Field("also", TEXT, about="more words that a question on this may hold")
THEN = Field("then", TEXTS, about="ways of asking, for it only where something of its paragraph has just been told")
QUIZ = Field("quiz", TEXTS, about="whole questions by which alone it is rehearsed, each answered by all of it")
ANSWERS = Field("answers", WORDS, about="the aspects that it answers, beyond those that its asks show")
TOPIC = Field("topic", TEXT, about="ATA section, such as 32-30")
WHY = Field("why", IDENTIFIER, about="id of the record that states the reason")
OF = Field("of", TEXT, required=True, about="what it is the value or state of, in words")
NEEDED = Field("needed", TEXTS, about="what else must hold")
SOURCE = Field(
    "source", SOURCES, required=True, into=("sources",), about="document and paragraph; several by ';'"
)
CITED = SOURCE._replace(required=False)
CONDITIONS = mapping(TEXT)
VALUES = many(
    part(
        records.Value,
        Field("is", AMOUNT, required=True, into=("value", "unit", "")),
        Field("quantity", TEXT),
    )
)
QUANTITY = (Field("quantity", TEXT, required=True), Field("unit", UNIT, required=True))
