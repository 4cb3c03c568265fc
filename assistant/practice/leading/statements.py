"""The results of a class as xAPI statements (IEEE 9274.1.1-2023), for a learning-management system to take in.

A list of statements, one for each marked turn. Persons are pseudonyms that say nothing outside this machine, unless
names are asked for. Ids are made from the sitting's own, so that statements sent twice are the same statements.
"""

from __future__ import annotations

import hashlib
import uuid
from collections.abc import Iterable
from typing import Any

from assistant.practice.keeping.rows import MARKED, Seat, Turn
from assistant.practice.leading.passes import with_passes
from assistant.practice.leading.report import FORMATIVE
from assistant.practice.leading.shown import without_names
from assistant.practice.leading.standing import Standing
from assistant.practice.recall import RIGHT

PLACE = "https://downlock.invalid"
"""The root of our identifiers: a name that RFC 2606 keeps from ever leading anywhere."""
_VERB = {"id": "http://adlnet.gov/expapi/verbs/answered", "display": {"en": "answered"}}
_INTERACTION = "http://adlnet.gov/expapi/activities/cmi.interaction"
_CLASS = "http://adlnet.gov/expapi/activities/assessment"
_SECTION = "http://adlnet.gov/expapi/activities/module"


def statements(standing: Standing, named: bool = False) -> list[dict[str, Any]]:
    """Return a statement for each marked turn that somebody had. named: with the names of persons in them."""
    seats = {seat.id: seat for seat in standing.seats}
    return [
        _statement(each, seats[each.seat], standing, named, f"/passed/{place}" if each is not turn else "")
        for turn in standing.turns if turn.phase == MARKED
        for place, each in enumerate(with_passes((turn,), standing.seats)) if each.seat in seats
    ]  # fmt: skip


def pseudonym(seat: Seat, standing: Standing) -> str:
    """Return what stands for a person: the same all through a class, another in the next, and no way back.

    The sitting's own id is the secret, so that no statement may hold it.
    """
    secret = standing.sitting.uid.encode()
    return hashlib.blake2b(f"{seat.learner}".encode(), key=secret[:64], digest_size=10).hexdigest()


def _statement(turn: Turn, seat: Seat, standing: Standing, named: bool, part: str) -> dict[str, Any]:
    return {
        "id": str(uuid.uuid5(uuid.NAMESPACE_URL, f"{PLACE}/class/{standing.sitting.uid}/turn/{turn.id}{part}")),
        "actor": _actor(seat, standing, named),
        "verb": _VERB,
        "object": _activity(turn, standing),
        "result": _result(turn, standing, named),
        "context": _context(turn, standing),
        "timestamp": turn.at.isoformat(timespec="milliseconds"),
    }


def _actor(seat: Seat, standing: Standing, named: bool) -> dict[str, Any]:
    account = {"homePage": PLACE, "name": pseudonym(seat, standing)}
    return {"objectType": "Agent", **({"name": seat.name} if named else {}), "account": account}


def _activity(turn: Turn, standing: Standing) -> dict[str, Any]:
    question = standing.question(turn)
    text = question.text if question is not None else turn.asking.question
    mark = hashlib.blake2b(text.encode(), digest_size=6).hexdigest()
    name = turn.asking.record if not turn.asking.record.startswith("own:") else "own"
    return {
        "objectType": "Activity",
        "id": f"{PLACE}/{_part(standing.sitting.type_id)}/{_part(name)}/{mark}",
        "definition": {
            "type": _INTERACTION,
            "name": {"en": text},
            "description": {"en": f"{text} ({'; '.join(turn.asking.sources)})"},
            "interactionType": "long-fill-in",
            "correctResponsesPattern": [f"{{case_matters=false}}{turn.asking.expected}"],
        },
    }


def _result(turn: Turn, standing: Standing, named: bool) -> dict[str, Any]:
    answer = turn.answer if named else without_names(turn.answer, (seat.name for seat in standing.seats))
    return {
        "score": {"scaled": round(turn.share, 4), "raw": round(turn.share, 4), "min": 0, "max": 1},
        "success": turn.mark == RIGHT,
        "completion": True,
        **({"response": answer} if answer else {}),
        "extensions": {
            f"{PLACE}/mark": turn.mark, f"{PLACE}/hinted": turn.hinted, f"{PLACE}/overruled": turn.overruled,
            f"{PLACE}/passed-on": len(turn.passed), f"{PLACE}/meant": FORMATIVE,
        },
    }  # fmt: skip


def _context(turn: Turn, standing: Standing) -> dict[str, Any]:
    registration = uuid.uuid5(uuid.NAMESPACE_URL, f"{PLACE}/class/{standing.sitting.uid}")
    question = standing.question(turn)
    parent = {
        "objectType": "Activity",
        "id": f"{PLACE}/class/{registration}",
        "definition": {"type": _CLASS, "name": {"en": standing.sitting.title or "Class"}},
    }
    section = question.section if question is not None else ""
    kind = {"type": _SECTION, "name": {"en": section}}
    grouping = [{"objectType": "Activity", "id": f"{PLACE}/ata/{section}", "definition": kind}] if section else []
    return {
        "registration": str(registration),
        "contextActivities": {"parent": [parent], **({"grouping": grouping} if grouping else {})},
        "platform": "Downlock",
        "language": "en",
        "extensions": {f"{PLACE}/revisions": dict(turn.asking.revisions)},
    }


def _part(text: str) -> str:
    """Return a text as a part of an identifier."""
    from urllib.parse import quote

    return quote(text, safe="-._~")


def count_persons(made: Iterable[dict[str, Any]]) -> int:
    """Return how many persons statements are about."""
    return len({each["actor"]["account"]["name"] for each in made})
