"""How a stated figure is worded, with what it is of, and the composer for limits that are only told."""

from __future__ import annotations

from assistant.answering.parts import Parts, conditions_words, inside, other_variants, shown, stop, upper
from assistant.knowledge.records import Limit, Source
from assistant.resolving import results as r
from assistant.resolving.asserting import is_put_forward
from assistant.resolving.changes import changes_of
from assistant.resolving.claims import believed, believes
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import bound_value
from assistant.understanding.words import stem

NOTHING = 1e-9
"""A margin of which nothing is left."""
_WHETHER = frozenset(("is", "are", "does", "do"))
"""Words that begin a question whether a figure is the one said."""
_ENDING_NOUN = frozenset({",", "in", "on", "of", "from", "per", "for", "that", "which", "with", "at", "by"})
_ANY_CONDITION = frozenset(stem(word) for word in ("the", "a", "no", "on", "off", "and", "brake", "braking", "works"))
"""Words of a condition that what a figure is of need not repeat."""
_NO_PLURAL = frozenset({"gas", "its", "this", "has", "is", "as", "was"})


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
            sentences.append(f"On the {variant}{is_} {figure_said(other, know)}.")
        sentences.append(formerly(record.id, question, know).strip())
        values.extend(figures_of(record))
        sources.extend(record.sources)
    first = result.limits[0]
    here = conditions_words(result.conditions, know)
    if here and first.when and not _says_when(first.of, here):
        sentences.append(f"It applies here: {inside(here)}.")
    text = " ".join(s for s in sentences if s)
    return Parts(opening + text, tuple(sources), first.id, tuple(values))


def _says_when(of: str, conditions: str) -> bool:
    """Return whether what a figure is of tells by itself the conditions under which it holds: "without anti-skid"."""
    said = {stem(word.strip(",.").lower()) for word in of.split()}
    return {stem(word.strip(",.").lower()) for word in conditions.split()} - _ANY_CONDITION <= said


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
    return any(v is not None and abs(v.value - claimed) < NOTHING for v in figures)


def figure_words(record: Limit, know: Knowledge) -> str:
    """Return a figure with what it is of: "230 kt IAS: maximum speed for …", "2 tillers, one at each side window"."""
    figure = upper(figure_said(record, know))
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


def figure_said(record: Limit, know: Knowledge) -> str:
    """Return the figure of a limit as it is said: its amount, both ends of a range, or the lower of two."""
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


def figures_of(record: Limit) -> list[tuple[str, float, str]]:
    """Return the figures of a limit as (what it is of, value, unit)."""
    found = [v for v in (record.value, record.maximum, record.minimum, record.second) if v]
    if record.minimum and record.maximum:
        found = [record.minimum, record.maximum]
    return [(v.quantity or record.of, v.value, v.unit) for v in found]


def formerly(name: str, question: Question, know: Knowledge) -> str:
    """Return what a figure or statement was before a revision, as a sentence after a space; empty where it was none."""
    overridden = any(o.record == name and o.variant == question.variant for o in know.base.overrides)
    changes = () if overridden else changes_of(name, know)  # what changed is the base type's figure
    return "".join(f" Formerly {c.formerly}; changed with {c.since}." for c in changes)


def is_limit(record: Limit) -> bool:
    """Return whether a figure bounds something; else it is only stated."""
    return bool(record.maximum or record.minimum)
