"""What answers a question as well as the statement that was taken: the case of a drill for its step, what a thing does.

"When do you press the override button?" is answered by what its step waits for, and by what the drill is for; "The
tiller: what is it for?" by what the statement says that the things do which its points count up.
"""

from __future__ import annotations

import re

from assistant.practice.marking.finding.elements import point
from assistant.practice.marking.points import Need, Point
from assistant.practice.marking.questions.asked import Asked
from assistant.practice.marking.reading.said import plain
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge

_WHEN = re.compile(r"\bwhen (?:do|does|may|can|must|should|is|are|would|will)\b", re.IGNORECASE)
_PURPOSE = re.compile(r"\bwhat (?:is|are) (?:\w+ ){1,4}for\b|\bpurpose\b|\bwhat (?:does|do) (?:\w+ ){1,4}do\b", re.I)


def alternatives(need: Need, one: Asked, text: str, know: Knowledge) -> list[Need]:
    """Return what else a question may be answered by, each as a need of its own."""
    found = _case_of_step(one, text, know) or _what_is_done(need, one, text, know)
    found = found or _what_it_comes_to(need, one, text, know)
    return [need._replace(points=(found,), ordered=False)] if found else []


def told_beside(first: tuple[Asked, ...], text: str) -> list[Asked]:
    """Return each of two statements told together as an answer of its own, where it is asked how something is done."""
    result = first[0].result
    if len(first) != 1 or not isinstance(result, r.BothResult) or not _HOW.search(text):
        return []
    return [first[0]._replace(result=each) for each in (result.first, result.second)]


_HOW = re.compile(r"\bhow (?:do|does|should|must|can|would) (?:you|we|i|one|a pilot|pilots)\b", re.IGNORECASE)


def _case_of_step(one: Asked, text: str, know: Knowledge) -> Point | None:
    """Return the case of the drill, where it is asked when its one step is done."""
    result = one.result
    if not isinstance(result, r.ProcedureResult) or result.step is None or not _WHEN.search(text):
        return None
    return point(result.procedure.title, know, kept=True)


def _what_is_done(need: Need, one: Asked, text: str, know: Knowledge) -> Point | None:
    """Return what a statement says behind the things that its points count up, where it is asked what one is for."""
    result = one.result
    if not isinstance(result, r.FactResult) or not _PURPOSE.search(text) or not need.points:
        return None
    says, named = result.fact.says, [p.text.lower() for p in need.points]
    ends = [says.lower().rfind(name) + len(name) for name in named if name in says.lower()]
    if len(ends) < len(need.points) or not any(p.elements and all(e.given for e in p.elements) for p in need.points):
        return None
    done = re.split(r"[.;]\s", says[max(ends) :])[0].strip(" .")
    made = point(done.partition(" ")[2] or done, know)  # the verb may be another: "steering", "it turns"
    return made if any(e.weight > _TELLING for e in made.elements) and not made.figures else None


def _what_it_comes_to(need: Need, one: Asked, text: str, know: Knowledge) -> Point | None:
    """Return what the case asked about comes to, where it is asked why: "so no braking mode is left"."""
    result = one.result
    if not isinstance(result, r.FactResult) or not need.question.has("why"):
        return None
    told = (_COMES_TO.fullmatch(sentence.strip(" .")) for sentence in re.split(r"\.\s", result.fact.says))
    found = [t[2] for t in told if t and any(plain(w) in need.asked for w in t[1].lower().split()[:1])]
    return point(found[0], know, kept=True) if len(found) == 1 else None


_COMES_TO = re.compile(r"([\w ]+): .*, so (.+)")
_TELLING = 1.0
