"""Who is named: the fewest turns first, and among equals in no order that a class could foresee."""

import itertools
from collections import Counter
from datetime import datetime
from random import Random

from assistant.practice.keeping.rows import MARKED, Asking, Seat, Turn
from assistant.practice.leading.naming import next_seat, turns_of

NOW = datetime(2026, 11, 25)


def seats(count: int, teams: tuple[str, ...] = ("",)) -> tuple[Seat, ...]:
    return tuple(Seat(place, place, f"P{place}", teams[place % len(teams)], place, 0) for place in range(count))


def turn(number: int, seat: int | None, passed: tuple[int, ...] = ()) -> Turn:
    return Turn(
        number, 1, number, Asking("r", "q", "k"), MARKED, seat, passed, False, "right", "right", 1, "", False, "", NOW
    )


def named(people: tuple[Seat, ...], count: int, seed: int, passes: tuple[int, ...] = ()) -> list[int]:
    """The seats named in so many turns; those in passes always pass once."""
    chance, turns = Random(seed), []
    for number in range(count):
        chosen = next_seat(people, turns, chance)
        assert chosen is not None
        gone: tuple[int, ...] = ()
        if chosen.id in passes:
            gone = (chosen.id,)
            chosen = next_seat(people, turns, chance, gone)
            assert chosen is not None
        turns.append(turn(number, chosen.id, gone))
    return [each.seat for each in turns if each.seat is not None]


def test_the_fewest_turns_come_first_so_that_nobody_is_left_unasked() -> None:
    for seed in range(50):
        order = named(seats(12), 36, seed)
        for count in range(1, 37):
            turns = Counter(dict.fromkeys(range(12), 0))
            turns.update(order[:count])
            assert max(turns.values()) - min(turns.values()) <= 1


def test_in_a_team_the_fewest_turns_come_first() -> None:
    for seed in range(50):
        order = named(seats(12, ("Red", "Blue")), 18, seed)
        for count in range(1, 19):
            turns = Counter(dict.fromkeys(range(12), 0))
            turns.update(order[:count])
            for team in (range(0, 12, 2), range(1, 12, 2)):
                of = [turns[seat] for seat in team]
                assert max(of) - min(of) <= 1


def test_whoever_came_late_comes_first_until_level() -> None:
    turns = [turn(number, number % 3) for number in range(6)]
    order = []
    for number in range(6, 10):
        chosen = next_seat(seats(4), turns, Random(number))
        assert chosen is not None
        order.append(chosen.id)
        turns.append(turn(number, chosen.id))

    assert order[:2] == [3, 3]
    assert 3 not in order[2:]


def test_among_equals_nobody_can_be_foreseen() -> None:
    orders = [named(seats(12), 24, seed) for seed in range(400)]

    for place in range(10):
        places = Counter(sorted(set(range(12)) - set(order[:place])).index(order[place]) for order in orders)
        assert len(places) == 12 - place
        assert max(places.values()) < 2 * len(orders) / (12 - place)


def test_no_order_repeats_from_round_to_round_or_class_to_class() -> None:
    orders = [named(seats(12), 24, seed) for seed in range(200)]

    assert len({tuple(order[:12]) for order in orders}) == 200
    assert all(order[:12] != order[12:] for order in orders)
    assert all(one != two for order in orders for one, two in itertools.pairwise(order))
    first = Counter(order[0] for order in orders)
    assert len(first) == 12
    assert max(first.values()) < 40
    after_last = Counter((order[12] - order[11]) % 12 for order in orders)  # neighbours say nothing
    assert max(after_last.values()) < 45


def test_passing_brings_no_rest_and_no_second_call_at_once() -> None:
    order = named(seats(6), 60, 3, passes=(2,))
    counts = Counter(order)

    assert counts[2] == 0
    assert max(counts.values()) - min(counts[each] for each in (0, 1, 3, 4, 5)) <= 2
    assert turns_of(seats(2), [turn(1, 1, (0,))]) == {0: 1, 1: 1}


def test_teams_come_up_evenly_whatever_their_size() -> None:
    people = (*seats(3, ("Red",)), *(Seat(10 + n, 10 + n, f"B{n}", "Blue", 10 + n, 0) for n in range(6)))
    for seed in range(20):
        assert sum(each < 10 for each in named(people, 18, seed)) == 6


def test_who_is_away_or_had_it_is_not_named() -> None:
    chance = Random(1)

    assert {next_seat(seats(3), [], chance, (0,), (1,)) for _ in range(20)} == {seats(3)[2]}
    assert next_seat(seats(2), [], chance, (0,), (1,)) is None
    assert next_seat((), [], chance) is None
