"""The rules of an xAPI statement (IEEE 9274.1.1-2023, clause 4.2) that ours could break, as one function a part.

Written from the standard, since no package of the registries carries its schema: breaches are returned in words.
"""

import re
from collections.abc import Iterator
from datetime import datetime
from typing import Any
from urllib.parse import urlsplit

PROPERTIES = {
    "id", "actor", "verb", "object", "result", "context", "timestamp", "stored", "authority", "version", "attachments",
}  # fmt: skip
IDENTIFIERS = {"mbox", "mbox_sha1sum", "openid", "account"}
INTERACTIONS = {
    "true-false", "choice", "fill-in", "long-fill-in", "matching", "performance", "sequencing", "likert", "numeric",
    "other",
}  # fmt: skip
_UUID = re.compile(r"[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}", re.IGNORECASE)
_LANGUAGE = re.compile(r"[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*")


def breaches(statement: dict[str, Any]) -> list[str]:
    """Return the rules that a statement breaks."""
    return list(_statement(statement))


def _statement(made: dict[str, Any]) -> Iterator[str]:
    yield from (f"property {name}" for name in set(made) - PROPERTIES)
    yield from (f"{name} is missing" for name in ("actor", "verb", "object") if name not in made)
    yield from _no_nulls(made)
    if not _UUID.fullmatch(made.get("id", "")):
        yield "id is no UUID"
    yield from _agent(made["actor"])
    yield from _verb(made["verb"])
    yield from _activity(made["object"])
    yield from _result(made.get("result") or {})
    yield from _context(made.get("context") or {})
    try:
        if datetime.fromisoformat(made["timestamp"]).tzinfo is None:
            yield "timestamp without a zone"
    except ValueError:
        yield "timestamp is no time of RFC 3339"


def _no_nulls(value: Any) -> Iterator[str]:
    """No value may be null, but within extensions."""
    if value is None:
        yield "null"
    if isinstance(value, dict):
        for name, each in value.items():
            if name != "extensions":
                yield from _no_nulls(each)
    if isinstance(value, list):
        for each in value:
            yield from _no_nulls(each)


def _agent(agent: dict[str, Any]) -> Iterator[str]:
    if len(IDENTIFIERS & set(agent)) != 1:
        yield "an agent has one identifier"
    if set(agent) - IDENTIFIERS - {"name", "objectType"} or agent.get("objectType", "Agent") != "Agent":
        yield "agent"
    if "account" in agent:
        account = agent["account"]
        if set(account) != {"homePage", "name"} or not _iri(account.get("homePage", "")) or not account.get("name"):
            yield "account"


def _verb(verb: dict[str, Any]) -> Iterator[str]:
    if set(verb) - {"id", "display"} or not _iri(verb.get("id", "")):
        yield "verb"
    yield from _language_map(verb.get("display", {}))


def _activity(activity: dict[str, Any]) -> Iterator[str]:
    if set(activity) - {"objectType", "id", "definition"} or activity.get("objectType", "Activity") != "Activity":
        yield "activity"
    if not _iri(activity.get("id", "")):
        yield "activity id"
    definition = activity.get("definition", {})
    known = {"name", "description", "type", "moreInfo", "extensions", "interactionType", "correctResponsesPattern"}
    if set(definition) - known or not _iri(definition.get("type", "a:b")):
        yield "definition"
    if "correctResponsesPattern" in definition and definition.get("interactionType") not in INTERACTIONS:
        yield "a pattern needs an interaction"
    for name in ("name", "description"):
        yield from _language_map(definition.get(name, {}))
    yield from _extensions(definition)


def _result(result: dict[str, Any]) -> Iterator[str]:
    if set(result) - {"score", "success", "completion", "response", "duration", "extensions"}:
        yield "result"
    score = result.get("score", {})
    if set(score) - {"scaled", "raw", "min", "max"} or not -1 <= score.get("scaled", 0) <= 1:
        yield "score"
    if not score.get("min", 0) <= score.get("raw", 0) <= score.get("max", 1):
        yield "raw score out of its bounds"
    if any(not isinstance(result.get(name, True), bool) for name in ("success", "completion")):
        yield "success and completion are true or false"
    if not isinstance(result.get("response", ""), str):
        yield "response"
    yield from _extensions(result)


def _context(context: dict[str, Any]) -> Iterator[str]:
    known = {
        "registration", "instructor", "team", "contextActivities", "revision", "platform", "language", "statement",
        "extensions", "contextAgents", "contextGroups",
    }  # fmt: skip
    if set(context) - known or not _UUID.fullmatch(context.get("registration", "")):
        yield "context"
    if not _LANGUAGE.fullmatch(context.get("language", "en")):
        yield "language"
    activities = context.get("contextActivities", {})
    if set(activities) - {"parent", "grouping", "category", "other"}:
        yield "context activities"
    for group in activities.values():
        for each in group:
            yield from _activity(each)
    yield from _extensions(context)


def _extensions(part: dict[str, Any]) -> Iterator[str]:
    yield from (f"extension {name}" for name in part.get("extensions", {}) if not _iri(name))


def _language_map(texts: dict[str, str]) -> Iterator[str]:
    yield from (f"language {name}" for name in texts if not _LANGUAGE.fullmatch(name))


def _iri(text: str) -> bool:
    """Whether a text is an absolute IRI (RFC 3987)."""
    parts = urlsplit(text)
    return bool(parts.scheme and (parts.netloc or parts.path)) and not re.search(r'[\s<>"{}|\\^`]', text)
