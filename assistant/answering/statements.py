"""Composers for curated statements, limits, bands, procedures, and for what cannot be answered."""

from __future__ import annotations

from assistant.answering.heard import asked_heard, band_heard, choices_heard, near_heard, unexplained_heard
from assistant.answering.parts import (
    Parts,
    as_given,
    conditions_words,
    difference_unit,
    inside,
    joined,
    named,
    other_variants,
    rounded,
    shown,
    stop,
    upper,
)  # fmt: skip
from assistant.knowledge.base import stated
from assistant.knowledge.records import READING, Bands, Change, Limit, Procedure, Source, Value
from assistant.quantities.show import exact_shown, given_shown
from assistant.resolving import results as r
from assistant.resolving import tables
from assistant.resolving.asserting import is_put_forward
from assistant.resolving.changes import changes_of
from assistant.resolving.claims import believed, believes
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import bound_value, rule_value
from assistant.resolving.variants import asks_whether_more, asks_whether_same
from assistant.understanding.clauses import asks_whether

_NOTHING = 1e-9
"""A margin of which nothing is left."""
_WHETHER = frozenset(("is", "are", "does", "do"))
"""Words that begin a question whether a figure is the one said."""
KNOWN_NEARBY = " Known nearby: "
"""What goes before that which is known of something near what is not."""
_BY_SPEED = ", by speed"
"""How a name ends whose amount is a speed that something is done at."""
_ENDING_NOUN = frozenset({",", "in", "on", "of", "from", "per", "for", "that", "which", "with", "at", "by"})
_DENYING = frozenset({"not", "no", "cannot", "nothing"})
_NO_PLURAL = frozenset({"gas", "its", "this", "has", "is", "as", "was"})


def fact(result: r.FactResult, question: Question, know: Knowledge) -> Parts:
    """A curated statement, as it stands."""
    record = result.fact
    text = stop(record.says)
    if record.says_more:
        text += " " + stop(record.says_more)
    text += _former(record.id, question, know)
    values = tuple((v.quantity, v.value, v.unit) for v in record.values)
    return Parts(text, record.sources, record.id, values)


def limit(result: r.LimitResult, question: Question, know: Knowledge) -> Parts:
    """Stated figures: the amount first, then what it is of."""
    sentences: list[str] = []
    values: list[tuple[str, float, str]] = []
    sources: list[Source] = []
    opening = _whether_it_is(result, question)
    is_ = " it is" if opening else ":"
    for record in result.limits:
        sentences.append(stop(figure_words(record, know)))
        for variant, other in other_variants(record, question, know):
            sentences.append(f"On the {variant}{is_} {_figure(other, know)}.")
        sentences.append(_former(record.id, question, know).strip())
        values.extend(_figures(record))
        sources.extend(record.sources)
    first = result.limits[0]
    here = conditions_words(result.conditions, know)
    if here and first.when and not set(here.split()) - {"braking"} <= set(first.of.split()):
        sentences.append(f"It applies here: {inside(here)}.")
    text = " ".join(s for s in sentences if s)
    return Parts(opening + text, tuple(sources), first.id, tuple(values))


def _whether_it_is(result: r.LimitResult, question: Question) -> str:
    """Return what opens the answer to whether an amount is the figure: "is VLE 260?", "I learned 280: still right?"."""
    if result.claimed is None:
        return ""
    words, first = question.reading.words, result.limits[0]
    asks = words[0] in _WHETHER or "still" in words or believed(question) or believes(question)
    asks = asks or is_put_forward(words) or words[:2] == ("was", "not")
    if not asks:
        return ""
    if not _is_figure_of(first, result.claimed) and any(_is_figure_of(o, result.claimed) for o in result.limits):
        return ""  # it is the figure of another that is told as well
    true = _is_figure_of(first, result.claimed)
    return "Yes, it is " if true else "No, it is "


def _is_figure_of(record: Limit, claimed: float) -> bool:
    figures = (record.maximum, record.minimum, record.value)
    return any(v is not None and abs(v.value - claimed) < _NOTHING for v in figures)


def both(one: Parts, two: Parts) -> Parts:
    """Two statements, one after the other; each says what it is of."""
    if one.text == two.text:
        return one
    return one._replace(
        text=f"{one.text} {two.text}",
        sources=tuple(dict.fromkeys((*one.sources, *two.sources))),
        values=(*one.values, *two.values),
        aloud=(*one.aloud, *two.aloud),
    )


