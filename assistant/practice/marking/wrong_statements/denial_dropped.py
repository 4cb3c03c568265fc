"""What a point says not to be so, said as being so: "a leg locked down" for a leg that is not."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.practice.marking.finding.found import Held
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import LOST, NEGATORS, word_set

_NOT = re.compile(r"\bnot (\w{4,})")
_NO_STATES = word_set("where when with from that than only more less above below working needed count counts")
_DENYING = (
    NEGATORS | LOST | word_set("fail fails failed failing hasn isn aren wasn unless until before anything other than")
)
_NEAR = 6


def denial_dropped(held: Sequence[Held], said: Said) -> list[str]:
    """Return the states that an answer has as they are not, each time that it speaks of them."""
    found = []
    for h in held:
        state = _NOT.search(h.point.text.lower())
        if not state or state.group(1) in _NO_STATES or not h.share or h.point.verdict or h.point.state:
            continue
        word = plain(state.group(1))
        at = [i for i, each in enumerate(said.words) if each == word]
        others = sum(plain(w) == word for x in held if x is not h for w in re.findall(r"\w+", x.point.text.lower()))
        if len(at) > others and not any(_denied(i, said) for i in at):
            found.append(f"not so: {h.point.text}")
    return found


def _denied(place: int, said: Said) -> bool:
    words = said.reading.words
    before = [w for k, w in enumerate(words) if place - _NEAR <= k < place]
    after = words[place + 1 : place + 3]
    return not _DENYING.isdisjoint(before) or not _DENYING.isdisjoint(after)
