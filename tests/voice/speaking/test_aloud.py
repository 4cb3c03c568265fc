"""Saying things aloud never keeps anybody waiting, and what is new takes the place of what was being said."""

import threading

import pytest

from assistant.voice.sound import Speaker
from assistant.voice.speaking.aloud import Aloud
from assistant.voice.speaking.phrases import ITEM_S, Phrase
from tests.voice.speaking.fakes import RATE, FakePlayer, FakeSynthesiser


@pytest.fixture
def synthesiser() -> FakeSynthesiser:
    return FakeSynthesiser()


@pytest.fixture
def player() -> FakePlayer:
    return FakePlayer()


@pytest.fixture
def told() -> list[str]:
    return []


@pytest.fixture
def aloud(synthesiser: FakeSynthesiser, player: FakePlayer, told: list[str]) -> Aloud:
    return Aloud(synthesiser, player, told.append)


def test_it_is_a_speaker(aloud: Aloud) -> None:
    speaker: Speaker = aloud

    assert not speaker.speaking


def test_sentences_are_said_in_order_with_their_pauses(
    aloud: Aloud, synthesiser: FakeSynthesiser, player: FakePlayer
) -> None:
    aloud.say("Fans on. one, Wait.")

    assert aloud.wait(10)
    assert synthesiser.said == ["Fans on.", "one, Wait."]
    assert [len(each.samples) for each in player.played] == [
        len("Fans on.") + round(ITEM_S * RATE),
        len("one, Wait."),
    ]


def test_saying_returns_while_the_voice_is_still_busy(aloud: Aloud, synthesiser: FakeSynthesiser) -> None:
    synthesiser.hold = threading.Event()

    aloud.say("One.")
    assert aloud.speaking
    assert not aloud.wait(0.05)
    synthesiser.hold.set()
    assert aloud.wait(10)


def test_a_new_text_takes_the_place_of_the_old(aloud: Aloud, synthesiser: FakeSynthesiser, player: FakePlayer) -> None:
    synthesiser.hold = threading.Event()
    aloud.say("Old. And more.")
    aloud.say("New.")
    synthesiser.hold.set()

    assert aloud.wait(10)
    assert [len(each.samples) for each in player.played] == [len("New.")]
    assert player.stops == 2


def test_stop_ends_what_sounds(aloud: Aloud, player: FakePlayer) -> None:
    player.sounds_on = True
    aloud.say("One.")
    assert not aloud.wait(0.05)

    aloud.stop()

    assert aloud.wait(10)


def test_a_problem_is_told_once_until_something_was_said(
    aloud: Aloud, synthesiser: FakeSynthesiser, told: list[str]
) -> None:
    synthesiser.problem = "no voice"
    for _ in range(3):
        aloud.say("One.")
        assert aloud.wait(10)
    assert told == ["no voice"]

    synthesiser.problem = ""
    aloud.say("One.")
    assert aloud.wait(10)
    synthesiser.problem = "no voice"
    aloud.say("One.")
    assert aloud.wait(10)
    assert told == ["no voice", "no voice"]


def test_no_sound_card_is_told(synthesiser: FakeSynthesiser, told: list[str]) -> None:
    aloud = Aloud(synthesiser, FakePlayer("no card"), told.append)
    aloud.say("One. Two.")

    assert aloud.wait(10)
    assert told == ["no card"]


def test_nothing_to_say_is_said_at_once(aloud: Aloud, player: FakePlayer) -> None:
    aloud.say("  ")
    aloud.say_phrases([])

    assert not aloud.speaking
    assert player.played == []


def test_closing_ends_it_and_it_may_begin_again(aloud: Aloud, synthesiser: FakeSynthesiser, player: FakePlayer) -> None:
    aloud.say_phrases([Phrase("One.", 0.0)])
    assert aloud.wait(10)
    aloud.close()
    assert synthesiser.closed

    aloud.say("Two.")
    assert aloud.wait(10)
    assert synthesiser.said == ["One.", "Two."]
    aloud.close()
