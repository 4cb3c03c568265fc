"""Who is named next: whoever has the fewest turns, and by chance among those who have equally few.

Nobody has two turns while somebody has none, and at the end of a class nobody is left unasked if there were questions
enough. Who comes of a round, and when, cannot be foreseen; only that whoever is left of it still comes. Nobody is
called twice running while somebody else has as few turns.

A turn that was passed on counts as one for whoever passed it, so that passing brings no rest. In a class with teams,
the team with the fewest turns for its size comes first, and within it all this holds.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from random import Random

from assistant.practice.keeping.rows import Seat, Turn


def turns_of(seats: Sequence[Seat], turns: Sequence[Turn]) -> dict[int, int]:
    """Return how often each seat was called on, turns that were passed on counted."""
    count = {seat.id: 0 for seat in seats}
    for turn in turns:
        for seat in (*turn.passed, *([turn.seat] if turn.seat is not None else [])):
            if seat in count:
                count[seat] += 1
    return count


def next_seat(
    seats: Sequence[Seat], turns: Sequence[Turn], chance: Random, not_these: Collection[int] = (),
    away: Collection[int] = (),
) -> Seat | None:  # fmt: skip
    """Return who is called on next, or None when there is nobody (left) to be. not_these: who had this question."""
    count = turns_of(seats, turns)
    there = [seat for seat in seats if seat.id not in not_these and seat.id not in away]
    if not there:
        return None
    there = _of_the_next_team(there, seats, count, chance)
    last = max(turns, key=lambda turn: turn.number).seat if turns else None
    fewest = min(count[seat.id] for seat in there)
    waiting = [seat for seat in there if count[seat.id] == fewest]
    return chance.choice([seat for seat in waiting if seat.id != last] or waiting)


def _of_the_next_team(there: list[Seat], seats: Sequence[Seat], count: dict[int, int], chance: Random) -> list[Seat]:
    """Return the members of the team whose turn it is; everybody where there are no teams."""
    teams = sorted({seat.team for seat in there})
    if len(teams) < 2:
        return there

    def share(team: str) -> float:
        members = [seat for seat in seats if seat.team == team]
        return sum(count[seat.id] for seat in members) / len(members)

    fewest = min(map(share, teams))
    chosen = chance.choice([team for team in teams if share(team) == fewest])
    return [seat for seat in there if seat.team == chosen]
