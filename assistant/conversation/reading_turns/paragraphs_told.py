"""What was told lately: its paragraphs, by which ways of asking that hold only then are kept, and its title."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.conversation.context import LATELY, Context
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import Choices
from assistant.understanding.then import topic_key


def told_lately(context: Context, knowledge: Knowledge) -> Iterator[tuple[str, ...]]:
    """Yield the paragraphs of what alone is offered, then of each of the last answers, the latest first."""
    offered = context.result.options if isinstance(context.result, Choices) else ()
    if len(offered) == 1:
        yield paragraphs_of(knowledge.base.records.get(offered[0][0]))
    assert context.answer is not None
    for answer in (context.answer, *(turn.answer for turn in context.earlier[:LATELY])):
        if answer.entry:
            yield (*paragraphs_of(answer), *_topic_told(answer.entry, knowledge))


def _topic_told(entry: str, knowledge: Knowledge) -> tuple[str, ...]:
    """Return the topic of what was told, where that is true of all aeroplanes."""
    if entry not in knowledge.base.records or not knowledge.is_general_record(entry, ""):
        return ()
    return (topic_key(knowledge.base.records[entry]),)


def paragraphs_of(record: object) -> tuple[str, ...]:
    """Return the paragraph that something rests on, as the ways of asking after it are kept."""
    sources = getattr(record, "sources", ())
    return tuple(f"{s.document} {s.paragraph}" for s in sources[:1])


def title_told(context: Context, knowledge: Knowledge) -> str:
    """Return the title of the record told last, or what its figure is of."""
    record = knowledge.base.records.get(context.answer.entry) if context.answer else None
    return getattr(record, "title", "") or getattr(record, "of", "")
