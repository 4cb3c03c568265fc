"""What has failed, where several indications are told: sets that give all of them, of several tables."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Ask = Callable[[str], Answer]

CASES = [
    ("Amber bars, anti-skid still works, steering fine: which system has gone?", "System 2 lost", "System 1 lost"),
    ("the bars are white yet the nosewheel trails. Which hydraulic system is out?", "System 1 lost", "System 2"),
    ("STEER LOST shows and the bars are white. What has failed?", "the steering controller failed", "System 1 lost"),
    ("RESERVE BRAKE is on, which system must have gone", "In each of them: System 1 lost", "Nothing leads"),
]


@pytest.mark.parametrize(("text", "within", "without"), CASES)
def test_what_is_told_is_worked_back_to_what_has_failed(ask: Ask, text: str, within: str, without: str) -> None:
    answer = ask(text)
    assert within.lower() in answer.text.lower() and without not in answer.text


def test_a_thing_that_is_lost_instead_of_another_leaves_that_one_well(ask: Ask) -> None:
    for text in ("instead of System 1, System 2 has gone: braking mode?", "hyd 2 not hyd 1 is gone, which mode"):
        assert ask(text).text.startswith("ALTERNATE")


def test_what_is_not_exactly_lost_is_asked_back(ask: Ask) -> None:
    assert ask("System 1 isn't exactly lost, which mode?").outcome == "clarify"


def test_no_hydraulic_failure_leaves_the_systems_well(ask: Ask) -> None:
    answer = ask("How can I be on ALTERNATE with no hydraulic failure?")
    assert "the brake controller failed; the ANTI-SKID switch OFF" in answer.text and "System 2 lost" not in answer.text


def test_why_a_result_is_so_beside_a_thing_that_is_well_asks_for_its_causes(ask: Ask) -> None:
    answer = ask("why do the nose wheels castor with System 1 working?")
    assert "the bypass pin inserted" in answer.text and "System 1 lost" not in answer.text


POSSIBLE = [
    ("Can I be on ALTERNATE with System 2 healthy?", "the brake controller failed"),
    ("EMERGENCY with both hydraulics good: possible?", "Nothing leads to it"),
]


@pytest.mark.parametrize(("text", "within"), POSSIBLE)
def test_whether_a_result_is_possible_is_worked_out(ask: Ask, text: str, within: str) -> None:
    assert within in ask(text).text


def test_what_somebody_says_is_no_state(ask: Ask) -> None:
    assert ask("my colleague says with System 1 lost we're on ALTERNATE. Which mode?").text.startswith("NORMAL")


def test_how_long_ago_something_failed_is_part_of_the_story(ask: Ask) -> None:
    text = "climbing out we lost hyd 1, ten minutes later the brake controller followed. Do I have steering?"
    assert "castor" in ask(text).text


TAKEN_AND_KEPT = [
    ("which hydraulic failure takes the steering but leaves me normal brakes", "With System 1 lost", "System 2 lost"),
    ("which single failure takes the autobrake but leaves anti-skid", "With System 2 lost", "controller"),
    ("Which single failure loses both NORMAL brakes and anti-skid together?", "brake controller failed", "System"),
]


@pytest.mark.parametrize(("text", "within", "never"), TAKEN_AND_KEPT)
def test_what_takes_one_thing_and_leaves_another(ask: Ask, text: str, within: str, never: str) -> None:
    told = ask(text).text.split(".")[0]
    assert within in told
    assert never not in told


def test_a_failure_that_costs_something_is_given(ask: Ask) -> None:
    assert ask("on the long body does a system two failure cost me the auto brake").text.startswith("No autobrake")


ALONE = [
    ("everything has gone but the accumulator, which mode?", "EMERGENCY"),
    ("nothing works except System 1: braking mode?", "ALTERNATE"),
    ("nothing but hyd 1 has gone, which mode?", "NORMAL"),
    ("nothing has failed except System 2. mode?", "ALTERNATE"),
]


@pytest.mark.parametrize(("text", "mode"), ALONE)
def test_an_exception_is_told_apart_from_the_rest(ask: Ask, text: str, mode: str) -> None:
    assert ask(text).text.startswith(mode)


def test_what_is_not_understood_and_has_failed_is_not_passed_over(ask: Ask) -> None:
    assert ask("sys1 sys2 ok, wq dead, what have i got for brakes").outcome != "answer"


def test_which_of_two_systems_is_worked_back(ask: Ask) -> None:
    assert "System 2 lost" in ask("amber bars but anti-skid works: hyd 1 or hyd 2?").text


TAKES = ["what keeps anti-skid but takes autobrake", "what leaves me anti-skid but no autobrake"]


@pytest.mark.parametrize("text", TAKES)
def test_what_takes_one_thing_and_keeps_another_is_worked_back(ask: Ask, text: str) -> None:
    assert ask(text).text.startswith("With System 2 lost: no autobrake; anti-skid works")


def test_what_costs_retraction_is_worked_back(ask: Ask) -> None:
    assert "System 1 lost; the free-fall lever pulled" in ask("which failure costs me retraction").text


def test_what_is_not_taken_is_kept(ask: Ask) -> None:
    assert ask("which one failure takes autobrake but not anti-skid").text.startswith("With System 2 lost")
