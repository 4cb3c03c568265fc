"""What follows from a reading held against bands, in a word: "nothing", "not allowed", "it disarms".

The full answer tells the edge of the band too, which nobody says who is asked what follows. What happens in the band
alone is enough, and what happens only in another band is wrong, as is a yes for what is not allowed.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any

from assistant.practice.marking.finding.elements import point
from assistant.practice.marking.finding.found import Held, element_said
from assistant.practice.marking.points import Element, Follows, Need
from assistant.practice.marking.questions.asked import Asked
from assistant.practice.marking.questions.parts import POLAR
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import NEGATORS
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge

_ASKED = r"\bwhat follows\b|\bwhat (?:does|do) the books? say\b"
_GOOD = (
    r"(?:yes|it s|it is|that is|that s|all|quite|perfectly|still|you may|you can|may|do)*\s*"
    r"(?:allowed|permitted|fine|ok|okay|acceptable|good|good to go|go ahead|within(?: the)? limits?|no problem|legal)"
)
_NOTHING = r"nothing|no action|nothing to do|none|no problem|nothing happens|carry on|nothing follows"
_BAD = (
    r"(?:no|not yet|it s|it is|that is|that s|you are|still|way|much)*\s*"
    r"(?:not allowed|not permitted|forbidden|not yet|too (?:fast|hot|high|low|much|far|little|slow)|not ok|not fine|"
    r"outside(?: the)? limits?|you may not|you can not|may not|must not|not acceptable|do not|wait)"
)
_MAY = r"\b(?:may|can)\b(?! not| only)"
_HEAVY = 0.35
_TOO_LOW = r"\btoo (?:low|little|slow)\b"
_TOO_HIGH = r"\btoo (?:fast|hot|high|much|far)\b"
_DULL_WORDS = "above below past over under more less than either both each only shows may first"
_DULL = frozenset(map(plain, _DULL_WORDS.split()))
"""Words of a rule that tell where its edge is, and not what follows."""
_PARTLY = 0.6


def follows_of(one: Asked, text: str, know: Knowledge) -> Follows | None:
    """Return what follows from a reading in bands, where that is asked for and no yes or no."""
    result: Any = one.result
    if not isinstance(result, r.BandResult) or result.given != result.given:
        return None
    if POLAR.search(text) or not re.search(_ASKED, text, re.IGNORECASE):
        return None
    rules = result.bands.rules
    good = result.rule.verdict == "within"
    rest = next((rule for rule in rules if rule.test == "otherwise"), result.rule)
    well = next((rule for rule in rules if rule.verdict == "within"), result.rule)
    harmless = well is rest and (":" not in well.says or "no action" in well.says)
    edge = f"{well.value:g}"
    allowed = well is not rest and rest.verdict != "within" and ":" not in rest.says and edge in rest.says
    given = know.reader.read(text)
    own = _telling(result.rule.says, know)
    others = [e for rule in rules if rule is not result.rule for e in _telling(rule.says, know)]
    more = _telling(well.says.partition(", and ")[2], know) if allowed else []
    named = {e.words for e in others}
    mine = {w for e in own for w in e.words}
    return Follows(
        good, harmless, allowed, well.test == "below" if allowed else result.rule.test in ("over", "from"),
        tuple(e for e in own if e.words not in named and not e.concepts & given.concepts),
        tuple(e for e in others if not mine.issuperset(e.words) and not e.concepts & given.concepts),
        tuple(more),
    )  # fmt: skip


def _telling(says: str, know: Knowledge) -> list[Element]:
    if not says:
        return []
    return [e for e in point(says, know).elements if e.weight >= _HEAVY and not _DULL.issuperset(e.words)]


def follows_held(held: tuple[Held, ...], need: Need, said: Said) -> tuple[Held, ...]:
    """Return the points as held, all of them where what follows is said in a word."""
    follows = need.follows
    if follows is None or len(held) != 1 or held[0].share >= 1:
        return held
    figured = bool(held[0].point.figures)
    verdict = _verdict(follows, said)
    told = figured and (verdict is follows.good or (verdict is None and _said_so(follows.own, said)))
    if not told and not (verdict is True and follows.good and follows.nothing):
        return held
    lacks = verdict and follows.allowed and follows.more and not any(element_said(e, said)[0] for e in follows.more)
    return (held[0]._replace(share=_PARTLY if lacks else 1.0),)


def follows_wrong(held: tuple[Held, ...], need: Need, said: Said) -> list[str]:
    """Return what is said to follow where the contrary does, or what follows in another band only."""
    follows = need.follows
    if follows is None:
        return []
    verdict = _verdict(follows, said)
    if verdict is not None and verdict is not follows.good:
        return [said.text.strip()]
    if verdict is None and not any(h.share for h in held) and _said_so(follows.other, said):
        return [said.text.strip()]
    return []


def _verdict(follows: Follows, said: Said) -> bool | None:
    """Return whether an answer says in a word that all is well, or that it is not."""
    if not (follows.allowed or follows.nothing):
        return None
    text = " ".join(said.reading.words)
    first = re.split(r"\s*[,;.:]\s*", text)[0]
    if re.fullmatch(_BAD, first) and re.search(_TOO_LOW if follows.high else _TOO_HIGH, first):
        return not follows.good  # too much for too little
    if re.fullmatch(_BAD, first) or (first in ("no", "nope") and follows.allowed):
        return False
    if follows.allowed and re.search(_MAY, first) and NEGATORS.isdisjoint(first.split()):
        return True
    if re.fullmatch(_GOOD, first) or (follows.nothing and re.fullmatch(_NOTHING, first)):
        return True
    return None


def _said_so(elements: Iterable[Element], said: Said) -> bool:
    """Return whether one of some words is said, in a clause that denies nothing."""
    spots = [element_said(e, said) for e in elements]
    return any(told and said.beside(places).isdisjoint(NEGATORS | {"until", "unless"}) for told, places in spots)
