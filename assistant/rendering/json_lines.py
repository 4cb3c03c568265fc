"""A finished answer as one line of JSON, for programs: every key always there, in the same order.

A line must survive a pipe, a terminal and a strict reader, whatever the question held: no raw control
sign, no half of a surrogate pair and no number that JSON lacks.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from math import isfinite
from typing import Any

from assistant.answering.answer import Answer

_LONE_SURROGATE = "[\ud800-\udfff]"
_RAW = "[\x7f-\x9f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]"
"""Signs that JSON allows as they are, and that a terminal may obey or hide."""


def answer_json(answer: Answer, more: Mapping[str, Any] | None = None) -> str:
    """Return the answer as one JSON object without a line end; values at full precision. more: keys after its own."""
    return json_line({**_fields(answer), **(more or {})})


def json_line(fields: dict[str, Any]) -> str:
    """Return plain values, tuples and sets among them, as one JSON object that any reader and terminal takes."""
    line = json.dumps(_plain(fields), ensure_ascii=False, allow_nan=False)
    return line if line.isprintable() else re.sub(_RAW, lambda match: f"\\u{ord(match[0]):04x}", line)


def _fields(answer: Answer) -> dict[str, Any]:
    return {
        "question": answer.question,
        "outcome": answer.outcome,
        "text": answer.text,
        "spoken": answer.spoken,
        "values": [value._asdict() for value in answer.values],
        "working": answer.working,
        "sources": [source._asdict() for source in answer.sources],
        "cautions": answer.cautions,
        "entry": answer.entry,
        "needs": answer.needs,
        "choices": answer.choices,
        "variant": answer.variant,
        "understood": answer.understood,
    }


def _plain(value: Any) -> Any:
    """The value as JSON knows it: tuples and sets as lists, what is not finite as null, texts whole."""
    if isinstance(value, dict):
        return {_text(str(key)): _plain(item) for key, item in value.items()}
    if isinstance(value, (list, tuple)):
        return [_plain(item) for item in value]
    if isinstance(value, (set, frozenset)):
        return sorted(map(str, value))
    if value is None or isinstance(value, (bool, int)):
        return value
    if isinstance(value, float):
        return value if isfinite(value) else None
    return _text(str(value))


def _text(text: str) -> str:
    return text if text.isprintable() else re.sub(_LONE_SURROGATE, "\ufffd", text)
