"""What was told before the last turn, asked for again: the limit, after what followed from it; where "that one" stands.

Only what was told in this conversation is meant, so that no other figure or paragraph is ever given for it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.answering.answer import Answer
from assistant.conversation.context import Context
from assistant.conversation.controls import control
from assistant.knowledge.base import Base
from assistant.resolving.results import CheckResult, LimitResult, Result

_LIMIT = re.compile(
    r"^\W*(?:(?:and|so|but|sorry|ok|okay|then|hang on|wait)\W+)*what (?:was|were) (?:the|that) (?:actual )?"
    r"(?:limit|maximum|max|minimum)(?: (?:again|then|there|though|on that|for that|figure|speed))*\W*$",
    re.IGNORECASE,
)
_NAMED = re.compile(r"\b(?:the|that) (\w{4,})(?: one| rule| limit| figure| bit| thing)\b", re.IGNORECASE)
_ASIDE = re.compile(r"^\W*(?:never mind|forget that|ok|okay|right|fine)\W+(?=\w)", re.IGNORECASE)
_BEGINNING = 5
"""Letters by which a word names what was told: "the briefing one", of a brief."""


def limit_again(text: str, context: Context) -> Answer | None:
    """Return the limit told or held against before the last turn, to a turn that asks no more than what it was."""
    if isinstance(context.result, (LimitResult, CheckResult)) or not _LIMIT.match(text[:60]):
        return None
    for result, answer in _lately(context):
        if isinstance(result, (LimitResult, CheckResult)):
            return answer._replace(question=text)
    return None


def named_before(text: str, context: Context, base: Base) -> Answer | None:
    """Return the answer told lately whose source a turn asks for by a word: "whose rule is the briefing one?"."""
    found = _NAMED.search(text[:100]) if context.answer else None
    if found is None or control(_ASIDE.sub("", text.replace(found.group(), "that"))) != "source":
        return None
    word = found.group(1).lower()[:_BEGINNING]
    for _, answer in _lately(context):
        record = base.records.get(answer.entry)
        about = (str(getattr(record, field, "")).lower() for field in ("title", "of", "says"))
        if any(re.search(rf"\b{re.escape(word)}", words) for words in about):
            return answer
    return None


def _lately(context: Context) -> Iterator[tuple[Result | None, Answer]]:
    """Yield what was told, the latest first, with how it was answered."""
    if context.answer:
        yield context.result, context.answer
    for turn in context.earlier:
        yield turn.result, turn.answer
