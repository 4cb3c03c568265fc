"""Two things that a question names together are both told, or neither is taken for the other."""

from __future__ import annotations

import pytest

from assistant.conversation.context import Context
from assistant.conversation.turn import answer_turn
from assistant.resolving.knowing import Knowledge


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("tiller and pedal limit at 60 kt", ("13.3°", "5.0°")),
        ("maximum takeoff and landing mass", ("56,000 kg", "50,000 kg")),
        ("what do FIRM and STEADY decelerate at", ("2.3 m/s²", "1.4 m/s²")),
        ("colours of GEAR NOT LOCKED and GEAR DOOR", ("Red", "Amber")),
        ("where are the free fall lever and the steer switch", ("behind the pedestal", "left console")),
        ("max speeds for free fall and retraction", ("190 kt", "205 kt")),
        ("brake temperature limits for takeoff and parking brake", ("250 °C", "400 °C")),
    ],
)
def test_both_are_told(question: str, told: tuple[str, str], knowledge: Knowledge) -> None:
    answer, _ = answer_turn(question, Context(), knowledge)
    assert all(part in answer.text for part in told)
    assert answer.sources


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("nose wheel angle with tiller and pedals both full left at 20 kt", "°"),
        ("system 1 and system 2 lost, braking mode", "EMERGENCY"),
        ("gear and brakes: who makes them", ""),
    ],
)
def test_what_belongs_together_is_not_parted(question: str, told: str, knowledge: Knowledge) -> None:
    answer, _ = answer_turn(question, Context(), knowledge)
    assert told in answer.text
    assert " / " not in answer.working


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("which is higher, VLE or VLO for extension", "25 kt higher"),
        ("how much lower is the retraction speed than the extension speed", "25 kt lower"),
        ("what's the gap between max takeoff mass and max landing mass", "6,000 kg higher"),
        ("which is lower, the brake limit for take-off or for the parking brake", "150 °C lower"),
        ("is max pressure in alternate less than in normal", "400 psi lower"),
    ],
)
def test_figures_held_against_each_other(question: str, told: str, knowledge: Knowledge) -> None:
    answer, _ = answer_turn(question, Context(), knowledge)
    assert told in answer.text
