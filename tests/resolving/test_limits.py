"""Every limit of LIM exactly at it, just above and just below: exactly at a limit is within it."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

import pytest

from assistant.answering.answer import ANSWER, Answer
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import question_of
from assistant.knowledge.records import Limit
from assistant.quantities.amounts import Amount
from assistant.resolving.limits import bound_value, check

Ask = Callable[[str], Answer]


class Case(NamedTuple):
    """A limit as the data sheet states it, a question with a gap for the amount, and what is just off it."""

    question: str
    limit: float
    step: float
    source: str
    least: bool = False

    def said(self, amount: float) -> str:
        shown = f"{amount:,.2f}".rstrip("0").rstrip(".") if amount % 1 else f"{amount:,.0f}"
        return self.question.format(shown)


CASES = [
    Case("can I extend the gear at {} kt?", 230, 1, "LIM 3.1"),
    Case("can I retract the gear at {} kt?", 205, 1, "LIM 3.1"),
    Case("is {} kt with the gear down allowed?", 255, 1, "LIM 3.1"),
    Case("is Mach {} with the gear down allowed?", 0.60, 0.01, "LIM 3.1"),
    Case("can I extend the gear at {} ft?", 20_000, 1, "LIM 3.1"),
    Case("free-fall extension at {} kt, ok?", 190, 1, "LIM 3.1"),
    Case("tyre ground speed {} kt, allowed?", 195, 1, "LIM 3.1"),
    Case("can we take off at a mass of {} kg?", 56_000, 1, "LIM 3.1"),
    Case("can we land at a mass of {} kg?", 50_000, 1, "LIM 3.1"),
    Case("brake temperature {} °C, can I take off?", 250, 1, "LIM 3.2"),
    Case("brake temperature {} °C, may I set the parking brake?", 400, 1, "LIM 3.2"),
    Case("without anti-skid, can I hold {} psi?", 800, 1, "LIM 3.2"),
    Case("accumulator at {} psi, can I rely on the parking brake?", 2_000, 1, "LIM 3.2", least=True),
    Case("is a parking brake stay of {} h on the accumulator ok?", 10, 1, "LIM 3.2"),
    Case("pedal steering deflection {} degrees, allowed?", 8, 0.1, "LIM 3.2"),
    Case("towing at a nose-wheel angle of {} degrees with the torque link connected, ok?", 85, 1, "LIM 3.2"),
    Case("on the 120L, brake temperature {} °C, can I take off?", 230, 1, "AOM 32.01.6"),
    Case("can the 120L take off at a mass of {} kg?", 61_500, 1, "AOM 32.01.4"),
    Case("can the 120L land at a mass of {} kg?", 54_000, 1, "AOM 32.01.4"),
]


@pytest.mark.parametrize("case", CASES, ids=lambda c: f"{c.limit:g}")
@pytest.mark.parametrize("steps", [-1, 0, 1], ids=["below", "at", "above"])
def test_a_limit_in_words(ask: Ask, case: Case, steps: int) -> None:
    given = case.limit + steps * case.step
    within = steps == 0 or (steps > 0) == case.least

    answer = ask(case.said(given))

    assert answer.outcome == ANSWER
    assert answer.text.startswith(f"{'Within' if within else 'Outside'} {case.source}"), answer.text
    assert [v.value for v in answer.values[:3]] == pytest.approx([case.limit, given, abs(given - case.limit)])


def test_no_verdict_is_a_bare_yes(ask: Ask) -> None:
    for case in CASES:
        text = ask(case.said(case.limit)).text.lower()
        assert not text.startswith(("yes", "ok", "no problem"))


def _limits(knowledge: Knowledge) -> list[tuple[str, str, Limit]]:
    return [
        (name, variant, record)
        for name in knowledge.base.ids("limits")
        for variant in knowledge.variants
        if isinstance(record := knowledge.record(name, variant), Limit) and (record.maximum or record.minimum)
    ]


def test_every_bound_of_the_knowledge_is_inclusive(knowledge: Knowledge) -> None:
    """All maxima and minima, of both variants, at their figure and a hair to either side."""
    found = _limits(knowledge)
    assert len(found) > 40

    for name, variant, limit in found:
        question = question_of("", knowledge, variant)
        for bound, least in ((limit.maximum, False), (limit.minimum, True)):
            if bound is None:
                continue
            hair = max(abs(bound.value), 1) * 1e-6
            for offset, within in ((0.0, True), (hair, least), (-hair, not least)):
                amount = Amount(0, 1, bound.value + offset, bound.unit, "", False, False)
                result = check(limit, amount, question, knowledge)
                assert result is not None
                assert result.within is within, (name, variant, offset)


def test_a_limit_is_the_figure_of_the_data_sheet(knowledge: Knowledge) -> None:
    stated = {
        "vlo-extension": (230, "kt"), "vlo-retraction": (205, "kt"), "vle": (255, "kt"),
        "vle-mach": (0.60, "Mach"), "extension-altitude": (20_000, "ft"), "free-fall-speed": (190, "kt"),
        "tyre-speed": (195, "kt"), "take-off-mass": (56_000, "kg"), "landing-mass": (50_000, "kg"),
        "brake-temperature-takeoff": (250, "degC"), "brake-temperature-parking-brake": (400, "degC"),
        "brake-heat-temperature": (350, "degC"), "fuse-plug-temperature": (185, "degC"),
        "pressure-without-anti-skid": (800, "psi"), "accumulator-parking-minimum": (2_000, "psi"),
        "full-applications": (6, "count"), "parking-brake-hold-time": (10, "h"),
        "main-tyre-pressure": (190, "psi"), "nose-tyre-pressure": (140, "psi"), "tiller-maximum": (68, "deg"),
        "pedal-maximum": (8, "deg"), "towing-angle": (85, "deg"),
    }  # fmt: skip
    for name, (value, unit) in stated.items():
        bound = bound_value(knowledge.base.records[name])
        assert bound is not None
        assert (bound.value, bound.unit) == (value, unit), name
    long_body = {
        "wheelbase": 15.4, "main-tyre-pressure": 205, "tiller-maximum": 72, "take-off-mass": 61_500,
        "landing-mass": 54_000, "heat-sink-mass": 53, "brake-temperature-takeoff": 230,
    }  # fmt: skip
    for name, figure in long_body.items():
        bound = bound_value(knowledge.record(name, "120L"))
        assert bound is not None
        assert bound.value == figure, name


@pytest.mark.parametrize(
    ("question", "verdict"),
    [
        ("is 225 kt with the gear down ok at 30,000 ft?", "Outside"),
        ("is 222 kt with the gear down ok at 30,000 ft?", "Within"),
        ("is 254 kt with the gear down ok at 10,000 ft?", "Within"),
    ],
)
def test_gear_down_takes_the_lower_of_speed_and_mach(ask: Ask, question: str, verdict: str) -> None:
    """Mach 0.60 is 222.96 kt at 30,000 ft, from three independent routes through the standard atmosphere."""
    assert ask(question).text.startswith(verdict)


def test_miles_are_no_height(ask: Ask) -> None:
    assert "20,000 ft" not in ask("keep 240 until four miles, then lower the gear?").text


@pytest.mark.parametrize(
    "question",
    ["below what speed does the anti-skid stop working by itself", "under what speed does anti-skid alone give up"],
)
def test_a_speed_asked_for_is_no_failure(ask: Ask, question: str) -> None:
    assert ask(question).text.startswith("12 kt")
