"""Which amount of a question is what: of the air, of one of several things, the target, or beneath a face."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    ("question", "minutes"),
    [
        ("no fans, ten outside, how long for a brake to go from 320 to 150", 35.8),
        ("brake from 400 to 180 before take-off, outside 10, fans on, how long", 10.0),
        ("hottest brake 360, must be at 150 before departure, 20 °C outside, no fans. How long?", 43.3),
        ("Brake at 390 °C, OAT 12 °C, fans running. When is it down to 130 °C so we can take off?", 14.0),
        ("fans on its twenty five outside how long till a brake comes from 410 down to 90", 21.3),
        ("brake four is at 420, under 200 for take off, fans off, outside 20, how many minutes", 35.9),
        ("how long does it take with the fans for a brake to go from 400 to the take-off limit at 20 outside", 6.0),
    ],
)
def test_a_target_that_is_given_goes_before_the_limit_named(ask: Ask, question: str, minutes: float) -> None:
    answer = ask(question)

    assert [value.value for value in answer.values] == [pytest.approx(minutes, abs=0.06)]


@pytest.mark.parametrize(
    ("question", "psi"),
    [
        ("It's -20 °C on the ramp. What should the pre-charge gauge show if it was right at 20 °C?", 1034.3),
        ("it's minus fifteen on the apron, what should the precharge gauge read, set right at twenty", 1055.0),
        ("Overnight it went down to -5 °C. What nitrogen pre-charge would I expect on the gauge?", 1096.4),
        ("nitrogen set correct at twenty, it is minus thirty outside, gauge?", 992.8),
    ],
)
def test_the_temperature_now_is_not_the_one_it_was_set_at(ask: Ask, question: str, psi: float) -> None:
    assert ask(question).values[0].value == pytest.approx(psi, abs=0.1)


@pytest.mark.parametrize(
    ("question", "begins"),
    [
        ("It is 10 °C on the ramp and the hottest brake reads 340. Chocks?", "Outside SOP B.5"),
        ("with 15 degrees outside and brakes at 245 may I take off", "Within LIM 3.2: 245 °C"),
        ("brake four is at 420 can i set the parking brake", "Outside LIM 3.2: 420 °C"),
        ("wear pin 2 mm below the housing, ok?", "Outside AOM 32.05.2"),
        ("wear pin is 1 mm under flush", "Outside AOM 32.05.2"),
        ("wear pin sits 1 mm lower than the housing", "Outside AOM 32.05.2"),
        ("wear pin stands 2 mm proud ok?", "Within AOM 32.05.2"),
        ("wear pin showing 3 mm in total", "Within AOM 32.05.2"),
    ],
)
def test_the_reading_of_the_thing_is_judged(ask: Ask, question: str, begins: str) -> None:
    assert ask(question).text.startswith(begins)
