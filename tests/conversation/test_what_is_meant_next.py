"""What a short turn means after what was told: the same quantity, another outcome, the step beside one, what lacks."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("turns", "entry"),
    [
        (("time for a free fall", "and retraction"), "retraction-time"),
        (("how long does a free-fall extension take", "and a normal one", "and raising it"), "retraction-time"),
        (("free-fall speed limit", "and a normal extension"), "vlo-extension"),
        (("will the doors close after a free fall", "can I raise it again in flight"), "free-fall-retract"),
        (("is there steering after a free fall", "may I raise it again in flight", "who can"), "free-fall-retract"),
        (("what is the time constant of cooling with fans", "how long without?"), "cooling-time-constant"),
        (("when does the accumulator count as empty", "what shows its pressure"), "brake-dial-shows"),
        (("where is the parking brake lever", "what tells me it's set"), "park-brake-set-memo"),
        (("how hot before chocks are asked for", "and when does the caution come on"), "brake-heat-temperature"),
        (("BRAKE HEAT on the ground", "and in the air"), "brake-heat-flight"),
        (("autobrake steady, when does it start", "how hard"), "autobrake-steady-deceleration"),
        (("how many times as high is the hydroplaning speed at four times the pressure",), "hydroplaning-square-law"),
        (("does an underinflated tyre hydroplane at a higher or lower speed",), "hydroplaning-square-law"),
        (("brake from 350 to 200, 10 outside, fans on: how long", "why the 2 min on top"), "fans-off-time"),
    ],
)
def test_the_record_that_is_meant(talk: Talk, turns: tuple[str, ...], entry: str) -> None:
    assert talk(*turns)[-1].entry == entry


@pytest.mark.parametrize(
    ("turns", "text"),
    [
        (("steps for a free-fall extension", "what comes after three green"), "Expect open doors"),
        (("steps for a free-fall extension", "what do I do after the pull"), "Wait 20 s"),
        (("no braking on landing", "what follows anti-skid off"), "Both pilots' pedals"),
        (("no braking on landing", "what comes before the pedals"), "ANTI-SKID OFF"),
        (("anti-skid lost procedure", "what's next after no autobrake"), "800 psi"),
        (("the gear lever will not move up after take-off", "and if it stays put"), "leave the gear down and return"),
    ],
)
def test_the_step_beside_the_one_named(talk: Talk, turns: tuple[str, ...], text: str) -> None:
    assert talk(*turns)[-1].text.startswith(text) or text in talk(*turns)[-1].text.partition(". That is")[0]


@pytest.mark.parametrize(
    ("turns", "holds", "lacks"),
    [
        (("which single failures cost me the autobrake", "and the parking brake"), "does not hold", "autobrake"),
        (("what failures take away anti-skid", "and the steering"), "castor", "anti-skid"),
        (("what single failure loses the nose steering", "and anti-skid"), "anti-skid", "steer"),
        (("what would make the nose wheels castor", "and lose the autobrake"), "autobrake", "castor"),
        (("what takes the autobrake away", "and pedal steering"), "pedals do not steer", "autobrake"),
    ],
)
def test_another_outcome_takes_the_place_of_the_last(
    talk: Talk, turns: tuple[str, ...], holds: str, lacks: str
) -> None:
    text = talk(*turns)[-1].text.lower()
    assert holds in text
    assert lacks not in text


@pytest.mark.parametrize(
    ("turn", "said", "value"),
    [
        ("rto from 130 knots, how much energy goes into each brake", "54 tonnes", 30.19),
        ("rejected take-off at 115 kt, how many megajoules does each brake take", "it's 52 t", 22.75),
    ],
)
def test_what_a_calculation_lacks_is_asked_back(talk: Talk, turn: str, said: str, value: float) -> None:
    first, second = talk(turn, said)
    assert (first.outcome, first.needs) == ("clarify", ("mass",)) or first.outcome == "clarify"
    assert second.values[0].value == pytest.approx(value, abs=0.01)


@pytest.mark.parametrize(
    ("turns", "value"),
    [
        (("brake from 400 to 250 with fans, 20 outside, how long", "how long without?"), 22.59),
        (("cooling from 350 to 250 no fans 15 outside", "and with?"), 4.25),
        (("landing 45 tonnes 120 knots with full reverse, energy per brake", "how much without?"), 19.29),
    ],
)
def test_with_and_without_turn_a_choice_round(talk: Talk, turns: tuple[str, ...], value: float) -> None:
    assert talk(*turns)[-1].values[0].value == pytest.approx(value, abs=0.01)


@pytest.mark.parametrize("turn", ["stopping distance?", "stopping time?"])
def test_amounts_of_another_quantity_are_not_handed_on(talk: Talk, turn: str) -> None:
    assert talk("brake from 400 to 250 with fans, 20 outside, how long", turn)[-1].outcome == "clarify"


@pytest.mark.parametrize(
    ("turns", "source"),
    [
        (("minimum accumulator pressure for the parking brake", "where's the two thousand limit written"), "LIM"),
        (("can I lower the gear at 240", "where is the two thirty limit written"), "LIM"),
        (("taxi speed in a sharp turn", "which document has the 10 knots"), "SOP"),
    ],
)
def test_the_source_of_a_figure_named(talk: Talk, turns: tuple[str, ...], source: str) -> None:
    assert talk(*turns)[-1].text.startswith(source)


@pytest.mark.parametrize(
    ("turns", "text"),
    [
        (("what's on target", "was it always 85"), "formerly 90%"),
        (("taxi speed straight", "was it always 25"), "Nothing loaded says that it was ever another"),
    ],
)
def test_whether_a_figure_was_always_so(talk: Talk, turns: tuple[str, ...], text: str) -> None:
    assert text in talk(*turns)[-1].text


def test_what_was_declined_is_said_again(talk: Talk) -> None:
    turns = "max speed to retract", "what's the captain's salary", "repeat that", "and to extend"
    _, declined, again, after = talk(*turns)
    assert again.text == declined.text
    assert again.outcome == "decline"
    assert after.entry == "vlo-extension"


@pytest.mark.parametrize("turn", ["how many brakes do we have", "how many brakes have we got"])
def test_how_many_there_are_is_counted(talk: Talk, turn: str) -> None:
    assert talk(turn)[-1].entry == "brake-count"


@pytest.mark.parametrize(
    ("turns", "value"),
    [
        (("total order with 20 right tiller and full right pedals at 40", "pavement width at 60"), 31.96),
        (("stopping distance with FIRM from 130", "how long does it take"), 31.08),
        (("rto 52 t 110 kt: energy into each brake", "how hot do they get from 60"), 393.6),
        (("kinetic energy at 50 tonnes and 120 knots", "per brake in an RTO", "how hot from 80"), 461.7),
    ],
)
def test_another_calculation_is_made_of_what_it_takes(talk: Talk, turns: tuple[str, ...], value: float) -> None:
    assert talk(*turns)[-1].values[0].value == pytest.approx(value, abs=0.1)


@pytest.mark.parametrize(
    ("turns", "text"),
    [
        (("what does system 1 power", "what if it fails"), "no steering"),
        (("what runs on system 2", "suppose that's lost"), "ALTERNATE"),
        (("what does the brake controller do", "what if it fails"), "without anti-skid"),
        (("what does the brake controller do", "what if it fails", "do I keep the autobrake"), "No autobrake"),
        (("landing brief items", "what's the third"), "the exit"),
    ],
)
def test_what_follows_where_it_fails(talk: Talk, turns: tuple[str, ...], text: str) -> None:
    assert text in talk(*turns)[-1].text
