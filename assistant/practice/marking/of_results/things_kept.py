"""Whether each of several things is kept or lost, where a question asks that of each: "the brakes, and the steering?".

One yes or no would stand for all of them; each is held by what is said of its own thing.
"""

from __future__ import annotations

import re

from assistant.practice.marking.points import Point, State
from assistant.practice.marking.questions.asked import Asked, measures
from assistant.practice.marking.questions.parts import POLAR
from assistant.practice.marking.questions.turned import asks_loss
from assistant.resolving.knowing import Knowledge

_PRESENT = re.compile(r"\b(?:still|left|works?|available|keep|have (?:the |any )?\w+)\b", re.IGNORECASE)


def kept_or_lost(points: list[Point], one: Asked, know: Knowledge) -> list[Point]:
    """Return the yes or no to a part on the loss of a thing as whether that thing is there; what else there is spare.

    A statement that gives no yes or no, but says that the thing is lost, is taken so too.
    """
    part = one.answer.question
    fact = getattr(one.result, "fact", None)
    loss = asks_loss(part)
    if fact is None or not POLAR.match(part) or not (loss or _PRESENT.search(part)):
        return points
    verdict = next((p.verdict for p in points if p.verdict), "")
    gone = not verdict and _IS_LOST.search(fact.says) is not None
    told_of = know.phrase(fact.says).concepts
    named = (m for m in know.phrase(part).mentions if not know.matcher.is_soft(m) and not measures(m.concepts, know))
    things = [m for m in named if any(c in told_of for c in m.concepts if c[0] != "@")]
    if not things or not (verdict or gone):
        return points
    there = (verdict == "yes") is not loss if verdict else False
    name = things[-1].text
    subject = things[-1].concepts | know.phrase(name.split()[-1]).concepts  # "the steering" for nose-wheel steering
    told = Point(f"{name} {'not affected' if there else 'lost'}", state=State(subject, there))
    return [told, *(p._replace(optional=True) for p in points if not p.verdict)]


_IS_LOST = re.compile(r"^[^.;]*\b(?:is|are) (?:lost|gone|unavailable)\b", re.IGNORECASE)
