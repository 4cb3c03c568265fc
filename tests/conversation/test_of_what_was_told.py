"""Turns after a figure or a statement: the other variant, how far apart, where, whom to tell, which of both."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, CLARIFY, Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize("words", ["and the other one", "on the other?", "and the short", "the normal one"])
def test_the_other_variant_is_named_by_what_sets_it_apart(talk: Talk, words: str) -> None:
    assert talk("heat sink mass of a brake on the long body", words)[-1].text.startswith("48 kg")


@pytest.mark.parametrize(
    ("turns", "start"),
    [
        (("max landing mass", "and on the 120L", "how much more is that"), "120: 50,000 kg"),
        (("vlo extension", "and free fall", "by how much is that slower"), "40 kt less"),
        (("retraction time", "extension time", "so which is quicker and by how much"), "2 s less"),
    ],
)
def test_two_figures_told_are_held_against_each_other(talk: Talk, turns: tuple[str, ...], start: str) -> None:
    assert talk(*turns)[-1].text.startswith(start)


@pytest.mark.parametrize(
    "turns",
    [
        ("rubbing strip whats that for", "where"),
        ("are the nose wheels braked", "rubbing strip, what for", "sorry, where"),
    ],
)
def test_where_asks_for_a_place_before_a_paragraph(talk: Talk, turns: tuple[str, ...]) -> None:
    assert "bay" in talk(*turns)[-1].text


def test_where_after_a_limit_asks_for_its_paragraph(talk: Talk) -> None:
    assert talk("vlo extension", "where")[-1].text.startswith("LIM 3.1")


@pytest.mark.parametrize(
    ("told", "words", "held"),
    [
        ("main strut chrome limits", "who do i call when it is too much", "maintenance"),
        ("max speed with the gear down", "who do i tell if i went over", "technical log"),
        ("spread allowed between the brakes", "so who do i ring", "maintenance"),
    ],
)
def test_whom_to_tell_is_what_follows_beyond_a_limit(talk: Talk, told: str, words: str, held: str) -> None:
    assert held in talk(told, words)[-1].text


@pytest.mark.parametrize(("words", "start"), [("system two", "ALTERNATE"), ("it is the first one", "NORMAL")])
def test_one_of_both_systems_alone_is_lost(talk: Talk, words: str, start: str) -> None:
    assert talk("one hyd lost, brakes?", words)[-1].text.startswith(start)


@pytest.mark.parametrize(
    "words", ["when did the 280 change", "how long has it been 250", "it was something else before"]
)
def test_a_changed_figure_may_be_named(talk: Talk, words: str) -> None:
    assert "LIM 7" in talk("max brake temp to start the takeoff", "and on the long body", words)[-1].text


def test_a_thing_and_its_state_are_asked_for_before_a_figure_of_that_quantity(talk: Talk) -> None:
    answer = talk("number of full brake applications from the accumulator", "and below what pressure is it empty")[-1]
    assert "1,400 psi" in answer.text


@pytest.mark.parametrize(
    "words",
    ["how fast may i taxi", "is that temperature okay?", "am i too heavy", "maximum temperature?", "is that too much"],
)
def test_a_first_question_that_leaves_its_thing_open_is_asked_back(talk: Talk, words: str) -> None:
    assert talk(words)[-1].outcome == CLARIFY


@pytest.mark.parametrize(
    "words", ["max taxi speed straight", "how fast may i taxi in a turn", "maximum altitude for the gear"]
)
def test_a_first_question_that_names_its_case_is_answered(talk: Talk, words: str) -> None:
    assert talk(words)[-1].outcome == ANSWER
