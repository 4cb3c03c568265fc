"""Display and speech: documented values stay as they are, computed values follow the display steps."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.quantities.show import exact_shown, number_words, round_shown, spoken
from assistant.quantities.units import Units


@pytest.mark.parametrize(
    ("value", "unit", "expected"),
    [
        (250, "degC", "250 °C"),
        (56000, "kg", "56,000 kg"),
        (0.6, "Mach", "Mach 0.60"),
        (1.6, "factor", "1.6"),
        (68, "deg", "68°"),
        (6, "count", "6"),
        (20000, "ft", "20,000 ft"),
        (85, "percent", "85%"),
        (20, "s", "20 s"),
        (1.4, "m/s2", "1.4 m/s²"),
        (-5, "degC", "-5 °C"),
        (0.785, "Mach", "Mach 0.785"),
        (13.2, "m", "13.2 m"),
        (0.1 + 0.2, "bar", "0.3 bar"),
        (25, "K", "25 °C"),
        (-0.0, "deg", "0°"),
        (1, "Mach", "Mach 1.00"),
    ],
)
def test_documented_values_are_not_rounded(units: Units, value: float, unit: str, expected: str) -> None:
    assert exact_shown(value, unit, units) == expected


@pytest.mark.parametrize(
    ("value", "unit", "expected"),
    [
        (2, "deg", "2.0°"),
        (2.25, "deg", "2.3°"),
        (-2.25, "deg", "-2.3°"),
        (-0.04, "deg", "0.0°"),
        (113.6, "kt", "114 kt"),
        (0.557, "Mach", "Mach 0.56"),
        (249.5, "degC", "250 °C"),
        (9.94, "min", "9.9 min"),
        (9.96, "min", "10 min"),
        (41.919, "min", "42 min"),
        (99.4, "m", "99 m"),
        (1244.35, "m", "1,240 m"),
        (99.6, "m", "100 m"),
        (23747.6, "ft", "23,750 ft"),
        (27.348, "MJ", "27.3 MJ"),
        (1.449, "m/s2", "1.45 m/s²"),
        (1104.4, "psi", "1,104 psi"),
        (0.135, "g", "0.14 g"),
    ],
)
def test_computed_values_are_rounded_for_display(
    units: Units, value: float, unit: str, expected: str
) -> None:
    assert round_shown(value, unit, units) == expected


@pytest.mark.parametrize(
    ("value", "unit", "expected"),
    [
        (68, "deg", "sixty-eight degrees"),
        (230, "kt", "two hundred and thirty knots"),
        (0.6, "Mach", "Mach zero point six zero"),
        (3000, "psi", "three thousand p s i"),
        (250, "degC", "two hundred and fifty degrees Celsius"),
        (-5, "deg", "minus five degrees"),
        (1, "min", "one minute"),
        (1.6, "factor", "one point six times"),
        (6, "count", "six"),
        (1450, "psi", "one thousand four hundred and fifty p s i"),
        (1005, "kg", "one thousand and five kilograms"),
        (56000, "kg", "fifty-six thousand kilograms"),
        (85, "percent", "eighty-five percent"),
    ],
)
def test_values_are_said_in_full(units: Units, value: float, unit: str, expected: str) -> None:
    assert spoken(value, unit, units) == expected


@pytest.mark.parametrize(
    ("value", "unit", "expected"),
    [
        # FAA AIM 4-2-8 to 4-2-11; "decimal" for the point and the Mach form from ICAO Annex 10, from memory.
        (500, "ft", "five hundred feet"),
        (4500, "ft", "four thousand five hundred feet"),
        (10000, "ft", "one zero thousand feet"),
        (13500, "ft", "one three thousand five hundred feet"),
        (10, "ft", "one zero feet"),
        (250, "kt", "two five zero knots"),
        (190, "kt", "one niner zero knots"),
        (200, "kt", "two zero zero knots"),
        (0.64, "Mach", "Mach zero decimal six four"),
        (-5, "degC", "minus five degrees Celsius"),
        (0, "deg", "zero degrees"),
        (122.5, "m", "one two two decimal five metres"),
        # FAA Order 7110.65, 2-4-17
        (17900, "ft", "one seven thousand niner hundred feet"),
        (1320, "ft", "one three two zero feet"),
    ],
)
def test_values_are_said_as_on_the_radio(units: Units, value: float, unit: str, expected: str) -> None:
    assert spoken(value, unit, units, digits=True) == expected


def test_a_computed_value_is_said_as_it_is_shown(units: Units) -> None:
    assert spoken(41.919, "min", units, rounded=True) == "forty-two minutes"
    assert spoken(2.04, "deg", units, rounded=True) == "two degrees"


@given(st.floats(-1e6, 1e6), st.data())
def test_display_is_within_half_a_step_of_the_value(units: Units, value: float, data: st.DataObject) -> None:
    unit, largest_step = data.draw(
        st.sampled_from([("deg", 0.1), ("kt", 1), ("min", 1), ("m", 10), ("MJ", 0.1)])
    )

    shown = round_shown(value, unit, units)
    number = float(shown.replace(",", "").removesuffix("°").split(" ")[0])

    assert abs(number - value) <= largest_step / 2 + 1e-6


@given(st.floats(-1e9, 1e9))
def test_speech_holds_no_digit_sign_or_bracket(value: float) -> None:
    assert number_words(value).replace(" ", "").replace("-", "").isalpha()
