"""A question that is not answered as it stands: asked with less in it, or by what comes nearest."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from assistant.conversation.reading_turns.readings import question_of
from assistant.practice.marking.questions.asked import Asked, as_asked, ask, measures, record_of
from assistant.practice.marking.questions.parts import FORM, POLAR, pieces
from assistant.resolving import results as r
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of
from assistant.resolving.choosing import chosen_record, resolve_scored
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates

_FAINT = 0.25
"""Score that is enough where the kind of the limit leaves no other."""
_MOSTLY = 0.75
"""Share of a way of asking that a question must hold to be taken for it though one of its words is strange."""


def shortened(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the answer to a question without the form of its answer, then without some of its asides."""
    found: list[tuple[float, Asked]] = []
    polar = bool(POLAR.search(text))
    for dropped, shorter in _shorter(text):
        one = _verdict(shorter, know) if polar else ask(shorter, know)
        if one is None:
            continue
        found.append((one[0] - 0.04 * dropped, one[1]))
        if dropped == 0 and not polar:
            break
    return (max(found, key=lambda pair: pair[0])[1],) if found else ()


def _verdict(text: str, know: Knowledge) -> tuple[float, Asked] | None:
    """Return the amount held against its limit that a yes-or-no question asks for."""
    question = question_of(text, know, "")
    temperatures = sum(1 for a in question.reading.amounts if a.unit in ("degC", "degF", "deg"))
    found = []
    for candidate in candidates(question, know)[:8]:
        result = candidate.result
        if isinstance(result, r.BandResult) and result.bands.unit == "K" and temperatures < 2:
            continue  # one reading is no difference of readings
        if isinstance(result, (r.CheckResult, r.BandResult)) and candidate.score >= 0.6:
            found.append((candidate.score + (0.1 if isinstance(result, r.CheckResult) else 0.0), result))
    if not found:
        return ask(text, know)
    score, result = max(found, key=lambda pair: pair[0])
    return score, as_asked(text, question, result, know)


def by_share(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the limit on a share where two amounts of one kind are given: 1,700 m of 2,000 m is 85 percent."""
    question = question_of(text, know, "")
    amounts = [a for a in question.reading.amounts if a.unit]
    if len(amounts) != 2 or amounts[0].unit != amounts[1].unit or not amounts[1].value:
        return ()
    share = 100 * amounts[0].value / amounts[1].value
    shares = text.replace(amounts[0].raw, f"{share:g} percent", 1).replace(amounts[1].raw, "", 1)
    found = []
    for dropped, shorter in _shorter(shares):
        asked_so = question_of(shorter, know, "")
        for candidate in candidates(asked_so, know)[:3]:
            if dropped < 3 and candidate.score >= _FAINT and _on_share(candidate.result):
                found.append((candidate.score, as_asked(text, asked_so, candidate.result, know)))
    return (max(found, key=lambda pair: pair[0])[1],) if found else ()


def _on_share(result: r.Result) -> bool:
    return isinstance(result, r.CheckResult) and result.checks[0].unit == "percent"


def _shorter(text: str) -> Iterator[tuple[int, str]]:
    kept = [piece for piece in pieces(text) if not FORM.match(piece)]
    yield 0, ", ".join(kept)
    most = min(len(kept) - 1, 3)
    for size in range(1, most + 1):
        for left in combinations(range(len(kept)), size):
            yield size, ", ".join(piece for i, piece in enumerate(kept) if i not in left)


def offered(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the records between which a question leaves the choice, where it asks for each of them."""
    question = question_of(text, know, "")
    result = resolve_scored(question, know).result
    if not isinstance(result, r.Choices):
        return ()
    made = [
        as_asked(text, question, found, know)
        for name, _ in result.options
        if (found := chosen_record(name, question, know)) is not None
    ]
    wanted = question.reading.concepts & QUANTITIES
    made.sort(key=lambda one: quantity_of(one.result, know) not in wanted if wanted else False)
    first = made[0]
    if len(getattr(record_of(first.result), "points", ())) > 1:
        return (first,)
    alike = [one for one in made if _kind(one, know) == _kind(first, know)]
    return tuple(alike)


def _kind(one: Asked, know: Knowledge) -> tuple[str, str]:
    return type(one.result).__name__, quantity_of(one.result, know) or ""


def nearest(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what comes nearest to answering, though a word of the question is not explained."""
    question = question_of(text, know, "")
    told = [m for m in question.reading.mentions if not know.matcher.is_soft(m) and not measures(m.concepts, know)]
    for candidate in candidates(question, know)[:5]:
        match = candidate.match
        if match is None or isinstance(candidate.result, (r.Declined, r.Choices, r.Needed)):
            continue
        if match.covered >= _MOSTLY and len(told) - len(match.barred) >= 2 and len(match.barred) < 2:
            return (as_asked(text, question, candidate.result, know),)
    return ()
