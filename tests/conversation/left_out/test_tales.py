"""Tales of another day before a question: they keep no answer from it, and what it points back at is kept."""

from __future__ import annotations

import pytest

from assistant.answering.answer import ANSWER, Answer
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn


def ask(text: str, knowledge: Knowledge) -> Answer:
    return answer_turn(text, Context(), knowledge)[0]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("my uncle flew a flying boat with no wheels at all so what is the wheelbase of this aeroplane", "wheelbase"),
        ("we once queued behind a combine harvester on the taxiway what is the tiller limit at twenty knots", "°"),
        ("I remember a hangar cat that slept on warm tyres. How much chrome should a main strut show here?", "60"),
        ("in my gliding days we landed on thistles how long does a normal extension take on this one", "9 s"),
    ],
)
def test_a_question_behind_a_tale_is_asked_by_itself(knowledge: Knowledge, text: str, told: str) -> None:
    answer = ask(text, knowledge)

    assert answer.outcome == ANSWER
    assert told in answer.text


def test_what_a_question_points_back_at_is_kept(knowledge: Knowledge) -> None:
    answer = ask(
        "the bagpiper watched us roll in once and the hottest brake said four hundred and thirty and they "
        "wanted the parking brake left on for half an hour would that be allowed here",
        knowledge,
    )

    assert answer.outcome == ANSWER
    assert "400" in answer.text
    assert answer.text.startswith("Outside")


@pytest.mark.parametrize(
    "text",
    [
        "my cousin flew a crop sprayer with a broken windscreen wiper what is the price of this one",
        "the compressor failed on us one night over the sea so which braking mode would we have",
        "my aunt once drove a steam engine through a barn how tall is the chimney on this one",
    ],
)
def test_what_no_record_knows_stays_unanswered(knowledge: Knowledge, text: str) -> None:
    assert ask(text, knowledge).outcome != ANSWER
