"""Who is named next: by chance, among those with the fewest turns.

Where a single person is left of a round, the class could count who it is, and whoever has answered could lean back. So
half the time somebody else comes before that one, once a round: nobody is ever more than two turns ahead of anybody,
and nobody has three while somebody has none.

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
    others = [seat for seat in there if seat.id != last] or there  # not twice running where a round meets the next
    fewest = min(count[seat.id] for seat in others)
    waiting = [seat for seat in others if count[seat.id] == fewest]
    nobody_more = max(count[seat.id] for seat in there) <= fewest + 1
    if nobody_more and len(waiting) == 1 < len(others) and chance.randrange(2):  # the only one left of a round
        return chance.choice([seat for seat in others if seat not in waiting])
    return chance.choice(waiting)


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
