"""The real engine, in its process: what it says has sound in it, and what it cannot do it tells."""

from collections.abc import Iterator

import numpy as np
import pytest

from assistant.voice.speaking.problem import VoiceProblem
from assistant.voice.speaking.settings import VoiceSettings
from assistant.voice.speaking.sounds import Sound
from assistant.voice.speaking.synthesis import EngineSynthesiser


@pytest.fixture(scope="module")
def engine() -> Iterator[EngineSynthesiser]:
    made = EngineSynthesiser({"close": "cloze"})
    yield made
    made.close()


def loudest(sound: Sound) -> int:
    return int(np.abs(np.array(sound.samples, dtype=np.int32)).max())


def test_each_phrase_has_its_sound(engine: EngineSynthesiser) -> None:
    sounds = [
        engine.synthesise(text, VoiceSettings()) for text in ("Sixty-eight degrees.", "At fifteen knots.", "One.")
    ]

    assert all(sound.rate == 22_050 and loudest(sound) > 3000 for sound in sounds)
    assert sounds[0].seconds > sounds[2].seconds > 0.2


def test_the_pace_is_kept(engine: EngineSynthesiser) -> None:
    slow, fast = (engine.synthesise("One hundred and ten knots.", VoiceSettings(rate=rate)) for rate in (100, 240))

    assert slow.seconds > 1.6 * fast.seconds


@pytest.mark.parametrize("name", ["gmw/en-us", "en-us", "EN-US", "English (America)", "English (Am", "en-gb+f3"])
def test_a_voice_goes_by_any_of_its_names(engine: EngineSynthesiser, name: str) -> None:
    usual = engine.synthesise("Four hundred.", VoiceSettings())
    chosen = engine.synthesise("Four hundred.", VoiceSettings(voice=name))

    assert loudest(chosen) > 3000
    assert chosen.samples != usual.samples


def test_an_unknown_voice_is_refused(engine: EngineSynthesiser) -> None:
    with pytest.raises(VoiceProblem, match='there is no voice "nobody"'):
        engine.synthesise("One.", VoiceSettings(voice="nobody"))
    assert loudest(engine.synthesise("One.", VoiceSettings())) > 3000


def test_the_voices_are_listed(engine: EngineSynthesiser) -> None:
    voices = {voice.id: voice for voice in engine.voices()}

    assert "en-gb" in voices["gmw/en"].languages
    assert voices["gmw/en-us"].name == "English (America)"


def test_what_is_hard_for_a_shell_or_a_format_is_said(engine: EngineSynthesiser) -> None:
    assert engine.synthesise('"; rm -rf / & <speak> % \\ é √', VoiceSettings()).seconds > 0.5


def test_a_machine_without_a_voice_says_so(monkeypatch: pytest.MonkeyPatch, tmp_path: object) -> None:
    monkeypatch.setenv("PYTHONPATH", f"{tmp_path}")
    (tmp_path / "espeakng_loader.py").write_text(  # type: ignore[operator, attr-defined]
        "def get_library_path(): return 'none'\ndef get_data_path(): return '/none'\n"
    )
    bare = EngineSynthesiser({})

    with pytest.raises(VoiceProblem, match="this machine has no voice: install the extra speech"):
        bare.synthesise("One.", VoiceSettings())
    bare.close()
