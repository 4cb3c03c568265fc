"""What a turn that leans on the one before means: what was spoken of, where it stands, what was asked of it."""

from __future__ import annotations

from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge, Question

ANSWERING = 0.7
"""From this score a record answers by itself."""
_OF_ANOTHER = 0.75
_UNNAMED = 0.15
"""Share of its score that a record loses which knows nothing of what the question before named."""
_TIE = 0.005
_SAME_PARAGRAPH = 1.1
_SAME_SECTION = 1.04


def by_what_it_leans_on(found: list[Candidate], question: Question, know: Knowledge) -> list[Candidate]:
    """Let what knows of the things spoken of before, and stands where they were told of, come forward."""
    if question.spoken:
        found = [c._replace(score=c.score * of_spoken(_record(c), question.spoken, know)) for c in found]
    if question.after:
        found = [c._replace(score=c.score * _after(_record(c), question.after, know)) for c in found]
    return _by_places(found, question, know) if question.near else found


def _by_places(found: list[Candidate], question: Question, know: Knowledge) -> list[Candidate]:
    """Let what stands where was spoken of come forward, but never before what answers as well and explains more."""
    placed = [_by_place(c, question, know) for c in found]
    best = [c for c, there in zip(found, placed, strict=True) if c is there and c.match and c.score >= ANSWERING]
    behind = [any(_explains_more(b, c, question) for b in best) for c in found]
    return [c if is_behind else there for c, there, is_behind in zip(found, placed, behind, strict=True)]


def _record(candidate: Candidate) -> str:
    return candidate.match.record if candidate.match else ""


def of_spoken(record: str, spoken: frozenset[str], know: Knowledge) -> float:
    """Return the share left to a record that a turn may mean, which points at things spoken of before."""
    return _OF_ANOTHER if record and know.matcher.vocabulary(record).isdisjoint(spoken) else 1.0


def _after(record: str, named: tuple[frozenset[str], ...], know: Knowledge) -> float:
    """Return the share left to a record by how much it knows of what the question before named."""
    if not record:
        return 1.0
    said = know.matcher.vocabulary(record)
    return 1.0 - _UNNAMED * sum(said.isdisjoint(senses) for senses in named) / len(named)


def _explains_more(one: Candidate, other: Candidate, question: Question) -> bool:
    """Return whether a record fits as well as another, and is asked for by a word of the turn that the other is not."""
    if abs(one.score - other.score) >= _TIE or not one.match or not other.match:
        return False
    mine, theirs = one.match.concepts, other.match.concepts
    said = [m.concepts for m in question.reading.mentions]
    more = any(not mine.isdisjoint(c) and theirs.isdisjoint(c) for c in said)
    return more and not any(mine.isdisjoint(c) and not theirs.isdisjoint(c) for c in said)


def _by_place(candidate: Candidate, question: Question, know: Knowledge) -> Candidate:
    """Let a record of the paragraph spoken of come forward, and less so one of its section."""
    if not candidate.match:
        return candidate
    own = know.base.records[candidate.match.record].sources
    if set(own) & set(question.near):
        return candidate._replace(score=candidate.score * _SAME_PARAGRAPH)
    sections = {(s.document, s.paragraph.rpartition(".")[0]) for s in question.near}
    if any((s.document, s.paragraph.rpartition(".")[0]) in sections for s in own):
        return candidate._replace(score=candidate.score * _SAME_SECTION)
    return candidate
