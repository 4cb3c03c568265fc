"""The things that a question names and a record has no word of, and what is said to be the matter with them."""

from __future__ import annotations

from assistant.resolving.beside_asked import KINDS, Asked
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge
from assistant.resolving.record_words import is_known, is_told, stems_told
from assistant.resolving.results import LimitResult, ModelResult, ProcedureResult
from assistant.understanding.mentions import Mention

_NEARLY_ALL = 0.85
_MADE = frozenset(("make", "brand", "grade", "model"))
"""Words for a kind that only who makes a thing tells."""
_FAILURES = frozenset({
    "not", "no", "never", "fail", "stick", "lose", "jam", "cannot", "none", "without", "refus", "break", "disarm",
    "residual",
})  # fmt: skip


def none_known(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return the thing asked of, where a record knows none that is named: "what gas goes in the | tyres |"."""
    if any(is_known(m, record, know) for m in asked.things):
        return None
    return asked.things[-1] if asked.things else None


def one_unknown(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return a thing named in a few words that a record does not know: each of them counts there, "| door | light"."""
    match = candidate.match
    if match and match.whole and match.share >= _NEARLY_ALL:
        return None  # what is left over tells little: "when | the leg | sensors disagree"
    if asked.owner and not is_told(asked.owner, record, know):
        return asked.owner  # "| brake | lights": it says whose they are
    return next((m for m in asked.each if not is_known(m, record, know)), None)


def failing(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return the word by which something is told to have failed, of which a record does not tell."""
    return next((m for m in asked.failed if not is_known(m, record, know)), None)


def faulty(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return what is told to be the matter with a thing in a few words that ask nothing, where a record has no word of
    it: "brake pedal | stiff |".
    """
    return next((m for m in asked.matters if not is_told(m, record, know)), None)


def refusing(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return what a thing is said not to do, where a record knows of nothing that fails: "it | will not | release"."""
    if asked.refused is None or isinstance(candidate.result, ProcedureResult):
        return None
    return asked.refused if _FAILURES.isdisjoint(stems_told(record, know)) else None


def lacking(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return what is said to be lacking, where a record has no word of it: "charge it with no | electrics |"."""
    return next((m for m in asked.lacked if not is_known(m, record, know)), None)


def reason_of_another(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return what it is told of before the reason of that is asked, where a record gives the reason of something else:
    "no pressure until | the wheels spin up |, what is that saving us from".
    """
    return next((m for m in asked.purpose if not is_known(m, record, know)), None)


def kind_untold(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return the thing of which it is asked what kind it is, where a record tells a figure or has no word of any kind:
    "what sort of | pump | makes the pressure".
    """
    if asked.kind is None:
        return None
    word, thing = asked.kind
    told = stems_told(record, know)
    said = word in _MADE or isinstance(candidate.result, (LimitResult, ModelResult))
    known = word in told if said else not KINDS.isdisjoint(told) or is_told(thing, record, know)
    return None if known else thing
