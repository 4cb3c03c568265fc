"""A conversation by ear with a fake microphone and speaker: real speech goes in, and what is said comes out."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from assistant.conversation.opening import Knowledge
from assistant.voice import hands_free, tones
from assistant.voice.hands_free import HandsFree, Manner, start_line
from assistant.voice.hearing.ear import Ear
from assistant.voice.hearing.endpoint import Endpointer, Judge
from assistant.voice.hearing.phrases import alike, phrases_of
from assistant.voice.listening import Listener
from tests.voice.hearing.fakes import FakeMicrophone, FakeSpeaker, FakeTones, silence
from tests.voice.synthesis import car_noise, music, neural, padded

QUESTION = "what is the maximum speed to extend the gear"
FACT = "two hundred and thirty knots"
Talk = Callable[..., FakeSpeaker]


@pytest.fixture(scope="session")
def phrase(knowledge: Knowledge) -> Callable[..., str]:
    hear = phrases_of(knowledge)
    return lambda utterance, wanted, numbers: hear(utterance.pcm, wanted, numbers)


class Talked(FakeSpeaker):
    """A speaker with all that a conversation left behind."""

    shown: list[str]
    tones: list[str]
    slower: int


@pytest.fixture
def talk(ear: Ear, knowledge: Knowledge, judge: Judge, phrase: Callable[..., str]) -> Callable[..., Talked]:
    """Hold a conversation over some sounds; texts are spoken first by the neural voice, with a pause after them."""

    def talked(*heard: str | np.ndarray, speaking: int = 0, pressed: Callable[[], bool] | None = None) -> Talked:
        speaker, sounds = Talked(speaking), FakeTones()
        speaker.shown, speaker.slower = [], 0

        def slower() -> None:
            speaker.slower += 1

        manner = Manner(
            lambda answer: answer.spoken or answer.text, speaker.shown.append, slower, knowledge.examples, phrase,
            alike(),
        )  # fmt: skip
        microphone = FakeMicrophone(padded(neural(each)) if isinstance(each, str) else each for each in heard)
        listener = Listener(
            microphone, speaker, Endpointer(judge), pressed, lambda: sounds.sound(tones.LISTENING)
        )
        HandsFree(listener, speaker, sounds, ear, knowledge, manner).run("Ready.")
        speaker.tones = sounds.given
        return speaker

    return talked


def test_the_first_words_say_what_is_loaded_and_what_it_is_for(knowledge: Knowledge) -> None:
    said = start_line(knowledge.type_name, knowledge.loaded_line)

    for part in (knowledge.type_name, "AOM 7", "Training only", "before you move off", "traffic", "at the controls"):
        assert part in said


def test_a_question_is_answered_and_what_was_heard_is_shown(talk: Callable[..., Talked]) -> None:
    done = talk(QUESTION)

    assert FACT in done.said[-1]
    assert any(line.startswith("Heard:") and "whisper" in line for line in done.shown)
    assert done.tones[:2] == [tones.LISTENING, tones.THINKING]


def test_a_second_question_follows_the_first(talk: Callable[..., Talked]) -> None:
    done = talk("how much steering does the pedal give at twenty five knots", "and at forty five knots")

    assert "eight degrees" in done.said[-2]
    assert "six point five degrees" in done.said[-1]


@pytest.mark.parametrize("words", ["say again", "again"])
def test_it_says_again(talk: Callable[..., Talked], words: str) -> None:
    done = talk(QUESTION, words)

    assert done.said[-1] == done.said[-2]


def test_slower_makes_the_voice_slower_and_says_it_again(talk: Callable[..., Talked]) -> None:
    done = talk(QUESTION, "speak slower")

    assert done.slower == 1
    assert done.said[-1] == done.said[-2]


def test_words_twice_says_each_sentence_twice(talk: Callable[..., Talked]) -> None:
    done = talk(QUESTION, "words twice")

    first = done.said[-2].split(". ")[0].rstrip(".")
    assert done.said[-1].count(first) == 2 * done.said[-2].count(first)


def test_read_back_says_what_was_heard(talk: Callable[..., Talked]) -> None:
    done = talk(QUESTION, "read back")

    assert "maximum speed" in done.said[-1]


def test_stop_ends_with_a_word(talk: Callable[..., Talked]) -> None:
    done = talk("stop", QUESTION)

    assert done.said == ["Ready.", hands_free.FAREWELL]
    assert done.tones[-1] == tones.ENDED


def test_disregard_drops_the_question(talk: Callable[..., Talked]) -> None:
    done = talk(QUESTION, "disregard", "why")

    assert "Disregarded" in done.said[2]
    assert FACT not in done.said[-1]


def test_a_doubtful_number_is_answered_once_it_is_affirmed(talk: Callable[..., Talked]) -> None:
    done = talk("how much steering does the pedal give at fifteen knots", "affirm")

    assert done.said[-2].startswith("Confirm, ")
    assert "degrees either way" in done.said[-1]


def test_a_doubtful_number_that_is_denied_is_not_answered(talk: Callable[..., Talked]) -> None:
    done = talk("how much steering does the pedal give at fifteen knots", "negative")

    assert done.said[-1] == hands_free.ASK_AGAIN
    assert not any("either way" in said for said in done.said)


@pytest.mark.parametrize("words", ["skip it", "don't know"])
def test_plain_words_pass(talk: Callable[..., Talked], words: str) -> None:
    assert talk(words).said[-1] == hands_free.GO_ON


def test_three_silences_end_it_with_a_word_and_nothing_is_said_before(talk: Callable[..., Talked]) -> None:
    done = talk(silence(3 * hands_free.SILENCE_S + 1), QUESTION)

    assert done.said == ["Ready.", hands_free.BUSY]


def test_a_question_in_between_begins_the_count_of_silences_anew(talk: Callable[..., Talked]) -> None:
    done = talk(silence(2.2 * hands_free.SILENCE_S), QUESTION, silence(2.2 * hands_free.SILENCE_S))

    assert hands_free.BUSY not in done.said


def test_standby_waits_however_long(talk: Callable[..., Talked]) -> None:
    done = talk("standby", silence(5 * hands_free.SILENCE_S), QUESTION)

    assert done.said[1] == hands_free.STANDING_BY
    assert FACT in done.said[-1]
    assert hands_free.BUSY not in done.said


def test_speech_silences_what_is_being_said(talk: Callable[..., Talked]) -> None:
    done = talk(QUESTION, "stop", speaking=10_000)

    assert "Ready." in done.stopped
    assert any(FACT in cut for cut in done.stopped)
    assert done.said[-1] == hands_free.FAREWELL


def test_noise_and_music_are_nothing(talk: Callable[..., Talked]) -> None:
    noise = 0.2 * car_noise(15 * 16000, 4)
    tune = 0.2 * music(15 * 16000, 4)

    assert talk(noise, tune).said == ["Ready."]


def test_what_is_not_caught_is_said_twice_and_then_offered_and_then_left(talk: Callable[..., Talked]) -> None:
    mumble = neural("the quick brown fox jumps over the lazy dog")
    sounds = [padded(mumble)] * 5

    done = talk(*sounds)

    assert len(done.said) == 4
    assert done.said[-1].startswith("I can answer, for example")
    assert done.tones.count(tones.NOT_UNDERSTOOD) == 5


def test_with_a_key_nothing_is_heard_until_it_is_pressed(talk: Callable[..., Talked]) -> None:
    presses = iter([False] * 150 + [True] + [False] * 10_000)

    done = talk("stop", silence(2.0), QUESTION, pressed=lambda: next(presses))

    assert FACT in done.said[-1]
    assert hands_free.FAREWELL not in done.said


def test_its_own_voice_in_the_microphone_is_no_question(talk: Callable[..., Talked]) -> None:
    done = talk(QUESTION, "landing gear extension maximum speed two hundred and thirty knots", speaking=600)

    assert hands_free.FAREWELL not in done.said
