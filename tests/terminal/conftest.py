"""The command run in this process, with files of its own and an input that is handed to it."""

import io
import sys
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

import pytest

from assistant.terminal.arguments import parse
from assistant.terminal.main import main
from assistant.terminal.session import Session, open_session


class Run(NamedTuple):
    code: int
    out: str
    err: str


Runner = Callable[..., Run]


@pytest.fixture(scope="session")
def cache(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("cache")


@pytest.fixture(autouse=True)
def own_places(tmp_path: Path, cache: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder for the user's files, which starts empty."""
    home = tmp_path / "home"
    monkeypatch.setenv("DOWNLOCK_HOME", str(home))
    monkeypatch.setenv("DOWNLOCK_CACHE", str(cache))
    for name in ("DOWNLOCK_KNOWLEDGE", "DOWNLOCK_TYPE", "COLUMNS", "NO_COLOR"):
        monkeypatch.delenv(name, raising=False)
    return home


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Runner:
    """Runs the command with arguments and the bytes of its input."""

    def runner(*arguments: str, typed: bytes = b"") -> Run:
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(typed)))
        code = main(list(arguments))
        return Run(code, *capsys.readouterr())

    return runner


@pytest.fixture
def session() -> Session:
    return open_session(parse([]))
