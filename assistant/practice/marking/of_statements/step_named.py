"""The one step of a procedure that a question names by its place: the first item, step 3, the one after lever UP."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.practice.marking.finding.elements import point
from assistant.practice.marking.reading.said import plain
from assistant.resolving.knowing import Knowledge

_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth")
_NUMBERS = ("one", "two", "three", "four", "five", "six", "seven", "eight")
_BY_PLACE = re.compile(
    rf"\b({'|'.join(_ORDINALS)}|last|final)(?: memory)? (?:step|item|action|thing)\b(?!s)|"
    rf"\b(?:step|item) (?:number |no\.? ?)?(\d|{'|'.join(_NUMBERS)})\b",
    re.IGNORECASE,
)
_AFTER = re.compile(
    r"\bwhat (?:is|comes|follows|do (?:you|we|i) do|step (?:is|comes)) (?:next )?(?:straight |right )?after "
    r"(?:the )?(.+?)(?: (?:in|of|on|for|during) (?=[A-Za-z -]*[A-Z]{2}|the |a |free)|\s*[?,:]|$)",
    re.IGNORECASE,
)


def step_named(text: str, steps: Sequence[str]) -> int | None:
    """Return which of the steps a question asks for by its place, from 0; None where it asks for no single one."""
    placed = _BY_PLACE.search(text)
    if placed:
        word = (placed.group(1) or placed.group(2)).lower()
        names = _ORDINALS if placed.group(1) else _NUMBERS
        number = len(steps) if word in ("last", "final") else int(word) if word.isdigit() else names.index(word) + 1
        return number - 1 if 0 < number <= len(steps) else None
    return None


def step_after(text: str, steps: Sequence[str], know: Knowledge) -> int | None:
    """Return the step that follows the one that a question names: "what is after lever UP"; None otherwise."""
    after = _AFTER.search(text)
    named = _best(after.group(1), steps, know) if after else None
    return named + 1 if named is not None and named + 1 < len(steps) else None


def _best(name: str, steps: Sequence[str], know: Knowledge) -> int | None:
    """Return the step that a few words name: all their words, and more of them than any other step."""
    words = {plain(w) for w in re.findall(r"[a-z0-9]+", name.lower())} - {"the", "a", "you"}
    told = [{plain(w) for w in re.findall(r"[a-z0-9]+", step.lower())} for step in steps]
    whole = [n for n, each in enumerate(told) if words and words <= each]
    if not whole:
        made = [point(step, know) for step in steps]
        concepts = know.phrase(name).concepts
        whole = [n for n, p in enumerate(made) if any(concepts & e.concepts for e in p.elements if e.weight > _TELLING)]
    return whole[0] if len(whole) == 1 else None


_TELLING = 1.0
