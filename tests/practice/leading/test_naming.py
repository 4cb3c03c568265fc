"""Who is named: evenly, and in no order that a class could foresee."""

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


def test_nobody_is_ever_more_than_two_turns_ahead() -> None:
    for seed in range(50):
        order = named(seats(12), 36, seed)
        for count in range(1, 37):
            turns = Counter(dict.fromkeys(range(12), 0))
            turns.update(order[:count])
            assert max(turns.values()) - min(turns.values()) <= 2
        assert len(set(order[:24])) == 12


def test_the_fewest_turns_come_first_but_for_one_before_the_last_of_a_round() -> None:
    for seed in range(200):
        order = named(seats(12), 13, seed)
        assert len(set(order[:11])) == 11
        assert set(order) == set(range(12))


def test_in_a_team_nobody_has_two_turns_while_two_have_none_or_three_while_one_has() -> None:
    for seed in range(200):
        order = named(seats(12, ("Red", "Blue")), 18, seed)
        for count in range(1, 19):
            turns = Counter(dict.fromkeys(range(12), 0))
            turns.update(order[:count])
            for team in (range(0, 12, 2), range(1, 12, 2)):
                of = sorted(turns[seat] for seat in team)
                assert of[-1] - of[0] <= 2
                assert of[-1] - of[1] <= 1


def test_whoever_came_late_is_not_called_twice_running() -> None:
    turns = [turn(number, number % 3) for number in range(9)]
    order = []
    for number in range(9, 13):
        chosen = next_seat(seats(4), turns, Random(number))
        assert chosen is not None
        order.append(chosen.id)
        turns.append(turn(number, chosen.id))

    assert 3 in order[:2]
    assert all(one != two for one, two in itertools.pairwise(order))


def test_whoever_answered_cannot_lean_back_and_the_last_one_is_not_foreseen() -> None:
    orders = [named(seats(12), 24, seed) for seed in range(200)]
    last = [order for order in orders if len(set(order[:11])) == 11]  # one is left of the round

    foreseen = sum(order[11] not in order[:11] for order in last)
    assert 0.25 * len(last) < foreseen < 0.75 * len(last)


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
    assert max(counts.values()) - min(counts[each] for each in (0, 1, 3, 4, 5)) <= 3
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
