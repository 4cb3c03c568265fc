"""What was told last is not told again to a turn that it does not take in; a word that takes note narrows nothing."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("turns", "start"),
    [
        (("brake temp limit", "why that", "so 260 no go"), "Outside LIM 3.2: 260"),
        (("brake temp limit", "why that", "since when"), "Brake temperature, maximum to begin take-off: now 250"),
        (("how long is the gear left down after slush", "ok then, wheelbase of the 120"), "13.2 m"),
    ],
)
def test_the_figure_before_the_reason_is_still_spoken_of(talk: Talk, turns: tuple[str, ...], start: str) -> None:
    assert talk(*turns)[-1].text.startswith(start)


def test_a_thing_that_what_was_told_does_not_hold_is_asked_back(talk: Talk) -> None:
    told, again = talk("why does a runway in slush need the gear down after take-off", "take-off flap for that?")
    assert again.outcome != ANSWER
    assert again.text != told.text


@pytest.mark.parametrize("words", ["ok, wheelbase of the 120", "fine. wheelbase", "okay so wheelbase?"])
def test_a_first_word_that_takes_note_narrows_nothing(talk: Talk, words: str) -> None:
    assert talk(words)[-1].text.startswith("13.2 m")


def test_a_first_word_that_asks_is_kept(talk: Talk) -> None:
    assert talk("VLE", "ok at 240?")[-1].text.startswith("Within")
