"""What an audio file says and when, before any sound is made."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.voice.recording.script import (
    Ask,
    Fact,
    Script,
    answering_pause,
    make_script,
    said_seconds,
    script_text,
)

OPENING = ["This is made from A O M revision seven.", "Training only."]
CLOSING = ["That is the end."]


def fact(number: int, asks: int = 2, length: int = 40) -> Fact:
    answer = f"answer {number} " + "so " * (length // 3)
    found = tuple(Ask(f"question {number} form {form}?", answer, f"Question {number}.{form}?") for form in range(asks))
    return Fact(f"fact {number}", f"record-{number}", found, f"Source: paragraph {number}.")


def script(facts: int = 60, minutes: float = 20, **more: int) -> Script:
    return make_script(OPENING, CLOSING, [fact(number, **more) for number in range(facts)], 60 * minutes)


def places(made: Script, text: str) -> list[int]:
    return [place for place, part in enumerate(made.parts) if part.text.startswith(text)]


def test_it_begins_and_ends_as_told() -> None:
    made = script()

    assert [part.text for part in made.parts[:2]] == OPENING
    assert made.parts[-1].text == CLOSING[0]
    assert made.parts[0].chapter == "Opening"


def test_each_question_is_followed_by_a_pause_and_its_answer() -> None:
    made = script()

    for place, part in enumerate(made.parts):
        if part.text.startswith("question"):
            answer = made.parts[place + 1].text
            assert answer.startswith(f"answer {part.text.split()[1]} ")
            assert part.pause_s == answering_pause(answer) >= 4
            assert part.chapter.endswith("?")


def test_the_source_is_said_once_and_the_second_question_comes_later() -> None:
    made = script()

    for number in range(len(made.entries)):
        assert len(places(made, f"Source: paragraph {number}.")) == 1
        first, second = places(made, f"question {number} form 0"), places(made, f"question {number} form 1")
        assert len(first) == len(second) == 1
        between = {part.text.split()[1] for part in made.parts[first[0] + 1 : second[0]] if "question" in part.text}
        if number < len(made.entries) - 8:
            assert len(between) >= 4


def test_the_length_is_kept_to() -> None:
    for minutes in (5, 20, 45):
        made = script(400, minutes)
        assert 0.93 * 60 * minutes <= made.seconds <= 60 * minutes


def test_too_few_facts_make_it_shorter() -> None:
    made = script(3)

    assert made.entries == ("record-0", "record-1", "record-2")
    assert made.seconds < 120


def test_a_shorter_fact_fills_what_a_longer_one_does_not_fit() -> None:
    facts = [fact(0), fact(1, length=900), fact(2)]
    made = make_script(OPENING, CLOSING, facts, 75)

    assert made.entries == ("record-0", "record-2")


def test_no_time_for_anything_says_nothing_of_a_fact() -> None:
    assert script(5, 0.2).entries == ()


def test_nothing_is_asked_twice_as_another_fact() -> None:
    made = make_script(OPENING, CLOSING, [fact(1), fact(1)], 600)

    assert made.entries == ("record-1",)
    assert len(places(made, "question 1 form 0")) == 1


def test_the_text_tells_chapters_and_pauses() -> None:
    text = script_text(script(1))

    assert text.startswith("# Opening\nThis is made from A O M revision seven.\n")
    assert "\n# 1. Question 0.0?\nquestion 0 form 0?\n[" in text
    assert " s to answer]\nanswer 0 " in text


@given(st.text(max_size=300))
def test_a_pause_can_be_waited_for(answer: str) -> None:
    assert 4 <= answering_pause(answer) <= 24
    assert said_seconds(answer, 320) <= said_seconds(answer, 80)


@pytest.mark.parametrize("rate", [100, 160, 240])
def test_a_slower_voice_says_less(rate: int) -> None:
    made = make_script(OPENING, CLOSING, [fact(number) for number in range(90)], 600, rate)

    assert made.seconds <= 600
    assert len(made.entries) > 5
