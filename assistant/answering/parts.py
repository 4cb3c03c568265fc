"""What a composer returns, and the small phrases that all of them use."""

from __future__ import annotations

from typing import NamedTuple

from assistant.knowledge.records import Limit, Source, Value
from assistant.quantities.show import exact_shown, round_shown
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.states import Condition


class Parts(NamedTuple):
    """The parts of an answer that depend on the kind of result."""

    text: str
    sources: tuple[Source, ...] = ()
    entry: str = ""
    values: tuple[tuple[str, float, str], ...] = ()
    working: str = ""
    cautions: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    choices: tuple[str, ...] = ()
    outcome: str = ""


def upper(text: str) -> str:
    """Return a text with its first letter in upper case."""
    return text[:1].upper() + text[1:]


def inside(text: str) -> str:
    """Return a sentence as part of another: a label in capitals keeps them."""
    return text if text[1:2].isupper() else text[:1].lower() + text[1:]


def stop(text: str) -> str:
    """Return a text that ends as a sentence does."""
    text = text.strip()
    return text if not text or text[-1] in ".!?" else text + "."


def joined(parts: list[str], last: str = "and") -> str:
    """Return a list in words: "a, b and c"."""
    if len(parts) < 2:
        return "".join(parts)
    return ", ".join(parts[:-1]) + f" {last} {parts[-1]}"


def shown(value: Value, know: Knowledge) -> str:
    """Return a stated figure as the document gives it, never rounded."""
    return exact_shown(value.value, value.unit, know.units)


def rounded(value: float, unit: str, know: Knowledge) -> str:
    """Return a computed figure as display rounds it."""
    return round_shown(value, unit, know.units)


def difference_unit(unit: str) -> str:
    """Return the unit of a difference of two readings."""
    return "K" if unit in ("degC", "degF") else unit


def condition_words(condition: Condition, know: Knowledge) -> str:
    """Return a condition as its input says it: "System 1 lost"."""
    if "." in condition.input:
        table, output = condition.input.split(".", 1)
        for item in know.base.records[table].outputs:
            if item.id == output:
                return str(next((says for value, says, _ in item.values if value == condition.value), condition.value))
    for value, says, _ in know.base.inputs[condition.input].values:
        if value == condition.value:
            return str(says)
    return condition.value


def conditions_words(conditions: tuple[Condition, ...], know: Knowledge) -> str:
    """Return conditions in words, in the order given."""
    return joined([condition_words(c, know) for c in conditions])


def other_variants(limit: Limit, question: Question, know: Knowledge) -> list[tuple[str, Limit]]:
    """Return the variants, other than the one asked about, on which a figure differs."""
    found = []
    for variant in know.variants:
        if variant == question.variant:
            continue
        other = know.record(limit.id, variant)
        if (other.maximum, other.minimum, other.value) != (limit.maximum, limit.minimum, limit.value):
            found.append((know.base.variants[variant].show, other))
    return found
