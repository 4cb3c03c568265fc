"""The yes or no that follows from what answers a question, though it does not say it.

Who asks whether one may taxi in is told by the step that is done instead; whether there are brakes at all, by the mode
that is left; whether orders add, by a sum.
"""

from __future__ import annotations

import re
from typing import Any

from assistant.knowledge.records import Fact
from assistant.practice.marking.finding.elements import told_concepts
from assistant.practice.marking.points import Point
from assistant.practice.marking.questions.parts import POLAR, parts_of
from assistant.practice.marking.reading.said import plain
from assistant.resolving.knowing import Knowledge

_MAY = re.compile(r"\b(?:can|may|could) (?:you|we|i|the aeroplane|it)\b(?! (?:not|only)\b)(?P<rest>.*)", re.IGNORECASE)
_THERE = re.compile(r"\b(?:have|has|got|any|is there|are there|left|work|works|still)\b", re.IGNORECASE)
_ADDS = re.compile(r"\b(?:do|does|are|is) .*\b(?:add|added|sum|summed|combine|combined)\b(?! nothing)", re.IGNORECASE)
_SUM = re.compile(r"\bplus\b|\badds?\b|\bsum of\b", re.IGNORECASE)
_NONE = re.compile(r"No ([\w ]+)")


def instead_of(step: Point, text: str, know: Knowledge) -> list[Point]:
    """Return "no", and the step that says it, where a question asks whether one may do what is not done in it."""
    asked = _MAY.search(text)
    if not asked or len(parts_of(text)) > 1 or step.figures or not POLAR.search(text):
        return []
    own = frozenset(c for e in step.elements for c in e.concepts)
    words = frozenset(w for e in step.elements for w in e.words)
    done = know.phrase(asked["rest"])
    if own & told_concepts(done) or words.intersection(map(plain, done.words)):
        return []
    return [Point("no", verdict="no"), step._replace(optional=True, either=True)]


def there_is(output: Any, value: str, text: str, know: Knowledge) -> str:
    """Return whether there is a thing at all, where one of the results of an output is that there is none; else ""."""
    if not _THERE.search(text):
        return ""
    lacking = {v: found[1] for v, says, _ in output.values if (found := _NONE.match(says.split(":")[0]))}
    concepts = know.phrase(text).concepts
    named = any(c.startswith("=") and c.split(".")[1:2] == [output.id] for c in concepts)
    if len(lacking) != 1 or named:
        return ""
    heads = {plain(name.split()[-1]) for name in lacking.values()}
    if heads.isdisjoint(map(plain, know.reader.read(text).words)):
        return ""
    return "no" if value in lacking else "yes"


def adds_up(fact: Fact, text: str) -> str:
    """Return "yes" where a question asks whether things add, and the statement adds them; else ""."""
    whole = len(parts_of(text)) < 2 and POLAR.search(text) and _ADDS.search(text)
    return "yes" if whole and _SUM.search(fact.says) and not re.search(r"\bnot add\b", fact.says) else ""
