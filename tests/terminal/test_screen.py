"""Colour and width follow the terminal and what its user asked for."""

import io
import os

import pytest

from assistant.terminal.arguments import parse
from assistant.terminal.screen import Screen, complain, remark, screen_for


class Terminal(io.StringIO):
    """A stream that says it is a terminal."""

    def isatty(self) -> bool:
        return True


@pytest.fixture(autouse=True)
def usual(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setenv("WT_SESSION", "1")
    monkeypatch.delenv("NO_COLOR", raising=False)


def test_a_terminal_shows_colour() -> None:
    assert screen_for(parse([]), Terminal()).color


@pytest.mark.parametrize(("name", "value"), [("NO_COLOR", "1"), ("TERM", "dumb")])
def test_a_wish_for_none_is_respected(monkeypatch: pytest.MonkeyPatch, name: str, value: str) -> None:
    monkeypatch.setenv(name, value)

    assert not screen_for(parse([]), Terminal()).color


def test_neither_a_pipe_nor_the_plain_form_shows_colour() -> None:
    assert not screen_for(parse([]), io.StringIO()).color
    assert not screen_for(parse(["--plain"]), Terminal()).color


@pytest.mark.parametrize(("shown", "used"), [(20, 40), (40, 40), (72, 72), (300, 100)])
def test_the_width_is_read_anew_each_time(monkeypatch: pytest.MonkeyPatch, shown: int, used: int) -> None:
    class Numbered(Terminal):
        def fileno(self) -> int:
            return 1

    screen = Screen(Numbered())
    monkeypatch.setattr(os, "get_terminal_size", lambda number: os.terminal_size((57, 24)))
    assert screen.width == 57

    monkeypatch.setattr(os, "get_terminal_size", lambda number: os.terminal_size((shown, 24)))
    assert screen.width == used


@pytest.mark.parametrize(("columns", "used"), [("60", 60), ("", 80), ("wide", 80), ("0", 80)])
def test_without_a_terminal_the_environment_tells(
    monkeypatch: pytest.MonkeyPatch, columns: str, used: int
) -> None:
    monkeypatch.setenv("COLUMNS", columns)

    assert Screen(io.StringIO()).width == used


def test_a_width_asked_for_comes_first() -> None:
    assert screen_for(parse(["--width", "132"]), io.StringIO()).width == 132


def test_a_complaint_is_wrapped_at_words_where_it_is_read(monkeypatch: pytest.MonkeyPatch) -> None:
    shown = Terminal()
    monkeypatch.setattr("sys.stderr", shown)
    monkeypatch.setattr("assistant.terminal.screen._columns", lambda stream: 40)
    complain("compiling the knowledge base, once until it changes; this takes some seconds")

    lines = shown.getvalue().splitlines()
    assert len(lines) > 1 and all(len(line) <= 40 for line in lines)
    assert " ".join(line.strip() for line in lines).endswith("this takes some seconds")


LONG = "/home/ann/data/practice.db was damaged and is set aside; there is no backup, and a new record begins."


def test_a_complaint_follows_the_width_that_was_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    complain(LONG, 50)

    lines = capsys.readouterr().err.splitlines()
    assert len(lines) == 3 and max(map(len, lines)) <= 50
    assert " ".join(line.strip() for line in lines) == f"downlock: {LONG}"


@pytest.mark.parametrize("columns", ["48", "30", ""])
def test_without_a_terminal_a_complaint_is_one_line(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], columns: str
) -> None:
    monkeypatch.setenv("COLUMNS", columns)
    remark(LONG)

    assert capsys.readouterr().err.splitlines() == [LONG]
