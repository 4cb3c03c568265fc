"""Parts of several readings are put together, and words of equal sound are written as the trade writes them."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.voice.hearing.crossing import crossed
from assistant.voice.hearing.homophones import Homophones
from assistant.voice.hearing.sounds import Sounding


def test_a_piece_of_one_reading_takes_its_place_in_another() -> None:
    made = crossed(["what does the free ball lever do?", "what dozes the free fall lever do?"])

    assert "what does the free fall lever do?" in made
    assert "what dozes the free ball lever do?" in made


def test_what_was_heard_is_not_made_again() -> None:
    heard = ["Is it armed?", "is it armed", "It is armed?"]

    assert not {"is it armed", "it is armed"} & {text.lower().strip("?") for text in crossed(heard)}


def test_a_long_piece_is_another_text() -> None:
    assert crossed(["how fast may we taxi", "how many of the brakes are wet"]) == []


@pytest.mark.parametrize(("heard", "written"), [
    ("How much breaking do I get?", "How much braking do I get?"), ("Breaks are hot", "Brakes are hot"),
])  # fmt: skip
def test_words_that_sound_alike_are_written_as_the_trade_does(
    knowledge: Knowledge, sounding: Sounding, heard: str, written: str
) -> None:
    assert Homophones(knowledge, sounding).written(heard) == written


@pytest.mark.parametrize("text", ["where do I read the wear", "two or too many", "I know no nose", "to the main gear"])
def test_words_that_the_trade_uses_itself_are_left(knowledge: Knowledge, sounding: Sounding, text: str) -> None:
    assert Homophones(knowledge, sounding).written(text) == text


def test_letters_without_a_vowel_are_said_by_their_names(sounding: Sounding) -> None:
    assert sounding.word("mpq")[:2] == ("EH", "M")
    assert sounding.word("mp") == sounding.of(["m", "p"])
