"""What is asked of results only under states that are given, and why a result is as it is."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("turns", "says"),
    [
        (("the accumulator is flat, which brakes?", "chocks needed?"), "The parking brake holds"),
        (("sys 1 lost and the accumulator is flat, which brakes?", "do we need chocks"), "does not hold: use chocks"),
        (("brake controller failed, mode?", "how much pressure on the pedals"), "Hold 800 psi or less"),
        (("system one lost, what do i lose?", "can i put the gear down normally"), "extends by free fall only"),
        (("system one lost, which brakes?", "wheels up on the go-around?"), "cannot be retracted in flight"),
        (("system 2 lost, does the gear retract?", "which autobrake setting can i use"), "No autobrake"),
        (("system 2 lost, which brakes?", "so have we lost antiskid as well"), "Anti-skid works"),
        (("both systems lost, which brakes?", "do i get anti-skid on this"), "No anti-skid"),
        (("system 1 lost, which brakes?", "am i without anti-skid then"), "Anti-skid works"),
        (("free fall lever pulled and nose leg still in the air, tiller?",), "centred"),
    ],
)
def test_a_result_is_asked_for_by_what_it_is_needed_for(talk: Talk, turns: tuple[str, ...], says: str) -> None:
    assert says in talk(*turns)[-1].text


@pytest.mark.parametrize(
    ("turns", "says"),
    [
        (("system 1 lost, does the tiller work?", "how come"), "System 1 runs the nose-wheel steering"),
        (("after a free fall, can i steer with the tiller", "what takes it away"), "the same valve cuts"),
        (("brake controller failed and system 2 lost, anti-skid?", "why not"), "anti-skid is its work"),
        (("STEER switch OFF, do the pedals steer?", "why's that"), "depressurises"),
        (("accumulator empty, parking brake?", "why"), "supplies the parking brake"),
    ],
)
def test_why_tells_what_the_states_do(talk: Talk, turns: tuple[str, ...], says: str) -> None:
    assert says in talk(*turns)[-1].text


@pytest.mark.parametrize(
    ("turns", "says"),
    [
        (("does system 2 count as lost at 1600 psi", "treat it as lost. braking mode?"), "ALTERNATE braking"),
        (("accumulator at 1,450 psi and System 1 normal", "suppose it is empty, does the park brake hold"), "holds"),
    ],
)
def test_it_is_told_to_have_failed_after_all(talk: Talk, turns: tuple[str, ...], says: str) -> None:
    assert says in talk(*turns)[-1].text


@pytest.mark.parametrize(
    ("turns", "says"),
    [
        (("the bypass pin is still in, tiller?", "how would i know"), "TOW PIN"),
        (("both systems lost, which brakes", "what would tell me that on the flight deck"), "RESERVE BRAKE"),
        (("the brake controller has packed up, anti-skid?", "do i get a light for it"), "ANTI-SKID LOST"),
        (("steering controller failed, what do i lose", "what would i see in the cockpit"), "STEER LOST"),
    ],
)
def test_what_shows_with_the_states_is_told(talk: Talk, turns: tuple[str, ...], says: str) -> None:
    assert says in talk(*turns)[-1].text


@pytest.mark.parametrize(
    ("turns", "says"),
    [
        (("on the accumulator alone, how many full applications", "what pressure do i hold"), "Hold 800 psi or less"),
        (("top speed for a free fall", "and for putting the gear down normally"), "230 kt"),
        (("in EMERGENCY, how do i use the pedals", "can i arm firm"), "No autobrake"),
    ],
)
def test_what_goes_with_a_result_is_told(talk: Talk, turns: tuple[str, ...], says: str) -> None:
    assert says in talk(*turns)[-1].text
