"""From what answers a question to what must be said: the points of each kind of result."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from typing import Any

from assistant.answering.states import output_words
from assistant.knowledge.records import Fact, Limit, StateTable, Value
from assistant.practice.marking.points import Element, Figure, Need, Point, State
from assistant.practice.marking.requests import POLAR, Asked, asked, parts_of
from assistant.practice.marking.said import amounts_of, plain, sense_of
from assistant.practice.marking.wording import NEGATORS
from assistant.quantities.amounts import Amount
from assistant.resolving import results as r
from assistant.resolving.choosing import candidates
from assistant.resolving.knowing import Knowledge
from assistant.understanding.reading import Mention, Reading
from assistant.understanding.states import Condition

COMPUTED = 0.03
_ORDINARY = ("normal", "standard", "ordinary", "basic", "plain", "regular")
"""Words by which people call the base variant."""
_DIRECTIONS = frozenset(map(plain, (
    "up", "down", "on", "off", "left", "right", "behind", "front", "open", "closed", "above", "below", "before", "after",
    "set", "inboard", "rearward", "forward", "outboard", "all", "first", "once", "beside", "only", "both", "again", "steady",
)))  # fmt: skip
_COMMON = frozenset(("in", "mod", "brak", "mode", "to", "into"))
_SIDES = ("left", "right")
_THRESHOLD = re.compile(r"\b(below|under|above|over|past|up to|from) (?:which|what)\b", re.IGNORECASE)
_THRESHOLDS = {"below": "lower", "under": "lower", "up to": "max", "above": "higher", "over": "higher", "past": "higher",
               "from": ""}  # fmt: skip
_RULE = re.compile(r"\b(?:limit|limits|rule|maximum|minimum|why|figure|how much|how far|what temperature|what pressure|"
                   r"what speed|reason|value)\b", re.IGNORECASE)  # fmt: skip
_DUTY = re.compile(r"(?:^|[.?!;:,]\s*)(?:and )?(?:must|need|should|have to|do (?:you|we|i) (?:need|have))\b", re.IGNORECASE)
"""A yes-or-no question after a duty: what is outside its limit calls for it."""
_ACTION = re.compile(r"\b(?:what must|what do|what should|what is (?:to be )?done|what then|what has to|which setting|"
                     r"what (?:is|are) the action|what happens|who do|what now|must be done|do about|what (?:do|would|should|must) (?:you|we|i) (?:use|do)|instead)\b", re.IGNORECASE)


def required(text: str, know: Knowledge) -> Need | None:
    """Return what an answer to a question must hold, or None where nothing loaded answers it."""
    found = asked(text, know)
    if not found:
        return None
    reading = know.reader.read(text)
    groups = [_named_only(_MAKERS[type(one.result)](one, text, know), reading, know) for one in found]
    groups = [_labelled(group, one, found, text, know) for group, one in zip(groups, found, strict=True)]
    points = _distinct(p for group in groups for p in _without_given(group, reading, len(found) > 1))
    points = _weighed(points)
    answers = [one.answer for one in found]
    return Need(
        question=reading,
        points=tuple(points),
        ordered=any(isinstance(one.result, r.ProcedureResult) or _in_order(one, text) for one in found),
        allowed=amounts_of(reading, know),
        extra=tuple(f for one in found for f in _extra(one, know)),
        former=tuple(f for one in found for f in _former(one, know)),
        others=tuple(p for one in found for p in _others(one, text, know)),
        said=frozenset(c for a in answers for c in know.phrase(a.text).concepts),
        expected=" ".join(dict.fromkeys(a.text for a in answers)),
        sources=tuple(dict.fromkeys(s for a in answers for s in a.sources)),
        change=any(isinstance(one.result, r.ChangeResult) for one in found),
        unanswered=_has_open_part(text, found),
        within=_is_within(found[0].result),
        loss=any(isinstance(one.result, r.LossResult) for one in found) or reading.asks_loss,
        polar=bool(POLAR.search(text)),
    )


def _is_within(result: r.Result) -> bool | None:
    """Return whether a judged reading is within its limit."""
    if isinstance(result, r.CheckResult):
        return all(c.within for c in result.checks)
    if isinstance(result, r.BandResult) and result.given == result.given:
        return result.rule.verdict == "within"
    return None


def _has_open_part(text: str, found: tuple[Asked, ...]) -> bool:
    """Return whether a question asks for two figures or statements and one alone was found."""
    parts = parts_of(text)
    single = len(found) == 1 and isinstance(found[0].result, (r.LimitResult, r.ScheduleResult))
    return len(parts) > 1 and single


def _weighed(points: list[Point]) -> list[Point]:
    """Let words that several points share tell less of each: "leave the gear down" of two steps."""
    counts: dict[tuple[str, ...], int] = {}
    for p in points:
        for words in {e.words for e in p.elements}:
            counts[words] = counts.get(words, 0) + 1
    return [
        p._replace(elements=tuple(e._replace(weight=e.weight * 0.4) if counts[e.words] > 1 else e for e in p.elements))
        if any(counts[e.words] == 1 and not e.given and e.weight > 0.5 for e in p.elements) else p
        for p in points
    ]  # fmt: skip


def _labelled(points: list[Point], one: Asked, found: tuple[Asked, ...], text: str, know: Knowledge) -> list[Point]:
    """Give the points of a part the words by which its question differs from the other parts'."""
    if len(found) < 2 or text in (other.answer.question for other in found):
        return points
    own = _named(one.answer.question, know)
    others = {w for other in found if other is not one for e in _named(other.answer.question, know) for w in e.words}
    labels = tuple(e for e in own if not others.intersection(e.words))
    return [p._replace(labels=labels) for p in points]


