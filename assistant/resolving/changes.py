"""What a revision changed: of a record that is named, of one document, or in all."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.knowledge.library_records import Change
from assistant.resolving.documents_named import DocumentNamed, documents_named
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import ChangeResult
from assistant.understanding.mentions import Mention

Scored = tuple[float, float, ChangeResult]
_STRANGE = 0.62
"""Share left for each amount of a question that is no former or present figure, nor stands in what changed."""
_CERTAIN = 1.2
"""How well a change answers what a figure was before: better than the figure itself."""
_ASKING = frozenset(("what", "which", "how", "and"))
_MEASURED = frozenset(("high", "low", "fast", "much"))
_WAS = frozenset(("was", "were"))
_BEFORE = frozenset(("before", "formerly", "previously", "earlier", "originally"))
_IT_IS = frozenset(("and", "but", "is", "it", "its", "s", "that", "thats"))
_WHEN = frozenset(("when", "date", "since", "day", "old"))
_DATING = frozenset(("issued", "issue", "effective", "effect", "valid", "force", "published", "dated", "released"))
_LIBRARY = frozenset({
    "last", "latest", "previous", "current", "newest", "recent", "checklist", "manual", "book", "edition", "the",
    "before",
})  # fmt: skip
"""Words that only say since when, or in what book: "before the last checklist revision"."""
_USED_TO = (("used", "to", "be"), ("use", "to", "be"))
_USED = frozenset(first for first, *_ in _USED_TO)
_OF_BEFORE = _USED | _BEFORE
"""Words of which one is in every question for what was before."""
_BETWEEN = 3
"""Words before a document's name that may say which: "before the last LIM"."""
_REVISION = frozenset(("revision", "rev", "issue", "edition", "number"))


def changes_of(record: str, know: Knowledge) -> tuple[Change, ...]:
    """Return the changes that a revision made to a record."""
    return tuple(c for c in know.base.changes.values() if c.record == record)


def asks_what_was(question: Question) -> bool:
    """Return whether a question asks what a figure was before, in these words: "what was the limit before"."""
    words = [w for w in question.reading.words if w[0].isalpha()]
    if question.reading.amounts:
        words = _before_what_is_now(words)
    measured = words[:1] != ["how"] or not _MEASURED.isdisjoint(words[1:2])
    if any(tuple(words[i : i + 3]) in _USED_TO for i, word in enumerate(words) if word in _USED):
        return measured
    was = bool(words) and measured and words[0] in _ASKING and not _WAS.isdisjoint(words[1:4])
    return was and words[-1] in _BEFORE


def _before_what_is_now(words: list[str]) -> list[str]:
    """Return the words before those that say what a figure is now: "what was it before, | its now 85 percent |"."""
    at = words.index("now") if "now" in words else 0
    while at and words[at - 1] in _IT_IS:
        at -= 1
    return words[:at]


def change_result(question: Question, know: Knowledge) -> Scored | None:
    """Return the change that a question asks about, those of the documents it names, or all when it names nothing."""
    words, changed = question.reading.words, question.reading.has("changed")
    if not changed and _OF_BEFORE.isdisjoint(words):
        return None  # which is soon seen of nearly every question
    was = asks_what_was(question)
    if not (was or changed or "before" in words) or _asks_a_date(words):
        return None
    named = documents_named(question, know)
    was = was or _is_before(words, named)
    if not was and not changed:
        return None
    content = _content(question, named, know)
    changes = _of_documents(list(know.base.changes.values()), named, question)
    if all(m.holds("document") or m.holds("source_of") for m in content):
        return (0.95, 1.0, ChangeResult(tuple(changes), True)) if changes and not was else None
    scored = [(fit(question, know, change), change) for change in changes]
    best = max(scored, key=lambda pair: pair[0], default=None)
    if best and best[0] > 0.55:
        tied = tuple(c for s, c in scored if s > best[0] - 0.05)
        told = {a.value for c in tied for text in (c.now, c.formerly, c.subject) for a in know.phrase(text).amounts}
        numbers = _revisions_named(named, question)
        strange = sum(1 for a in question.reading.amounts if a.value not in told and a.start not in numbers)
        score = _CERTAIN if was else 0.7 + 0.3 * best[0]
        return score * _STRANGE**strange, 2.0, ChangeResult(tied)
    return None


def _is_before(words: Sequence[str], named: list[DocumentNamed]) -> bool:
    """Return whether a figure is asked for as it was before a revision: "retraction speed before LIM 7"."""
    firsts = (min(d.places) for d in named if d.places)
    return any("before" in words[max(0, at - _BETWEEN) : at] for at in firsts)


def _asks_a_date(words: Sequence[str]) -> bool:
    """Return whether the date of a revision is asked for, and not what it changed: "when was revision 7 issued"."""
    return not _DATING.isdisjoint(words) and not _WHEN.isdisjoint(words)


def _content(question: Question, named: list[DocumentNamed], know: Knowledge) -> list[Mention]:
    """Return what a question names besides the documents and their revisions."""
    taken = {k for document in named for k in document.places}
    return [
        m
        for m in question.reading.mentions
        if not (m.weak or m.holds("changed") or m.holds("doc_revision") or know.matcher.is_soft(m))
        and taken.isdisjoint(m.taken)
    ]


def _of_documents(changes: list[Change], named: list[DocumentNamed], question: Question) -> list[Change]:
    """Return the changes that came with the documents named, and with the revision whose number is given."""
    if named:
        changes = [c for c in changes if c.since.split()[0] in {d.id for d in named}]
    numbers = _revisions_named(named, question)
    given = {f"{a.value:g}" for a in question.reading.amounts if a.start in numbers}
    return [c for c in changes if not given or c.since.split()[-1] in given]


def _revisions_named(named: list[DocumentNamed], question: Question) -> set[int]:
    """Return where bare numbers begin that are those of a revision: "revision 7", "did ABN 5 alter"."""
    behind = {max(document.places) + 1 for document in named if document.places}
    bare = [a.start for a in question.reading.amounts if a.unit is None]
    return {at for at in bare if at in behind or (at and question.reading.words[at - 1] in _REVISION)}


def fit(question: Question, know: Knowledge, change: Change) -> float:
    """Return the share of the question's content that a changed record and its subject explain."""
    subject = know.phrase(change.subject)
    known = subject.concepts | know.matcher.vocabulary(change.record)
    content = [
        m
        for m in question.reading.mentions
        if not (m.weak or m.holds("changed") or m.holds("doc_revision") or _LIBRARY.issuperset(m.text.split()))
    ]
    if not content:
        return 0.0
    explained = sum(know.matcher.mention_weight(m) for m in content if not known.isdisjoint(m.concepts))
    total = sum(know.matcher.mention_weight(m) for m in content) or 1.0
    parts = [m for m in subject.mentions if not m.weak]
    covered = sum(1 for m in parts if not m.concepts.isdisjoint(question.reading.concepts)) / (len(parts) or 1)
    return explained / total * (0.4 + 0.6 * covered)
