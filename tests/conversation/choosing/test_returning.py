"""A topic that was left and is come back to, and steps told one by one."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]


def test_a_topic_is_come_back_to_with_its_amounts(talk: Talk) -> None:
    answers = talk("pedal limit at 60 kt", "main tyre pressure", "back to the pedals, at 100 kt")

    assert (answers[2].entry, answers[2].values[0].value) == ("pedal-limit", pytest.approx(1.0))


def test_a_topic_without_more_is_told_again(talk: Talk) -> None:
    answers = talk("pedal limit at 60 kt", "main tyre pressure", "VLE?", "ok, back to the tyre")

    assert answers[3].text == answers[1].text


def test_a_topic_that_was_not_spoken_of_begins_anew(talk: Talk) -> None:
    answers = talk("pedal limit at 60 kt", "back to the main tyre pressure")

    assert answers[1].entry == "main-tyre-pressure"


@pytest.mark.parametrize(
    ("turn", "step"),
    [("what next", 1), ("step 3", 3), ("the last one", 7), ("what is the second step", 2)],
)
def test_a_step_is_told_by_its_place(talk: Talk, turn: str, step: int) -> None:
    answers = talk("free-fall extension procedure", turn)

    assert f"Step {step} of 7" in answers[1].text


def test_the_steps_go_on_to_their_end(talk: Talk) -> None:
    answers = talk("free-fall extension procedure", "step 6", "and then?", "next", "previous step")

    assert [f"Step {n} of 7" in answers[i].text for n, i in ((6, 1), (7, 2), (7, 4))] == [True] * 3
    assert answers[3].text.startswith("That was the last step")


def test_a_case_of_a_procedure_is_its_step(talk: Talk) -> None:
    answers = talk("gear mismatch on extension, what do I do", "still amber", "how fast for that")

    assert all("190 kt" in a.text.partition(". ")[0] for a in answers[1:])


def test_none_of_a_thing_takes_the_place_of_its_use(talk: Talk) -> None:
    answers = talk("brake energy 46 tonnes 120 kt full reverse", "and none?")

    assert "without reverse" in answers[1].text


def test_the_states_given_last_count(talk: Talk) -> None:
    answers = talk("both systems lost, accumulator charged, braking mode", "and if the accumulator is empty too")

    assert "No wheel brakes" in answers[1].text


def test_a_further_failure_needs_no_word_for_it(talk: Talk) -> None:
    answers = talk("do I have autobrake with system 2 lost", "and system 1 too")

    assert "EMERGENCY" in answers[1].text


def test_another_calculation_takes_over_each_amount_in_its_part(talk: Talk) -> None:
    answers = talk("brakes 320, 15 outside, how long to 250 with fans", "how hot after 5 minutes")

    assert answers[1].entry == "brake-temperature-later"
    assert answers[1].values[0].value == pytest.approx(216.1, abs=0.5)


def test_a_verdict_gives_its_reading_to_the_cooling_time(talk: Talk) -> None:
    answers = talk("brakes 275, ok to go?", "how long with 15 outside and fans on")

    assert answers[1].entry == "brake-cooling"
    assert answers[1].outcome == "answer"


@pytest.mark.parametrize("turn", ["120L and 120 main tyre pressure", "main tyre pressure, 120 or 120L?"])
def test_a_variant_named_beside_another_is_no_reading(talk: Talk, turn: str) -> None:
    answer = talk(turn)[0]

    assert answer.entry == "main-tyre-pressure"
    assert "190 psi" in answer.text and "205 psi" in answer.text
