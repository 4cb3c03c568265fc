"""What a figure is measured by, and a switch put back: "1,200 ft barometric", "OFF, then ON"."""

from __future__ import annotations

import re

from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said

_REFERENCES = (
    (
        r"\bradio\b|\bra\b|\bradalt\b|\brad alt\b",
        r"\bbaro(?:metric)?\b|\bq ?n ?h\b|\bq ?f ?e\b|\bpressure altitude\b|\bsea level\b",
    ),
    (r"\bias\b|\bindicated\b", r"\bground ?speed\b|\btrue airspeed\b|\btas\b"),
    (r"\bground ?speed\b", r"\bias\b|\bindicated\b|\bairspeed\b"),
)
"""What a height or a speed is measured by, and what it is not then."""
_NOT = re.compile(r"\b(?:not|no|never|than|of|isn) (?:the |a |an )?$")


def other_reference(need: Need, said: Said) -> list[str]:
    """Return what a figure is said to be measured by, where the full answer has it measured by something else."""
    full = f"{need.expected} {' '.join(need.question.words)}".lower()
    text = " ".join(re.findall(r"[\w']+", said.text.lower()))
    if not said.claims:
        return []
    return [
        found.group()
        for own, other in _REFERENCES if re.search(own, full) and not re.search(other, full)
        for found in re.finditer(other, text)
        if not _NOT.search(text[: found.start()]) and not re.search(own, text)
    ]  # fmt: skip


_WAYS = (("off", "on"), ("on", "off"))
_BACK = {way: re.compile(rf"\b{way}\b,? (?:and |then |and then )(?:back )?{other}(?= |$|[.,;])(?! the| a )")
         for way, other in _WAYS}  # fmt: skip


def put_back(need: Need, said: Said) -> list[str]:
    """Return that a switch is put back at once, where the full answer leaves it: "ANTI-SKID OFF, then ON"."""
    text = " ".join(said.reading.words).replace(" ,", ",")
    full = need.expected
    named = {word.strip(".,;:") for word in full.split()}
    return [
        f"{way} then {other}" for way, other in _WAYS
        if way.upper() in named and not re.search(rf"\b{other.upper()}\b", full) and _BACK[way].search(text)
    ]  # fmt: skip
