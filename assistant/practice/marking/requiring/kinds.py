"""The points of each kind of result, and the table of makers."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from typing import Any

from assistant.conversation.reading_turns.readings import variants_meant
from assistant.knowledge.records import Fact, Limit, Value
from assistant.practice.marking.finding.elements import concepts_in, named_elements, point
from assistant.practice.marking.of_results.case_verdicts import case_verdict
from assistant.practice.marking.of_results.derived import adds_up, instead_of
from assistant.practice.marking.of_results.item_points import ItemResult, item_points
from assistant.practice.marking.of_results.judged import (
    COMPUTED,
    THRESHOLD,
    bands_points,
    check_points,
    chosen_points,
    shown_as,
)
from assistant.practice.marking.of_results.outcomes import cause_points, loss_points, table_points_of, tables_points
from assistant.practice.marking.of_statements.by_law import law_points
from assistant.practice.marking.of_statements.labels import label_asked
from assistant.practice.marking.of_statements.manner import ASKS_HOW, of_its_manner
from assistant.practice.marking.of_statements.references import with_figure
from assistant.practice.marking.of_statements.sentences import from_sentence
from assistant.practice.marking.of_statements.step_named import step_after, step_named
from assistant.practice.marking.of_statements.step_reasons import reasons_of
from assistant.practice.marking.of_statements.steps_asked import of_step
from assistant.practice.marking.of_statements.verdicts import GONE, says_no
from assistant.practice.marking.points import Element, Figure, Point, State
from assistant.practice.marking.questions.asked import Asked, the_one_asked
from assistant.practice.marking.questions.parts import CASES, POLAR, parts_of
from assistant.practice.marking.questions.turned import asks_loss, loss_verdict
from assistant.practice.marking.reading.amounts import amounts_of
from assistant.practice.marking.reading.said import plain
from assistant.practice.marking.requiring.steps_by_part import points_by_clause
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import VARIANT

_ORDINARY = ("normal", "standard", "ordinary", "basic", "plain", "regular")
"""Words by which people call the base variant."""
_SIDES = ("left", "right")
_THRESHOLDS = {
    "below": "lower", "under": "lower", "up to": "max", "above": "higher", "over": "higher", "past": "higher",
    "from": "",
}  # fmt: skip


def _fact(one: Asked, text: str, know: Knowledge) -> list[Point]:
    part = one.answer.question
    label = label_asked(one.result.fact, part, know) if part in parts_of(text) else None  # type: ignore[union-attr]
    made = _fact_points(one.result.fact, text, know)  # type: ignore[union-attr]
    made = made if label is None or label else _fact_points(one.result.fact, part, know)  # type: ignore[union-attr]
    return [of_its_manner(made[0])] if len(made) == 1 and ASKS_HOW.search(part) else made


def _fact_points(fact: Fact, text: str, know: Knowledge) -> list[Point]:
    by_law = law_points(fact, text, know)
    if by_law:
        return by_law
    label = label_asked(fact, text, know)
    if label:
        return label
    verdict = _lead(fact.says)
    points = [Point(f"{verdict}", verdict=verdict)] if verdict and POLAR.search(text) else []
    made = [with_figure(point(p, know), fact, know) for p in fact.points]
    case = _case_verdict(fact, text, know) if not verdict and POLAR.search(text) and len(parts_of(text)) < _TWO else ""
    if case:
        return [Point(case, verdict=case), *(p._replace(optional=True) for p in made)]
    polar = len(parts_of(text)) < 2 and not CASES.search(text) and POLAR.search(text)
    if not verdict and polar and says_no(fact, text, know):
        points = [Point("no", verdict="no")]
        reason = know.reader.read(text).has("why")
        made = from_sentence(fact.says, text, know) if reason and _all_asked(made, text, know) else made
        made = [p._replace(optional=not reason and _is_spare(p, fact)) for p in made]
        return points + made
    if not verdict and adds_up(fact, text):
        return [Point("yes", verdict="yes"), *(p._replace(optional=True) for p in made)]
    if made and not _all_asked(made, text, know):
        return points + made
    if fact.values and "how" in fact.answers and _MANNER.search(text) and len(parts_of(text)) < _TWO:
        told = from_sentence(fact.says, text, know)
        manner = [p for p in told if not p.figures]
        return points + [p._replace(optional=p.optional or (bool(p.figures) and bool(manner))) for p in told]
    if fact.values and not points and _are_given(fact, text, know):
        told = [_as_state(p._replace(figures=()), know) for p in from_sentence(fact.says, text, know)]
        return [p for p in told if p.elements] or [_value_point(v, fact.says, know) for v in fact.values]
    if fact.values:
        return points + [_value_point(v, fact.says, know) for v in fact.values]
    return points + from_sentence(fact.says, text, know)


def _as_state(made: Point, know: Knowledge) -> Point:
    """Return a point that says that a thing does not work as the state that it is."""
    found = _INACTIVE.match(made.text)
    named = concepts_in(found[1], know) if found else frozenset()
    return made._replace(state=State(named, False)) if named else made


_INACTIVE = re.compile(r"([\w-]+(?: [\w-]+)?) (?:is|are) (?:inactive|unavailable|inoperative)\b", re.IGNORECASE)


def _are_given(fact: Fact, text: str, know: Knowledge) -> bool:
    """Return whether a question gives all the figures of a statement, so that what it says of them is asked for."""
    given = {(a.value, a.unit) for a in amounts_of(know.reader.read(text), know)}
    return {(v.value, v.unit) for v in fact.values} <= given


def _case_verdict(fact: Fact, text: str, know: Knowledge) -> str:
    """Return the yes or no to a question by a loss, or on one of the cases of a statement."""
    case = case_verdict(fact, text, know)
    if case and asks_loss(text):
        return "no" if case == "yes" else "yes"
    return case or loss_verdict(fact, text)


_TWO = 2
_MANNER = re.compile(r"\bhow (?:do|does|is|are|can|would|should|must|will|to)\b", re.IGNORECASE)
"""What asks how something is done, and for no figure."""


def _all_asked(points: list[Point], text: str, know: Knowledge) -> bool:
    """Return whether a question holds all that the points say, so that the rest of the statement is asked for."""
    reading = know.reader.read(text)
    words = frozenset(plain(w) for w in reading.words)
    return all(not p.figures and all(words.issuperset(e.words) for e in p.elements) for p in points)


def _is_spare(made: Point, fact: Fact) -> bool:
    """Return whether a bare no says a point too: it denies as the no does, or tells why."""
    why = fact.says.partition(" because ")[2]
    return bool(made.negated or made.state or GONE.search(made.text)) or bool(why and made.text in why)


def _lead(says: str) -> str:
    head = says[:4].lower()
    return "no" if re.match(r"no\b[:,]", head) else "yes" if re.match(r"yes\b[:,]", head) else ""


def _value_point(value: Value, says: str, know: Knowledge) -> Point:
    figure = Figure(value.value, value.unit)
    for stated in point(says, know).figures:
        if stated.value == value.value and stated.unit == value.unit:
            figure = stated
    return Point(shown_as(value.value, value.unit, know), (figure,), named_elements(says, know),
                 figures_suffice=True)  # fmt: skip


_NEEDED = re.compile(r"^time that .* must\b", re.IGNORECASE)


def _limit_points(limit: Limit, text: str, know: Knowledge) -> list[Point]:
    threshold = THRESHOLD.search(text) or THRESHOLD.search(limit.of)
    if threshold and threshold.group(1).lower() == "from":
        threshold = THRESHOLD.search(limit.of) or threshold
    sense = _THRESHOLDS[threshold.group(1).lower()] if threshold else ""
    stated = "min" if _NEEDED.search(limit.of) else ""  # what must last so long may last longer
    figures = []
    for value, bound in ((limit.minimum, "min"), (limit.maximum, "max"), (limit.value, stated), (limit.second, "max")):
        if value:
            paired = limit.minimum and limit.maximum
            other = "" if threshold else bound
            figures.append(Figure(value.value, value.unit, 0.0, "" if paired else sense or other))
    shown = " and ".join(shown_as(f.value, f.unit, know) for f in figures)
    elements = named_elements(limit.of, know)
    return [Point(f"{shown} ({limit.of})", tuple(figures), elements, figures_suffice=True)]


def _limit(one: Asked, text: str, know: Knowledge) -> list[Point]:
    variants = list(dict.fromkeys(variants_meant(know.reader.read(text), know)))
    if len(variants) > 1:
        return _by_variant([(name, know.record(one.answer.entry, name)) for name in variants], text, know)
    result: Any = one.result
    return [p for limit in result.limits for p in _limit_points(limit, one.answer.question, know)]


def _schedule(one: Asked, text: str, know: Knowledge) -> list[Point]:
    result: Any = one.result
    record = result.schedule
    if result.given != result.given:
        return [
            Point(f"{shown_as(y, record.output_unit, know)} at {shown_as(x, record.input_unit, know)}",
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
    points = [p._replace(side=v.under if v.under in _SIDES else "") for p, v in zip(points, result.values, strict=True)]
    side = next((s for s in _SIDES if re.search(rf"\b{s}\b", one.answer.text.split(":")[0])), "")
    if side and re.search(r"\b(?:direction|which way|side|left or right)\b", text, re.IGNORECASE):
        points.append(Point(side, (), (Element(frozenset(), (side,), 1.5),), kept=True))
    return points


def _procedure(one: Asked, text: str, know: Knowledge) -> list[Point]:
    result: Any = one.result
    steps = result.procedure.steps
    told = points_by_clause(one, text, know) if result.step is not None else []
    if told:
        return told
    if result.step is not None:
        steps = (steps[result.step],)
    elif result.memory_only:
        steps = tuple(s for s in steps if s.memory) or steps
    named = step_named(text, [step.do for step in steps]) if result.step is None else None
    after = step_after(text, [step.do for step in result.procedure.steps], know)
    if after is not None or named is not None:
        steps = (result.procedure.steps[after] if after is not None else steps[named or 0],)
    first = _FIRST_STEPS.search(text)
    if first and len(steps) > 1 and result.step is None:
        steps = steps[: _SMALL[first.group(1).lower()]]
    reasons = reasons_of(steps[0].do, one.answer.question, know) if result.step is not None else []
    if reasons:
        return reasons
    made = [point(_bare_step(step.do), know) for step in steps]
    instead = instead_of(made[0], text, know) if result.step is not None and len(made) == 1 else []
    if instead:
        return instead
    part = one.answer.question
    return [of_step(p, part, know) for p in made] if result.step is not None and part != text else made


_FIRST_STEPS = re.compile(r"\bfirst (two|three|four|2|3|4)\b", re.IGNORECASE)
_SMALL = {"two": 2, "three": 3, "four": 4, "2": 2, "3": 3, "4": 4}


def _bare_step(text: str) -> str:
    """Return a step as it is to be done, without what explains it."""
    return re.sub(r"\s*\([^)]*\)|, which .*$", "", text)


def _both(one: Asked, text: str, know: Knowledge) -> list[Point]:
    """Return the points of the first of two statements that are both told: either answers."""
    chosen = the_one_asked(one, text, know)
    return MAKERS[type(chosen.result)](chosen, text, know)


_FORMERLY = re.compile(
    r"\b(?:was|were|before|former(?:ly)?|previous(?:ly)?|replaced?|superseded?|used? to)\b", re.IGNORECASE
)


_SINCE = re.compile(r"\b(?:which|what) (?:revision|issue|amendment)\b|\bsince when\b", re.IGNORECASE)


def _change(one: Asked, text: str, know: Knowledge) -> list[Point]:
    result: Any = one.result
    points = []
    for change in result.changes:
        now = point(change.now, know)
        then = point(change.formerly, know)
        points.append(now._replace(text=f"now {change.now}", figures_suffice=True))
        if not re.search(r"\bnow\b", text) or _FORMERLY.search(text):
            points.append(then._replace(text=f"formerly {change.formerly}", figures_suffice=True))
    if _SINCE.search(text):
        told = dict.fromkeys(c.since for c in result.changes)
        points += [point(since, know, kept=True)._replace(figures_suffice=True) for since in told]
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
        label = Element(frozenset((f"{VARIANT}{name}",)), (show.lower(), *map(plain, plainly)), 1.0)
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
    r.CheckResult: check_points,
    r.BandResult: bands_points,
    r.ChosenResult: chosen_points,
    r.ScheduleResult: _schedule,
    r.TableResult: table_points_of,
    ItemResult: item_points,
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
