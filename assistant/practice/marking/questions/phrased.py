"""A question in the words that the resolvers know: a case beyond a bound named in full, "where" as the speed it is."""

from __future__ import annotations

import re
from collections.abc import Sequence

CHANGE = re.compile(
    r"what did (?:the )?(?:last |latest |new )?revision (?:change|do) (?:about|to|with) "
    r"(?:the )?(?:maximum |minimum )?",
    re.IGNORECASE,
)
"""Asking what changed, with the bound of it named besides."""


def in_full(text: str) -> str:
    """Return a question with the case beyond a bound that it names in full: "and in a sharper turn"."""
    text = _FIGURE.sub(r"What is the \1?", text)
    bound = _UP_TO.search(text)
    return _SHARPER.sub(f"turn of more than {bound.group(1)}", text) if bound else text


def without_aside(text: str) -> str:
    """Return a question whose first word stands without the aside behind it: "When, after retraction, is it ..."."""
    return _ASIDE.sub(r"\1 \2 ", text)


_ASIDE = re.compile(
    r"^(when|where|how|why), ((?:after|at|before|by|during|in|on|with) [^,?]{1,40}), "
    r"(?=is|are|does|do|did|was|may|can)",
    re.IGNORECASE,
)


def at_what_speed(text: str) -> str:
    """Return a question with "where" as the speed that is meant, where speeds are asked for."""
    return _WHERE_IT_ENDS.sub("at what speed ", text) if "speed" in text.lower() else text


def brought_on(text: str) -> str:
    """Return a question with what brings a label up as what makes it come on."""
    if not _CAPITALS.search(text):
        return text
    return _BROUGHT_ON.sub(lambda m: f"what makes {m.group(1) or m.group(2)} come on", text)


_SHOWN = r"(it|that|them|the (?:message|caption|label|light|warning|memo))"
_BROUGHT_ON = re.compile(
    r"\bwhat (?:exactly |actually |really |precisely )?"
    rf"(?:(?:brings|calls|flashes|puts|throws) {_SHOWN} (?:up|on)|(?:triggers|raises|sets off|trips|fires) {_SHOWN})\b",
    re.IGNORECASE,
)
"""What asks for the cause of a label by a verb that would do something to a thing: "what brings it up"."""
_FIGURE = re.compile(r"^(?:give|state|tell|say) the figure: (?:the )?([^?]*?)\.?\s*$", re.IGNORECASE)
"""A figure asked for by its name alone."""
_UP_TO = re.compile(r"\bup to (\d+ ?(?:°|degrees))", re.IGNORECASE)


_SHARPER = re.compile(r"\b(?:sharper|tighter) (?:turn|one)", re.IGNORECASE)


_WHERE_IT_ENDS = re.compile(
    r"\bwhere (?=(?:do|does) (?:it|they|that) (?:reach|fade|fall|drop|go|end|stop|run out|begin|start))", re.IGNORECASE
)
_LABEL = re.compile(
    r"\b(?:which|what) (?:\w+ )?(?:memo|message|light|caption|warning|caution|label|alert)s?\b(?! (?:mean|tell|say))",
    re.IGNORECASE,
)
"""Asking for a light or memo by what it goes with."""
_TELLS_MORE = re.compile(
    r"^(?:and )?what (?:does|do|will) (?:it|they|that|this) (?:then )?(?:tell|show|say|mean|indicate|count)s?"
    r"(?: you| us| the crew)?$",
    re.IGNORECASE,
)
"""A part that asks for the rest of what the statement before it tells."""


def label_in(says: str) -> str:
    """Return the label that a statement tells of, in capitals: "TOW PIN"."""
    found = _CAPITALS.search(says)
    return found.group() if found else ""


_CAPITALS = re.compile(r"\b[A-Z][A-Z-]+(?: [A-Z][A-Z-]+)+\b")


def asks_label(text: str) -> bool:
    """Return whether a question asks which light or memo it is that shows."""
    return _LABEL.search(text) is not None


def tells_more(part: str, text: str) -> bool:
    """Return whether a part asks for the rest of what the statement tells that the label of a question stands in."""
    return asks_label(text) and _TELLS_MORE.search(part) is not None


def purpose_told(part: str, points: Sequence[str]) -> bool:
    """Return whether a part asks what a thing is for, and a statement tells it: "for the check"."""
    return _PURPOSE.match(part) is not None and any(p.split()[0] in ("for", "to", "so") for p in points)


_PURPOSE = re.compile(
    r"^(?:and )?(?:what (?:is|are) (?:it|they|that) (?:there |good |used |meant )?for|what for)$", re.IGNORECASE
)
