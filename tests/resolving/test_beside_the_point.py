"""What says nothing of what a question is after is not told as its answer, however well it fits otherwise."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer
from assistant.resolving.knowing import Knowledge
from assistant.understanding.overstepped import EXCEEDED

Ask = Callable[[str], Answer]


@pytest.mark.parametrize("asked", [
    "how do I polish the tiller", "how do I test the pressure bars", "how to sharpen the wear pin",
    "how do I flush the struts", "what do I say to the ground crew before pushback",
    "what happens if I kick the gear lever",
])  # fmt: skip
def test_what_is_asked_to_be_done_must_be_known(ask: Ask, asked: str) -> None:
    assert ask(asked).outcome != ANSWER


@pytest.mark.parametrize(("asked", "entry"), [
    ("how do I silence the gear horn", "gear-horn-silence"), ("can I pump the pedals", "why-not-pump"),
    ("how do I reset the steer lost", "steer-lost-procedure"), ("how do I handle BRAKE HEAT", "brake-heat-procedure"),
    ("how do i turn the autobrake off", "autobrake-disarms"),
])  # fmt: skip
def test_what_a_record_tells_to_do_is_told(ask: Ask, asked: str, entry: str) -> None:
    assert ask(asked).entry == entry


@pytest.mark.parametrize("asked", [
    "what gas goes in the tyres", "brake lights on the panel",
    "can I taxi with a gear door open", "carbon brake wear how to taxi",
])  # fmt: skip
def test_each_thing_of_a_few_words_counts(ask: Ask, asked: str) -> None:
    assert ask(asked).outcome != ANSWER


@pytest.mark.parametrize("asked", [
    "park brake wont release", "brake pedal stiff", "bypass pin sheared", "one brake probe u/s can i go",
    "brakes smoking, what now", "tiller stiff, what do I do", "door wont shut, can i fly on",
    "how do I charge the accumulator with no electrics",
])  # fmt: skip
def test_a_fault_that_no_record_knows_is_not_passed_over(ask: Ask, asked: str) -> None:
    assert ask(asked).outcome != ANSWER


@pytest.mark.parametrize("asked", [
    "what happens if the gear lever snaps", "what happens if one sensor fails", "what happens if i stand on the brakes",
    "what happens if i land with the park brake on", "what happens if i turn the tiller too fast",
])  # fmt: skip
def test_what_is_supposed_must_be_known(ask: Ask, asked: str) -> None:
    assert ask(asked).outcome != ANSWER


@pytest.mark.parametrize(("asked", "entry"), [
    ("what happens if i pump the brakes", "why-not-pump"),
    ("what happens when I pull the free-fall lever", "free-fall-lever-function"),
    ("what happens if a fuse plug melts", "fuse-plug-melts"),
])  # fmt: skip
def test_what_a_record_tells_of_it_is_told(ask: Ask, asked: str, entry: str) -> None:
    assert ask(asked).entry == entry


@pytest.mark.parametrize(("asked", "entry"), [
    ("sys 2 out, how many presses", "applications-system-2-lost"),
    ("system 1 gone, how many brake applications", "applications-system-1-lost"),
    ("both systems gone, how many presses", "braking"),
])  # fmt: skip
def test_a_count_is_answered_by_a_row_that_counts(ask: Ask, asked: str, entry: str) -> None:
    assert ask(asked).entry == entry


def test_what_may_be_done_is_no_colour_of_a_streamer(ask: Ask) -> None:
    assert ask("can i carry the pins in my bag").entry != "ground-lock-pins-streamer"


@pytest.mark.parametrize("text", [
    "went over gear speed by 10, what now", "if I go over the tyre speed", "gone past max towing speed",
])  # fmt: skip
def test_what_is_gone_over_is_exceeded(knowledge: Knowledge, text: str) -> None:
    reading = knowledge.reader.read(text)

    assert reading.has(EXCEEDED)
    assert not reading.amounts


@pytest.mark.parametrize(("asked", "says"), [
    ("at 85 knots I think a tyre went, stop or go", "reject"),
    ("felt a thump at 115 on the take-off run, maybe a tyre, continue or reject", "continue"),
])  # fmt: skip
def test_stop_or_go_is_no_matter_of_a_speed_limit(ask: Ask, asked: str, says: str) -> None:
    answer = ask(asked)

    assert answer.entry == "tyre-burst-bands"
    assert says in answer.text.partition(" Rule:")[0]


@pytest.mark.parametrize("asked", [
    "which hydraulic system is at work when the pedals work the metering valves directly",
    "which system feeds the brakes in ALTERNATE", "what hydraulic system moves the nose wheels",
])  # fmt: skip
def test_which_of_several_is_told_by_its_number(ask: Ask, asked: str) -> None:
    assert "System 1" in ask(asked).text.partition(".")[0]


@pytest.mark.parametrize("asked", [
    "how long does the gear take with system 2 out", "time of a gear retraction, System 2 failed",
])  # fmt: skip
def test_a_failure_given_must_be_known_to_a_figure(ask: Ask, asked: str) -> None:
    assert "20 s" not in ask(asked).text


@pytest.mark.parametrize("asked", [
    "Feet on the floor: above what bar pressure is it residual braking?",
    "from which bar pressure is it residual braking",
])  # fmt: skip
def test_a_bound_that_is_asked_for_is_told_in_its_own_unit(ask: Ask, asked: str) -> None:
    answer = ask(asked)

    assert answer.entry == "residual-braking-pressure"
    assert (answer.values[0].value, answer.values[0].unit) == (100, "psi")


@pytest.mark.parametrize(("asked", "says"), [
    ("tyre worn in the middle but not at the edges, its pressure?", "over-inflation"),
    ("tread gone at the edges but not at the centre, what does it mean", "under-inflation"),
])  # fmt: skip
def test_where_something_is_not_is_not_asked_about(ask: Ask, asked: str, says: str) -> None:
    assert ask(asked).text.strip(".").endswith(says)
