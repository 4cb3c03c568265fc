"""A process that hangs, ends or prints costs one line, never the conversation."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.voice.speaking.child import Child
from assistant.voice.speaking.problem import VoiceProblem
from assistant.voice.speaking.settings import VoiceSettings
from assistant.voice.speaking.synthesis import EngineSynthesiser

WORKERS = "tests.voice.speaking.workers"


@pytest.fixture
def made() -> Iterator[list[Child]]:
    children: list[Child] = []
    yield children
    for child in children:
        child.end()


def _take_part(child: Child, kind: str) -> None:
    """Let the process run another of the stand-ins than its `main`."""
    child._command[-1] = child._command[-1].replace("import main;", f"import {kind} as main;")


def child(kind: str, made: list[Child]) -> Child:
    found = Child(WORKERS, called="the voice")
    _take_part(found, kind)
    made.append(found)
    return found


def test_what_is_printed_does_not_mix_with_answers(made: list[Child], tmp_path: Path) -> None:
    voice = child("sound", made)

    for name in ("a", "b"):
        assert voice.ask({"file": str(tmp_path / name)}, 20) == {"file": str(tmp_path / name)}


def test_one_that_hangs_is_ended(made: list[Child]) -> None:
    voice = child("hanging", made)

    with pytest.raises(VoiceProblem, match=r"did not answer within 0\.5 s"):
        voice.ask({}, 0.5)
    assert not voice.running


def test_one_that_ends_is_told(made: list[Child]) -> None:
    with pytest.raises(VoiceProblem, match="the voice ended by itself"):
        child("ending", made).ask({}, 20)


def test_one_that_cannot_be_started_is_told(made: list[Child]) -> None:
    voice = child("sound", made)
    voice._command[0] = "/no/such/program"

    with pytest.raises(VoiceProblem, match="the voice cannot be started"):
        voice.ask({}, 20)


def test_a_phrase_is_said_by_a_new_process_after_the_first_ended(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("STAND_IN_PLACE", str(tmp_path / "ended"))
    voice = EngineSynthesiser({}, module=WORKERS)
    _take_part(voice._child, "ending_once")

    assert len(voice.synthesise("One.", VoiceSettings()).samples) == 800
    assert (tmp_path / "ended").exists()
    voice.close()


def test_ending_twice_is_told(made: list[Child]) -> None:
    voice = EngineSynthesiser({}, module=WORKERS)
    _take_part(voice._child, "ending")

    with pytest.raises(VoiceProblem, match="ended by itself"):
        voice.synthesise("One.", VoiceSettings())
