"""What each part of an exported record must hold: a field at a time, so that what is amiss is named."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import date, datetime
from typing import Any

from assistant.practice.keeping.learners import NameProblem, tidy_name
from assistant.practice.keeping.rows import ASKED, ENDED, MARKED, NAMED, OPEN, PAUSED, REVEALED, WAYS
from assistant.practice.recall import MARKS

_LONGEST = 100_000
"""Characters of a text; no question or answer comes near."""
Check = Callable[[Any], bool]


class ExchangeProblem(ValueError):
    """An exported record is not as it should be; the message is one line."""


def listed(holder: dict[str, Any], key: str, fields: dict[str, Check], where: str) -> list[dict[str, Any]]:
    """Return the list under a key, each item checked. Raises ExchangeProblem."""
    found = holder.get(key, [])
    if not isinstance(found, list):
        raise ExchangeProblem(f'{where}: "{key}" is not a list')
    return [checked(item, fields, f"{where}, {key} {number}") for number, item in enumerate(found, 1)]


def checked(item: Any, fields: dict[str, Check], where: str) -> dict[str, Any]:
    """Return an object whose fields are all as they should be; others in it are kept. Raises ExchangeProblem."""
    if not isinstance(item, dict):
        raise ExchangeProblem(f"{where} is not an object")
    for name, fits in fields.items():
        if name not in item:
            raise ExchangeProblem(f'{where}: "{name}" is missing')
        if not fits(item[name]):
            raise ExchangeProblem(f'{where}: "{name}" cannot be {json.dumps(item[name])[:40]}')
    return dict(item)


def _text(value: Any) -> bool:
    return isinstance(value, str) and len(value) <= _LONGEST and _encodes(value)


def _some_text(value: Any) -> bool:
    return _text(value) and bool(value)


def _encodes(value: str) -> bool:
    try:
        value.encode()
    except UnicodeEncodeError:
        return False
    return True


def _name(value: Any) -> bool:
    try:
        return _text(value) and bool(tidy_name(value))
    except NameProblem:
        return False


def _time(value: Any) -> bool:
    try:
        found = datetime.fromisoformat(value)
        return found.tzinfo is not None and 1970 < found.year < 2200
    except (TypeError, ValueError):
        return False


def _day(value: Any) -> bool:
    try:
        return 1970 < date.fromisoformat(value).year < 2200
    except (TypeError, ValueError):
        return False


def _number(value: Any) -> bool:
    return isinstance(value, (int, float)) and not isinstance(value, bool) and value == value


def _share(value: Any) -> bool:
    return _number(value) and 0 <= value <= 1


def _hesitation(value: Any) -> bool:
    return value is None or (_number(value) and 0 <= value < 1e6)


def _truth(value: Any) -> bool:
    return isinstance(value, bool)


def _whole(value: Any) -> bool:
    return isinstance(value, int) and not isinstance(value, bool) and 0 < value < 1_000_000


def _texts(value: Any) -> bool:
    return isinstance(value, list) and all(map(_text, value))


def _pairs(value: Any) -> bool:
    return isinstance(value, list) and all(_texts(pair) and len(pair) == 2 for pair in value)


def _names(value: Any) -> bool:
    return isinstance(value, list) and all(map(_name, value))


def _one_of(*known: str) -> Check:
    return lambda value: isinstance(value, str) and value in known


def _or_none(check: Check) -> Check:
    return lambda value: value is None or check(value)


def _anything(value: Any) -> bool:
    return True


LEARNER: dict[str, Check] = {"name": _name, "since": _time, "ready_by": _or_none(_day)}
ANSWER: dict[str, Check] = {
    "uid": _some_text, "type": _some_text, "at": _time, "record": _some_text, "question": _text, "answer": _text,
    "mark": _one_of(*MARKS), "share": _share, "expected": _text, "form": _text, "how": _one_of(*WAYS),
    "hinted": _truth, "overruled": _truth, "marked": _one_of(*MARKS), "confused_with": _text,
    "hesitation": _hesitation, "revisions": _pairs, "content": _text,
}  # fmt: skip
SEAT: dict[str, Check] = {"name": _name, "team": _text}
TURN: dict[str, Check] = {
    "number": _whole, "record": _some_text, "question": _text, "expected": _text, "sources": _texts, "form": _text,
    "revisions": _pairs, "content": _text, "phase": _one_of(ASKED, NAMED, REVEALED, MARKED), "hinted": _truth,
    "mark": _one_of("", *MARKS), "marked": _one_of("", *MARKS), "share": _share, "answer": _text,
    "overruled": _truth, "confused_with": _text, "at": _time,
    "seat": _or_none(_name), "passed": _names, "kept": _or_none(_text),
}  # fmt: skip
SITTING: dict[str, Check] = {
    "uid": _some_text, "type": _some_text, "title": _text, "state": _one_of(OPEN, PAUSED, ENDED), "began": _time,
    "ended": _or_none(_time), "plan": _anything, "options": _anything,
}  # fmt: skip
"""The fields of each part, in the order in which they are written."""
