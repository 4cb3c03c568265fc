"""The names that are worth completing at a prompt: those that the knowledge itself uses for its things.

A term is also found by beginnings and turns of phrase ("accumulator filled with"), which are names to nobody: its
name counts where the records write it as a thing, after an article, in capitals or as what they are about.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from assistant.knowledge.base import Base
from assistant.knowledge.records import Fact

_LONGEST_NAME = 5
"""Words of a name that anybody would complete; what a record is about may take a whole line."""
_ARTICLES = frozenset({"the", "a", "an", "each", "every", "one", "both", "its", "two", "three", "four", "all"})
_WORD = re.compile(r"[^\W_][\w'./-]*|[.,;:()]")


def names_worth_completing(base: Base) -> list[str]:
    """Return what records are about and the things that they name, as they write them, alphabetically."""
    used = _used(base)
    names = [name for record in base.records.values() for name in _subjects(record)]
    for term in base.terms.values():
        named = _plain(term.names[0])
        names += [used[named]] if named in used and term.kind == "thing" else []
    names += [variant.show for variant in base.variants.values()]
    return sorted({name.lower(): name for name in names if len(name) > 2}.values(), key=str.lower)


def _subjects(record: Any) -> Iterator[str]:
    """Yield the names of what a record is about, without what narrows them after a comma."""
    about = [getattr(record, "of", ""), "" if isinstance(record, Fact) else getattr(record, "title", "")]
    about += [output.label for output in getattr(record, "outputs", ())]
    for text in about:
        name = text.split(",")[0].split(" (")[0]
        if name and len(name.split()) <= _LONGEST_NAME and "which" not in name:
            yield name


def _used(base: Base) -> dict[str, str]:
    """Return the names that texts use for things: plainly, and as they are written.

    What follows an article is one, and so are a caption in capitals and a name with a number ("System 1").
    """
    used: dict[str, str] = {}
    for record in base.records.values():
        for text in _texts(record):
            words = _WORD.findall(text)
            for i, word in enumerate(words):
                before = words[i - 1].lower() if i else ""
                numbered = word[0].isupper() and "".join(words[i + 1 : i + 2]).isdecimal()
                if before in _ARTICLES or (len(word) > 2 and word.isupper()) or numbered:
                    _take(words[i : i + _LONGEST_NAME], used)
    return used


def _take(words: list[str], used: dict[str, str]) -> None:
    """Take every beginning of some words as a possible name; one in plain letters goes before one in capitals."""
    for count in range(1, len(words) + 1):
        name = " ".join(words[:count]).removesuffix("'s")
        for form in (name, name.removesuffix("s")):
            if _plain(form) not in used or form.islower():
                used[_plain(form)] = form


def _plain(name: str) -> str:
    return name.lower().replace("-", " ")


def _texts(record: Any) -> Iterator[str]:
    for field in ("says", "of", "title", "condition"):
        yield getattr(record, field, "")
    for step in getattr(record, "steps", ()):
        yield step.do