def _in_order(one: Asked, text: str) -> bool:
    steps = isinstance(one.result, r.FactResult) and "steps" in one.result.fact.answers
    return steps and bool(re.search(r"\b(?:order|sequence|steps|first|in turn)\b", text, re.IGNORECASE))


def _distinct(points: Iterable[Point]) -> list[Point]:
    return list({(p.text, p.verdict, p.figures): p for p in points}.values())


def _named_only(points: list[Point], reading: Reading, know: Knowledge) -> list[Point]:
    """Keep the points that a question names, where it names some of those that differ by a name alone."""
    if len(points) < 3:
        return points
    labels = [_family(p, know) for p in points]
    if not any(labels):
        return points
    words = frozenset(plain(w) for w in reading.words)
    named = [p for p, label in zip(points, labels, strict=True) if not label.isdisjoint(words)]
    return named if len(named) > 1 else points


def _family(point: Point, know: Knowledge) -> frozenset[str]:
    """Return the words that name modes and settings in a point."""
    families, results = know.lexicon.families, _result_names(know)
    return frozenset(
        w for e in point.elements for w in e.words
        if w not in _COMMON
        and any(families.get(c) in ("braking-mode", "autobrake-setting") or c in results or c[0] == "=" for c in e.concepts)
    )  # fmt: skip


def _result_names(know: Knowledge) -> frozenset[str]:
    """Return the results that state tables may have, by the name of their values: "emergency"."""
    tables = [know.base.records[name] for name in know.base.ids("tables")]
    values = {value for t in tables for o in t.outputs for value, _, _ in o.values}
    return frozenset(v for v in values if know.lexicon.families.get(v) != "colour")


def _without_given(points: list[Point], reading: Reading, in_part: bool) -> list[Point]:
    """Mark what the question itself says, and leave out the points that say nothing else."""
    made = _asked_by_name([_with_given(p, reading) for p in points], 1 if in_part else 2)
    told = [p for p in made if p.figures or p.verdict or p.state or p.kept or any(not e.given for e in p.elements)]
    return told or [p._replace(elements=tuple(e._replace(given=False) for e in p.elements)) for p in made]


def _asked_by_name(points: list[Point], least: int) -> list[Point]:
    """Drop the points that a question passes over where it names others: "for a wet runway and a contaminated one"."""
    counts: dict[tuple[str, ...], int] = {}
    for p in points:
        for words in {e.words for e in p.elements}:
            counts[words] = counts.get(words, 0) + 1
    named = [p for p in points if any(e.given and e.weight > 0.7 and counts[e.words] == 1 for e in p.elements)]
    passed = [p for p in points if not any(e.given for e in p.elements)]
    shared = any(n > 1 for n in counts.values())
    return [p for p in points if p not in passed] if len(named) >= least and shared else points


