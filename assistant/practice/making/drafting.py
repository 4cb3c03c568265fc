"""What every maker of questions is given: the knowledge for one variant, the wording, and a source of chance."""

from __future__ import annotations

from collections.abc import Iterable
from random import Random
from typing import Any

from assistant.answering.parts import upper
from assistant.frozen import NamedTuple
from assistant.knowledge.records import Source, Value
from assistant.practice.making.question import Expected
from assistant.practice.making.wording import GOOD, Wording
from assistant.quantities.show import exact_shown
from assistant.resolving.knowing import Knowledge

COMPUTED = 0.03
"""Share by which a computed number may differ; a documented one is exact."""


class Desk(NamedTuple):
    """Where drafts are made.

    chance: seeded by the caller; the same seed gives the same questions. variant: an id, the base's too.
    """

    know: Knowledge
    wording: Wording
    chance: Random
    variant: str

    def record(self, name: str) -> Any:
        """Return a record as it stands for the variant asked about."""
        return self.know.record(name, self.variant)

    def shown(self, value: float, unit: str) -> str:
        """Return an amount as a document writes it."""
        return exact_shown(value, unit, self.know.units)

    def figure(self, value: Value) -> str:
        """Return a stated figure as its document writes it."""
        return self.shown(value.value, value.unit)

    def hint(self, shape: str, sources: Iterable[Source], **names: object) -> str:
        """Return a first help that names the paragraph to think of."""
        first = next(iter(sources), None)
        paragraph = f"{first.document} {first.paragraph}" if first else "the book"
        return self.wording.hint(shape, paragraph=paragraph, **names)

    def unit_name(self, unit: str) -> str:
        """Return a unit as it is said of many."""
        known = self.know.units.get(unit)
        spelt = any(len(word) == 1 for word in known.say_many.split())
        return known.show.strip() if spelt else known.say_many or unit


def expected(value: Value, quantity: str = "") -> Expected:
    """Return a documented figure as the key holds it: exact."""
    return Expected(value.quantity or quantity, value.value, value.unit)


def asked_wordings(
    asks: Iterable[str], desk: Desk, forms: Iterable[str] = (), best_only: bool = False
) -> list[tuple[str, ...]]:
    """Return ways of asking as sentences, the best shapes first. best_only: no headings, no bare words."""
    wanted = frozenset(forms)
    made = [asked for ask in asks if (asked := desk.wording.asked(ask)) and asked.natural]
    found = [each for each in made if (not wanted or each.form in wanted) and (not best_only or each.rank == GOOD)]
    levels = sorted({(each.rank, each.rough) for each in found})
    return [tuple(s for each in found if (each.rank, each.rough) == level for s in each.sentences) for level in levels]


def bare(text: str) -> str:
    """Return what a record is of as it stands within a sentence, without its own remark in brackets."""
    return text.split(" (")[0].rstrip(".") if text.endswith(")") else text.rstrip(".")


def sentence(text: str) -> str:
    """Return a text as a sentence begins."""
    return upper(text.strip())
