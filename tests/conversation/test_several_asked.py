"""Lists of things, and clauses that leave out what the first one names, are answered each by its own record."""

from __future__ import annotations

import pytest

from assistant.conversation.context import Context
from assistant.conversation.several.in_a_list import each_listed
from assistant.conversation.several.in_clauses import each_clause
from assistant.conversation.turn import answer_turn
from assistant.resolving.knowing import Knowledge


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("How many seconds do a retraction, an extension and a free-fall extension last?", ("11 s", "9 s", "18 s")),
        ("What are the speed limits for raising, for lowering and for flying with the gear down?",
         ("205", "230", "255")),
        ("What is the maximum landing mass, the maximum take-off mass and the maximum tyre speed?",
         ("50,000 kg", "56,000 kg", "195 kt")),
        ("What is the maximum brake pressure in EMERGENCY, NORMAL and ALTERNATE?", ("2,600 psi", "3,000 psi")),
        ("What are the tiller maximum, wheelbase and main tyre pressure of the 120L?", ("72°", "15.4 m", "205 psi")),
        ("What is the heat-sink mass of a brake and its specific heat?", ("48 kg", "1,300")),
        ("GEAR DOOR: what colour, and after what delay?", ("Amber", "10 s")),
        ("Tillers: up to what ground speed is the full deflection available, and at what speed do they give nothing?",
         ("15 kt", "80 kt")),
        ("At what speed may the gear be lowered at most, and up to what altitude?", ("230 kt", "20,000 ft")),
        ("What is the accumulator's nitrogen pre-charge, and what is the pressure when fully charged?",
         ("1,200 psi", "3,000 psi")),
        ("How many ground-lock pins are there, what colour are their streamers, and where are they stowed?",
         ("3 gear", "Red", "right-hand seat")),
    ],
)  # fmt: skip
def test_each_is_told(question: str, told: tuple[str, ...], knowledge: Knowledge) -> None:
    answer, _ = answer_turn(question, Context(), knowledge)
    assert all(part in answer.text for part in told), answer.text
    assert answer.sources


@pytest.mark.parametrize(
    "question",
    [
        "Is it 205, 230 or 255 kt with the gear down?",
        "What have System 1 and System 2 in common?",
        "What is the difference between VLO extension, VLO retraction and VLE?",
        "What do VLE, VLO and the price have in common?",
        "When the undercarriage comes up, which way do the main legs swing?",
        "Why steady pressure, and no pumping, once the anti-skid has gone?",
    ],
)
def test_what_is_no_list_is_left(question: str, knowledge: Knowledge) -> None:
    assert not each_listed(question, knowledge)
    assert not each_clause(question, knowledge)


def test_a_failure_is_not_forgotten_by_a_later_clause(knowledge: Knowledge) -> None:
    question = "System 1 is lost, so how do I get the wheels down and what speed do I need?"
    answer, _ = answer_turn(question, Context(), knowledge)
    assert "190 kt" in answer.text
    assert "230 kt" not in answer.text
