"""Two readings that one question gives, "what do you do at 90 kt, and what at 110 kt?", and what is done at each."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from assistant.practice.marking.finding.equal import equals, same_kind
from assistant.practice.marking.finding.found import LITTLE, words_said
from assistant.practice.marking.finding.pairing import sentences
from assistant.practice.marking.points import Figure, Need, Point
from assistant.practice.marking.questions.asked import Asked, as_asked, ask
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import ALIKE
from assistant.resolving import results as r
from assistant.resolving.changes import changes_of
from assistant.resolving.knowing import Knowledge

_CASE = r"(?:[\w.,°%-]+ ){0,2}[\w.°%-]+|one at [\d.,]+ ?[\w°%-]+"
_COORDINATED = re.compile(
    rf"\b(in|at|on|with|for|of|by|to) ({_CASE}),? and (?:what |how |which )?(?:\1 )({_CASE})(?=\s*[?.,;]|$)",
    re.IGNORECASE,
)


_EARLIER = re.compile(rf"\b(up to|in|at|on|with|for|of|by|to) ({_CASE}), $", re.IGNORECASE)
"""A case that stands before two others: "up to 15 kt, | at 50 kt and at 80 kt"."""


def coordinated(text: str, know: Knowledge) -> list[Asked]:
    """Return what answers the cases that a question asks for with one preposition each: "at 15 kt and at 50 kt"."""
    pair = _COORDINATED.search(text)
    if not pair:
        return []
    start, cases = pair.start(), [f"{pair.group(1)} {pair.group(2)}", f"{pair.group(1)} {pair.group(3)}"]
    while earlier := _EARLIER.search(text[:start]):
        start = earlier.start()
        cases.insert(0, f"{earlier.group(1)} {earlier.group(2)}")
    found = []
    for case in cases:
        one = ask(f"{text[:start]}{case}{text[pair.end() :]}", know)
        if one is None or not isinstance(one[1].result, (r.LimitResult, r.ScheduleResult, r.BandResult)):
            return []
        found.append(one[1])
    return found if len({one.answer.text for one in found}) == len(found) else []


def was_and_is(parts: list[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the change of a figure where it is asked what it was and what it is now."""
    asks = len(parts) == 2 and (_WAS_AND_IS.search(text) or _REPLACED.search(parts[1]))
    behind = len(parts) == 1 and _REPLACED.search(parts[0]) and _ASKS_INSIDE.search(text[: text.find(parts[0])])
    first = text[: text.find(parts[0])].rstrip(" ,;.:?") if behind else parts[0] if asks else ""
    one = ask(first, know) if first else None
    made = changes_of(one[1].answer.entry, know) if one else ()
    return (as_asked(text, one[1].question, r.ChangeResult(made), know),) if one and made else ()


_ASKS_INSIDE = re.compile(r"\b(?:what|which|how)\b", re.IGNORECASE)
_REPLACED = re.compile(
    r"\b(?:did|does|has) (?:it|that|this)(?: one)? (?:replaced?|superseded?|supplant(?:ed)?|take over from)\b|"
    r"\bwhat (?:was|were|did) (?:it|they|that|(?:that|this|the) \w+(?= (?:before|formerly|previously|once)))"
    r"(?: used? to be| be)?"
    r"(?: (?:before|formerly|previously|once|earlier).*)?$|"
    r"\bwhat (?:did|was) (?:it|that) (?:use to be|used to be)\b",
    re.IGNORECASE,
)
"""A second part that asks for the former figure of what the first asks for."""
_WAS_AND_IS = re.compile(r"\b(?:was|were|formerly)\b.*\band what (?:is|are) (?:it|they)(?: now)?\b", re.IGNORECASE)


def in_its_case(points: list[Point], one: Asked, found: Sequence[Asked]) -> list[Point]:
    """Return the points of a reading that bands judge, each with that reading, where a question gives several."""
    several = len([each for each in found if isinstance(each.result, r.BandResult)]) > 1
    if not several or not isinstance(one.result, r.BandResult):
        return points
    case = Figure(one.result.given, one.result.bands.unit)
    return [p if p.figures else p._replace(case=case) for p in points]


def cases_wrong(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return what is said of another case than it holds in, and the case that no question gave."""
    cased = [p for p in need.points if p.case]
    return [*_another_number(cased, need, said, know), *_exchanged(cased, said, know)] if cased else []


def _another_number(cased: Sequence[Point], need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the numbers of the kind of a case that are none of the question's: "deeper than 10 mm"."""
    figures = [f for p in need.points for f in p.figures] + [Figure(a.value, a.unit or "") for a in need.allowed]
    cases = [p.case for p in cased if p.case and not any(f.unit == p.case.unit for q in need.points for f in q.figures)]
    return [
        claim.amount.raw
        for claim in said.claims
        if claim.amount.unit
        and any(same_kind(claim.amount, case, know.units) for case in cases)
        and not any(equals(claim.amount, f, know.units) for f in [*figures, *need.extra])
    ]


def _exchanged(cased: Sequence[Point], said: Said, know: Knowledge) -> list[str]:
    """Return the points that are said with the number of another case, or before it where no number is said."""
    if len({p.case for p in cased}) < _SEVERAL:
        return []
    told = [words_said(p, said) for p in cased]
    if ALIKE.search(" ".join(said.reading.words)) and any(t[0] < LITTLE for t in told) and any(t[0] for t in told):
        return ["one thing in all of the cases"]
    found = []
    for clause in _with_numbers(cased, said):
        here = [c for c in said.claims if c.amount.start in clause]
        own = [p for p in cased if p.case and any(equals(c.amount, p.case, know.units) for c in here)]
        others = [p for p in cased if p not in own]
        if own and not any(words_said(p, said, list(clause))[0] for p in own):
            found += [f"another's: {p.text}" for p in others if words_said(p, said, list(clause))[0]]
    if not said.claims:
        spots = [min(words_said(p, said)[1], default=-1) for p in cased]
        found += ["another order than asked"] if -1 not in spots and spots != sorted(spots) else []
    return found


def _with_numbers(cased: Sequence[Point], said: Said) -> list[range]:
    """Return the clauses of an answer, parted behind each number, or before it where what is done follows it."""
    clauses: list[range] = []
    for clause in sentences(said):
        starts = [c.amount.start for c in said.claims if c.amount.start in clause]
        before = range(clause.start, starts[0]) if starts else clause
        leads = not any(words_said(p, said, list(before))[0] for p in cased)
        cuts = starts[1:] if leads else [s + 1 for s in starts[:-1]]
        edges = [clause.start, *cuts, clause.stop]
        clauses += [range(a, b) for a, b in pairwise(edges) if b > a]
    return clauses


_SEVERAL = 2
