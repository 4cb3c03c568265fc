"""What is only named: a variant that is denied, one of two ways offered, what is about to be done, what an action is
set against, a failure that leaves things alone.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    ("question", "begins"),
    [
        ("can I land at 53,000 kg, we're not in the L", "Outside LIM 3.1"),
        ("this isn't the 120L. max landing mass?", "50,000 kg"),
        ("not the stretched one: tiller maximum?", "68°"),
        ("wheelbase of the standard one, not the long one", "13.2 m"),
        ("not the short one: landing mass max", "54,000 kg"),
        ("Take-off with brakes at 240, and no, it isn't the long body.", "Within LIM 3.2"),
        ("wheelbase of the long body, not the standard one", "15.4 m"),
        ("does the wheelbase not differ on the 120L", "Yes: 120: 13.2 m"),
    ],
)
def test_a_variant_that_is_denied_is_not_meant(ask: Ask, question: str, begins: str) -> None:
    assert ask(question).text.startswith(begins)


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("System 2 has failed. Do I extend the gear normally or free fall it?", "works normally with System 2 lost"),
        ("System 1 has failed. Do I extend the gear normally or free fall it?", "free fall only"),
        ("brake controller failed, gear by gravity or normally?", "extends and retracts normally"),
        ("we lost one hydraulic system, gear down normally or free fall?", "With System 2 lost: The gear"),
    ],
)
def test_one_of_two_ways_that_are_offered_is_not_done(ask: Ask, question: str, says: str) -> None:
    assert says in ask(question).text


@pytest.mark.parametrize(
    "question",
    [
        "GEAR MISMATCH on extension and the captain wants to pull the free-fall lever. What comes before that?",
        "GEAR MISMATCH on the way down. My FO is about to pull the free-fall lever: what is there before that?",
    ],
)
def test_what_somebody_is_about_to_do_is_no_state(ask: Ask, question: str) -> None:
    answer = ask(question)

    assert answer.entry == "gear-mismatch-extension"
    assert "castor" not in answer.text


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("Below what pressure does a main tyre have to come off rather than be topped up?", "171 psi"),
        ("below what pressure do I reinflate a nose tyre instead of replacing it", "133 psi"),
        ("at what pressure do I have to swap a nose tyre and not just pump it up", "126 psi"),
        ("Under what reading does a main tyre need topping up?", "181 psi"),
    ],
)
def test_an_action_that_another_is_set_against_is_not_asked_about(ask: Ask, question: str, says: str) -> None:
    assert ask(question).text.startswith(says)


@pytest.mark.parametrize(
    ("question", "spares", "takes"),
    [
        ("Which failures leave the autobrake alone?", "System 1 lost", "System 2 lost"),
        ("What can fail without touching the steering?", "System 2 lost", "System 1 lost"),
        ("which failures don't take NORMAL braking away", "accumulator empty", "System 2 lost"),
        ("what faults can I have without losing anti-skid", "System 2 lost", "brake controller failed"),
        ("which failures leave the white bars as they are", "System 1 lost", "System 2 lost"),
    ],
)
def test_failures_that_leave_a_result_alone_are_listed(ask: Ask, question: str, spares: str, takes: str) -> None:
    text = ask(question).text

    assert spares in text
    assert takes not in text


@pytest.mark.parametrize(
    "question",
    ["which failures leave me with no brakes", "which failures leave me without steering",
     "what failures leave the parking brake useless"],
)  # fmt: skip
def test_what_is_left_without_something_is_lost(ask: Ask, question: str) -> None:
    answer = ask(question)

    assert answer.outcome == ANSWER
    assert "System 1 lost" in answer.text
    assert "leave it as it is" not in answer.text


@pytest.mark.parametrize(
    ("question", "begins"),
    [
        ("is there a single fault that loses me anti-skid", "Yes: no anti-skid"),
        ("is there one single hydraulic failure that takes away my autobrake", "Yes. With System 2 lost"),
        ("is there a single hydraulic failure that costs us both the autobrake and the anti-skid",
         "No single failure of that kind"),
        ("does any single failure take the steering away", "Yes: the nose wheels castor"),
    ],
)  # fmt: skip
def test_whether_a_single_failure_does_it_is_answered_first(ask: Ask, question: str, begins: str) -> None:
    assert ask(question).text.startswith(begins)


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("No autobrake today: does the tiller suffer?", "not affected by no autobrake: The tillers and the pedals"),
        ("we are in ALTERNATE braking, is the gear extension affected?", "The gear extends normally."),
    ],
)
def test_what_a_result_of_another_table_leaves_alone_is_told(ask: Ask, question: str, says: str) -> None:
    assert says in ask(question).text
