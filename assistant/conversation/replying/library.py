"""What is loaded, asked for itself: which documents, at which revision, since when, validated by whom.

It is answered from what the documents say of themselves. A turn is taken for such a question by its words alone,
when it says nothing else; after an answer, "it" and "that" mean the documents which the answer rests on.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

from assistant.answering.answer import ANSWER, Answer, Citation
from assistant.conversation.composing import replied
from assistant.conversation.context import Context
from assistant.knowledge.library_records import Document
from assistant.resolving.knowing import Knowledge

_NOT_KNOWN = "Whether a later one is in force cannot be known here: check your library."
_MOST_CHARACTERS = 100
_BESIDES = frozenset({
    "a", "an", "and", "any", "are", "as", "at", "base", "based", "be", "been", "by", "can", "come", "could", "did",
    "do", "does", "for", "from", "give", "has", "have", "here", "how", "i", "in", "into", "is", "it", "its", "list",
    "long", "many", "me", "much", "my", "name", "now", "of", "ok", "on", "or", "out", "please", "s", "same", "show",
    "since", "so", "take", "takes", "taken", "tell", "that", "the", "their", "them", "there", "these", "they", "this",
    "those", "to", "took", "came", "put", "up", "use", "used", "uses", "using", "was", "were", "what", "when", "which",
    "who", "whom", "will", "with", "you", "your", "it's", "holds", "hold", "behind", "entered", "next", "today",
    "one", "ones",
})  # fmt: skip
_DOCUMENTS = frozenset({
    "document", "documents", "manual", "manuals", "book", "books", "knowledge", "data", "library", "publication",
    "publications", "sources", "documentation",
})  # fmt: skip
_OURS = frozenset({"you", "your"})
_POINTING = frozenset({"it", "that", "this", "these", "those", "they"})
_REVISIONS = frozenset({"revision", "revisions", "edition", "editions", "issue", "issues", "version", "versions"})
_VALIDATED = frozenset({"validated", "validates", "validate", "validation", "verified", "verifies"})
_EFFECTIVE = frozenset({"effective", "effect", "dated", "date", "dates", "force", "valid"})
_REVIEW = frozenset({"review", "reviewed", "due"})
_LATEST = frozenset({"current", "latest", "newest", "recent"})
_CURRENT = _LATEST | {"old", "date", "force"}
_TEMPORARY = frozenset({"temporary"})
_LOADED = frozenset({"loaded"})
_WHEN = frozenset({"when", "date", "dates", "dated", "since"})
_ASPECTS = frozenset().union(_REVISIONS, _VALIDATED, _EFFECTIVE, _REVIEW, _CURRENT, _TEMPORARY, _LOADED)
_MEANT_HERE = frozenset({"have", "use", "using", "used", "list", "show", "name", "hold", "holds"})


def library_reply(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return what the documents say of themselves to a turn that asks for just that, or None."""
    if len(text) > _MOST_CHARACTERS or any(map(str.isdigit, text)):
        return None
    words = frozenset(re.findall(r"[^\W\d_]+", text.lower()))
    if words.isdisjoint(_ASPECTS) and words.isdisjoint(_DOCUMENTS):
        return None
    own = [document for document in knowledge.base.documents.values() if not document.published]
    named = [document for document in own if words & _names(document, own)]
    if not own or not words <= _BESIDES | _DOCUMENTS | _ASPECTS | _all_names(own):
        return None
    told = _asked(words, bool(named), context)
    if told is None:
        return None
    meant = named or _behind(words, context, knowledge) or own
    said = told(meant)
    if told is _loaded and not named:
        said += _published(knowledge)
    if words & _LATEST or words >= {"to", "date"} or words >= {"out", "date"}:
        said = f"{said} {_NOT_KNOWN}"
    cited = tuple(Citation(each.id, "", each.revision, each.effective) for each in meant)
    return replied(text, ANSWER, said, knowledge)._replace(sources=cited, aloud=_once_aloud(meant, knowledge))


def _once_aloud(documents: Iterable[Document], knowledge: Knowledge) -> tuple[tuple[str, str], ...]:
    """Return the title alone for a document whose id is said as a part of it: "limitations, …, Limitations"."""
    said = knowledge.base.pronunciations
    return tuple(
        (f"{each.id}, {each.title}", each.title)
        for each in documents
        if each.id in said and said[each.id].lower() in each.title.lower()
    )


def with_books(text: str, knowledge: Knowledge) -> str:
    """Return a turn with the manual for each document of the type that it names: "is that in the abnormals"."""
    if len(text) > _MOST_CHARACTERS:
        return text
    own = [document for document in knowledge.base.documents.values() if not document.published]
    names = frozenset().union(*(_names(document, own) for document in own))
    words = [w for w in re.findall(r"[^\W\d_]+", text) if {w.lower(), w.lower().rstrip("s")} & names]
    return re.sub(rf"\b(?:{'|'.join(words)})\b", "manual", text) if words else text


