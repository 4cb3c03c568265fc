"""What was told to be in a state is corrected, changed or added to by a later turn."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("turns", "states"),
    [
        (("hyd 1 gone, which braking mode", "sorry i meant hyd 2", "and autobrake?"), "System 2 lost"),
        (("brake controller failed, mode?", "no wait, the anti-skid switch is off"), "the ANTI-SKID switch OFF"),
        (("both systems lost. mode?", "correction, just system 2", "bars?"), "System 2 lost"),
        (("system 2 out, brakes?", "not 2, 1", "bars colour"), "System 1 lost"),
        (("bypass pin in, does the tiller steer?", "actually it's out"), "the bypass pin removed"),
        (("system 1 lost. tiller?", "and if it was the steering controller"), "the steering controller failed"),
    ],
)
def test_a_correction_takes_the_place_of_the_like(talk: Talk, turns: tuple[str, ...], states: str) -> None:
    assert f"with {states}, and everything" in talk(*turns)[-1].text


@pytest.mark.parametrize(
    ("turns", "states"),
    [
        (("steer switch off, can i steer", "back on, and system 1 gone"), "the STEER switch ON and System 1 lost"),
        (
            ("free-fall lever pulled. steering?", "lever stowed, system 1 lost"),
            "the free-fall lever stowed and System 1 lost",
        ),
        (("steer switch off, can i steer?", "sorry, it's on", "and with the button held"),
         "the STEER switch ON and the PEDAL button held"),
        (("anti-skid off, which mode am i in", "anti-skid on, sys 2 dead"),
         "the ANTI-SKID switch ON and System 2 lost"),
        (("sys 1 lost. mode?", "add system 2 to that", "bars?"), "System 1 lost and System 2 lost"),
        (("sys 1 lost. mode?", "make it both", "bars?"), "System 1 lost and System 2 lost"),
        (("hyd 2 gone mode?", "on top of that the brake controller"), "System 2 lost and the brake controller failed"),
    ],
)  # fmt: skip
def test_states_are_changed_and_added_to(talk: Talk, turns: tuple[str, ...], states: str) -> None:
    assert f"with {states}, and everything" in talk(*turns)[-1].text


def test_a_verdict_says_what_is_used_instead(talk: Talk) -> None:
    answers = talk("both systems lost, accumulator 1,900. Can I rely on the parking brake?", "so what do i use")
    assert answers[-1].entry == answers[0].entry
    assert answers[-1].text.startswith("Do not rely on the parking brake; use chocks")


@pytest.mark.parametrize(
    "turn", ["wait, what does system 1 run?", "no autobrake then?", "is it only autobrake that goes"]
)
def test_a_question_corrects_nothing(talk: Talk, turn: str) -> None:
    assert "System 2 lost" in talk("System 2 is lost. Braking mode?", turn, "bars?")[-1].text
