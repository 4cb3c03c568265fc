"""What an audio file may ask about: questions of the practice room, as the voice says them.

The two rooms do not know of each other; here one's questions become the other's facts.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from random import Random

from assistant.answering.answer import Citation
from assistant.conversation.opening import Knowledge
from assistant.practice.asking.due import due
from assistant.practice.asking.pool import Pool, drillable
from assistant.practice.making.make import make_questions
from assistant.practice.making.question import CAUSE, FORMS, LONG_SUMS, LOSS, STATE, Question
from assistant.rendering.text import sources_line
from assistant.terminal.disputes import kept_disputes
from assistant.terminal.records import clock, opened_record, somebody, tell_news
from assistant.voice.recording.script import Ask, Fact
from assistant.voice.speaking.phrases import said_aloud
from assistant.voice.speaking.settings import VoiceSettings

_HARDEST = 2
"""Difficulty that is not exceeded by ear."""
_BY_EAR = tuple(form for form in FORMS if form not in LONG_SUMS)
_OF_TABLES = (STATE, LOSS, CAUSE)
"""Forms whose record is a whole table: a fact is then what one paragraph of it says."""


def facts(
    knowledge: Knowledge, topics: Iterable[str], seed: str, variant: str, settings: VoiceSettings
) -> list[Fact]:
    """Return the facts of some topics in the order that the seed gives. Raises UnknownTopic.

    What is disputed or out of force is left out, as in any other practice.
    """
    questions = make_questions(knowledge, seed, topics=topics, forms=_BY_EAR, variant=variant, hardest=_HARDEST)
    groups: dict[tuple[object, ...], list[Question]] = {}
    for question in questions:
        groups.setdefault(_fact_of(question), []).append(question)
    fit = frozenset(item.record for item in _pool(knowledge, variant).items)
    return [_fact(group, knowledge, settings) for group in groups.values() if group[0].entry in fit]


def in_order_due(found: Sequence[Fact], name: str, knowledge: Knowledge, seed: str, variant: str) -> list[Fact]:
    """Return facts with those first that a learner is due to be asked. Raises UsageProblem for an unknown name."""
    with opened_record() as record:
        learner = somebody(record, name)
        choices = due(record, learner, _pool(knowledge, variant), clock(), Random(seed))
        tell_news(record)
    places = {choice.record: place for place, choice in enumerate(choices)}
    return sorted(found, key=lambda fact: places.get(fact.entry, len(places)))


def _pool(knowledge: Knowledge, variant: str) -> Pool:
    disputed = kept_disputes(knowledge.base.type_info.id)
    return drillable(knowledge.base, clock().date(), disputed, variant=variant)


def _fact_of(question: Question) -> tuple[object, ...]:
    return (question.entry, question.sources) if question.form in _OF_TABLES else (question.entry,)


def _fact(group: Sequence[Question], knowledge: Knowledge, settings: VoiceSettings) -> Fact:
    first = min(group, key=lambda question: question.difficulty)
    others = [question for question in group if question.text != first.text]
    # another way of asking teaches more than the same one with another number
    second = next((each for each in others if each.form != first.form), others[0] if others else first)
    asks = tuple(
        Ask(
            said_aloud(question.text, knowledge, settings),
            said_aloud(question.key.says, knowledge, settings),
            question.text,
        )
        for question in (first, second)
    )
    name = f"{first.entry} {sources_line(first.sources[:1])}" if first.form in _OF_TABLES else first.entry
    return Fact(name, first.entry, asks, _source_said(first.sources, knowledge, settings))


def _source_said(sources: Sequence[Citation], knowledge: Knowledge, settings: VoiceSettings) -> str:
    """Return the first source of an answer as it is said; a published one by its title."""
    if not sources:
        return ""
    source = sources[0]
    document = knowledge.base.documents.get(source.document)
    if document is not None and document.published:
        return f"Source: {said_aloud(document.title, knowledge, settings)}"
    return f"Source: {said_aloud(sources_line((source,)), knowledge, settings)}"
