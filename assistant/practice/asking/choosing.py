"""What to ask next: what a revision changed, then what is fading, then what is new, at a pace that fits the days left.

Nothing new is begun while anything fades: what is begun and not kept up is lost again. Only a sitting of so many
questions on the way to a day keeps some places for what is new; else what fades would fill each of them, and most of it
would never be asked. On the last day none are kept: what is begun then is not kept up.

Pure: time and chance are handed in, so that the same record and the same seed give the same sitting.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from datetime import date, datetime, timedelta
from itertools import islice
from math import ceil
from random import Random

from assistant.frozen import NamedTuple
from assistant.practice.asking.pool import GENERAL
from assistant.practice.asking.standing import Standing
from assistant.practice.recall import AIM

CHANGED, FADING, NEW, AHEAD = "changed", "fading", "new", "ahead"
NEW_A_DAY = 12
"""New records a day when no date was set."""
_LOOK = 6
"""How many of the most urgent are looked through for one of another section."""
_LAST_DAYS = 0.15
"""Share of the days left that is kept free of new records, so that the last ones are asked a second time."""
_FIRST_KINDS = ("procedures", "limits")
"""What is begun first where all is equally new and nothing is urgent: what is done, then figures."""
NEW_SHARE = 0.5
"""Share of a sitting of so many questions that is kept for what is new, where there is a day to be ready by."""
_EARLY = 1.5
"""How much more than an even share of what is new is begun on a day, while little is fading yet."""


class Choice(NamedTuple):
    """What to ask, and why: CHANGED, FADING, NEW, or AHEAD of its time (more was wanted than is due)."""

    standing: Standing
    why: str
    recall: float
    """The expected recall at the moment, 0 to 1."""

    @property
    def record(self) -> str:
        """The id of the record to ask about."""
        return self.standing.item.record


class Pace(NamedTuple):
    """What the days left ask of today.

    days: left, today among them; nothing without a date. unseen: records never asked. new: still to begin today.
    begun: begun today already. due: changed or fading now.
    """

    days: int | None
    unseen: int
    new: int
    begun: int
    due: int


_Tier = tuple[str, list[Standing], int]
"""Why something is asked, what may be, and how many of it are at most."""


def pace(standings: Iterable[Standing], now: datetime, ready_by: date | None = None) -> Pace:
    """Return what is to be done today; days are those of the clock that `now` (aware) belongs to."""
    every = list(standings)
    unseen = sum(1 for each in every if each.card is None)
    begun = sum(1 for each in every if _began_on(each, now))
    due = sum(1 for each in every if each.was or each.fades(now))
    if ready_by is None:
        return Pace(None, unseen, min(unseen, max(NEW_A_DAY - begun, 0)), begun, due)
    days = max((ready_by - now.date()).days + 1, 1)
    beginning = max(days - ceil(days * _LAST_DAYS), 1) if days > 1 else 1
    share = ceil((unseen + begun) * _EARLY / (beginning - 1 + _EARLY))
    return Pace(days, unseen, min(unseen, max(share - begun, 0)), begun, due)


def plan(
    standings: Sequence[Standing],
    now: datetime,
    chance: Random,
    count: int | None = None,
    ready_by: date | None = None,
    asked: Sequence[str] = (),
    ahead: bool = True,
) -> tuple[Choice, ...]:
    """Return what to ask in a sitting, in order. count: questions in all, by default as many as today asks for.

    ahead: with a count, what is not due yet fills what is left, soonest first; else the count is only the most.
    asked: records asked in this sitting already, the last one last; they count, and are left out unless due again.
    """
    left = None if count is None else max(count - len(asked), 0)
    return tuple(islice(_chosen(standings, now, chance, count, ready_by, asked, ahead), left))


def choose_next(
    standings: Sequence[Standing],
    now: datetime,
    chance: Random,
    ready_by: date | None = None,
    asked: Sequence[str] = (),
    count: int | None = None,
    ahead: bool = True,
) -> Choice | None:
    """Return what to ask next, as `plan` has it: nothing when the sitting, or without a count today's work, is done."""
    if count is not None and len(asked) >= count:
        return None
    return next(_chosen(standings, now, chance, count, ready_by, asked, ahead), None)


def fading_first(standings: Iterable[Standing], now: datetime) -> list[Standing]:
    """Return standings with what is recalled least first."""
    return sorted(standings, key=lambda each: (each.recall(now), each.card.due if each.card else now))


def _chosen(
    standings: Sequence[Standing],
    now: datetime,
    chance: Random,
    count: int | None,
    ready_by: date | None,
    asked: Sequence[str],
    ahead: bool,
) -> Iterator[Choice]:
    last = next((each.item.section for each in standings if asked and each.item.record == asked[-1]), "")
    return _interleaved(_tiers(standings, now, chance, count, ready_by, asked, ahead), now, chance, last)


