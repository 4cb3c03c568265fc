"""One of several, how far apart readings are, and a "so" that only leads on."""

from __future__ import annotations

import pytest

from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn


@pytest.mark.parametrize(
    ("text", "told", "untold"),
    [
        ("50 tonnes rejected at 110 kt, one of its four brakes dead, temperature rise of each brake", "three", "321"),
        ("both full right pedal at fifty knots, nobody is touching the tiller, so how many degrees", "6.0°", "26"),
        ("We are at 234 kt with the gear still up. May I select it down?", "230 kt", "255"),
        ("hottest brake 245, the other three within 20 degrees of it, may the take-off begin?", "Within", "Outside"),
        ("what if a tyre is set to 190 psi at 20 °C, what would the gauge say at minus 20?", "162 psi", "222"),
    ],
)
def test_what_is_said_of_some_is_no_number_of_all(knowledge: Knowledge, text: str, told: str, untold: str) -> None:
    answer = answer_turn(text, Context(), knowledge)[0]

    assert told in answer.text
    assert untold not in answer.text
