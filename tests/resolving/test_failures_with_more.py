"""Failures with something asked besides: a factor, a label, applications and pressure, all that is lost."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Ask = Callable[[str], Answer]

FACTOR = [
    "brake computer packed up, by how much does my landing distance grow",
    "BCU u/s, factor on landing distance?",
    "System 1 lost and brake controller failed, factor on the landing distance?",
    "system 2 lost and anti-skid off: landing distance factor",
    "sys 2 out with ANTI-SKID LOST showing, do I still need 1.6",
    "hyd 2 gone and the controller for the brakes too. landing distance times what?",
]
NO_FACTOR = ["hyd 1 gone: does 1.6 apply", "sys 2 lost, do I need the 1.6", "one system lost, landing distance factor?"]
LABELS = [
    ("System 2 quits with STEADY in use: autobrake and caption?", "AUTOBRAKE OFF"),
    ("autobrake armed, someone selects ANTI-SKID OFF. What does the autobrake do, and what message?", "AUTOBRAKE OFF"),
    ("brake controller fails during an autobrake stop. do I lose the autobrake, and how am I told?", "AUTOBRAKE OFF"),
    ("what tells me that I have only the accumulator to brake with", "RESERVE BRAKE"),
]
LOST = [
    ("what do we lose with the free-fall lever pulled, besides powered extension", "castor"),
    ("free-fall lever pulled. what else have I lost apart from normal extension", "castor"),
    ("steer switch is off. what else goes", "castor"),
    ("tell me everything that's gone with system 1 out", "castor"),
    ("what's out when both systems have failed and the accumulator is good", "No autobrake"),
]
STATES = [
    ("we lost system 1 but still have system 2, mode?", "System 1 lost"),
    ("lost the brake controller but we do have both systems, technique?", "800 psi"),
    ("what colour are the bars when the controller dies with sys 1 and sys 2 healthy", "amber"),
    ("if the brake controller packs up but I have got both hydraulic systems what colour are the bars", "amber"),
    ("hyd 2 just dumped all its fluid. mode?", "ALTERNATE"),
    ("BC's gone and so is system 1, bottle's empty. brakes?", "No wheel brakes"),
    ("sys 1 packs up, can I still use FIRM", "Autobrake works"),
    ("both hyds lost, acc charged: no. of applications + max psi", "800 psi or less, steady: 6 applications"),
    ("STEER switch off, how much pedal steering at 20 kt", "The pedals do not steer"),
    ("STEER LOST on, what can I get from the tiller at 20 kt", "castor"),
    ("tiller limit at 30 kt with System 1 lost", "castor"),
    ("nose leg in the air, tiller limit at 40 kt", "centred"),
    ("system 2 hydraulics gone, mode?", "ALTERNATE"),
    ("what is unaffected by loss of system 2", "The tillers and the pedals steer"),
    ("RESERVE BRAKE memo reads 4: how many have we used", "2: full applications used"),
    ("which single failure costs me nosewheel steering but no braking", "System 1 lost"),
    ("controller failed, caption?", "ANTI-SKID LOST"),
]
ONE_OF_TWO = [
    "one of my hydraulics has gone, what's my braking mode",
    "half our hydraulics are out. braking mode?",
    "one of both systems is lost, what mode",
]


@pytest.mark.parametrize("text", FACTOR)
def test_the_factor_holds_wherever_anti_skid_is_gone(ask: Ask, text: str) -> None:
    answer = ask(text)
    assert (answer.outcome, answer.text[:4]) == ("answer", "1.6:")


@pytest.mark.parametrize("text", NO_FACTOR)
def test_no_factor_where_anti_skid_works(ask: Ask, text: str) -> None:
    assert re.match(r"No\b", ask(text).text)


@pytest.mark.parametrize(("text", "label"), LABELS)
def test_the_label_that_shows_is_told_besides(ask: Ask, text: str, label: str) -> None:
    assert label in ask(text).text


@pytest.mark.parametrize(("text", "lost"), LOST)
def test_all_that_is_lost_is_told(ask: Ask, text: str, lost: str) -> None:
    answer = ask(text).text
    assert answer.startswith("With ")
    assert lost in answer


@pytest.mark.parametrize(("text", "told"), STATES)
def test_each_thing_has_its_own_state(ask: Ask, text: str, told: str) -> None:
    assert told in ask(text).text


@pytest.mark.parametrize("text", ONE_OF_TWO)
def test_one_of_two_is_either_of_them(ask: Ask, text: str) -> None:
    answer = ask(text).text
    assert "With System 1 lost: NORMAL" in answer
    assert "With System 2 lost: ALTERNATE" in answer


def test_a_result_told_that_the_states_do_not_bring_wants_what_comes_next(ask: Ask) -> None:
    text = "reverse is out, anti-skid is off, both on the pedals, still no brakes. What's left?"
    assert "arking brake" in ask(text).text
