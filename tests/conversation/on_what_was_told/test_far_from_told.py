"""A turn is asked back where it would be answered from elsewhere, and keeps the quantity that was told last."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    "turns",
    [
        (
            "how far is it from the nose wheel to the mains",
            "and side to side",
            "is that to the middle of each leg or the outside edge",
            "what does the whole thing weigh empty",
            "ok how long is that first one on the one twenty l",
        ),
    ],
)
def test_what_stands_elsewhere_is_offered_and_not_told(talk: Talk, turns: tuple[str, ...]) -> None:
    assert talk(*turns)[-1].outcome != "answer"


@pytest.mark.parametrize(
    ("turns", "entry"),
    [
        (("main tyre pressure", "and where are the ground lock pins stowed"), "ground-lock-pins-stowed"),
        (("how long does a normal retraction take", "steer lost procedure?"), "steer-lost-procedure"),
        (("autobrake on a contaminated runway?", "what deceleration is that"), "autobrake-full-deceleration"),
        (("brake heat colour?", "ok, next: nose tyre pressure"), "nose-tyre-pressure"),
    ],
)
def test_another_question_is_answered_after_any(talk: Talk, turns: tuple[str, ...], entry: str) -> None:
    assert talk(*turns)[-1].entry == entry


@pytest.mark.parametrize(
    ("turns", "entry"),
    [
        (("vlo extension", "how many seconds does that take", "and going up"), "retraction-time"),
        (("vlo retraction", "how long does it take", "and coming down"), "extension-time"),
        (("vlo retraction", "how long does it take", "and by gravity"), "free-fall-time"),
        (("max speed for lowering the gear", "seconds for that", "raising"), "retraction-time"),
        (("vlo extension", "how long does it take", "max speed going up"), "vlo-retraction"),
    ],
)
def test_a_turn_that_asks_for_no_quantity_keeps_the_one_told(talk: Talk, turns: tuple[str, ...], entry: str) -> None:
    assert talk(*turns)[-1].entry == entry


@pytest.mark.parametrize(
    ("turns", "said"),
    [
        (("pedal steering at 40 knots", "60", "say again forty"), "7.0°"),
        (("tiller at 20 kt", "35", "say again at 20"), "61.1°"),
        (("tiller at 20 kt", "35", "say again"), "40.6°"),
        (("main tyre pressure", "repeat the figure"), "190 psi"),
        (("autobrake target for FIRM", "from?"), "AOM 32.44.4"),
        (("what pressure does the parking brake lever give fully set", "where does it get that from"), "accumulator"),
        (("what pressure does the parking brake lever give fully set", "where does it say that"), "AOM 32.40.7"),
        (("does autobrake work in alternate", "why not"), "only with NORMAL"),
        (("can i have autobrake in emergency", "why"), "only with NORMAL"),
        (("will autobrake arm in alternate", "how much pedal knocks it off"), "40%"),
        (("what disarms autobrake", "how would i see that it has dropped out"), "AUTOBRAKE OFF"),
    ],
)
def test_what_is_said_again_and_where_it_comes_from(talk: Talk, turns: tuple[str, ...], said: str) -> None:
    assert said in talk(*turns)[-1].text
