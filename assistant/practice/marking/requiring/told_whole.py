"""One statement that tells both things a question asks of its subject: "what does the dial show, and where is it?".

Each part asked by itself may be answered by another statement, which says more than is asked or something else; the one
that tells both in two points is meant.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from assistant.conversation.reading_turns.readings import question_of
from assistant.knowledge.records import Fact
from assistant.practice.marking.of_statements.of_part import asks_figure
from assistant.practice.marking.questions.asked import Asked, as_asked, said_whole, things
from assistant.practice.marking.questions.parts import POLAR, head_of
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates

_NEAR_BY = 3
_SURE = 0.7
_AS_NEAR = 0.15
"""Score of a statement that is sure to be on the subject; how much less than the best it may have."""
_TWO = 2


def told_whole(parts: Sequence[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the one statement that tells in two points both of what a question asks; nothing if there is none."""
    if len(parts) != _TWO or any(POLAR.match(part) for part in parts) or _OTHERWISE.search(text):
        return ()
    own = things(question_of(parts[1], know, ""), know)
    question = question_of(text, know, "")
    head = head_of(text, parts)
    for result in _near(f"{head}: {parts[0]}" if head else parts[0], know):
        concepts = know.phrase(result.fact.says).concepts | know.phrase(" ".join(result.fact.points)).concepts
        if (
            own <= concepts
            and _tells_both(result.fact, parts, know)
            and _fits(result.fact, parts[1], head or parts[0], know)
        ):
            return (as_asked(text, question, result, know),)
    return ()


def _fits(fact: Fact, part: str, before: str, know: Knowledge) -> bool:
    """Return whether nothing answers a part, said in full, much better than a statement does, or bars it."""
    asking = re.sub(r"^(?:and|then) ", "", part)
    whole = said_whole(asking, before, know)
    if whole == asking and not asks_figure(part):
        return True
    near = [c for c in candidates(question_of(whole, know, ""), know)[:_WHOLE] if c.match and not c.match.barred]
    own = max((c.score for c in near if getattr(c.result, "fact", None) is fact), default=0.0)
    sure = [c for c in near if c.score >= _SURELY]
    return not sure or own >= sure[0].score - _BEHIND


_WHOLE = 6
_SURELY = 0.9
_BEHIND = 0.25
_OTHERWISE = re.compile(r"\b(?:otherwise|why|colou?rs?|if not)\b", re.IGNORECASE)
"""What asks for something that another statement tells: the other case, a reason, a colour."""


def _near(text: str, know: Knowledge) -> Iterator[r.FactResult]:
    """Yield the statements that answer a text about as well as any record."""
    found = [c for c in candidates(question_of(text, know, ""), know)[:_NEAR_BY] if c.match and not c.match.barred]
    for each in found:
        if isinstance(each.result, r.FactResult) and each.score >= max(_SURE, found[0].score - _AS_NEAR):
            yield each.result


def _tells_both(fact: Fact, parts: Sequence[str], know: Knowledge) -> bool:
    """Return whether a statement tells just two things, neither of which a part names itself."""
    if len(fact.points) != _TWO:
        return False
    asked = [things(question_of(part, know, ""), know) for part in parts]
    told = [know.phrase(point).concepts for point in fact.points]
    return all(any(point - named for named in asked) for point in told)
