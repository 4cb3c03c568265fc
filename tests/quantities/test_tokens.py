"""Tokens: what is kept together, what is split, and that no text whatever makes it fail."""

import sys
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.quantities.tokens import clean, tokenize

CASES = [
    ("What's VLE?", ["what's", "vle", "?"]),
    ("don\u2019t", ["don't"]),
    ("1,450 3,000psi 20.5", ["1,450", "3,000", "psi", "20.5"]),
    ("20,30", ["20", ",", "30"]),
    ("1,4500", ["1", ",", "4500"]),
    ("M.60 M0.60 mach.6", ["m", ".60", "m", "0.60", "mach", ".6"]),
    ("sys.2 lost", ["sys", ".", "2", "lost"]),
    ("lost. 5 kt", ["lost", ".", "5", "kt"]),
    ("90kt 48t", ["90", "kt", "48", "t"]),
    ("t/o u/s on/off", ["t/o", "u/s", "on", "/", "off"]),
    (
        "1.4m/s2 m/s m/s\u00b2 m/s^2 ft/min 5m/s/s",
        ["1.4", "m/s2", "m/s", "m/s2", "m/s2", "ft/min", "5", "m/s2"],
    ),
    ("15\u00b0C 15\u00bac 15\u00b0 85% 15\u2103", ["15", "°c", "15", "°c", "15", "°", "85", "%", "15", "°c"]),
    ("-15 minus 10-15 x-15 (\u22125)", ["-15", "minus", "10", "-", "15", "x", "15", "(", "-5", ")"]),
    ("the 150's 150 s", ["the", "150", "is", "150", "s"]),
    ("<b>main</b> &gt; 5 < 6 <br/>tyre", ["main", "above", "5", "below", "6", "tyre"]),
    ("> what is it", ["what", "is", "it"]),
    ("> 60 kt", ["above", "60", "kt"]),
    ("[q]what%20is[/q] [FULL]", ["what", "is", "full"]),
    ("60\u2013110 mm 275\u2014ok", ["60", "-", "110", "mm", "275", "-", "ok"]),
    ("anti-skid free-fall 90-degree", ["anti", "skid", "free", "fall", "90", "degree"]),
    ("AOM 32.50.2, LIM 3.2.", ["aom", "32.50.2", ",", "lim", "3.2", "."]),
    ("the 1st 2ND 3rd", ["the", "1st", "2nd", "3rd"]),
    ("1h30", ["1", "h", "30"]),
    ("\u00bd h 2\u00bd h", ["1", "/", "2", "h", "2", "1", "/", "2", "h"]),
    ("10\u00b2", ["10", "2"]),
    ("~90 @30 >250 <5", ["about", "90", "at", "30", "above", "250", "below", "5"]),
    (
        "a, b; c: d. e! (f) & = +",
        ["a", ",", "b", ";", "c", ":", "d", ".", "e", "!", "(", "f", ")", "&", "=", "+"],
    ),
    ("na\u00efve br\u00adakes", ["naive", "brakes"]),
    ("\uff19\uff10\uff4b\uff54", ["90", "kt"]),
    (
        "\u0441\u043a\u043e\u0440\u043e\u0441\u0442\u044c 90",
        ["\u0441\u043a\u043e\u0440\u043e\u0441\u0442\u044c", "90"],
    ),
    ("\U0001f6ec vle\x00vlo \x1b[31mred\x1b[0m \ud800", ["vle", "vlo", "red"]),
    ("", []),
]


@pytest.mark.parametrize(("text", "expected"), CASES, ids=[ascii(text) for text, _ in CASES])
def test_tokens_of_a_text(text: str, expected: list[str]) -> None:
    assert [token.text for token in tokenize(text)] == expected


def test_a_whole_word_is_not_split_where_digit_meets_letter() -> None:
    tokens = tokenize("120L 120l at 120 L, 90kt", whole=frozenset({"120l"}))

    assert [token.text for token in tokens] == ["120l", "120l", "at", "120", "l", ",", "90", "kt"]
    assert tokens[0].raw == "120L"


@given(st.text(st.characters(), max_size=80))
def test_any_text_gives_tokens_that_sit_in_order_in_the_cleaned_text(text: str) -> None:
    tokens, cleaned = tokenize(text), clean(text)

    for token in tokens:
        assert cleaned[token.start : token.end] == token.raw
        assert token.text == token.text.lower()
    assert all(a.end <= b.start for a, b in pairwise(tokens))


@given(st.text("0123456789.,-+/ \u00b0mMtTsS'^", max_size=30))
def test_texts_of_digits_and_signs_never_fail(text: str) -> None:
    assert all(token.text for token in tokenize(text))


def test_every_single_character_is_accepted() -> None:
    for code in range(0, sys.maxunicode, 7):
        tokenize("90" + chr(code) + "kt")


@pytest.mark.parametrize("piece", ["one ", "9", "-", "1,234", "\x1b[", "m/", ".1", "a'", "\ud800", "\ufdfa"])
def test_a_megabyte_is_read(piece: str) -> None:
    tokenize(piece * (1_000_000 // len(piece.encode("utf-8", "replace"))))


def test_common_letters_of_sign_words_keep_their_raw_form() -> None:
    assert [(token.text, token.raw) for token in tokenize("@90KT")] == [
        ("at", "@"),
        ("90", "90"),
        ("kt", "KT"),
    ]
