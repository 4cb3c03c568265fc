"""Hold what was said against what must be said: each point found or missing, and everything that contradicts.

A contradiction counts whatever else is right: a number that belongs to something else, a rival of what is asked
(another mode, colour, side), a thing there that is not, the former value as the present one, steps out of order.
"""

from __future__ import annotations

from itertools import combinations

from assistant.frozen import NamedTuple
from assistant.practice.marking.finding.cases import cases_wrong
from assistant.practice.marking.finding.causes import judge_ways
from assistant.practice.marking.finding.elements import SIDES
from assistant.practice.marking.finding.found import (
    ENOUGH,
    LITTLE,
    Held,
    all_groups,
    element_said,
    enough_of,
    lacks_side,
    one_group,
    ways_said,
    words_said,
)
from assistant.practice.marking.finding.misplaced import (
    beside_it,
    elsewhere,
    of_the_first,
    one_of_both,
    other_kind,
    out_of_order,
    turned_out,
)
from assistant.practice.marking.finding.polarity import affirmed_falsely, both_lacking, contradicted, denied, prevented
from assistant.practice.marking.finding.rivals import (
    colours,
    opposed,
    other_thing,
    persons,
    rivals,
    set_at,
)
from assistant.practice.marking.finding.sided import side_held, side_wrong
from assistant.practice.marking.finding.states import bare_said, state_said
from assistant.practice.marking.finding.verdict_said import under_its_condition, verdict_of, verdict_wrong
from assistant.practice.marking.finding.whichever import choice_said, other_choice
from assistant.practice.marking.never_right import never_right
from assistant.practice.marking.of_results.band_follows import follows_held, follows_wrong
from assistant.practice.marking.of_results.label_parts import falsely_shown
from assistant.practice.marking.of_results.rows import beside_row, other_value
from assistant.practice.marking.of_statements.verdicts import forbidden_said, stand_wrong
from assistant.practice.marking.points import Need, Point
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import NO_ACTION, NOTHING_DONE
from assistant.practice.marking.rewording.variant_labels import of_the_other
from assistant.practice.marking.wrong_figures.degree_said import degree_wrong
from assistant.practice.marking.wrong_figures.former_told import with_formers
from assistant.practice.marking.wrong_figures.numbers import Numbers, judge_numbers
from assistant.practice.marking.wrong_figures.step_numbers import in_all, with_another_verb
from assistant.practice.marking.wrong_figures.systems import systems
from assistant.practice.marking.wrong_figures.unbounded import bounded_any
from assistant.practice.marking.wrong_statements.absolutes import (
    absolute,
    nothing_does,
    other_manner,
    same_as_other,
    too_soon,
    whatever,
)
from assistant.practice.marking.wrong_statements.alone import alone, by_itself
from assistant.practice.marking.wrong_statements.choices import left_open
from assistant.practice.marking.wrong_statements.contrary_state import contrary_said
from assistant.practice.marking.wrong_statements.foreign_steps import foreign_steps
from assistant.practice.marking.wrong_statements.framed import in_the_same_frame
from assistant.practice.marking.wrong_statements.instead import other_action, other_end, other_purpose, other_reason
from assistant.practice.marking.wrong_statements.mixed import (
    apart,
    both_for_either,
    either_for_both,
    inner_order,
    mixed_up,
    shared_with,
)
from assistant.practice.marking.wrong_statements.never_done import all_for_any, done_though_never
from assistant.practice.marking.wrong_statements.of_its_kind import of_another_kind
from assistant.practice.marking.wrong_statements.once import again_and_again
from assistant.practice.marking.wrong_statements.reserved import reserve_denied
from assistant.practice.marking.wrong_statements.restricted import restricted
from assistant.practice.marking.wrong_statements.stray import without_stray
from assistant.practice.marking.wrong_statements.supplies import not_supplied
from assistant.practice.marking.wrong_statements.surplus import in_place_of
from assistant.practice.marking.wrong_statements.switched import put_otherwise
from assistant.practice.marking.wrong_things.alike import crossed, paired, parts_exchanged
from assistant.practice.marking.wrong_things.ascribed import ascribed
from assistant.practice.marking.wrong_things.band_sides import sides_exchanged
from assistant.practice.marking.wrong_things.every_variant import never_changed, said_of_every
from assistant.practice.marking.wrong_things.heads_crossed import heads_crossed
from assistant.practice.marking.wrong_things.other_cases import others_said
from assistant.practice.marking.wrong_things.other_reference import other_reference, put_back
from assistant.practice.marking.wrong_things.parts_crossed import lost_by_name, parts_crossed
from assistant.practice.marking.wrong_things.said_once import not_twice
from assistant.practice.marking.wrong_things.strangers import foreign, only_other, other_measure
from assistant.resolving.knowing import Knowledge

