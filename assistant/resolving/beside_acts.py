"""What a question asks to do, to be allowed or to know the outcome of, and a record has no word of."""

from __future__ import annotations

import re
from itertools import pairwise

from assistant.resolving.beside_asked import Asked
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge
from assistant.resolving.record_words import is_known, is_told, stems_said, stems_told
from assistant.resolving.results import FactResult, LimitResult, ModelResult, ProcedureResult, ScheduleResult
from assistant.understanding.mentions import STATE, Mention
from assistant.understanding.words import stem

_ALLOWING = frozenset({
    "not", "no", "only", "must", "may", "can", "cannot", "never", "without", "need", "until", "unless", "before",
    "noth", "none", "neither", "call", "replac", "chang", "prevent", "refus", "work", "block", "available", "lose",
    "unaffect", "affect", "release", "keep", "allow", "left", "stay", "automatic", "whether", "free",
})  # fmt: skip
"""Words of a statement that tells what may be done, or what keeps one from it."""
_DOING = stems_said(
    "call extend use replace replacement leave stay hold set press release change brake slow keep must do request wait "
    "return continue reject multiply pull push lower raise expect write remove"
)
"""What statements tell to do."""


def act_unknown(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return what is asked to be done, where a record has no word of it: "how do I | test | the lamps"."""
    unknown = (act.word for act in asked.acts if not (act.name and is_known(act.name, record, know)))
    return next((word for word in unknown if stem(word.text) not in stems_told(record, know)), None)


def only_a_figure(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return "how do I …", where all that would be told is a figure."""
    return asked.how if isinstance(candidate.result, (LimitResult, ModelResult)) else None


def drill_for_supposed(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return "what happens if I …", where a drill is no answer: what it is for is not what somebody supposes."""
    if asked.if_done is None or not isinstance(candidate.result, ProcedureResult):
        return None
    tells = any(know.phrase(ask).has("happens") for ask in candidate.result.procedure.asks)
    return None if tells else asked.if_done


def supposed_unknown(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return what is supposed to happen and a record does not speak of: "what happens if the lever | snaps |"; or the
    question itself, where only a figure would be told.
    """
    if isinstance(candidate.result, ProcedureResult):
        return None
    if isinstance(candidate.result, (LimitResult, ScheduleResult)) and not asked.amounts:
        return asked.if_so
    return next((m for m in asked.supposed if not is_told(m, record, know)), None)


def not_allowed(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return "can I …", where a statement tells nothing of what may be done: "can I carry the pins", their colour."""
    if asked.may is None or not isinstance(candidate.result, FactResult):
        return None
    fact = candidate.result.fact
    return asked.may if _ALLOWING.isdisjoint(stems_said(f"{fact.says} {fact.says_more}")) else None


def nothing_to_do(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return "what now", where a record tells nothing to do."""
    if asked.to_do is None or not isinstance(candidate.result, (FactResult, LimitResult)):
        return None
    says = candidate.result.fact.says if isinstance(candidate.result, FactResult) else ""
    return None if _tells_to_do(says) else asked.to_do


def _tells_to_do(says: str) -> bool:
    """Return whether a statement tells to do something, and not what things do: "uplocks | release |"."""
    words = re.findall(r"[a-z]+", says.lower())
    return any(stem(word) in _DOING and not before.endswith("s") for before, word in pairwise(["", *words]))


def choice_unknown(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return "stop or go", where a record has no word of stopping: within a limit of speed says neither."""
    if asked.choice is None:
        return None
    named = frozenset(c for c in asked.choice.concepts if not c.startswith(STATE))
    return asked.choice if named.isdisjoint(know.matcher.vocabulary(record)) else None


def no_member_told(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return "which system …", where a statement names none of them by its number."""
    if asked.member is None or not isinstance(candidate.result, FactResult):
        return None
    says = f"{candidate.result.fact.says} {candidate.result.fact.says_more}".lower()
    names = "|".join(re.escape(word) for word in know.numbered)
    told = re.search(rf"\b(?:{names})s? [0-9]|\b(?:both|either|neither|no|each) (?:{names})", says)
    return None if told else asked.member


def failure_unknown(candidate: Candidate, record: str, asked: Asked, know: Knowledge) -> Mention | None:
    """Return what is said to have failed, where a figure knows it only by what it belongs to: a shut-off of "the
    hydraulics" tells nothing of "System 2 out".
    """
    if not isinstance(candidate.result, LimitResult) or asked.amounts:
        return None
    if any(limit.when or limit.applies for limit in candidate.result.limits):
        return None  # it says itself in which states it holds
    known = know.matcher.vocabulary(record)
    return next((m for m in asked.gone if known.isdisjoint(m.concepts)), None)
