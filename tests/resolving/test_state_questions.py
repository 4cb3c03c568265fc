"""What a question with states is answered by: the table asked, its plain row, a limit first, or a question back."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    ("question", "entry", "says"),
    [
        ("Am I in EMERGENCY if only system 2 fails?", "braking", "ALTERNATE braking"),
        ("system 2 lost means no anti-skid, correct?", "braking", "Anti-skid works"),
        ("Losing system 1 puts us in ALTERNATE, right?", "braking", "NORMAL braking"),
        ("NORMAL, ALTERNATE or EMERGENCY with system 1 lost?", "braking", "NORMAL braking"),
        ("on ALTERNATE braking, and System 1 quits. Which mode?", "braking", "EMERGENCY braking"),
    ],
)
def test_a_result_that_is_asked_about_invents_no_failure(ask: Ask, question: str, entry: str, says: str) -> None:
    answer = ask(question)

    assert answer.entry == entry
    assert answer.text.startswith(says)


@pytest.mark.parametrize(
    ("question", "entry"),
    [
        ("Hyd 1 is out, the accumulator reads zero, is anti-skid available?", "braking"),
        ("Can I arm the autobrake? hyd 1 inop, accumulator flat", "braking"),
        ("Does the parking brake work? Accumulator at zero. System 1 intact", "parking_brake"),
        ("system 1 at 800 psi, can I steer", "steering"),
        ("system 1 at 1,200 psi, is steering available", "steering"),
        ("Hydraulic one reads 3,000 psi. Do I have steering?", "steering"),
        ("Both systems are lost but the accumulator is at 2,600 psi. Does the parking brake hold?", "parking_brake"),
        ("controller failed, which mode", "braking"),
        ("controller failed, do I have steering", "steering"),
        ("both systems fine, how does the gear extend", "gear_operation"),
    ],
)
def test_the_table_whose_result_is_asked_answers(ask: Ask, question: str, entry: str) -> None:
    answer = ask(question)

    assert answer.outcome == "answer"
    assert answer.entry == entry


def test_a_limit_on_the_reading_comes_before_the_state(ask: Ask) -> None:
    answer = ask("accumulator reading 1,700 psi, park on it?")

    assert answer.entry == "accumulator-parking-minimum"
    assert answer.text.startswith("Outside")


def test_a_state_that_is_unsaid_is_asked_for(ask: Ask) -> None:
    answer = ask("With System 1, do I have steering?")

    assert answer.outcome == "clarify"
    assert "system 1" in answer.text.lower()
