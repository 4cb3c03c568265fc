"""Composers for what an amount is held against: the verdict of a limit or of bands, or that a limit does not hold."""

from __future__ import annotations

from assistant.answering.figures import NOTHING, figure_said, figures_of, formerly, is_limit
from assistant.answering.heard import band_heard
from assistant.answering.parts import (
    Parts,
    as_given,
    conditions_words,
    difference_unit,
    inside,
    joined,
    other_variants,
    rounded,
    stop,
    upper,
)
from assistant.knowledge.records import READING, Source
from assistant.quantities.show import exact_shown, given_shown
from assistant.resolving import results as r
from assistant.resolving import tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import rule_value
from assistant.understanding.clauses import asks_whether

_BY_SPEED = ", by speed"
"""How a name ends whose amount is a speed that something is done at."""
_MORE = {"above": "more than", "below": "less than"}
_DENYING = frozenset({"not", "no", "cannot", "nothing"})


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
    at_it = abs(item.given - item.bound) < NOTHING and not item.beyond
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
    given = f"{_MORE[item.beyond]} {given}" if item.beyond else given
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
    if margin < NOTHING:
        return side if beyond else "exactly at"
    said = given_shown(margin, "factor" if unit == "Mach" else unit, know.units)  # no Mach number is meant
    return f"{'more than ' if beyond else ''}{said} {side}"


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
        found.append(f"On the {variant} {'the limit' if is_limit(other) else 'it'} is {figure_said(other, know)}.")
    found.append(formerly(item.limit.id, question, know).strip())
    return found


def chosen(result: r.ChosenResult, question: Question, know: Knowledge) -> Parts:
    """The setting first, then why it is chosen, with the share that is held against the limit."""
    share = rounded(result.share, "percent", know)
    source = result.limit.sources[0]
    why = f"{result.because.replace('{share}', share)} ({source.document} {source.paragraph})."
    text = f"{result.setting}: {why}"
    return Parts(text, result.limit.sources, result.limit.id, (("share", result.share, "percent"),))


def not_applicable(result: r.NotApplicable, question: Question, know: Knowledge) -> Parts:
    """A limit that does not hold in the state given."""
    record = result.limit
    under = conditions_words(result.conditions, know)
    text = f"No: {record.of}, {figure_said(record, know)}, does not apply with {under}."
    reasons, sources = [], list(record.sources)
    state = {c.input: c.value for c in result.conditions if not c.is_result}
    for table in tables.tables(know.base):
        if any(name.startswith(table.id + ".") for name, _ in record.when):
            now = tables.outputs(table, state, know.base)
            reasons += [says for o in table.outputs for value, says, _ in o.values if now.get(o.id) == value]
            sources.extend(table.sources)
    text += " " + ". ".join(reasons) + "." if reasons else ""
    return Parts(text, tuple(sources), record.id, tuple(figures_of(record)))


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
