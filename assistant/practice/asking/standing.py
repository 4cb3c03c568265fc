"""How each record stands with a learner: what is expected of memory, and what a revision has changed since."""

from __future__ import annotations

from datetime import datetime

from assistant.frozen import NamedTuple
from assistant.practice.asking.pool import Item, Pool
from assistant.practice.asking.wording import parted
from assistant.practice.keeping.answers import word_of
from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import Answered, Latest, Learner
from assistant.practice.recall import RECALLED, Card, expected_recall

_FEW = 6
"""Words up to which what changed stands in a sentence as it is; more are quoted."""
KNOWN, SHAKY, UNKNOWN = "known", "shaky", "unknown"


class Was(NamedTuple):
    """What a revision changed in a record since a learner was asked: before, now, and since which revision.

    declared: the document itself lists it as changed; else it was found by what the record says.
    """

    formerly: str
    now: str
    since: str
    declared: bool = True

    @property
    def line(self) -> str:
        """What is told where a learner's standing is, in one sentence."""
        before = f", formerly {_as_told(self.formerly)}" if self.formerly else ""
        now = f": now {_as_told(self.now)}" if self.now else ""
        return f"Changed since you were last asked ({self.since}){now}{before}."

    @property
    def news(self) -> str:
        """What is told after the answer to its question, in one sentence."""
        before = f": was {_as_told(self.formerly)}" if self.formerly else ""
        now = f", now {_as_told(self.now)}" if self.now else ""
        return f"New since you were last asked ({self.since}){before}{now}."


class Standing(NamedTuple):
    """A record and a learner.

    card: nothing when it was never asked. first: when it was asked for the first time. word: missed, prompted or
    recalled, the last time. was: what a revision changed since then.
    """

    item: Item
    card: Card | None = None
    first: datetime | None = None
    word: str = ""
    ever: bool = False
    """Whether it was ever recalled or prompted."""
    was: Was | None = None

    def recall(self, when: datetime) -> float:
        """Return the expected recall at a time, 0 to 1; what changed must be learned anew."""
        return 0.0 if self.was else expected_recall(self.card, when)

    def fades(self, now: datetime) -> bool:
        """Whether it is due to be asked again: by now, or later on this day of the learner's if not asked on it yet."""
        if self.card is None:
            return False
        due, last = self.card.due.astimezone(now.tzinfo), self.card.last.astimezone(now.tzinfo)
        return due <= now or (due.date() == now.date() and last.date() < now.date())

    def level(self, now: datetime) -> str:
        """Return KNOWN, SHAKY or UNKNOWN: recalled last and not fading; asked; never asked or never known."""
        if self.card is None or not self.ever:
            return UNKNOWN
        settled = self.word == RECALLED and not self.fades(now) and self.was is None
        return KNOWN if settled else SHAKY


def standings(record: Record, learner: Learner, pool: Pool) -> tuple[Standing, ...]:
    """Return how every record of a pool stands with a learner, in the pool's order."""
    asked = record.latest(learner, pool.type_id)
    cards = record.cards(learner, pool.type_id)
    return tuple(_standing(item, asked.get(item.record), cards.get(item.record)) for item in pool.items)


def changed(item: Item, last: Answered) -> Was | None:
    """Return what a revision changed in a record since an answer, if anything."""
    then = dict(last.note.revisions)
    if not then or then == dict(item.revisions):
        return None
    now = dict(item.revisions)
    for change in item.changes:
        document, _, revision = change.since.partition(" ")
        if document in then and document in now and _is_later(revision, then[document], now[document]):
            return Was(change.formerly, change.now, change.since)
    other = parted(last.note.content, item.content)
    if other is None:
        return None
    since = ", ".join(f"{name} {revision}" for name, revision in item.revisions if then.get(name) != revision)
    return Was(*other, since, declared=False)


def _as_told(text: str) -> str:
    return f"“{text}”" if len(text.split()) > _FEW else text


def _standing(item: Item, asked: Latest | None, card: Card | None) -> Standing:
    if asked is None or card is None:
        return Standing(item)
    return Standing(item, card, asked.first, word_of(asked.answered.note), asked.ever, changed(item, asked.answered))


def _is_later(revision: str, then: str, now: str) -> bool:
    """Whether a change came with a later revision than the one that was learned."""
    first = then.split(" + ")[0]
    if revision.isdigit() and first.isdigit():
        return int(revision) > int(first)
    return revision == now.split(" + ")[0] and revision != first
