"""What an answer says beside the question of the same state: every result of the row counts, though one was asked for.

"ALTERNATE, with anti-skid" is wrong where anti-skid is gone, though only the mode was asked for.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from assistant.practice.marking.finding.elements import concepts_in
from assistant.practice.marking.finding.found import Held
from assistant.practice.marking.finding.rivals import is_put_off
from assistant.practice.marking.finding.states import state_told, words_beside
from assistant.practice.marking.of_results.item_points import ItemResult
from assistant.practice.marking.of_results.no_thing import denies_asked
from assistant.practice.marking.of_results.outcomes import output_point, outputs_asked, table_results, values_of
from assistant.practice.marking.points import Element, Need, Point, State
from assistant.practice.marking.questions.asked import Asked
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import KEPT, word_set
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge
from assistant.resolving.tables import tables

_NEEDING = word_set("for from in instead like need needs of only requires than unless until was without")
"""Words before a result that it does not hold now: "that needs NORMAL", "only in NORMAL"."""


def row_of(one: Asked, text: str, know: Knowledge) -> Iterable[Point]:
    """Yield the results of a state that were not asked for, and, as points against, what they might have been."""
    result: Any = one.result
    if isinstance(result, r.LossResult):
        yield from (output_point(*kept, know) for kept in result.kept if kept[2] in ("yes", "no"))
    for part in table_results(result):
        single = isinstance(part, ItemResult)
        asked = list(part.asked) if single else outputs_asked(part, text, know)
        for output in part.table.outputs:
            has = values_of(part, output.id)
            if len(has) != 1 or None in has:
                continue
            value = str(next(iter(has)))
            if value in ("yes", "no"):
                yield output_point(part.table, output.id, value, know)
            elif output.id not in asked:
                yield from () if single else _others(part, output, has, know)
            else:
                yield from _in_its_place(part, output, value)


def _in_its_place(part: Any, output: Any, value: str) -> Iterable[Point]:
    """Yield the values that a result which is asked for does not have, each with the one that it has."""
    of = f"={part.table.id}.{output.id}."
    own = Element(frozenset((of + value,)), (), 3.0)
    mine = next((says for name, says, _ in output.values if name == value), "")
    for other, says, _ in output.values:
        if other != value and not mine.startswith(says.split(":")[0]):
            yield Point(says, (), (Element(frozenset((of + other,)), (), 3.0), own))


def _others(part: Any, output: Any, has: set[str | None], know: Knowledge) -> Iterable[Point]:
    """Yield the values that a result does not have; a colour is one only beside what it is the colour of."""
    label = concepts_in(output.label, know)
    for value, says, _ in output.values:
        if value not in has and "_" not in value:
            concept = frozenset((f"={part.table.id}.{output.id}.{value}",))
            words = (plain(value),) if know.lexicon.families.get(value) == "colour" else ()
            yield Point(says, (), (Element(concept, words, 3.0),), labels=(Element(label, (), 1.0),))


def beside_row(need: Need, said: Said, put_off: frozenset[int]) -> list[str]:
    """Return what an answer says of the state that is not so, beside what was asked for."""
    found = []
    named = frozenset(c for here in said.concepts for c in here)
    asked = need.question.concepts
    for point in need.row:
        if point.state:
            told = state_told(point.state, said)
            if told is None and need.loss and point.state.there and _named_lost(point.state, said):
                told = False
            own = any(p.state and p.state.subject == point.state.subject for p in need.points)
            if told is not None and told is not point.state.there and not own:
                found.append(f"the contrary of: {point.text}")
            continue
        concepts, words = point.elements[0].concepts, point.elements[0].words
        if len(point.elements) > 1 and said.where(point.elements[1].concepts):
            continue  # what is asked for is said
        coloured = words and point.labels and not named.isdisjoint(point.labels[0].concepts)
        places = [*said.where(concepts), *(i for i, w in enumerate(said.words) if coloured and w in words)]
        spots = [i for i in places if i not in put_off and not _needed(i, said) and not denies_asked(i, need, said)]
        if spots and concepts.isdisjoint(asked):
            found.append(point.text)
    return found


def _named_lost(state: State, said: Said) -> bool:
    """Return whether a thing is only named where it is asked what is lost, and so is said to be lost."""
    return any(KEPT.isdisjoint(words_beside(said, place)) for place in said.where(state.subject))


def _needed(place: int, said: Said) -> bool:
    return not _NEEDING.isdisjoint(said.reading.words[max(0, place - 3) : place])


def other_value(held: Sequence[Held], need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return a value that a result has in another state, named where a point that has one is missing: "blank"."""
    points = [h.point for h in held if len([e for e in h.point.elements if not e.given]) == 1]
    payloads = [e.concepts for p in points for e in p.elements if not e.given]
    known = need.question.concepts | frozenset(c for h in held for e in h.point.elements for c in e.concepts)
    named = frozenset(c for p in points for e in p.elements if e.given for c in e.concepts)
    lacking = len(points) == len(held) and any(h.share < 1 for h in held)
    here = {said.clauses[i] for i in said.where(named)} if lacking else set()
    found = []
    for output in (o for table in tables(know.base) for o in table.outputs) if here else ():
        values = [know.phrase(says).concepts for _, says, _ in output.values]
        shared = frozenset.intersection(*values) if values else frozenset()
        own = [c - shared for c in values]
        if sum(any(c & of for of in own) for c in payloads) > 1:
            others = frozenset(c for each in own for c in each if c[0] not in "~@=") - known
            spots = [i for i in said.where(others) if said.clauses[i] in here and not is_put_off(i, said, need)]
            found += [said.reading.words[i] for i in spots]
    return list(dict.fromkeys(found))
