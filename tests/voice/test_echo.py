"""What the microphone hears of the loudspeaker is told from a question that has words of the answer in it."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.voice.echo import Echo, rest_from

SAID = (
    "With System one lost: the gear extends by free fall only. The gear cannot be retracted in flight. "
    "The nose wheels castor: no steering from tillers or pedals."
)


@pytest.fixture
def echo(knowledge: Knowledge) -> Echo:
    return Echo(knowledge.lexicon)


@pytest.mark.parametrize("heard", [
    "The gear extends by free fall only", "gear cannot be retracted in flight",
    "The nose wheels castor no steering from tillers or pedals", "with system 1 lost the gear extends",
])  # fmt: skip
def test_the_words_being_said_in_their_order_are_an_echo(echo: Echo, heard: str) -> None:
    assert echo.is_heard(heard, SAID)


@pytest.mark.parametrize("heard", [
    "what is the wheelbase", "What steers the nose wheels?", "is the gear retracted in flight",
    "can the tillers steer", "and with system 2 lost", "the pedals", "how does free fall extend the gear", "",
])  # fmt: skip
def test_a_question_is_no_echo(echo: Echo, heard: str) -> None:
    assert not echo.is_heard(heard, SAID)


def test_it_goes_on_from_the_sentence_that_was_cut_off() -> None:
    assert rest_from("gear cannot be retracted", SAID).startswith("The gear cannot be retracted in flight. The nose")
