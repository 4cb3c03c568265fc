"""A turn that names the variant which was not told of by what sets it apart: "and the other one", "and the short"."""

from __future__ import annotations

import re

from assistant.conversation.context import Context
from assistant.knowledge.records import Schedule
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import CheckResult, CompareResult, LimitResult, ModelResult, Result, ScheduleResult

_MOST_WORDS = 8
_OTHER = frozenset({"other", "others"})
_BEARING = ("body", "one", "model", "version")
"""What a word that sets a variant apart stands before in its name: "short body"."""
_BEARING_NOUNS = frozenset({"body", "variant", "version", "model"})
_SHORT = 80
_SMALL = frozenset({
    "and", "on", "for", "of", "with", "in", "the", "one", "what", "about", "then", "so", "ok", "okay",
    "variant", "body",
    "version", "model", "how", "s", "is", "it", "though", "now", "to", "back", "right", "well", "um", "er",
    "hm", "but",
    "same", "again", "please", "at", "that", "this", "type", "aeroplane", "our", "a", "an", "whats",
    "sorry", "as",
})  # fmt: skip


def of_the_other(text: str, context: Context, knowledge: Knowledge) -> str | None:
    """Return the turn with the name of the variant that it means, where what was told last holds for one of two."""
    before = context.asked
    if before is None or len(knowledge.variants) < 2 or len(text) > _SHORT:
        return None
    words = re.findall(r"[a-z0-9]+", text.lower())
    if not (before.named_variant or context.variant or ("other" in words and not _BEARING_NOUNS.isdisjoint(words))):
        return None
    rest = [word for word in words if word not in _SMALL]
    if len(words) > _MOST_WORDS or len(rest) != 1 or not _varies(context.result, knowledge):
        return None
    if rest[0] in _OTHER:
        others = [v for v in knowledge.variants if v != (before.variant or knowledge.variants[0])]
        meant = others if len(others) == 1 else []
    else:
        meant = [v for v in knowledge.variants if rest[0] in _apart(v, knowledge)]
    return f"and on the {knowledge.base.variants[meant[0]].show}" if len(meant) == 1 else None


def _apart(variant: str, knowledge: Knowledge) -> frozenset[str]:
    """Return the words that set a variant apart in its names: "short" of "short body"."""
    parted = (name.split() for name in knowledge.base.variants[variant].names)
    return frozenset(words[0] for words in parted if len(words) > 1 and words[1] in _BEARING and words[0] not in _SMALL)


def _varies(result: Result | None, knowledge: Knowledge) -> bool:
    """Return whether what was told may be another on another variant."""
    if isinstance(result, (ModelResult, CompareResult)):
        return True
    own = {override.record for override in knowledge.base.overrides}
    if isinstance(result, LimitResult):
        return not own.isdisjoint(limit.id for limit in result.limits)
    if isinstance(result, CheckResult):
        return not own.isdisjoint(check.limit.id for check in result.checks)
    schedule = result.schedule if isinstance(result, ScheduleResult) else None
    return isinstance(schedule, Schedule) and schedule.top in own
