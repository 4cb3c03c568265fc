"""What a composer returns, and the small phrases that all of them use."""

from __future__ import annotations

from assistant.frozen import NamedTuple
from assistant.knowledge.records import Limit, Source, Value
from assistant.quantities.show import exact_shown, given_shown, round_shown
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.states import Condition

_SAME = 1e-6
"""Share by which two amounts may differ that are one."""


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
    aloud: tuple[tuple[str, str], ...] = ()
    """What of the text is said in other words: as it is written, as it is best heard."""


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
    """Return a list in words: "a, b and c"; where an item holds a comma, semicolons keep them apart."""
    if len(parts) < 2:
        return "".join(parts)
    if any(", " in part for part in parts):
        return "; ".join(parts[:-1]) + f"; {last} {parts[-1]}"
    return ", ".join(parts[:-1]) + f" {last} {parts[-1]}"


def named(text: str) -> str:
    """Return the name of a quantity with its article, as a sentence uses it: "the stopping distance"."""
    first = text.split(" ", 1)[0]
    bare = first.islower() and first not in ("the", "a", "an", "how", "what", "which", "whether", "each", "all")
    return f"the {text}" if bare else text


def under(conditions: str, then: str) -> tuple[str, tuple[str, str]]:
    """Return what follows under conditions, and how its beginning is said: "With System 1 lost, the gear …"."""
    first = then.split(" ", 1)[0]
    return f"With {conditions}: {then}", (f"With {conditions}: {first}", f"With {conditions}, {inside(first)}")


def as_given(value: float, unit: str, question: Question, know: Knowledge) -> str:
    """Return an amount as the question gives it, with what it is in another unit: "290 mph (252 kt)"."""
    own = given_shown(value, unit, know.units)
    for amount in question.reading.amounts:
        if not amount.unit or know.units.get(amount.unit).dimension != know.units.get(unit).dimension:
            continue
        if alike(value, know.units.convert(amount.value, amount.unit, unit)):
            said = given_shown(amount.value, amount.unit, know.units)
            if know.units.get(unit).dimension == "time":
                return own if abs(round(value, 1) - value) < _SAME else said
            return said if said == own else f"{said} ({own})"
    return own


def alike(value: float, other: float) -> bool:
    """Return whether two amounts differ by no more than calculating them does."""
    return abs(value - other) < _SAME * max(1.0, abs(value))


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
    if condition.is_result:
        table, output = condition.table, condition.output
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
