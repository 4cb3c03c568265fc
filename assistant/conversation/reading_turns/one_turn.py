"""A turn of a conversation as it was read, before what came before it is looked at."""

from __future__ import annotations

from assistant.frozen import NamedTuple
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Question


class Turn(NamedTuple):
    """A turn as a question of its own, with what that gives; corrects: it opens as a correction."""

    text: str
    alone: Question
    first: Scored
    corrects: bool
