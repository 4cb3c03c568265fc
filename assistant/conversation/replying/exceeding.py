"""What follows if the figure told last is exceeded, for a turn that asks no more: "and past that?", "went over it"."""

from __future__ import annotations

import re

from assistant.answering.answer import Answer
from assistant.answering.compose import citations
from assistant.conversation.context import Context
from assistant.conversation.on_verdicts.figures_nearby import limits_told
from assistant.knowledge.records import Limit
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import CheckResult

_MOST_WORDS = 10
_OVER = frozenset({
    "over", "above", "through", "past", "beyond", "exceed", "exceeds", "exceeded", "exceeding", "bust",
    "busted",
    "busting", "broke", "break", "overspeed", "oversped", "faster", "higher", "hotter", "heavier", "quicker",
    "overdo", "overdid", "too",
})  # fmt: skip
_UNDER = frozenset({"below", "under", "lower", "less", "slower", "cooler", "lighter", "beneath", "dropped"})
_HOW_MUCH = frozenset({"much", "far", "many"})
_MORE = frozenset({"more", "longer", "further", "farther"})
_NEEDED = frozenset({
    "need", "needs", "needed", "got", "gotta", "want", "wants", "have", "has", "must", "asks", "insists",
})  # fmt: skip
_SMALL = frozenset({
    "what", "if", "i", "m", "am", "we", "re", "are", "go", "goes", "going", "went", "it", "that", "the",
    "limit", "happens", "happened", "now", "and", "so", "by", "mistake", "accident", "accidentally", "do",
    "then", "get", "gets", "is", "were", "was", "did", "though", "suppose", "say", "to", "have", "has",
    "been", "a", "bit", "little", "slightly", "just", "this", "speed", "figure", "number", "one", "must",
    "than", "ve", "s", "d", "ok", "okay", "well", "right", "oops", "sorry", "he", "she", "they", "you",
    "need", "needs", "needed", "want", "be", "inadvertently", "anything", "someone", "somebody", "something",
    "turn", "us", "tug", "driver", "fast", "high", "hot", "heavy", "far", "much", "what's", "done", "about",
    "had", "my", "mate", "next", "gone", "legally", "still", "anyway", "even", "wants", "crew", "does", "or",
    "all", "of", "how", "can", "really", "for",
})  # fmt: skip
_DONE = re.compile(
    r"^\W*(?:(?:and|so|but|ok|okay|right|well|hm)\W+)*(?:but |and )?what (?:happens )?(?:if|when) "
    r"(?:i|we|they|he|she|you|someone|somebody|one) (?:still |ever )?"
    r"(?:do|does|did|has to|have to|must|had to|exceeds? it)(?: it| that| so)?(?: anyway| regardless| by mistake)?\W*$"
)
"""What is asked may not be done: "and what if I do?"."""
_WHOM = re.compile(
    r"^\W*(?:(?:and|so|but|ok|okay|right|well|hm|um|er|then)\W+)*who(?:m|se)?(?:.?s)?\b.*"
    r"\b(?:call(?:ed)?|ring|phone|tell|told|inform(?:ed)?|notify|notified|contact|report|know|get (?:on to|hold of)"
    r"|speak|talk|ask|fetch|get)\b"
)
"""Somebody is asked for who is to be told of it: "who do I call"."""
_WHO_WORDS = frozenset({
    "who", "whom", "call", "called", "ring", "phone", "tell", "told", "inform", "informed", "notify",
    "notified", "contact",
    "report", "know", "get", "hold", "speak", "talk", "ask", "fetch", "when", "should", "would", "on",
    "gets", "in", "case",
    "us", "me", "about", "shall", "might", "outside", "not", "with", "there", "apart", "isn", "t", "off",
})  # fmt: skip
_CALLED = ("call", "log")
_ASKS = frozenset({
    "if", "what", "now", "suppose", "say", "went", "have", "oops", "past", "beyond", "above", "over",
    "under", "below",
    "less",
})  # fmt: skip


_OUTCOMES = frozenset({"consequence", "consequences", "action", "actions", "and", "the", "so", "any"})
_FOLLOWING = _OUTCOMES - {"and", "the", "so", "any"} | {
    "instead", "use", "happen", "happens", "done", "doing", "required", "follows", "follow", "action",
    "actions", "after", "afterwards",
}  # fmt: skip
"""Words by which what follows is asked for."""