def _with_given(point: Point, reading: Reading) -> Point:
    if point.state is not None:
        return point
    words = frozenset(plain(w) for w in reading.words)
    concepts = frozenset(c for m in reading.mentions for c in (m.concepts if point.kept else m.concepts | m.implied))
    elements = [_given(e, words, concepts) for e in point.elements]
    if any(not e.given and not _is_way(e) for e in elements):
        elements = [e._replace(given=False) if _is_way(e) else e for e in elements]
    if point.kept and all(e.given for e in elements):
        return point
    return point._replace(elements=tuple(elements))


def _is_way(element: Element) -> bool:
    return len(element.words) == 1 and element.words[0] in _DIRECTIONS


def _given(element: Element, words: frozenset[str], concepts: frozenset[str]) -> Element:
    """Return an element as the question leaves it: given by it, or without the words that it holds."""
    if all(w in words for w in element.words):
        return element._replace(given=True)
    result = any(c[0] == "=" for c in element.concepts)
    if not result and not element.concepts.isdisjoint(concepts) and not _DIRECTIONS.intersection(element.words):
        return element._replace(given=True)
    left = tuple(w for w in element.words if w not in words)
    return element._replace(words=left)


# --- points from words


def point(text: str, know: Knowledge, tolerance: float = 0.0, **fields: Any) -> Point:
    """Return a phrase of the knowledge as a point: its figures, its telling words."""
    reading = know.phrase(text)
    amounts = amounts_of(reading, know)
    figures = tuple(_figure(a, reading, tolerance) for a in amounts)
    elements = tuple(_elements(reading, amounts, know))
    fields.setdefault("state", _absence(reading, elements, know) if not figures else None)
    return Point(text, figures, elements, negated=_is_negated(reading), **fields)


def _absence(reading: Reading, elements: tuple[Element, ...], know: Knowledge) -> State | None:
    """Return the state that "no autobrake" is: a thing that is not there."""
    words = reading.words
    told = [m for m in reading.mentions if not m.weak]
    if words[:1] == ("no",) and len(told) == 1 and len(elements) == 1:
        return State(_concepts(" ".join(words[1:]), know) or told[0].concepts, False)
    fails = re.match(r"(.+?) (?:does|do) not (?:work|steer)\b", " ".join(words))
    if fails and _concepts(fails.group(1), know):
        return State(_concepts(fails.group(1), know), False)
    keeps = next((i for i, word in enumerate(words) if word in ("keep", "keeps")), 0)
    named = know.phrase(" ".join(words[keeps + 1 :])).mentions if keeps else ()
    return State(named[0].concepts, True) if len(named) == 1 and not named[0].weak else None


def _concepts(text: str, know: Knowledge) -> frozenset[str]:
    return frozenset(c for m in know.phrase(text).mentions if not m.weak for c in m.concepts)


def _figure(amount: Amount, reading: Reading, tolerance: float) -> Figure:
    before = " ".join(reading.words[max(0, amount.start - 4) : amount.start])
    after = " ".join(reading.words[amount.end : amount.end + 3])
    return Figure(amount.value, amount.unit or "", tolerance, sense_of(before, after))


