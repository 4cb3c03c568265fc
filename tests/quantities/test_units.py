"""Units: factors against two independent libraries and published values, names, and conversions."""

import re
from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants  # type: ignore[import-untyped]

from assistant.quantities.tokens import words_of
from assistant.quantities.units import UnitError, Units

PINT: Any = pint.UnitRegistry()
PINT_NAMES = {
    "deg": "degree",
    "percent": "percent",
    "kt": "knot",
    "kg/m3": "kg/m**3",
    "m/s2": "m/s**2",
    "ft/s2": "ft/s**2",
    "g": "standard_gravity",
    "inHg": "inHg",
    "NM": "nautical_mile",
    "t": "tonne",
    "ft.lbf": "ft*lbf",
    "US gal": "gallon",
    "deg/s": "degree/s",
    "m2": "m**2",
    "sq ft": "ft**2",
    "in": "inch",
    "mile": "mile",
    "yd": "yard",
    "h": "hour",
    "min": "minute",
    "kg/h": "kg/hour",
    "lb/h": "lb/hour",
    "mph": "mile/hour",
    "km/h": "km/hour",
    "ft/min": "ft/minute",
    "A": "ampere",
    "V": "volt",
    "W": "watt",
    "N": "newton",
    "J": "joule",
    "l": "liter",
    "qt": "quart",
    "hp": "horsepower",
    "kWh": "kWh",
    "rpm": "rpm",
}
NOT_IN_PINT = {
    "factor",
    "count",
    "Mach",
    "USD",
    "EUR",
    "GBP",
    "month",
    "year",
    "degC",
    "degF",
    "K",
    "degF difference",
}

# NIST SP 811 (2008), appendix B.8; factors marked exact there are exact. Values from memory, computed with
# pint 0.25 and scipy.constants 1.17.
PUBLISHED = [
    (1, "lb", "kg", 0.45359237, 1e-12),
    (1, "ft", "m", 0.3048, 0),
    (1, "in", "mm", 25.4, 0),
    (1, "NM", "m", 1852, 0),
    (1, "kt", "m/s", 0.514444444, 1e-9),
    (1, "kt", "ft/s", 1.687809857, 1e-9),
    (1, "kt", "mph", 1.150779448, 1e-9),
    (1, "mph", "kt", 0.868976242, 1e-9),
    (210, "mph", "kt", 182.485, 1e-5),
    (225, "mph", "kt", 195.520, 1e-5),
    (235, "mph", "kt", 204.209, 1e-5),
    (1, "psi", "kPa", 6.894757293, 1e-9),
    (1, "bar", "psi", 14.50377377, 1e-8),
    (3000, "psi", "bar", 206.8427, 1e-6),
    (3000, "psi", "MPa", 20.68427, 1e-6),
    (1, "atm", "kPa", 101.325, 1e-12),
    (1, "atm", "psi", 14.6959488, 1e-7),
    (1, "inHg", "hPa", 33.86389, 2e-7),
    (1, "lbf", "N", 4.4482216152605, 0),
    (1, "ft.lbf", "J", 1.355817948, 1e-9),
    (1e6, "ft.lbf", "MJ", 1.355818, 1e-6),
    (1, "US gal", "l", 3.785411784, 1e-12),
    (1, "g", "m/s2", 9.80665, 0),
    (1, "g", "ft/s2", 32.17405, 1e-6),
    (-40, "degF", "degC", -40, 1e-4),
    (0, "degF", "degC", -17.7778, 1e-5),
    (32, "degF", "degC", 0, 1e-4),
    (59, "degF", "degC", 15, 1e-4),
    (100, "degF", "degC", 37.7778, 1e-5),
    (212, "degF", "degC", 100, 0),
    (350, "degF", "degC", 176.6667, 1e-5),
    (932, "degF", "degC", 500, 0),
    (90, "degF difference", "K", 50, 1e-12),
]


@pytest.mark.parametrize(("value", "source", "target", "expected", "tolerance"), PUBLISHED)
def test_published_conversions(
    units: Units, value: float, source: str, target: str, expected: float, tolerance: float
) -> None:
    assert units.convert(value, source, target) == pytest.approx(
        expected, rel=tolerance, abs=tolerance or 1e-12
    )


def test_every_factor_agrees_with_pint(units: Units) -> None:
    for unit in units:
        if unit.symbol in NOT_IN_PINT:
            continue
        theirs = PINT.Quantity(1, PINT_NAMES.get(unit.symbol, unit.symbol)).to_base_units()
        grams = 1000 if "gram" in str(theirs.units) and "kilogram" not in str(theirs.units) else 1
        assert unit.factor == pytest.approx(theirs.magnitude / grams, rel=1e-7), unit.symbol