def exceeded_asked(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return what is to be done where the limit told last is exceeded, if that is loaded and all that a turn asks."""
    last = context.answer
    limit = _limit_told(context, knowledge)
    if last is None or limit is None:
        return None
    if _asks_whom(text):
        return _whom_to_tell(text, limit, last, knowledge)
    what = _where_exceeded(limit)
    follows = _is_outside(context) and _asks_what_follows(text)
    if not what or not (follows or _asks_of_it(text, limit)):
        return None
    told = last.text.partition(". ")[0].rstrip(".")
    where = "not met" if limit.maximum is None and limit.minimum is not None else "exceeded"
    return last._replace(question=text, text=f"{what.rstrip('.')}. That is where it is {where}: {told}.")


def _is_outside(context: Context) -> bool:
    """Return whether a reading was judged last, and was outside its limit."""
    return isinstance(context.result, CheckResult) and not context.result.checks[0].within


def _asks_what_follows(text: str) -> bool:
    """Return whether a turn asks no more than what follows: "what has to happen", "consequences?"."""
    words = set(re.findall(r"[a-z]+", text[:100].lower()))
    small = _SMALL | _NEEDED | _FOLLOWING | {"should", "who", "it", "will", "would", "there", "any", "our", "side"}
    plain = not words.isdisjoint(_FOLLOWING) and not words.isdisjoint({"what", "any", "anything"})
    return not any(c.isdigit() for c in text) and words <= small and (plain or words <= _OUTCOMES)


def _asks_whom(text: str) -> bool:
    """Return whether a turn asks no more than who is to be told: "who do I call when it's too much"."""
    said = text[:100].lower()
    words = set(re.findall(r"[a-z]+", said))
    return bool(_WHOM.match(said)) and words <= _WHO_WORDS | _SMALL | _OVER | _UNDER | _MORE


def _whom_to_tell(text: str, limit: Limit, last: Answer, knowledge: Knowledge) -> Answer | None:
    """Return what is to be done beyond the limit told, or beyond another of the same thing, where that says who."""
    said = _where_exceeded(limit)
    if any(word in said.lower() for word in _CALLED):
        return last._replace(question=text, text=f"{said.rstrip('.')}. That is where it is exceeded: {limit.of}.")
    about = knowledge.phrase(limit.of).concepts
    for name in knowledge.base.ids("limits"):
        other = knowledge.base.records[name]
        said = _where_exceeded(other)
        if "call" in said.lower().split() and len(about & knowledge.phrase(other.of).concepts) > 1:
            sources = citations(other.sources, knowledge)
            words = f"{said.rstrip('.')}. That is where it is exceeded: {other.of}."
            return last._replace(question=text, text=words, sources=sources, values=(), working="", entry=name)
    return None


def _where_exceeded(limit: Limit) -> str:
    """Return what is to be done, or what holds, beyond a limit or a stated figure."""
    return limit.exceeded or ("" if limit.maximum or limit.minimum else limit.over)


def _limit_told(context: Context, knowledge: Knowledge) -> Limit | None:
    """Return the one limit that was told last, or that a reading was held against, or whose figure was stated."""
    found = limits_told(context.result, knowledge)
    if isinstance(context.result, CheckResult):
        return found[0]
    return found[0] if len(found) == 1 else None


def _asks_of_it(text: str, limit: Limit) -> bool:
    """Return whether a short turn without figures says no more than that a limit is not kept."""
    if len(text) > 100 or any(c.isdigit() for c in text):
        return False
    words = set(re.findall(r"[a-z]+", text.lower()))
    if _DONE.match(text.lower()):
        return True
    if "how" in words and not words.isdisjoint(_HOW_MUCH):
        return False  # how far a reading is over is asked
    beyond = _UNDER if limit.maximum is None and limit.minimum is not None else _OVER
    plain = not words.isdisjoint(beyond) and not words.isdisjoint(_ASKS)
    supposed = "if" in words or ("than" in words and not words.isdisjoint(_NEEDED))
    more = not words.isdisjoint(_MORE | beyond) and supposed
    known = _SMALL | _MORE | _NEEDED | beyond
    return (plain or more) and len(words) <= _MOST_WORDS and words <= known
