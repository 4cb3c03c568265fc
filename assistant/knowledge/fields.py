"""Reading a mapping by a table of its fields; the same table tells editors what may stand there.

Records are read into plain JSON values, in the order of the record's fields, so that a compiled base can be
written and read without building anything.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from assistant.frozen import NamedTuple
from assistant.knowledge.problems import suggestion
from assistant.knowledge.readers import BAD, Reader, Reading
from assistant.knowledge.yaml_lines import Node, Pairs, Text


class Field(NamedTuple):
    """A field of a mapping: its name in files, its reader, and the attributes that its value goes into."""

    name: str
    reader: Reader
    required: bool = False
    into: tuple[str, ...] = ()
    """Several for a reader that gives a list of as many parts; a part for "" is left out."""
    about: str = ""

    def attributes(self) -> tuple[str, ...]:
        """The attributes filled, in order."""
        return self.into or (self.name,)


class Shape(NamedTuple):
    """A kind of record: the key of its list in files, what one is called, its record and its fields."""

    key: str
    one: str
    record: Any
    fields: tuple[Field, ...]


def read_fields(
    node: Node, fields: Iterable[Field], label: str, reading: Reading, partial: bool = False
) -> dict[str, Any] | None:
    """Plain values by attribute; None after a problem. A partial reading asks for no required field."""
    if not isinstance(node, Pairs):
        reading.refuse(node, f"{label} must be a mapping", "write 'name: value' for each field")
        return None
    known = {field.name: field for field in fields}
    values: dict[str, Any] = {}
    good = True
    for key, value in node.pairs:
        good &= _read_field(key, value, known, label, reading, values)
    for field in known.values():
        if field.required and not partial and not any(key.text == field.name for key, _ in node.pairs):
            _refuse_missing(node, field, label, reading)
            good = False
    return values if good else None


def read_record(node: Node, shape: Shape, reading: Reading) -> dict[str, Any] | None:
    """One record as plain values by attribute; None after a problem."""
    return read_fields(node, shape.fields, label_of(node, shape), reading)


def in_order(record: Any, values: dict[str, Any]) -> list[Any]:
    """Plain values in the order of a record's fields, with its defaults, or else "", for those not given."""
    return [values.get(name, record._field_defaults.get(name, "")) for name in record._fields]


def id_of(node: Node) -> str:
    """The id that a record gives itself, if any."""
    for key, value in node.pairs if isinstance(node, Pairs) else ():
        if key.text == "id" and isinstance(value, Text):
            return value.text
    return ""


def label_of(node: Node, shape: Shape) -> str:
    """What problems call a record: its kind, and its id when it has one."""
    name = id_of(node)
    return f"{shape.one} '{name}'" if name else shape.one


def part(record: Any, *fields: Field) -> Reader:
    """A reader of a mapping that stands inside a record, given as a record of its own."""

    def read(node: Node, label: str, reading: Reading) -> Any:
        values = read_fields(node, fields, label, reading)
        return BAD if values is None else in_order(record, values)

    return Reader(read, object_schema(fields))


def row(*fields: Field) -> Reader:
    """A reader of a mapping that stands inside a record, given as a list in the order of its attributes."""
    names = [name for field in fields for name in field.attributes() if name]

    def read(node: Node, label: str, reading: Reading) -> Any:
        values = read_fields(node, fields, label, reading)
        return BAD if values is None else [values.get(name, "") for name in names]

    return Reader(read, object_schema(fields))


def object_schema(fields: Iterable[Field]) -> dict[str, Any]:
    """The JSON Schema of a mapping with these fields and no others."""
    listed = tuple(fields)
    schema: dict[str, Any] = {
        "type": "object",
        "properties": {field.name: _field_schema(field) for field in listed},
        "additionalProperties": False,
    }
    required = [field.name for field in listed if field.required]
    return {**schema, "required": required} if required else schema


def _field_schema(field: Field) -> dict[str, Any]:
    return {"description": field.about, **field.reader.schema} if field.about else field.reader.schema


def _read_field(
    key: Text, value: Node, known: dict[str, Field], label: str, reading: Reading, values: dict[str, Any]
) -> bool:
    field = known.get(key.text)
    if field is None:
        advice = suggestion(key.text, known, f"the fields are {', '.join(known)}")
        reading.refuse(key, f"{label} has the unknown field '{key.text}'", advice)
        return False
    found = field.reader.read(value, f"'{field.name}' of {label}", reading)
    if found is BAD:
        return False
    if field.required and found == []:
        reading.refuse(value, f"'{field.name}' of {label} is an empty list", "fill it in")
        return False
    if field.into and len(field.into) > 1:
        values.update({name: piece for name, piece in zip(field.into, found, strict=True) if name})
    else:
        values[field.attributes()[0]] = found
    return True


def _refuse_missing(node: Node, field: Field, label: str, reading: Reading) -> None:
    if field.name == "source":
        reading.refuse(node, f"{label} cites no source", "add 'source:' with a document and a paragraph")
    else:
        reading.refuse(node, f"{label} has no '{field.name}'", f"add '{field.name}:'")
