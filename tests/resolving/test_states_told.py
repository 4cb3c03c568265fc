"""States told in other words, counts of what is left, labels asked with a mode, and what is asked back."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, CLARIFY, Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    ("question", "left"),
    [
        ("I've pressed twice and made two full applications on the accumulator, how many remain?", 4),
        ("RESERVE BRAKE is up and we've used one full application. How many are left?", 5),
        ("five full applications gone, how many more have I got", 1),
    ],
)
def test_what_is_left_of_the_applications(ask: Ask, question: str, left: int) -> None:
    answer = ask(question)

    assert answer.entry == "applications-left"
    assert next((n.value, n.unit) for n in answer.values) == (left, "count")


def test_all_of_them_are_left_where_none_is_used(ask: Ask) -> None:
    assert ask("how many applications are left on a full accumulator").text.startswith("6")


@pytest.mark.parametrize("question", ["1 hyd sys lost, autobrake?", "we lost 1 of the hydraulic systems, which mode"])
def test_one_system_is_either_of_them(ask: Ask, question: str) -> None:
    text = ask(question).text

    assert "With System 1 lost" in text
    assert "With System 2 lost" in text


@pytest.mark.parametrize("question", ["#2 hyd lost, mode?", "no. 2 system lost, mode?", "number 2 hyd gone, mode?"])
def test_a_system_with_its_number_is_that_one(ask: Ask, question: str) -> None:
    assert ask(question).text.startswith("ALTERNATE braking. Anti-skid works")


def test_the_parking_brake_sends_no_more_than_its_source_holds(ask: Ask) -> None:
    low = ask("System 1 gone, accumulator 1,700 psi: what is the most the parking brake lever can send?")
    full = ask("System 1 gone, accumulator 2,900 psi: what is the most the parking brake lever can send?")

    assert low.text.startswith("1,700 psi")
    assert full.text.startswith("2,400 psi")


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("Neither system has failed but the brake controller has. Bars?", "The brake pressure bars are amber"),
        ("bars with ANTI-SKID LOST showing?", "The brake pressure bars are amber"),
        ("free-fall lever pulled. Bars?", "Still so, not affected by the free-fall lever pulled: The brake pressure"),
        ("hydraulics sweet, brake controller belly up: mode?", "ALTERNATE braking. No anti-skid"),
        ("system 2 is playing up, braking mode", "ALTERNATE braking"),
        ("the controller is dead and anti-skid is off, can I set the parking brake", "Still so, not affected"),
    ],
)
def test_a_state_is_understood(ask: Ask, question: str, says: str) -> None:
    assert ask(question).text.startswith(says)


@pytest.mark.parametrize(
    "question",
    [
        "System 1 is locked solid. Steering?",
        "they forgot the bypass pin, does the tiller steer",
        "system 1 unknown, system 2 lost: mode?",
        "I can't tell whether system 2 is alive. autobrake?",
        "not sure if system 1 has failed, can I steer",
        "systems 1 and 2 are not both lost, mode?",
    ],
)
def test_what_is_not_understood_of_a_thing_is_asked_back(ask: Ask, question: str) -> None:
    assert ask(question).outcome == CLARIFY


def test_the_label_that_shows_is_told_with_the_bars(ask: Ask) -> None:
    answer = ask("Brake controller failed: what colour are the bars and which caution comes up?")

    assert "amber" in answer.text
    assert "ANTI-SKID LOST" in answer.text


def test_a_statement_on_one_failure_is_not_told_where_more_has_failed(ask: Ask) -> None:
    answer = ask("brake controller dead and system one gone too, accumulator charged, what have I got left")

    assert "EMERGENCY braking" in answer.text
    assert "ALTERNATE" not in answer.text


def test_two_sentences_that_ask_are_both_answered(ask: Ask) -> None:
    answer = ask("What does a free-fall extension cost me besides time? Do the brakes suffer?")

    assert answer.outcome == ANSWER
    assert "retracted in flight" in answer.text
    assert "brakes are not affected" in answer.text


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("everything works but the steering controller. tillers?", "The nose wheels castor"),
        ("all is well except System 2. Mode?", "ALTERNATE braking"),
        ("System 1 was lost but is back. Steering?", "The tillers and the pedals steer"),
        ("sys 2 failed, then came back: autobrake?", "Autobrake works"),
        ("ANTI-SKID switch was OFF but I put it back ON, autobrake?", "Autobrake works"),
        ("Neither the controller nor system 2 has failed; system 1 has. Steering?", "The nose wheels castor"),
        ("what single failure takes the autobrake but keeps anti-skid", "With System 2 lost: no autobrake"),
        ("controller failed, how do I get to EMERGENCY from here", "With System 1 lost"),
    ],
)
def test_an_exception_and_a_change_are_understood(ask: Ask, question: str, says: str) -> None:
    assert ask(question).text.startswith(says)


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("RESERVE BRAKE showing, does the parking brake hold", "The parking brake holds"),
        ("the bars are blank: does the parking brake hold", "The parking brake does not hold"),
        ("on EMERGENCY braking, can I retract the gear?", "The gear cannot be retracted"),
    ],
)
def test_a_result_of_another_table_tells(ask: Ask, question: str, says: str) -> None:
    assert ask(question).text.startswith(says)


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("hyd 2 lost: RESERVE BRAKE?", "No: RESERVE BRAKE does not show. ALTERNATE"),
        ("will RESERVE BRAKE show with both systems lost and the accumulator full?", "Yes: RESERVE BRAKE shows"),
        ("does the amber STEER LOST come up if System 1 fails", "No: STEER LOST does not show"),
        ("nothing left but system 2: mode", "NORMAL braking"),
    ],
)
def test_whether_a_label_shows_in_a_state(ask: Ask, question: str, says: str) -> None:
    assert ask(question).text.startswith(says)


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("Is System 1 enough for autobrake?", "No autobrake"),
        ("Is System 2 enough for steering?", "The nose wheels castor"),
        ("is 1,600 psi in system 2 enough for autobrake", "Autobrake works"),
        ("1,450 psi on system 1 enough to steer?", "The nose wheels castor"),
    ],
)
def test_one_system_or_one_pressure_that_is_enough(ask: Ask, question: str, says: str) -> None:
    assert ask(question).text.startswith(says)


@pytest.mark.parametrize(
    ("question", "entry"),
    [
        ("free fall lever's been pulled, what keeps the gear down?", "free-fall-locks"),
        ("with the free-fall lever pulled, what moves the legs", "free-fall-force"),
        ("after pulling the free fall lever what pushes the nose leg out", "nose-gas-spring"),
        ("free-fall lever pulled: steering?", "steering"),
    ],
)
def test_a_statement_asked_for_goes_before_what_follows_from_a_state(ask: Ask, question: str, entry: str) -> None:
    assert ask(question).entry == entry


def test_taxiing_out_says_that_nothing_is_out(ask: Ask) -> None:
    assert "healthy" not in ask("amber steer lost came on taxiing out what has the aeroplane lost").text


@pytest.mark.parametrize(
    ("question", "mode"),
    [
        ("neither system nor the brake controller has failed, which mode?", "NORMAL"),
        ("neither system works, accumulator charged, mode?", "EMERGENCY"),
        ("neither system has failed but the controller has: mode?", "ALTERNATE"),
    ],
)
def test_neither_system_denies_of_both(ask: Ask, question: str, mode: str) -> None:
    assert ask(question).text.startswith(mode)


def test_a_state_before_joined_things_counts_where_it_can_be_said_of_them(ask: Ask) -> None:
    text = ask("put ANTI-SKID back to ON with both systems and the brake controller fine, which mode?").text

    assert text.startswith("NORMAL")


@pytest.mark.parametrize(
    "question",
    ["with system 1 gone and the switch OFF, mode?", "both systems healthy and the switch is off, which mode"],
)
def test_a_switch_that_is_not_named_is_asked_back(ask: Ask, question: str) -> None:
    assert ask(question).outcome == CLARIFY


def test_what_is_had_meanwhile_narrows_nothing(ask: Ask) -> None:
    assert ask("Brakes at 290. Can we go while I finish my coffee?").text.startswith("Outside")


@pytest.mark.parametrize(
    "question", ["how could I end up with only the reversers", "when is reverse thrust the only way of stopping"]
)
def test_reverse_alone_is_no_brakes(ask: Ask, question: str) -> None:
    assert "No wheel brakes" in ask(question).text


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("both hydraulics failed. brake dial 1350: do the brakes still work?", "No wheel brakes"),
        ("no hydraulics at all and 1,400 psi on the dial. do the wheel brakes work", "EMERGENCY braking"),
        ("brake dial 900 psi, system 1 dead: park brake hold?", "The parking brake does not hold"),
    ],
)
def test_a_reading_of_the_dial_is_the_accumulators(ask: Ask, question: str, says: str) -> None:
    assert ask(question).text.startswith(says)


@pytest.mark.parametrize("state", ["both hyds up", "both systems on line", "both hydraulic systems up and running"])
def test_both_are_well(ask: Ask, state: str) -> None:
    text = ask(f"brake controller dead, {state}, what mode").text

    assert text.startswith("ALTERNATE braking. No anti-skid")
    assert "System 1 normal and System 2 normal" in text


@pytest.mark.parametrize(
    "question",
    [
        "most pressure EMERGENCY brakes can get with the accumulator at 2,900?",
        "in EMERGENCY with 2,200 psi in the accumulator, what's the most pressure at the brakes",
    ],
)
def test_a_figure_in_a_mode_is_no_cause_and_no_verdict(ask: Ask, question: str) -> None:
    answer = ask(question)

    assert answer.entry == "braking-pressure-emergency"
    assert answer.text.startswith("2,600 psi: ")


@pytest.mark.parametrize(
    "question", ["steer switch off: what won't i have", "what am i going to miss, steer switch off"]
)
def test_what_one_will_not_have_is_lost(ask: Ask, question: str) -> None:
    assert ask(question).text.startswith("With the STEER switch OFF: The nose wheels castor")


@pytest.mark.parametrize(
    ("question", "said"),
    [
        ("steer switch off, pedal button held, nothing else wrong, which braking mode", "NORMAL"),
        ("PEDAL button jammed in and full left rudder at 40 kt: do the nose wheels follow the pedals?", "tillers"),
    ],
)
def test_what_follows_from_the_states_is_told_where_nothing_else_fits_nearly_as_well(
    ask: Ask, question: str, said: str
) -> None:
    answer = ask(question)

    assert answer.outcome == ANSWER
    assert said in answer.text
