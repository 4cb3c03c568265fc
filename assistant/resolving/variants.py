"""How the variants differ: in all, in what a question names, or in one figure."""

from __future__ import annotations

from assistant.knowledge.library_records import Override
from assistant.knowledge.records import Limit, Schedule
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import bound_value
from assistant.resolving.results import CompareResult, VariantResult
from assistant.understanding.matching import Match
from assistant.understanding.mentions import Mention

Scored = tuple[float, float, CompareResult | VariantResult]
_SAME = frozenset(("same", "identical", "equal", "alike"))
_OTHER = frozenset(("different", "differ", "differs", "difference"))
_ANOTHER = frozenset((
    "one", "figure", "number", "value", "limit", "maximum", "minimum", "speed", "pressure", "angle", "length", "mass",
    "temperature", "time",
))  # fmt: skip
"""What is another one on the other variant; "another assistant" says nothing of the variants."""
_OPEN = frozenset(("what", "which", "how", "why", "where", "list", "when"))
_GREATER = frozenset({
    "higher", "more", "greater", "bigger", "larger", "heavier", "longer", "wider", "further", "farther", "faster",
    "hotter",
})  # fmt: skip
_LESS = frozenset({"lower", "less", "smaller", "lighter", "shorter", "narrower", "slower", "cooler"})
_PAIR = (("on", "both"), ("for", "both"), ("in", "both"), ("on", "either"))


def asks_whether_same(words: tuple[str, ...]) -> bool | None:
    """Return True where a yes or no is asked to things being the same, False to their being different; else None."""
    if not _OPEN.isdisjoint(words):
        return None
    if not _SAME.isdisjoint(words):
        return True
    another = any(word == "another" and not _ANOTHER.isdisjoint(words[k + 1 : k + 5]) for k, word in enumerate(words))
    return None if _OTHER.isdisjoint(words) and not another else False


def asks_whether_more(question: Question) -> int | None:
    """Return 1 where a yes or no is asked to a variant's figure being the greater, -1 to its being the less; else
    None. 0: which it is is asked in other words ("is it longer, and by how much").
    """
    reading = question.reading
    if not reading.variants or reading.amounts or reading.words[:1] == ("which",):
        return None
    said = {word for k, word in enumerate(reading.words) if k not in reading.variant_places}
    sides = [side for side, words in ((1, _GREATER), (-1, _LESS)) if not words.isdisjoint(said)]
    if len(sides) != 1:
        return None
    return sides[0] if _OPEN.isdisjoint(said) else 0


def variant_result(question: Question, know: Knowledge, ranked: list[Match]) -> Scored | None:
    """Return how the variants differ: in all, in the one figure that the question names, or in what it names."""
    reading = question.reading
    more = asks_whether_more(question)
    whether = asks_whether_same(reading.words) if more is None else True
    if not (reading.has("compare") or whether is not None or len(set(reading.variants)) > 1):
        return None
    named = [v for v in reading.variants if v in know.variants[1:]] or know.variants[1:2]
    if not named or not (reading.variants or reading.has("variant") or _ends_in_pair(reading.words)):
        return None
    content = [m for m in reading.mentions if not m.weak and not know.matcher.is_soft(m) and not m.holds("variant")]
    if not content and reading.amounts:
        return _of_figure(question, know)
    if not content:
        return 0.96, 1.0, VariantResult(named[0], _overrides(named[0], know))
    first = reading.variants[0] if more is not None else know.variants[0]
    compared = _compared(ranked, first, reading.amounts, know)
    if compared is not None:
        surely = whether is not None and not reading.amounts
        return 1.2 if surely else 0.98, compared[0].matched, compared[1]
    return _in_part(named[0], content, know) if reading.has("compare") else None


def _ends_in_pair(words: tuple[str, ...]) -> bool:
    said = [word for word in words if word[0].isalpha()]
    return tuple(said[-2:]) in _PAIR


def _overrides(variant: str, know: Knowledge) -> tuple[Override, ...]:
    return tuple(o for o in know.base.overrides if o.variant == variant)


def _may_hold(limit: Limit, record: object, amounts: tuple[Amount, ...], know: Knowledge) -> bool:
    """Return whether a figure has a use for an amount given: no angle is one of a time."""
    units = {figure.unit} if (figure := bound_value(limit)) else set()
    units |= {unit for _, _, _, unit in limit.applies}
    units |= {record.input_unit} if isinstance(record, Schedule) else set()
    return all(a.unit is None or any(fits(a, unit, know.units) is not None for unit in units) for a in amounts)


def _compared(
    ranked: list[Match], first: str, amounts: tuple[Amount, ...], know: Knowledge
) -> tuple[Match, CompareResult] | None:
    """Return the best match that is a figure, or a schedule that begins at one, with that figure on all variants.

    first: the variant that is told first.
    """
    for match in ranked[:4]:
        record = know.base.records[match.record]
        name = record.top if isinstance(record, Schedule) else match.record
        limit = know.base.records.get(name)
        if isinstance(limit, Limit) and match.open and match.covered > 0.8 and _may_hold(limit, record, amounts, know):
            ordered = sorted(know.variants, key=lambda v: v != first)
            return match, CompareResult(tuple((v, know.record(name, v)) for v in ordered))
    return None


def _in_part(variant: str, content: list[Mention], know: Knowledge) -> Scored | None:
    """Return in what a variant differs of all that is named; the documents' whole subject is no part of it."""
    own = (d for d in know.base.documents.values() if not d.published)
    subject = frozenset().union(*(know.phrase(d.title).concepts for d in own))
    narrowing = [m for m in content if m.concepts.isdisjoint(subject)]
    overrides = _overrides(variant, know)
    if len(narrowing) == len(content):
        overrides = tuple(
            o
            for o in overrides
            if all(not m.concepts.isdisjoint(know.matcher.vocabulary(o.record)) for m in narrowing)
        )
    return (0.94, 1.0, VariantResult(variant, overrides)) if overrides else None


def _of_figure(question: Question, know: Knowledge) -> Scored | None:
    """Return the variants' figures of the limit that is named by its figure: "is the 800 psi rule different?"."""
    amount = question.reading.amounts[0]
    for name in know.base.ids("limits"):
        limit = know.base.records[name]
        figure = bound_value(limit)
        if figure and amount.unit and figure.unit == amount.unit and figure.value == amount.value:
            return 0.9, 1.0, CompareResult(tuple((v, know.record(name, v)) for v in know.variants))
    return None
