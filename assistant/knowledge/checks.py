"""What must hold of a whole base, beyond the shape of each record: one small function a rule, in one list."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from itertools import pairwise
from typing import Any

from assistant.knowledge.base import Base, stated
from assistant.knowledge.named import Named, every_record, of_kind
from assistant.knowledge.paragraph_checks import paragraphs_are_listed, paragraphs_exist, sources_of
from assistant.knowledge.problems import Problem, suggestion
from assistant.knowledge.table_checks import (
    conditions_exist,
    input_conditions,
    inputs_are_sound,
    last_is_otherwise,
    tables_are_complete,
    tables_use_what_exists,
    word_groups_exist,
)

_NO_LESS = frozenset({
    "kt", "m/s", "mph", "Mach", "psi", "bar", "kPa", "mm", "s", "min", "h", "kg", "MJ", "count", "factor",
})  # fmt: skip
"""Units of what cannot be less than nothing."""
_SPEEDS = frozenset(("IAS", "CAS", "TAS", "ground speed"))
_OF_SPEED = frozenset(("kt", "m/s", "mph", "km/h", "Mach"))
Check = Callable[[Base], Iterable[Problem]]


def check_base(base: Base) -> list[Problem]:
    """Every problem of a base as a whole; an empty list means that it is fit to answer."""
    return [problem for check in CHECKS for problem in check(base)]


def sources_exist(base: Base) -> Iterator[Problem]:
    """Every source cites a listed document; each unknown one is named once, where it is first cited."""
    citing: dict[str, list[Named]] = {}
    for named in every_record(base):
        for document in {source.document for source in sources_of(named.record)}:
            if base.lacks(document, base.documents):
                citing.setdefault(document, []).append(named)
    for document, cited in sorted(citing.items()):
        more = f" (as do {len(cited) - 1} more)" if len(cited) > 1 else ""
        advice = suggestion(document, base.documents, "list it under 'documents:'")
        yield cited[0].problem(f"cites the unknown document '{document}'{more}", advice)


def type_is_described(base: Base) -> Iterator[Problem]:
    """A type says what it is, and its labels of other fleets lead to records."""
    if not base.compiled["type"]:
        if not base.may_stand_unread("type:"):
            advice = "add 'type:' with id and name to the type's type.yaml"
            yield Problem("type.yaml", 0, "no type is described", advice)
        return
    info = base.type_info
    file, line = base.place(info.id, "type")
    named = Named(info, f"type '{info.id}'", file, line)
    folder = file.split("/")[0]
    if file.endswith("/type.yaml") and info.id != folder:
        yield named.problem(f"stands in the folder '{folder}'", "give the folder and the id one name")
    for _, record in info.not_here:
        if base.lacks(record, base.records):
            yield named.unknown("record", record, base.records, "name a record of this type")


def documents_are_dated(base: Base) -> Iterator[Problem]:
    """A document that is not a published source states its revision and the date it took effect."""
    for named in of_kind(base, "documents"):
        document = named.record
        if document.published:
            continue
        if not document.revision:
            yield named.problem("has no 'revision'", "add it as the document states it")
        if not document.effective:
            yield named.problem("has no date of effect", "add 'effective:' as in 2026-01-31")
        elif not is_date(document.effective):
            what = f"'effective' is no day of the calendar (got '{document.effective[:60]}')"
            yield named.problem(what, "write it as in 2026-01-31")


def references_exist(base: Base) -> Iterator[Problem]:
    """Every id of another record exists and is of a fitting kind."""
    for named in every_record(base):
        for what, name in _references(named.record):
            if base.lacks(name, base.records):
                yield named.unknown("record", name, base.records, f"'{what}' takes the id of a record")
    for named in (*of_kind(base, "bands"), *of_kind(base, "schedules")):
        figure = getattr(named.record, "reference", "") or getattr(named.record, "top", "")
        if figure in base.records and stated(base.records[figure]) is None:
            yield named.problem(f"refers to '{figure}', which states no figure", "name a limit")


def outlines_lead_somewhere(base: Base) -> Iterator[Problem]:
    """Every item of a briefing is a record, or an output of a state table."""
    outputs = {
        f"{table.id}.{output.id}"
        for table in map(base.records.__getitem__, base.ids("tables"))
        for output in table.outputs
    }
    for named in of_kind(base, "outlines"):
        for _, name, _ in named.record.items:
            if base.lacks(name, base.records) and name not in outputs:
                yield named.unknown("record", name, base.records, "name a record, or table.output")


def terms_are_known(base: Base) -> Iterator[Problem]:
    """Terms imply terms, and set inputs to values; inputs have terms."""
    for named in of_kind(base, "terms"):
        for name in named.record.implies:
            if base.lacks(name, base.terms):
                yield named.unknown("term", name, base.terms, "'implies' takes ids of terms")
        yield from input_conditions(named, _settable(named, base), base)
    for named in of_kind(base, "inputs"):
        if base.lacks(named.record.term, base.terms):
            yield named.unknown("term", named.record.term, base.terms, "add it under 'terms:'")
        shown = named.record.read_on
        if shown and base.lacks(shown, base.terms):
            yield named.unknown("term", shown, base.terms, "'read_on' takes the id of a term")


def _settable(named: Named, base: Base) -> list[tuple[str, str]]:
    """What a term sets or shows; the language, which all types share, may name inputs that this type does without."""
    shared = named.file.startswith("language/")
    told = (*named.record.sets, *named.record.shows, *named.record.ends)
    return [pair for pair in told if not shared or pair[0] in base.inputs]


def limits_state_something(base: Base) -> Iterator[Problem]:
    """A limit has a maximum, a minimum or a value, and its minimum is not above its maximum."""
    for named in of_kind(base, "limits"):
        limit = named.record
        if stated(limit) is None:
            yield named.problem("states no figure", "add 'maximum:', 'minimum:' or 'value:'")
        if limit.maximum and limit.minimum:
            if limit.maximum.unit != limit.minimum.unit:
                yield named.problem("has two units for one range", "write both in one unit")
            elif limit.minimum.value > limit.maximum.value:
                yield named.problem("has its minimum above its maximum", "exchange them")
        yield from _figures_fit(named)
        if limit.second and not limit.maximum:
            yield named.problem("has a 'second' without a 'maximum'", "add 'maximum:'")


def _figures_fit(named: Named) -> Iterator[Problem]:
    """The most that a limit states is not below nothing where nothing is; with the basis of a speed it is a speed."""
    limit = named.record
    for figure in (limit.maximum, limit.minimum, limit.second, limit.value):
        if figure is None:
            continue
        if figure.value < 0 and figure.unit in _NO_LESS and figure is not limit.minimum:
            less = f"states less than nothing ({figure.value:g} {figure.unit})"
            yield named.problem(less, "write it without the sign")
        if limit.basis in _SPEEDS and figure.unit not in _OF_SPEED:
            yield named.problem(f"has the basis '{limit.basis}' in {figure.unit}", "give a speed, or another basis")


def bands_decide(base: Base) -> Iterator[Problem]:
    """Tests are in the unit of the bands or shares of a figure, and none stands after 'otherwise'."""
    for named in of_kind(base, "bands"):
        bands = named.record
        for rule in bands.rules:
            if (
                rule.test != "otherwise"
                and rule.unit != bands.unit
                and not (rule.unit == "percent" and bands.reference)
            ):
                yield named.problem(f"tests in {rule.unit} what is read in {bands.unit}", "use one unit")
        yield from last_is_otherwise(named, [rule.test for rule in bands.rules])


def said_otherwise(base: Base) -> Iterator[Problem]:
    """What is also said is said of a point."""
    for named in of_kind(base, "facts"):
        for point, _ in named.record.also_said:
            if point not in named.record.points:
                points = named.record.points
                yield named.unknown("point", point, points, "'also_said' repeats a point of its record, word for word")


def schedules_rise(base: Base) -> Iterator[Problem]:
    """A schedule has at least two breakpoints, with its inputs strictly rising."""
    for named in of_kind(base, "schedules"):
        points = named.record.points
        if len(points) < 2:
            yield named.problem("has fewer than two points", "give at least its two ends")
        for (before, _), (after, _) in pairwise(points):
            if after <= before:
                yield named.problem(f"goes from {before:g} to {after:g}", "let the inputs rise strictly")


def models_are_bound(base: Base) -> Iterator[Problem]:
    """Defaults and choices of a model are numbers or records, and what it solves for are its inputs."""
    for named in of_kind(base, "models"):
        inputs = [given.id for given in named.record.inputs]
        for name in named.record.inverse:
            if name not in inputs:
                yield named.unknown("input", name, inputs, f"its inputs are {', '.join(inputs)}")
        for given in named.record.inputs:
            if given.choices and given.default == "both":
                continue
            if given.default and not _is_number(given.default) and base.lacks(given.default, base.records):
                yield named.unknown(
                    "default", given.default, base.records, "give a number or the id of a record"
                )
            for _, bound, _ in given.choices:
                if not _is_number(bound) and base.lacks(bound, base.records):
                    yield named.unknown("record", bound, base.records, "give a number or the id of a record")


def overrides_fit(base: Base) -> Iterator[Problem]:
    """Overrides are of variants that exist."""
    for override, name in zip(base.overrides, base.ids("overrides"), strict=True):
        if base.lacks(override.variant, base.variants):
            file, line = base.place(name, "overrides")
            named = Named(override, f"override '{name}'", file, line)
            yield named.unknown("variant", override.variant, base.variants, "add it under 'variants:'")


CHECKS: tuple[Check, ...] = (
    sources_exist,
    paragraphs_are_listed,
    paragraphs_exist,
    type_is_described,
    documents_are_dated,
    references_exist,
    outlines_lead_somewhere,
    terms_are_known,
    word_groups_exist,
    conditions_exist,
    limits_state_something,
    bands_decide,
    said_otherwise,
    schedules_rise,
    inputs_are_sound,
    tables_use_what_exists,
    tables_are_complete,
    models_are_bound,
    overrides_fit,
)


def is_date(text: str) -> bool:
    """Whether a text is a day of the calendar, as 2026-01-31."""
    from datetime import date

    try:
        return date.fromisoformat(text).isoformat() == text
    except ValueError:
        return False


def _is_number(text: str) -> bool:
    return text.replace(",", "").replace(".", "", 1).lstrip("+-").isdecimal()


def _references(record: Any) -> Iterator[tuple[str, str]]:
    """(field, id) of each other record that a record names; those of overrides are read with them."""
    if hasattr(record, "variant"):
        return
    for field in ("why", "reference", "each", "top", "record"):
        name = getattr(record, field, "")
        if name:
            yield field, name
