"""Which states a text gives: denied, shared, around their thing, by number, and which are only asked about."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.conversation.reading_turns.readings import question_of


def given(text: str, knowledge: Knowledge) -> dict[str, str]:
    return {c.input: c.value for c in question_of(text, knowledge, "").conditions if "." not in c.input}


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Nobody removed the bypass pin. Do I have steering?", {"bypass_pin": "inserted"}),
        ("Nobody took the bypass pin out. Do I have steering?", {"bypass_pin": "inserted"}),
        ("The free-fall lever has not been pulled. Can I raise the gear?", {"free_fall_lever": "stowed"}),
        ("I forgot to switch the ANTI-SKID switch on. Which mode?", {"anti_skid_switch": "off"}),
        (
            "Neither the accumulator nor hyd 1 works. Does the parking brake hold?",
            {"accumulator": "empty", "system_1": "lost"},
        ),
        (
            "We have neither the brake controller nor system 2, and system 1 has gone. Which mode?",
            {"brake_controller": "failed", "system_2": "lost", "system_1": "lost"},
        ),
        ("There is no loss of system 1. Do I have steering?", {"system_1": "normal"}),
    ],
)
def test_what_is_denied_is_the_other_state(knowledge: Knowledge, text: str, found: dict[str, str]) -> None:
    assert given(text, knowledge) == found


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("System 1 failed and so has the accumulator. Mode?", {"system_1": "lost", "accumulator": "empty"}),
        ("System 1 is dead. So is system 2. Mode?", {"system_1": "lost", "system_2": "lost"}),
        ("System 1 went, followed by system 2. Mode?", {"system_1": "lost", "system_2": "lost"}),
        ("We've lost system 2 as well as the accumulator. Mode?", {"system_2": "lost", "accumulator": "empty"}),
        ("System 1/the accumulator failed. Mode?", {"system_1": "lost", "accumulator": "empty"}),
        ("System 1 hasn't failed but system 2 has. Mode?", {"system_1": "normal", "system_2": "lost"}),
        ("System 1 lost, system 2 hasn't. Mode?", {"system_1": "lost", "system_2": "normal"}),
        ("It's not system 2 that failed, it's system 1. Mode?", {"system_2": "normal", "system_1": "lost"}),
        ("We have system 1, accumulator flat. Mode?", {"system_1": "normal", "accumulator": "empty"}),
        ("Everything's gone: system 1, system 2. Mode?", {"system_1": "lost", "system_2": "lost"}),
    ],
)
def test_a_thing_shares_the_state_of_the_one_before(knowledge: Knowledge, text: str, found: dict[str, str]) -> None:
    assert given(text, knowledge) == found


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Does the parking brake still work with system 1 gone?", {"system_1": "lost"}),
        ("Does the parking brake hold with the accumulator OK?", {"accumulator": "charged"}),
        ("There's no pressure in system 1. Do I have steering?", {"system_1": "lost"}),
        ("Okay both systems failed, is there any anti-skid", {"system_1": "lost", "system_2": "lost"}),
        ("System 2 lost, anti-skid?", {"system_2": "lost"}),
        ("free-fall lever pulled, nose leg in the air, steering?", {"free_fall_lever": "pulled", "nose_leg": "in_air"}),
        ("free-fall lever pulled nose leg in the air, steering?", {"free_fall_lever": "pulled", "nose_leg": "in_air"}),
        ("No. 1 system lost. Do I have steering?", {"system_1": "lost"}),
    ],
)
def test_a_word_belongs_to_one_thing(knowledge: Knowledge, text: str, found: dict[str, str]) -> None:
    assert given(text, knowledge) == found


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("System 2 is lost but 1 is fine. Mode?", {"system_2": "lost", "system_1": "normal"}),
        ("System 1 is dead, same for 2. Mode?", {"system_1": "lost", "system_2": "lost"}),
        ("The accumulator has still got 1,200 psi. Mode?", {"accumulator": "empty"}),
        ("System 1 gone and 2,700 psi in the accumulator. Mode?", {"system_1": "lost", "accumulator": "charged"}),
        ("System 1 is lost, may I press to 2,000 psi?", {"system_1": "lost"}),
        ("We do 1 landing with system 2 lost. Mode?", {"system_2": "lost"}),
    ],
)
def test_numbers_name_things_and_states(knowledge: Knowledge, text: str, found: dict[str, str]) -> None:
    assert given(text, knowledge) == found


def test_what_no_word_explains_is_a_failure_where_a_result_is_asked(knowledge: Knowledge) -> None:
    croaked = question_of("System 1 has croaked. Do I have steering?", knowledge, "")
    silent = question_of("With System 1, do I have steering?", knowledge, "")
    asked = question_of("What does System 1 supply?", knowledge, "")

    assert [(c.input, c.value) for c in croaked.conditions] == [("system_1", "lost")]
    assert silent.unsaid == ("system_1",)
    assert not silent.conditions
    assert not asked.conditions
    assert not asked.unsaid


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("Is autobrake lost when system 2 is lost?", True),
        ("System 2 lost means no autobrake, correct?", True),
        ("Am I in EMERGENCY braking if only system 2 fails?", True),
        ("On ALTERNATE braking, and System 1 quits. What now?", False),
        ("What do I have without autobrake and with system 1 lost", False),
    ],
)
def test_a_result_is_asked_about_or_given(knowledge: Knowledge, text: str, asked: bool) -> None:
    results = [c for c in question_of(text, knowledge, "").conditions if "." in c.input]

    assert results
    assert all(c.asked == asked for c in results)


@pytest.mark.parametrize(
    ("text", "given"),
    [
        ("System 1 lost along with the controller, accumulator charged",
         {"system_1": "lost", "brake_controller": "failed", "accumulator": "charged"}),
        ("system one failed and the brake controller as well system two is fine",
         {"system_1": "lost", "brake_controller": "failed", "system_2": "normal"}),
        ("System 2 has gone and with it the accumulator", {"system_2": "lost", "accumulator": "empty"}),
    ],
)  # fmt: skip
def test_a_thing_shares_the_state_before_it_or_has_its_own(
    knowledge: Knowledge, text: str, given: dict[str, str]
) -> None:
    found = {c.input: c.value for c in question_of(text, knowledge, "").conditions if not c.implied}

    assert given.items() <= found.items()