_ONE_OF_TWO = 0.4
"""Share of a point of which one of the things that "and" joins is said."""
_A_LITTLE = 0.2
"""Share of a point of which the thing alone is said, without its figure."""
_WORD = 0.1
"""Share of the words of a step that must be said with its figure: its verb."""
_HEAVY = 2.9
_SLIGHT = 1.3
"""Weight of words beside a figure that need not be said."""


class Compared(NamedTuple):
    """The points as held, and everything that contradicts, in words."""

    held: tuple[Held, ...]
    wrong: tuple[str, ...]


def compare(need: Need, said: Said, know: Knowledge) -> Compared:
    """Return how an answer stands to what is needed."""
    said = with_formers(said, need, know)
    ways = _ways(need, said, know)
    if ways and all(point.way for point in need.points):
        return ways._replace(wrong=(*ways.wrong, *systems(said), *in_the_same_frame(need, said, know)))
    numbers = judge_numbers(need, said, know)
    held = tuple(_held(i, need, said, numbers) for i in range(len(need.points)))
    held = _each_its_own(held, said) if need.ordered else held
    held, exchanged = paired(tuple(side_held(each, need, said, know) for each in held), need, said, know)
    held = follows_held(_with_ways(without_stray(not_twice(held, said), need, said), ways), need, said)
    put_off = denied(said.reading.words, said.reading, need.polar)
    wrong = [
        *(ways.wrong if ways else ()),
        *exchanged,
        *crossed(need, said, numbers),
        *parts_exchanged(held, said),
        *parts_crossed(held, said),
        *heads_crossed(held, said, know),
        *numbers.wrong,
        *verdict_wrong(need, said),
        *_states_wrong(need, said),
        *rivals(need, said, know),
        *opposed([h.point for h in held], [h.places for h in held], need, said),
        *others_said(need, said),
        *elsewhere(held, need, said),
        *colours(held, need, said, know),
        *persons(need, said),
        *systems(said),
        *foreign_steps(need, said, know),
        *other_thing(need, said),
        *set_at(need, said, know),
        *left_open(need, said, know),
        *contradicted(held, need, said, put_off),
        *affirmed_falsely(need, said),
        *other_measure(held, need, said, know),
        *only_other(need, said, know),
        *beside_it(held, said),
        *other_kind(held, said),
        *turned_out(held, said),
        *one_of_both(held, said),
        *with_another_verb(need, said, know),
        *in_all(need, said, know),
        *alone(held, said),
        *by_itself(held, said),
        *other_reference(need, said),
        *put_back(need, said),
        *mixed_up(held, need, said),
        *inner_order(held, said),
        *both_for_either(held, said),
        *either_for_both(held, need, said),
        *apart(held, need, said),
        *too_soon(held, need, said),
        *absolute(need, said),
        *nothing_does(need, said, know),
        *other_manner(need, said),
        *same_as_other(need, said),
        *whatever(need, said),
        *again_and_again(need, said),
        *done_though_never(need, said),
        *all_for_any(need, said),
        *cases_wrong(need, said, know),
        *other_action(held, need, said),
        *other_end(held, need, said),
        *other_reason(held, need, said),
        *other_purpose(held, need, said),
        *bounded_any(held, need, said, know),
        *foreign(held, said),
        *stand_wrong(need, said),
        *shared_with(held, need, said, put_off),
        *beside_row(need, said, put_off),
        *other_value(held, need, said, know),
        *not_supplied(need, said, know, put_off),
        *in_the_same_frame(need, said, know),
        *other_choice(need, said),
        *sides_exchanged(need, said, know),
        *put_otherwise(held, need, said, know),
        *never_right(held, need, said, know),
        *side_wrong(need, said, know),
        *follows_wrong(held, need, said),
        *reserve_denied(need, said),
        *restricted(held, need, said, know),
        *said_of_every(need, said, know),
        *never_changed(need, said),
        *ascribed(need, said, know),
        *contrary_said(held, need, said),
        *degree_wrong(need, said, know),
        *of_the_other(need, said),
        *falsely_shown(held, need, said, know),
        *of_another_kind(held, need, said, know),
    ]
    if need.ordered and not wrong:
        wrong += out_of_order(held if need.sequence else _entangled(held, said), said)
    if not wrong and any(h.share for h in held):
        wrong += in_place_of(need, held, said, know)
    return Compared(tuple(h for h in held if not h.point.optional), tuple(dict.fromkeys(wrong)))


