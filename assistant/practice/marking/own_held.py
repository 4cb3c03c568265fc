"""An instructor's own keys held against what is loaded: what it contradicts is told, and asked as it was written."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from assistant.practice.making.question import Question
from assistant.practice.marking.mark import Marker
from assistant.practice.recall import WRONG
from assistant.rendering.text import sources_line


def contradicted(questions: Iterable[Question], marker: Marker) -> Iterator[str]:
    """Yield a line on each question whose own key would be marked wrong as an answer to it.

    Of a key in words only where the answer is of the document that it cites: else another question was understood.
    """
    for question in questions:
        found = marker.mark(question.text, question.key.says)
        cited = {each.document for each in question.sources}
        same = any(each.document in cited for each in found.sources)
        if found.mark == WRONG and (same or question.key.values):
            loaded = f"{found.expected.split(' Formerly ')[0].rstrip('.')} ({sources_line(found.sources[:1])})"
            yield f"“{question.text}” has the key “{question.key.says}”, but what is loaded says: {loaded}."