def _tiers(
    standings: Sequence[Standing],
    now: datetime,
    chance: Random,
    count: int | None,
    ready_by: date | None,
    asked: Sequence[str],
    ahead: bool,
) -> Iterator[_Tier]:
    """Yield what may be asked, tier by tier; the last is only looked for when it is wanted."""
    left = [each for each in standings if each.item.record not in asked or _again(each, now, asked)]
    changed = [each for each in left if each.was]
    fading = fading_first((each for each in left if not each.was and each.fades(now)), now)
    new = _new(left, pace(standings, now, ready_by).new, chance)
    for declared in (True, False):
        told = [each for each in changed if each.was and each.was.declared == declared]
        yield CHANGED, told, len(told)
    last_day = ready_by is not None and ready_by <= now.date()
    kept = _kept_for_new(standings, len(new), count, asked, now) if ready_by and not last_day else 0
    places = len(fading) if count is None else max(count - len(asked) - len(changed) - kept, 0)
    yield FADING, fading, min(places, len(fading))
    yield NEW, new, len(new)
    if count is not None and ahead:
        later = _ahead(left, now, ready_by)
        yield AHEAD, later, len(later)


def _kept_for_new(
    standings: Iterable[Standing], new: int, count: int | None, asked: Sequence[str], now: datetime
) -> int:
    """Return how many of the places left in a sitting of so many questions are kept for what is new."""
    begun = sum(1 for each in standings if each.item.record in asked and _began_on(each, now))
    return min(max(int((count or 0) * NEW_SHARE) - begun, 0), new)


def _again(standing: Standing, now: datetime, asked: Sequence[str]) -> bool:
    """Whether what was asked in this sitting is due again, and not just now asked."""
    return standing.fades(now) and standing.item.record not in asked[-3:]


def _new(standings: Sequence[Standing], count: int, chance: Random) -> list[Standing]:
    """What is to be begun today: the type's own before what is true of all aeroplanes, a fair share of each section."""
    sections: dict[str, list[Standing]] = {}
    for each in _widely(standings):
        sections.setdefault(each.item.section, []).append(each)
    own = [group for name, group in sections.items() if name != GENERAL]
    chosen = _by_shares(own, count, chance)
    return chosen + sections.get(GENERAL, [])[: count - len(chosen)]


def _widely(standings: Sequence[Standing]) -> list[Standing]:
    """What was never asked: what is urgent, then a paragraph's first before the second of any, since one fact is often
    several records."""
    known = Counter(each.item.paragraph for each in standings if each.card is not None)
    ranked = []
    for each in sorted(standings, key=_first_of_its_kind):
        if each.card is None:
            ranked.append((known[each.item.paragraph], each))
            known[each.item.paragraph] += 1
    return [each for _, each in sorted(ranked, key=lambda pair: (not pair[1].item.urgent, pair[0]))]


def _first_of_its_kind(standing: Standing) -> tuple[bool, int]:
    kind = standing.item.kind
    return not standing.item.urgent, _FIRST_KINDS.index(kind) if kind in _FIRST_KINDS else len(_FIRST_KINDS)


def _by_shares(groups: list[list[Standing]], count: int, chance: Random) -> list[Standing]:
    """Take from each group in proportion to its size, in its own order."""
    total = sum(map(len, groups))
    count = min(count, total)
    spread = [((place + chance.random()) / len(group), group[place]) for group in groups for place in range(len(group))]
    return [each for _, each in sorted(spread, key=lambda pair: pair[0])][:count]


def _began_on(standing: Standing, now: datetime) -> bool:
    return standing.first is not None and standing.first.astimezone(now.tzinfo).date() == now.date()


def _ahead(standings: Iterable[Standing], now: datetime, ready_by: date | None) -> list[Standing]:
    """What is not due yet, what will have faded most on the day first; then what would be begun another day."""
    day = now + timedelta(days=max((ready_by - now.date()).days, 0)) if ready_by else now
    seen = [each for each in standings if each.card and not each.was and not each.fades(now)]
    fading = sorted((each for each in seen if each.recall(day) < AIM), key=lambda each: each.recall(day))
    other = sorted((each for each in seen if each.recall(day) >= AIM), key=lambda each: each.recall(day))
    unseen = [each for each in standings if each.card is None]
    return [*fading, *unseen, *other]


def _interleaved(tiers: Iterable[_Tier], now: datetime, chance: Random, last: str) -> Iterator[Choice]:
    """Yield each tier in turn, the most urgent first, but a section twice running only where no other is left."""
    recent = [last] if last else []
    given: set[str] = set()
    for why, group, most in tiers:
        waiting = [each for each in group if each.item.record not in given]
        for _ in range(min(most, len(waiting))):
            chosen = _other_section(waiting, recent, chance)
            waiting.remove(chosen)
            given.add(chosen.item.record)
            recent.append(chosen.item.section)
            yield Choice(chosen, why, chosen.recall(now))


def _other_section(waiting: Sequence[Standing], recent: Sequence[str], chance: Random) -> Standing:
    """Choose from another section than the last: one that holds half of what waits, so that it does not end in a run
    of it, else among the most urgent the one asked longest ago."""
    last = recent[-1] if recent else ""
    others = [each for each in waiting if each.item.section != last]
    if not others:
        return waiting[0]
    largest, size = Counter(each.item.section for each in others).most_common(1)[0]
    if size * 2 >= len(waiting):
        return next(each for each in others if each.item.section == largest)
    urgent: dict[str, Standing] = {}
    for each in others[:_LOOK]:
        urgent.setdefault(each.item.section, each)
    ago = {name: recent[::-1].index(name) if name in recent else len(recent) for name in urgent}
    return urgent[chance.choice([name for name in urgent if ago[name] == max(ago.values())])]