def _entangled(held: tuple[Held, ...], said: Said) -> list[Held]:
    """Return the steps without a figure where two are said in one clause: who asks for each by itself hears them in any
    order, but "autobrake off, no anti-skid" gives to one what is the other's.
    """
    plain_ones = [h for h in held if not h.point.figures and h.places]
    clauses = [{said.clauses[i] for i in h.places} for h in plain_ones]
    return plain_ones if any(one & two for one, two in combinations(clauses, 2)) else []


def _each_its_own(held: tuple[Held, ...], said: Said) -> tuple[Held, ...]:
    """Return steps without those that are found only in the words of an earlier one: "leave it down" said once."""
    made: list[Held] = []
    taken: set[int] = set()
    for one in held:
        again = bool(one.places) and not one.point.figures and taken.issuperset(one.places)
        again = again or (bool(one.places) and _is_told_before(one, made, said))
        made.append(one._replace(share=0.0, places=()) if again else one)
        taken.update(one.places if one.share else ())
    return tuple(made)


def _is_told_before(one: Held, made: list[Held], said: Said) -> bool:
    """Return whether a step is found only before the step that it follows, in words of a still earlier one."""
    before = [h for h in made if h.places]
    return (
        len(before) > 1
        and max(one.places) < min(before[-1].places)
        and any(of_the_first(h.point, one.point, said) for h in before[:-1])
    )


def _ways(need: Need, said: Said, know: Knowledge) -> Compared | None:
    """Return how the ways to a result stand, where they are asked for; only the best where one is enough."""
    if need.cause is None:
        return None
    points = [point for point in need.points if point.way]
    judged = judge_ways(need.cause, [point.way for point in points], said, know)
    held = [Held(*each) for each in zip(points, judged.shares, judged.places, strict=True)]
    if need.one_way and held:
        held = [max(held, key=lambda each: each.share)]
    return Compared(tuple(held), judged.wrong)


def _with_ways(held: tuple[Held, ...], ways: Compared | None) -> tuple[Held, ...]:
    """Return the points as held, with the ways to a result as those that are asked for."""
    if ways is None:
        return held
    return (*(each for each in held if not each.point.way), *ways.held)


