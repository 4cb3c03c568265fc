"""Whether what is cited is there: a document may list its paragraphs, and then nothing else can be cited of it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from assistant.knowledge.base import Base
from assistant.knowledge.named import every_record, of_kind
from assistant.knowledge.paragraphs import holds, listed_shown, paragraphs_of, spelt_out
from assistant.knowledge.problems import Problem, suggestion
from assistant.knowledge.records import Source


def paragraphs_are_listed(base: Base) -> Iterator[Problem]:
    """A range of paragraphs counts up within one section."""
    for named in of_kind(base, "documents"):
        for listed in named.record.paragraphs:
            if not spelt_out(listed):
                advice = "write it as '1.2 to 1.9', its last number rising"
                yield named.problem(f"lists the paragraphs '{listed}', which are none", advice)


def paragraphs_exist(base: Base) -> Iterator[Problem]:
    """What is cited of a document that lists its paragraphs is one of them, or a section that holds some.

    A citation in a text counts where it has a dot; without one it may be a revision ("MAN 7").
    """
    known = {name: paragraphs_of(document.paragraphs) for name, document in base.documents.items()}
    listing = "|".join(re.escape(name) for name, listed in known.items() if listed)
    in_text = re.compile(rf"(?<!\w)({listing}) (\w+(?:\.\w+)+)") if listing else None
    for named in every_record(base):
        told = (Source(*pair) for text in _texts(named.record) for pair in in_text.findall(text)) if in_text else ()
        for source in dict.fromkeys((*sources_of(named.record), *told)):
            listed = known.get(source.document)
            if listed and not holds(listed, source.paragraph):
                message = f"cites '{source.document} {source.paragraph}', which {source.document} does not list"
                yield named.problem(message, suggestion(source.paragraph, listed, listed_shown(listed)))


def sources_of(record: Any) -> Iterator[Source]:
    """Every paragraph that a record cites, in its rules too."""
    yield from getattr(record, "sources", ())
    for rule in getattr(record, "rules", ()):
        yield from getattr(rule, "sources", ())


def _texts(part: Any) -> Iterator[str]:
    """Every text of a record."""
    if isinstance(part, str):
        yield part
    elif isinstance(part, tuple) and not isinstance(part, Source):
        for each in part:
            yield from _texts(each)
