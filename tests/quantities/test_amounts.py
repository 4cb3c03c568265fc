"""Amounts: each wording and the value and unit it must give; what a name owns is never a number."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.quantities.amounts import Amount, read_amounts
from assistant.quantities.numbers import STARTERS
from assistant.quantities.tokens import tokenize
from assistant.quantities.units import Units

Read = tuple[float, str | None]

WORDINGS: list[tuple[Read, list[str]]] = [
    ((90, "kt"), ["90kt", "90 kts", "ninety knots", "nine zero knots", "niner zero knotts", "90 k t"]),
    ((180, "kt"), ["one eight zero knots", "one eighty knots", "a hundred and eighty knots"]),
    ((30, "deg"), ["30°", "30 deg", "three zero degrees", "thirty degress", "30-degree"]),
    (
        (0.6, "Mach"),
        [
            "M.60",
            "M 0.6",
            "m0.60",
            "mach point six",
            "0.60 mach",
            "point six zero mach",
            "M .60",
            "mach sixty",
            "mach number of 0.6",
            "mach.60",
            "0.60M",
            "mach 0.60 mach",
        ],
    ),
    (
        (3000, "psi"),
        ["3,000 psi", "3 000 psi", "3\u00a0000 psi", "3k psi", "three thousand p s i", "3000psi", "3K psi"],
    ),
    ((48, "t"), ["48 t", "48t", "48 tonnes", "forty-eight tons"]),
    ((48000, "kg"), ["48,000kg", "48 000 kg", "forty eight thousand kilos"]),
    ((15, "degC"), ["15 °C", "15ºc", "15C", "15 c", "fifteen degrees celcius", "+15°C", "15° C", "15 deg C"]),
    (
        (-5, "degC"),
        ["-5C", "\u22125 °C", "minus five degrees centigrade", "five below zero", "5 degrees below freezing"],
    ),
    ((-5, "deg"), ["minus five degrees", "-5°"]),
    ((68, "degF"), ["68F", "68 °F", "sixty-eight degrees fahrenheit"]),
    ((25, "K"), ["25 degrees difference", "25K", "25 degrees apart"]),
    ((0.5, "h"), ["half an hour", "half hour", "a half hour", "1/2 h", "\u00bd hour", "0.5h", "1/2 an hour"]),
    ((0.75, "h"), ["three quarters of an hour", "3/4 h"]),
    ((0.25, "h"), ["a quarter of an hour", "quarter hour", "\u00bc h"]),
    ((1, "h"), ["an hour", "one hour", "1 hr", "1h"]),
    ((1, "min"), ["a minute", "one min", "1 minute"]),
    (
        (1.5, "h"),
        [
            "1h30",
            "1 h 30 min",
            "an hour and a half",
            "one hour thirty minutes",
            "1\u00bd h",
            "hour and a half",
            "1 hour and 30 minutes",
            "one and a half hours",
            "1.5 hours",
        ],
    ),
    ((2.5, "h"), ["2\u00bd hours", "two and a half hours", "2h30"]),
    ((10.5, "min"), ["10 minutes 30 seconds", "10 min 30 s"]),
    ((85, "percent"), ["85%", "85 %", "eighty-five percent", "85 per cent"]),
    ((1.6, "factor"), ["1.6 times", "one point six times", "x1.6", "1.6x", "\u00d71.6", "1.6\u00d7"]),
    (
        (19000, "ft"),
        ["FL190", "fl 190", "flight level one niner zero", "19,000 ft", "nineteen thousand feet"],
    ),
    ((20000, "ft"), ["20 thousand feet", "20,000ft", "two zero thousand feet", "20k ft"]),
    ((1.4, "m/s2"), ["1.4 m/s²", "1.4m/s2", "one point four metres per second squared", "1.4 m/s^2"]),
    ((20, "m/s"), ["20 m/s", "twenty metres per second"]),
    ((500, "USD"), ["$500", "500 dollars", "500$"]),
    ((1e5, "ft.lbf"), ["100,000 ft.lbf", "100,000 ft-lb"]),
    ((5, "in"), ["5in", "5 inches"]),
    ((20, "m"), ["20 m", "20m", "20 metres"]),
    ((275, None), ["275", "two seventy five", "two hundred and seventy-five"]),
    ((3000, None), ["3k", "3,000"]),
]


def read(text: str, units: Units) -> list[Read]:
    return [(amount.value, amount.unit) for amount in read_amounts(tokenize(text), units)]


@pytest.mark.parametrize(
    ("text", "value", "unit"), [(text, *want) for want, texts in WORDINGS for text in texts]
)
def test_wording_gives_one_amount(units: Units, text: str, value: float, unit: str | None) -> None:
    (amount,) = read(text, units)

    assert amount[0] == pytest.approx(value)
    assert amount[1] == unit


SENTENCES: list[tuple[str, list[Read]]] = [
    ("chrome 60 to 110 mm", [(60, "mm"), (110, "mm")]),
    ("60-110mm", [(60, "mm"), (110, "mm")]),
    ("between 1400 and 2000 psi", [(1400, "psi"), (2000, "psi")]),
    ("between one thousand four hundred and two thousand psi", [(1400, "psi"), (2000, "psi")]),
    ("5 or 6 kt", [(5, "kt"), (6, "kt")]),
    ("50/60 kt", [(50, "kt"), (60, "kt")]),
    ("from 400 C to 150", [(400, "degC"), (150, "degC")]),
    ("from 400 degrees to 150 degrees celsius", [(400, "degC"), (150, "degC")]),
    ("two hundred degrees down to one fifty", [(200, "deg"), (150, "deg")]),
    ("275 and 90 kt", [(275, None), (90, "kt")]),
    ("80 psi 90 kt", [(80, "psi"), (90, "kt")]),
    ("brakes at three eighty twenty outside", [(380, None), (20, None)]),
    ("275, 20 outside", [(275, None), (20, None)]),
    ("M.60 at 20000ft", [(0.6, "Mach"), (20000, "ft")]),
    ("within 20 m .5 of it", [(20, "m"), (0.5, None)]),
    ("90 in rain", [(90, None)]),
    ("which one of the systems", []),
    ("the first quarter of the lever", []),
    ("the 2nd system", []),
    ("memory item M1", [(1, None)]),
    ("AOM 32.50.2", []),
    ("wait a second", []),
    ("15K outside", [(15, "K")]),
    ("at one knot", [(1, "kt")]),
    ("", []),
]


@pytest.mark.parametrize(("text", "expected"), SENTENCES, ids=[text for text, _ in SENTENCES])
def test_amounts_of_a_sentence(units: Units, text: str, expected: list[Read]) -> None:
    found = read(text, units)

    assert [unit for _, unit in found] == [unit for _, unit in expected]
    assert [value for value, _ in found] == pytest.approx([value for value, _ in expected])


def test_a_name_owns_its_number(units: Units) -> None:
    tokens = tokenize("system 1 450 psi, system one two thirty knots")

    amounts = read_amounts(tokens, units, skip=frozenset({0, 1, 5, 6}))

    assert [(amount.value, amount.unit) for amount in amounts] == [(450, "psi"), (230, "kt")]


def test_a_name_owns_its_letter(units: Units) -> None:
    tokens = tokenize("at 90 t handle")
    assert read_amounts(tokens, units, skip=frozenset({2})) == [Amount(1, 2, 90, None, "90", False, False)]


def test_an_amount_knows_its_place_and_its_words(units: Units) -> None:
    tokens = tokenize("slow to Ninety  Knots now")
    assert read_amounts(tokens, units) == [Amount(2, 4, 90, "kt", "Ninety Knots", True, False)]
    assert read_amounts(tokenize("90KT"), units)[0].raw == "90KT"


@pytest.mark.parametrize(
    ("text", "approx"),
    [
        ("about 90 kt", True),
        ("~90kt", True),
        ("roughly ninety knots", True),
        ("90ish kt", True),
        ("90 kt or so", True),
        ("what about 90 kt", False),
        ("how about 90 kt", False),
        ("at 90 kt", False),
    ],
)
def test_approximate_amounts_are_marked(units: Units, text: str, approx: bool) -> None:
    (amount,) = read_amounts(tokenize(text), units)
    assert (amount.value, amount.unit, amount.approx) == (90, "kt", approx)


VOCABULARY = [
    *sorted(STARTERS),
    "and",
    "to",
    "of",
    "kt",
    "h",
    "min",
    "deg",
    "c",
    "k",
    "90",
    ".6",
    "-5",
    "1",
    "/",
    "2",
    "3,000",
    "mach",
    "m",
    "x",
    "+",
    "fl",
    "$",
    "or",
    "so",
    "ish",
    "below",
    "quarters",
    "between",
    "000",
    "-",
    "%",
    "\u00bd",
]


@given(st.lists(st.sampled_from(VOCABULARY), max_size=12), st.sampled_from(["", " "]), st.data())
def test_amounts_never_overlap_nor_touch_a_name(
    units: Units, words: list[str], between: str, data: st.DataObject
) -> None:
    tokens = tokenize(between.join(words))
    skip = frozenset(data.draw(st.sets(st.integers(0, max(len(tokens) - 1, 0)))))

    amounts = read_amounts(tokens, units, skip)

    taken = [i for amount in amounts for i in range(amount.start, amount.end)]
    assert len(taken) == len(set(taken))
    assert skip.isdisjoint(taken)
    assert all(abs(amount.value) < 1e60 for amount in amounts)


@given(st.text(max_size=60))
def test_any_text_is_read_without_failing(units: Units, text: str) -> None:
    read_amounts(tokenize(text), units)


@pytest.mark.parametrize("piece", ["1 ", "one ", "1/", ".1", "thousand ", "h 1"])
def test_a_long_run_is_read_in_linear_time(units: Units, piece: str) -> None:
    read_amounts(tokenize(piece * 20_000), units)


@given(
    st.integers(0, 9999),
    st.sampled_from(["kt", "psi", "kg", "m", "s", "degC", "deg", "percent", "MJ", "bar"]),
)
def test_what_is_shown_or_said_reads_back(units: Units, value: int, symbol: str) -> None:
    from assistant.quantities.show import exact_shown, spoken

    assert read(exact_shown(value, symbol, units), units) == [(value, symbol)]
    assert read(spoken(value, symbol, units), units) == [(value, symbol)]
    assert read(spoken(value, symbol, units, digits=True), units) == [(value, symbol)]
