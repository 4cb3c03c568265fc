"""Composers for what records state: a statement, a drill, what a revision changed, in what variants differ."""

from __future__ import annotations

from assistant.answering.figures import figure_said, figures_of, formerly
from assistant.answering.heard import change_heard
from assistant.answering.parts import Parts, difference_unit, stop, upper
from assistant.knowledge.base import stated
from assistant.knowledge.library_records import Change
from assistant.knowledge.records import Limit, Procedure, Source, Value
from assistant.quantities.show import exact_shown
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.variants import asks_whether_more, asks_whether_same


def fact(result: r.FactResult, question: Question, know: Knowledge) -> Parts:
    """A curated statement, as it stands."""
    record = result.fact
    text = stop(record.says)
    if record.says_more:
        text += " " + stop(record.says_more)
    text += formerly(record.id, question, know)
    values = tuple((v.quantity, v.value, v.unit) for v in record.values)
    return Parts(text, record.sources, record.id, values)


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
    one = result.changes if len(result.changes) == 1 else ()  # of several, each is known by its subject
    aloud = tuple((_change_words(c), change_heard(c.subject, c.now, c.formerly)) for c in one)
    entry = result.changes[0].id if result.changes else ""
    return Parts(text, sources, entry, tuple(_now(result.changes, know)), aloud=aloud)


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
            own = f"{record.of} {figure_said(record, know)}"
            words.append(f"{own} ({know.base.variants[base].show}: {figure_said(before, know)})")
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
    values = tuple(v for _, record in records for v in figures_of(record))
    sources = tuple(s for _, record in records for s in record.sources)
    verdict = _compared_verdict(result, same, question)
    if same:
        figure = figure_said(first, know)
        return Parts(f"{verdict}{figure if verdict else upper(figure)} on both: {first.of}.", sources, first.id, values)
    told = "; ".join(f"{name}: {figure_said(record, know)}" for name, record in records)
    aloud = ((told, "; ".join(f"on the {name}: {figure_said(record, know)}" for name, record in records)),)
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
