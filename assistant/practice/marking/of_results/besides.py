"""What may be said beside the points, and what would be right of another case."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any

from assistant.knowledge.records import Fact
from assistant.practice.marking.finding.elements import named_elements, point
from assistant.practice.marking.of_results.judged import asks_rule
from assistant.practice.marking.of_results.outcomes import outputs_asked, table_results, values_of
from assistant.practice.marking.of_statements.references import referred_by
from assistant.practice.marking.points import Element, Figure, Point
from assistant.practice.marking.questions.asked import Asked, record_of
from assistant.practice.marking.reading.amounts import amounts_of
from assistant.practice.marking.reading.said import plain
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import VARIANT


def others_of(one: Asked, text: str, know: Knowledge) -> Iterable[Point]:
    """Yield what would be right of another case of the same table or bands."""
    result: Any = one.result
    asked_for = know.reader.read(text).amounts
    if isinstance(result, r.BandResult) and result.given == result.given and not asks_rule(result.bands, asked_for):
        for rule in result.bands.rules:
            action = rule.says.partition(": ")[2]
            if action and action != result.rule.says.partition(": ")[2]:
                yield point(action, know)._replace(figures=())
    if isinstance(result, r.ChosenResult):
        for setting in dict.fromkeys(s for _, s, _ in result.limit.chooses if s.isupper() and s != result.setting):
            yield Point(setting, (), (Element(frozenset(), (plain(setting.lower()),), 3.0),))
    if isinstance(result, r.LimitResult):
        yield from _forbidden(result.limits[0].topic, know)
    if isinstance(result, r.TableResult):
        yield from _forbidden(result.table.topic, know)
    for part in table_results(result):
        yield from _other_values(part, text, know)


def denials(one: Asked, know: Knowledge) -> Iterable[Point]:
    """Yield the statements on the subject of an answer that deny something."""
    record = record_of(one.result)
    topic = getattr(record, "topic", "")
    for fact in know.facts_on.get(topic, ()) if topic else ():
        denies = _DENIES.search(fact.says)
        if denies:
            yield point(fact.says[: denies.end()] + _rest(fact.says), know)


def standing_of(result: Any) -> tuple[Figure, ...]:
    """Return where a judged reading stands: itself, and the share by which it is off its reference."""
    if isinstance(result, r.BothResult):
        result = result.first
    if isinstance(result, r.CheckResult) and len(result.checks) == 1:
        return (Figure(result.checks[0].given, result.checks[0].unit),)
    if not isinstance(result, r.BandResult) or result.given != result.given:
        return ()
    own = Figure(result.given, result.bands.unit)
    reference = result.reference
    return (own, Figure(100 * abs(reference - result.given) / reference, "percent")) if reference else (own,)


def _rest(says: str) -> str:
    """Return what a sentence denies, to its end or to what explains it."""
    return re.split(r"[,;:.]|\b(?:because|as|until|unless|with|without|if)\b", _DENIES.split(says, maxsplit=1)[1])[0]


_DENIES = re.compile(r"\b(?:does|do|is|are) not ")


def _forbidden(topic: str, know: Knowledge) -> Iterable[Point]:
    """Yield what a statement on a topic forbids outright: "No pumping: ..."."""
    for fact in know.facts_on.get(topic, ()):
        found = _FORBIDS.match(fact.says)
        told = named_elements(found[1], know) if found else ()
        if found and told:
            yield Point(f"no {found[1]}", (), told[:1])


_FORBIDS = re.compile(r"No (\w+ing):")


def _other_values(result: Any, text: str, know: Knowledge) -> Iterable[Point]:
    """Yield the values that the outputs asked for do not have."""
    for name in outputs_asked(result, text, know):
        output = next(o for o in result.table.outputs if o.id == name)
        has = values_of(result, name)
        true = _has_concepts(output, has, know) | _stated_with(result.table, name, has, know)
        for value, says, _ in output.values:
            if value not in has and value not in ("yes", "no"):
                concept = frozenset((f"={result.table.id}.{name}.{value}",))
                told = _telling(value, output, know)
                if "_" not in value:
                    yield Point(says, (), (Element(concept, (value,), 3.0),))
                if told and told[0].concepts and not told[0].concepts & true:
                    yield Point(says, (), told)


def _telling(value: str, output: Any, know: Knowledge) -> tuple[Element, ...]:
    """Return the word that tells a value from the others: "castor" of the nose wheels, of which two of them speak."""
    says = {v: [e for e in named_elements(each, know) if e.weight > 0.7] for v, each, _ in output.values}
    others = [e.words for v, elements in says.items() if v != value for e in elements]
    own = [e for e in says[value] if e.words not in others]
    return tuple((own or says[value])[:1])


def _has_concepts(output: Any, has: set[str | None], know: Knowledge) -> frozenset[str]:
    return frozenset(c for value, says, _ in output.values if value in has for c in know.phrase(says).concepts)


def true_besides(one: Asked, text: str, know: Knowledge) -> frozenset[str]:
    """Return what statements say together with the results of state tables that a question asks for."""
    return frozenset(
        c for part in table_results(one.result) for name in outputs_asked(part, text, know)
        for c in _stated_with(part.table, name, values_of(part, name), know)
    )  # fmt: skip


def _stated_with(table: Any, name: str, has: set[str | None], know: Knowledge) -> frozenset[str]:
    """Return what statements on a table's topic say together with the values that an output has."""
    values = {f"={table.id}.{name}.{value}" for value in has}
    told = (know.phrase(fact.says).concepts for fact in know.facts_on.get(table.topic, ()))
    return frozenset(
        c
        for concepts in told
        if concepts & values
        for c in concepts
        if c[0] != "=" and know.lexicon.families.get(c) != "braking-mode"
    )


