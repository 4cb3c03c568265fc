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


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("RESERVE BRAKE is showing. Does anti-skid work?", "No anti-skid"),
        ("The bars are amber. Will autobrake arm?", "No autobrake"),
        ("RESERVE BRAKE is up, how do I use the pedals?", "Hold 800 psi or less"),
    ],
)
def test_what_always_goes_with_a_result_is_answered(ask: Ask, question: str, says: str) -> None:
    assert ask(question).text.startswith(says)


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("Anti-skid works but autobrake does not. Which failure?", "With System 2 lost"),
        ("RESERVE BRAKE is on, yet System 2 reads 3,000 psi. How can that come about?", "System 1 lost and the brake"),
        ("Nothing steers on the ground and System 1 is fine. What could it be?", "the steering controller failed"),
        ("Does any single failure stop the parking brake from holding?", "No single failure"),
    ],
)
def test_a_cause_is_looked_for_under_what_is_told(ask: Ask, question: str, says: str) -> None:
    assert says in ask(question).text


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("We lose the controller and System 1; the accumulator is full. Which mode?", "EMERGENCY braking"),
        ("Does losing System 1 alone take autobrake away?", "Autobrake works"),
        ("System 2 gone. Would the bars be amber?", "The brake pressure bars are amber"),
        ("Steering controller fails right after lift-off. Castoring or centred?", "The nose wheels are centred"),
        ("We've lost the controller and the System 2 gauge reads 3,000 psi. Mode?", "ALTERNATE braking. No anti-skid"),
        ("Hyd 2 reads 2,990 psi, controller dead: mode?", "ALTERNATE braking. No anti-skid"),
        ("Accumulator bled down to nothing, loss of System 1. Does the parking brake hold?", "The parking brake d"),
    ],
)
def test_a_result_asked_is_told_first(ask: Ask, question: str, says: str) -> None:
    assert ask(question).text.startswith(says)


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("Is GEAR DOOR on yet 8 seconds after the legs locked?", "No: GEAR DOOR does not show yet. 8 s is"),
        ("Would GEAR DOOR be on 12 s after the legs locked?", "Yes: GEAR DOOR shows. 12 s is"),
        ("The free-fall lever was pulled 40 s ago. Is a leg lamp amber yet?", "Yes: GEAR MISMATCH shows"),
    ],
)
def test_a_stated_time_says_whether_its_label_shows(ask: Ask, question: str, says: str) -> None:
    assert ask(question).text.startswith(says)


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("Is anti-skid lost with System 1?", "Anti-skid works"),
        ("Do we go to EMERGENCY when both systems go?", "EMERGENCY braking"),
        ("Accu empty. Does the parking brake hold?", "The parking brake holds"),
        ("Does a dead brake controller cost me the parking brake?", "Still so, not affected"),
        ("System 1 already gone: what one more failure takes NORMAL?", "NORMAL braking is lost (given System 1 lost)"),
    ],
)
def test_one_thing_that_goes_with_another(ask: Ask, question: str, says: str) -> None:
    assert ask(question).text.startswith(says)


@pytest.mark.parametrize(("question", "says"), [
    ("After losing System 2 on its own, does anti-skid still work for me?", "Anti-skid works"),
    ("With System 1 gone by itself, do I still have NORMAL braking?", "NORMAL braking."),
    ("Could a failed brake controller on its own leave me in EMERGENCY?", "System 1"),
    ("Name the things that each take autobrake away on their own.", "No autobrake, with any"),
])  # fmt: skip
def test_a_state_that_stands_alone_is_no_single_cause_asked_for(ask: Ask, question: str, says: str) -> None:
    assert says in ask(question).text.partition(" Hold")[0]


@pytest.mark.parametrize("question", [
    "the pressure bars have gone blank, what is left to slow the jet",
    "bars blank after losing System 1 and System 2: what do I stop the aircraft with?",
    "brake bars showing nothing, how do we slow down",
    "with no wheel brakes, what do I use to slow it down",
    "no bars at all with both hydraulics gone, any way to stop?",
])  # fmt: skip
def test_how_to_stop_is_told_with_what_shows(ask: Ask, question: str) -> None:
    answer = ask(question)

    assert answer.entry == "braking"
    assert answer.text.startswith("Use reverse thrust and aerodynamic braking only")


@pytest.mark.parametrize("question", [
    "steering controller dead: what is lost and what have I still got to keep straight",
    "with the STEER switch off what do I lose and how do I keep straight",
])  # fmt: skip
def test_means_of_keeping_straight_go_with_what_is_lost(ask: Ask, question: str) -> None:
    assert "differential braking" in ask(question).text


@pytest.mark.parametrize(("question", "entry"), [
    ("How can we raise the lever at lift-off if the solenoid pin sticks?", "override-button"),
    ("can we tow with both systems lost", "accumulator-tow-minimum"),
    ("is a push allowed with System 1 lost", "accumulator-tow-minimum"),
    ("with the brake fans on how many minutes to departure", "brake-cooling"),
    ("the fans are running, when can I take off", "brake-cooling"),
    ("is anti-skid lost in EMERGENCY", "emergency-anti-skid"),
])  # fmt: skip
def test_a_state_beside_what_is_asked_is_no_answer(ask: Ask, question: str, entry: str) -> None:
    assert ask(question).entry == entry


@pytest.mark.parametrize("question", [
    "system 1 gone, accumulator charged and anti-skid off while system 2 keeps pumping: which brakes",
    "System 1 has packed up, System 2 is still pumping, ANTI-SKID off, accumulator full. What mode?",
])  # fmt: skip
def test_a_system_that_pumps_is_normal(ask: Ask, question: str) -> None:
    assert ask(question).text.startswith("EMERGENCY braking")
