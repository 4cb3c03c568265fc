"""An answer for a reader: the fact first, lines that fit, and nothing that a terminal would obey."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.answering.answer import DECLINE, Answer, Citation
from assistant.rendering.text import answer_text, clean, columns, sources_line, wrap


def test_the_fact_comes_first_and_the_sources_last(answered: Answer) -> None:
    assert answer_text(answered, 80).splitlines() == [
        "2.0° either way at 90 kt. Above 110 kt the pedals give no steering.",
        "Working: 8° at 30 kt, straight to 0° at 110 kt",
        "Note: The rudder is not in it.",
        "AOM 32.50.3, revision 7",
    ]


def test_a_caution_that_the_text_says_is_not_said_again(answered: Answer) -> None:
    said = answered._replace(text=f"{answered.cautions[1]} {answered.text}")

    assert answer_text(said, 80).count("The rudder is not in it.") == 1


def test_a_single_answer_ends_with_the_deference(answered: Answer) -> None:
    assert answer_text(answered, 80, deference=True).splitlines()[-1] == answered.cautions[0]


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        (
            "Stop: 1. (memory) Pull. Hard; 2. Wait 20 s; then look; 3. Tell.",
            ["Stop:", "  1. (memory) Pull. Hard", "  2. Wait 20 s; then look", "  3. Tell."],
        ),
        (
            "Pull. That is step 1 of: Stop: 1. Pull; 2. Wait. This record is disputed.",
            ["Pull. That is step 1 of: Stop:", "  1. Pull", "  2. Wait.", "This record is disputed."],
        ),
        (
            "Up: 1. Wait; 2. Look. Down: 1. Pull; 2. Push.",
            ["Up:", "  1. Wait", "  2. Look.", "Down:", "  1. Pull", "  2. Push."],
        ),
        ("Tail: 1. Alone.", ["Tail: 1. Alone."]),
        ("At 3.2 m: 12.5 s; 2.5 more.", ["At 3.2 m: 12.5 s; 2.5 more."]),
    ],
)
def test_steps_are_lines_of_their_own(answered: Answer, text: str, lines: list[str]) -> None:
    told = answer_text(answered._replace(text=text, working="", cautions=(), sources=()), 80)

    assert told.splitlines() == lines


def test_a_step_goes_on_under_its_words(answered: Answer) -> None:
    text = "Stop: 1. Pull the lever and hold it there for a while; 2. Wait."
    told = answer_text(answered._replace(text=text, working="", cautions=(), sources=()), 40)

    assert told.splitlines() == ["Stop:", "  1. Pull the lever and hold it there", "     for a while", "  2. Wait."]


def test_choices_are_lines_of_their_own(asked_back: Answer) -> None:
    assert answer_text(asked_back, 80).splitlines() == [
        "Which do you mean?",
        "  1. VLO extension",
        "  2. VLO retraction",
    ]


def test_choices_that_the_text_does_not_list_are_still_shown(asked_back: Answer) -> None:
    lines = answer_text(asked_back._replace(text="Which one?"), 80).splitlines()

    assert lines == ["Which one?", "  1. VLO extension", "  2. VLO retraction"]


def test_what_would_tell_more_is_named_once(answered: Answer) -> None:
    named = answered._replace(text="It cools. Give the outside temperature.", needs=("outside_temperature",))

    assert "Still needed: mass." in answer_text(named._replace(needs=("mass",)))
    assert "Still needed" not in answer_text(named)


def test_each_paragraph_is_shown_once() -> None:
    sources = [Citation("LIM", "3.2", "7", ""), Citation("LIM", "3.2", "7", ""), Citation("NASA", "", "", "")]

    assert sources_line(sources) == "LIM 3.2, revision 7; NASA"


def test_colour_adds_no_word(answered: Answer, asked_back: Answer) -> None:
    for answer in (answered, asked_back):
        coloured = answer_text(answer, 40, color=True, deference=True)

        assert coloured != clean(coloured)
        assert clean(coloured) == answer_text(answer, 40, deference=True)


def test_the_first_sentence_is_bold(answered: Answer) -> None:
    first = answer_text(answered, 80, color=True).splitlines()[0]

    assert first.startswith("\x1b[1m2.0° either way at 90 kt.\x1b[0m Above")


@pytest.mark.parametrize("width", [40, 57, 100])
def test_lines_fit(answered: Answer, width: int) -> None:
    long = answered._replace(text=f"{answered.text} {'漢字' * 60} " * 3, working="x" * 200)

    assert max(map(columns, answer_text(long, width).splitlines())) <= width


def test_a_number_keeps_its_unit() -> None:
    assert wrap("the gear may be extended at up to 230 kt", 40) == [
        "the gear may be extended at up to 230 kt"
    ]
    assert wrap("the gear may be extended at most at 230 kt", 40)[1] == "230 kt"


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("a\x1b[31mb\x1b[0m", "ab"),
        ("a\x1b]0;title\x07b", "ab"),
        ("a\x1b]8;;http://x\x1b\\b", "ab"),
        ("a\x9b31mb\x9d0;t\x9cc", "abc"),
        ("a\x1bP1$r\x1b\\b\x1b7c\x1b", "abc"),
        ("a\u202eb\u2066c\u200fd\u061ce", "abcde"),
        ("a\x00\x07\x08\x7f\x85b", "a b"),
        ("a\tb\r\nc", "a b\nc"),
        ("a\ud800b", "a\ufffdb"),
        ("é 漢 °", "é 漢 °"),
    ],
)
def test_clean(text: str, left: str) -> None:
    assert clean(text) == left


@given(st.text(alphabet=st.characters(), max_size=80))
def test_whatever_is_asked_prints_harmlessly(text: str) -> None:
    answer = Answer(
        text,
        DECLINE,
        f"Not known: {text}",
        working=text,
        cautions=(text, text),
        choices=(text,),
        needs=(text,),
    )

    shown = answer_text(answer, 40, deference=True)

    assert all(line.isprintable() for line in shown.split("\n"))
    assert max(map(columns, shown.split("\n"))) <= 40
