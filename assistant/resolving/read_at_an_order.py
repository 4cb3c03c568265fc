"""Whether the one amount of a question is an order of a control, and no speed: "tiller 40 right and full pedal"."""

from __future__ import annotations

from assistant.resolving.deflections import deflections, names_side
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.orders_shared import Deflection


def read_at_an_order(question: Question, know: Knowledge) -> bool:
    """Return whether the amount that a schedule might be read at is the order of a control, to a side."""
    bare = [a for a in question.reading.amounts if a.unit is None]
    if len(bare) != 1 or len(question.reading.amounts) > 1 or not names_side(question.reading.words):
        return False
    return any(_is_order(order, bare[0].start, question) for order in deflections(question, know))


def _is_order(order: Deflection, start: int, question: Question) -> bool:
    at = start and question.reading.words[start - 1] in ("at", "doing")
    return order.place == start and order.side != 0 and not at
