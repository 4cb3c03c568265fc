"""An amount that is said to be the figure itself is answered with the figure, yes or no first; a reading is judged."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import CLARIFY, Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    ("question", "opening"),
    [
        ("is the retraction speed still 200", "No, it is 205 kt"),
        ("is the retraction speed 205?", "Yes, it is 205 kt"),
        ("is 280 still the brake limit for takeoff", "No, it is 250 °C"),
        ("is vle 260", "No, it is 255 kt"),
        ("is the landing distance factor without anti skid still one point five", "No, it is 1.6"),
        ("I was taught 280 for the brakes before take-off. Is that still right?", "No, it is 250 °C"),
        ("is the tyre speed limit 195 knots", "Yes, it is 195 kt"),
        ("was the retraction speed 200", "205 kt"),
        ("I always thought the time for a normal extension was 12 seconds", "No, it is 9 s"),
        ("The time after landing at which tyre pressures are set is 5 hours, isn't it?", "No, it is 3 h"),
        ("A colleague says the pressure below which the accumulator counts as empty is 1,500 psi. Is he right?", "No"),
        ("I think the maximum landing mass is 51,000 kg. Right?", "No, it is 50,000 kg"),
        ("is it true that the maximum tyre ground speed is 156 knots", "No, it is 195 kt"),
        ("am I right in thinking the maximum landing mass is 50,000 kg", "Yes, it is 50,000 kg"),
        ("True or false: the wheelbase is 14 m.", "No, it is 13.2 m"),
        ("so the retraction time is 12 seconds then?", "No, it is 11 s"),
        ("My mate swears the maximum altitude for extending the gear is 24,000 ft. Is he right?", "No, it is 20,000"),
        ("I seem to remember the main track being 7 m", "No, it is 6.2 m"),
        ("could it be that the maximum landing mass is 48,000 kg?", "No, it is 50,000 kg"),
        ("According to my notes the wheelbase is 13.4 m. Is that right?", "No, it is 13.2 m"),
        ("isn't the time constant of brake cooling with fans 13 minutes?", "No, it is 12 min"),
    ],
)
def test_a_figure_that_is_claimed_is_told(ask: Ask, question: str, opening: str) -> None:
    assert ask(question).text.startswith(opening)


@pytest.mark.parametrize(
    ("question", "opening"),
    [
        ("retract at 200 ok?", "Within LIM 3.1"),
        ("is the speed 240 too fast to extend", "Outside LIM 3.1"),
        ("is the brake temperature 240 a problem", "Within LIM 3.2"),
        ("is a brake at 240 too hot for take-off", "Within LIM 3.2"),
        ("is the main tyre at 190 ok", "Within"),
        ("is it true that I may extend at 240 kt", "Outside LIM 3.1"),
        ("am I right in thinking that 50,500 kg is too heavy to land", "Outside LIM 3.1"),
    ],
)
def test_a_reading_is_judged(ask: Ask, question: str, opening: str) -> None:
    assert ask(question).text.startswith(opening)


def test_a_temperature_is_no_difference(ask: Ask) -> None:
    assert "difference between" not in ask("are the brakes at 260 still too hot").text.split("Also")[0]


@pytest.mark.parametrize(
    ("question", "needed"),
    [
        ("am i slow enough to drop the gear", "the speed"),
        ("is my hottest brake cool enough to go?", "the temperature"),
        ("are we too high to put the gear down", "the altitude"),
        ("is the accumulator full enough to tow", "the pressure"),
    ],
)
def test_what_is_so_here_is_asked_back(ask: Ask, question: str, needed: str) -> None:
    answer = ask(question)
    assert answer.outcome == CLARIFY
    assert answer.text.startswith(f"Give {needed}, to be held against the limit")


@pytest.mark.parametrize(
    ("question", "record"),
    [
        ("110 kt is the ground speed at and above which the pedals give no steering, right?", "pedal-zero-speed"),
        ("the time constant of brake cooling with fans is 12 minutes, correct?", "cooling-time-constant-fans"),
    ],
)
def test_the_figure_believed_rightly_is_of_the_thing_named(ask: Ask, question: str, record: str) -> None:
    assert ask(question).entry == record


def test_what_is_the_time_asks_for_no_clock_where_it_goes_on(ask: Ask) -> None:
    text = "My examiner asked me this on Monday: what is the time after the stop at which the plug temperature peaks?"
    assert ask(text).entry == "fuse-plug-peak-time"


@pytest.mark.parametrize(
    ("question", "record"),
    [
        ("stopping distance full 148 knots", "stopping-distance"),
        ("how much runway goes by before firm begins at 120 kt", "delay-distance"),
        ("we slipped past VLE by eight knots, what's needed", "limit-exceeded-procedure"),
        ("gear is still down and we're doing 262. legal?", "vle"),
    ],
)
def test_a_word_of_the_day_is_no_label_and_a_label_no_word_of_the_day(ask: Ask, question: str, record: str) -> None:
    assert ask(question).entry == record


def test_a_steady_deceleration_is_no_setting(ask: Ask) -> None:
    answer = ask("stopping distance from 120 kt at a steady 2.5 m/s2")
    assert answer.values[0].value == pytest.approx(762.2, abs=0.1)
