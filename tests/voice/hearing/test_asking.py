"""A question asked aloud and its spoken answer, with a fake microphone and speaker."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from assistant.voice.asking import Asker, SpokenAnswer
from assistant.voice.control_words import SAID, control_word
from assistant.voice.hearing.ear import Ear
from assistant.voice.hearing.endpoint import Endpointer, Judge
from assistant.voice.hearing.phrases import hears_phrases
from assistant.voice.listening import Listener
from assistant.voice.tones import LISTENING, THINKING, TONE_RATE, tone
from tests.voice.hearing.fakes import FakeMicrophone, FakeSpeaker, FakeTones, silence
from tests.voice.synthesis import neural, padded

Ask = Callable[..., tuple[SpokenAnswer, FakeSpeaker]]


@pytest.fixture
def ask(ear: Ear, judge: Judge) -> Ask:
    hear = hears_phrases()

    def asked(*heard: str | np.ndarray) -> tuple[SpokenAnswer, FakeSpeaker]:
        speaker = FakeSpeaker()
        microphone = FakeMicrophone(padded(neural(each)) if isinstance(each, str) else each for each in heard)
        asker = Asker(
            Listener(microphone, speaker, Endpointer(judge)), speaker, FakeTones(), ear,
            lambda utterance, wanted: hear(utterance.pcm, wanted),
        )  # fmt: skip
        return asker.ask("What keeps the lever from going up on the ground?"), speaker

    return asked


def test_an_answer_is_taken(ask: Ask) -> None:
    answer, speaker = ask("a solenoid pin blocks it")

    assert any("pin" in reading for reading in answer.readings)
    assert not answer.control
    assert len(speaker.said) == 1


def test_a_silence_is_busy_and_no_answer(ask: Ask) -> None:
    answer, _ = ask(silence(20))

    assert answer.silent


def test_the_question_is_said_again(ask: Ask) -> None:
    answer, speaker = ask("say again", "a solenoid pin blocks it")

    assert speaker.said[0] == speaker.said[1]
    assert answer.readings


@pytest.mark.parametrize(("said", "control"), [
    ("I don't know", "pass"), ("pass", "pass"), ("I have no idea", "pass"), ("stop", "stop"),
])  # fmt: skip
def test_a_word_that_steers_is_no_answer(ask: Ask, said: str, control: str) -> None:
    assert ask(said)[0].control == control


@pytest.mark.parametrize("said", ["disregard", "read back", "standby"])
def test_what_neither_answers_nor_ends_is_obeyed_and_listened_on(ask: Ask, said: str) -> None:
    answer, speaker = ask(said, "a solenoid pin blocks it")

    assert any("pin" in reading for reading in answer.readings)
    assert len(speaker.said) == 2


@pytest.mark.parametrize("said", ["yes", "amber", "two hundred and five knots", "castoring"])
def test_a_short_answer_steers_nothing(ask: Ask, said: str) -> None:
    answer, _ = ask(said)

    assert answer.readings
    assert not answer.control


@pytest.mark.parametrize(("text", "control"), [
    ("Say again.", "again"), ("SAY AGAIN, please", "again"), ("Stand by", "standby"), ("stand-by", "standby"),
    ("Affirm.", "affirm"), ("Negative!", "negative"), ("Words twice", "twice"), ("I don’t know", "pass"),
    ("Okay, stop.", "stop"), ("Read back.", "read back"), ("what is the stop limit", ""), ("", ""),
    ("why", ""), ("correction, at 90 knots", ""),
])  # fmt: skip
def test_control_words(text: str, control: str) -> None:
    assert control_word(text) == control


def test_no_phrase_stands_for_two_controls() -> None:
    phrases = [phrase for said in SAID.values() for phrase in said]

    assert len(phrases) == len(set(phrases))


def test_tones_are_short_soft_and_apart() -> None:
    listening, thinking = tone(LISTENING), tone(THINKING)

    assert listening != thinking
    for samples in (listening, thinking):
        assert len(samples) < 0.3 * TONE_RATE
        assert max(map(abs, samples)) < 0.25 * 32768
        assert abs(samples[0]) < 100
        assert abs(samples[-1]) < 1000
