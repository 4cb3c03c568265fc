"""Short phrases and numbers where they are expected, and whether what a grammar heard can have been said at all."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from assistant.quantities.tokens import words_of
from assistant.resolving.knowing import Knowledge
from assistant.voice.hearing.recognising import HearingProblem
from assistant.voice.hearing.samples import from_pcm
from assistant.voice.hearing.sounds import Sounding, apart, dictionary

_ALIKE = 0.42
"""Mean cost a sound up to which two recognisers have heard the same phrase."""


def phrases_of(knowledge: Knowledge) -> Callable[[bytes, Sequence[str], bool], str]:
    """Return what hears which of some phrases an utterance is, or a number. Raises HearingProblem."""
    from assistant.voice.hearing.sphinx import Phrases

    units = [name for unit in knowledge.units for words in unit.names[:3] for name in words[:1] if len(name) > 2]
    heard = Phrases(Sounding(dictionary()), dict.fromkeys(units))
    return lambda pcm, wanted, numbers: heard.hear(from_pcm(pcm), wanted, numbers)


def alike() -> Callable[[str, str], bool]:
    """Return what tells whether two texts sound alike; where no dictionary is installed, whether they are the same."""
    try:
        sounding = Sounding(dictionary())
    except (HearingProblem, OSError):
        return lambda one, two: one.lower() == two.lower()

    def sound_alike(one: str, two: str) -> bool:
        spoken = [sounding.of(word for word in words_of(text) if word.isalpha()) for text in (one, two)]
        return apart(spoken[0], spoken[1]) <= _ALIKE

    return sound_alike
