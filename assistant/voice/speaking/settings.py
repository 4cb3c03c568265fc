"""How the voice is to speak: its pace, which voice, how numbers are said. Kept as one small JSON object."""

from __future__ import annotations

import json
from typing import Any

from assistant.frozen import NamedTuple

SLOWEST, FASTEST, STEP = 80, 320, 20
"""Words a minute, and by how many "slower" and "faster" change them."""


class VoiceSettings(NamedTuple):
    """The manner of speaking.

    rate: words a minute. voice: the engine's name of a voice, or "" for its own choice. digits: say numbers digit by
    digit, as on the radio. human: use the more human voice where it is installed.
    """

    rate: int = 160
    voice: str = ""
    digits: bool = False
    human: bool = False

    def faster(self, steps: int = 1) -> VoiceSettings:
        """Return these settings at another pace, within what can be followed; fewer steps are slower."""
        return self._replace(rate=max(SLOWEST, min(FASTEST, self.rate + steps * STEP)))


def settings_text(settings: VoiceSettings) -> str:
    """Return the settings as they are kept."""
    return json.dumps(settings._asdict(), indent=2) + "\n"


def read_settings(text: str) -> VoiceSettings:
    """Return the settings kept in a text; what is missing, unknown or of another kind is as at first."""
    try:
        found = json.loads(text)
    except (ValueError, RecursionError):
        found = None
    first = VoiceSettings()
    if not isinstance(found, dict):
        return first
    kept: dict[str, Any] = {
        name: found[name] for name, value in first._asdict().items() if type(found.get(name)) is type(value)
    }
    return first._replace(**kept).faster(0)
