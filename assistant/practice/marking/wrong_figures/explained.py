"""Whether a number that is no figure asked for may stand in an answer: it is given, follows, or is true besides."""

from __future__ import annotations

import re
from collections.abc import Iterable
from itertools import combinations

from assistant.knowledge.records import Limit
from assistant.practice.marking.finding.equal import equals, rounded, same_kind, says
from assistant.practice.marking.points import Figure, Need
from assistant.practice.marking.reading.said import Claim, Said
from assistant.practice.marking.reading.wording import LESS, MORE
from assistant.practice.marking.wrong_figures.edges import steps_past
from assistant.practice.marking.wrong_figures.working import in_sum
from assistant.quantities.amounts import Amount
from assistant.quantities.units import Units
from assistant.resolving.knowing import Knowledge

_PERCENT = 0.6
"""Percentage points by which a percentage that follows from others may be rounded."""


_MOSTLY = 0.75
"""Share of the things in a figure's name that must be named with a number that is taken for it."""


def is_known(claim: Claim, need: Need, missing: list[Figure], said: Said, know: Knowledge) -> bool:
    """Return whether a number is one of the question, follows from it, or belongs to the full answer."""
    amount = claim.amount
    if _is_another_rule(claim, need, missing, said):
        return _is_its_share(amount, need, know.units)
    given = amount._replace(value=abs(amount.value)) if amount.raw.startswith("minus") else amount
    bare = given._replace(unit=None) if claim.bare else given
    if _is_given(given, bare, need, know.units):
        return not (_in_place_of(claim, missing, need, said) or _as_the_limit(claim, need, said, know))
    if not need.change and not claim.former and _is_former_alone(amount, need, know):
        return False
    if _leads_on(claim, need, said, know) or (amount.raw.lower() == "half" and not missing):
        return True
    judged = any(p.verdict for p in need.points) and claim.sense not in ("max", "min")
    amiss = any(same_kind(amount, figure, know.units) for figure in missing)
    if (judged or not amiss) and any(
        _derived(amount, f, know.units) for f in _differences(need) if f.unit != "percent" or amount.unit == "percent"
    ):
        return True
    unitless = any(f.unit in ("", "count") for f in missing)
    if not unitless and (_counts(amount, need) or _tells_how_many(claim, said)):
        return True
    if amiss:
        return False
    if of_variant(claim, need, said, know) or _is_supported(amount, need, said, know):
        return True
    if _is_anothers(claim, need, said, know) or _on_the_way(amount, need, know):
        return True
    return any(
        _derived(amount, f, know.units) if f.unit == "percent" else rounded(amount, f, know.units) for f in need.extra
    )


def _is_given(given: Amount, bare: Amount, need: Need, units: Units) -> bool:
    """Return whether an amount, with its unit or without, is one of the question."""
    return any(equals(each, Figure(a.value, a.unit or "", 0.0), units) for a in need.allowed for each in (given, bare))


