"""Whatever is typed gets an answer record: never an exception, and nothing that a terminal would obey."""

from __future__ import annotations

import unicodedata
from collections.abc import Callable
from string import ascii_lowercase

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer
from assistant.conversation.opening import Knowledge

Talk = Callable[..., list[Answer]]
MEGABYTE = 1_000_000

ANYTHING = st.text(st.characters(categories=["L", "M", "N", "P", "S", "Z", "C"]), max_size=200)
"""All of Unicode, half surrogates, controls and unassigned code points included."""

WORDS = """
tiller|pedal limit|vle|brakes|cool|system 1 lost|both systems gone|120L|why|where|what if|and|not|or|fans on
at|from|correction|disregard|dispute:|first|2|say again|landing|RTO|with|full left|anti-skid off|?|,|.|-
how long|turn width|stopping distance|FIRM|accumulator|bypass pin|km|M.60
"""
UNITS = "°C kt psi degrees ft kg t min s m/s2 % Mach °F bar"
PIECES = st.one_of(
    st.sampled_from(WORDS.strip().replace("\n", "|").split("|")),
    st.sampled_from(UNITS.split()),
    st.integers(-(10**12), 10**12).map(str),
    st.floats(allow_nan=True, allow_infinity=True).map(str),
    st.text(ascii_lowercase + "0123456789,./'\"-+°²√½", max_size=8),
)
SENTENCES = st.lists(PIECES, max_size=12).map(" ".join)


def well_formed(answer: Answer, text: str) -> None:
    assert answer.outcome in (ANSWER, CLARIFY, DECLINE)
    assert answer.question == text
    assert answer.text.strip()
    for shown in (answer.text, answer.spoken, answer.working, *answer.choices, *answer.cautions):
        controls = [c for c in shown if unicodedata.category(c) in ("Cc", "Cf", "Cs")]
        assert not controls, (controls, shown)
    assert answer.cautions
    assert all(value.value == value.value for value in answer.values), "not a number"
    assert all(isinstance(value.value, (int, float)) and value.unit for value in answer.values)


@settings(max_examples=300, deadline=None)
@given(ANYTHING)
def test_any_unicode(talk: Talk, text: str) -> None:
    well_formed(talk(text)[0], text)


@settings(max_examples=300, deadline=None)
@given(SENTENCES)
def test_any_words_of_the_trade_in_any_order(talk: Talk, text: str) -> None:
    well_formed(talk(text)[0], text)


@settings(max_examples=150, deadline=None)
@given(st.lists(st.one_of(SENTENCES, ANYTHING), min_size=2, max_size=6))
@example(["how long to cool from 400 °C", ""])
def test_any_conversation(talk: Talk, turns: list[str]) -> None:
    for answer, text in zip(talk(*turns), turns, strict=True):
        well_formed(answer, text)


@pytest.mark.parametrize("turn", ["why", "say again", "first", "and at 90?", "correction 80", "dispute"])
@settings(max_examples=30, deadline=None)
@given(SENTENCES)
def test_any_words_then_a_control(talk: Talk, turn: str, text: str) -> None:
    for answer, said in zip(talk(text, turn), (text, turn), strict=True):
        well_formed(answer, said)


LONG = {
    "one letter": "a" * MEGABYTE,
    "spaces": " " * MEGABYTE,
    "digits": "9" * MEGABYTE,
    "one word": "tiller " * (MEGABYTE // 7),
    "amounts": "at 90 kt " * (MEGABYTE // 9),
    "number words": "one eight zero " * (MEGABYTE // 15),
    "commas": "," * MEGABYTE,
    "brackets": "(" * MEGABYTE,
    "apostrophes": "'" * MEGABYTE,
    "controls": "\x1b[2J" * (MEGABYTE // 4),
    "marks": "e" + "\u0301" * MEGABYTE,
    "lines": "vle\n" * (MEGABYTE // 4),
    "leads": "and " * (MEGABYTE // 4) + "why",
    "again": "no, " * (MEGABYTE // 4) + "correction 80",
}


@pytest.mark.parametrize("text", LONG.values(), ids=LONG)
def test_a_megabyte(talk: Talk, text: str) -> None:
    well_formed(talk(text)[0], text)
    well_formed(talk("pedal limit at 90 kt", text)[1], text)


ODD = [
    "",
    " ",
    "\n",
    "\x00",
    "\x1b[31mvle",
    "what is \x1b]0;title\x07 vle",
    "\u202evle",
    "vle\u200b",
    "\ud800",
    "NaN kt",
    "inf degrees",
    "1e400 kt pedal limit",
    "pedal limit at -0 kt",
    "½ M",
    "is 240 kt with the gear down ok at -6 km",
    "is 240 kt with the gear down ok at 70,000 ft",
    "٣٠ kt tiller",
    "🛬 brakes?",
    "'; DROP TABLE limits; --",
    "../../etc/passwd",
    "{question.__class__}",
    "%s%n",
    "<b>vle</b>",
]


@pytest.mark.parametrize("text", ODD)
def test_odd_texts(talk: Talk, text: str) -> None:
    well_formed(talk(text)[0], text)


def test_an_escape_sequence_in_an_echoed_word_is_not_passed_on(talk: Talk) -> None:
    answer = talk("what about the \x1b[31mflugelbinder\x1b[0m\u202e thing?")[0]

    assert answer.outcome == DECLINE
    well_formed(answer, answer.question)


@settings(max_examples=100, deadline=None)
@given(SENTENCES)
def test_the_same_text_has_the_same_answer(talk: Talk, knowledge: Knowledge, text: str) -> None:
    assert talk(text) == talk(text)