def _held(index: int, need: Need, said: Said, numbers: Numbers) -> Held:
    point = need.points[index]
    if point.verdict:
        given = verdict_of(need, said)
        conditional = given != "no" and point.verdict == "no" and under_its_condition(need, said)
        return Held(point, float(given == point.verdict or conditional or (not given and _acted(need, said))), ())
    if point.which:
        return Held(point, choice_said(point.which, said), ())
    if point.state:
        stands = state_said(point.state, need, said) is point.state.there
        return Held(point, float(stands), tuple(said.where(point.state.subject)))
    figures = numbers.found.get(index, ())
    places = tuple(place for place in figures if place is not None)
    words, spots = words_said(point, said)
    if not point.figures:
        return _held_in_words(point, need, said)
    got = len(places) / len(figures) if figures else 0.0
    if point.any_figure:
        got = float(bool(places))
    if point.either and not got:
        return _held(index, need._replace(points=_without_figures(need.points, index)), said, numbers)
    telling = [e for e in point.elements if not e.given and e.weight > 0.7 and e.words not in SIDES]
    single = need.ordered and len(telling) == 1 and len(point.figures) == 1 and len(point.elements) == 1
    told = single or _as_factor(point, said)
    if point.figures_suffice or point.either or told or sum(e.weight for e in telling) < _SLIGHT:
        return Held(point, got, places)
    named = any(e.weight >= _HEAVY and element_said(e, said)[0] for e in telling)
    if not got and LITTLE <= words < ENOUGH and named:
        return Held(point, _A_LITTLE, spots)
    least = (_WORD if got == 1.0 else LITTLE) if need.ordered else ENOUGH
    return Held(point, _both(got, words, least), places or spots if words >= LITTLE else places)


def _as_factor(point: Point, said: Said) -> bool:
    """Return whether a figure is said to be a factor, where that is what it is: "times 1.6", whatever of."""
    factors = [e for e in point.elements if _FACTOR in e.concepts]
    plain_number = len(point.figures) == 1 and not point.figures[0].unit
    return plain_number and any(element_said(e, said)[0] for e in factors)


_FACTOR = "factor"


def _held_in_words(point: Point, need: Need, said: Said) -> Held:
    """Return how a point without figures stands: by its words, or by what it prevents said not to come about."""
    words, spots = words_said(point, said)
    if NO_ACTION.match(point.text):
        return Held(point, float(NOTHING_DONE.search(" ".join(said.reading.words)) is not None), ())
    off = prevented(point, said)
    if off or forbidden_said(point, said):
        return Held(point, 1.0, off)
    if need.question.has("why") and both_lacking(point, said, denied(said.reading.words, said.reading)):
        return Held(point, 1.0, spots)
    lost = lost_by_name(point, said)
    if lost:
        return Held(point, 1.0, lost)
    enough = words >= enough_of(point) and ways_said(point, said) and all_groups(point, said)
    if words >= enough_of(point) and lacks_side(point, said):
        return Held(point, _ONE_OF_TWO, spots, words)
    if not enough and not need.ordered and one_group(point, said) and ways_said(point, said):
        return Held(point, _ONE_OF_TWO, spots, words)
    return Held(point, float(enough), spots if enough else (), words)


def _without_figures(points: tuple[Point, ...], index: int) -> tuple[Point, ...]:
    """Return points with one of them to be said in words."""
    return (*points[:index], points[index]._replace(figures=()), *points[index + 1 :])


_YES_OR_NO = "yes or no"
"""What asks for the verdict itself, beside what is done and the limit."""


def _acted(need: Need, said: Said) -> bool:
    """Return whether what a verdict calls for is said to be done, which says the verdict too: "change it"."""
    if _YES_OR_NO in " ".join(need.question.words):
        return False
    if any(p.either and p.optional and not p.figures and words_said(p, said)[0] >= ENOUGH for p in need.points):
        return True
    if need.within is None:
        return False
    actions = [p for p in need.points if not (p.figures or p.verdict or p.state or p.optional) and p.elements]
    return bool(actions) and all(words_said(p, said)[0] >= enough_of(p) and ways_said(p, said) for p in actions)


def _both(got: float, words: float, least: float) -> float:
    """Return the share of a point with figures and words of its own: both must be said."""
    if got == 1.0:
        return 1.0 if words >= least else 0.6
    return min(0.6, 0.5 * got + (0.4 if words >= ENOUGH else 0.0))


def _states_wrong(need: Need, said: Said) -> list[str]:
    found = []
    bare = bare_said(need, said) if need.polar else None
    for point in need.points:
        if point.state:
            given = state_said(point.state, need, said)
            if bare is not None and bare is not point.state.there:
                found.append(f"{'yes' if bare else 'no'}: {point.text}")
            if given is not None and given is not point.state.there:
                found.append(f"the contrary of: {point.text}")
    return found
