"""Labels that are told to show, or to be out, say what holds; those that are asked about say nothing."""

from __future__ import annotations

import pytest

from assistant.resolving.given_states import given_states
from assistant.resolving.knowing import Knowledge


def _given(text: str, knowledge: Knowledge) -> dict[str, str]:
    found = given_states(knowledge.reader.read(text), knowledge).conditions
    return {c.input: c.value for c in found if not c.asked}


@pytest.mark.parametrize(
    ("text", "name", "value"),
    [
        ("STEER LOST is on, do the pedals steer?", "steering_controller", "failed"),
        ("amber anti-skid lost caption, which mode", "brake_controller", "failed"),
        ("TOW PIN still up on taxi. Tiller?", "bypass_pin", "inserted"),
        ("The TOW PIN memo does not go out. Can I steer?", "bypass_pin", "inserted"),
        ("The TOW PIN memo has gone out. Can I steer?", "bypass_pin", "removed"),
        ("STEER LOST stays dark with System 1 lost. Does the tiller work?", "steering_controller", "healthy"),
        ("RESERVE BRAKE has come on, anti-skid?", "braking.mode", "emergency"),
    ],
)
def test_a_label_told_of_says_its_cause(knowledge: Knowledge, text: str, name: str, value: str) -> None:
    assert _given(text, knowledge)[name] == value


@pytest.mark.parametrize(
    "text",
    [
        "Does STEER LOST show with System 1 lost?",
        "What does ANTI-SKID LOST mean?",
        "when does TOW PIN come on",
        "anti-skid lost, System 1 fine, which mode",
        "STEER LOST shows with System 1 gone, right?",
    ],
)
def test_a_label_that_is_asked_about_says_nothing(knowledge: Knowledge, text: str) -> None:
    assert not {"steering_controller", "brake_controller", "bypass_pin"} & set(_given(text, knowledge))


@pytest.mark.parametrize(
    "text", ["You read ON TARGET: what does it mean?", "you read on target what does that tell you"]
)
def test_a_label_that_begins_with_on_is_no_state_of_being_on(knowledge: Knowledge, text: str) -> None:
    assert any("on_target" in mention.concepts for mention in knowledge.reader.read(text).mentions)
