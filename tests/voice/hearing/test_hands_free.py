"""A conversation by ear with a fake microphone and speaker: real speech goes in, and what is said comes out."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from assistant.answering.answer import CLARIFY, Answer
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.voice import hands_free, tones
from assistant.voice import hands_free_said as said_of_itself
from assistant.voice.hands_free import HandsFree
from assistant.voice.hands_free_said import start_line
from assistant.voice.hearing.ear import Ear
from assistant.voice.hearing.endpoint import Endpointer, Judge, question_in
from assistant.voice.hearing.phrases import hears_phrases
from assistant.voice.hearing.samples import to_pcm
from assistant.voice.listening import Listener, Utterance
from assistant.voice.manner import Manner
from assistant.voice.steering import Steering, choices_of
from tests.voice.hearing.fakes import FakeMicrophone, FakeSpeaker, FakeTones, silence
from tests.voice.synthesis import FORMANT_VOICES, car_noise, formant, music, neural, padded

QUESTION = "what is the maximum speed to extend the gear"
FACT = "two hundred and thirty knots"
Talk = Callable[..., FakeSpeaker]


@pytest.fixture(scope="session")
def phrase(knowledge: Knowledge) -> Callable[..., str]:
    hear = hears_phrases()
    return lambda utterance, wanted: hear(utterance.pcm, wanted)


class Talked(FakeSpeaker):
    """A speaker with all that a conversation left behind."""

    shown: list[str]
    tones: list[str]
    pace: int


@pytest.fixture
def talk(ear: Ear, knowledge: Knowledge, judge: Judge, phrase: Callable[..., str]) -> Callable[..., Talked]:
    """Hold a conversation over some sounds; texts are spoken first by the neural voice, with a pause after them."""

    def talked(*heard: str | np.ndarray, speaking: int = 0, pressed: Callable[[], bool] | None = None) -> Talked:
        speaker, sounds = Talked(speaking), FakeTones()
        speaker.shown, speaker.pace = [], 0

        def pace(steps: int) -> None:
            speaker.pace += steps

        manner = Manner(
            lambda answer: answer.spoken or answer.text, speaker.shown.append, pace, knowledge.examples, phrase
        )
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

    assert done.pace == -1
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

    assert done.said == ["Ready.", said_of_itself.FAREWELL]
    assert done.tones[-1] == tones.ENDED


def test_disregard_drops_the_question(talk: Callable[..., Talked]) -> None:
    done = talk(QUESTION, "disregard", "why")

    assert "Disregarded" in done.said[2]
    assert FACT not in done.said[-1]


@pytest.mark.parametrize(("words", "number"), [("one five knots", "fifteen"), ("five zero knots", "fifty")])
def test_of_two_numbers_put_up_the_one_is_answered_that_is_said(
    talk: Callable[..., Talked], words: str, number: str
) -> None:
    done = talk(PEDALS, words)

    assert done.said[-2].startswith("Confirm which, ")
    assert "one five knots" in done.said[-2]
    assert "five zero knots" in done.said[-2]
    assert f"degrees either way at {number} knots" in done.said[-1]


def test_two_numbers_are_not_affirmed_by_a_word_but_picked(talk: Callable[..., Talked]) -> None:
    done = talk(PEDALS, "affirm", "the second one")

    assert done.said[-2].endswith(said_of_itself.HOW_TO_CHOOSE)
    second = "fifteen" if done.said[1].endswith("or one five knots?") else "fifty"
    assert f"either way at {second} knots" in done.said[-1]


def test_a_doubtful_number_that_is_denied_is_not_answered(talk: Callable[..., Talked]) -> None:
    done = talk("how much steering does the pedal give at fifteen knots", "negative")

    assert done.said[-1] == said_of_itself.ASK_AGAIN
    assert not any("either way" in said for said in done.said)


@pytest.mark.parametrize("words", [("one five",), ("fifteen knots",)])
def test_the_number_that_sounds_alike_is_taken_when_it_is_the_one(
    talk: Callable[..., Talked], words: tuple[str, ...]
) -> None:
    done = talk("how much steering does the pedal give at fifteen knots", *words)

    assert "at fifteen knots" in done.said[-1]


def test_what_was_heard_in_a_pause_is_not_heard_again(
    talk: Callable[..., Talked], ear: Ear, monkeypatch: pytest.MonkeyPatch
) -> None:
    heard: list[int] = []
    hear = ear.hear
    monkeypatch.setattr(ear, "hear", lambda samples, context: (heard.append(len(samples)), hear(samples, context))[1])
    done = talk(QUESTION)

    assert FACT in done.said[-1]
    assert len(heard) == 1


def test_faster_makes_the_voice_faster(talk: Callable[..., Talked]) -> None:
    assert talk(QUESTION, "faster").pace == 1


@pytest.mark.parametrize("words", ["pass", "skip it", "don't know"])
def test_plain_words_pass(talk: Callable[..., Talked], words: str) -> None:
    assert talk(words).said[-1] == said_of_itself.GO_ON


def test_three_silences_end_it_with_a_word_and_nothing_is_said_before(talk: Callable[..., Talked]) -> None:
    done = talk(silence(3 * hands_free.SILENCE_S + 1), QUESTION)

    assert done.said == ["Ready.", said_of_itself.BUSY]


def test_a_question_in_between_begins_the_count_of_silences_anew(talk: Callable[..., Talked]) -> None:
    done = talk(silence(2.2 * hands_free.SILENCE_S), QUESTION, silence(2.2 * hands_free.SILENCE_S))

    assert said_of_itself.BUSY not in done.said


def test_standby_waits_however_long(talk: Callable[..., Talked]) -> None:
    done = talk("standby", silence(5 * hands_free.SILENCE_S), QUESTION)

    assert done.said[1] == said_of_itself.STANDING_BY
    assert FACT in done.said[-1]
    assert said_of_itself.BUSY not in done.said


def test_speech_silences_what_is_being_said(talk: Callable[..., Talked]) -> None:
    done = talk(QUESTION, "stop", speaking=10_000)

    assert "Ready." in done.stopped
    assert any(FACT in cut for cut in done.stopped)
    assert done.said[-1] == said_of_itself.FAREWELL


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
    assert said_of_itself.FAREWELL not in done.said


def test_its_own_voice_in_the_microphone_is_no_question(talk: Callable[..., Talked]) -> None:
    done = talk(QUESTION, "landing gear extension maximum speed two hundred and thirty knots", speaking=600)

    assert said_of_itself.FAREWELL not in done.said
    assert len(done.said) <= 3


def test_a_question_interrupts_though_its_words_are_in_the_answer(talk: Callable[..., Talked]) -> None:
    done = talk("what do I lose with system one gone", "what is the wheelbase", speaking=2000)

    assert "metres: wheelbase" in done.said[-1]
    assert said_of_itself.ECHO not in done.shown


# --- a number that is being confirmed

PEDALS = "how much steering does the pedal give at fifteen knots"


def test_a_correction_takes_the_place_of_the_number_denied(talk: Callable[..., Talked]) -> None:
    done = talk(PEDALS, "correction sixty knots", "six zero knots")

    assert done.said[-2] == "Confirm which, six zero knots, or one six knots?"
    assert "at sixty knots" in done.said[-1]


@pytest.mark.parametrize("words", ["no, eighty knots", "eighty knots"])
def test_another_number_is_put_up_in_its_place(talk: Callable[..., Talked], words: str) -> None:
    done = talk(PEDALS, words, "the first one")

    assert "at eighty knots" in done.said[-1]


def test_after_negative_the_number_alone_is_enough(talk: Callable[..., Talked]) -> None:
    done = talk(PEDALS, "negative", "sixty knots", "six zero")

    assert any("either way at sixty knots" in said for said in done.said)


def test_what_is_asked_of_an_answer_waits_for_it(talk: Callable[..., Talked]) -> None:
    done = talk(PEDALS, "where does it say that")

    assert done.said[-1] == f"{done.said[-2]} {said_of_itself.HOW_TO_CHOOSE}"
    assert done.said[-1].startswith("Confirm which, ")


def test_what_was_asked_meanwhile_is_answered_once_the_number_is_affirmed(talk: Callable[..., Talked]) -> None:
    done = talk(PEDALS, "where does it say that", "one five knots")

    assert "degrees either way at" in done.said[-1]
    assert "revision" in done.said[-1]


def test_a_number_said_again_and_again_is_affirmed(talk: Callable[..., Talked]) -> None:
    done = talk(PEDALS, "correction sixty knots", "sixty knots", "sixty knots")

    assert "either way at sixty knots" in done.said[-1]


def test_numbers_heard_are_said_in_the_answer_of_a_sum(talk: Callable[..., Talked]) -> None:
    done = talk("what is V L E at twenty one thousand feet", "affirm")

    assert any("two hundred and fifty-five knots" in said and "twenty-one thousand feet" in said for said in done.said)


def test_next_goes_through_steps_and_is_nothing_else(talk: Callable[..., Talked]) -> None:
    assert talk(QUESTION, "continue").said[2] == said_of_itself.GO_ON
    assert "Step one of seven" in talk("what are the steps of a free fall extension", "next").said[-1]


def test_a_greeting_and_a_correction_of_nothing_get_a_word(talk: Callable[..., Talked]) -> None:
    done = talk("hello", "correction ninety knots")

    assert done.said[1:] == [said_of_itself.LISTENING, said_of_itself.NOTHING_YET]


def test_the_usual_pace_comes_back(talk: Callable[..., Talked]) -> None:
    assert talk(QUESTION, "slower", "slower", "normal").pace == 0


def test_no_turn_takes_over_a_number_that_is_in_doubt(talk: Callable[..., Talked]) -> None:
    done = talk(PEDALS, "forty eight tonnes")

    assert not any("either way" in said for said in done.said)


# --- what steers and what does not


@pytest.mark.parametrize("words", [
    "and at fifty", "ninety knots", "at sixty knots", "on the one twenty L", "with fans on", "mind that lorry",
])  # fmt: skip
def test_what_only_sounds_a_little_like_a_control_word_steers_nothing(
    talk: Callable[..., Talked], words: str
) -> None:
    done = talk("how much steering does the pedal give at twenty five knots", words)

    itself = {said_of_itself.FAREWELL, said_of_itself.GO_ON, said_of_itself.STANDING_BY, said_of_itself.ASK_AGAIN}
    assert itself.isdisjoint(done.said)


def test_help_tells_what_can_be_said(talk: Callable[..., Talked]) -> None:
    done = talk(QUESTION, "help me")

    for words in ("say again", "standby", "pass", "correction"):
        assert words in done.said[-1]


@pytest.mark.parametrize("words", ["thank you very much", "okay"])
def test_thanks_get_no_answer_again(talk: Callable[..., Talked], words: str) -> None:
    done = talk(QUESTION, words)

    assert FACT not in done.said[-1]


@pytest.mark.parametrize("number", ["one", "two", "three"])
def test_a_choice_is_made_by_its_number(
    ear: Ear, knowledge: Knowledge, phrase: Callable[..., str], judge: Judge, number: str
) -> None:
    sound = question_in(padded(neural(number)), judge)
    assert sound is not None
    heard = ear.hear(sound, Context())

    meant = Steering(ear, phrase).meant(Utterance(to_pcm(sound)), heard, ("one", "two", "three"))

    assert meant == ("", number)


@pytest.mark.parametrize(("words", "voice"), [
    ("affirm", FORMANT_VOICES[1]), ("standby", FORMANT_VOICES[0]), ("disregard", FORMANT_VOICES[2]),
    ("pass", FORMANT_VOICES[3]), ("pass", ""),
])  # fmt: skip
def test_the_words_of_the_radio_are_heard_in_other_voices(
    ear: Ear, phrase: Callable[..., str], judge: Judge, words: str, voice: str
) -> None:
    sound = question_in(padded(formant(words, voice) if voice else neural(words)), judge)
    assert sound is not None

    steer, _ = Steering(ear, phrase).meant(Utterance(to_pcm(sound)), ear.hear(sound, Context()))

    assert steer == words


def test_what_is_offered_may_be_picked_by_number_and_by_name() -> None:
    answer = Answer("mass?", CLARIFY, "Which?", choices=("maximum take-off mass", "maximum landing mass"))

    picked = choices_of(Context(answer=answer, offered=("one-record", "another")))

    assert "two" in picked
    assert "three" not in picked
    assert "maximum landing mass" in picked


# --- other talk


@pytest.mark.parametrize("words", [
    "the traffic is terrible today", "you are going too fast, slow down", "this song is really good",
    "turn the radio down please", "the heater does not work on the left side", "we had to tow the car to the garage",
    "his team lost two nil", "my left leg hurts when I run",
])  # fmt: skip
def test_other_talk_near_the_trade_is_not_answered(talk: Callable[..., Talked], words: str) -> None:
    for said in talk(words).said[1:]:
        assert said in said_of_itself.NOT_CAUGHT or said.startswith("I don't have that")
