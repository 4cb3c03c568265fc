"""What an answer puts where something asked for is missing: "right of the display, with a round ball on it".

Where a point is not said and a thing is named that neither the question nor its full answer knows, that thing was meant
for the point. Beside a whole answer the same words are only more than was asked.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.practice.marking.finding.found import Held
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.confessing import confessed
from assistant.practice.marking.reading.said import NO_FELLOWS, Said, plain
from assistant.practice.marking.reading.wording import NEGATORS, word_set
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import Mention

_NO_THINGS = ("quantity", "ask", "ask!", "filler")
_COMMON = word_set(
    "as be because brake brakes can capped caption cause caution choose clipped cycle "
    "entry full go have has light lower make makes mark memo message must need pick remain remains running "
    "select selected set stand stands stay stays time times use used warning"
)
_HALF = 0.49
"""Share of the points that must be said, for what else is named to be meant for the others."""


def in_place_of(need: Need, held: tuple[Held, ...], said: Said, know: Knowledge) -> tuple[str, ...]:
    """Return the things that an answer names in place of a point it lacks."""
    if all(h.share or h.point.optional or (h.point.figures and not h.point.either) for h in held):
        return ()
    if sum(h.share for h in held) < _HALF * len(held) and not need.loss:
        return ()
    passed = _COMMON - {"brake", "brakes"} if need.loss else _COMMON
    points = [h.point for h in held]
    unsaid = confessed(said)
    known = {c for p in points for e in (*p.elements, *p.labels) for c in e.concepts}
    known |= need.question.concepts | need.said | need.besides
    own = {w for p in points for e in (*p.elements, *p.labels) for w in e.words}
    own |= need.asked | {plain(w) for w in re.findall(r"[\w-]+", need.expected.lower())}
    found = [
        m for m in said.content
        if m.concepts.isdisjoint(known) and said.numbered.isdisjoint(m.taken) and not m.mended
        and not any(plain(w) in own or w in passed for w in m.text.split() if w not in NEGATORS)
        and not _stands_for(m, held, said)
        and not all(know.lexicon.kinds.get(c, "thing") in _NO_THINGS for c in m.concepts) and m.start not in unsaid
        and not (_MOVING.match(m.text) and not need.loss) and not _COUNTED_OFF.fullmatch(m.text)
        and not (m.start and _is_beside(m, said) and not need.question.has("where"))
        and not _tells_of_number(m, said) and not _only_moves(m, said) and not _is_done(m, said)
    ]  # fmt: skip
    ordinary = [m for m in found if all(c[0] == "~" for c in m.concepts)]
    if len(ordinary) > 1 and not need.loss:  # a way of speaking, and not one thing put for another
        found = [m for m in found if m not in ordinary]
    return tuple(m.text for m in found)


_MOVING = re.compile(
    r"(?:comes?|goes|gets?|slides?|pops?|moves?|drops?|lets?|leaks?|pull(?:s|ed)?|taken?|put|thrown?|left|cut) "
    r"(?:out|back|away|off|free|clear|go|down)$|put (?:in|into)$|"
    r"(?:pulled|push(?:es|ed)?|moved?|moves|brought|brings?)$",
    re.IGNORECASE,
)
"""An everyday verb of moving, which is no thing: the pin "comes out"."""
_COUNTED_OFF = re.compile(r"(?:the )?(?:first|second|third|fourth|last|other) (?:one|thing|kind|item)s?", re.IGNORECASE)
"""One of several by its number, which names nothing."""
_LEAVING = re.compile(r"(?:just |then |all )?(?:comes?|goes|gets?|leaks?|bleeds?|escapes?|is let|is lost)\b")


def _only_moves(mention: Mention, said: Said) -> bool:
    """Return whether an ordinary word is what goes away, told by an everyday verb: "the air goes out"."""
    behind = " ".join(said.reading.words[mention.end : mention.end + 2])
    return all(c[0] == "~" for c in mention.concepts) and _LEAVING.match(behind) is not None


def _is_done(mention: Mention, said: Said) -> bool:
    """Return whether a word tells what somebody or something does, and names no thing: "the catches grab them"."""
    words = said.reading.words
    before = words[mention.start - 1] if mention.start else ""
    behind = words[mention.end] if mention.end < len(words) else ""
    if mention.end - mention.start > _TWO or before in _DETERMINING:
        return False
    if any(c[0] == "@" or c in _SHOWING for c in mention.concepts):  # how something stands or shows
        return before in _PERSONS or (words[mention.start].endswith("ing") and behind in _THING_BEHIND)
    return before in _DOERS or behind in _DONE_TO or words[mention.start].endswith("ing")


_TWO = 2
_SHOWING = frozenset(("flashing", "transit"))
_PERSONS = frozenset(("she", "he", "i", "you", "we"))
_THING_BEHIND = frozenset(("the", "a", "it", "them"))
_DETERMINING = word_set("a an the this that these those your its their my our no any each every some with by of and")
_DOERS = word_set("""
    i you we they it he she who which to not cannot can could will would should must may might do does did is are be
    being been get gets
""")
"""Words behind which a verb stands, or how something is."""
_DONE_TO = word_set("it them him her us you me")


_BY = frozenset(("by", "beside", "near"))


def _tells_of_number(mention: Mention, said: Said) -> bool:
    """Return whether an ordinary word only tells of the number beside it: "the eighty percent mark", "capped at 68"."""
    words = said.reading.words
    bound = "maximum" in mention.concepts or "minimum" in mention.concepts  # "capped"
    holding = bound or words[mention.start] in _HOLDING
    if not (holding or all(c[0] == "~" for c in mention.concepts)):
        return False
    behind = words[mention.end : mention.end + 1]
    near = range(mention.end + 1, mention.end + (_FAR if holding else _NEAR))
    leads = bool(behind) and behind[0] in _TO_NUMBER and not said.numbered.isdisjoint(near)
    return mention.start - 1 in said.numbered or leads


_TO_NUMBER = frozenset(("at", "to", "by"))
_HOLDING = frozenset(("cut", "held", "kept"))
"""Words that with a number behind them say where something is held: "held to the tiller maximum of 68"."""
_NEAR, _FAR = 3, 8
"""How far behind such a word its number may stand."""


def _is_beside(mention: Mention, said: Said) -> bool:
    """Return whether a thing only tells where another one is, which nobody asks: "the button by the lever"."""
    before = [w for w in said.reading.words[max(0, mention.start - 2) : mention.start] if w not in ("the", "a")]
    return before[-1:] != [] and before[-1] in _BY


def _stands_for(mention: Mention, held: Sequence[Held], said: Said) -> bool:
    """Return whether an everyday word stands for one of a point that is said: "the engines" for the thrust."""
    words, concepts = said.fellows.get(mention.start, NO_FELLOWS)
    elements = [e for h in held if h.share >= 1 for e in h.point.elements]
    return any(concepts & e.concepts or words.intersection(e.words) for e in elements)
