"""Tell where what was told stands, or where the thing spoken of is."""

from __future__ import annotations

from assistant.answering.answer import ANSWER, CLARIFY, Answer
from assistant.answering.heard import published_heard
from assistant.conversation.composing import composed, replied
from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import question_of
from assistant.conversation.replying.beliefs import colours
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import FactResult

_SURE = 0.9


def bare_place(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return the place of what was told, for a turn that asks no more than where, and else where that thing is."""
    from assistant.conversation.replying.where_then import (  # a first question starts without it
        asks_bare_place,
        place_told,
    )

    if not asks_bare_place(text):
        return None
    return place_told(text, context, knowledge) or whereabouts(text, context, knowledge)


def whereabouts(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return where the thing spoken of is, if that is known: "where is it?" asks for a place before a paragraph."""
    asked = context.asked
    if asked is None:
        return None
    things = [m.text for m in asked.reading.mentions if not colours(m, knowledge)]
    told = context.answer.entry if context.answer else ""
    named = [" ".join(things), *reversed(things), *_subjects(told, knowledge)]
    for thing in dict.fromkeys(filter(None, named)):
        question = question_of(f"where is the {thing}", knowledge, asked.variant)
        scored = resolve_scored(question, knowledge)
        told = scored.result.fact.id if isinstance(scored.result, FactResult) else ""
        if scored.score < _SURE or not told or "where" not in knowledge.matcher.vocabulary(told):
            continue
        answer = composed(text, question.with_text(text), scored.result, knowledge)
        return answer, context._replace(answer=answer)
    return None


def _subjects(name: str, knowledge: Knowledge) -> list[str]:
    """Return the things that the first way of asking for a record names."""
    asks = getattr(knowledge.base.records.get(name), "asks", ())[:1]
    phrases = [knowledge.phrase(ask.replace("[", "").replace("]", "")) for ask in asks]
    return [m.text for phrase in phrases for m in phrase.mentions if not colours(m, knowledge)]


def source_told(text: str, last: Answer, knowledge: Knowledge) -> Answer:
    """Return the paragraphs that what was told rests on, with the titles of their documents."""
    if not last.sources and last.outcome != ANSWER:
        words = "Nothing was answered yet that could have a source. What would you like to know?"
        return replied(text, CLARIFY, words, knowledge)
    if not last.sources:
        return last._replace(question=text, text="It rests on no paragraph: it is a computation or a definition.")
    listed: dict[str, str] = {}
    for source in last.sources:
        document = knowledge.base.documents.get(source.document)
        revision = f", revision {source.revision}" if source.revision else ""
        told = f"{source.document} {source.paragraph}{revision} ({document.title if document else ''})"
        listed[told] = published_heard(document.title, source.paragraph) if document and document.published else told
    return last._replace(question=text, text="; ".join(listed) + ".", working="", aloud=tuple(listed.items()))