def figure_words(record: Limit, know: Knowledge) -> str:
    """Return a figure with what it is of: "230 kt IAS: maximum speed for …", "2 tillers, one at each side window"."""
    figure = upper(_figure(record, know))
    main = bound_value(record)
    if main and main.unit == "count" and is_counted(record.of):
        return f"{figure} {record.of}"
    if main and main.unit == "factor" and record.of.startswith("share "):
        figure += f" ({100 * main.value:g}%)"
    return f"{figure}: {record.of}"


def is_counted(name: str) -> bool:
    """Return whether a name is of things that a number may stand before: "wheels on the nose leg"."""
    for word in name.replace(",", " ,").split():
        if word in _ENDING_NOUN:
            return False
        if word.endswith("s") and not word.endswith("ss"):
            return word not in _NO_PLURAL
    return False


def _figure(record: Limit, know: Knowledge) -> str:
    basis = f" {record.basis}" if record.basis and _is_speed(record) else ""
    if record.maximum and record.minimum:
        return f"{shown(record.minimum, know)} to {shown(record.maximum, know)}{basis}, ends included"
    main = bound_value(record)
    text = shown(main, know) + basis if main else ""
    if record.second:
        text += f" or {shown(record.second, know)}, whichever is lower"
    return text


def _is_speed(record: Limit) -> bool:
    main = bound_value(record)
    return bool(main and main.unit in ("kt", "m/s", "mph"))


def _figures(record: Limit) -> list[tuple[str, float, str]]:
    found = [v for v in (record.value, record.maximum, record.minimum, record.second) if v]
    if record.minimum and record.maximum:
        found = [record.minimum, record.maximum]
    return [(v.quantity or record.of, v.value, v.unit) for v in found]


def _former(name: str, question: Question, know: Knowledge) -> str:
    overridden = any(o.record == name and o.variant == question.variant for o in know.base.overrides)
    changes = () if overridden else changes_of(name, know)  # what changed is the base type's figure
    return "".join(f" Formerly {c.formerly}; changed with {c.since}." for c in changes)


def check(result: r.CheckResult, question: Question, know: Knowledge) -> Parts:
    """A verdict and the limit's paragraph first, then the margin, then what else holds or follows."""
    sentences: list[str] = []
    values: list[tuple[str, float, str]] = []
    sources: list[Source] = []
    for item in result.checks:
        sentences.append(_holds_there(item, question))
        sentences.append(_verdict(item, question, know))
        values += [(item.limit.of, item.bound, item.unit), ("given", item.given, item.unit),
                   ("margin", abs(item.bound - item.given), difference_unit(item.unit))]  # fmt: skip
        sources.extend(item.limit.sources)
    whole = all(item.within for item in result.checks)
    for item in result.checks:
        held = [exact_shown(other.bound, other.unit, know.units) for other in result.checks if other is not item]
        sentences.extend(_after(item, whole, held, question, know))
    text = " ".join(dict.fromkeys(s for s in sentences if s))
    return Parts(text, tuple(sources), result.checks[0].limit.id, tuple(values))


def _holds_there(item: r.Check, question: Question) -> str:
    """Return what holds under or over a stated figure, after "no" or "yes" where it is asked whether it does."""
    at_it = abs(item.given - item.bound) < _NOTHING and not item.beyond
    under = item.beyond == "below" or (not item.beyond and item.given < item.bound)
    holds = "" if at_it else item.limit.under if under else item.limit.over
    if not holds:
        return ""
    denied = not _DENYING.isdisjoint(holds.split())
    asked = asks_whether(question.reading.words)
    return f"{'No' if denied else 'Yes'}: {inside(holds)}." if asked else stop(holds)


def _verdict(item: r.Check, question: Question, know: Knowledge) -> str:
    source = item.limit.sources[0]
    margin = abs(item.given - item.bound)
    unit = difference_unit(item.unit)
    given = as_given(item.given, item.unit, question, know)
    bound = (
        exact_shown(item.bound, item.unit, know.units) if not item.bound_from else rounded(item.bound, item.unit, know)
    )
    side = item.beyond or ("below" if item.given < item.bound else "above")
    given = f"{item.beyond} {given}" if item.beyond else given
    where = _stands(margin, unit, side, item.beyond, know)
    paragraph = f"{source.document} {source.paragraph}"
    if not is_limit(item.limit):
        return f"{upper(given)} is {where} the stated figure, {bound} ({paragraph}): {item.limit.of}."
    word = "Within" if item.within else "Outside"
    basis = f" {item.limit.basis}" if item.limit.basis and item.unit == "kt" else ""
    computed = f" by {item.bound_from}" if item.bound_from else ""
    stands = f"{given} is {where} the limit, {bound}{basis}{computed} ({item.limit.of})."
    return f"{word} {paragraph}: {stands}"


