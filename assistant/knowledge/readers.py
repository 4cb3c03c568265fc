"""Readers of single fields: each turns a piece of a file into plain values, or says what is wrong.

A reader also carries the JSON Schema of what it accepts, so that checks and schema cannot drift apart.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from assistant.frozen import NamedTuple
from assistant.knowledge.problems import Problem, suggestion
from assistant.knowledge.unread import may_stand
from assistant.knowledge.yaml_lines import Items, Node, Pairs, Text

CANONICAL_UNITS = frozenset(
    ("deg", "kt", "m/s", "mph", "Mach", "psi", "bar", "kPa", "degC", "K", "mm", "m", "ft", "s", "min", "h")
) | frozenset(("kg", "m/s2", "MJ", "percent", "count", "factor"))

BAD: Any = object()
"""What a reader returns when it has reported a problem instead."""


class Reading(NamedTuple):
    """What readers share while one base is read: the units known, and the problems found so far."""

    units: frozenset[str]
    problems: list[Problem]
    unread: tuple[str, ...] = ()
    """What files hold that could not be read and may list units; "" of one of which nothing is known."""

    def knows_unit(self, unit: str) -> bool:
        """Whether a unit is listed, or may be."""
        return unit in self.units or (bool(self.unread) and may_stand(unit, self.unread))

    def refuse(self, node: Node, message: str, advice: str) -> Any:
        """Report a problem at a node."""
        self.problems.append(Problem(node.file, node.line, message, advice))
        return BAD


class Reader(NamedTuple):
    """`read(node, label, reading)` gives plain values, or BAD; `schema` describes the same to an editor."""

    read: Callable[[Node, str, Reading], Any]
    schema: dict[str, Any]


class Refused(ValueError):
    """What a text cannot be taken for, and what to do; never leaves this module."""

    def __init__(self, message: str, advice: str) -> None:
        super().__init__(message, advice)
        self.message, self.advice = message, advice


def from_text(parse: Callable[[str, Reading], Any], schema: dict[str, Any]) -> Reader:
    """A reader of one non-empty scalar."""

    def read(node: Node, label: str, reading: Reading) -> Any:
        if not isinstance(node, Text):
            found = "a list" if isinstance(node, Items) else "a mapping"
            return reading.refuse(
                node, f"{label} must be a single text (got {found})", "write it on one line"
            )
        text = " ".join(node.text.split())
        if not text:
            return reading.refuse(node, f"{label} is empty", "fill it in or leave the field out")
        try:
            return parse(text, reading)
        except Refused as refused:
            return reading.refuse(node, f"{label} {refused.message} (got '{text[:60]}')", refused.advice)

    return Reader(read, schema)


def loose_text() -> Reader:
    """A reader of one scalar that may be empty, where a curator says so that nothing is known."""

    def read(node: Node, label: str, reading: Reading) -> Any:
        empty = isinstance(node, Text) and not node.text.strip()
        return "" if empty else TEXT.read(node, label, reading)

    return Reader(read, {"type": ["string", "number", "boolean", "null"]})


def choice(*allowed: str) -> Reader:
    """One of a few words."""

    def parse(text: str, reading: Reading) -> str:
        if text not in allowed:
            raise Refused(
                f"must be one of {', '.join(allowed)}", suggestion(text, allowed, "choose one of these")
            )
        return text

    return from_text(parse, {"enum": list(allowed)})


def many(one: Reader) -> Reader:
    """A list, each of whose items another reader reads; a single text stands for a list of one."""

    def read(node: Node, label: str, reading: Reading) -> Any:
        nodes = node.items if isinstance(node, Items) else (node,)
        found = [one.read(item, label, reading) for item in nodes]
        return BAD if any(value is BAD for value in found) else found

    return Reader(read, {"anyOf": [{"type": "array", "items": one.schema}, one.schema]})


def mapping(one: Reader, empty: bool = False) -> Reader:
    """A mapping of names of the curator's choosing, read as [name, value] pairs."""

    def read(node: Node, label: str, reading: Reading) -> Any:
        if not isinstance(node, Pairs):
            return reading.refuse(node, f"{label} must be a mapping", "write 'name: value' for each")
        if not node.pairs and not empty:
            return reading.refuse(node, f"{label} is empty", "fill it in or leave the field out")
        found = [[key.text, one.read(value, f"{label} '{key.text}'", reading)] for key, value in node.pairs]
        return BAD if any(value is BAD for _, value in found) else found

    schema = {"type": "object", "additionalProperties": one.schema}
    return Reader(read, schema if empty else {**schema, "minProperties": 1})


def _text(text: str, reading: Reading) -> str:
    return text


def _yes_no(text: str, reading: Reading) -> bool:
    if text not in ("yes", "no"):
        raise Refused("must be yes or no", "write yes or no")
    return text == "yes"


def _number(text: str, reading: Reading) -> float:
    digits = text.replace("−", "-")
    if not re.fullmatch(_NUMBER, digits):
        raise Refused("must be a number", "write digits, such as 1,000 or 0.5")
    return float(digits.replace(",", ""))


