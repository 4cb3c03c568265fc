"""Carries out what happens in a class, step by step into its record, and reads where it stands."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from assistant.practice.keeping.rows import OPEN, Seated
from assistant.practice.keeping.sittings import Sittings
from assistant.practice.leading.plan import Aims, Plan, aims_of, plan_of, plan_values
from assistant.practice.leading.standing import (
    Act,
    Call,
    End,
    Hint,
    Join,
    Keep,
    MarkTurn,
    Pause,
    Put,
    Show,
    Standing,
    TakeBack,
    Unpass,
    Withdraw,
)
from assistant.practice.papers.sets import NoSet

_LONGEST_S = 1800.0
"""Seconds between two steps that still count as class: beyond, somebody went away without saying so."""


def standing_of(sittings: Sittings, sitting: int, aims: Aims | None = None) -> Standing:
    """Return where a sitting stands. Raises LookupError and NoSet."""
    kept = sittings.get(sitting)
    try:
        known = aims if aims is not None else aims_of(kept.options)
        plan = plan_of(kept.plan)
    except (KeyError, TypeError, ValueError) as error:  # of another version, or of another program
        raise NoSet(f"what was kept of it cannot be read ({error})") from None
    return Standing(kept, sittings.seats(sitting), sittings.turns(sitting), known, plan)


class Holder:
    """Holds one class sitting. seconds: a clock that only counts."""

    def __init__(self, sittings: Sittings, sitting: int, seconds: Callable[[], float]) -> None:
        self._sittings = sittings
        self._id = sitting
        self._seconds = seconds
        self._since = seconds()
        self.standing = standing_of(sittings, sitting)

    def do(self, acts: Iterable[Act]) -> Standing:
        """Carry acts out in their order, and return where the class then stands."""
        self._count_time()
        for act in acts:
            _DOERS[type(act)](self._sittings, self._id, act)
        self.standing = standing_of(self._sittings, self._id, self.standing.aims)
        return self.standing

    def look(self) -> Standing:
        """Return where the class stands now, the time of this moment counted."""
        self._count_time()
        self.standing = standing_of(self._sittings, self._id, self.standing.aims)
        return self.standing

    @property
    def spent(self) -> float:
        """Seconds of class so far, those of this moment counted."""
        return self.standing.plan.spent + self._passed()

    def _passed(self) -> float:
        if self.standing.sitting.state != OPEN:
            return 0.0
        return min(max(self._seconds() - self._since, 0.0), _LONGEST_S)

    def _count_time(self) -> None:
        """Add the time since the last step to what the plan says was spent."""
        passed, self._since = self._passed(), self._seconds()
        if self.standing.aims.minutes and passed >= 1:
            kept = plan_of(self._sittings.get(self._id).plan)
            self._sittings.keep_plan(self._id, plan_values(kept._replace(spent=kept.spent + passed)))


def _put(sittings: Sittings, sitting: int, act: Put) -> None:
    sittings.ask(sitting, act.asking, plan_values(_timed(sittings, sitting, act.plan)))


def _keep(sittings: Sittings, sitting: int, act: Keep) -> None:
    sittings.keep_plan(sitting, plan_values(_timed(sittings, sitting, act.plan)))


def _timed(sittings: Sittings, sitting: int, plan: Plan) -> Plan:
    """Return a plan with the time that was counted meanwhile."""
    return plan._replace(spent=max(plan.spent, plan_of(sittings.get(sitting).plan).spent))


def _mark(sittings: Sittings, sitting: int, act: MarkTurn) -> None:
    sittings.mark(act.turn, act.mark, act.share, act.answer, act.marked, act.confused_with)


def _pause(sittings: Sittings, sitting: int, act: Pause) -> None:
    if act.on:
        sittings.pause(sitting)
    else:
        sittings.resume(sitting)


_DOERS: dict[type, Callable[[Sittings, int, Any], object]] = {
    Put: _put,
    Keep: _keep,
    Call: lambda sittings, sitting, act: sittings.name(act.turn, act.seat),
    Unpass: lambda sittings, sitting, act: sittings.unpass(act.turn),
    Hint: lambda sittings, sitting, act: sittings.hint(act.turn),
    Show: lambda sittings, sitting, act: sittings.reveal(act.turn),
    MarkTurn: _mark,
    TakeBack: lambda sittings, sitting, act: sittings.undo(sitting),
    Withdraw: lambda sittings, sitting, act: sittings.drop(act.turn),
    Join: lambda sittings, sitting, act: sittings.join(sitting, Seated(act.name, act.team)),
    Pause: _pause,
    End: lambda sittings, sitting, act: sittings.end(sitting),
}
