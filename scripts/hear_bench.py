"""Says the spoken development set, hears it again and counts right answers: `python3 scripts/hear_bench.py`.

    --voice neural|low|high|formant|varied
                                      who speaks; "low" and "high" are the neural voice at another pitch and pace,
                                      "varied" is it with all that it varies by chance, at a pace of its own each time
    --noise 20|10|5                   decibels that a car's noise is under the speech; clean when left out
    --number N                        so many questions of the set, chosen evenly; all when left out
    --questions FOLDER                files of questions with keys; those of the tests when left out
    --quiet-minutes M                 instead: minutes of noise, music and talk of other things, which must give nothing
    --show                            print what was not answered rightly, and what was heard

The set is every question of spoken style and sixty typed ones, said as an answer would be. A right number put up for
confirmation counts as right. Nothing of the sound is kept.
"""

from __future__ import annotations

import argparse
import random
import sys
import zlib
from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path
from statistics import median
from time import perf_counter
from typing import Any

import numpy as np
from scipy.signal import resample_poly

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT))

from assistant.answering.answer import CLARIFY, DECLINE, Answer  # noqa: E402
from assistant.conversation.context import Context  # noqa: E402
from assistant.conversation.opening import Knowledge, open_knowledge  # noqa: E402
from assistant.conversation.turn import answer_turn  # noqa: E402
from assistant.rendering.speech import spoken  # noqa: E402
from assistant.voice.hearing.ear import Ear, Heard  # noqa: E402
from assistant.voice.hearing.endpoint import question_in, speech_in, voice_judge  # noqa: E402
from assistant.voice.hearing.opening import open_ear  # noqa: E402
from assistant.voice.sound import RATE  # noqa: E402
from tests.questions.judging import RIGHT, Key, judge, one_line, read_keys  # noqa: E402
from tests.voice import synthesis  # noqa: E402

QUESTIONS = ROOT / "tests" / "questions" / "tuned"
TYPED = 60
PITCHES = {"low": (108, 100), "high": (91, 100)}
OTHER_TALK = (
    "Good evening, here is the news. Ministers met today in the capital to discuss the price of energy.",
    "Mix the flour with two eggs and a pinch of salt, then let the dough rest for thirty minutes.",
    "The home side scored twice before the break and held on to win by two goals to one.",
    "In five hundred metres, turn left, then keep right at the roundabout and take the second exit.",
    "I told her that we would be late for dinner, because the trains were not running again.",
    "Tomorrow it will be cloudy with some rain in the north and fourteen degrees in the south.",
    "Once upon a time there was a king who had three daughters and a very large garden.",
    "You are listening to the morning show, and that was a song from nineteen eighty four.",
    "The museum opens at nine and closes at five, and children under twelve do not pay.",
    "Could you pick up some milk and bread on the way home, and call your mother please.",
    "The tyre pressure warning of this car came on again, we should stop at the next petrol station.",
    "He braked too late and hit the kerb, and now the steering wheel vibrates.",
    "Slow down, there is a bend, and the road is wet.",
    "The plane landed an hour late, and the taxi was waiting at the gate.",
    "Both my legs are tired after the run, and my left foot hurts.",
    "The lock on the back door is broken, and there is a leak in the roof.",
    "Turn around when possible, then go straight on for two miles.",
    "His team lost two nil, and the captain was injured.",
    "The handbrake is stiff, and the heater does not work on the left side.",
    "She is under a lot of pressure at work, I do not know how she takes it.",
)


def keys(folder: Path) -> list[Key]:
    """Return the questions of the set, the same at each run."""
    found = [key for path in sorted(folder.glob("*.jsonl")) for key in read_keys(path) if "q" in key]
    said = [key for key in found if key["style"] == "spoken"]
    typed = [key for key in found if key["style"] == "typed" and len(key["q"]) < 140]
    return said + random.Random(7).sample(typed, min(TYPED, len(typed)))


def as_said(key: Key, knowledge: Knowledge) -> str:
    """Return how a question is spoken: signs and abbreviations of a typed one in words."""
    text = one_line(key["q"])
    return text if key["style"] == "spoken" else spoken(text, knowledge.units, knowledge.base.pronunciations)


def sound_of(text: str, voice: str, noise: float | None) -> synthesis.Samples:
    """Return a text as a voice says it, in a car or in a quiet room."""
    seed = zlib.crc32(text.encode())
    if voice == "formant":
        said = synthesis.formant(text, synthesis.FORMANT_VOICES[seed % len(synthesis.FORMANT_VOICES)])
    elif voice == "varied":
        said = synthesis.neural(text, varied=True, pace=0.85 + 0.3 * (seed % 100) / 100)
    else:
        said = synthesis.neural(text)
    if voice in PITCHES:
        said = resample_poly(said, *PITCHES[voice]).astype(np.float32)
    return synthesis.padded(said) if noise is None else synthesis.mixed(said, noise, seed=seed)


