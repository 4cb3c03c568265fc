"""The command as a whole: its help, its version and its mistakes."""

import pytest

from assistant import __version__
from tests.terminal.conftest import Runner


def test_the_version(run: Runner) -> None:
    assert run("--version") == (0, f"downlock {__version__}\n", "")


@pytest.mark.parametrize("arguments", [["--help"], ["-h"], ["ask", "--help"], ["check", "--help"]])
def test_help(run: Runner, arguments: list[str]) -> None:
    done = run(*arguments)

    assert done.code == 0
    assert done.out.startswith("downlock")


@pytest.mark.parametrize(
    "arguments", [["aks", "vle"], ["ask"], ["ask", "--jsno", "vle"], ["--no-histroy"], ["check", "x"]]
)
def test_a_mistake_is_one_line_and_ends_with_two(run: Runner, arguments: list[str]) -> None:
    done = run(*arguments)

    assert (done.code, done.out) == (2, "")
    assert done.err.startswith("downlock: ")
    assert done.err.count("\n") == 1


def test_an_escape_in_a_mistake_is_not_repeated(run: Runner) -> None:
    assert "\x1b" not in run("ask", "--\x1b[31mjson", "vle").err
    assert "\x1b" not in run("\x1b[31mask").err
    assert "\x1b" not in run("ask", "vle", "--knowledge", "/no\x1b[31m").err
