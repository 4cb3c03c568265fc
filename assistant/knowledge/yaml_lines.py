"""YAML read as text with line numbers, and nothing else of YAML.

Ordinary loaders turn `no` into False and `012` into 10, keep the last of two equal keys, and follow aliases
that can explode. Here every scalar stays text until the field that holds it says what it is, and whatever
could surprise is refused with its line. The parser's events are read rather than its node tree, so that
nesting is bounded before anything recurses. This is the only module that knows PyYAML.
"""

from __future__ import annotations

from typing import Any, TypeAlias

import yaml

from assistant.frozen import NamedTuple
from assistant.knowledge.problems import Problem

LARGEST = 2_000_000
"""Bytes that one file may hold."""
DEEPEST = 30
"""Collections that may stand in one another."""

_LOADER: Any = getattr(yaml, "CBaseLoader", yaml.BaseLoader)


class Text(NamedTuple):
    """A scalar, as written."""

    text: str
    file: str
    line: int


class Items(NamedTuple):
    """A list."""

    items: tuple[Node, ...]
    file: str
    line: int


class Pairs(NamedTuple):
    """A mapping in the order written; each key is there once."""

    pairs: tuple[tuple[Text, Node], ...]
    file: str
    line: int


Node: TypeAlias = Text | Items | Pairs


def read_yaml(path: str, name: str = "") -> tuple[Node | None, list[Problem]]:
    """Read one file; `name` is how problems call it. Without a tree there is at least one problem."""
    shown = name or path
    try:
        with open(path, "rb") as file:
            raw = file.read(LARGEST + 1)
    except OSError as error:
        reason = error.strerror or "unreadable"
        return None, [Problem(shown, 0, f"cannot be read ({reason})", "check that it exists and may be read")]
    return parse_yaml(raw, shown)


def parse_yaml(raw: bytes, name: str) -> tuple[Node | None, list[Problem]]:
    """The tree of a file's bytes, or what is wrong; a file that holds nothing may have lost what it held."""
    text, problem = _decode(raw, name)
    if problem:
        return None, [problem]
    builder = _Builder(name)
    try:
        for event in yaml.parse(text, Loader=_LOADER):
            if not builder.take(event):
                return None, builder.problems
    except yaml.YAMLError as error:
        builder.problems.append(_syntax_problem(error, text, name))
        return None, builder.problems
    if builder.root is None:
        builder.problems.append(Problem(name, 0, "holds nothing", "write its lists again, or remove the file"))
    return builder.root, builder.problems


def plain(node: Node) -> Any:
    """The tree as nested dicts, lists and text, without its lines."""
    if isinstance(node, Text):
        return node.text
    if isinstance(node, Items):
        return [plain(item) for item in node.items]
    return {key.text: plain(value) for key, value in node.pairs}


def _decode(raw: bytes, name: str) -> tuple[str, Problem | None]:
    if len(raw) > LARGEST:
        return "", Problem(name, 0, f"holds more than {LARGEST:,} bytes", "divide it into several files")
    if b"\0" in raw:
        line = raw[: raw.index(b"\0")].count(b"\n") + 1
        return "", Problem(name, line, "holds a NUL byte", "save the file as plain UTF-8 text")
    try:
        return raw.decode("utf-8-sig"), None
    except UnicodeDecodeError as error:
        line = raw[: error.start].count(b"\n") + 1
        return "", Problem(name, line, "is not UTF-8 text", "save the file as plain UTF-8 text")


def _syntax_problem(error: yaml.YAMLError, text: str, name: str) -> Problem:
    mark = getattr(error, "problem_mark", None)
    position = getattr(error, "position", None)
    line = 1
    if mark is not None:
        line = mark.line + 1
    elif isinstance(position, int):
        line = text[:position].count("\n") + 1
    what = getattr(error, "problem", None) or getattr(error, "reason", None) or "cannot be understood"
    return Problem(
        name, line, f"is not well-formed YAML ({what})", "check quotes, brackets, colons and indentation"
    )


class _Open(NamedTuple):
    """A collection whose end has not come yet."""

    is_list: bool
    line: int
    parts: list[Node]


class _Builder:
    """Puts the tree together event by event, gathering what is refused."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.problems: list[Problem] = []
        self.root: Node | None = None
        self._documents = 0
        self._open: list[_Open] = []

    def take(self, event: Any) -> bool:
        """Add one event; False when the rest of the file cannot be read."""
        line = event.start_mark.line + 1
        if isinstance(event, yaml.AliasEvent):
            self._refuse(line, f"uses the alias '*{event.anchor}'", "write the value out where it is needed")
            self._add(Text("", self.file, line))
        elif isinstance(event, yaml.ScalarEvent):
            self._check_properties(event, line)
            self._add(Text(event.value, self.file, line))
        elif isinstance(event, (yaml.SequenceStartEvent, yaml.MappingStartEvent)):
            self._check_properties(event, line)
            return self._start(isinstance(event, yaml.SequenceStartEvent), line)
        elif isinstance(event, (yaml.SequenceEndEvent, yaml.MappingEndEvent)):
            self._end()
        elif isinstance(event, yaml.DocumentStartEvent):
            return self._next_document(line)
        return True

    def _refuse(self, line: int, message: str, advice: str) -> None:
        self.problems.append(Problem(self.file, line, message, advice))

    def _check_properties(self, event: Any, line: int) -> None:
        if event.anchor is not None:
            self._refuse(line, f"uses the anchor '&{event.anchor}'", "write the value out where it is needed")
        if event.tag is not None:
            self._refuse(
                line, f"uses the tag '{event.tag}'", "leave it out: the field says what its value is"
            )

    def _start(self, is_list: bool, line: int) -> bool:
        if len(self._open) >= DEEPEST:
            self._refuse(line, f"nests deeper than {DEEPEST}", "write it flatter")
            return False
        self._open.append(_Open(is_list, line, []))
        return True

    def _end(self) -> None:
        done = self._open.pop()
        if done.is_list:
            self._add(Items(tuple(done.parts), self.file, done.line))
        else:
            self._add(Pairs(tuple(self._pairs(done.parts)), self.file, done.line))

    def _pairs(self, parts: list[Node]) -> list[tuple[Text, Node]]:
        pairs: dict[str, tuple[Text, Node]] = {}
        for key, value in zip(parts[::2], parts[1::2], strict=True):
            if not isinstance(key, Text):
                self._refuse(key.line, "has a key that is not text", "write a plain word before the colon")
            elif key.text in pairs:
                first = pairs[key.text][0].line
                self._refuse(key.line, f"repeats the key '{key.text}' of line {first}", "keep one of the two")
            else:
                pairs[key.text] = (key, value)
        return list(pairs.values())

    def _next_document(self, line: int) -> bool:
        self._documents += 1
        if self._documents > 1:
            self._refuse(line, "starts a second document", "keep one document a file, without '---' between")
        return self._documents == 1

    def _add(self, node: Node) -> None:
        if self._open:
            self._open[-1].parts.append(node)
        else:
            self.root = node
