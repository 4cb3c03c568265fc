"""After a figure of a schedule, a turn on another amount asks what the schedule gives there."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    "turns",
    [
        ("at what speed does the pedal steering fade out completely", "and whats left at eighty", "3.0°"),
        ("up to what speed do i have full tiller", "and what have i got at thirty", "47.4°"),
        ("above what speed is there no tiller", "then how much at sixty", "13.3°"),
        ("full pedal deflection?", "what about at 70 knots", "4.0°"),
        ("pedal limit at 75 kt", "and if i slow to sixty", "5.0°"),
        ("when is the tiller limit down to 20 degrees", "and the pedals at 3?", "At 80 kt"),
        ("at what speed do tillers give 30 degrees", "and pedals at 50?", "6.0°"),
        ("max tiller angle", "120L?", "at 30 knots in it", "back to the 120, same speed", "47.4°"),
    ],
    ids=lambda turns: turns[-2],
)
def test_what_there_is_at_an_amount(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, begins = turns
    assert talk(*said)[-1].text.startswith(begins)


def test_a_limit_told_since_is_what_a_reading_is_held_against(talk: Talk) -> None:
    said = ("pedal limit at 50", "what's the maximum taxi speed", "we're doing 30")
    assert talk(*said)[-1].entry == "taxi-straight"


@pytest.mark.parametrize(
    "turns",
    [
        ("How much can the pedals steer at the speed they are doing?", "They are at 30 kt.", "And at 50?", "6.0°"),
        ("How far does the aeroplane run on before the autobrake bites?", "FIRM, touching down at 130 kt", "130 m"),
        ("what's the landing distance without antiskid?", "the book says 1,400", "2,240 m"),
        ("no antiskid, normal distance is 1500 metres, what do we plan", "forget that, book is 1,300", "2,080 m"),
        ("tiller limit at 40", "disregard, i meant 30", "47.4°"),
    ],
    ids=lambda turns: turns[1],
)
def test_what_was_asked_back_is_given(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, begins = turns
    assert talk(*said)[-1].text.startswith(begins)


@pytest.mark.parametrize(
    ("turns", "says"),
    [
        (("no antiskid, normal distance is 1500 metres, what do we plan", "we always used 1.5"), "now 1.6"),
        (("pedal limit at 50", "i thought it was gone at 100"), "formerly 100 kt"),
        (("wheelbase is 14 metres, isn't it",), "No, it is 13.2 m"),
    ],
    ids=lambda case: str(case)[-24:],
)
def test_a_figure_believed(talk: Talk, turns: tuple[str, ...], says: str) -> None:
    assert says in talk(*turns)[-1].text


@pytest.mark.parametrize("turns, value", [
    (["tiller limit at 20 kt", "and feet"], 8.0),
    (["tiller gives its full limit up to what speed", "50?"], 20.0),
    (["pedals give full steering up to what speed", "70 kt"], 4.0),
    (["pedal limit at 50 kt", "the max on it"], 8.0),
])  # fmt: skip
def test_what_one_steers_by_a_bare_speed_and_the_most_are_of_the_schedule(
    talk: Talk, turns: list[str], value: float
) -> None:
    assert talk(*turns)[-1].values[0].value == pytest.approx(value)


@pytest.mark.parametrize(("turn", "speed"), [
    ("at what speed do I get 5", 60), ("when do we have just 2", 90), ("and at what speed would I see 4", 70),
])  # fmt: skip
def test_what_one_gets_is_what_the_schedule_gives(talk: Talk, turn: str, speed: float) -> None:
    answer = talk("pedal limit at 80 knots", turn)[-1]

    assert answer.values[0].value == pytest.approx(speed, abs=0.1)


@pytest.mark.parametrize(("first", "turn", "value"), [
    ("can I extend the gear at 225 kt", "and the fastest I may fly once it is down", 255),
    ("GEAR MISMATCH on extension, what do I do", "how long do I wait before lever down", 15),
    ("steer lost, what should I do", "below which speed", 30),
])  # fmt: skip
def test_what_belongs_to_what_was_told_is_meant(talk: Talk, first: str, turn: str, value: float) -> None:
    assert talk(first, turn)[-1].values[0].value == value
