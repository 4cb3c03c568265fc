"""Controls with courtesies around them, with slips, of what was told before; and questions that look like them."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer
from assistant.conversation.control_words.bare_words import as_steering
from assistant.conversation.control_words.controls import control, corrected
from assistant.conversation.control_words.controls_of_changes import asks_former, asks_since

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize("first", ["which speed", "how long does the gear take"])
@pytest.mark.parametrize(("picks", "place"), [
    ("what is the third", 2), ("third", 2), ("and the third?", 2), ("number three", 2), ("what's number three", 2),
    ("tell me the third one", 2), ("the other one", 2), ("what about number two", 1), ("the second then", 1),
    ("ok, the last one", 2),
])  # fmt: skip
def test_what_was_offered_is_picked_by_its_place(talk: Talk, first: str, picks: str, place: int) -> None:
    told = talk(first, picks)

    assert len(told[0].choices) == 3
    assert told[1].outcome == "answer"
    assert told[1].text == talk(first, str(place + 1))[1].text


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("source pls", "source"),
        ("hey, what book's that btw", "source"),
        ("refrence?", "source"),
        ("mate, any ref for that if you know", "source"),
        ("cool, where's the old one written", "source"),
        ("sorry, didnt get that", "again"),
        ("repaet pls", "again"),
        ("eh?", "again"),
        ("any particular reason though", "why"),
        ("great, why so low", "why"),
        ("why is it lower than the other one", "why"),
        ("why are they so much smaller", "why"),
        ("alright disreguard", "disregard"),
        ("oh scrap that mate", "disregard"),
    ],
)
def test_a_control_is_heard_behind_courtesies_and_slips(text: str, name: str) -> None:
    assert control(text) == name


@pytest.mark.parametrize(
    "text",
    [
        "then what", "under what conditions", "can i ignore that", "what was the light", "why not the side",
        "try again", "is it from the pull", "who do i tell", "it doesn't matter if it's wet", "up again", "name them",
    ],
)  # fmt: skip
def test_a_question_that_looks_like_a_control_is_none(text: str) -> None:
    assert not control(text) and corrected(text) is None and not asks_since(text) and not asks_former(text)


def test_slips_are_mended_in_short_turns_alone() -> None:
    assert list(as_steering("soruce pls"))[-1] == "source"
    assert list(as_steering("were")) == ["were"]


@pytest.mark.parametrize("text", ["has it changed", "is that recent then", "effective when", "when'd that come in btw"])
def test_since_when_is_heard(text: str) -> None:
    assert asks_since(text)


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("disregard, make it seventy five", "seventy five"),
        ("oh no, scrub that, seventy five knots", "seventy five knots"),
        ("forget it, the tiller", "the tiller"),
    ],
)
def test_what_follows_a_withdrawal_corrects(text: str, left: str) -> None:
    assert corrected(text) == left


def test_the_source_of_a_figure_told_before_is_asked_by_the_figure(talk: Talk) -> None:
    told = talk("main tyre cold pressure", "STEER LOST procedure", "where's the 190 from")
    assert told[-1].text.startswith("LIM 3.2")


@pytest.mark.parametrize("words", ["is that in the abnormals", "aom or sop?", "that's in the limitations?"])
def test_a_document_named_asks_for_the_source(talk: Talk, words: str) -> None:
    assert talk("STEER LOST, what do I do", words)[-1].text.startswith("ABN 32.5")
