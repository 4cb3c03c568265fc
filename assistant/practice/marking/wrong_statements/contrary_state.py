"""The contrary of what a point says of its thing, where it stands in the thing's own clause.

"Every leg" for any leg, what is switched the other way if it comes back, a count that is another than the one asked.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from assistant.practice.marking.finding.found import Held
from assistant.practice.marking.points import Need, Point
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import STOPS

_ANY = re.compile(r"^(?:a|any|one) (?P<thing>[a-z]+) (?:is )?not\b")
_EVERY = r"(?<!not )\b(?:all|every|each)(?: of)?(?: the)?(?: three| four| two)?"
_IF = re.compile(r"^[Ii]f\b")
_CONTRARY = {"ON": "off", "OFF": "on", "UP": "down", "DN": "up"}
_SAME = {"ON": ("on",), "OFF": ("off",), "UP": ("up",), "DN": ("down", "dn")}
_CONDITION = frozenset(("if", "should", "when", "whenever"))
_COMES = re.compile(
    r"\b(?:comes?|came|is|shows?|pops?|lights?) (?:back|up|again|on again)\b|\b(?:returns?|reappears?)\b"
)
_RETURN_WORDS = 8


def contrary_said(held: Sequence[Held], need: Need, said: Said) -> list[str]:
    """Return the points of which an answer says the contrary in their own clause."""
    points = [h.point for h in held]
    return [
        *_of_every(points, said),
        *(text for point in points for text in (*_if_it_comes_back(point, said), *_left(point, said))),
        *(text for point in points for text in _other_side(point, said)),
        *_counted(need, said),
        *_other_phase(need, said),
        *_no_matter(need, said),
        *_added_on(need, said),
        *_nothing_done(held, need, said),
        *_already_spent(held, said),
    ]


def _nothing_done(held: Sequence[Held], need: Need, said: Said) -> list[str]:
    """Return a "nothing" that an answer begins with, where it is asked what is to be done, and something is."""
    words = said.reading.words
    acts = [h for h in held if not (h.point.figures or h.point.verdict or h.point.state or h.point.optional)]
    asked = _TO_DO.search(" ".join(need.question.words)) is not None
    bare = words[:1] == ("nothing",) and (len(words) == 1 or words[1] in STOPS or words[1] in ("it", "at"))
    told = _NOTHING.search(need.expected) is not None
    return ["nothing"] if asked and bare and acts and not told and not any(h.share for h in held) else []


def _already_spent(held: Sequence[Held], said: Said) -> list[str]:
    """Return what is counted as used where it is what is left: "the applications that you've already made"."""
    counted = [h.point.text for h in held if not h.share and _COUNTS_LEFT.fullmatch(h.point.text)]
    spent = _SPENT.search(_text(said)) if counted and not _REMAINS.search(_text(said)) else None
    return [spent.group()] if spent else []


_COUNTS_LEFT = re.compile(r"(?:the )?[a-z]+s (?:that are )?(?:left|remaining)")
_SPENT = re.compile(
    r"\b(?:already|so far) (?:been )?\w+(?:ed|d|de|ne|nt)\b|"
    r"\b(?:made|used|spent|done|taken) (?:already|so far|up to now)\b"
)
_REMAINS = re.compile(r"\b(?:left|remain\w*|still|to go)\b")
_TO_DO = re.compile(
    r"\bwhat (?:must|should|has to|needs to) (?:be|we|you|i)\b|\bwhat (?:do|should|must) (?:you|we|i) do\b"
)
_NOTHING = re.compile(r"\b(?:nothing|no action|none)\b", re.IGNORECASE)


_ADDS = frozenset(("add", "adding", "plus", "subtract", "minus"))


def _added_on(need: Need, said: Said) -> list[str]:
    """Return a factor that is to be added and not multiplied by: "add 1.6"."""
    factors = {f.value for p in need.points for f in p.figures if f.unit in ("factor", "")}
    words = said.reading.words
    return [
        f"add {c.amount.raw}" for c in said.claims
        if c.amount.value in factors and _ADDS.intersection(words[max(0, c.amount.start - 2) : c.amount.start])
    ]  # fmt: skip


_PLACED = re.compile(r"\b(?P<before>behind|in|beside|under|on) the (?P<side>left|right)\b")
_OTHER_SIDE = {"left": "right", "right": "left"}


def _other_side(point: Point, said: Said) -> Iterator[str]:
    """Yield a place whose side is said the other way about: "behind the left seat" for the right-hand one."""
    for found in _PLACED.finditer(point.text):
        before, other = found["before"], _OTHER_SIDE[found["side"]]
        placed = rf"\b{before} (?:the |your |his )?{{side}}(?: hand)? seat\b"
        text = _text(said).replace("-", " ")
        if re.search(placed.format(side=other), text) and not re.search(placed.format(side=found["side"]), text):
            yield f"{other}: {point.text}"


_COMING = re.compile(r"\b(?:approach|landing|finals?|descent)\b")
_GOING = re.compile(
    r"\b(?:on|in|during|after|in the) (?:the |a )?(?:climb|climb out|departure|take off|way up)\b|\bclimbing\b"
)


def _other_phase(need: Need, said: Said) -> list[str]:
    """Return the phase of flight that an answer speaks of, where the question asks of the other: "on the climb"."""
    found = _GOING.search(_text(said))
    if not found or not _COMING.search(need.question.text.lower()) or _GOING.search(need.expected.lower()):
        return []
    return [] if {"not", "no", "never"}.intersection(said.reading.words) else [found.group()]


_NO_MATTER = re.compile(
    r"\b(?:whatever|regardless of|irrespective of|no matter)(?: what| how)?(?: the| its| your)? "
    r"(?P<what>temperature|speed|pressure|height|altitude|hot|fast|high)\b"
)
_MEASURED = {
    "temperature": ("degC", "K"), "hot": ("degC", "K"), "speed": ("kt",), "fast": ("kt",), "pressure": ("psi",),
    "height": ("ft",), "altitude": ("ft",), "high": ("ft",),
}  # fmt: skip


def _no_matter(need: Need, said: Said) -> list[str]:
    """Return what is said not to matter, of which a point has a bound: "whatever the temperature"."""
    found = _NO_MATTER.search(_text(said))
    if not found or re.search(r"\b(?:any|whatever|regardless)\b", need.expected):
        return []
    bounded = any(f.unit in _MEASURED[found["what"]] for p in need.points for f in p.figures)
    return [found.group()] if bounded else []


def _left(point: Point, said: Said) -> Iterator[str]:
    """Yield a step that leaves a lever where it is, of which an answer leaves it the other way: "it stays at UP"."""
    left = _LEFT.match(point.text)
    if not left:
        return
    other = _CONTRARY[left["way"]]
    if re.search(rf"\b(?:leave|leaves|left|stays?|keep|keeps|remains?)\b(?: \w+){{0,3}}? {other}\b", _text(said)):
        yield f"{other}: {point.text}"


def _text(said: Said) -> str:
    return " ".join(said.reading.words)


_LEFT = re.compile(r"[Ll]eave (?:it|the \w+(?: \w+)?) (?:at |in )?(?P<way>DN|UP|ON|OFF)\b")


def _of_every(points: Sequence[Point], said: Said) -> Iterator[str]:
    """Yield what is said of all where one of them is enough: "every leg not locked down"."""
    text = _text(said)
    for point in points:
        found = _ANY.match(point.text)
        every = rf"{_EVERY} {found['thing']}s?\b(?! (?:is|are) locked)" if found else ""
        if every and re.search(every, text):
            yield f"all of them: {point.text}"


def _if_it_comes_back(point: Point, said: Said) -> Iterator[str]:
    """Yield a step for when something comes back that is turned the other way: "if it comes back, switch it ON"."""
    way = next((w for w in _CONTRARY if re.search(rf"\b{w}\b", point.text)), "")
    if not way or not _IF.match(point.text) or not re.search(r"\b(?:comes? back|returns?)\b", point.text):
        return
    words = said.reading.words
    for i, word in enumerate(words):
        found = _COMES.search(" ".join(words[i : i + _RETURN_WORDS])) if word in _CONDITION else None
        if not found:
            continue
        behind = " ".join(words[i : i + _RETURN_WORDS])[found.end() :].split()
        end = i + _RETURN_WORDS
        while end < len(words) and words[end] not in STOPS | {"and", "then"}:
            behind.append(words[end])
            end += 1
        if _CONTRARY[way] in behind and not set(_SAME[way]).intersection(behind):
            yield f"{_CONTRARY[way]}: {point.text}"


def _counted(need: Need, said: Said) -> Iterator[str]:
    """Yield a count that is said to be how many there are, where they are others: "one each leg, that's four"."""
    counts = [f for p in need.points if p.figures_suffice for f in p.figures if f.unit == "count"]
    words = (*said.reading.words, ".", ".")
    for claim in said.claims if len(counts) == 1 else ():
        bare = claim.amount.unit in (None, "count") and claim.amount.value not in (1.0, counts[0].value)
        before = words[max(0, claim.amount.start - 2) : claim.amount.start]
        leads = not before or _LEADS.intersection(before) or claim.amount.start == 0
        if bare and not claim.former and leads and (words[claim.amount.end] in STOPS or claim.amount.start == 0):
            yield f"{claim.amount.raw} of them"


_LEADS = frozenset(("is", "are", "makes", "so", "total", "all", "being"))
