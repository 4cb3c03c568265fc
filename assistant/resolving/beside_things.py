"""The things that a question names and a record has no word of, and what is said to be the matter with them."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.resolving.asked_quantity import asked_of
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.record_words import is_known, is_told, named_outright, stems_told
from assistant.resolving.results import ProcedureResult
from assistant.understanding.clauses import asking
from assistant.understanding.mentions import PLAIN, STATE, Mention

_FEW, _TERSE, _PAIR = 9, 7, 2
"""Words of a question, at most, of which each thing named counts; in a longer one it may be a circumstance."""
_NEARLY_ALL = 0.85
_BEGINNING = frozenset(("is", "are", "be", "gets", "get", "slow", "come", "lets", "in", "at"))
_ENDING = frozenset(("to", "on", "by", "with", "from", "of", "system", "systems"))
_ARTICLES = frozenset(("the", "a", "an", "my", "our"))
_FAILING = frozenset(("@lost", "@empty"))
_NO = (("no",), ("without",))
_WILL = frozenset(("will", "does", "do", "would"))
_ASKED_WHY = frozenset(("why", "i", "we", "you", "they"))
_FAILURES = frozenset({
    "not", "no", "never", "fail", "stick", "lose", "jam", "cannot", "none", "without", "refus", "break", "disarm",
    "residual",
})  # fmt: skip
_LINKS = frozenset({
    "is", "are", "was", "feels", "feel", "seems", "looks", "keeps", "keep", "got", "gone", "a", "bit", "very", "really",
    "so", "has", "been", "all", "too",
})  # fmt: skip
_FEELING = frozenset({
    "stiff", "soft", "spongy", "loose", "heavy", "noisy", "sticky", "weak", "wobbly", "jerky", "rough", "tight",
    "slack", "bent", "torn", "crooked", "squeaky",
})  # fmt: skip


def none_known(candidate: Candidate, record: str, question: Question, know: Knowledge) -> Mention | None:
    """Return the thing asked of, where a record knows none that is named: "what gas goes in the | tyres |"."""
    if question.context or question.background:
        return None
    things = list(named_outright(question.reading.mentions, know))
    if any(is_known(m, record, know) for m in things):
        return None
    return things[-1] if things else None


def one_unknown(candidate: Candidate, record: str, question: Question, know: Knowledge) -> Mention | None:
    """Return a thing named in a few words that a record does not know: each of them counts there, "| door | light"."""
    if question.context or question.background or len(question.reading.words) > _FEW:
        return None
    match = candidate.match
    if match and match.whole and match.share >= _NEARLY_ALL:
        return None  # what is left over tells little: "when | the leg | sensors disagree"
    given = {k for c in question.conditions for k in c.where}
    things = [m for m in named_outright(question.reading.mentions, know) if given.isdisjoint(m.taken)]
    if len(things) == _PAIR and things[0].end == things[1].start and not is_told(things[0], record, know):
        return things[0]  # "| brake | lights": it says whose they are
    return next((m for m in things if not _is_verb(m, question) and not is_known(m, record, know)), None)


def _is_verb(mention: Mention, question: Question) -> bool:
    """Return whether a name is rather what something does, or how it is meant: "is showing", "| holds | the tiller"."""
    words = mention.text.split()
    if words[0] in _BEGINNING or words[-1] in _ENDING:
        return True
    return len(words) == 1 and not _ARTICLES.isdisjoint(question.reading.words[mention.end : mention.end + 1])


def failing(candidate: Candidate, record: str, question: Question, know: Knowledge) -> Mention | None:
    """Return the word by which something is told to have failed, of which a record does not tell."""
    if not question.reading.has("can", "steps"):
        return None
    told = {k for c in question.conditions for k in c.where}
    failed = (m for m in question.reading.mentions if _says_failed(m) and told.isdisjoint(m.taken))
    return next((m for m in failed if not is_known(m, record, know)), None)


def _says_failed(mention: Mention) -> bool:
    """Return whether a mention is words for having failed, and nothing else."""
    only = all(c.startswith(STATE) for c in mention.concepts)
    return only and not mention.weak and not _FAILING.isdisjoint(mention.concepts)


def faulty(candidate: Candidate, record: str, question: Question, know: Knowledge) -> Mention | None:
    """Return what is told to be the matter with a thing in a few words that ask nothing, where a record has no word of
    it: "brake pedal | stiff |".
    """
    reading = question.reading
    if question.context or reading.amounts or len(reading.words) > _TERSE or asking(reading.words):
        return None
    ends = {_past_links(m.end, reading.words) for m in named_outright(reading.mentions, know)}
    matters = (m for m in reading.mentions if m.passing and m.start in ends and _is_a_fault(m.text))
    return next((m for m in matters if not is_told(m, record, know)), None)


def _past_links(at: int, words: Sequence[str]) -> int:
    """Return the place past the words that lead from a thing to what is the matter with it: "brakes | feel a bit |"."""
    while at < len(words) and words[at] in _LINKS:
        at += 1
    return at


def _is_a_fault(word: str) -> bool:
    return word.endswith(("ing", "ed")) or word in _FEELING


def refusing(candidate: Candidate, record: str, question: Question, know: Knowledge) -> Mention | None:
    """Return what a thing is said not to do, where a record knows of nothing that fails: "it | will not | release"."""
    if isinstance(candidate.result, ProcedureResult) or asked_of(question.reading):
        return None
    words = question.reading.words
    at = next((i for i in range(2, len(words)) if _says_it_refuses(words, i)), None)
    if at is None or not _FAILURES.isdisjoint(stems_told(record, know)):
        return None
    text = " ".join(words[at - 1 : at + 2])
    return Mention(at - 1, at + 1, (at - 1, at), frozenset((PLAIN + "not",)), frozenset(), False, text)


def _says_it_refuses(words: Sequence[str], at: int) -> bool:
    """Return whether a thing is said not to do something: "the brake | does | not |"."""
    return words[at] == "not" and words[at - 1] in _WILL and words[at - 2] not in _ASKED_WHY


def lacking(candidate: Candidate, record: str, question: Question, know: Knowledge) -> Mention | None:
    """Return what is said to be lacking, where a record has no word of it: "charge it with no | electrics |"."""
    words = question.reading.words
    gone = (m for m in question.reading.mentions if m.passing and words[m.start - 1 : m.start] in _NO)
    return next((m for m in gone if not is_known(m, record, know)), None)
