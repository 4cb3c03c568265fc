"""Cooling of a lumped mass towards the outside air: Newton's law of cooling, one time constant.

Source: the definition of a first-order lag, T(t) = Ta + (T0 - Ta) exp(-t / tau). Temperatures share one
scale (K or degC), times share one unit.
"""

from math import exp, log

from assistant.physics.errors import OutOfRange


def temperature_after(start: float, outside: float, time_constant: float, time: float) -> float:
    """Return the temperature after a time."""
    _check(time_constant)
    if time < 0:
        raise OutOfRange("a time is not below zero")
    return outside + (start - outside) * exp(-time / time_constant)


def time_to_reach(start: float, target: float, outside: float, time_constant: float) -> float:
    """Return the time to cool (or warm) from start to target; zero when they are equal.

    Raises OutOfRange for a target that is never reached: the outside temperature itself, one beyond it, or
    one that lies the other way ("already cooler" is for the caller to say).
    """
    _check(time_constant)
    if start == target:
        return 0.0
    if start > target > outside or start < target < outside:
        return time_constant * log((start - outside) / (target - outside))
    if abs(target - outside) > abs(start - outside) and (target > outside) == (start >= outside):
        raise OutOfRange("the target is farther from the outside temperature than the start is")
    raise OutOfRange("the target is not between the start and the outside temperature: never reached")


def start_for(target: float, outside: float, time_constant: float, time: float) -> float:
    """Return the temperature that cools to the target in a time: inverse of `temperature_after`."""
    _check(time_constant)
    if time < 0:
        raise OutOfRange("a time is not below zero")
    return outside + (target - outside) * exp(time / time_constant)


def _check(time_constant: float) -> None:
    if not time_constant > 0:
        raise OutOfRange("the time constant must be above zero")
