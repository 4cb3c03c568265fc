"""How a question was understood, laid out for a reader who wants to know why it was answered so."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from assistant.answering.answer import Answer
from assistant.rendering.text import clean

_INDENT = "  "
_DEEPEST = 12


def explain_text(answer: Answer) -> str:
    """Return what was read and decided as indented lines, without a line end after the last."""
    decided: dict[str, Any] = {
        "question": answer.question,
        "outcome": answer.outcome,
        "entry": answer.entry,
        "variant": answer.variant,
        "needs": answer.needs,
    }
    shown = {name: value for name, value in decided.items() if value}
    lines = list(_lines({**shown, "understood": answer.understood or "nothing"}, 0))
    return "\n".join(lines)


def _lines(value: dict[Any, Any], depth: int) -> Iterator[str]:
    for name, item in value.items():
        label = _INDENT * depth + _one_line(str(name).replace("_", " ")) + ":"
        if _is_plain(item) or depth >= _DEEPEST:
            yield f"{label} {_scalar(item)}"
        elif isinstance(item, dict):
            yield label
            yield from _lines(item, depth + 1)
        else:
            yield label
            yield from _items(item, depth + 1)


def _items(values: Any, depth: int) -> Iterator[str]:
    """One line an item; an item of several plain fields stays on one line too."""
    for value in values:
        if isinstance(value, dict) and not all(map(_is_plain, value.values())) and depth < _DEEPEST:
            yield _INDENT * depth + "-"
            yield from _lines(value, depth + 1)
        elif isinstance(value, dict):
            fields = (f"{_one_line(str(name))} {_scalar(item)}" for name, item in value.items())
            yield f"{_INDENT * depth}- {', '.join(fields)}"
        else:
            yield f"{_INDENT * depth}- {_scalar(value)}"


def _is_plain(value: Any) -> bool:
    """Whether a value fits on the line of its name: a scalar, or a list of scalars."""
    if isinstance(value, (list, tuple, set, frozenset)):
        return not any(isinstance(item, (dict, list, tuple, set, frozenset)) for item in value)
    return not isinstance(value, dict) or not value


def _scalar(value: Any) -> str:
    if value is None or value == "" or (isinstance(value, (list, tuple, dict, set, frozenset)) and not value):
        return "none"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:g}" if abs(value) < 1e6 else f"{value:.0f}"
    if isinstance(value, (set, frozenset)):
        return ", ".join(sorted(map(_scalar, value)))
    if isinstance(value, (list, tuple)):
        return ", ".join(map(_scalar, value))
    return _one_line(str(value))


def _one_line(text: str) -> str:
    return " ".join(clean(text).split())