def _elements(reading: Reading, amounts: Iterable[Amount], know: Knowledge) -> Iterable[Element]:
    covered: set[int] = {i for a in amounts for i in range(a.start, a.end)}
    for mention in reading.mentions:
        if not covered.isdisjoint(mention.taken):
            continue
        full = [plain(reading.words[i]) for i in mention.taken]
        words = tuple(w for i, w in zip(mention.taken, full, strict=True) if _tells(reading.words[i], know)) or tuple(full)
        telling = _DIRECTIONS.intersection(words)
        if mention.weak:
            continue
        covered.update(mention.taken)
        group = _group(mention.start, reading)
        lack = len(mention.taken) > 1 and reading.words[mention.taken[0]] in ("no", "not", "without")
        yield Element(_narrow(mention, know), words, _weight(mention, bool(telling), know), denied=lack, group=group)
    starts = {a.start for a in amounts}
    for i, word in enumerate(reading.words):
        bound = not starts.isdisjoint((i + 1, i + 2)) and plain(word) in ("above", "below", "up", "after", "before")
        if i in covered or bound:
            continue
        if plain(word) in _DIRECTIONS:
            yield Element(frozenset(), (plain(word),), 1.5, group=_group(i, reading))
        elif word[0].isalpha() and len(word) > 3 and word not in know.lexicon.weak:
            yield Element(frozenset(), (plain(word),), 0.4, group=_group(i, reading))


def _tells(word: str, know: Knowledge) -> bool:
    return word not in know.lexicon.weak or plain(word) in _DIRECTIONS


def _group(place: int, reading: Reading) -> int:
    return sum(1 for word in reading.words[:place] if word in ("and", ";", ","))


def _narrow(mention: Mention, know: Knowledge) -> frozenset[str]:
    """Return the concepts of a mention, without those that another brings along or that nearly any state may stand for."""
    brought = {c for own in mention.concepts if own[0] == "=" for c in know.lexicon.implied.get(own, ())}
    exact = frozenset(c for c in mention.concepts - brought if not (c[0] == "@" and "." not in c))
    return exact or mention.concepts


def _named(text: str, know: Knowledge) -> tuple[Element, ...]:
    reading = know.phrase(text)
    return tuple(_elements(reading, amounts_of(reading, know), know))


def _weight(mention: Mention, telling: bool, know: Knowledge) -> float:
    kinds = {know.lexicon.kinds.get(c) for c in mention.concepts}
    if telling and len(mention.taken) == 1:
        return 1.5
    if kinds <= {"quantity", "ask", "ask!", "filler"}:
        return 0.3
    if mention.passing:
        return 0.6
    return max(0.8, min(3.0, know.matcher.mention_weight(mention)))


def _is_negated(reading: Reading) -> bool:
    named = {i for m in reading.mentions if not m.weak for i in m.taken}
    return any(word in NEGATORS for i, word in enumerate(reading.words) if i not in named)


# --- points from each kind of result


def _fact(one: Asked, text: str, know: Knowledge) -> list[Point]:
    return _fact_points(one.result.fact, text, know)  # type: ignore[union-attr]


def _fact_points(fact: Fact, text: str, know: Knowledge) -> list[Point]:
    verdict = _lead(fact.says)
    points = [Point(f"{verdict}", verdict=verdict)] if verdict and POLAR.search(text) else []
    if fact.points:
        return points + [point(p, know) for p in fact.points]
    if fact.values:
        return points + [_value_point(v, fact.says, know) for v in fact.values]
    return points + _from_sentence(fact.says, verdict, text, know)


def _lead(says: str) -> str:
    head = says[:4].lower()
    return "no" if re.match(r"no\b[:,]", head) else "yes" if re.match(r"yes\b[:,]", head) else ""


def _value_point(value: Value, says: str, know: Knowledge) -> Point:
    figure = Figure(value.value, value.unit)
    for stated in point(says, know).figures:
        if stated.value == value.value and stated.unit == value.unit:
            figure = stated
    return Point(_shown(value.value, value.unit, know), (figure,), _named(says, know),
                 figures_suffice=True)  # fmt: skip


def _from_sentence(says: str, verdict: str, text: str, know: Knowledge) -> list[Point]:
    """Return the points of a statement that lists none: the clauses of its first sentence."""
    body = re.sub(r"^(?:No|Yes)[:,]\s*", "", says)
    first = re.split(r"(?<=[a-z0-9)])\.\s+(?=[A-Z])", body)[0].rstrip(".")
    given = know.reader.read(text).concepts
    clauses = [c.strip() for c in re.split(r"[;:]\s+|,\s+(?:and |or )?|\s+(?:and|so that|because)\s+", first) if c.strip()]
    found = [point(c, know) for c in clauses]
    told = [p for p in found if p.figures or any(given.isdisjoint(e.concepts) for e in p.elements if e.weight > 0.5)]
    return told or [point(first, know)]


