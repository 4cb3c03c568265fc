"""Parts of a question that leave their subject out: each is held against what speaks of it, or against nothing."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.marking.mark import MISSED, PARTLY, RIGHT, WRONG, Marker
from assistant.practice.marking.questions.parts import parts_of
from assistant.practice.marking.requiring.requests import asked
from assistant.practice.marking.requiring.required import required

PLUG = "When a fuse plug melts, what happens to the tyre, and what is that to prevent?"
DOOR = "What colour is GEAR DOOR, and what exactly brings it up?"
WAS = "Which temperature is the most to begin take-off with now, and what did it replace?"
QUARTER = "How much does each quarter of the parking brake lever add, and how much is it in all?"
BUTTON = "What does the PEDAL button do when held, and what is it good for?"
SUPPLY = "Which hydraulic system drives the steering, which the normal brakes, and which fills the accumulator?"
LANDING = "A landing at 44,000 kg and 120 kt ground speed without reverse, four brakes. How many megajoules do the "
LANDING += "brakes take in all, and how many does each take?"
COOLING = "A brake is at 360 °C, 10 °C outside. How long until 250 °C with fans, and how long without?"
STOP = "Touchdown at 125 kt on FIRM: how far until it stops, and how much of that is the delay?"
LEVER = "You fly 245 kt at 7,000 ft and the call is for gear down. May the lever go to DN? Yes or no, with the limit."
TYRE = "Cold, a main tyre reads 184 psi. Must it be re-inflated? Yes or no, and from what shortfall on?"
EXCEEDED = "Ground speed at lift-off: 199 kt. Was the tyre limit exceeded? Yes or no, and what three things follow?"
MEMO = "In which mode does RESERVE BRAKE show, and what does it tell?"
SPRINGS = "What drives the nose leg forward in a free fall, and what locks each leg once it is down?"
BARS = "How does the display draw a leg that is locked down, one in transit, and one that is locked up?"
HOT = "What colour is BRAKE HEAT, and from where may you approach the wheels?"
PIN = "What does TOW PIN tell you, and who puts the pin in?"


@pytest.mark.parametrize(
    ("question", "records"),
    [
        (PLUG, ["fuse-plug-melts", "fuse-plug-why"]),
        (DOOR, ["gear-door-colour", "gear-door"]),
        (QUARTER, ["parking-brake-quarter-pressure", "parking-brake-full-pressure"]),
        (LANDING, ["brake-energy-total", "brake-energy"]),
        (STOP, ["stopping-distance", "delay-distance"]),
        ("How many ground-lock pins are there, and what are they marked with?", ["ground-lock-pin-count",
                                                                              "ground-lock-pins-streamer"]),
    ],
)  # fmt: skip
def test_each_part_is_answered_on_the_subject_of_those_before(
    knowledge: Knowledge, question: str, records: list[str]
) -> None:
    assert [one.answer.entry for one in asked(question, knowledge)] == records


@pytest.mark.parametrize(
    "question",
    [
        "What pavement is needed for a 180° turn at 60° of steering, and which leg decides it?",
        "What is the wheelbase, and who measured it?",
    ],
)
def test_a_part_that_nothing_answers_leaves_the_question_open(knowledge: Knowledge, question: str) -> None:
    need = required(question, knowledge)

    assert len(parts_of(question)) > 1
    assert need is not None and need.unanswered


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (PLUG, "it slowly goes flat, so that it does not burst", RIGHT),
        (PLUG, "it deflates slowly", PARTLY),
        (DOOR, "amber, a door still open ten seconds after the legs locked", RIGHT),
        (DOOR, "amber", PARTLY),
        (DOOR, "red, a door still open ten seconds after the legs locked", WRONG),
        (WAS, "250 °C, and it used to be 280", RIGHT),
        (WAS, "two fifty now and two eighty before", RIGHT),
        (WAS, "250 °C", PARTLY),
        (WAS, "280 now, 250 before", WRONG),
        (QUARTER, "six hundred a quarter, two thousand four hundred in all", RIGHT),
        (QUARTER, "600 psi a quarter, 1,800 psi in all", WRONG),
        (BUTTON, "it takes the pedals out of the steering", PARTLY),
        (SUPPLY, "steering on no. 1, brakes on no. 2, the accumulator on no. 1", RIGHT),
        (SUPPLY, "steering on System 1, brakes on System 2, the accumulator on System 2", WRONG),
        (LANDING, "75.5 MJ in all, 18.9 each", RIGHT),
        (LANDING, "75.5 MJ in all", PARTLY),
        (LANDING, "18.9 MJ in all, 75.5 each", WRONG),
        (COOLING, "4.5 min with fans, 17 without", RIGHT),
        (COOLING, "17 min with fans, 4.5 without", WRONG),
        (STOP, "1,030 m, 129 of it the delay", RIGHT),
        (STOP, "1,030 m", PARTLY),
        (STOP, "1,030 m, and 64 m of that is the delay", WRONG),
        (LEVER, "no, not above 230 kt", RIGHT),
        (LEVER, "no", PARTLY),
        (LEVER, "yes, 255 kt is the limit", WRONG),
        (TYRE, "no, only below 95 % is it re-inflated", RIGHT),
        (TYRE, "no, from more than 5 % on", RIGHT),
        (TYRE, "no", PARTLY),
        (TYRE, "yes, it is 6 psi low", WRONG),
        (EXCEEDED, "yes", PARTLY),
        (EXCEEDED, "no, it is fine", WRONG),
        (MEMO, "in EMERGENCY, the number of applications left", RIGHT),
        (MEMO, "in ALTERNATE, the number of applications left", WRONG),
        (SPRINGS, "a gas spring pushes it forward, a spring locks every leg", RIGHT),
        (SPRINGS, "a gas spring", PARTLY),
        (BARS, "filled when it is down and locked hatched while it moves and an outline once it is locked up", RIGHT),
        (BARS, "hatched while moving and filled when locked down", PARTLY),
        (BARS, "hollow while moving and filled when locked down", WRONG),
        (PIN, "that the bypass pin is out, and the ground crew puts it in", PARTLY),
        (LEVER, "I'd leave that one to the performance people", MISSED),
    ],
)  # fmt: skip
def test_parts_without_a_subject_are_marked(marker: Marker, question: str, answer: str, mark: str) -> None:
    given = marker.mark(question, answer)

    assert given.mark == mark, given


def test_the_side_of_a_hot_wheel_is_no_way_to_approach_it(marker: Marker) -> None:
    assert marker.mark(HOT, "amber, from ahead or behind, clear of the sides").mark == RIGHT
    assert marker.mark(HOT, "amber, from the side only").mark != RIGHT
