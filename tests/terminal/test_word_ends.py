"""What is typed is broken between words where it becomes too wide, and stays what was typed."""

import io
from collections.abc import Callable

import pytest
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.layout.controls import BufferControl
from prompt_toolkit.layout.processors import TransformationInput
from prompt_toolkit.output import DummyOutput

from assistant.terminal.class_prompt import KeyedLines
from assistant.terminal.conversation import talk
from assistant.terminal.screen import Screen
from assistant.terminal.session import Session
from assistant.terminal.sitting_prompt import EditedLines
from assistant.terminal.word_ends import WordEnds, in_rows


def rows(text: str, width: int, begins: int = 0) -> list[str]:
    """What the rows of a screen hold, which is filled column by column."""
    shown = " " * begins + "".join(in_rows(text, width, begins))
    return [shown[place : place + width].rstrip() for place in range(0, len(shown), width)]


@pytest.mark.parametrize(
    ("text", "width", "begins", "expected"),
    [
        ("press the pedals steadily", 20, 0, ["press the pedals", "steadily"]),
        ("press the pedals steadily", 20, 10, ["          press the", "pedals steadily"]),
        ("pedals", 20, 18, ["", "pedals"]),
        ("press the pedals", 10, 22, ["", "", "  press", "the pedals"]),
        ("press", 10, 10, ["", "press"]),
        ("one two three", 7, 0, ["one two", "three"]),
        ("one two  three", 7, 0, ["one two", "three"]),
        ("six full applications", 8, 0, ["six full", "applicat", "ions"]),
        ("a verylongwordindeed", 6, 0, ["a very", "longwo", "rdinde", "ed"]),
        ("short", 20, 10, ["          short"]),
        ("one two ", 7, 0, ["one two"]),
        ("", 7, 0, []),
    ],
)
def test_no_word_that_fits_a_row_is_cut(text: str, width: int, begins: int, expected: list[str]) -> None:
    assert rows(text, width, begins) == expected


def test_wide_signs_take_their_columns() -> None:
    assert "".join(in_rows("車輪 車輪", 7)) == "車輪   車輪"


@pytest.mark.parametrize("width", [7, 11, 16, 40])
def test_each_place_typed_has_its_place_shown(width: int) -> None:
    text = "press  the pedals steadily and wait"
    given = TransformationInput(
        BufferControl(), BufferControl().buffer.document, 0, lambda place: place, [("", text)], width, 1
    )

    shown = WordEnds(lambda: 3).apply_transformation(given)

    plain = "".join(fragment[1] for fragment in shown.fragments)
    for place, character in enumerate(text):
        stands = shown.source_to_display(place)
        if not character.isspace():
            assert plain[stands] == character
            assert shown.display_to_source(stands) == place
    assert shown.source_to_display(len(text)) == len(plain)
    assert shown.display_to_source(len(plain)) == len(text)


def test_the_line_given_is_the_one_typed(session: Session) -> None:
    typed = "press the brake pedals steadily and release them again and again until the pressure is gone"
    makers: list[Callable[..., EditedLines | KeyedLines]] = [EditedLines, KeyedLines]
    for make in makers:
        with create_pipe_input() as source:
            lines = make(Screen(io.StringIO(), 40), source, DummyOutput())
            source.send_text(f"{typed}\r")
            said = lines.ask("Answer: ")
        assert typed in said

    out = io.StringIO()
    with create_pipe_input() as source:
        source.send_text("what is the maximum speed at which the landing gear may be extended, please tell me?\rstop\r")
        talk(session, Screen(out, 40), "", source, DummyOutput())
    assert "230 kt" in out.getvalue()
