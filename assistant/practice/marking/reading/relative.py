"""Numbers said by the one before them: "15 s, and twice that with the lever pulled"."""

from __future__ import annotations

import re

from assistant.practice.marking.reading.spoken import written
from assistant.resolving.knowing import Knowledge

_TIMES = {"twice": 2.0, "double": 2.0, "half": 0.5, "three times": 3.0, "triple": 3.0}
_OF_IT = re.compile(rf"\b({'|'.join(_TIMES)}) (?:that|as (?:much|long|many|high))\b", re.IGNORECASE)
_SAID = re.compile(r"[^.;]*\b(?:so|i\.?e\.?|that is|which is|making|=)\b|\s*[,(:=–—-]+\s*(?=\d)", re.IGNORECASE)
"""What leads to the number itself, behind the way that it is reckoned."""


def reckoned(text: str, know: Knowledge) -> str:
    """Return an answer with a number in the place of "twice that", as far as one stands before it with its unit."""
    found = _OF_IT.search(text)
    if not found:
        return text
    before = know.reader.read(written(text[: found.start()])).amounts
    if _SAID.match(text, found.end()) and re.search(r"\d|\w+t(?:y|een)\b", text[found.end() :]):
        return f"{text[: found.start()]}longer{text[found.end() :]}"
    if not before or not before[-1].unit:
        return text
    value = before[-1].value * _TIMES[found.group(1).lower()]
    return f"{text[: found.start()]}{value:g} {before[-1].unit}{text[found.end() :]}"