def _asked(words: frozenset[str], named: bool, context: Context) -> Callable[[list[Document]], str] | None:
    """Return what tells the matter that is asked for, if it is one of the documents."""
    here = bool(named or words & (_DOCUMENTS | _OURS))
    pointed = context.answer is not None and bool(words & _POINTING)
    if words & _VALIDATED and (here or pointed or "who" in words):
        return _validated
    if words & _TEMPORARY and words & _REVISIONS:
        return _temporary
    if words & _REVIEW and ("due" in words or words & _WHEN) and (here or pointed or words >= {"review", "due"}):
        return _reviewed
    if words & _EFFECTIVE and words & _WHEN and (here or pointed) and not words >= {"up", "to"}:
        return effective_from
    if words & _REVISIONS and (here or words & _CURRENT):
        return _revised
    if here and (words & _LATEST or words & {"old", "date"}):
        return _revised
    if words & _LOADED and words & (_BESIDES | _DOCUMENTS) and words & {"what", "which", "is", "are", "list", "show"}:
        return _loaded
    if words & _DOCUMENTS - {"data", "knowledge"} and words & _MEANT_HERE and words & {"what", "which", "list", "show"}:
        return _loaded
    return None


def _behind(words: frozenset[str], context: Context, knowledge: Knowledge) -> list[Document]:
    """Return the documents that the last answer rests on, where a turn points to it."""
    if context.answer is None or not words & _POINTING or words & (_DOCUMENTS | _OURS | _LOADED):
        return []
    cited = dict.fromkeys(source.document for source in context.answer.sources)
    return [knowledge.base.documents[name] for name in cited if name in knowledge.base.documents]


def _names(document: Document, others: list[Document]) -> frozenset[str]:
    """Return the words that name one document: its id, and what no other title says."""
    elsewhere = {word for other in others if other is not document for word in _title_words(other)}
    return frozenset({document.id.lower(), *(_title_words(document) - elsewhere - _DOCUMENTS)})


def _all_names(own: list[Document]) -> frozenset[str]:
    return frozenset(word for document in own for word in (document.id.lower(), *_title_words(document)))


def _title_words(document: Document) -> frozenset[str]:
    return frozenset(re.findall(r"[^\W\d_]{4,}", document.title.split(",")[0].lower()))


def _loaded(documents: Iterable[Document]) -> str:
    """Tell which documents are loaded, each with its title and revision."""
    listed = [f"{each.id}, {each.title}, {_revision(each)}{_since(each)}" for each in documents]
    return f"Loaded: {'; '.join(listed)}."


def _published(knowledge: Knowledge) -> str:
    count = sum(document.published for document in knowledge.base.documents.values())
    return f" {count} published sources besides." if count else ""


def _revised(documents: Iterable[Document]) -> str:
    listed = [f"{each.id} is loaded at {_revision(each)}{_since(each)}" for each in documents]
    return f"{'; '.join(listed)}."


def effective_from(documents: Iterable[Document]) -> str:
    """Tell since when each document is effective, at its revision."""
    listed = [f"{each.id}, {_revision(each)}{_since(each) or ', no date stated'}" for each in documents]
    return f"{'; '.join(listed)}."


def _validated(documents: Iterable[Document]) -> str:
    return _grouped(documents, lambda each: each.validated, "Validated by {}", "who validated")


def _reviewed(documents: Iterable[Document]) -> str:
    return _grouped(documents, lambda each: each.review_by, "To be reviewed by {}", "when to review")


def _temporary(documents: Iterable[Document]) -> str:
    entered = [f"{each.id}: {', '.join(each.temporary_revisions)}" for each in documents if each.temporary_revisions]
    if not entered:
        return f"No temporary revisions are entered: {', '.join(map(_shown, documents))}."
    return f"Temporary revisions entered: {'; '.join(entered)}."


def _grouped(documents: Iterable[Document], part: Callable[[Document], str], told: str, lacking: str) -> str:
    """Tell one thing of documents, those for which it is the same together."""
    groups: dict[str, list[str]] = {}
    for each in documents:
        groups.setdefault(part(each), []).append(_shown(each))
    lines = [
        f"{told.format(_day(value))}: " if value else f"It is not stated {lacking} " for value in groups
    ]
    return " ".join(f"{line}{', '.join(names)}." for line, names in zip(lines, groups.values(), strict=True))


def _shown(document: Document) -> str:
    return f"{document.id} {document.revision}".strip()


def _revision(document: Document) -> str:
    return f"revision {document.revision}" if document.revision else "without a revision"


def _since(document: Document) -> str:
    return f", effective {_day(document.effective)}" if document.effective else ""


def _day(text: str) -> str:
    """Return a text with its dates as they are said: "1 August 2026"."""
    from assistant.rendering.dates import MONTHS  # few turns ask for a date

    return re.sub(r"(\d{4})-(\d{2})-(\d{2})", lambda d: f"{int(d[3])} {MONTHS[int(d[2]) - 1]} {d[1]}", text)