def _stands(margin: float, unit: str, side: str, beyond: str, know: Knowledge) -> str:
    """Return how an amount stands to a bound: exactly at it, or by how much on which side."""
    if margin < _NOTHING:
        return side if beyond else "exactly at"
    said = given_shown(margin, "factor" if unit == "Mach" else unit, know.units)  # no Mach number is meant
    return f"{'more than ' if beyond else ''}{said} {side}"


def is_limit(record: Limit) -> bool:
    """Return whether a figure bounds something; else it is only stated."""
    return bool(record.maximum or record.minimum)


def _after(item: r.Check, whole: bool, held: list[str], question: Question, know: Knowledge) -> list[str]:
    """Return what else is needed, or what follows. held: the limits that other amounts are within already."""
    found: list[str] = []
    if item.within and whole:
        found.append(_needed_too(tuple(part for part in item.limit.needed if not any(x in part for x in held))))
        if item.limit.within:
            found.append(stop(item.limit.within))
    elif not item.within and item.limit.exceeded:
        found.append(stop(item.limit.exceeded))
    for variant, other in other_variants(item.limit, question, know):
        found.append(f"On the {variant} {'the limit' if is_limit(other) else 'it'} is {_figure(other, know)}.")
    found.append(_former(item.limit.id, question, know).strip())
    return found


def not_applicable(result: r.NotApplicable, question: Question, know: Knowledge) -> Parts:
    """A limit that does not hold in the state given."""
    record = result.limit
    text = f"No: {record.of}, {_figure(record, know)}, does not apply with {conditions_words(result.conditions, know)}."
    reasons, sources = [], list(record.sources)
    state = {c.input: c.value for c in result.conditions if not c.is_result}
    for table in tables.tables(know.base):
        if any(name.startswith(table.id + ".") for name, _ in record.when):
            now = tables.outputs(table, state, know.base)
            reasons += [says for o in table.outputs for value, says, _ in o.values if now.get(o.id) == value]
            sources.extend(table.sources)
    text += " " + ". ".join(reasons) + "." if reasons else ""
    return Parts(text, tuple(sources), record.id, tuple(_figures(record)))


def bands(result: r.BandResult, question: Question, know: Knowledge) -> Parts:
    """A reading's verdict, or the whole rule when the question gives none."""
    record = result.bands
    if result.given != result.given:
        return Parts(stop(upper(record.says)), record.sources, record.id)
    given = as_given(result.given, record.unit, question, know)
    given = f"{result.beyond} {given}" if result.beyond else given
    word = {"within": "Within", "outside": "Outside"}.get(result.rule.verdict, "")
    source = record.sources[0]
    document = know.base.documents.get(source.document)
    sorts = record.opens == READING or (document and document.published)  # such a rule forbids nothing
    bounds = word and not sorts
    lead = f"{word} {source.document} {source.paragraph}: " if bounds else ""
    joint = " at" if record.of.endswith(_BY_SPEED) and not result.beyond else ","
    given = "" if given and result.rule.says.startswith(given) else f"{joint} {given}"
    named_so = f"{record.of.removesuffix(_BY_SPEED)}{given}: "
    named_so = named_so if lead else upper(named_so)
    text = f"{lead}{named_so}{stop(result.rule.says)}"
    aloud = ((text, band_heard(named_so.removesuffix(": "), result.rule.says)),)
    values = [("given", result.given, record.unit)]
    working = ""
    if result.reference:
        percent = 100 * (result.reference - result.given) / result.reference
        side = "below" if percent >= 0 else "above"
        text += f" That is {abs(percent):.1f}% {side} {exact_shown(result.reference, record.unit, know.units)}."
        values = [("reference", result.reference, record.unit), *values, ("difference", percent, "percent")]
        edges = [rule_value(rule, result.reference) for rule in record.rules if rule.test != "otherwise"]
        working = "bands begin at " + ", ".join(given_shown(e, record.unit, know.units) for e in edges)
        values += [("edge", e, record.unit) for e in edges]
    else:
        values += [("edge", rule.value, rule.unit or record.unit) for rule in record.rules if rule.test != "otherwise"]
    if record.says:
        text += f" Rule: {stop(record.says)}"
    if record.needed and result.rule.verdict == "within":
        text = " ".join(t for t in (text, _needed_too(record.needed, result.rule.says)) if t)
    return Parts(text, record.sources, record.id, tuple(values), working, aloud=aloud)


