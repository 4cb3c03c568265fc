"""Two of a family held against each other by how hard they act: "steady versus firm", "how much stronger is A than B".

Nothing else is named, and what sets such things apart is what each aims for: that is asked of each by itself.
"""

from __future__ import annotations

from assistant.conversation.reading_turns.readings import question_of
from assistant.conversation.several.two_things import Half
from assistant.knowledge.library_records import Term
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import FactResult, LimitResult

_STRONGER = frozenset({
    "harder", "hard", "stronger", "softer", "gentler", "weaker", "fiercer", "firmer", "difference", "differ", "differs",
    "compare", "compared", "comparison", "versus", "vs", "against", "milder", "more", "less",
})  # fmt: skip
_BARE = _STRONGER | {
    "which", "what", "whats", "is", "are", "the", "how", "much", "by", "do", "does", "between", "of", "it", "one", "s",
    ",", "?", ".", ":", "and", "or", "to", "with", "than", "brakes", "brake", "braking", "a", "so", "me", "setting",
    "settings", "autobrake", "on", "for", "in", "please", "two", "would", "be", "slows", "slow", "us", "aim", "aims",
}  # fmt: skip
_ASKED = "how hard does {} brake"
_KIND = "deceleration"
_TWO = 2


def compared_likes(question: Question, knowledge: Knowledge) -> tuple[Half, Half] | None:
    """Return what two of a family aim for, where a question holds them against each other and names no more."""
    reading = question.reading
    if _STRONGER.isdisjoint(reading.words) or reading.amounts or not (reading.asked & QUANTITIES) <= {_KIND}:
        return None
    named = _named(question, knowledge)
    if len(named) != _TWO or not _BARE.issuperset(w for k, w in enumerate(reading.words) if k not in _places(named)):
        return None
    halves = [_half(name, question, knowledge) for name, _ in named]
    one, two = halves
    if one is None or two is None or one.result == two.result:
        return None
    return (one, two) if isinstance(one.result, LimitResult) or isinstance(two.result, LimitResult) else None


def _named(question: Question, knowledge: Knowledge) -> list[tuple[str, frozenset[int]]]:
    """Return the two of one family that a question names by their labels, the name of each and its places, in order."""
    families, words = knowledge.lexicon.families, question.reading.words
    for family in sorted(set(families.values())):
        labels = {t.show.lower(): t for c, name in families.items() if name == family and (t := _term(c, knowledge))}
        found = [(_fullest(labels[w].names), frozenset({k})) for k, w in enumerate(words) if w in labels]
        if len(found) == _TWO:
            return found
    return []


def _term(concept: str, knowledge: Knowledge) -> Term | None:
    term = knowledge.base.terms.get(concept)
    return term if term and term.show else None


def _fullest(names: tuple[str, ...]) -> str:
    """Return a name that cannot be taken for an ordinary word."""
    return next((name for name in names if " " in name), names[0])


def _places(named: list[tuple[str, frozenset[int]]]) -> frozenset[int]:
    return frozenset().union(*(places for _, places in named))


def _half(name: str, question: Question, knowledge: Knowledge) -> Half | None:
    half = question_of(_ASKED.format(name), knowledge, question.variant)
    result = resolve_scored(half, knowledge).result
    one = isinstance(result, LimitResult) and len(result.limits) == 1
    return Half(half, result) if one or isinstance(result, FactResult) else None