def extras(one: Asked, know: Knowledge) -> Iterable[Figure]:
    """Yield the true figures of the full answer and its working, but for the former ones."""
    past = {(f.value, f.unit) for f in formers(one, know)}
    for check in getattr(one.result, "checks", ()):
        if check.limit.second:
            yield Figure(check.limit.second.value, check.limit.second.unit)
    computed = _WORKED if isinstance(one.result, r.ModelResult) else 0.0
    for number in one.answer.values:
        if (number.value, number.unit) not in past:
            yield Figure(number.value, number.unit, computed)
    for text in (one.answer.text, one.answer.working):
        for amount in amounts_of(know.phrase(_ASIDES.sub("", text)), know):
            yield Figure(amount.value, amount.unit or "")


_WORKED = 0.005
"""How far a figure of somebody's working may be from the computed one, as it is rounded."""
_ASIDES = re.compile(
    r"\b[A-Z]{2,4} [A-Z]?\.?\d+\.\d[\d.]*|Formerly [^;]*;|[Ff]ormerly [^(.]*|On the \S+: [^.]*\.|"
    r"On the \S+ the limit is [^.]*\."
)
"""Paragraphs, former values and those of other variants."""


def of_variants(one: Asked, know: Knowledge) -> Iterable[tuple[str, Figure]]:
    """Yield the figures that the full answer gives for other variants."""
    shown = {variant.show: variant.id for variant in know.base.variants.values()}
    for name, words in _ON_VARIANT.findall(one.answer.text):
        for amount in know.phrase(words).amounts if name in shown else ():
            yield f"{VARIANT}{shown[name]}", Figure(amount.value, amount.unit or "")
    for limit in _referred(one, know):
        for override in know.base.overrides:
            value = know.base.record(limit, override.variant).maximum if override.record == limit else None
            if value:
                yield f"{VARIANT}{override.variant}", Figure(value.value, value.unit)


def judged_otherwise(one: Asked, know: Knowledge) -> Iterable[str]:
    """Yield the variants on which an amount is within a limit that it exceeds here, or the other way round."""
    result: Any = one.result
    check = result.checks[0] if isinstance(result, r.CheckResult) and len(result.checks) == 1 else None
    for override in know.base.overrides if check else ():
        if check and override.record == check.limit.id:
            other = getattr(know.base.record(check.limit.id, override.variant), "maximum", None)
            if other and other.unit == check.unit and (check.given <= other.value) is not check.within:
                yield f"{VARIANT}{override.variant}"


def _referred(one: Asked, know: Knowledge) -> list[str]:
    """Return the limits that a statement leaves its figures to."""
    fact = getattr(one.result, "fact", None)
    return [limit.id for limit in referred_by(fact, know)] if isinstance(fact, Fact) else []


_ON_VARIANT = re.compile(r"On the (\S+?)(?: the limit is|:) (.*?)\.(?=\s|$)")


def formers(one: Asked, know: Knowledge) -> Iterable[Figure]:
    """Yield the former figures of the record that answers."""
    for name in know.base.changes:
        change = know.base.changes[name]
        if change.record in (one.answer.entry, *_referred(one, know)) or name == one.answer.entry:
            for amount in know.phrase(change.formerly).amounts:
                yield Figure(amount.value, amount.unit or "count")
