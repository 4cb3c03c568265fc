"""The yes or no that a statement of several cases, or a result in words, gives to a question on one of them.

"Anti-skid works in NORMAL, and in ALTERNATE if ...; never in EMERGENCY" says no to EMERGENCY and yes to the others;
"The gear extends by free fall only" says yes to whether it extends.
"""

from __future__ import annotations

import re
from itertools import pairwise

from assistant.knowledge.records import Fact
from assistant.practice.marking.finding.polarity import denied
from assistant.practice.marking.points import Point
from assistant.practice.marking.reading.said import plain
from assistant.practice.marking.reading.wording import NEGATORS
from assistant.resolving.knowing import Knowledge

_FAMILIES = frozenset(("braking-mode", "autobrake-setting", "hydraulic-system", "colour"))
_OPEN = re.compile(r"\b(?:or|only|not|no|never|without|need|must)\b", re.IGNORECASE)
_CLAUSES = re.compile(r"[;,.:]\s+|\s+but\s+")
_DOES = re.compile(
    r"(?:^|[,:;.]\s*)(?:so |then |and )?(?:does|do|can|will) (?:the |it |your |a )?"
    r"([\w -]+?) (\w+?)s?\s*(?:[?,.:;]|with\b|$)",
    re.I,
)


def case_verdict(fact: Fact, text: str, know: Knowledge) -> str:
    """Return "yes" or "no" where a question asks of one named case that one clause of a statement tells; else ""."""
    if _OPEN.search(text):
        return ""
    families = know.lexicon.families
    asked = {c for m in know.reader.read(text).mentions for c in m.concepts if families.get(c) in _FAMILIES}
    clauses = [know.phrase(clause) for clause in _CLAUSES.split(fact.says.rstrip(".")) if clause]
    telling = [c for c in clauses if any(asked & m.concepts for m in c.mentions)]
    others = {c for clause in clauses for c in clause.concepts if families.get(c) in _FAMILIES} - asked
    if not asked or len(telling) != 1 or not others:
        return ""
    clause = telling[0]
    turned = denied(clause.words, clause)
    gone = any(asked & m.concepts and not turned.isdisjoint(m.taken) for m in clause.mentions)
    return "no" if gone or NEGATORS.intersection(clause.words[:2]) else "yes"


def done_verdict(says: str, text: str) -> str:
    """Return "yes" where a result says of its thing what a question asks whether it does; else ""."""
    asked = _DOES.search(text)
    if not asked or _OPEN.search(text):
        return ""
    words = [plain(w) for w in re.findall(r"[\w-]+", says.lower())[:_HEAD]]
    thing, verb = plain(asked.group(1).lower().split()[-1]), plain(asked.group(2).lower())
    follows = any(a == thing and b == verb for a, b in pairwise(words))
    return "yes" if follows and NEGATORS.isdisjoint(words) else ""


_HEAD = 5


def implied(point: Point) -> Point:
    """Return a point of which to say it is to say the yes or no that it explains."""
    return point._replace(optional=True, either=True)
