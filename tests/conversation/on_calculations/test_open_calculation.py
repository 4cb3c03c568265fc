"""What a turn gives to a calculation that is open, a state told by its word alone, and a cause after a procedure."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("turns", "value"),
    [
        (("brakes 275 ok to go?", "20 outside", "fans on"), 1.23),
        (("brakes 275 ok to go?", "fans on", "20"), 1.23),
        (("can I take off with brakes at 310", "how long do I wait", "oat 10"), 2.68),
        (("brakes at 300, how long to cool", "15 outside", "fans on", "take-off"), 2.31),
        (("brakes at 300, how long to cool", "15 outside", "fans on", "correction 320", "to 200"), 6.0),
        (("how long to cool the brakes from 400", "fans running", "to 250", "20 outside"), 6.03),
    ],
)
def test_what_is_open_takes_what_is_given(talk: Talk, turns: tuple[str, ...], value: float) -> None:
    told = talk(*turns)[-1]

    assert told.outcome == "answer"
    assert any(abs(each.value - value) < 0.05 * value for each in told.values), told.text


def test_a_question_with_an_answer_of_its_own_is_no_cooling_time(talk: Talk) -> None:
    assert talk("brakes 275 ok to go?", "how long must the fans be off")[-1].text.startswith("2 min")


@pytest.mark.parametrize(
    ("told", "word", "begins"),
    [
        ("steer switch off, can I steer", "and on?", "The tillers and the pedals steer."),
        ("anti-skid off", "on", "Anti-skid works."),
        ("bypass pin in", "out", "The tillers and the pedals steer."),
        ("pedal button pressed, can I steer with pedals", "released", "The tillers and the pedals steer."),
        ("steering controller failed", "healthy", "The tillers and the pedals steer."),
    ],
)
def test_a_word_for_a_state_alone_is_of_the_thing_told_of(talk: Talk, told: str, word: str, begins: str) -> None:
    assert talk(told, word)[-1].text.startswith(begins)


def test_a_state_that_the_table_told_last_does_not_know_is_told_by_another(talk: Talk) -> None:
    told = talk("system 2 lost", "steering", "accumulator empty")[-1]

    assert "everything normal" not in told.text
    assert "the accumulator empty" in told.text


def test_another_reading_asks_the_same_of_what_was_told(talk: Talk) -> None:
    told = talk("system 1 lost", "parking brake", "accumulator 1500", "and 1000")[-1]

    assert told.text.startswith("The parking brake does not hold")


def test_a_cause_after_a_procedure_is_worked_out_by_itself(talk: Talk) -> None:
    told = talk("no braking on landing", "system 2 lost")[-1]

    assert told.text.startswith("ALTERNATE braking. Anti-skid works.")


def test_what_now_after_a_side_question_stays_with_the_procedure(talk: Talk) -> None:
    told = talk("free fall extension", "done, only two green", "which leg", "what now")[-1]

    assert told.entry == "not-three-green-procedure"


def test_a_reading_is_judged_by_what_was_spoken_of_before_a_side_question(talk: Talk) -> None:
    told = talk("pushback", "do I need the pin", "what if it is not in", "accumulator 1500")[-1]

    assert told.text.startswith("Outside AOM 32.55.3")


@pytest.mark.parametrize("turn", ["that's wrong", "no it isn't", "I don't think so", "wrong"])
def test_a_doubt_is_told_where_it_stands_and_how_to_dispute_it(talk: Talk, turn: str) -> None:
    told = talk("pedal limit at 70 kt", turn)[-1]

    assert told.text.startswith("4.0°")
    assert 'say "dispute"' in told.text


def test_the_steps_of_a_procedure_are_counted(talk: Talk) -> None:
    assert talk("free fall extension", "how many steps")[-1].text.startswith("7 steps")


@pytest.mark.parametrize("said", ["both lost, anti-skid off", "both gone, anti-skid off, braking mode"])
def test_both_are_the_two_that_are_numbered(talk: Talk, said: str) -> None:
    assert "EMERGENCY braking" in talk(said)[0].text


@pytest.mark.parametrize("asked", ["what is vle on other aeroplanes", "gear limits on another aircraft"])
def test_another_type_is_asked_of_in_vain(talk: Talk, asked: str) -> None:
    assert talk(asked)[0].outcome == "decline"
