"""Names that nothing explains are names, whatever number or likeness to a word they have."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.understanding.mentions import OUTSIDE, Reading


def outside(reading: Reading) -> list[str]:
    return [m.text for m in reading.mentions if any(c.startswith(OUTSIDE) for c in m.concepts)]


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("parking brake hold time for the Northwind 200", "northwind 200"),
        ("what is the main tyre pressure on the aldermere 130", "aldermere 130"),
        ("What does the Aldermere 150's parking brake hold?", "aldermere 150"),
        ("what is the VLO of an X330", "x330"),
        ("is the tiller limit the same on the 333", "333"),
        ("what tiller angle does the aldermere one fifty allow", "aldermere one fifty"),
        ("does the old 110 have carbon brakes", "110"),
        ("main tyre pressure on a concrode", "concrode"),
    ],
)
def test_a_number_that_is_a_name_is_no_amount(knowledge: Knowledge, text: str, name: str) -> None:
    reading = knowledge.reader.read(text)

    assert name in [found.replace("x 330", "x330") for found in outside(reading)]
    assert not reading.amounts


@pytest.mark.parametrize(
    "text",
    [
        "main tyre pressure aldermere 120",
        "main tyre pressure Aldermere 120L",
        "on the Aldermere brakes at 250, ok for take-off",
        "Hottest 250, ok for take-off?",
        "Brakes Reading 251 for takeoff",
        "the limit of 250 for take-off",
        "we lost the number one system over the Alps",
    ],
)
def test_what_is_known_is_no_strange_name(knowledge: Knowledge, text: str) -> None:
    assert not outside(knowledge.reader.read(text))


@pytest.mark.parametrize(
    ("text", "amounts"),
    [
        ("runway 27, touchdown 130 kt", [(130, "kt")]),
        ("on runway 09 at 124 kt", [(124, "kt")]),
        ("brakes at gate 14 read 330", [(330, None)]),
        ("flight 402, brakes 260", [(260, None)]),
        ("runway 30 m wide", [(30, "m")]),
        ("rolling out at 44, how far can the tiller turn", [(44, "kt")]),
    ],
)
def test_places_have_numbers_that_are_no_amounts(
    knowledge: Knowledge, text: str, amounts: list[tuple[float, str | None]]
) -> None:
    assert [(a.value, a.unit) for a in knowledge.reader.read(text).amounts] == amounts


@pytest.mark.parametrize("text", ["120 hottest brake 262, take-off?", "forget it, one twenty brakes at 300 to go"])
def test_a_variant_may_open_a_clause(knowledge: Knowledge, text: str) -> None:
    reading = knowledge.reader.read(text)

    assert reading.variants == ("120",)
    assert len(reading.amounts) == 1


def test_two_readings_are_no_variant(knowledge: Knowledge) -> None:
    assert not knowledge.reader.read("120 left and 250 right, ok to depart?").variants


def test_what_only_names_an_amount_is_not_asked_for(knowledge: Knowledge) -> None:
    assert "angle" not in knowledge.reader.read("minimum pavement at 67° steering angle").asked
    assert "duration" in knowledge.reader.read("minutes to cool the brakes to take-off temperature").asked


@pytest.mark.parametrize("text", ["max tow angle 120", "maximum takeoff weight 120"])
def test_the_last_word_of_what_is_the_most_may_be_a_variant(knowledge: Knowledge, text: str) -> None:
    reading = knowledge.reader.read(text)

    assert (reading.variants, reading.amounts) == (("120",), ())


def test_a_reading_that_is_led_to_is_no_variant(knowledge: Knowledge) -> None:
    assert knowledge.reader.read("max tiller at 120").amounts
