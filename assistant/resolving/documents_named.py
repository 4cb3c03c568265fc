"""The documents that a question names: by their short ids, or by words that stand in the title of one alone."""

from __future__ import annotations

from collections import Counter

from assistant.frozen import NamedTuple
from assistant.resolving.knowing import Knowledge, Question

_SHORTEST = 5
"""Letters of a word that tells one title from the others."""


class DocumentNamed(NamedTuple):
    """A document of the type with the places of the words that name it."""

    id: str
    places: tuple[int, ...]


def documents_named(question: Question, know: Knowledge) -> list[DocumentNamed]:
    """Return the type's own documents that a question names, in the order of the library."""
    words = [{word, word.removesuffix("s")} for word in question.reading.words]  # "the abnormals", "in our SOPs"
    found = []
    for document, (telling, title) in _names(know).items():
        if any(telling & forms for forms in words):
            places = tuple(i for i, forms in enumerate(words) if forms & (telling | title))
            found.append(DocumentNamed(document, places))
    return found


def _names(know: Knowledge) -> dict[str, tuple[set[str], set[str]]]:
    """Return for each document what names it, its id and the words that no other title holds, and all of its title."""
    own = [d for d in know.base.documents.values() if not d.published]
    neutral = know.lexicon.neutral
    titles = {d.id: {w for w in d.title.partition(",")[0].lower().split() if w not in neutral} for d in own}
    counted = Counter(word for words in titles.values() for word in words)
    return {
        name: ({name.lower(), *(w for w in words if len(w) >= _SHORTEST and counted[w] == 1)}, words)
        for name, words in titles.items()
    }
