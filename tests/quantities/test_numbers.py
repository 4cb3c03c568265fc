"""Numbers: value first, then every wording that must give it, and what must not be read as a number."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.quantities.numbers import read_number
from assistant.quantities.show import number_words
from assistant.quantities.tokens import tokenize

WORDINGS: list[tuple[float, list[str]]] = [
    (90, ["90", "ninety", "nine zero", "niner zero", "ninty", "90.0"]),
    (180, ["one eight zero", "one eighty", "a hundred and eighty", "one hundred eighty", "wun ait zero"]),
    (275, ["two hundred and seventy-five", "two seventy five", "two seven five", "two hundred seventy five"]),
    (120, ["one twenty", "one two zero", "ten dozen", "hundred and twenty"]),
    (185, ["one eighty five", "one ait fife"]),
    (230, ["two thirty", "two tree zero"]),
    (205, ["two oh five", "two zero five", "two hundred and five"]),
    (1_000_000, ["a million", "one million", "1 million"]),
    (100, ["hundred", "a hundred", "one hundred"]),
    (1450, ["1,450", "one four five zero", "fourteen fifty", "one thousand four hundred and fifty"]),
    (1800, ["eighteen hundred", "one thousand eight hundred", "one eight zero zero", "one eight double zero"]),
    (2500, ["twenty-five hundred", "two thousand five hundred", "2.5 thousand"]),
    (2600, ["two thousand six hundred", "twenty six hundred"]),
    (3000, ["3,000", "three thousand", "tree thousand", "3 thousand"]),
    (13500, ["one three thousand five hundred", "thirteen thousand five hundred"]),
    (17900, ["one seven thousand niner hundred"]),
    (20000, ["20 thousand", "twenty thousand", "two zero thousand"]),
    (56000, ["fifty-six thousand", "five six thousand"]),
    (250000, ["two hundred and fifty thousand"]),
    (0, ["zero", "0", "nought"]),
    (
        0.6,
        [
            "point six",
            "oh point six",
            "zero point six zero",
            "point sixty",
            "zero decimal six",
            ".60",
            "0 point 6",
        ],
    ),
    (1.6, ["one point six", "1 point 6", "1.6"]),
    (48.5, ["forty-eight point five", "forty eight and a half", "48 point 5"]),
    (0.5, ["half", "a half", "one half"]),
    (0.25, ["quarter", "a quarter"]),
    (0.75, ["three quarters"]),
    (2.5, ["two and a half"]),
    (12, ["a dozen", "twelve", "dozen"]),
    (6, ["half a dozen", "six"]),
    (-15, ["-15", "minus fifteen", "negative fifteen", "minus one five"]),
]


@pytest.mark.parametrize(("text", "value"), [(text, value) for value, texts in WORDINGS for text in texts])
def test_wording_gives_value(text: str, value: float) -> None:
    tokens = tokenize(text)
    read = read_number(tokens, 0)

    assert read is not None
    assert read[0] == pytest.approx(value)
    assert read[1] == len(tokens)


@pytest.mark.parametrize(
    ("text", "value", "rest"),
    [
        ("three eighty twenty outside", 380, "twenty outside"),
        ("four hundred fifty psi", 450, "psi"),
        ("one hundred and two hundred", 100, "and two hundred"),
        ("one thousand four hundred and two thousand", 1400, "and two thousand"),
        ("fifty twenty outside", 50, "twenty outside"),
        ("two hundred and fans on", 200, "and fans on"),
        ("ninety point", 90, "point"),
        ("six and half power", 6, "and half power"),
    ],
)
def test_a_number_ends_where_the_next_thing_begins(text: str, value: float, rest: str) -> None:
    tokens = tokenize(text)
    read = read_number(tokens, 0)

    assert read is not None
    assert read[0] == value
    assert " ".join(token.text for token in tokens[read[1] :]) == rest


@pytest.mark.parametrize(
    "text",
    [
        "one",
        "one of the systems",
        "oh",
        "tree",
        "point",
        "minus",
        "a",
        "an",
        "and",
        "kt",
        "32.50.2",
        "1st",
        "9" * 400,
        "mach",
        "for",
        "to",
        "too",
    ],
)
def test_what_is_not_read_as_a_number(text: str) -> None:
    assert read_number(tokenize(text), 0) is None


def test_a_lone_one_is_read_when_asked_for() -> None:
    assert read_number(tokenize("one"), 0, lone=True) == (1, 1)


def test_between_leaves_and_to_join_two_numbers() -> None:
    tokens = tokenize("between four hundred and two thousand psi")
    assert read_number(tokens, 1) == (400, 3)
    assert read_number(tokens, 4) == (2000, 6)


def test_reading_stops_before_a_name() -> None:
    assert read_number(tokenize("two three zero"), 0, stop=2) == (23, 2)


def test_indices_outside_the_tokens_give_nothing() -> None:
    assert read_number([], 0) is None
    assert read_number(tokenize("90"), 5) is None
    assert read_number(tokenize("90"), -1) is None


@given(st.integers(0, 999_999))
def test_a_number_in_words_reads_back(n: int) -> None:
    tokens = tokenize(number_words(n))
    assert read_number(tokens, 0, lone=True) == (n, len(tokens))


@given(st.integers(-99_999, 99_999), st.integers(1, 99))
def test_decimals_in_words_read_back(whole: int, hundredths: int) -> None:
    value = round(whole + (hundredths / 100 if whole >= 0 else -hundredths / 100), 2)
    tokens = tokenize(number_words(value))
    read = read_number(tokens, 0, lone=True)

    assert read is not None
    assert read[0] == pytest.approx(value)
    assert read[1] == len(tokens)


@given(st.text("0123456789", min_size=1, max_size=5))
def test_digits_said_one_by_one_read_back(digits: str) -> None:
    names = ("zero", "one", "two", "tree", "fower", "fife", "six", "seven", "ait", "niner")
    tokens = tokenize(" ".join(names[int(digit)] for digit in digits))
    assert read_number(tokens, 0, lone=True) == (int(digits), len(digits))
