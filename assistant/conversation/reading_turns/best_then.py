"""Which way of asking after what was told explains a turn best; the ways of asking are in `understanding/then.py`."""

from __future__ import annotations

from assistant.frozen import NamedTuple
from assistant.knowledge.records import Procedure
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.mentions import Mention
from assistant.understanding.then import Then, Turn, said_in, word_for_word, words_of

_HALF = 0.5
_COLOURING = frozenset({"ask", "filler"})


class Best(NamedTuple):
    """The way of asking that explains most of a turn, with the places of all words that those of its record explain."""

    then: Then
    explained: frozenset[int]


def best_then(
    alone: Question, paragraphs: tuple[str, ...], figures: frozenset[int], knowledge: Knowledge
) -> Best | None:
    """Return the way of asking after some paragraphs whose record, or step, explains most of a turn.

    figures: places of amounts that name what was told, and need no explaining.
    """
    turn = words_of(alone.reading)
    read = frozenset(k for m in alone.reading.mentions for k in m.taken)
    telling = turn.telling - figures
    said: dict[tuple[str, int | None], list[tuple[frozenset[int], Then]]] = {}
    for then in knowledge.asked_after(paragraphs):
        explained = said_in(turn, then) or _within_a_name(turn, then, knowledge)
        if explained is not None:
            said.setdefault((then.record, then.step), []).append((explained, then))
    found: list[tuple[tuple[int, int, int], Best]] = []
    for each in said.values():
        explained = frozenset().union(*(one for one, _ in each))
        longest = max((then for _, then in each), key=lambda then: (len(then.elements), word_for_word(turn, then)))
        best = Best(longest, explained)
        missed = telling & (read | explained)  # a word that is no name and narrows nothing is not missed
        if _explains(best, missed, alone, figures) and not _leaves_out(best, alone, knowledge):
            # Another procedure that a turn names is meant before a step of the one told.
            other = longest.step is None and isinstance(knowledge.base.records[longest.record], Procedure)
            worth = len(explained & turn.telling), len(longest.elements) + other, word_for_word(turn, longest)
            found.append((worth, best))
    return max(found, key=lambda each: each[0])[1] if found else None


def _within_a_name(turn: Turn, then: Then, knowledge: Knowledge) -> frozenset[int] | None:
    """Return the places that a way of asking explains within longer names, where its record knows of what these name:
    the pin of "bypass pin", of a step with that.
    """
    explained = said_in(turn, then, within=True)
    if explained is None:
        return None
    known = known_of(then, knowledge)
    return explained if all(turn.within.get(k, known) & known for k in explained) else None


def _explains(best: Best, telling: frozenset[int], alone: Question, figures: frozenset[int]) -> bool:
    """Return whether at least half of what tells is explained, and every amount that is no figure told."""
    for amount in alone.reading.amounts:
        places = frozenset(range(amount.start, amount.end))
        if not places <= figures and best.explained.isdisjoint(places):
            return False
    if not telling:  # "to what?" consists of small words alone
        return len(best.explained) > 1
    return bool(best.explained - figures) and len(best.explained & telling) >= _HALF * len(telling)


def _leaves_out(best: Best, alone: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn names or asks what neither the way of asking nor what it asks for knows of."""
    left = [m for m in alone.reading.mentions if not (m.weak or m.passing) and _unexplained(m, best)]
    left = [m for m in left if not {knowledge.lexicon.kinds.get(c, "") for c in m.concepts} <= _COLOURING]
    asked = alone.reading.asked & QUANTITIES  # whether that is given is looked at by itself
    left = [m for m in left if m.concepts.isdisjoint(asked)]
    if not left:
        return False
    known = known_of(best.then, knowledge)
    return any(known.isdisjoint(m.concepts | m.implied) or _of_its_like(best.then, m, knowledge) for m in left)


def _unexplained(mention: Mention, best: Best) -> bool:
    """Return whether a name is not explained, or only a word within it: the "stop" of a stopping distance."""
    within = len(mention.taken) > 1 and max(mention.taken) not in best.explained
    return within or best.explained.isdisjoint(mention.taken)


def _of_its_like(then: Then, mention: Mention, knowledge: Knowledge) -> bool:
    """Return whether a record tells of one of a family, and a turn names another of it: FULL, where it tells of RTO."""
    own = {c for c in mention.concepts if c in knowledge.lexicon.families}
    if not own or then.step is not None:
        return False
    record = knowledge.base.records[then.record]
    told = knowledge.phrase(str(getattr(record, "title", "") or getattr(record, "of", ""))).concepts
    families = knowledge.lexicon.families_of(own)
    return own.isdisjoint(told) and not families.isdisjoint(knowledge.lexicon.families_of(told))


def known_of(then: Then, knowledge: Knowledge) -> frozenset[str]:
    """Return the concepts that a record explains, but for a step what the other steps do."""
    known = knowledge.matcher.vocabulary(then.record)
    if then.step is None:
        return known
    steps = knowledge.base.records[then.record].steps
    own_texts = (steps[then.step].do, *steps[then.step].asks)
    own = frozenset().union(*(knowledge.phrase(text).concepts for text in own_texts))
    others = frozenset().union(*(knowledge.phrase(s.do).concepts for k, s in enumerate(steps) if k != then.step))
    return known - (others - own)
