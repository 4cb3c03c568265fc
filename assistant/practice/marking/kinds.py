"""The points of each kind of result, and the table of makers."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from typing import Any

from assistant.knowledge.records import Fact, Limit, Value
from assistant.practice.marking.asked import Asked, the_one_asked
from assistant.practice.marking.elements import named_elements, point
from assistant.practice.marking.outcomes import ACTION, cause_points, loss_points, table_points_of, tables_points
from assistant.practice.marking.parts import POLAR, parts_of
from assistant.practice.marking.points import Element, Figure, Point
from assistant.practice.marking.said import plain
from assistant.practice.marking.verdicts import GONE, says_no
from assistant.quantities.amounts import Amount
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge

COMPUTED = 0.03
_ORDINARY = ("normal", "standard", "ordinary", "basic", "plain", "regular")
"""Words by which people call the base variant."""
_SIDES = ("left", "right")
_THRESHOLD = re.compile(r"\b(below|under|above|over|past|up to|from) (?:which|what)\b", re.IGNORECASE)
_THRESHOLDS = {
    "below": "lower", "under": "lower", "up to": "max", "above": "higher", "over": "higher", "past": "higher",
    "from": "",
}  # fmt: skip

_RULE = re.compile(r"\b(?:limit|limits|rule|maximum|minimum|why|figure|how much|how far|what temperature|what pressure|"
                   r"what speed|reason|value|share)\b", re.IGNORECASE)  # fmt: skip

_DUTY = re.compile(
    r"\b(?:does|do|would) (?:the |your )?(?:\w+ ){1,2}(?:demand|require|call for|ask for)\b|"
    r"(?:^|[.?!;:,]\s*)(?:and )?(?:must|need|should|have to|do (?:you|we|i) (?:need|have))\b",
    re.IGNORECASE,
)
"""A yes-or-no question after a duty: what is outside its limit calls for it."""


def _fact(one: Asked, text: str, know: Knowledge) -> list[Point]:
    return _fact_points(one.result.fact, text, know)  # type: ignore[union-attr]


def _fact_points(fact: Fact, text: str, know: Knowledge) -> list[Point]:
    verdict = _lead(fact.says)
    points = [Point(f"{verdict}", verdict=verdict)] if verdict and POLAR.search(text) else []
    made = [point(p, know) for p in fact.points]
    if not verdict and len(parts_of(text)) < 2 and POLAR.search(text) and says_no(fact, text, know):
        points = [Point("no", verdict="no")]
        made = [p._replace(optional=bool(p.negated or p.state or GONE.search(p.text))) for p in made]
        return points + made
    if made and not _all_asked(made, text, know):
        return points + made
    if fact.values:
        return points + [_value_point(v, fact.says, know) for v in fact.values]
    return points + _from_sentence(fact.says, text, know)


def _all_asked(points: list[Point], text: str, know: Knowledge) -> bool:
    """Return whether a question holds all that the points say, so that the rest of the statement is asked for."""
    reading = know.reader.read(text)
    words = frozenset(plain(w) for w in reading.words)
    return all(not p.figures and all(words.issuperset(e.words) for e in p.elements) for p in points)


def _lead(says: str) -> str:
    head = says[:4].lower()
    return "no" if re.match(r"no\b[:,]", head) else "yes" if re.match(r"yes\b[:,]", head) else ""


def _value_point(value: Value, says: str, know: Knowledge) -> Point:
    figure = Figure(value.value, value.unit)
    for stated in point(says, know).figures:
        if stated.value == value.value and stated.unit == value.unit:
            figure = stated
    return Point(_shown(value.value, value.unit, know), (figure,), named_elements(says, know),
                 figures_suffice=True)  # fmt: skip


def _from_sentence(says: str, text: str, know: Knowledge) -> list[Point]:
    """Return the points of a statement that lists none: the clauses of its first sentence."""
    body = re.sub(r"^(?:No|Yes)[:,]\s*", "", says)
    first = re.split(r"(?<=[a-z0-9)])\.\s+(?=[A-Z])", body)[0].rstrip(".")
    given = know.reader.read(text).concepts
    clauses = [
        c.strip() for c in re.split(r"[;:]\s+|,\s+(?:and |or )?|\s+(?:and|so that|because)\s+", first) if c.strip()
    ]
    found = [point(c, know) for c in clauses]
    told = [p for p in found if p.figures or any(given.isdisjoint(e.concepts) for e in p.elements if e.weight > 0.5)]
    return told or [point(first, know)]


def _shown(value: float, unit: str, know: Knowledge) -> str:
    from assistant.quantities.show import exact_shown

    return exact_shown(value, unit, know.units)


def _limit_points(limit: Limit, text: str, know: Knowledge) -> list[Point]:
    threshold = _THRESHOLD.search(text) or _THRESHOLD.search(limit.of)
    if threshold and threshold.group(1).lower() == "from":
        threshold = _THRESHOLD.search(limit.of) or threshold
    sense = _THRESHOLDS[threshold.group(1).lower()] if threshold else ""
    figures = []
    for value, bound in ((limit.minimum, "min"), (limit.maximum, "max"), (limit.value, ""), (limit.second, "max")):
        if value:
            paired = limit.minimum and limit.maximum
            other = "" if threshold else bound
            figures.append(Figure(value.value, value.unit, 0.0, "" if paired else sense or other))
    shown = " and ".join(_shown(f.value, f.unit, know) for f in figures)
    elements = named_elements(limit.of, know)
    return [Point(f"{shown} ({limit.of})", tuple(figures), elements, figures_suffice=True)]


def _limit(one: Asked, text: str, know: Knowledge) -> list[Point]:
    variants = list(dict.fromkeys(know.reader.read(text).variants))
    if len(variants) > 1:
        return _by_variant([(name, know.record(one.answer.entry, name)) for name in variants], text, know)
    result: Any = one.result
    return [p for limit in result.limits for p in _limit_points(limit, one.answer.question, know)]


def _check(one: Asked, text: str, know: Knowledge) -> list[Point]:
    result: Any = one.result
    failed = [c for c in result.checks if not c.within]
    checks = failed or list(result.checks)
    verdict = "no" if bool(failed) is not bool(_DUTY.search(text)) else "yes"
    points = [Point(verdict, verdict=verdict)]
    if _RULE.search(text):
        for check in checks[:1]:
            sense = "max" if check.limit.maximum else "min" if check.limit.minimum else ""
            shown = _shown(check.bound, check.unit, know)
            tolerance = COMPUTED if check.bound_from else 0.0
            points.append(Point(shown, (Figure(check.bound, check.unit, tolerance, sense),), figures_suffice=True))
    if failed and ACTION.search(text) and checks[0].limit.exceeded:
        points.append(point(_unsourced(checks[0].limit.exceeded), know))
    return points


def _unsourced(text: str) -> str:
    plainly = re.sub(r"^If it was exceeded, ", "", text)
    return re.sub(r"\s*\([A-Z]{2,4} [^)]*\)", "", plainly).rstrip(".")


def _bands(one: Asked, text: str, know: Knowledge) -> list[Point]:
    result: Any = one.result
    record, rule = result.bands, result.rule
    if result.given != result.given:
        clauses = re.split(r";\s+|,\s+(?=at |below |over |above )", record.says.rstrip("."))
        made = [point(clause, know) for clause in clauses]
        bounded = _THRESHOLD.search(one.answer.question) is not None
        return [p._replace(figures_suffice=bounded and bool(p.figures)) for p in made]
    if asks_rule(record, know.reader.read(text).amounts):
        return [point(clause, know) for clause in re.split(r";\s+", record.says.rstrip("."))]
    polar = bool(POLAR.search(text))
    good = (rule.verdict == "within") is not bool(_DUTY.search(text))
    points = [Point(v, verdict=v) for v in (("yes" if good else "no"),) if polar]
    condition, _, action = rule.says.partition(": ")
    if _RULE.search(text) or not (polar or (action and ACTION.search(text))):
        figures = _band_figures(result, know)
        said = condition.partition(";")[0]
        if not action and not _RULE.search(text) and not re.search(r"\d", said):
            points.append(point(said, know))
        elif figures:
            points.append(Point(condition, figures, figures_suffice=True, any_figure=True))
    if action and (ACTION.search(text) or not polar):
        points.append(point(action, know))
    return points


def asks_rule(record: Any, amounts: Iterable[Amount]) -> bool:
    """Return whether a question names the edges of bands themselves, and so asks for the rule."""
    shares = {v for rule in record.rules if rule.unit == "percent" for v in (rule.value, 100 - rule.value)}
    edges = {rule.value for rule in record.rules if rule.test != "otherwise"}
    named = [
        a
        for a in amounts
        if (a.unit == "percent" and a.value in shares) or (a.unit == record.unit and a.value in edges)
    ]
    return len(named) > 1


def _band_figures(result: Any, know: Knowledge) -> tuple[Figure, ...]:
    """Return the figure of the band that decides: as the rule says it, as its test has it, as it comes to."""
    record, rule = result.bands, result.rule
    at = record.rules.index(rule)
    decisive = rule if rule.test != "otherwise" else record.rules[max(0, at - 1)]
    sense, turned = ("min", "max") if decisive.test == "below" else ("max", "min")
    found = [Figure(decisive.value, decisive.unit or record.unit, 0.0, sense)]
    if decisive.unit == "percent" and result.reference:
        found.append(Figure(100 - decisive.value, "percent", 0.0, turned))
        found.append(Figure(result.reference * decisive.value / 100, record.unit, 0.0, sense))
    return tuple(found)


def _schedule(one: Asked, text: str, know: Knowledge) -> list[Point]:
    result: Any = one.result
    record = result.schedule
    if result.given != result.given:
        return [
            Point(f"{_shown(y, record.output_unit, know)} at {_shown(x, record.input_unit, know)}",
                  (Figure(y, record.output_unit), Figure(x, record.input_unit)), figures_suffice=True)
            for x, y in record.points if x > 0
        ]  # fmt: skip
    if result.value is not None:
        return [_computed(result.value, record.output_unit, know)]
    if not result.found:
        return [Point("never, it is less at any speed", verdict="no")]
    return [_computed(_edge(low, high, record), record.input_unit, know) for low, high in result.found]


def _edge(low: float, high: float, record: Any) -> float:
    return low if high == float("inf") or (high - low > 1e-9 and low > record.points[0][0]) else high


def _computed(value: float, unit: str, know: Knowledge, label: str = "") -> Point:
    from assistant.quantities.show import round_shown

    shown = round_shown(value, unit, know.units)
    return Point(f"{shown} {label}".strip(), (Figure(value, unit, COMPUTED),),
                 named_elements(label, know) if label else (), figures_suffice=True)  # fmt: skip


def _model(one: Asked, text: str, know: Knowledge) -> list[Point]:
    result: Any = one.result
    points = [_computed(v.value, v.unit, know, v.under if len(result.values) > 1 else "") for v in result.values]
    side = next((s for s in _SIDES if re.search(rf"\b{s}\b", one.answer.text.split(":")[0])), "")
    if side and re.search(r"\b(?:direction|which way|side|left or right)\b", text, re.IGNORECASE):
        points.append(Point(side, (), (Element(frozenset(), (side,), 1.5),), kept=True))
    return points


def _procedure(one: Asked, text: str, know: Knowledge) -> list[Point]:
    result: Any = one.result
    steps = result.procedure.steps
    if result.step is not None:
        steps = (steps[result.step],)
    elif result.memory_only:
        steps = tuple(s for s in steps if s.memory) or steps
    first = _FIRST_STEPS.search(text)
    if first and result.step is None:
        steps = steps[: _SMALL[first.group(1).lower()]]
    return [point(_bare_step(step.do), know) for step in steps]


_FIRST_STEPS = re.compile(r"\bfirst (two|three|four|2|3|4)\b", re.IGNORECASE)
_SMALL = {"two": 2, "three": 3, "four": 4, "2": 2, "3": 3, "4": 4}


def _bare_step(text: str) -> str:
    """Return a step as it is to be done, without what explains it."""
    return re.sub(r"\s*\([^)]*\)|, which .*$", "", text)


def _both(one: Asked, text: str, know: Knowledge) -> list[Point]:
    """Return the points of the first of two statements that are both told: either answers."""
    chosen = the_one_asked(one, text, know)
    return MAKERS[type(chosen.result)](chosen, text, know)


def _change(one: Asked, text: str, know: Knowledge) -> list[Point]:
    result: Any = one.result
    points = []
    for change in result.changes:
        now = point(change.now, know)
        then = point(change.formerly, know)
        points.append(now._replace(text=f"now {change.now}", figures_suffice=True))
        if not re.search(r"\bnow\b", text) or re.search(r"\b(?:was|were|before|former(?:ly)?|previous(?:ly)?)\b", text):
            points.append(then._replace(text=f"formerly {change.formerly}", figures_suffice=True))
    return points


def _variant(one: Asked, text: str, know: Knowledge) -> list[Point]:
    result: Any = one.result
    points = []
    for override in result.overrides:
        record = know.base.record(override.record, result.variant)
        if isinstance(record, Limit):
            points += _limit_points(record, text, know)
        elif override.says:
            points.append(point(override.says, know))
    return points


def _compare(one: Asked, text: str, know: Knowledge) -> list[Point]:
    result: Any = one.result
    return _by_variant(result.limits, text, know)


def _by_variant(limits: Iterable[tuple[str, Any]], text: str, know: Knowledge) -> list[Point]:
    """Return a figure on each variant; once where it is the same on all."""
    points = []
    for name, record in limits:
        show = know.base.variants[name].show
        plainly = _ORDINARY if name == know.variants[0] else ()
        label = Element(frozenset((f"variant:{name}",)), (show.lower(), *map(plain, plainly)), 1.0)
        for made in _limit_points(record, text, know):
            points.append(made._replace(text=f"{show}: {made.text}", elements=(label,), kept=True))
    same = len({p.figures for p in points}) == 1
    return points[:1] if same else points


def _conversion(one: Asked, text: str, know: Knowledge) -> list[Point]:
    result: Any = one.result
    return [Point(one.answer.text, (Figure(result.result, result.target, 0.01),), figures_suffice=True)]


def _not_applicable(one: Asked, text: str, know: Knowledge) -> list[Point]:
    return [Point("no, it does not apply", verdict="no")]


MAKERS: dict[type, Callable[[Asked, str, Knowledge], list[Point]]] = {
    r.FactResult: _fact,
    r.Elsewhere: _fact,
    r.LimitResult: _limit,
    r.CheckResult: _check,
    r.BandResult: _bands,
    r.ScheduleResult: _schedule,
    r.TableResult: table_points_of,
    r.TablesResult: tables_points,
    r.LossResult: loss_points,
    r.CauseResult: cause_points,
    r.ProcedureResult: _procedure,
    r.ModelResult: _model,
    r.ChangeResult: _change,
    r.VariantResult: _variant,
    r.CompareResult: _compare,
    r.Conversion: _conversion,
    r.BothResult: _both,
    r.NotApplicable: _not_applicable,
}
