"""What a question asks to do, to be allowed or to know the outcome of, and a record has no word of."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.record_words import is_known, is_told, stems_said, stems_told, word_at
from assistant.resolving.results import FactResult, LimitResult, ModelResult, ProcedureResult
from assistant.understanding.acts import acts_asked, says_an_act, supposed_from, supposes_an_act
from assistant.understanding.mentions import Mention
from assistant.understanding.words import stem

_FRONTED = 5
_HOW = frozenset({"do", "does", "can", "could", "should", "would", "to", "shall", "must", "may"})
_MAY, _ASKER = frozenset(("can", "may", "could")), frozenset(("i", "we", "you"))
_OPEN = frozenset({"what", "which", "how", "when", "where", "why", "who", "whats"})
_ALLOWING = frozenset({
    "not", "no", "only", "must", "may", "can", "cannot", "never", "without", "need", "until", "unless", "before",
    "noth", "none", "neither", "call", "replac", "chang", "prevent", "refus", "work", "block", "available", "lose",
    "unaffect", "affect", "release", "keep", "allow", "left", "stay", "automatic", "whether", "free",
})  # fmt: skip
"""Words of a statement that tells what may be done, or what keeps one from it."""
_TO_DO = (("what", "now"), ("now", "what"), ("what", "next"))
_DO = frozenset(("do", "should", "must", "shall"))
_DOING = stems_said(
    "call extend use replace replacement leave stay hold set press release change brake slow keep must do request wait "
    "return continue reject multiply pull push lower raise expect write remove"
)
"""What statements tell to do."""


def act_unknown(candidate: Candidate, record: str, question: Question, know: Knowledge) -> Mention | None:
    """Return what is asked to be done, where a record has no word of it: "how do I | test | the lamps"."""
    words = question.reading.words
    for at in acts_asked(words):
        if not says_an_act(words, at) or _is_fronted(at, question):
            continue
        named = next((m for m in question.reading.mentions if at in m.taken and not m.passing), None)
        if named is not None and (is_known(named, record, know) or _only_asks(named, know)):
            continue
        if stem(words[at]) not in stems_told(record, know):
            return word_at(words, at)
    return None


def _only_asks(mention: Mention, know: Knowledge) -> bool:
    return all(know.lexicon.kinds.get(c, "").startswith("ask") for c in mention.concepts)


def _is_fronted(at: int, question: Question) -> bool:
    """Return whether it is asked to what a known act is done: "which switch do I | move |"."""
    if not any(at in m.taken and not m.is_plain for m in question.reading.mentions):
        return False
    return not {"what", "which"}.isdisjoint(question.reading.words[max(0, at - _FRONTED) : at])


def only_a_figure(candidate: Candidate, record: str, question: Question, know: Knowledge) -> Mention | None:
    """Return "how do I …", where all that would be told is a figure."""
    if not isinstance(candidate.result, (LimitResult, ModelResult)) or question.reading.amounts:
        return None
    words = question.reading.words
    at = next((i for i, w in enumerate(words[:-1]) if w == "how" and words[i + 1] in _HOW), None)
    if at is None or any(m.start == at for m in question.reading.mentions):
        return None
    return word_at(words, at)


def drill_for_supposed(candidate: Candidate, record: str, question: Question, know: Knowledge) -> Mention | None:
    """Return "what happens if I …", where a drill is no answer: what it is for is not what somebody supposes."""
    if not isinstance(candidate.result, ProcedureResult) or not supposes_an_act(question.reading.words):
        return None
    if any(know.phrase(ask).has("happens") for ask in candidate.result.procedure.asks):
        return None
    return next((m for m in question.reading.mentions if m.holds("happens")), None)


def supposed_unknown(candidate: Candidate, record: str, question: Question, know: Knowledge) -> Mention | None:
    """Return what is supposed to happen and a record does not speak of: "what happens if the lever | snaps |"; or the
    question itself, where only a figure would be told.
    """
    reading = question.reading
    at = supposed_from(reading.words)
    if not at or isinstance(candidate.result, ProcedureResult):
        return None
    if isinstance(candidate.result, LimitResult) and not reading.amounts:
        return next((m for m in reading.mentions if m.holds("happens")), None)
    given = {k for c in question.conditions for k in c.where}
    supposed = (m for m in reading.mentions if m.start > at and not m.weak and given.isdisjoint(m.taken))
    telling = (m for m in supposed if not _only_measures(m, know))
    telling = (m for m in telling if not m.passing or says_an_act(reading.words, m.start))
    return next((m for m in telling if not is_told(m, record, know)), None)


def _only_measures(mention: Mention, know: Knowledge) -> bool:
    return all(know.lexicon.kinds.get(c, "").startswith(("ask", "quantity")) for c in mention.concepts)


def not_allowed(candidate: Candidate, record: str, question: Question, know: Knowledge) -> Mention | None:
    """Return "can I …", where a statement tells nothing of what may be done: "can I carry the pins", their colour."""
    words = question.reading.words
    at = next((i for i in range(len(words) - 1) if words[i] in _MAY and words[i + 1] in _ASKER), None)
    if at is None or not isinstance(candidate.result, FactResult) or not _OPEN.isdisjoint(words):
        return None
    fact = candidate.result.fact
    if not _ALLOWING.isdisjoint(stems_said(f"{fact.says} {fact.says_more}")):
        return None
    return next((m for m in question.reading.mentions if m.start == at), None) or word_at(words, at)


def nothing_to_do(candidate: Candidate, record: str, question: Question, know: Knowledge) -> Mention | None:
    """Return "what now", where a record tells nothing to do."""
    at = _asks_what_to_do(question.reading.words)
    if at is None or not isinstance(candidate.result, (FactResult, LimitResult)):
        return None
    says = candidate.result.fact.says if isinstance(candidate.result, FactResult) else ""
    if not _DOING.isdisjoint(stems_said(says)):
        return None
    return next((m for m in question.reading.mentions if at in m.taken), None) or word_at(question.reading.words, at)


def _asks_what_to_do(words: Sequence[str]) -> int | None:
    """Return where it is asked what to do: "what now", "what do I do"."""
    for i in range(len(words) - 1):
        do = words[i] == "what" and words[i + 1] in _DO and words[i + 2 : i + 3] in (("i",), ("we",))
        if words[i : i + 2] in _TO_DO or (do and words[i + 3 : i + 4] == ("do",)):
            return i
    return None