def _unit(text: str, reading: Reading) -> str:
    if not reading.knows_unit(text):
        raise Refused(
            "must be a known unit", suggestion(text, reading.units, "use a symbol of language/units.yaml")
        )
    return text


def _amount(text: str, reading: Reading) -> list[Any]:
    found = re.fullmatch(rf"({_NUMBER}) (\S+)", text.replace("−", "-"))
    if not found:
        raise Refused("must be an amount", "write a number, a space and a unit, such as 100 kt")
    number, unit = found.groups()
    if re.match(r"-?0\d", number):
        raise Refused("has a nought too many before its number", "write it without the nought")
    if not reading.knows_unit(unit):
        raise Refused(
            f"has the unknown unit '{unit}'",
            suggestion(unit, reading.units, "use a symbol of language/units.yaml"),
        )
    return [float(number.replace(",", "")), unit, ""]


def _test(text: str, reading: Reading) -> list[Any]:
    if text == "otherwise":
        return ["otherwise", 0.0, ""]
    found = re.fullmatch(r"(below|up to|over|from) (.+)", text)
    if not found:
        raise Refused(
            "must be a test", "write 'below', 'up to', 'over' or 'from' and an amount, or 'otherwise'"
        )
    value, unit, _ = _amount(found[2], reading)
    return [found[1], value, unit]


def _applies(text: str, reading: Reading) -> list[Any]:
    found = re.fullmatch(r"(.+?) ((?:below|up to|over|from) .+)", text)
    if not found:
        raise Refused("must compare a quantity", "write it as 'ground speed over 5 kt'")
    return [found[1], *_test(found[2], reading)]


def _sources(text: str, reading: Reading) -> list[list[str]]:
    sources = [part.split(None, 1) for part in text.split(";")]
    if not all(len(source) == 2 for source in sources):
        raise Refused(
            "must name a document and a paragraph", "write it as 'MANUAL 1.2', several separated by ';'"
        )
    return [[document, paragraph.strip()] for document, paragraph in sources]


def _identifier(text: str, reading: Reading) -> str:
    if not re.fullmatch(r"[a-z0-9_-]+", text):
        raise Refused("may hold only a-z, 0-9, '_' and '-'", "rename it, and whatever refers to it")
    return text


def _name(text: str, reading: Reading) -> str:
    if not re.fullmatch(r"[A-Za-z0-9._-]+", text):
        raise Refused("may hold only letters, digits, '.', '_' and '-'", "write it without spaces")
    return text


def _date(text: str, reading: Reading) -> str:
    if not re.fullmatch(r"\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])", text):
        raise Refused("must be a date", "write it as 2026-01-31")
    return text


def _pair(node: Node, label: str, reading: Reading) -> Any:
    if not isinstance(node, Items) or len(node.items) != 2:
        return reading.refuse(node, f"{label} must be pairs of numbers", "write each as [10, 20]")
    found = [NUMBER.read(item, label, reading) for item in node.items]
    return BAD if BAD in found else found


def _words(node: Node, label: str, reading: Reading) -> Any:
    if isinstance(node, Text):
        return node.text.split() or reading.refuse(
            node, f"{label} is empty", "fill it in or leave the field out"
        )
    return many(TEXT).read(node, label, reading)


_NUMBER = r"[+-]?(?:\d[\d,]*(?:\.\d+)?|\.\d+)"
_SCALAR: dict[str, Any] = {"type": ["string", "number", "boolean"]}

TEXT = from_text(_text, _SCALAR)
LOOSE = loose_text()
YES_NO = from_text(_yes_no, {"enum": ["yes", "no", True, False]})
NUMBER = from_text(
    _number, {"type": ["number", "string"], "pattern": rf"^\s*{_NUMBER}\s*$".replace("+-", "+−-")}
)
UNIT = from_text(_unit, {"type": "string", "pattern": r"^\s*\S+\s*$"})
AMOUNT = from_text(_amount, {"type": "string", "pattern": r"^\s*[+−-]?[\d.][\d,.]*\s+\S+\s*$"})
TEST = from_text(_test, {"type": "string", "pattern": r"^\s*(otherwise|(below|up\s+to|over|from)\s.+)\s*$"})
APPLIES = from_text(_applies, {"type": "string", "pattern": r"\s(below|up\s+to|over|from)\s"})
SOURCES = from_text(_sources, {"type": "string", "pattern": r"^\s*\S+\s+[^;]+(;\s*\S+\s+[^;]+)*$"})
IDENTIFIER = from_text(_identifier, {"type": ["string", "number"], "pattern": r"^\s*[a-z0-9_-]+\s*$"})
NAME = from_text(_name, {"type": ["string", "number"], "pattern": r"^\s*[A-Za-z0-9._-]+\s*$"})
DATE = from_text(_date, {"type": "string", "pattern": r"^\s*\d{4}-\d\d-\d\d\s*$"})
TEXTS = many(TEXT)
WORDS = Reader(_words, TEXTS.schema)
POINTS = many(Reader(_pair, {"type": "array", "items": NUMBER.schema, "minItems": 2, "maxItems": 2}))
