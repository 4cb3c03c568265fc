"""What a listener is told in other words than a reader: what follows first, and lists that end somewhere."""

import pytest

from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn


@pytest.mark.parametrize(
    ("question", "begins"),
    [
        ("the nose strut shows 71 mm of chrome", "Call maintenance. Chrome visible on the nose shock strut, seventy"),
        ("main tyre cold at 177 psi", "Re-inflate it. Main tyre pressure, cold, one hundred and seventy-seven p s i, "
         "more than five percent low."),
        ("tyre burst suspected on the take-off roll at 64 kt", "Reject. Tyre burst suspected on take-off at sixty-four "
         "knots, below one hundred knots."),
        ("accumulator pressure 1,250 psi", "Below one thousand four hundred p s i the accumulator counts"),
        ("runway condition code for 5 mm of slush", "Code two, medium to poor."),
        ("how has the taxi speed in sharp turns changed", "Now ten knots, formerly twelve knots: taxi speed in turns"),
        ("RTO armed, levers closed at 66 kt", "R T O brakes only above seventy-five knots: brake with"),
    ],
)  # fmt: skip
def test_what_follows_from_a_reading_is_said_first(knowledge: Knowledge, question: str, begins: str) -> None:
    answer, _ = answer_turn(question, Context(), knowledge)

    assert answer.spoken.startswith(begins)
    assert not answer.text.startswith(begins[:9])


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("which failures leave me without autobrake", "No autobrake. Any one of these three leads to it: System two "
         "lost, the brake controller failed, or the anti-skid switch off."),
        ("what puts me in emergency braking", "Emergency braking. Any one of these three leads to it. one, System one "
         "lost and System two lost. two, System one lost and the brake controller failed. three, "),
        ("which single failure puts me in emergency braking", "It takes at least two together, in one of three ways. "
         "one, System one lost and System two lost. two, "),
        ("both systems are normal, yet anti-skid is not working: what can cause that",
         "Given System one normal and System two normal, either of these leads to it: "
         "the brake controller failed, or the anti-skid switch off."),
    ],
)  # fmt: skip
def test_causes_are_counted_and_told_apart(knowledge: Knowledge, question: str, told: str) -> None:
    answer, _ = answer_turn(question, Context(), knowledge)

    assert told in answer.spoken
    assert "; " in answer.text


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("when is the crew hotel booked", "explains the words "),
        ("where is the galley", "explains the word galley."),
        ("park brk accu min", "Which is it: the accumulator charged, or the accumulator empty?"),
    ],
)
def test_marks_for_the_eye_are_put_in_words(knowledge: Knowledge, question: str, told: str) -> None:
    answer, _ = answer_turn(question, Context(), knowledge)

    assert told in answer.spoken


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("how deep must water be for dynamic hydroplaning", "Airplane Flying Handbook, chapter nine."),
        ("pedal limit at 95 kt", "A O M thirty-two point fifty point three, revision seven."),
    ],
)
def test_a_published_source_is_told_by_its_title(knowledge: Knowledge, question: str, told: str) -> None:
    _, context = answer_turn(question, Context(), knowledge)
    answer, _ = answer_turn("where does it say that", context, knowledge)

    assert answer.spoken.endswith(told)
    assert "revision" in answer.text