def _needed_too(needed: tuple[str, ...], said: str = "") -> str:
    """Return what else is needed, but for what was said already."""
    parts = [part.removeprefix("and ") for part in needed if part.split(" (")[0] not in said]
    return f"Also needed: {joined(parts)}." if parts else ""


def procedure(result: r.ProcedureResult, question: Question, know: Knowledge) -> Parts:
    """Steps in order; the step asked for leads."""
    record = result.procedure
    whole = procedure_words(record)
    if result.step is None:
        return Parts(whole, record.sources, record.id)
    if result.step >= len(record.steps):
        return Parts(f"That was the last step of: {record.title}.", record.sources, record.id)
    step = record.steps[result.step]
    values = tuple((v.quantity, v.value, v.unit) for v in step.values)
    place = f"Step {result.step + 1} of {len(record.steps)}: {record.title}."
    text = f"{upper(stop(step.do))} {place if result.alone else f'That is step {result.step + 1} of: {whole}'}"
    return Parts(text, record.sources, record.id, values)


def procedure_words(record: Procedure) -> str:
    """Return a procedure whole: its title, then its numbered steps, those from memory marked."""
    steps = [
        f"{i}. {'(memory) ' if step.memory else ''}{upper(step.do.rstrip('.'))}"
        for i, step in enumerate(record.steps, 1)
    ]
    return f"{record.title}: " + "; ".join(steps) + "."


def changes(result: r.ChangeResult, question: Question, know: Knowledge) -> Parts:
    """What a revision changed: the value now, then the former one."""
    words = [_change_words(c) for c in result.changes]
    text = " ".join(words)
    sources = tuple(s for c in result.changes for s in c.sources)
    return Parts(text, sources, result.changes[0].id if result.changes else "", tuple(_now(result.changes, know)))


def _change_words(change: Change) -> str:
    return f"{upper(change.subject)}: now {change.now}, formerly {change.formerly} (changed with {change.since})."


def _now(changed: tuple[Change, ...], know: Knowledge) -> list[tuple[str, float, str]]:
    found = []
    for change in changed:
        for text in (change.now, change.formerly):
            amounts = know.phrase(text).amounts
            if amounts:
                found.append((change.subject, amounts[0].value, amounts[0].unit or "count"))
    return found


def variant(result: r.VariantResult, question: Question, know: Knowledge) -> Parts:
    """Everything in which a variant differs."""
    base = know.variants[0]
    words: list[str] = []
    aloud: list[tuple[str, str]] = []
    sources: list[Source] = []
    for override in result.overrides:
        record = know.base.record(override.record, result.variant)
        before = know.base.records[override.record]
        if override.says:
            words.append(override.says.rstrip("."))
        elif isinstance(record, Limit):
            own = f"{record.of} {_figure(record, know)}"
            words.append(f"{own} ({know.base.variants[base].show}: {_figure(before, know)})")
            aloud.append((words[-1], own))
        sources.extend(override.sources)
    name = know.base.variants[result.variant].show
    text = f"On the {name}: {'; '.join(words)}."
    if all(o in result.overrides for o in know.base.overrides if o.variant == result.variant):
        text += f" Everything else is as on the {know.base.variants[base].show}."
    entry = result.overrides[0].record if result.overrides else ""
    return Parts(text, tuple(sources), entry, aloud=tuple(aloud))


