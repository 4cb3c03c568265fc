"""Which pilot does something: by his duty or by his seat, and the other one named in his place.

A duty that the knowledge gives to a seat is that seat's: who taxies sits on the left, so that either name says him.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.knowledge.records import Fact
from assistant.practice.marking.points import Element, Need, Point
from assistant.practice.marking.reading.said import Said, plain
from assistant.resolving.knowing import Knowledge

_DUTIES = r"taxiing|taxying|flying|monitoring|steering|handling|driving|braking|operating"
_DUTY = re.compile(rf"\bpilots? (?:who is |who s |that is |that s |is )?((?:not |isn t )?(?:{_DUTIES}))\b")
_BEFORE = re.compile(
    rf"\b((?:non |not )?-?(?:{_DUTIES})) pilot\b|\b(?:who is|who s|whoever is|one) (not (?:{_DUTIES}))\b"
)
_OTHER = re.compile(
    r"\bother (?:pilot|one|seat|guy)\b|\b(?:pf|pm|pnf)\b|\bpilot not\b|\bnon[ -](?:flying|handling|taxiing)\b"
)
_ANY = re.compile(r"\b(?:both|either|any|each|two) (?:of the )?pilots?\b|\beither (?:of them|one)\b")
_SEATED = re.compile(r"The pilot in the (left|right) seat (\w+)")
_SIDES = {"left": "captain", "right": "first_officer"}


def duty_of(point: Point) -> str:
    """Return the duty by which a point names a pilot: "taxiing"; "" where it does not."""
    found = _DUTY.search(point.text.lower())
    return found.group(1) if found else ""


def with_duty(point: Point, know: Knowledge) -> Point:
    """Return a point of which the duty is to be said as well, or the seat of the pilot who has it."""
    duty = duty_of(point)
    if not duty:
        return point
    seats = frozenset(_SIDES[side] for side in _seats_of(duty, know))
    person = [e._replace(weight=_SLIGHT) for e in point.elements if "pilot" in e.words]
    told = know.phrase(duty).mentions
    concepts = frozenset(c for m in told for c in m.concepts if c[0] not in "@~") | seats
    return point._replace(elements=(*person, Element(concepts, (plain(duty),), _DUTY_WEIGHT)))


_SLIGHT = 0.4
_DUTY_WEIGHT = 1.5


def _seats_of(duty: str, know: Knowledge) -> Iterator[str]:
    """Yield the sides of the pilots who are said to have a duty: "the pilot in the left seat taxies"."""
    own = {c for c in know.phrase(duty).concepts if c[0] not in "@~"}
    for record in know.base.records.values():
        found = _SEATED.match(record.says) if isinstance(record, Fact) else None
        if found and own & know.phrase(found.group(2)).concepts:
            yield found.group(1)


def other_pilot(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the pilot whom an answer names in place of the one who does it, where it is asked who."""
    if not need.question.has("who") or not any(
        "pilot" in e.words or e.concepts & _BOTH for p in need.points for e in p.elements
    ):
        return []
    text = " ".join(said.reading.words)
    full = f"{need.expected.lower()} {' '.join(need.question.words)}"
    duties = [d for d in map(duty_of, need.points) if d]
    named = [found.group(1) or found.group(2) for found in _BEFORE.finditer(text)]
    named += [found.group(1) for found in _DUTY.finditer(text)]
    wrong = (
        [name for name in named if _stem(name) not in {_stem(d) for d in duties} and name not in full] if duties else []
    )
    other = _OTHER.search(text) or (_ANY.search(text) if duties else None)
    if other and other.group() not in full and not wrong:
        wrong.append(other.group())
    seats = {_SIDES[s] for d in duties for s in _seats_of(d, know)}
    if seats:
        here = frozenset(_SIDES.values()) - seats
        wrong += [said.reading.words[i] for i in said.where(here)[:1]]
    return wrong


_BOTH = frozenset(_SIDES.values())


def _stem(duty: str) -> str:
    """Return a duty in one spelling, with its "not"."""
    return duty.replace("taxying", "taxiing").replace("isn t", "not")