def _shown(value: float, unit: str, know: Knowledge) -> str:
    from assistant.quantities.show import exact_shown

    return exact_shown(value, unit, know.units)


def _limit_points(limit: Limit, text: str, know: Knowledge) -> list[Point]:
    threshold = _THRESHOLD.search(text) or _THRESHOLD.search(limit.of)
    sense = _THRESHOLDS[threshold.group(1).lower()] if threshold else ""
    figures = []
    for value, bound in ((limit.minimum, "min"), (limit.maximum, "max"), (limit.value, ""), (limit.second, "max")):
        if value:
            paired = limit.minimum and limit.maximum
            figures.append(Figure(value.value, value.unit, 0.0, "" if paired else sense or bound))
    shown = " and ".join(_shown(f.value, f.unit, know) for f in figures)
    elements = _named(limit.of, know)
    return [Point(f"{shown} ({limit.of})", tuple(figures), elements, figures_suffice=True)]


def _limit(one: Asked, text: str, know: Knowledge) -> list[Point]:
    variants = list(dict.fromkeys(know.reader.read(text).variants))
    if len(variants) > 1:
        return _by_variant([(name, know.record(one.answer.entry, name)) for name in variants], text, know)
    return [p for limit in one.result.limits for p in _limit_points(limit, text, know)]  # type: ignore[union-attr]


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
    if failed and _ACTION.search(text) and checks[0].limit.exceeded:
        points.append(point(_unsourced(checks[0].limit.exceeded), know))
    return points


def _unsourced(text: str) -> str:
    return re.sub(r"\s*\([A-Z]{2,4} [^)]*\)", "", text).rstrip(".")


def _bands(one: Asked, text: str, know: Knowledge) -> list[Point]:
    result: Any = one.result
    record, rule = result.bands, result.rule
    if result.given != result.given:
        return [point(clause, know) for clause in re.split(r";\s+|,\s+(?=at |below |over |above )", record.says.rstrip("."))]
    if _asks_rule(record, know.reader.read(text).amounts):
        return [point(clause, know) for clause in re.split(r";\s+", record.says.rstrip("."))]
    polar = bool(POLAR.search(text))
    good = (rule.verdict == "within") is not bool(_DUTY.search(text))
    points = [Point(v, verdict=v) for v in (("yes" if good else "no"),) if polar]
    condition, _, action = rule.says.partition(": ")
    if _RULE.search(text) or not polar:
        figures = _band_figures(result, know)
        if figures:
            points.append(Point(condition, figures, figures_suffice=True, any_figure=True))
    if action and (_ACTION.search(text) or not polar):
        points.append(point(action, know))
    return points


def _asks_rule(record: Any, amounts: Iterable[Amount]) -> bool:
    """Return whether a question names the edges of bands themselves, and so asks for the rule."""
    edges = {v for rule in record.rules if rule.unit == "percent" for v in (rule.value, 100 - rule.value)}
    return sum(1 for a in amounts if a.unit == "percent" and a.value in edges) > 1


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
                 _named(label, know) if label else (), figures_suffice=True)  # fmt: skip


def _model(one: Asked, text: str, know: Knowledge) -> list[Point]:
    result: Any = one.result
    points = [_computed(v.value, v.unit, know, v.under if len(result.values) > 1 else "") for v in result.values]
    side = next((s for s in _SIDES if re.search(rf"\b{s}\b", one.answer.text.split(":")[0])), "")
    if side and re.search(r"\b(?:direction|which way|side|left or right)\b", text, re.IGNORECASE):
        points.append(Point(side, (), (Element(frozenset(), (side,), 1.5),), kept=True))
    return points


def _table(one: Asked, text: str, know: Knowledge) -> list[Point]:
    return _table_points(one.result, text, know)


def _tables(one: Asked, text: str, know: Knowledge) -> list[Point]:
    return [p for result in one.result.results for p in _table_points(result, text, know)]  # type: ignore[union-attr]


