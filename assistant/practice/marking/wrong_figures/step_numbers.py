"""Numbers that stand with the verb of another step, or are said of all where each is asked for.

"Pull and hold for twenty seconds" gives the wait's time to the pull; "358 degrees in total" is not of each brake.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from assistant.practice.marking.finding.equal import says
from assistant.practice.marking.points import Figure, Need
from assistant.practice.marking.reading.said import Claim, Said, plain
from assistant.practice.marking.reading.wording import STOPS, word_set
from assistant.resolving.knowing import Knowledge

_JOINING = frozenset(("after", "and", "at", "then", "until", "when"))
_MOST_BETWEEN = 7
_SIDES = frozenset(("down", "left", "right"))
_VERB = re.compile(r"\b([a-z]{4,}) (?:for )?(\d[\d,.]*) (?:s|min|h)\b")


def with_another_verb(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the times that an answer gives to a step that has another: "hold for 20 s" where it is held for 5 s."""
    verbs = _verbs(need) if need.ordered else {}
    found = []
    for claim in said.claims if verbs else ():
        figures = verbs.get(_verb_before(claim, verbs, said), ())
        alike = figures and claim.amount.unit in (None, figures[0].unit)
        if alike and not claim.former and not any(says(claim, f, know) for f in figures):
            found.append(f"{claim.amount.raw} of another step")
    return found


def _verbs(need: Need) -> dict[str, tuple[Figure, ...]]:
    """Return the verbs that stand before the times of steps, with all the times that each has."""
    told: dict[str, tuple[Figure, ...]] = {}
    for point in need.points:
        verb = _VERB.search(point.text.lower())
        if verb and point.figures and verb[1] not in _SIDES:
            told[plain(verb[1])] = (*told.get(plain(verb[1]), ()), *point.figures)
    return told


def _verb_before(claim: Claim, verbs: Iterable[str], said: Said) -> str:
    """Return the nearest of some verbs before a number, without a stop, a joining word or another number between."""
    words = said.reading.words
    for i in range(claim.amount.start - 1, max(-1, claim.amount.start - 1 - _MOST_BETWEEN), -1):
        if words[i] in STOPS or words[i] in _JOINING or i in said.numbered:
            return ""
        if said.words[i] in verbs:
            return said.words[i]
    return ""


_EACH = frozenset(("each", "every", "per", "apiece"))
_IN_ALL = re.compile(
    r"^(?:\w+ ){0,2}?(?:in total|in all|altogether|all together|together|combined|"
    r"between (?:them|all|the \w+)|shared|(?:spread|split|divided) (?:over|between|among|across)|across (?:the|all)|"
    r"(?:for|over) all (?:\w+ together|of them)|total)\b"
)


def in_all(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the figures that are asked for of each thing, and are said to be of all of them together."""
    figures = [f for p in need.points for f in p.figures if f.tolerance]
    if not _of_each(need.question.words) or len(need.points) > 1:
        return []
    return [
        f"{c.amount.raw} in all" for c in said.claims
        if any(says(c, f, know) for f in figures) and _IN_ALL.search(_following(c, said))
    ]  # fmt: skip


def _of_each(words: Sequence[str]) -> bool:
    """Return whether a question asks of each thing; "3 m at each side" only bounds one."""
    return any(w in _EACH and words[i + 1 : i + 2] not in _MARGINS for i, w in enumerate(words))


_MARGINS = tuple((w,) for w in ("edge", "end", "side", "way"))
_COUNTS = word_set("two three four six 2 3 4 6")


def _following(claim: Claim, said: Said) -> str:
    end = claim.amount.end
    found = [w for w in said.reading.words[end - 1 : end] if w in ("split", "spread")]  # also a unit's: "degrees split"
    for i in range(end, len(said.words)):
        if (i in said.numbered and said.reading.words[i] not in _COUNTS) or said.reading.words[i] in STOPS:
            break
        found.append(said.reading.words[i])
    return " ".join(found)
