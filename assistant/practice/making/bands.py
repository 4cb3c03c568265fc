"""Questions on readings judged by bands: an amount in each band, and at the edges."""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.knowledge.records import NOT_ASKED, BandRule, Bands
from assistant.practice.making.drafting import Desk, bare
from assistant.practice.making.limits import SPEEDS, step_of
from assistant.practice.making.question import BAND, Draft, Expected, Key
from assistant.resolving.limits import rule_value
from assistant.understanding.states import passes

_PLACES = 6
_AMOUNT = "{amount}"
"""What stands for the reading in a question that a record gives."""


def band_drafts(name: str, desk: Desk) -> Iterator[Draft]:
    """Yield a draft for each band, with a reading that falls into it."""
    record: Bands = desk.record(name)
    if record.quiz == (NOT_ASKED,):
        return
    figure = desk.know.figure(record.reference, desk.variant) if record.reference else None
    edges = [(rule, rule_value(rule, figure.value if figure else None)) for rule in record.rules]
    readings = _readings([edge for rule, edge in edges if rule.test != "otherwise"], record.unit, desk)
    for rule, _ in edges:
        fitting = [reading for reading in readings if _decided(edges, reading) is rule]
        if fitting and rule.rehearsed:
            yield _draft(record, rule, desk.chance.choice(fitting), desk)


def _readings(edges: list[float], unit: str, desk: Desk) -> list[float]:
    found = set(edges)
    for edge in edges:
        step = step_of(edge, unit)
        for side in (-1, 1):
            found.add(round(edge + side * step * desk.chance.randint(1, 4)))
    whole = {reading for reading in found if reading % 1 == 0}
    return sorted(reading for reading in (whole or found) if reading >= 0)


def _decided(edges: list[tuple[BandRule, float]], reading: float) -> BandRule | None:
    return next((rule for rule, edge in edges if rule.test == "otherwise" or passes(rule.test, reading, edge)), None)


def _draft(record: Bands, rule: BandRule, reading: float, desk: Desk) -> Draft:
    amount = desk.shown(round(reading, _PLACES), record.unit)
    key = Key(
        values=(Expected("given", reading, record.unit),),
        points=(rule.says,),
        verdict=rule.verdict,
    )
    hint = desk.hint("paragraph", record.sources)
    if record.quiz:
        asked = tuple(text.replace(_AMOUNT, amount) for text in record.quiz)
        return Draft(BAND, record.id, record.topic, key, (asked,), hint, 2)
    of = re.sub(r", by \w+$", "", bare(record.of))
    shape = "band_at" if record.unit in SPEEDS else "band"  # one does something at a speed, and reads a pressure
    shapes = [desk.wording.sentences(shape, of=of, a=amount)]
    topics = dict.fromkeys(topic for ask in record.asks if (topic := desk.wording.topic(ask)))
    topics |= dict.fromkeys(entry for ask in record.asks if (entry := desk.wording.entry(ask)))
    shapes += [desk.wording.sentences(shape, of=topic, a=amount) for topic in topics]
    return Draft(BAND, record.id, record.topic, key, tuple(shapes), hint, 2)
