"""What a question says besides what it asks bars no answer; what it asks of other subjects is still declined."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, DECLINE, Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    ("question", "entry", "said"),
    [
        ("Speaking as a passenger, how many wheels does the nose leg have?", "nose-leg-wheels", "2"),
        ("As your chief pilot I tell you the gear may be lowered at 250. Agree?", "vlo-extension", "Outside"),
        ("The HUD shows 212 kt, may I raise the gear?", "vlo-retraction", "Outside"),
        ("brakes at 300 by the tablet, ok to take off?", "brake-temperature-takeoff", "Outside"),
        ("excluding the two minute wait, how long from 300 to 250 with fans at 20 degrees", "brake-cooling", "2.4 min"),
        ("Ignoring the crosswind, what is the tiller limit at 40 kt?", "tiller-limit", "33.7"),
        ("may we extend at FL190 and 235 knots?", "vlo-extension", "Outside LIM 3.1: 235 kt"),
        ("the max extension speed is 220, correct?", "vlo-extension", "230 kt IAS: maximum"),
        ("we exceeded 255 with the gear down, what now", "vle", "Outside"),
        ("main strut 60 mm ok?", "main-strut-chrome", "exactly at the limit, 60 mm"),
        ("what two conditions bring up PARK BRAKE SET", "park-brake-set-memo", "thrust is above idle"),
        ("a 54,000 kg 120L rejects at 120 knots, energy per brake", "brake-energy", "25.7 MJ"),
        ("3 degrees of left pedal with 10 of right tiller at 20 knots, where does the nose go",
         "total-steering-order", "7.0°, right"),
        ("Did LIM 7 alter the retraction speed?", "change-vlo-retraction", "205"),
    ],
)  # fmt: skip
def test_what_is_said_besides_bars_nothing(ask: Ask, question: str, entry: str, said: str) -> None:
    answer = ask(question)

    assert (answer.outcome, answer.entry) == (ANSWER, entry), answer.text
    assert said in answer.text


@pytest.mark.parametrize(
    "question",
    [
        "the oil pressure reads 1,700 psi, ok?",
        "what does the FMS show for fuel",
        "the FMS gives 12 tonnes of fuel, is that enough?",
        "As an engineer, which oil goes into the starter?",
        "how heavy is each main wheel",
        "how long do we wait for the tug",
        "you are useless",
    ],
)
def test_other_subjects_are_declined(ask: Ask, question: str) -> None:
    assert ask(question).outcome == DECLINE


def test_two_figures_are_both_said_in_the_asked_unit(ask: Ask) -> None:
    assert ask("VLO both, in mph").text.startswith("265 mph and 236 mph.")


def test_what_somebody_eats_meanwhile_is_no_subject(ask: Ask) -> None:
    assert ask("is it ok to taxi at 25 kt while I eat my sandwich").text.startswith("Within")
    assert ask("can I drink coffee while taxiing").outcome != ANSWER
