"""Modes that an answer says are left: "that takes NORMAL away", "drops out of NORMAL into ALTERNATE".

They are put as denied, so that what is left is not taken for what is in use.
"""

from __future__ import annotations

import re
from functools import lru_cache

from assistant.practice.marking.finding.rivals import families_of
from assistant.practice.marking.points import Need
from assistant.practice.marking.questions.asked import bare_names
from assistant.resolving.knowing import Knowledge

_FAMILY = "braking-mode"
_NO_MODE = frozenset(("none", "no"))
_TAKES = (
    r"(?:(?:takes?|took|taking|pulls?|strips?|removes?|knocks?|cuts?|kicks?|throws?) (?:(?:away|out|off) )?|"
    r"(?:robs?|robbed|deprives?|deprived|strips?|stripped) (?:you|us|it|the crew|the aeroplane)? ?of |"
    r"(?:kills?|killed|ends?|disables?|rules? out) )"
)
_NAMED = r"(?:the |your )?({modes})(?:(?= mode\b| braking\b| brakes\b) \w+)?"
_GONE = (
    r"(?: ?(?:['’]s| is| are| mode is| braking is| has| have|['’]ve))?(?: been)? (?:all )?"
    r"(?:no more|gone|history|no longer (?:there|available)|not (?:available|there)(?: any ?more)?|unavailable|"
    r"finished|taken away|taken out|away)\b"
)


def without_left_modes(answer: str, need: Need, know: Knowledge) -> str:
    """Return an answer with the modes that it says are left denied, where a mode is asked for and no loss."""
    families = families_of(know)
    asked = any(families.get(c) == _FAMILY for p in need.points for e in p.elements for c in e.concepts)
    if not asked or need.loss or need.cause:
        return answer
    modes = "|".join(sorted(set(bare_names(know, (_FAMILY,))) - _NO_MODE))
    for pattern, put in _patterns(modes):
        answer = pattern.sub(put, answer)
    return answer


@lru_cache(maxsize=4)
def _patterns(modes: str) -> tuple[tuple[re.Pattern[str], str], ...]:
    named = _NAMED.format(modes=modes)
    joined = r"(?:,? and (?=(?:the )?(?:anti|auto)))"
    return (
        (re.compile(rf"\b{_TAKES}{named},? and {named}(?: (?:away|out|off))?", re.IGNORECASE), r"not \1, not \2,"),
        (re.compile(rf"\b{_TAKES}{named}{joined}", re.IGNORECASE), r"no \1, no "),
        (re.compile(rf"\b{_TAKES}{named}(?: (?:away|out|off)(?: from you)?)?(?! (?:to|into)\b)", re.IGNORECASE),
         r"not \1,"),
        (re.compile(rf"\b(?:out of|away from|from) {named} (?=(?:in ?to|to|down to|and in ?to)\b)", re.IGNORECASE),
         r", not \1, "),
        (re.compile(rf"\b{named}{_GONE}", re.IGNORECASE), r"not \1"),
    )  # fmt: skip