def verdict(key: Key, heard: Heard, knowledge: Knowledge) -> str:
    """Return the verdict on what was heard; the right number, put up for confirmation, is right.

    So it is where it is put up beside one that sounds alike.
    """
    if heard.answer.outcome == CLARIFY and heard.pending and heard.answer.values:
        meant = {amount.value for amount in knowledge.reader.read(key["q"]).amounts}
        for choice in heard.answer.choices:
            given = {amount.value for amount in knowledge.reader.read(choice).amounts}
            confirmed = answer_turn(choice, Context(), knowledge)[0]
            if (given <= meant or meant <= given) and judge(key, confirmed) == RIGHT:
                return RIGHT
    return judge(key, heard.answer)


def hear_set(options: argparse.Namespace, ear: Ear, knowledge: Knowledge) -> None:
    """Say and hear the set; print the counts."""
    found = keys(options.questions)
    if options.number:
        found = random.Random(options.seed).sample(found, min(options.number, len(found)))
    counts: Counter[str] = Counter()
    typed: Counter[str] = Counter()
    times: list[float] = []
    confirmed = 0
    for key in found:
        sound = question_in(sound_of(as_said(key, knowledge), options.voice, options.noise), voice_judge())
        heard = ear.nothing(Context()) if sound is None else ear.hear(sound, Context())
        came = verdict(key, heard, knowledge)
        counts[came] += 1
        typed[judge(key, answer_turn(one_line(key["q"]), Context(), knowledge)[0])] += 1
        times.append(heard.hear_ms)
        confirmed += bool(heard.pending)
        if options.show and came != RIGHT:
            print(f"{came:10} {key['id']:8} {key['q']}\n{'':19} {heard.text} | {heard.confidence} {heard.answer.entry}")
    told = "clean" if options.noise is None else f"{options.noise:g} dB"
    print(f"{options.voice}, {told}, {len(found)} questions by {ear.recogniser.name}: {shares(counts)}")
    print(f"put up for confirmation {confirmed}; the same questions typed: {shares(typed)}")
    print(f"heard in {median(times):.0f} ms (median), {sorted(times)[int(0.95 * len(times))]:.0f} ms (95th percentile)")


def shares(counts: Counter[str]) -> str:
    """Return counts as percentages of all."""
    return ", ".join(f"{name} {100 * n / counts.total():.1f} %" for name, n in sorted(counts.items()))


def background(minutes: float) -> Iterator[tuple[str, synthesis.Samples]]:
    """Yield minutes of each of noise, music and talk of other things, half of the talk in a car."""
    size = int(60 * minutes * RATE)
    yield "car noise", 0.25 * synthesis.car_noise(size, 1)
    yield "white noise", 0.1 * synthesis.white_noise(size, 2)
    yield "music", 0.2 * synthesis.music(size, 3)
    pieces: list[Any] = []
    while sum(map(len, pieces)) < size:
        said = synthesis.neural(OTHER_TALK[len(pieces) % len(OTHER_TALK)])
        pieces.append(synthesis.mixed(said, 10, seed=len(pieces)) if len(pieces) % 2 else synthesis.padded(said))
    yield "other talk", np.concatenate(pieces)[:size]


def hear_nothing(options: argparse.Namespace, ear: Ear) -> None:
    """Hear what is no question; print how often something was taken for one."""
    for name, sound in background(options.quiet_minutes):
        spans = speech_in(sound, voice_judge())
        answers: list[tuple[str, Answer]] = []
        for span in spans:
            heard = ear.hear(sound[span.start : span.end], Context())
            if heard.answer.outcome != DECLINE:
                answers.append((heard.text, heard.answer))
        print(f"{name}, {options.quiet_minutes:g} min: {len(spans)} utterances, {len(answers)} taken for a question")
        for text, answer in answers:
            print(f"    {text} -> {answer.outcome}: {answer.text[:80]}")


def main(arguments: Sequence[str]) -> None:
    """Do what the arguments ask."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else "")
    parser.add_argument("--voice", default="neural", choices=["neural", "low", "high", "formant", "varied"])
    parser.add_argument("--noise", type=float)
    parser.add_argument("--number", type=int, default=0)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--questions", type=Path, default=QUESTIONS)
    parser.add_argument("--quiet-minutes", type=float, default=0)
    parser.add_argument("--show", action="store_true")
    options = parser.parse_args(arguments)
    knowledge, problems = open_knowledge()
    if knowledge is None:
        sys.exit("\n".join(map(str, problems)))
    begun = perf_counter()
    ear, lacks = open_ear(knowledge)
    ear.warm()
    print(f"ready after {perf_counter() - begun:.1f} s {lacks}")
    if options.quiet_minutes:
        hear_nothing(options, ear)
    else:
        hear_set(options, ear, knowledge)


if __name__ == "__main__":
    main(sys.argv[1:])
