"""Orders of several controls, readings compared, and calculations turned round."""

from __future__ import annotations

from collections.abc import Callable
from math import exp, log

import pytest

from assistant.answering.answer import ANSWER, CLARIFY, Answer

Ask = Callable[[str], Answer]


def value(answer: Answer) -> float:
    assert answer.outcome == ANSWER, answer.text
    return answer.values[0].value


@pytest.mark.parametrize(
    ("question", "degrees", "side"),
    [
        ("One tiller 40° right, the other 25° left, pedals centred, at 10 kt", 15, "right"),
        ("my tiller is 40 left and his is 25 right at 10 knots, feet off. what angle", 15, "left"),
        ("full right tiller and full right pedal at fifty knots what total angle do i get", 26, "right"),
        ("tiller and pedal both full right at 30 kt, total order", 68 - 48 * 15 / 35 + 8, "right"),
        ("captain goes 20 left and fo 20 right, result?", 0, "straight"),
        ("tiller 40 right at 20 knots pedals neutral, what do the nosewheels get", 40, "right"),
    ],
)
def test_orders_are_summed_with_their_signs(ask: Ask, question: str, degrees: float, side: str) -> None:
    answer = ask(question)

    assert value(answer) == pytest.approx(degrees, abs=1e-6)
    assert side in answer.text


@pytest.mark.parametrize(
    "question", ["one brake is 210 and another is 80 can we depart", "brakes 80, 110, 95 and 240 °C, spread?"]
)
def test_readings_too_far_apart_are_outside(ask: Ask, question: str) -> None:
    assert ask(question).text.startswith("Outside SOP B.6")


def test_a_verdict_without_its_number_is_asked_back(ask: Ask) -> None:
    assert ask("am I slow enough to retract the gear now").outcome == CLARIFY


def test_by_how_much_is_no_reading(ask: Ask) -> None:
    answer = ask("I busted the gear-down speed by ten knots. What has to be done about it?")

    assert answer.entry == "limit-exceeded-procedure"


def test_a_figure_is_said_in_the_unit_asked_for(ask: Ask) -> None:
    assert value(ask("what is the tyre speed limit in miles per hour")) == pytest.approx(195 * 1.852 / 1.609344)


def test_the_normal_distance_is_found_from_the_factored_one(ask: Ask) -> None:
    answer = ask("what normal landing distance becomes two thousand metres when the anti skid is out")

    assert value(answer) == pytest.approx(2000 / 1.6)


def test_the_temperature_that_a_pre_charge_is_right_for(ask: Ask) -> None:
    answer = ask("accumulator precharge gauge reads 1150 with no hydraulics, what temperature does that match")

    assert value(answer) == pytest.approx((1150 + 14.7) / (1200 + 14.7) * 293.15 - 273.15, abs=0.05)


def test_the_hottest_start_that_cools_in_time(ask: Ask) -> None:
    answer = ask("Fans off, 15 °C outside, to be at 250 in half an hour. What's the hottest brake I can start with?")

    assert value(answer) == pytest.approx(15 + 235 * exp(30 / 45))


def test_numbers_without_words_take_their_usual_order(ask: Ask) -> None:
    assert value(ask("cool from 400 to 250 with fans at 20")) == pytest.approx(12 * log(380 / 230))


def test_a_brake_that_does_not_work_takes_no_share(ask: Ask) -> None:
    three, four = (ask(f"RTO at 50 t from 120 kt, energy in each brake{more}") for more in (", one brake out", ""))

    assert value(three) == pytest.approx(value(four) * 4 / 3)


@pytest.mark.parametrize(
    ("question", "degrees"),
    [("tiller gives 40 degrees at 50 knots, right?", 20), ("pedal steering at 90 knots is 4 degrees", 2)],
)
def test_a_point_of_a_schedule_that_is_believed_is_told_as_it_is(ask: Ask, question: str, degrees: float) -> None:
    assert value(ask(question)) == pytest.approx(degrees)


@pytest.mark.parametrize(
    ("question", "told", "entry"),
    [
        ("the gear speed is 300, right?", "255 kt", "gear-speeds-list"),
        ("a system counts as lost below 2000 psi, right?", "1,500 psi", "system-lost-pressure"),
        ("surely the brake temp limit for takeoff is 300", "Outside", "brake-temperature-takeoff"),
        ("autobrake works in alternate, correct?", "not", "alternate-autobrake"),
    ],
)
def test_a_false_premise_is_corrected(ask: Ask, question: str, told: str, entry: str) -> None:
    answer = ask(question)

    assert (answer.outcome, answer.entry) == (ANSWER, entry)
    assert told in answer.text


@pytest.mark.parametrize(
    ("question", "said"),
    [
        ("main tyre 185 psi and nose tyre 130 psi, ok?", ("185 psi", "2.6%", "130 psi", "7.1%")),
        ("nose tyre 139 and main tyres 150?", ("139 psi", "150 psi", "21.1%")),
        ("main strut 80 mm and nose strut 85 mm ok?", ("80 mm", "85 mm")),
    ],
)
def test_a_reading_is_held_against_the_limit_of_its_own_thing(ask: Ask, question: str, said: tuple[str, ...]) -> None:
    text = ask(question).text

    assert all(part in text for part in said), text


