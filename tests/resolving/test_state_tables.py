"""The type's state tables, cell by cell, against a second reading of its manual as plain conditions."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from itertools import combinations, product

import pytest

from assistant.conversation.opening import Knowledge
from assistant.knowledge.records import StateTable
from assistant.resolving.tables import minimal_sets, outputs, states_with

State = Mapping[str, str]
Reading = Callable[[State], dict[str, str]]

VALUES = {
    "system_1": ("normal", "lost"),
    "system_2": ("normal", "lost"),
    "accumulator": ("charged", "empty"),
    "brake_controller": ("healthy", "failed"),
    "anti_skid_switch": ("on", "off"),
    "steering_controller": ("healthy", "failed"),
    "steer_switch": ("on", "off"),
    "bypass_pin": ("removed", "inserted"),
    "free_fall_lever": ("stowed", "pulled"),
    "nose_leg": ("on_ground", "in_air"),
    "pedal_button": ("released", "held"),
}


def braking(state: State) -> dict[str, str]:
    """AOM 32.40: the mode is what the pressure and the protection that are left allow."""
    protected = state["brake_controller"] == "healthy" and state["anti_skid_switch"] == "on"
    if protected and state["system_2"] == "normal":
        mode, technique, bars = "normal", "normal_pedals", "white"
    elif state["system_1"] == "normal":
        mode, technique, bars = "alternate", "longer_stop" if protected else "low_pressure", "amber"
    elif state["accumulator"] == "charged":
        mode, technique, bars = "emergency", "low_steady_six", "amber"
    else:
        mode, technique, bars = "none", "no_brakes", "blank"
    anti_skid = "yes" if protected and mode in ("normal", "alternate") else "no"
    autobrake = "yes" if mode == "normal" else "no"
    return {
        "mode": mode, "anti_skid": anti_skid, "autobrake": autobrake, "bars": bars, "technique": technique,
    }  # fmt: skip


def steering(state: State) -> dict[str, str]:
    """AOM 32.50: what the nose wheels obey."""
    unpowered = (
        state["steer_switch"] == "off"
        or state["system_1"] == "lost"
        or state["steering_controller"] == "failed"
        or state["free_fall_lever"] == "pulled"
    )
    if state["nose_leg"] == "in_air":
        obeys = "centred"
    elif unpowered or state["bypass_pin"] == "inserted":
        obeys = "castoring"
    else:
        obeys = "tillers_only" if state["pedal_button"] == "held" else "tillers_and_pedals"
    return {"steering": obeys, "pedals_steer": "yes" if obeys == "tillers_and_pedals" else "no"}


def parking_brake(state: State) -> dict[str, str]:
    """AOM 32.40: System 1 or the accumulator holds it."""
    held = state["system_1"] == "normal" or state["accumulator"] == "charged"
    return {"holds": "yes" if held else "no"}


READINGS: dict[str, tuple[Reading, tuple[str, ...]]] = {
    "braking": (
        braking,
        ("system_1", "system_2", "accumulator", "brake_controller", "anti_skid_switch"),
    ),
    "steering": (
        steering,
        (
            "system_1", "steering_controller", "steer_switch", "bypass_pin", "free_fall_lever", "nose_leg",
            "pedal_button",
        ),
    ),
    "parking_brake": (parking_brake, ("system_1", "accumulator")),
}  # fmt: skip


def all_states(names: tuple[str, ...]) -> list[dict[str, str]]:
    return [dict(zip(names, chosen, strict=True)) for chosen in product(*(VALUES[n] for n in names))]


@pytest.mark.parametrize("name", READINGS)
def test_the_inputs_are_those_of_the_manual_normal_first(knowledge: Knowledge, name: str) -> None:
    table: StateTable = knowledge.base.records[name]

    assert set(table.inputs) == set(READINGS[name][1])
    for each in table.inputs:
        assert tuple(v for v, _, _ in knowledge.base.inputs[each].values) == VALUES[each]


@pytest.mark.parametrize(("name", "cells"), [("braking", 32), ("steering", 128), ("parking_brake", 4)])
def test_every_cell(knowledge: Knowledge, name: str, cells: int) -> None:
    table: StateTable = knowledge.base.records[name]
    reading, names = READINGS[name]
    states = all_states(names)

    assert len(states) == cells
    for state in states:
        assert outputs(table, state, knowledge.base) == reading(state), state


@pytest.mark.parametrize("name", READINGS)
def test_what_is_not_said_is_normal(knowledge: Knowledge, name: str) -> None:
    table: StateTable = knowledge.base.records[name]
    reading, names = READINGS[name]
    normal = {each: VALUES[each][0] for each in names}

    for each in names:
        assert outputs(table, {each: VALUES[each][1]}, knowledge.base) == reading({**normal, each: VALUES[each][1]})


RESULTS = [
    (name, output, value)
    for name, (reading, names) in READINGS.items()
    for output, value in sorted({pair for state in all_states(names) for pair in reading(state).items()})
]


def brute_force(reading: Reading, names: tuple[str, ...], output: str, value: str) -> set[frozenset[str]]:
    """The sets of abnormal inputs that lead to a result, none of whose proper subsets does."""

    def leads(abnormal: frozenset[str]) -> bool:
        state = {name: VALUES[name][name in abnormal] for name in names}
        return reading(state)[output] == value

    subsets = [frozenset(c) for size in range(len(names) + 1) for c in combinations(names, size)]
    leading = [s for s in subsets if leads(s)]
    return {s for s in leading if not any(other < s for other in leading)}


@pytest.mark.parametrize(("name", "output", "value"), RESULTS)
def test_minimal_sets_are_those_of_brute_force(knowledge: Knowledge, name: str, output: str, value: str) -> None:
    reading, names = READINGS[name]

    found = minimal_sets(knowledge.base.records[name], output, value, knowledge.base)

    assert {frozenset(n for n, _ in chosen) for chosen in found} == brute_force(reading, names, output, value)
    assert len(found) == len(set(found))
    assert all(v == VALUES[n][1] for chosen in found for n, v in chosen)


@pytest.mark.parametrize(("name", "output", "value"), RESULTS)
def test_every_state_with_a_result_is_found(knowledge: Knowledge, name: str, output: str, value: str) -> None:
    reading, names = READINGS[name]
    expected = [state for state in all_states(names) if reading(state)[output] == value]

    found = states_with(knowledge.base.records[name], output, value, knowledge.base)

    assert sorted(map(sorted_items, found)) == sorted(map(sorted_items, expected))


def sorted_items(state: State) -> list[tuple[str, str]]:
    return sorted(state.items())


def test_no_brakes_takes_both_supplies_and_the_accumulator(knowledge: Knowledge) -> None:
    found = minimal_sets(knowledge.base.records["braking"], "mode", "none", knowledge.base)

    assert {frozenset(n for n, _ in chosen) for chosen in found} == {
        frozenset({"system_1", "accumulator", third}) for third in ("system_2", "brake_controller", "anti_skid_switch")
    }


def test_given_inputs_hold_and_are_not_listed(knowledge: Knowledge) -> None:
    table = knowledge.base.records["braking"]

    found = minimal_sets(table, "mode", "emergency", knowledge.base, {"system_1": "lost"})

    assert set(found) == {
        (("system_2", "lost"),),
        (("brake_controller", "failed"),),
        (("anti_skid_switch", "off"),),
    }