def test_factors_agree_with_scipy(units: Units) -> None:
    named = {
        "kt": constants.knot,
        "mph": constants.mph,
        "psi": constants.psi,
        "bar": constants.bar,
        "atm": constants.atm,
        "lb": constants.lb,
        "ft": constants.foot,
        "in": constants.inch,
        "NM": constants.nautical_mile,
        "g": constants.g,
        "lbf": constants.lbf,
        "deg": constants.degree,
        "day": constants.day,
        "US gal": constants.gallon,
        "yd": constants.yard,
        "mile": constants.mile,
        "km/h": constants.kmh,
    }
    for symbol, factor in named.items():
        assert units.to_si(1, symbol) == pytest.approx(factor, rel=1e-14), symbol
    assert units.to_si(15, "degC") == pytest.approx(constants.convert_temperature(15, "Celsius", "Kelvin"))
    assert units.to_si(59, "degF") == pytest.approx(constants.convert_temperature(59, "Fahrenheit", "Kelvin"))


@given(st.floats(-1e6, 1e6), st.data())
def test_there_and_back_is_the_same_value(units: Units, value: float, data: st.DataObject) -> None:
    source = data.draw(st.sampled_from(list(units)))
    target = data.draw(st.sampled_from([unit for unit in units if unit.dimension == source.dimension]))

    there = units.convert(value, source.symbol, target.symbol)

    assert units.convert(there, target.symbol, source.symbol) == pytest.approx(value, rel=1e-9, abs=1e-6)
    assert units.from_si(units.to_si(value, source.symbol), source.symbol) == pytest.approx(
        value, rel=1e-9, abs=1e-6
    )


def test_common_conversions_are_exact(units: Units) -> None:
    assert units.convert(60, "min", "h") == 1
    assert units.convert(48, "t", "kg") == 48_000
    assert units.convert(85, "percent", "percent") == 85


@pytest.mark.parametrize(("source", "target"), [("kt", "kg"), ("degC", "K"), ("deg", "degC"), ("lb", "lbf")])
def test_units_of_two_dimensions_do_not_convert_and_both_are_named(
    units: Units, source: str, target: str
) -> None:
    with pytest.raises(UnitError, match=f"'{re.escape(source)}'.*'{re.escape(target)}'"):
        units.convert(1, source, target)


def test_an_unknown_unit_is_named(units: Units) -> None:
    with pytest.raises(UnitError, match="furlong"):
        units.to_si(1, "furlong")


@pytest.mark.parametrize(
    ("name", "symbol"),
    [
        ("knotts", "kt"),
        ("degress", "deg"),
        ("celcius", "degC"),
        ("degrees celsius", "degC"),
        ("p s i", "psi"),
        ("per cent", "percent"),
        ("metres per second squared", "m/s2"),
        ("m/s²", "m/s2"),
        ("°C", "degC"),
        ("ft-lb", "ft.lbf"),
        ("ft.lbf", "ft.lbf"),
        ("°/s", "deg/s"),
        ("nautical miles per hour", "kt"),
        ("NM", "NM"),
    ],
)
def test_names_find_their_unit(units: Units, name: str, symbol: str) -> None:
    found = units.find(words_of(name))
    assert found is not None
    assert found.symbol == symbol


def test_the_longest_name_wins(units: Units) -> None:
    assert units.match(["degrees", "celsius", "outside"], 0) == (units.get("degC"), 2)
    assert units.match(["degrees", "left"], 0) == (units.get("deg"), 1)
    assert units.match(["outside"], 0) is None


def test_a_glued_name_is_no_unit_apart_from_its_number(units: Units) -> None:
    assert units.match(["in"], 0) is None
    assert units.match(["in"], 0, glued=True) == (units.get("in"), 1)


ENTRY = {
    "symbol": "kt",
    "dimension": "speed",
    "factor": "1852/3600",
    "names": ["kt"],
    "say": ["a", "b"],
    "show": "",
}


@pytest.mark.parametrize(
    ("entries", "message"),
    [
        ([ENTRY, ENTRY], "'kt' is given twice"),
        ([ENTRY, {**ENTRY, "symbol": "knot"}], "'kt' names 'kt' and 'knot'"),
        ([{**ENTRY, "factor": "fast"}], "unit 'kt'"),
        ([{**ENTRY, "factor": "1/0"}], "unit 'kt'"),
        ([{**ENTRY, "names": ["🙂"]}], "no letters"),
        ([{key: ENTRY[key] for key in ENTRY if key != "dimension"}], "'dimension' is missing"),
    ],
)
def test_a_broken_table_is_refused_with_the_unit_named(entries: list[dict[str, Any]], message: str) -> None:
    with pytest.raises(UnitError, match=re.escape(message)):
        Units({"units": entries})
