"""The process that plays, with a card that is a file, and with none."""

from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest

from assistant.voice.speaking.player import CardPlayer
from assistant.voice.speaking.problem import VoiceProblem
from assistant.voice.speaking.sounds import sound_from_bytes

STAND_INS = Path(__file__).parent / "stand_ins"


@pytest.fixture
def card(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("PYTHONPATH", str(STAND_INS))
    monkeypatch.setenv("STAND_IN_CARD", str(tmp_path / "card"))
    return tmp_path / "card"


@pytest.fixture
def player(card: Path) -> Iterator[CardPlayer]:
    made = CardPlayer()
    yield made
    made.close()


def sound(value: int, seconds: float = 0.2) -> object:
    return sound_from_bytes(np.full(round(22_050 * seconds), value, dtype="<i2").tobytes(), 22_050)


def heard(card: Path) -> list[int]:
    samples = np.frombuffer(card.read_bytes(), dtype="<i2")
    return samples[samples != 0].tolist()


def test_sounds_are_played_whole_and_in_order(player: CardPlayer, card: Path) -> None:
    for value in (100, 200):
        player.play(sound(value))  # type: ignore[arg-type]
    player.wait()
    player.play(sound(300))  # type: ignore[arg-type]
    player.wait()

    assert heard(card) == [100] * 4410 + [200] * 4410 + [300] * 4410


def test_stop_forgets_what_waits(player: CardPlayer, card: Path) -> None:
    player.play(sound(100, 60))  # type: ignore[arg-type]
    player.stop()
    player.wait()
    player.play(sound(200))  # type: ignore[arg-type]
    player.wait()

    found = heard(card)
    assert found[-4410:] == [200] * 4410
    assert len(found) < 22_050 * 30


@pytest.mark.parametrize(("name", "value"), [("STAND_IN_CARD", ""), ("STAND_IN_BACKEND", "null")])
def test_no_sound_card_is_one_line(card: Path, monkeypatch: pytest.MonkeyPatch, name: str, value: str) -> None:
    monkeypatch.setenv(name, value)
    player = CardPlayer()

    for _ in range(2):
        with pytest.raises(VoiceProblem, match="there is no sound card to play on; the text goes on"):
            player.play(sound(100))  # type: ignore[arg-type]
    player.wait()
    player.close()


def test_no_library_is_one_line(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "miniaudio.py").write_text("raise ImportError\n")
    monkeypatch.setenv("PYTHONPATH", str(tmp_path))
    player = CardPlayer()

    with pytest.raises(VoiceProblem, match="playing needs the extra speech"):
        player.play(sound(100))  # type: ignore[arg-type]
    player.close()
