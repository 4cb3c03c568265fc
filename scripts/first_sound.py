"""Measures how soon a question by ear is answered: `python3 scripts/first_sound.py`.

    --number N     so many questions; 12 when left out
    --noise 10     decibels that a car's noise is under the speech; clean when left out

A whole conversation is held over a microphone that is fed with speech made here and a sound card that only notes when
it is given what; recogniser, understanding and the engine's voice are those that talk to people. Counted is the time
from the decision that somebody has finished speaking to the first word of the answer; the tone that says that it was
heard comes before it, and is told apart, since a tone is no answer. Times are told as shares of what is bearable,
0.7 s, with this run's milliseconds beside them; the program ends with 1 where the first word takes longer.
"""

from __future__ import annotations

import argparse
import sys
import zlib
from collections.abc import Iterator, Sequence
from pathlib import Path
from statistics import median
from time import perf_counter, sleep

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT))

from assistant.conversation.opening import Knowledge, open_knowledge  # noqa: E402
from assistant.terminal.by_ear import CardTones  # noqa: E402
from assistant.voice.hands_free import HandsFree, Manner  # noqa: E402
from assistant.voice.hearing.endpoint import Endpointer, voice_judge  # noqa: E402
from assistant.voice.hearing.opening import open_ear  # noqa: E402
from assistant.voice.hearing.phrases import hears_phrases  # noqa: E402
from assistant.voice.listening import Listener, Utterance  # noqa: E402
from assistant.voice.sound import BLOCK_S  # noqa: E402
from assistant.voice.speaking.aloud import Aloud  # noqa: E402
from assistant.voice.speaking.phrases import answer_phrases  # noqa: E402
from assistant.voice.speaking.sounds import Sound  # noqa: E402
from assistant.voice.speaking.synthesis import ChosenSynthesiser  # noqa: E402
from tests.questions.judging import one_line, read_keys  # noqa: E402
from tests.voice import synthesis  # noqa: E402
from tests.voice.hearing.fakes import FakeMicrophone  # noqa: E402

BEARABLE_S = 0.7
QUESTIONS = ROOT / "tests" / "questions" / "tuned" / "singles.jsonl"
_PATIENCE_S = 30.0


class NotingPlayer:
    """A sound card that is silent: it notes when it was given a sound."""

    def __init__(self) -> None:
        self.times: list[float] = []

    def play(self, sound: Sound) -> None:
        """Note the time."""
        self.times.append(perf_counter())

    def stop(self) -> None:
        """Nothing sounds that could be stopped."""

    def wait(self) -> None:
        """Nothing sounds that could be waited for."""

    def close(self) -> None:
        """There is nothing to let go of."""


class PacedMicrophone(FakeMicrophone):
    """A microphone that gives its sounds as slowly as they are said: what is heard meanwhile takes no time after."""

    due = 0.0

    def read(self) -> bytes | None:
        """Return the next block when it has been said."""
        block = super().read()
        self.due = max(self.due + BLOCK_S, perf_counter() - BLOCK_S)
        sleep(max(0.0, self.due - perf_counter()))
        return block


class TimedListener(Listener):
    """A listener that notes when it has decided that somebody has finished."""

    ended: list[float]

    def utterance(self, patience_s: float | None) -> Utterance | None:
        """Return the next utterance, its end noted."""
        found = super().utterance(patience_s)
        if found is not None:
            self.ended.append(perf_counter())
        return found


def questions(number: int) -> list[str]:
    """Return questions of spoken style, the same at each run."""
    said = [one_line(key["q"]) for key in read_keys(QUESTIONS) if key["style"] == "spoken"]
    return said[:: max(1, len(said) // number)][:number]


def spoken(texts: Sequence[str], noise: float | None) -> Iterator[synthesis.Samples]:
    """Yield questions as the neural voice says them."""
    for text in texts:
        said = synthesis.neural(text)
        yield synthesis.padded(said) if noise is None else synthesis.mixed(said, noise, seed=zlib.crc32(text.encode()))


def first_sounds(knowledge: Knowledge, sounds: Sequence[synthesis.Samples]) -> list[tuple[float, float]]:
    """Return for each question the seconds to the first sound of any kind, and to the first word."""
    ear = open_ear(knowledge)[0]
    ear.warm()
    card, tones = NotingPlayer(), NotingPlayer()
    aloud = Aloud(ChosenSynthesiser(knowledge.base.respelt), card, sys.exit)
    fed: list[object] = []
    for sound in sounds:
        fed += [sound, lambda: aloud.wait(_PATIENCE_S)]
    listener = TimedListener(PacedMicrophone(fed), aloud, Endpointer(voice_judge()))  # type: ignore[arg-type]
    listener.ended = []
    hear = hears_phrases()
    manner = Manner(
        lambda answer: " ".join(phrase.text for phrase in answer_phrases(answer, knowledge, aloud.settings)),
        lambda text: None, lambda steps: None, knowledge.examples, lambda heard, wanted: hear(heard.pcm, wanted),
    )  # fmt: skip
    aloud.say("Ready.")
    aloud.wait(_PATIENCE_S)
    HandsFree(listener, aloud, CardTones(tones), ear, knowledge, manner).run("Ready.")
    aloud.close()
    return [
        (_after(ended, [*tones.times, *card.times]) - ended, _after(ended, card.times) - ended)
        for ended in listener.ended
    ]


def _after(moment: float, times: Sequence[float]) -> float:
    return min((time for time in times if time >= moment), default=float("inf"))


def told(name: str, seconds: Sequence[float]) -> str:
    """Return a line on some times, as shares of what is bearable."""
    ordered = sorted(seconds)
    middle, late = median(ordered), ordered[min(len(ordered) - 1, int(0.95 * len(ordered)))]
    return (
        f"{name}: {middle / BEARABLE_S:.2f} of {BEARABLE_S:g} s (median, {1000 * middle:.0f} ms), "
        f"{late / BEARABLE_S:.2f} (95th percentile, {1000 * late:.0f} ms)"
    )


def main(arguments: Sequence[str]) -> int:
    """Do what the arguments ask; return 1 where the first word usually comes later than is bearable."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else "")
    parser.add_argument("--number", type=int, default=12)
    parser.add_argument("--noise", type=float)
    options = parser.parse_args(arguments)
    knowledge, problems = open_knowledge()
    if knowledge is None:
        sys.exit("\n".join(map(str, problems)))
    times = first_sounds(knowledge, list(spoken(questions(options.number), options.noise)))
    print(f"{len(times)} utterances of {options.number} questions, from the end of speech")
    words = [word for _, word in times]
    print(told("to the first word", words))
    print(told("to the tone before it", [tone for tone, _ in times]))
    return int(median(words) > BEARABLE_S)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
