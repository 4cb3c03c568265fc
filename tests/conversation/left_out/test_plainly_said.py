"""Sounds of thinking, pauses written out and the number of a pasted list are no words of a question."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer
from assistant.conversation.context import Context
from assistant.conversation.left_out.plainly_said import plainly_said

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("um what is the er tiller limit", "what is the tiller limit"),
        ("does losing System ... 2 affect steering", "does losing System 2 affect steering"),
        ("4) what is VLE for the 120L", "what is VLE for the 120L"),
        ("Q2. how long is the wheelbase", "how long is the wheelbase"),
        ("- which memo shows before pushback", "which memo shows before pushback"),
        ("it is sort of hot, you know, at the brakes", "it is hot, at the brakes"),
        ("which kind of hydroplaning needs deep water", "which kind of hydroplaning needs deep water"),
        ("do you know the tiller limit", "do you know the tiller limit"),
        ("um", "um"),
        ("1.", "1."),
        ("2) the second", "2) the second"),
        ("10. 5 kt", "10. 5 kt"),
    ],
)
def test_what_is_no_word_is_left_out(text: str, said: str) -> None:
    assert plainly_said(text, Context()) == said


def test_a_number_that_may_choose_stays(talk: Talk) -> None:
    first, second = talk("how long does the gear take", "1.")
    assert first.choices
    assert not second.choices


@pytest.mark.parametrize(
    ("text", "entry"),
    [
        ("3. Um, what is the, er, maximum speed for a free-fall extension?", "free-fall-speed"),
        ("hmm where is the brake ... dial", "brake-dial-location"),
    ],
)
def test_the_question_is_answered_and_kept_as_it_was(talk: Talk, text: str, entry: str) -> None:
    (answer,) = talk(text)
    assert (answer.entry, answer.question) == (entry, text)