def _is_share_of(claim: Claim, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether a number is what a share of a true figure comes to: "5 percent of 190 is nine and a half"."""
    before = said.reading.words[max(0, claim.amount.start - _BEFORE) : claim.amount.start]
    told = any(c.amount.unit == "percent" and c.amount.end <= claim.amount.start for c in said.claims)
    if not told or "of" not in before:
        return False
    shares = [f.value for p in need.points for f in p.figures if f.unit == "percent"]
    shares += [f.value for f in need.extra if f.unit == "percent"]
    whole = [f for f in need.extra if f.unit not in ("", "percent")]
    return any(equals(claim.amount, f._replace(value=f.value * p / 100), know.units) for f in whole for p in shares)


_BEFORE = 6


def _is_its_share(amount: Amount, need: Need, units: Units) -> bool:
    """Return whether an amount is the share by which a reading that is judged is off, roughly said."""
    return any(amount.unit == f.unit == "percent" and _derived(amount, f, units) for f in need.standing)


def _leads_on(claim: Claim, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether a number only leads up to a figure, or past it: one of a sum, a step beyond a bound."""
    leads = _in_working(claim, said) or _is_the_whole(claim, need, said)
    leads = leads or _is_its_share(claim.amount, need, know.units) or _is_share_of(claim, need, said, know)
    return leads or steps_past(claim, need, said, know) or in_sum(claim, need, said, know)


def _is_the_whole(claim: Claim, need: Need, said: Said) -> bool:
    """Return whether a number is the whole of which a figure that is said before it is asked for as a part."""
    parts = [n for word, n in _PARTS.items() if word in need.question.words]
    before = {c.amount.value for c in said.claims if c.amount.start < claim.amount.start}
    figures = {f.value for p in need.points for f in p.figures} & before
    told = not _ALL.isdisjoint(said.reading.words)
    return told and any(claim.amount.value == n * value for n in parts for value in figures)


_PARTS = {"half": 2, "third": 3, "quarter": 4, "fifth": 5}
_ALL = frozenset(("all", "altogether", "entire", "full", "lot", "total", "whole"))


def _is_former_alone(amount: Amount, need: Need, know: Knowledge) -> bool:
    """Return whether a number is a former value, and nothing that holds now."""
    former = {(f.value, unit) for f in need.former for unit in (f.unit, "")}
    now = [f for f in (*need.extra, *(f for p in need.points for f in p.figures)) if f[:2] not in former]
    return any(equals(amount, f, know.units) for f in need.former) and not any(
        equals(amount, f, know.units) for f in now
    )


def of_variant(claim: Claim, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether a number is another variant's, and is said to be: "230 on the longer one"."""
    near = range(max(0, claim.amount.start - 8), min(len(said.words), claim.amount.end + 5))
    named = {c for i in near if not _has_the_asked(said.clauses[i], claim, need, said, know) for c in said.concepts[i]}
    told = [figure for concept, figure in need.elsewhere if concept in named]
    if any(says(claim, figure, know) for figure in told):
        return True
    after = said.concepts[claim.amount.end : claim.amount.end + _COMPARED]
    far = {c for here in after for c in here}
    return _is_apart(claim, [f for c, f in need.elsewhere if c in named | far], need, said, know)


_COMPARED = 10
"""Words within which it is told what a number is more or less than: "15 psi more than the 190 of the shorter one"."""


def _has_the_asked(clause: int, claim: Claim, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether a clause without a number gives the very figure asked for: "190, the short one has 205"."""
    if said.clauses[claim.amount.start] == clause:
        return False
    others = [c for c in said.claims if said.clauses[c.amount.start] == clause]
    return any(says(c, f, know) for c in others for p in need.points for f in p.figures)


def _is_apart(claim: Claim, others: Iterable[Figure], need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether a number is how much more or less a figure is than another variant's: "15 more than the 120"."""
    after = frozenset(said.reading.words[claim.amount.end : claim.amount.end + 2])
    for own, other in ((f, o) for p in need.points for f in p.figures for o in others if f.unit == o.unit):
        words = MORE | {"above", "over", "up"} if own.value > other.value else LESS | {"below", "under", "down"}
        if after & words and equals(claim.amount, own._replace(value=abs(own.value - other.value)), know.units):
            return True
    return False


def _in_working(claim: Claim, said: Said) -> bool:
    """Return whether a number stands before the equals sign of a sum."""
    words = said.reading.words
    last = max((c.amount.start for c in said.claims), default=0)
    return (
        "=" in words[claim.amount.end :]
        or not _MAKES.isdisjoint(words[claim.amount.end : last])
        or (claim.amount.end < len(words) and "=" in said.text[said.text.find(claim.amount.raw) :])
    )


_MAKES = frozenset(("comes", "equals", "gives", "makes", "making", "totals"))
"""Words before what a sum comes to."""


def _is_supported(amount: Amount, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether a number that nobody asked for is a stated figure of what the answer names with it."""
    named = need.question.concepts | frozenset(c for here in (*said.concepts, *said.inner) for c in here)
    for name in know.base.ids("limits"):
        limit = know.base.records[name]
        if any(equals(amount, Figure(value, unit), know.units) for value, unit in _stated(limit)):
            things = [m for m in know.phrase(limit.of).mentions if not know.matcher.is_soft(m)]
            held = sum(1 for m in things if not m.concepts.isdisjoint(named))
            if held and held >= _MOSTLY * len(things):
                return True
    return False


def _is_anothers(claim: Claim, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether a number is stated of what is named beside it: "700 is the horn", "landing distance x 1.6"."""
    near = range(max(0, claim.amount.start - _BESIDE), min(len(said.words), claim.amount.end + _BESIDE))
    told = [m for m in said.content if m.start in near and said.numbered.isdisjoint(m.taken)]
    named = frozenset(c for m in told for c in m.concepts if _is_thing(c, know)) - need.question.concepts
    for kind in ("limits", "facts") if named and not need.ordered else ():
        for record in map(know.base.records.__getitem__, know.base.ids(kind)):
            reading = know.phrase(record.of if kind == "limits" else record.says)
            stated = _stated(record) if kind == "limits" else ((a.value, a.unit or "") for a in reading.amounts)
            if reading.concepts & named and any(_is_it(claim.amount, Figure(v, u), know.units) for v, u in stated):
                return True
    return False


def _is_thing(concept: str, know: Knowledge) -> bool:
    return concept[0] not in "~@=#" and know.lexicon.kinds.get(concept, "thing") == "thing"


def _is_it(amount: Amount, figure: Figure, units: Units) -> bool:
    """Return whether an amount says a figure, and no small number without a unit that might count anything."""
    sure = amount.unit is not None or amount.value >= _LARGE or figure.unit == "factor"
    return sure and equals(amount, figure, units)


_LARGE = 100


_BESIDE = 5
"""Words between a number and what it is stated of."""


def _stated(limit: Limit) -> list[tuple[float, str]]:
    """Return the figures of a limit."""
    return [(v.value, v.unit) for v in (limit.value, limit.maximum, limit.minimum, limit.second) if v]


def _on_the_way(amount: Amount, need: Need, know: Knowledge) -> bool:
    """Return whether an amount stands between two steps of the working: the energy of all brakes, or of the whole."""
    wanted = [f for p in need.points for f in p.figures]
    ratios = [f.value for f in need.extra if f.unit == "" and f.value > 0]
    factors = {1.0, *ratios, *(a * b for a, b in combinations(ratios, 2))}
    factors |= {a / b for a in ratios for b in ratios}
    return any(
        f.unit == amount.unit and any(equals(amount, f._replace(value=f.value * k, tolerance=_NEARLY), know.units)
                                      for k in (*factors, *(1 / k for k in factors)))
        for f in need.extra if f.unit and not any(same_kind(amount, x, know.units) for x in wanted)
    )  # fmt: skip


_NEARLY = 0.01


def _is_ruled(claim: Claim, said: Said) -> bool:
    """Return whether a number is called the limit or the rule."""
    before = said.reading.words[max(0, claim.amount.start - _BESIDE) : claim.amount.start]
    return _RULED.search(" ".join(before)) is not None


def _is_another_rule(claim: Claim, need: Need, missing: list[Figure], said: Said) -> bool:
    """Return whether a number is called the rule where that of the rule is not said: "the rule is 160", of 120."""
    kinds = {"K": "degC"}
    unit = kinds.get(claim.amount.unit or "", claim.amount.unit)
    judged = any(p.verdict for p in need.points)
    return judged and _is_ruled(claim, said) and any(unit in (None, kinds.get(f.unit, f.unit)) for f in missing)


def _as_the_limit(claim: Claim, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether an amount of the question is given as a bound, where the full answer has another of its kind."""
    amount = claim.amount
    ruled = _is_ruled(claim, said) and not any(equals(amount, f, know.units) for f in need.extra)
    if not (claim.sense or ruled) or amount.unit is None or not any(p.verdict for p in need.points):
        return False
    if " at the limit" in said.text and any(says(claim, f, know) for f in need.extra):
        return False
    own = [f for p in need.points for f in p.figures]
    other = [f for f in need.extra if f.unit == amount.unit and f.value != amount.value and f not in own]
    asked = [f for f in own if f.unit == amount.unit and not ruled]
    if ruled and any(f.unit == amount.unit and f.value != amount.value for f in own):
        return not any(says(c, f, know) for c in said.claims for f in own)
    told = any(says(c, f, know) for c in said.claims for f in other)
    return bool(other) and not asked and not told


_RULED = re.compile(
    r"\b(?:limit|rule|maximum|minimum|max|min)(?: is| s| of| at| being)+(?: a| an| the| just)?$|"
    r"\b(?:needs?|requires?|must (?:be|have)|has to (?:be|have)|at least)(?: at least| over| above| more than| about)?$"
)
"""Words before a number by which it is the limit."""


def _in_place_of(claim: Claim, missing: list[Figure], need: Need, said: Said) -> bool:
    """Return whether a number of the question is given as its answer: "forty degrees, the bigger one"."""
    wanted = [f for p in need.points for f in p.figures]
    judged = any(p.verdict for p in need.points)
    unit = claim.amount.unit
    if unit is None and len(said.claims) == 1:
        unit = next((a.unit for a in need.allowed if a.value == claim.amount.value), None)
    return not judged and len(missing) == len(wanted) and any(unit == f.unit for f in missing)


def _derived(amount: Amount, figure: Figure, units: Units) -> bool:
    if amount.unit == figure.unit == "percent" and abs(amount.value - figure.value) < _PERCENT:
        return True
    return equals(amount, figure._replace(tolerance=0.03), units)


def _differences(need: Need) -> Iterable[Figure]:
    """Return the differences of the question's amounts from each other and from the figures, and their shares."""
    given = [(a.value, a.unit or "") for a in need.allowed]
    spread = [f for f in need.standing if f.unit == "K"]  # of several readings the widest difference counts alone
    if spread:
        own = [f for p in need.points for f in p.figures]
        yield from (Figure(abs(x.value - y.value), "K") for x in spread for y in own if x.unit == y.unit)
        yield from spread
        return
    stated = [(f.value, f.unit) for p in need.points for f in p.figures]
    more = [(f.value, f.unit) for f in need.extra if f.unit]
    apart = {round(abs(x - y), 6) for x, _ in given for y, _ in (*stated, *more)}
    figures = stated + [(x, u) for x, u in more if round(x, 6) not in apart]
    shares = [p for p, of in (*stated, *more) if of == "percent"]
    yield from (Figure(x * p / 100, u) for x, u in given for p in shares if u not in ("", "percent"))
    for p in (x for x, u in given if u == "percent"):  # by how much something grows, and its square
        yield from (Figure(f, u) for f in (1 + p / 100, (1 + p / 100) ** 2) for u in ("", "factor"))
    for (x, u), (y, v) in [*combinations(given, 2), *((g, f) for g in given for f in figures)]:
        if (u == v or "" in (u, v)) and x != y:
            unit = u or v
            yield Figure(abs(x - y), "K" if unit == "degC" else unit)
            low, high = sorted((abs(x), abs(y)))
            yield Figure(100 * low / high, "percent")
            yield Figure(100 * (high - low) / high, "percent")


def _tells_how_many(claim: Claim, said: Said) -> bool:
    """Return whether a small number in words only counts things beside other numbers: "the four may be 120 apart"."""
    small = claim.amount.unit in (None, "count") and claim.amount.value in (2, 3, 4, 6)
    return small and claim.amount.spoken and len(said.claims) > 1


def _counts(amount: Amount, need: Need) -> bool:
    """Return whether a number only counts things: "both of the two cases"."""
    small = amount.unit in (None, "count") and amount.value in (1, 2, 3, 4)
    return small and any(p.elements and not p.figures for p in need.points)
