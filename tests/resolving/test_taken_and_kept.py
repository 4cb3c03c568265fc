"""What takes some results of the state tables and leaves others, in whatever words and of whatever tables."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Ask = Callable[[str], Answer]

TAKEN = [
    ("What has to go wrong before I have no decent brakes whatsoever?", "System 2 lost and the accumulator empty"),
    ("what wipes out all our braking", "System 2 lost and the accumulator empty"),
    ("causes of total brake loss", "System 2 lost and the accumulator empty"),
    ("what must break for the pedals to do nothing for braking", "System 2 lost and the accumulator empty"),
    ("what single failure kills the brakes", "No single failure"),
    ("what would take away autobrake and anti-skid in one go", "No autobrake; no anti-skid"),
    ("what loses me the steering and the parking brake together", "System 1 lost and the accumulator empty"),
    ("name the faults that cost both the tillers and gear retraction", "System 1 lost; the free-fall lever pulled"),
    ("what would have to break so that I have neither anti-skid nor a parking brake", "System 1 lost, System 2 lost"),
    ("could anything take my brakes and the steering", "System 1 lost, System 2 lost and the accumulator empty"),
    ("how might we wind up on nothing but the accumulator", "System 1 lost"),
    ("when have I got no reserve brake", "below 2,000 psi"),
    ("no autobrake or anti-skid available, what failed", "No autobrake; no anti-skid, with any of these"),
    ("what's got to fail to lose NORMAL brakes and steering", "System 1 lost and System 2 lost"),
    ("what leaves me stuck with free fall", "System 1 lost"),
    ("what makes the tiller useless", "The nose wheels castor"),
]
KEPT = [
    ("why would I have proper brakes but no nosewheel steering", "System 1 lost; the steering controller", "System 2"),
    ("what puts the tillers out but not the brakes", "System 1 lost; the steering controller", "System 2"),
    ("what costs me the autobrake without losing anti-skid", "With System 2 lost", "controller"),
    ("how do I lose autobrake but keep anti-skid", "With System 2 lost", "controller"),
    ("what failure leaves the tiller but no pedal steering", "PEDAL button held", "in the air"),
    ("what would leave me gear retraction but no steering", "the bypass pin inserted", "System 1 lost"),
    ("what loses gear retraction but not the steering", "Nothing leads to it", "in the air"),
    ("steering dead, brakes fine - what did it", "the free-fall lever pulled", "System 2"),
    ("is it possible to lose anti-skid and keep autobrake", "Nothing leads to it", "controller"),
    ("what takes anti-skid away but leaves autobrake alone", "Nothing leads to it", "System 2 lost"),
]
OTHERS = [
    "what should I do without any brakes",
    "what stops me with no brakes",
    "which brakes do I have without steering",
    "how can I keep straight with no steering",
    "why no autobrake without anti-skid",
    "why has the nose wheel no brakes",
    "why no anti-skid in emergency",
    "what does the autobrake do if the steering is lost",
    "why does losing anti-skid take autobrake as well",
    "why has the parking brake no anti-skid",
    "what sequence do the brakes go in",
    "could anything stop me with no brakes",
    "if I lose the brakes why do I still have the parking brake",
    "why have I got no autobrake but still anti-skid with system 2 gone",
]


@pytest.mark.parametrize(("text", "within"), TAKEN)
def test_what_takes_a_thing_is_found_in_any_words(ask: Ask, text: str, within: str) -> None:
    assert within in ask(text).text


@pytest.mark.parametrize(("text", "within", "never"), KEPT)
def test_what_takes_one_thing_leaves_the_other(ask: Ask, text: str, within: str, never: str) -> None:
    told = ask(text).text
    assert within in told
    assert never not in told


@pytest.mark.parametrize("text", OTHERS)
def test_what_asks_for_something_else_is_told_no_causes(ask: Ask, text: str) -> None:
    assert "with any of these" not in ask(text).text