def _table_points(result: Any, text: str, know: Knowledge) -> list[Point]:
    names = _outputs_asked(result, text, know)
    points = []
    for row in result.rows:
        said = dict(row.outputs)
        points += [_output_point(result.table, name, said[name], know) for name in names if name in said]
        if _ACTION.search(text):
            points += [p for name in names if name in said for p in _action(result.table, name, said[name], know)]
    return points


def _outputs_asked(result: Any, text: str, know: Knowledge) -> list[str]:
    """Return the outputs that the last sentence of a question names; those it was read as asking for otherwise."""
    asking = [s for s in re.split(r"(?<=[.?!:;])\s+", text.strip()) if s][-1:]
    concepts = know.phrase(asking[0]).concepts if asking else frozenset()
    found = [o.id for o in result.table.outputs if _names_output(o, concepts, know)]
    found = [name for name in found if name in result.asked or len(found) > 1] or found
    if found and set(found) < set(result.asked):
        return found
    asked_for = {*result.asked, *found}
    if asking and len(asked_for) < min(len(parts_of(asking[0])), len(result.table.outputs)) == 2:
        return [o.id for o in result.table.outputs][:2]
    return list(dict.fromkeys([*result.asked, *found])) or [o.id for o in result.table.outputs]


def _names_output(output: Any, concepts: frozenset[str], know: Knowledge) -> bool:
    label = know.phrase(output.label)
    told = [m for m in label.mentions if not m.weak]
    own = {c for m in told for c in m.concepts} - {"brake", "gear"}
    return bool(own & concepts)


def _output_point(table: StateTable, name: str, value: str, know: Knowledge) -> Point:
    words = output_words(table, name, value).split(": ")[0]
    output = next(o for o in table.outputs if o.id == name)
    if value in ("yes", "no"):
        subject = next(m.concepts for m in know.phrase(output.label).mentions if not m.weak)
        made = point(words, know, state=State(subject, value == "yes"))
        return made._replace(negated=value == "no", figures=())
    return _by_value(point(words, know, kept=True), value, know)


def _action(table: StateTable, name: str, value: str, know: Knowledge) -> list[Point]:
    """Return what a result says to do: "the parking brake does not hold: use chocks"."""
    action = output_words(table, name, value).partition(": ")[2]
    return [point(action, know)] if action else []


def _by_value(made: Point, value: str, know: Knowledge) -> Point:
    """Let the bare name of a result do for it: "emergency" for EMERGENCY braking."""
    elements = tuple(
        e._replace(concepts=e.concepts | know.phrase(value).concepts, words=(plain(value),)) if plain(value) in e.words else e
        for e in made.elements
    )
    return made._replace(elements=elements)


def _loss(one: Asked, text: str, know: Knowledge) -> list[Point]:
    """Return what a document lists as lost, where one does; else what the tables say that no longer works."""
    listed = _listed_loss(one, text, know)
    if listed:
        return listed
    result: Any = one.result
    lost = [(t, o, v) for t, o, v in result.lost if v == "no" or o in ("mode", "steering")] or result.lost
    points = [_output_point(t, o, v, know) for t, o, v in lost]
    for fact in result.facts:
        points += [point(p, know) for p in fact.points]
    return points or [point(one.answer.text, know)]


def _listed_loss(one: Asked, text: str, know: Knowledge) -> list[Point]:
    for candidate in candidates(one.question, know)[:8]:
        fact = getattr(candidate.result, "fact", None)
        if fact and fact.points and candidate.match and not candidate.match.barred and candidate.score >= 0.6:
            return [point(p, know) for p in fact.points]
    return []


def _cause(one: Asked, text: str, know: Knowledge) -> list[Point]:
    from assistant.answering.parts import conditions_words

    result: Any = one.result
    sets = sorted(result.sets, key=len)
    if result.single:
        sets = [s for s in sets if len(s) == len(sets[0])] if sets else []
    return [
        point(conditions_words(tuple(Condition(n, v) for n, v in chosen), know), know) for chosen in sets if chosen
    ] or [point(one.answer.text, know)]


