"""A greeting or an excuse beside the question is no part of it; what names another subject is."""

from __future__ import annotations

import pytest

from assistant.answering.answer import ANSWER, DECLINE
from assistant.conversation.context import Context
from assistant.conversation.turn import answer_turn
from assistant.resolving.knowing import Knowledge


@pytest.mark.parametrize(
    "text",
    [
        "Greetings from Oslo. How long does the gear need to retract?",
        "My oral is on Friday, be gentle! How long does the gear need to retract?",
        "hi my name is bob and im a bit rusty on all this how many seconds does the gear take to come up",
    ],
)
def test_what_is_said_beside_the_question_does_not_keep_it_from_being_understood(
    text: str, knowledge: Knowledge
) -> None:
    answer, _ = answer_turn(text, Context(), knowledge)
    assert answer.outcome == ANSWER
    assert answer.entry == "retraction-time"
    assert answer.question == text


@pytest.mark.parametrize(
    "text",
    ["My catering truck is late. How fast can it drive?", "the yacht, max speed with gear down"],
)
def test_a_sentence_that_the_question_speaks_of_is_no_chatter(text: str, knowledge: Knowledge) -> None:
    assert answer_turn(text, Context(), knowledge)[0].outcome == DECLINE


@pytest.mark.parametrize(
    ("text", "entry"),
    [
        ("The chap on the headset wears a red scarf and wants to push. No bypass pin. May he?", "pushback-without-pin"),
        ("Bit of a thump at 95 kt on the roll, we reckon a tyre burst. What now?", "tyre-burst-bands"),
        ("The horn is on with the flaps half out on approach. Any way to quieten it?", "gear-horn-silence"),
        ("as fleet manager I want the towing limit", "towing-limit-shown"),
    ],
)
def test_a_word_that_nothing_explains_bars_nothing_in_a_sentence_that_only_tells(
    text: str, entry: str, knowledge: Knowledge
) -> None:
    assert answer_turn(text, Context(), knowledge)[0].entry == entry


@pytest.mark.parametrize(
    "text",
    [
        "The seat motor is broken. How fast does it move?",
        "The tow bar came loose and its shear pin is 12 mm. Is that enough?",
        "There's a crosswind of 30 knots. Is that within limits?",
    ],
)
def test_what_the_question_points_at_or_what_has_a_figure_still_bars(text: str, knowledge: Knowledge) -> None:
    assert answer_turn(text, Context(), knowledge)[0].outcome == DECLINE


@pytest.mark.parametrize(
    "who", ["The chief pilot wrote to me", "our fleet manager told us", "my old flight instructor claims"]
)
def test_who_is_quoted_is_no_part_of_the_question(who: str, knowledge: Knowledge) -> None:
    text = f"{who} that 1,500 psi is enough to rely on the parking brake, right?"
    answer, _ = answer_turn(text, Context(), knowledge)
    assert answer.text.startswith("Outside LIM 3.2")


@pytest.mark.parametrize("text", ["who is the chief pilot", "the chief pilot said the crosswind limit is 30, right?"])
def test_what_is_asked_of_somebody_or_quoted_of_another_subject_is_declined(text: str, knowledge: Knowledge) -> None:
    assert answer_turn(text, Context(), knowledge)[0].outcome == DECLINE


@pytest.mark.parametrize("text", ["what do i do when both packs fail", "How fast may the tractor go when it tows us?"])
def test_what_fits_too_little_is_not_asked_back(text: str, knowledge: Knowledge) -> None:
    assert answer_turn(text, Context(), knowledge)[0].outcome == DECLINE


def test_what_the_tyres_can_do_is_no_burst(knowledge: Knowledge) -> None:
    assert answer_turn("how fast can the tyres go over the ground", Context(), knowledge)[0].text.startswith("195 kt")
