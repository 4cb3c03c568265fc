"""What surrounds a conversation by ear and is handed in: how an answer is said, the screen, the pace, examples."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from assistant.answering.answer import Answer
from assistant.frozen import NamedTuple
from assistant.voice.steering import Phrase


class Manner(NamedTuple):
    """What surrounds a conversation by ear.

    words_for: an answer as it is said. show: writes a line where there is a screen. pace: makes the voice faster by
    some steps, or slower. examples: questions that work, offered when nothing is caught. rehearse: holds a rehearsal
    in the middle of the conversation, and returns what is said after it, or None where nobody answered any more.
    """

    words_for: Callable[[Answer], str]
    show: Callable[[str], None]
    pace: Callable[[int], None]
    examples: Sequence[str]
    phrase: Phrase = lambda utterance, wanted: ""
    rehearse: Callable[[], str | None] = lambda: ""
