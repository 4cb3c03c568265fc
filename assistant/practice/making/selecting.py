"""Which questions are wanted: sections by number or plain word, and none like another in one sitting."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Sequence
from math import sqrt
from random import Random

from assistant.practice.making.question import CHECK, FIGURE, LOSS, STATE, Draft, Question
from assistant.practice.making.wording import Wording, content
from assistant.practice.sections import is_section
from assistant.resolving.knowing import Knowledge

_UNDER = re.compile(r"That is with (.+?), and everything not named")
_ALIKE = 0.7
"""Share of what two questions say, from which on they are taken for the same question."""
_SEVERAL, _MOST_SHARED = 2, 0.75
"""Points from which on they are compared, and the share of the fewer that the others hold where both are alike."""
GENERAL = "general"
"""The topic of what is true of all aeroplanes."""


class UnknownTopic(ValueError):
    """A topic that nothing is known on; the message names what there is."""


def entries_on(topics: Iterable[str], know: Knowledge, wording: Wording) -> frozenset[str] | None:
    """Return the records that some topics are about, or None where none was named. Raises UnknownTopic."""
    found: set[str] = set()
    named = False
    for topic in topics:
        named = True
        entries = _on(topic.strip(), know, wording)
        if not entries:
            known = ", ".join(sections(know))
            raise UnknownTopic(f"nothing is known on “{topic}”; name a section ({known}), or a thing such as brakes")
        found.update(entries)
    return frozenset(found) if named else None


def sections(know: Knowledge) -> list[str]:
    """Return the sections that the type's own records belong to."""
    topics = {getattr(know.base.records[name], "topic", "") for name in know.base.order}
    return sorted(topic for topic in topics if is_section(topic))


def is_general(name: str, know: Knowledge) -> bool:
    """Whether a record is true of all aeroplanes: it rests on published documents alone."""
    record = know.base.records[name]
    return bool(record.sources) and know.is_general(record)


def own_records(know: Knowledge) -> frozenset[str]:
    """Return the records that rest on the type's own documents, which are asked when no topic is named."""
    return frozenset(name for name in know.base.order if not is_general(name, know))


def _on(topic: str, know: Knowledge, wording: Wording) -> set[str]:
    own = own_records(know)
    if topic.casefold() == GENERAL:
        return set(know.base.order) - own
    wanted = [topic] if is_section(topic) else wording.topics.get(topic.casefold(), [])
    if wanted:
        return {name for name in own if getattr(know.base.records[name], "topic", "") in wanted}
    sought = _named(topic, know)
    return {name for name in own if sought and _is_about(name, sought, know)}


def _named(text: str, know: Knowledge) -> frozenset[str]:
    """Return the terms that a text names itself, without what they bring along."""
    mentions = know.phrase(text).mentions
    return frozenset(concept for mention in mentions for concept in mention.concepts if concept in know.base.terms)


def _is_about(name: str, sought: frozenset[str], know: Knowledge) -> bool:
    """Whether a record is of some terms, or one of its ways of asking names them all."""
    record = know.base.records[name]
    texts = (getattr(record, "of", ""), getattr(record, "title", ""), *getattr(record, "asks", ()))
    return any(text and sought <= _named(text, know) for text in texts)


def in_turn(drafts: Sequence[Draft], chance: Random) -> list[Draft]:
    """Return drafts in an order that mixes forms and sections, so that a short sitting has of each.

    A form comes up the more often the more there is of it, but less than in proportion: there are hundreds of
    statements, and one set of memory items.
    """
    by_form: dict[str, list[Draft]] = {}
    for draft in chance.sample(list(drafts), len(drafts)):
        by_form.setdefault(draft.form, []).append(draft)
    placed: list[tuple[float, Draft]] = []
    for form in sorted(by_form):
        often = sqrt(len(by_form[form]))
        placed += [((i + chance.random()) / often, draft) for i, draft in enumerate(by_form[form])]
    waiting = [draft for _, draft in sorted(placed, key=lambda pair: pair[0])]
    found: list[Draft] = []
    while waiting:
        found.append(_other_section(waiting, found))
    return found


def _other_section(waiting: list[Draft], before: Sequence[Draft]) -> Draft:
    """Take the first of some drafts that is not of the section of the last one."""
    last = before[-1].section if before else ""
    place = next((i for i, draft in enumerate(waiting[:8]) if draft.section != last), 0)
    return waiting.pop(place)


class Sitting:
    """The questions chosen so far, and whether another one would repeat or give away one of them."""

    def __init__(self, each_entry_once: bool, apart: bool = True) -> None:
        """apart: no two of other records that are answered alike; False where all that can be made is wanted."""
        self._once = each_entry_once
        self._apart = apart
        self._asked: list[tuple[Question, frozenset[str]]] = []
        self._entries: set[str] = set()

    def may_draft(self, draft: Draft) -> bool:
        """Whether a draft's record may still be asked for: once, but for scenarios, which differ by their case."""
        return not self._once or draft.form in (STATE, LOSS) or draft.entry not in self._entries

    def takes(self, question: Question) -> bool:
        """Add a question, unless one chosen before is like it."""
        words = content(question.text)
        if any(self._alike(question, words, other, known) for other, known in self._asked):
            return False
        self._asked.append((question, words))
        self._entries.add(question.entry)
        return True

    def _alike(self, one: Question, words: Collection[str], other: Question, known: frozenset[str]) -> bool:
        if one.text == other.text or (one.key == other.key and one.entry == other.entry and one.form == other.form):
            return True
        if self._apart and one.entry != other.entry and _same_points(one, other):
            return True
        if not self._once:
            return False
        if one.entry == other.entry and _state_told(one) == _state_told(other) != frozenset():
            return True
        shared, together = len(known & set(words)), len(known | set(words))
        if together and shared / together >= _ALIKE:
            return True
        if _tells(one, known) or _tells(other, frozenset(words)):
            return one.section == other.section
        return _same_number(one, other) and bool(set(one.sources) & set(other.sources))


def _same_points(one: Question, other: Question) -> bool:
    """Whether two questions are answered by nearly the same points: a drill whole, and a part of it."""
    if {one.form, other.form} & {STATE, LOSS}:
        return False
    fewer, more = sorted(([content(point) for point in q.key.points] for q in (one, other)), key=len)
    if len(fewer) < _SEVERAL:
        return False
    shared = sum(any(mine and (mine <= theirs or theirs <= mine) for theirs in more if theirs) for mine in fewer)
    return shared >= _MOST_SHARED * len(fewer)


def _tells(question: Question, words: frozenset[str]) -> bool:
    """Whether the words of another question hold the figure that this one asks for, or is held against."""
    figure = question.key.values[:1] if question.form in (FIGURE, CHECK) else ()
    numbers = {word.replace(",", "") for word in words if word[0].isdigit()}
    return bool(figure) and figure[0].unit != "count" and f"{figure[0].value:g}" in numbers


def _state_told(question: Question) -> frozenset[str]:
    """Return the conditions that a full answer says it holds under, whatever their order; nothing where it has none."""
    found = _UNDER.search(question.key.says) if question.form in (STATE, LOSS) else None
    return frozenset(re.split(r", | and ", found[1])) if found else frozenset()


def _same_number(one: Question, other: Question) -> bool:
    """Whether two questions have the same number for an answer, so that one would give the other away."""
    mine, theirs = one.key.values[:1], other.key.values[:1]
    return bool(mine and theirs) and mine[0].value == theirs[0].value and mine[0].unit == theirs[0].unit
