"""Which bound the words beside a number make of it: "at most 110", "90 or more", "min 60 mm", "from rest to 30"."""

from __future__ import annotations

import re

from assistant.practice.marking.reading import wording

_NEAR = 4


def sense_of(before: str, after: str) -> str:
    """Return which bound the words around a number make of it: "max", "min", "lower", "higher" or ""."""
    near = " ".join(before.split()[-_NEAR:])
    beyond = wording.PAST_BOUND.search(before)
    if beyond:
        return "lower" if wording.LOWER.match(beyond.group()) else "higher"
    nearest = _NEAREST.search(near)
    if nearest:
        return "min" if nearest[1].startswith("mi") or nearest[1] == "at least" else "max"
    if _FROM_REST.search(near):
        return "lower"
    follows = " ".join(after.split()[:3])
    for pattern, sense in (
        (wording.AT_MOST, "max"), (wording.AT_LEAST, "min"), (wording.LOWER, "lower"), (wording.HIGHER, "higher"),
    ):  # fmt: skip
        found = _last(pattern, near)
        if found and sense in ("lower", "higher") and _denied(near[: found - 1]):
            return "min" if sense == "lower" else "max"
        if found or (sense in ("max", "min") and _closes(pattern, follows)):
            return sense
    return ""


_NEAREST = re.compile(r"(?<!not )(?<!no )(?<!\d )\b(min|minimum|max|maximum|at least|at most)(?: is| of| at)?$")
"""A bound right before its number, whatever stands behind that: "min 60 mm, max 110 mm"."""
_FROM_REST = re.compile(r"\bfrom (?!above\b|below\b)(?:[a-z]+ ){1,2}to$")
"""From a beginning without a number up to one: "from standstill to 30"."""


def _last(pattern: re.Pattern[str], text: str) -> int:
    """Return where words that come before their number last begin, from 1; "or less" comes after one."""
    spots = [m.start() + 1 for m in pattern.finditer(text) if not m.group().startswith(("or ", "and ", "upward"))]
    return spots[-1] if spots else 0


def _closes(pattern: re.Pattern[str], text: str) -> bool:
    """Return whether words that come after their number begin a text: "or less", "at most", "maximum"."""
    found = pattern.match(text)
    return found is not None and found.group().startswith(
        ("or ", "and ", "at ", "is ", "max", "min", "top", "upper", "lower", "upward")
    )


def _denied(text: str) -> bool:
    last = text.split()[-2:]
    if len(last) == 2 and last[1].endswith("ed"):
        last = last[1:]  # "not locked above 700 ft" denies the lock alone
    return bool((wording.NEGATORS - {"none", "nothing"}).intersection(last))
