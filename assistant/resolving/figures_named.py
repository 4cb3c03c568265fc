"""The question turned round: a figure is given, and what it is the figure of is asked.

"What is 85 degrees the limit of?", "which limit is 205 knots?", "what does 1,400 psi stand for?" All stated figures
that equal the amount are looked through; what the question names besides must be known to the record.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.knowledge.records import Fact, Limit, Value
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.offering import offered
from assistant.resolving.results import Choices, Declined, FactResult, LimitResult, Result

_FIGURE = r"(?:limit|maximum|minimum|max|min|figure|value|number|ceiling|bound|speed|angle|temperature|pressure|time)"
_OF = r"(?: of| off| for| on| to)"
_WHAT = r"(?:what|which)(?: thing| item| one| part)?"
_SAID = rf"(?:the |that )?(?:{_FIGURE} )?(?:of )?#"
_IS = r"(?:is|are|belongs to|refers to|stands for|goes with|applies to)"
_SHAPES = ("|".join((
    rf"{_WHAT} (?:is|are|has|have|would be) {_SAID} (?:the |a |an |our |its )?(?:\w+ )?{_FIGURE}{_OF}\b",
    rf"{_WHAT} (?:does|do|is|are) {_SAID} (?:stands? for|refers? to|appl(?:y|ies) to|belongs? to)\b",
    rf"{_WHAT} (?:does|do) {_SAID} (?:relates? to|describes?|concerns?|represents?|limits?|go(?:es)? with)\b",
    rf"{_WHAT} (?:has|have|carries)(?: a| an| the| its)?(?: \w+)?(?: {_FIGURE})?(?: of| at)? #",
    r"\b(?:what|which)(?: \w+)? is (?:limited to|restricted to|set at) #",
    rf"# (?:is|are)(?: the| a)?(?: \w+)? {_FIGURE}{_OF} {_WHAT}\b",
    rf"# {_IS}(?: the| a)?(?: \w+)?(?: {_FIGURE})?{_OF}? {_WHAT}(?: {_FIGURE})?$",
    rf"(?:what|which|thing|that|item) # (?:is|are) (?:the |a )?(?:\w+ )?{_FIGURE}{_OF}\b",
    rf"# (?:so |and )?(?:what|which) (?:{_FIGURE} )?(?:is|was) (?:that|it|this)(?: the| a) {_FIGURE}{_OF}?(?: again)?$",
    rf"# (?:so |and )?which {_FIGURE} (?:is|was) (?:that|it|this)(?: again)?$",
    r"(?:significance|importance|meaning|point) (?:of|off) (?:the |that )?(?:figure |number |value )?(?:of )?#",
    rf"what is (?:the|that) #(?: {_FIGURE})?(?: for| about| off| of)$",
    r"where (?:have|did|do) (?:i|we) (?:seen?|heard?|read|met|know|remember) (?:the )?(?:figure |number )?(?:of )?#",
    rf"where (?:does|do) {_SAID} (?:come in|come from|appl(?:y|ies)|belong|appear|crop up|feature|matter)\b",
    rf"(?:what|which) {_FIGURE} (?:is|are|has|equals) (?:a |the )?(?:{_FIGURE} )?(?:of )?#$",
    rf"(?:what|which) {_FIGURE}s? (?:do we have |is there |are there )?(?:at|of) #$",
    r"(?:what is|is there anything) (?:so )?(?:special|significant|important|magic|remarkable) about #",
)))  # fmt: skip
_GATE = frozenset(("what", "which", "where", "about"))
_BOUND = frozenset(("limit", "limits", "limited", "maximum", "minimum", "max", "min"))
_MOST = 4
_DUST = 1e-6


def figure_named(question: Question, know: Knowledge) -> Result | None:
    """Return what a figure is stated of, where a question asks that of it; None for any other question."""
    reading = question.reading
    if len(reading.amounts) != 1 or _GATE.isdisjoint(reading.words):
        return None
    amount = reading.amounts[0]
    words = (*reading.words[: amount.start], "#", *reading.words[amount.end :])
    said = " ".join(word for word in words if word[0].isalnum() or word == "#")
    if not re.search(_SHAPES, said):
        return None
    things = _things(question, amount, know)
    found = [name for name in _stating(amount, question, know) if _knows(name, things, know)]
    return _told(found, question, know) if found else Declined((), why="") if not things else None


def _things(question: Question, amount: Amount, know: Knowledge) -> list[frozenset[str]]:
    """Return what a question names besides the figure and what kind of figure it is."""
    kinds = know.lexicon.kinds
    return [
        m.concepts
        for m in question.reading.mentions
        if not m.weak
        and not (amount.start <= m.start < amount.end)
        and not m.passing
        and not any(kinds.get(c) in ("quantity", "ask", "ask!", "filler") for c in m.concepts)
    ]


def _knows(name: str, things: list[frozenset[str]], know: Knowledge) -> bool:
    vocabulary = know.matcher.vocabulary(name)
    return all(not vocabulary.isdisjoint(concepts) for concepts in things)


def _stating(amount: Amount, question: Question, know: Knowledge) -> Iterator[str]:
    """Yield the records that state a figure: limits, and where none does, statements."""
    limits = [name for name in know.base.order if _states(know.record(name, question.variant), amount, know, Limit)]
    if _BOUND.intersection(question.reading.words):
        limits.sort(key=lambda name: know.record(name, question.variant).value is not None)
    if not limits and not question.named_variant:
        limits = [name for name in know.base.order if _states_elsewhere(name, amount, know)]
    yield from limits or (name for name in know.base.order if _states(know.base.records[name], amount, know, Fact))


def _states(record: object, amount: Amount, know: Knowledge, kind: type[Limit] | type[Fact]) -> bool:
    if not isinstance(record, kind):
        return False
    own = record.values if isinstance(record, Fact) else (record.maximum, record.minimum, record.value, record.second)
    return any(value is not None and _equals(amount, value, know) for value in own)


def _states_elsewhere(name: str, amount: Amount, know: Knowledge) -> bool:
    """Return whether a figure is stated of any other variant."""
    return any(_states(know.record(name, variant), amount, know, Limit) for variant in know.variants)


def _equals(amount: Amount, value: Value, know: Knowledge) -> bool:
    given = fits(amount, value.unit, know.units)
    return given is not None and abs(given - value.value) <= _DUST * max(1.0, abs(value.value))


def _told(found: list[str], question: Question, know: Knowledge) -> Result:
    records = [know.record(name, question.variant) for name in found[:_MOST]]
    limits = tuple(record for record in records if isinstance(record, Limit))
    if limits:
        return LimitResult(limits)
    if len(found) == 1 and isinstance(records[0], Fact):
        return FactResult(records[0])
    return Choices(tuple((name, offered(know, name)) for name in found[:3]))


def record_named(result: Result) -> str:
    """Return the record that a figure was found in first."""
    if isinstance(result, LimitResult):
        return result.limits[0].id
    return result.fact.id if isinstance(result, FactResult) else ""
