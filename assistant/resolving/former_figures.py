"""A former figure that somebody holds to be in force: "I was taught that it has gone by 100 kt, is that still right?".

Whoever learned it is told of the figure that took its place, whatever else the words could ask for.
"""

from __future__ import annotations

from assistant.knowledge.library_records import Change
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.asserting import statement_start
from assistant.resolving.changes import fit
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import ChangeResult

_LEARNED = frozenset({
    "taught", "learned", "learnt", "told", "trained", "training", "course", "instructor", "notes", "remember",
    "remembered", "recall", "used", "old", "formerly", "previously", "ago", "thought", "heard", "school",
})  # fmt: skip
"""Words by which a figure is told as one that was learned, or held once."""
_HELD = frozenset({"once", "since", "changed", "change", "still", "anymore", "longer", "always", "current", "last"})
"""Words by which it may be, where nothing else is asked than whether it is so."""
_OPEN = frozenset(("what", "how", "which", "where", "who", "why"))
_AT_ONE_TIME = _LEARNED | _HELD | {"year", "years", "month", "months", "season", "type", "rating", "can", "had to"}
_FITS = 0.45
_MOSTLY, _THINGS = 0.75, 2


def former_believed(question: Question, know: Knowledge) -> ChangeResult | None:
    """Return the change whose former figure a question tells as what was learned, of what it is about."""
    reading = question.reading
    if not reading.amounts or any(m.is_outside for m in reading.mentions):
        return None
    held = not _HELD.isdisjoint(reading.words) and _OPEN.isdisjoint(reading.words)
    if not held and _LEARNED.isdisjoint(reading.words) and not statement_start(reading.words):
        return None
    fitting = [c for c in know.base.changes.values() if _is_given(c, reading.amounts, know)]
    best = max(fitting, key=lambda change: fit(question, know, change), default=None)
    meant = best and (fit(question, know, best) > _FITS or _is_about(question, best, know))
    return ChangeResult((best,)) if best and meant else None


def _is_about(question: Question, change: Change, know: Knowledge) -> bool:
    """Return whether nearly all that a question names is known of what was changed, and some thing of it is."""
    known = know.phrase(change.subject).concepts | know.matcher.vocabulary(change.record)
    content = [
        m
        for m in question.reading.mentions
        if not (m.weak or m.passing or m.holds("changed") or m.holds("document") or m.text in _AT_ONE_TIME)
    ]
    explained = [m for m in content if not known.isdisjoint(m.concepts)]
    weight = know.matcher.mention_weight
    share = sum(map(weight, explained)) / (sum(map(weight, content)) or 1.0)
    return share >= _MOSTLY and sum(not know.matcher.is_soft(m) for m in explained) >= _THINGS


def _is_given(change: Change, amounts: tuple[Amount, ...], know: Knowledge) -> bool:
    """Return whether amounts give a former figure, and nothing else than it and what its subject names."""
    former = know.phrase(change.formerly).amounts
    named = {a.value for a in (*former, *know.phrase(change.subject).amounts)}
    return {a.value for a in amounts} <= named and any(_is_it(a, f, know) for a in amounts for f in former)


def _is_it(given: Amount, former: Amount, know: Knowledge) -> bool:
    if former.unit is None:
        return given.value == former.value
    return fits(given, former.unit, know.units) == former.value