def _procedure(one: Asked, text: str, know: Knowledge) -> list[Point]:
    result: Any = one.result
    steps = result.procedure.steps
    if result.step is not None:
        steps = (steps[result.step],)
    elif result.memory_only:
        steps = tuple(s for s in steps if s.memory) or steps
    return [point(_bare_step(step.do), know) for step in steps]


def _bare_step(text: str) -> str:
    """Return a step as it is to be done, without what explains it."""
    return re.sub(r"\s*\([^)]*\)|, which .*$", "", text)


def _change(one: Asked, text: str, know: Knowledge) -> list[Point]:
    result: Any = one.result
    points = []
    for change in result.changes:
        now = point(change.now, know)
        then = point(change.formerly, know)
        points.append(now._replace(text=f"now {change.now}", figures_suffice=True))
        if not re.search(r"\bnow\b", text):
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
    return _by_variant(one.result.limits, text, know)  # type: ignore[union-attr]


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


_MAKERS: dict[type, Callable[[Asked, str, Knowledge], list[Point]]] = {
    r.FactResult: _fact,
    r.Elsewhere: _fact,
    r.LimitResult: _limit,
    r.CheckResult: _check,
    r.BandResult: _bands,
    r.ScheduleResult: _schedule,
    r.TableResult: _table,
    r.TablesResult: _tables,
    r.LossResult: _loss,
    r.CauseResult: _cause,
    r.ProcedureResult: _procedure,
    r.ModelResult: _model,
    r.ChangeResult: _change,
    r.VariantResult: _variant,
    r.CompareResult: _compare,
    r.Conversion: _conversion,
    r.NotApplicable: _not_applicable,
}


# --- what may be said besides, and what may not


def _others(one: Asked, text: str, know: Knowledge) -> Iterable[Point]:
    """Yield what would be right of another case of the same table or bands."""
    result: Any = one.result
    asked_for = know.reader.read(text).amounts
    if isinstance(result, r.BandResult) and result.given == result.given and not _asks_rule(result.bands, asked_for):
        for rule in result.bands.rules:
            action = rule.says.partition(": ")[2]
            if rule is not result.rule and action:
                yield point(action, know)._replace(figures=())
    for part in (result,) if isinstance(result, r.TableResult) else getattr(result, "results", ()):
        yield from _other_values(part, text, know)


def _other_values(result: Any, text: str, know: Knowledge) -> Iterable[Point]:
    """Yield the values that the outputs asked for do not have."""
    for name in _outputs_asked(result, text, know):
        output = next(o for o in result.table.outputs if o.id == name)
        has = {dict(row.outputs).get(name) for row in result.rows}
        for value, says, _ in output.values:
            if value not in has and value not in ("yes", "no"):
                concept = frozenset((f"={result.table.id}.{name}.{value}",))
                told = tuple(e for e in _named(says, know) if e.weight > 0.7)[:1]
                if "_" not in value:
                    yield Point(says, (), (Element(concept, (value,), 3.0),))
                if told and told[0].concepts and not told[0].concepts & _has_concepts(output, has, know):
                    yield Point(says, (), told)


def _has_concepts(output: Any, has: set[str | None], know: Knowledge) -> frozenset[str]:
    return frozenset(c for value, says, _ in output.values if value in has for c in know.phrase(says).concepts)




def _extra(one: Asked, know: Knowledge) -> Iterable[Figure]:
    formers = {(f.value, f.unit) for f in _former(one, know)}
    for number in one.answer.values:
        if (number.value, number.unit) not in formers:
            yield Figure(number.value, number.unit)
    for text in (one.answer.text, one.answer.working):
        text = re.sub(r"Formerly [^;]*;|[Ff]ormerly [^(.]*|On the \S+: [^.]*\.|On the \S+ the limit is [^.]*\.", "", text)
        for amount in amounts_of(know.phrase(text), know):
            yield Figure(amount.value, amount.unit or "")


def _former(one: Asked, know: Knowledge) -> Iterable[Figure]:
    for name in know.base.changes:
        change = know.base.changes[name]
        if change.record == one.answer.entry or name == one.answer.entry:
            for amount in know.phrase(change.formerly).amounts:
                yield Figure(amount.value, amount.unit or "count")
