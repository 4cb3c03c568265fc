"""Going on in a procedure: what a turn reports as done, and the procedure that the step told last leads to."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from assistant.conversation.context import Context
from assistant.conversation.on_procedures.going_through import gone_through
from assistant.knowledge.records import Step
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.ranking import candidates
from assistant.resolving.results import ProcedureResult, Result
from assistant.understanding.clauses import asking
from assistant.understanding.words import stem

_MOST_WORDS = 8
_SURE = 0.8
_DONE = frozenset({"done", "did", "held", "set", "put", "made", "got", "gone"})
_MARKS = ".,:;()"
_SAME = {"dn": "down"}
_SMALL = frozenset({
    "a", "an", "the", "and", "then", "ok", "okay", "so", "right", "i", "we", "it", "that", "them", "have", "has", "ve",
    "been", "is", "are", "was", "to", "for", "of", "all", "now", "done", "did", "yes", "just", "back", "also", "s",
    "slowly", "below", "both", "my", "our", "got", "made", "put", "set",
})  # fmt: skip
_ONWARD = frozenset({"what", "whats", "next", "in", "out", "on"})
_NOW = frozenset({
    "ok", "okay", "so", "right", "and", "what", "is", "now", "do", "i", "we", "you", "should", "shall", "must", "to",
    "be", "done", "can", "the", "crew",
})  # fmt: skip
_IN_VAIN = frozenset({"still", "nothing", "unchanged", "joy", "not", "no"})


def reported_done(alone: Question, context: Context) -> tuple[Question, Result] | None:
    """Return the step after those that a turn says have been done: "slowed down, lever up", "waited"."""
    gone, words = gone_through(context), alone.reading.words
    if gone is None or not gone.at_once or len(words) > _MOST_WORDS or alone.reading.amounts or "?" in words:
        return None
    onward = "next" in words or words[-2:] == ("what", "now")  # "reverse is in, what next"
    past = [w for w in words if w in _DONE or (w.endswith("ed") and stem(w) != w)]
    if not (past or onward) or not _IN_VAIN.isdisjoint(words) or (asking(words) and not onward):
        return None
    words = tuple(w for w in words if w not in _ONWARD) if onward else words
    steps = gone.told.procedure.steps
    last = _last_done(words, [_does(step) for step in steps], max(gone.step, 0))
    if last is None:
        return None
    return gone.asked_by(alone), gone.told._replace(step=min(last + 1, len(steps)), alone=True)


def what_now(alone: Question, context: Context) -> tuple[Question, Result] | None:
    """Return the procedure told of last, for a turn that only asks what is to be done now."""
    told = context.result
    if not isinstance(told, ProcedureResult) or told.step == len(told.procedure.steps):
        return None
    if not _NOW.issuperset(w for w in alone.reading.words if w.isalpha()) or "what" not in alone.reading.words:
        return None
    if alone.reading.amounts or alone.conditions or not any(m.holds("steps") for m in alone.reading.mentions):
        return None
    return alone._replace(context=True), ProcedureResult(told.procedure)


def _last_done(words: Sequence[str], steps: Sequence[frozenset[str]], at: int) -> int | None:
    """Return the step that the last of some words speaks of, from one on, where each speaks of it or a later one."""
    found = None
    said = [w for before, w in pairwise(("", *words)) if w != "down" or not before.endswith("ed")]  # "slowed down"
    for word in (stem(w) for w in said if w.isalpha() and w not in _SMALL):
        step = next((i for i in range(at, len(steps)) if word in steps[i]), None)
        if step is None:
            return None
        found = at = step
    return found


def _does(step: Step) -> frozenset[str]:
    """Return the stems of what a step does, without the case that it waits for ("Once … is confirmed")."""
    case, comma, rest = step.do.partition(", ")
    begins = case.split()[:1] in (["Once"], ["If"], ["When"])
    words = (rest if comma and begins else step.do).replace("-", " ").lower().split()
    same = {stem(_SAME[w.strip(_MARKS)]) for w in words if w.strip(_MARKS) in _SAME}
    return frozenset(stem(w.strip(_MARKS)) for w in words) | same


def leads_on(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the procedure that the step told last speaks of, for a turn that only names it: "ok, free fall then"."""
    told = context.result
    if not isinstance(told, ProcedureResult) or told.step is None or told.step >= len(told.procedure.steps):
        return None
    things = [m for m in knowledge.matcher.telling(alone.reading) if not _only_agrees(m.text)]
    if len(things) != 1 or alone.reading.amounts or len(alone.reading.words) > _MOST_WORDS:
        return None
    rest = [w for w in alone.reading.words if w.isalpha() and w not in things[0].text.split()]
    if not _BESIDE.issuperset(rest):
        return None
    if knowledge.phrase(told.procedure.steps[told.step].do).concepts.isdisjoint(things[0].concepts):
        return None
    for candidate in candidates(alone, knowledge):
        result = candidate.result
        other = isinstance(result, ProcedureResult) and result.procedure.id != told.procedure.id
        if other and isinstance(result, ProcedureResult) and candidate.score >= _SURE:
            return alone._replace(context=True), ProcedureResult(result.procedure)
    return None


_BESIDE = frozenset({
    "ok", "okay", "right", "so", "then", "now", "and", "do", "doing", "going", "for", "to", "the", "let", "us", "s",
    "we", "i", "am", "are", "it", "is", "go", "try", "use", "how", "what", "about", "next", "with", "a", "an",
    "by", "well",
})  # fmt: skip


def _only_agrees(text: str) -> bool:
    return text in ("ok", "okay", "right", "so")
