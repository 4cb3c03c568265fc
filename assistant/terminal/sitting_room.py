"""What a sitting at the prompt is held with: one thing to hand on instead of ten."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

from assistant.frozen import NamedTuple
from assistant.practice.asking.pool import Pool
from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import Learner
from assistant.practice.sitting_state import Desk
from assistant.terminal.screen import Screen
from assistant.terminal.session import Session
from assistant.terminal.sitting_keeping import Keeping
from assistant.terminal.sitting_prompt import Asking

if TYPE_CHECKING:
    from assistant.terminal.sitting_voice import LineVoice


class Wanted(NamedTuple):
    """What was asked for: questions or minutes, by default what today asks; topics; what wordings and order follow."""

    number: int | None
    minutes: int | None
    topics: tuple[str, ...]
    seed: str


class Room(NamedTuple):
    """Who sits, what may be asked, what answers and marks, where lines come from and go to."""

    record: Record
    learner: Learner
    ready_by: date | None
    session: Session
    pool: Pool
    desk: Desk
    asking: Asking
    screen: Screen
    keeping: Keeping
    wanted: Wanted
    piped: bool = False
    """Whether lines come from a pipe: nobody presses Enter there to go on to the next question."""
    voice: LineVoice | None = None
    """What says the lines aloud, where that was asked for."""
    by_ear: bool = False
    """Whether answers are heard: then nothing is asked that takes pencil and paper, and nothing counts as typed."""
