"""A first question that leaves open what it is about is asked back: "is that too hot?", "how fast may I taxi?".

There is nothing before it that it could point at, and several figures would answer it.
"""

from __future__ import annotations

from collections.abc import Iterable

from assistant.knowledge.records import Bands, Limit
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import bound_value
from assistant.resolving.results import Choices, Declined, FactResult, LimitResult, Result
from assistant.understanding.clauses import asks_whether
from assistant.understanding.mentions import BOUNDS

_MOST = 3
_LEAD = "Which limit, and of what? For example:"
_WELL = frozenset({
    "ok", "okay", "fine", "alright", "right", "good", "allowed", "legal", "safe", "within", "inside", "too",
    "enough",
    "acceptable", "permitted", "normal",
})  # fmt: skip
_POINTING = frozenset({"that", "this", "it", "i", "we", "these", "those", "the", "my", "our", "they"})
_SMALL = _WELL | _POINTING | {
    "is", "are", "am", "was", "be", "s", "m", "re", "like", "so", "all", "limits", "limit", "much", "in",
    "a", "bit", "for",
    "us", "now", "still", "?", ".", ",", "'s", "then", "there", "here", "ones", "one", "or", "not", "going",
    "at", "reading",
    "can", "may", "leave", "with", "and", "go", "ok", "to", "far", "little", "low", "high", "just",
    "really", "fly",
}  # fmt: skip


def asked_of_what(alone: Question, result: Result, knowledge: Knowledge) -> Choices | None:
    """Return what a short first question without a reading may be about, where it points at nothing, or names no more
    than several share.
    """
    words = alone.reading.words
    if alone.conditions:
        return None
    if isinstance(result, LimitResult):
        of_it = None if _WELL.isdisjoint(words) else _of_a_thing(alone, knowledge)
        return of_it or _of_a_quantity(alone, knowledge) or _of_which_case(alone, result.limits[0], knowledge)
    if not isinstance(result, (Declined, FactResult)) or _WELL.isdisjoint(words) or _POINTING.isdisjoint(words):
        return None
    return _pointing(alone, knowledge) or _of_a_thing(alone, knowledge)


def _of_a_thing(alone: Question, knowledge: Knowledge) -> Choices | None:
    """Return the limits and bands of a quantity of a thing that is asked to be well, where no reading is given: "is
    the tyre pressure okay?".
    """
    asked = alone.reading.concepts & QUANTITIES
    named = (m for m in knowledge.matcher.telling(alone.reading) if not (m.says_state or m.holds("can")))
    things = [m for m in named if not m.concepts & QUANTITIES]
    if not asked or len(things) != 1 or not asks_whether(alone.reading.words):
        return None
    thing = things[0].concepts
    bands = (knowledge.base.records[name] for name in knowledge.base.ids("bands"))
    of_it = [*_limits(asked, knowledge), *(x for x in bands if x.quantity in asked)]
    return _offered([x for x in of_it if not thing.isdisjoint(knowledge.phrase(x.of).named)], "")


def _pointing(alone: Question, knowledge: Knowledge) -> Choices | None:
    """Return limits of the quantity, or of several, that a question whether something is well may mean."""
    words = alone.reading.words
    manner = next((words[i + 1] for i, word in enumerate(words[:-1]) if word == "too"), "")
    asked = knowledge.phrase(f"how {manner}").concepts & QUANTITIES if manner else alone.reading.concepts & QUANTITIES
    places = {k for m in alone.reading.mentions if m.concepts & QUANTITIES for k in m.taken}
    rest = [word for k, word in enumerate(words) if k not in places and word != manner]
    if not _SMALL.issuperset(rest):
        return None
    return _offered(_limits(asked, knowledge), "" if asked else _LEAD)


def _of_a_quantity(alone: Question, knowledge: Knowledge) -> Choices | None:
    """Return the limits that a bound of a quantity may mean, where nothing says of what: "maximum temperature?"."""
    concepts = [m.concepts for m in alone.reading.mentions if not m.weak]
    if not concepts or not alone.reading.says(*BOUNDS) or not all(c <= QUANTITIES | BOUNDS for c in concepts):
        return None
    bound = {"maximum", "minimum"} & alone.reading.concepts
    limits = [x for x in _limits(alone.reading.asked & QUANTITIES, knowledge) if any(getattr(x, b) for b in bound)]
    return _offered(limits, "") if len(limits) > 1 else None


def _of_which_case(alone: Question, told: Limit, knowledge: Knowledge) -> Choices | None:
    """Return the limits on one action that hold in different cases, where a question names none of them."""
    records, written = knowledge.base.records, set(told.sources)
    if not any(written.intersection(records[name].sources) for name in knowledge.base.limits_of_cases):
        return None
    cases = [told]
    for name in knowledge.base.ids("limits"):
        other = records[name]
        alike = written.intersection(other.sources) and _unit(other) == _unit(told)
        if other.id != told.id and alike and _plain(told, other):
            cases.append(other)
    if not any(case.applies for case in cases) or len(cases) < _MOST:
        return None
    said = [knowledge.phrase(case.of).concepts for case in cases]
    shared = frozenset.intersection(*said) | QUANTITIES | BOUNDS
    apart = frozenset().union(*said) - shared
    return None if apart & alone.reading.concepts or alone.reading.has("list") else _offered(cases, "")


def _plain(told: Limit, other: Limit) -> set[str]:
    """Return the ways in which the action is named that another limit judges in a case of its own."""
    return {words for words in other.check for mine in told.check if words.split()[0] == mine.split()[0]}


def _unit(limit: Limit) -> str:
    bound = bound_value(limit)
    return bound.unit if bound else ""


def _limits(asked: frozenset[str], knowledge: Knowledge) -> list[Limit]:
    """Return the limits of a quantity, those first of which it is said what follows beyond; of none, one of each."""
    limits = [x for name in knowledge.base.ids("limits") if (x := knowledge.base.records[name]).maximum or x.minimum]
    limits.sort(key=lambda limit: not limit.exceeded)
    kinds = [(quantity_of(LimitResult((limit,)), knowledge), limit) for limit in limits]
    if asked:
        return [limit for kind, limit in kinds if kind in asked]
    first: dict[str, Limit] = {}
    for kind, limit in kinds:
        first.setdefault(kind, limit)
    return list(first.values())


def _offered(limits: Iterable[Bands | Limit], lead: str) -> Choices | None:
    options = {limit.of: limit.id for limit in limits}
    chosen = tuple((name, of) for of, name in list(options.items())[:_MOST])
    return Choices(chosen, lead) if chosen else None
