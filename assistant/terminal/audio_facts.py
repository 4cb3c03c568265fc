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
from assistant.practice.making.proving import answer_to
from assistant.practice.making.question import CAUSE, FORMS, LONG_SUMS, LOSS, STATE, Question
from assistant.rendering.text import sources_line
from assistant.terminal.disputes import kept_disputes
from assistant.terminal.records import clock, opened_record, somebody
from assistant.voice.recording.script import Ask, Fact
from assistant.voice.speaking.phrases import said_aloud
from assistant.voice.speaking.settings import VoiceSettings

_HARDEST = 2
"""Difficulty that is not exceeded by ear."""
_BY_EAR = tuple(form for form in FORMS if form not in LONG_SUMS)
_ASKING = frozenset({"say", "tell", "name", "where", "what", "which", "is", "are", "does", "do", "the", "a", "of"})
_ROUNDS = 4
"""Times that other words are looked for, for what was put into one wording only."""
_OF_TABLES = (STATE, LOSS, CAUSE)
"""Forms whose record is a whole table: a fact is then what one paragraph of it says."""


def facts(
    knowledge: Knowledge, topics: Iterable[str], seed: str, variant: str, settings: VoiceSettings
) -> list[Fact]:
    """Return the facts of some topics in the order that the seed gives. Raises UnknownTopic.

    What is disputed or out of force is left out, as in any other practice.
    """
    fit = frozenset(item.record for item in _pool(knowledge, variant).items)
    groups: dict[tuple[object, ...], list[Question]] = {}
    for question in make_questions(
        knowledge, seed, topics=topics, forms=_BY_EAR, variant=variant, hardest=_HARDEST
    ):
        if question.entry in fit:
            groups.setdefault(_fact_of(question), []).append(question)
    _in_other_words(groups, knowledge, seed, variant)
    return [_fact(group, knowledge, settings) for group in _told_once(groups.values())]


def _in_other_words(
    groups: dict[tuple[object, ...], list[Question]], knowledge: Knowledge, seed: str, variant: str
) -> None:
    """Add to the facts that have one wording only another one, where the practice room finds it."""
    for n in range(_ROUNDS):
        alone = {group[0].entry for group in groups.values() if len({question.text for question in group}) < 2}
        if not alone:
            return
        for question in make_questions(
            knowledge, f"{seed} {n}", entries=alone, forms=_BY_EAR, variant=variant, hardest=_HARDEST
        ):
            if _fact_of(question) in groups:
                groups[_fact_of(question)].append(question)


def _told_once(groups: Iterable[list[Question]]) -> list[list[Question]]:
    """Return the groups without those whose answer another group has already."""
    return list({_easiest(group).key.says: group for group in groups}.values())


def in_order_due(found: Sequence[Fact], name: str, knowledge: Knowledge, seed: str, variant: str) -> list[Fact]:
    """Return facts with those first that a learner is due to be asked. Raises UsageProblem for an unknown name."""
    with opened_record() as record:
        learner = somebody(record, name)
        choices = due(record, learner, _pool(knowledge, variant), clock(), Random(seed))
    places = {choice.record: place for place, choice in enumerate(choices)}
    return sorted(found, key=lambda fact: places.get(fact.entry, len(places)))


def _pool(knowledge: Knowledge, variant: str) -> Pool:
    disputed = kept_disputes(knowledge.base.type_info.id)
    return drillable(knowledge.base, clock().date(), disputed, variant=variant)


def _fact_of(question: Question) -> tuple[object, ...]:
    return (question.entry, question.sources) if question.form in _OF_TABLES else (question.entry,)


def _fact(group: Sequence[Question], knowledge: Knowledge, settings: VoiceSettings) -> Fact:
    first = _easiest(group)
    others = [question for question in group if question.text != first.text]
    # another way of asking teaches more than the same one with another number
    seconds = sorted(others, key=lambda each: (each.form == first.form, _same_words(first.text, each.text)))[:1]
    asks = tuple(_ask(question, knowledge, settings) for question in (first, *seconds))
    name = f"{first.entry} {sources_line(first.sources[:1])}" if first.form in _OF_TABLES else first.entry
    return Fact(name, first.entry, asks, _source_said(first.sources, knowledge, settings))


def _same_words(one: str, other: str) -> float:
    """Return the share of two questions' words that both have, beside those that only ask."""
    mine, its = ({word.strip("?.,") for word in text.lower().split()} - _ASKING for text in (one, other))
    return len(mine & its) / max(1, len(mine | its))


def _easiest(group: Sequence[Question]) -> Question:
    return min(group, key=lambda question: question.difficulty)


def _ask(question: Question, knowledge: Knowledge, settings: VoiceSettings) -> Ask:
    """Return a question and its answer as they are said: what is worded for the ear is so here too."""
    answer = answer_to(question.text, question.variant, knowledge)
    heard = answer.by_ear if answer.text == question.key.says else question.key.says
    return Ask(said_aloud(question.text, knowledge, settings), said_aloud(heard, knowledge, settings), question.text)


def _source_said(sources: Sequence[Citation], knowledge: Knowledge, settings: VoiceSettings) -> str:
    """Return the first source of an answer as it is said; a published one by its title."""
    if not sources:
        return ""
    source = sources[0]
    document = knowledge.base.documents.get(source.document)
    if document is not None and document.published:
        return f"Source: {said_aloud(document.title, knowledge, settings)}"
    return f"Source: {said_aloud(sources_line((source,)), knowledge, settings)}"
