"""Two things asked of under a state are both told, and a former figure is that of the calculation told last."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("System 1 lost, gear and steering?", ("free fall", "castor")),
        ("With System 1 gone, how are the steering and the parking brake?", ("castor", "parking brake holds")),
        ("System 2 lost: autobrake and nose wheel steering?", ("No autobrake", "tillers and the pedals steer")),
    ],
)
def test_both_are_told(talk: Talk, text: str, parts: tuple[str, str]) -> None:
    (answer,) = talk(text)
    assert all(part in answer.text for part in parts)


def test_what_one_answer_tells_is_told_once(talk: Talk) -> None:
    (answer,) = talk("System 2 lost: autobrake and anti-skid?")
    assert answer.text.count("No autobrake") == 1


@pytest.mark.parametrize("text", ["what was the factor before", "what was the factor formerly"])
def test_what_a_factor_of_a_calculation_was_before(talk: Talk, text: str) -> None:
    *_, answer = talk("landing distance without anti-skid, 1,400 m normal", text)
    assert 1.5 in [v.value for v in answer.values]


def test_what_is_gone_by_the_time_of_landing_is_lost(talk: Talk) -> None:
    (answer,) = talk("Both hydraulic systems failed in the cruise. What is gone by the time we land?")
    assert "EMERGENCY" in answer.text and "free fall" in answer.text
