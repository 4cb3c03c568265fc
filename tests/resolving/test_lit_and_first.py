"""What is lit, what can have caused it, what it proves; and what of a kind comes first, which is not known."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, DECLINE, Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("what can make the AUTOBRAKE OFF light come on", "spoilers stowed"),
        ("autobrake off came on in the rollout, i didn't touch the pedals, what else", "a thrust lever advanced"),
        ("what lights up if the steering controller fails", "STEER LOST"),
        ("On the 120, beyond which temperature does a brake show in inverse video?", "250 °C"),
        ("at what temp does the hottest brake go inverse video on the long body", "230 °C"),
        ("ON TARGET showed just after touchdown, so I know the brakes work", "does not prove"),
        ("where may the rudder check be done", "straight below 10 kt"),
        ("The tug crew needs 92° on the nose wheel to get into the hangar. What first?", "torque link disconnected"),
    ],
)
def test_what_is_lit_is_told_with_what_belongs_to_it(ask: Ask, question: str, told: str) -> None:
    answer = ask(question)

    assert answer.outcome == ANSWER
    assert told in answer.text


@pytest.mark.parametrize(
    "question",
    ["which leg comes up first on retraction", "wich leg coms down first, left or rihgt", "which wheel spins up first"],
)
def test_which_of_a_kind_is_first_is_not_known(ask: Ask, question: str) -> None:
    assert ask(question).outcome == DECLINE
