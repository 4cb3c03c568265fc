"""Which failures leave a result as it is: "which failures leave normal braking alone", "what can fail without …".

It is the other way about than what leads to a loss, and is said in nearly the same words.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from itertools import pairwise

from assistant.knowledge.records import StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CauseResult
from assistant.resolving.state_asked import Scored, barring, content_of
from assistant.resolving.state_causes import TAKING

_SCORE, _WEIGHT = 1.1, 7.0
_FAILURES = frozenset(("failure", "failures", "fault", "faults", "losses"))
_MAY, _FAIL = frozenset(("can", "could", "may", "might")), frozenset(("fail", "break", "go", "die", "quit"))
_LEAVING = frozenset(("leave", "leaves", "leaving", "left"))
_ALONE = frozenset({
    "alone", "untouched", "unaffected", "intact", "unharmed", "unchanged", "me", "us", "undisturbed", "unscathed",
})  # fmt: skip
_SPARING = frozenset(("spare", "spares", "sparing"))
_TOUCHING = frozenset({
    "affect", "affects", "touch", "touches", "bother", "bothers", "hurt", "hurts", "harm", "harms", "change",
    "changes", "disturb", "disturbs", "influence", "influences", "affecting", "touching", "hurting", "harming",
    "changing", "disturbing", "bothering", "influencing", "matter", "effect", "bearing", "impact", "losing", "loss",
})  # fmt: skip
_DENYING = frozenset(("not", "without", "no", "never"))
_NEAR = 3
_SAID = _FAILURES | _FAIL | _LEAVING | _ALONE | _SPARING | _TOUCHING | {"normal", "still"}


def spared_candidates(question: Question, know: Knowledge, excused: Collection[int]) -> Iterator[Scored]:
    """Yield the single failures that leave the one result as it is that a question names, where it asks for these."""
    reading = question.reading
    if reading.amounts or not (_asks_failures(reading.words) and _spares(reading.words)):
        return
    for table in state_tables.tables(know.base):
        output = _named(table, question, know)
        if output:
            known = know.matcher.vocabulary(table.id)
            content = (m for m in content_of(question, know, excused) if known.isdisjoint(m.concepts))
            barred = [m for m in content if not _SAID.issuperset(m.text.split())]
            yield _SCORE * barring(barred, know), _WEIGHT, _spared(table, output, know)


def _asks_failures(words: Sequence[str]) -> bool:
    """Return whether failures are asked for: "which failures", "what can fail"."""
    for k, word in enumerate(words):
        if word in ("which", "what", "whats"):
            after = words[k + 1 : k + 1 + _NEAR]
            may_fail = not _MAY.isdisjoint(after[:1]) and not _FAIL.isdisjoint(after[1:])
            if may_fail or not _FAILURES.isdisjoint(after):
                return True
    return False


def _spares(words: Sequence[str]) -> bool:
    """Return whether something is to be left as it is, and nothing is to be taken."""
    if not _SPARING.isdisjoint(words):
        return True
    for k, word in enumerate(words):
        denied = not _DENYING.isdisjoint(words[max(0, k - _NEAR) : k])
        if word in _TOUCHING and denied:
            return True
        if word in TAKING:
            return denied
        if word in _LEAVING:
            return _leaves_alone(words[k + 1 :])
    return False


def _leaves_alone(after: Sequence[str]) -> bool:
    """Return whether what follows "leave" says that something stays: "… alone", "… me the brakes", "… as it is"."""
    if not _DENYING.isdisjoint(after[:_NEAR]):
        return False  # "leaves me without steering", "leaves no brakes"
    as_it_is = any(a == "as" and b in ("it", "they") for a, b in pairwise(after))
    return as_it_is or not _ALONE.isdisjoint(after)


def _named(table: StateTable, question: Question, know: Knowledge) -> str:
    """Return the one result of a table that is named by itself, or by the value that it has when all is well."""
    normal = state_tables.outputs(table, {}, know.base)
    told = question.results_named.get(table.id, [])
    if told:
        output, value = told[0]
        least = {name: know.states.failed(name) for name in know.states.failures}
        lost = state_tables.outputs(table, least, know.base)[output]  # "without losing anti-skid"
        return output if len(told) == 1 and value in (normal[output], lost) else ""
    concepts = frozenset().union(*(m.concepts for m in question.reading.mentions))
    outputs = [o.id for o in table.outputs if not concepts.isdisjoint({o.id, *o.goes})]
    return outputs[0] if len(outputs) == 1 else ""


def _spared(table: StateTable, output: str, know: Knowledge) -> CauseResult:
    """Return the failures with each of which a result stays as it is: those first that the table knows."""
    best = state_tables.outputs(table, {}, know.base)[output]
    own = [name for name in table.inputs if name in know.states.failures]
    names = [*own, *sorted(know.states.failures.difference(own))]
    ways = [(name, know.states.failed(name)) for name in names]
    kept = (way for way in ways if state_tables.outputs(table, dict([way]), know.base)[output] == best)
    return CauseResult(table, output, best, tuple((way,) for way in kept), False, spared=True)
