"""A paragraph of the library that a question names: "what does LIM 3.2 say about towing", "AOM 32.44.6?".

What is asked is looked for in that paragraph alone. Where nothing else is asked, what stands there is told; of a
section it is asked back which of its paragraphs is meant.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence

from assistant.frozen import NamedTuple
from assistant.knowledge.library_records import Document
from assistant.knowledge.paragraphs import paragraphs_of
from assistant.knowledge.records import Fact, Limit, Procedure, Source
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Choices, Declined, FactResult, LimitResult, ProcedureResult, Result

_CALLED = frozenset(("paragraph", "para", "section", "item", "chapter", "part", "sub", "number", "page", "checklist"))
_BY_ITSELF = frozenset(("paragraph", "para", "section"))
"""Words that say of the number after them that it is a paragraph's."""
_NUMBERED = r"[a-z]\.?\d+(?:\.\d+)*|\d+(?:\.\d+)+"
"""A paragraph's number: with a letter or a point, or it may be a revision."""
_MOST_TOLD, _MOST_OFFERED = 4, 3
_LEAST = 0.4
_NEW = 0.3
"""Share of its words that a statement must say anew to be told after others of its paragraph."""


class _Named(NamedTuple):
    """A paragraph or section that is named, as it is written ("": there is none of that name), and the words for it."""

    document: str
    paragraph: str
    where: range


def in_paragraph(
    question: Question, know: Knowledge, candidates: Callable[[Question, Knowledge], list[Candidate]]
) -> tuple[Result, float, str] | None:
    """Return what a paragraph that is named says to the rest of a question, with its score and record."""
    named = _named(question.reading.words, know)
    if named is None:
        return None
    if not named.paragraph:
        return Declined((" ".join(question.reading.words[k] for k in named.where).upper(),)), 0.0, ""
    there = {n: r for n, r in know.base.records.items() if _stands_in(getattr(r, "sources", ()), named)}
    rest = _without(named, question)
    if know.matcher.telling(rest.reading):
        for found in candidates(rest, know):
            if found.score < _LEAST:
                break
            if found.match and found.match.record in there and found.match.open:
                return found.result, found.score, found.match.record
        limits = _limits_of(rest, there, know)
        return (LimitResult(limits), 1.0, limits[0].id) if limits else None
    told = _told(there.values(), named, question, know)
    return (told, 1.0, "") if told else None


def _named(words: Sequence[str], know: Knowledge) -> _Named | None:
    own = know.own_documents
    for at, word in enumerate(words):
        meant = [own[word]] if word in own else list(own.values()) if word in _BY_ITSELF else []
        after = at + 1
        while meant and after < len(words) and words[after] in _CALLED:
            after += 1
        for end in (after + 2, after + 1) if meant else ():
            number = "".join(words[after:end])
            found = _written(number, meant) if re.fullmatch(_NUMBERED, number) else None
            if found:
                return _Named(*found, range(at, end))
        if meant and any("." in w[1:] and re.fullmatch(_NUMBERED, w) for w in words[after : after + 1]):
            return _Named(meant[0].id, "", range(at, after + 1))
    return None


def _written(number: str, documents: Iterable[Document]) -> tuple[str, str] | None:
    """Return the document and paragraph, or section, that a number names."""
    spelt = number.replace(".", "")
    for document in documents:
        for paragraph in paragraphs_of(document.paragraphs):
            parts = paragraph.split(".")
            for count in range(len(parts), 0, -1):
                section = ".".join(parts[:count])
                whole = number == section.lower()
                if whole or (not section[0].isdigit() and spelt == section.lower().replace(".", "")):
                    return document.id, section
    return None


def _stands_in(sources: Iterable[Source], named: _Named) -> bool:
    return any(
        s.document == named.document and f"{s.paragraph}.".startswith(f"{named.paragraph}.") for s in sources
    )


def _without(named: _Named, question: Question) -> Question:
    """Return a question without the words that name a paragraph."""
    reading = question.reading
    mentions = tuple(m for m in reading.mentions if m.start not in named.where and m.end - 1 not in named.where)
    amounts = tuple(a for a in reading.amounts if a.start not in named.where)
    return question._replace(reading=reading._replace(mentions=mentions, amounts=amounts))


def _limits_of(rest: Question, there: Mapping[str, object], know: Knowledge) -> tuple[Limit, ...]:
    """Return the limits of a paragraph that are of everything the rest of a question names: they are all told."""
    asked = know.matcher.telling(rest.reading)
    limits = [know.record(n, rest.variant) for n, r in there.items() if isinstance(r, Limit)]
    return tuple(x for x in limits if all(not m.concepts.isdisjoint(know.phrase(x.of).concepts) for m in asked))


def _told(records: Iterable[object], named: _Named, question: Question, know: Knowledge) -> Result | None:
    """Return what a paragraph says, or what is asked back of a section."""
    source = Source(named.document, named.paragraph)
    own = [r for r in records if getattr(r, "sources", ())[:1] == (source,)]
    procedure = next((r for r in own if isinstance(r, Procedure)), None)
    if procedure:
        return ProcedureResult(procedure)
    limits = [know.record(r.id, question.variant) for r in own if isinstance(r, Limit)]
    facts = [know.record(r.id, question.variant) for r in own if isinstance(r, Fact)]
    if len(limits) > len(facts):
        return LimitResult(tuple(limits))
    if facts:
        return FactResult(_as_one(facts, source))
    return _which(named, know)


def _as_one(facts: Sequence[Fact], source: Source) -> Fact:
    """Return the statements of a paragraph as one, those left out that say little anew."""
    chosen: list[Fact] = []
    said: set[str] = set()
    for fact in facts:
        words = {w[:5] for w in re.findall(r"\w{4,}|\d+", fact.says.lower())}
        if words and len(words - said) >= _NEW * len(words):
            chosen.append(fact)
            said |= words
    chosen = chosen[:_MOST_TOLD]
    says = " ".join(f.says if f.says.endswith(".") else f"{f.says}." for f in chosen)
    values = tuple(v for f in chosen for v in f.values)
    return chosen[0]._replace(says=says, says_more="", values=values, sources=(source,))


def _which(named: _Named, know: Knowledge) -> Choices | None:
    """Ask back which paragraph of a section is meant: the first thing that each of the first ones tells."""
    first: dict[str, tuple[str, str]] = {}
    for record in know.base.records.values():
        title = getattr(record, "title", "") or getattr(record, "of", "")
        for source in getattr(record, "sources", ())[:1] if title else ():
            if _stands_in((source,), named):
                first.setdefault(source.paragraph, (record.id, title))
    options = tuple(first[p] for p in sorted(first, key=_in_order))[:_MOST_OFFERED]
    about = f"{named.document} {named.paragraph} has several paragraphs. Which do you mean? For example:"
    return Choices(options, about) if options else None


def _in_order(paragraph: str) -> list[str]:
    return [part.zfill(3) for part in paragraph.split(".")]
