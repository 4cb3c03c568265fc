"""A typed line that is broken between words where it becomes too wide, as what is answered is.

The library breaks at the last column, wherever that falls. It takes processors of what is shown: this one fills a row
up with spaces where the next word does not fit on it. What is typed stays as it is.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Iterator
from itertools import accumulate

from prompt_toolkit import PromptSession
from prompt_toolkit.formatted_text import StyleAndTextTuples, fragment_list_to_text, to_formatted_text
from prompt_toolkit.layout.processors import Processor, Transformation, TransformationInput
from prompt_toolkit.layout.utils import explode_text_fragments
from prompt_toolkit.utils import get_cwidth


class WordEnds(Processor):
    """Breaks the rows of a line between words. begins: the columns that the prompt takes on the first of them."""

    def __init__(self, begins: Callable[[], int]) -> None:
        self._begins = begins

    def apply_transformation(self, transformation_input: TransformationInput) -> Transformation:
        """Return what is shown of a line, and where each of its characters stands there."""
        single = explode_text_fragments(transformation_input.fragments)
        text = "".join(fragment[1] for fragment in single)
        begins = self._begins() if transformation_input.lineno == 0 else 0
        pieces = tuple(in_rows(text, transformation_input.width, begins))
        shown: StyleAndTextTuples = []
        for fragment, piece in zip(single, pieces, strict=True):
            shown += [("", piece[:-1]), (fragment[0], piece[-1:])]
        ends = list(accumulate(map(len, pieces)))
        places = [end - bool(piece) for end, piece in zip(ends, pieces, strict=True)]
        size, wide = len(text), ends[-1] if ends else 0

        def to_display(place: int) -> int:
            return places[place] if place < size else wide + place - size

        def to_source(place: int) -> int:
            return bisect_right(ends, place) if place < wide else size + place - wide

        return Transformation(shown, to_display, to_source)


def break_at_words(prompt: PromptSession[str]) -> None:
    """Let a prompt break its line between words where it becomes too wide."""

    def begins() -> int:
        """Return the columns of the last line of what is asked: the rest of it stands above."""
        return get_cwidth(fragment_list_to_text(to_formatted_text(prompt.message)).rpartition("\n")[2])

    prompt.input_processors = [*(prompt.input_processors or ()), WordEnds(begins)]


def in_rows(text: str, width: int, begins: int = 0) -> Iterator[str]:
    """Yield what is shown for each character of a line: itself, after spaces to the end of a row where its word begins
    and does not fit there, or nothing for a space that would begin a row. A word wider than a row is cut.
    """
    column, inside = begins % max(width, 1), False  # what is asked may take more than a row itself
    for place, character in enumerate(text):
        wide = get_cwidth(character)
        if character.isspace():
            inside, full = False, column + wide > width
            yield "" if full else character
            column = width if full else column + wide
            continue
        begun, inside = not inside, True
        word = _word_width(text, place) if begun and column < width else 0
        room = width - column
        if room < word <= width and column:
            yield " " * room + character
            column = wide
        else:
            yield character
            column = column + wide if wide <= room else wide


def _word_width(text: str, place: int) -> int:
    width = 0
    for character in text[place:]:
        if character.isspace():
            break
        width += get_cwidth(character)
    return width