@pytest.mark.parametrize(
    "question", ["brakes 240, fans off 1 minute, go?", "brakes 240 and fans off for 3 minutes, can I go?"]
)
def test_a_temperature_beside_a_time_is_held_too(ask: Ask, question: str) -> None:
    text = ask(question).text

    assert "240 °C is 10 °C below" in text
    assert "2 min" in text


@pytest.mark.parametrize(
    "question", ["brakes 240 and 100, difference acceptable?", "brakes 240 and 100, is the difference ok"]
)
def test_a_difference_asked_about_is_judged(ask: Ask, question: str) -> None:
    assert ask(question).text.startswith("Outside SOP B.6")


def test_minutes_of_a_turn_are_spent_at_the_stand(ask: Ask) -> None:
    assert "45 min" in ask("35 minute turn").text


def test_a_distance_asked_for_is_no_verdict_on_a_speed(ask: Ask) -> None:
    assert ask("RTO stopping distance from 120 kt").outcome == CLARIFY


@pytest.mark.parametrize(
    ("question", "said"),
    [
        ("flight level two two zero at 200 knots can I drop the gear to get down quicker", "Outside LIM 3.1: 22,000"),
        ("FL250, 180 kt: free fall the gear?", "Outside LIM 3.1: 25,000 ft"),
        ("18,000 ft 240 kt gear out to slow down sooner, allowed?", "Outside LIM 3.1: 240 kt"),
    ],
)  # fmt: skip
def test_what_must_hold_besides_is_held_against_what_is_given(ask: Ask, question: str, said: str) -> None:
    assert ask(question).text.startswith(said)


def test_a_tyre_that_goes_is_no_tyre_speed(ask: Ask) -> None:
    assert "reject" in ask("at 70 knots on the take-off roll I think a tyre is coming apart").text


@pytest.mark.parametrize(
    ("question", "said"),
    [
        ("I was taught 1,800 psi for the parking brake, now it shows 1,850, chocks?", "Outside LIM 3.2: 1,850 psi"),
        ("main tyre 215 psi cold", "Outside AOM 32.05.7: main tyre pressure, cold, 215 psi: more than 5% above"),
        ("park brake accu minimum?", "2,000 psi"),
        ("accumulator gauge 1,350 psi, does it count as charged", "Outside AOM 32.00.5"),
    ],
)
def test_a_number_is_read_as_it_is_meant(ask: Ask, question: str, said: str) -> None:
    assert ask(question).text.startswith(said)


def test_a_statement_that_explains_all_but_a_number_is_told(ask: Ask) -> None:
    question = "Throttles back at 650 ft, flaps not at landing, horn going. May I shut it up with the HORN button?"

    assert ask(question).entry == "gear-horn-silence"


@pytest.mark.parametrize(
    ("question", "said"),
    [
        ("fans off 1 min ago, brakes 244, take off ok?", "Outside AOM 32.47.5: 1 min"),
        ("The handbook says 3,000 psi in ALTERNATE. Ours too?", "2,600 psi"),
    ],
)
def test_what_holds_here_is_told(ask: Ask, question: str, said: str) -> None:
    assert ask(question).text.startswith(said)


@pytest.mark.parametrize(
    ("question", "said"),
    [
        ("we're on the long body and the hottest brake shows 226, may we go", "Within AOM 32.01.6: 226 °C"),
        ("the coldest is 90 and the hottest 230, ok to leave?", "Outside SOP B.6"),
        ("does full left tiller with full left pedal make 75 degrees at 8 kt on the L", "72.0°, left"),
    ],
)
def test_what_a_number_is_said_of_decides(ask: Ask, question: str, said: str) -> None:
    assert ask(question).text.startswith(said)


@pytest.mark.parametrize(
    ("question", "said"),
    [
        ("Good climb, 204 on the tape. Still all right to bring the legs up?", "Within LIM 3.1: 204 kt"),
        ("were at two one two with the gear hanging out, can i raise it now", "Outside LIM 3.1: 212 kt"),
        ("passing 209 with the gear still in transit up, problem?", "Outside LIM 3.1: 209 kt"),
        ("233 on the tape and the other pilot wants the gear out", "Outside LIM 3.1: 233 kt"),
        ("at 224 I call for the wheels", "Within LIM 3.1: 224 kt"),
    ],
)
def test_a_bare_number_beside_a_movement_of_the_gear_is_a_speed(ask: Ask, question: str, said: str) -> None:
    assert ask(question).text.startswith(said)


def test_a_speed_on_the_runway_is_no_speed_of_retraction(ask: Ask) -> None:
    text = ask("a tyre burst at one thirty five on the roll and we carried on, do I raise the gear").text

    assert "leave the gear down" in text
    assert not text.startswith("Within")