def compare(result: r.CompareResult, question: Question, know: Knowledge) -> Parts:
    """One figure on all variants."""
    records = [(know.base.variants[name].show, record) for name, record in result.limits]
    same = len({(x.maximum, x.minimum, x.value) for _, x in records}) == 1
    first = records[0][1]
    values = tuple(v for _, record in records for v in _figures(record))
    sources = tuple(s for _, record in records for s in record.sources)
    verdict = _compared_verdict(result, same, question)
    if same:
        figure = _figure(first, know)
        return Parts(f"{verdict}{figure if verdict else upper(figure)} on both: {first.of}.", sources, first.id, values)
    told = "; ".join(f"{name}: {_figure(record, know)}" for name, record in records)
    aloud = ((told, "; ".join(f"on the {name}: {_figure(record, know)}" for name, record in records)),)
    text = f"{verdict}{told} ({first.of})."
    figures = [stated(record) for _, record in records]
    if len(figures) == 2 and all(isinstance(f, Value) for f in figures) and figures[0] and figures[1]:
        gap = abs(figures[0].value - figures[1].value)
        text += f" The difference is {exact_shown(round(gap, 6), difference_unit(figures[0].unit), know.units)}."
    return Parts(text, sources, first.id, values, aloud=aloud)


def _compared_verdict(result: r.CompareResult, same: bool, question: Question) -> str:
    """Return the yes or no to whether figures are the same, or to the first being the greater or the less."""
    more = asks_whether_more(question)
    if more is not None:
        figures = [stated(record) for _, record in result.limits[:2]]
        one, other = (f.value if isinstance(f, Value) else 0.0 for f in figures)
        return "" if not more else "Yes: " if (one - other) * more > 0 else "No: "
    asked = None if question.reading.words[0] == "difference" else asks_whether_same(question.reading.words)
    return "" if asked is None else "Yes: " if asked == same else "No: "


def elsewhere(result: r.Elsewhere, question: Question, know: Knowledge) -> Parts:
    """A label of another fleet, answered with this type's own."""
    name = know.base.type_info.name
    text = f"The {name} has no “{result.label.upper()}”. {stop(result.fact.says)}"
    values = tuple((v.quantity, v.value, v.unit) for v in result.fact.values)
    return Parts(text, result.fact.sources, result.fact.id, values)


def needed(result: r.Needed, question: Question, know: Knowledge) -> Parts:
    """A question back, for what is missing."""
    what, whose = joined(list(result.missing)), named(result.record.of)
    single = len(result.missing) == 1
    if isinstance(result.record, Bands):
        text = f"Give {what}, to be judged: {result.record.of}."
    elif isinstance(result.record, Limit):
        text = f"Give {what}, to be held against the limit: {result.record.of}."
    else:
        text = f"Give {what}: {whose} depends on it." if single else f"Give {what}. {upper(whose)} depends on them."
    asked = result.names[0] if result.names else ""
    aloud = ((text, asked_heard(result.missing[0], asked, know)),) if result.missing else ()
    if result.hint:
        text += " " + stop(result.hint)
    return Parts(text, result.record.sources, result.record.id, needs=result.names, aloud=aloud)


def choices(result: r.Choices, question: Question, know: Knowledge) -> Parts:
    """What may be chosen, numbered."""
    names = [name for _, name in result.options]
    if len(names) == 1 and not result.about:
        return Parts(f"Do you mean: {names[0]}? Say yes, or ask in other words.", choices=tuple(names))
    listed = [f"{i}. {name}" for i, name in enumerate(names, 1)]
    lead = result.about or "Which do you mean?"
    aloud = (("; ".join(listed), choices_heard(result.options, know)),)
    return Parts(f"{lead} {'; '.join(listed)}.", choices=tuple(names), aloud=aloud)


def declined(result: r.Declined, question: Question, know: Knowledge) -> Parts:
    """That it is not known, what was not understood, and what is known nearby."""
    if result.why == "empty":
        return Parts("I read no question there. Ask about the landing gear, the brakes or the steering.")
    if result.why == "too long":
        return Parts("That is longer than I read. Ask it in a sentence or two.")
    if result.why and not result.near:
        return Parts(stop(result.why))
    words = joined([f"“{w}”" for w in result.words[:3]])
    text = f"I don't have that: nothing loaded explains {words}." if words else "I don't have that in what is loaded."
    text = stop(result.why) if result.why else text
    aloud = [(f"explains {words}.", f"explains {unexplained_heard(result.words[:3])}.")] if words else []
    if result.near:
        text += f"{KNOWN_NEARBY}{'; '.join(result.near)}."
        aloud.append(("; ".join(result.near), near_heard(result.near, know)))
    return Parts(text, aloud=tuple(aloud))
