"""The measure of a thing that a question is after is told, and no other one in its place."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    "question",
    [
        "tiller breakout force",
        "nose tyre life",
        "what is the range of the accumulator",
        "brake probe range",
        "brake fan speed",
        "length of the red band",
        "shock strut stiffness",
        "what is the temperature of the uplock",
        "parking brake lever length",
        "gear door thickness",
        "brake disc count",
        "wear pin load",
        "what is the fastest the tug may tow us",
        "the fastest they can pull the aeroplane on the tow bar",
        "how hot may the brake fans get",
        "how many days may we fly with one brake deactivated",
        "for how many flights may the gear stay down",
        "how many sectors can be flown with the nose steering off",
    ],
)
def test_a_measure_that_is_not_had_is_not_answered_with_another(ask: Ask, question: str) -> None:
    assert ask(question).outcome != ANSWER


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("nose tyre pressure", "140 psi"),
        ("temperature of the fuse plugs", "185 °C"),
        ("brake fan time constant", "12 min"),
        ("tow angle", "85°"),
        ("streamer colour", "Red"),
        ("brake material", "carbon"),
        ("mass of a brake's heat sink", "48 kg"),
    ],
)
def test_a_measure_that_is_had_is_told(ask: Ask, question: str, told: str) -> None:
    answer = ask(question)
    assert answer.outcome == ANSWER
    assert told in answer.text


@pytest.mark.parametrize(
    "question",
    [
        "how long after landing before we can go again with brakes at 405",
        "brakes are warm after the landing, how long before they are down to the takeoff temperature",
        "how long until I may brake with no braking on landing",
        "how long to get my brakes back after touchdown",
        "how long does a brake disc last",
    ],
)
def test_how_long_is_not_answered_without_a_time(ask: Ask, question: str) -> None:
    answer = ask(question)
    timed = {"s", "min", "h"} & {value.unit for value in answer.values}
    assert answer.outcome != ANSWER or timed, answer.text


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("how long does the horn stay quiet once I press the button", "until the next approach"),
        ("how long is the wheelbase", "13.2 m"),
        ("how long do I hold the free-fall lever", "5 s"),
    ],
)
def test_how_long_is_answered_by_a_time_a_length_or_an_end(ask: Ask, question: str, told: str) -> None:
    answer = ask(question)
    assert answer.outcome == ANSWER
    assert told in answer.text


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("At what brake temperature does BRAKE HEAT show?", "350 °C"),
        ("which brake pressure goes with no anti-skid", "800 psi"),
        ("what brake temperature is the limit for take-off", "250 °C"),
    ],
)
def test_what_thing_names_the_thing_whose_measure_is_asked_for(ask: Ask, question: str, told: str) -> None:
    assert ask(question).text.startswith(told)


@pytest.mark.parametrize(("question", "entry"), [
    ("which autobrake setting uses the highest pressure", "rto-gives"),
    ("Which setting of the autobrake gives the most pressure?", "rto-gives"),
    ("which tyres have the highest pressure", "tyre-pressures-list"),
    ("how far over can the handwheel go", "tiller-maximum"),
    ("how far out do the inner mains run at 50 degrees of steering", "inner-turn-radius"),
    ("how far out does the nose wheel swing at 40 degrees", "nose-turn-radius"),
    ("R outer with 35 degrees of steering", "outer-turn-radius"),
    ("13 kt all right round a 70 degree bend on the taxiway", "taxi-sharp-turn"),
    ("greatest depth of slush without cycling the gear", "slush-depth"),
    ("how much does a quarter of the parking brake lever send", "parking-brake-quarter-pressure"),
])  # fmt: skip
def test_a_size_of_a_thing_is_no_name_of_the_size(ask: Ask, question: str, entry: str) -> None:
    assert ask(question).entry == entry
