"""Find where a monotonic function takes a value, by halving a bracket: slow, and never wrong."""

from collections.abc import Callable

from assistant.physics.errors import OutOfRange


def solve_monotonic(
    function: Callable[[float], float], target: float, low: float, high: float, tolerance: float = 1e-9
) -> float:
    """Return x in [low, high] with function(x) = target, to an absolute tolerance in x.

    The function may end before high: where it is out of range, x is too high. Raises OutOfRange when the target is
    not taken between low and high.
    """
    at_low = function(low) - target
    at_high = _beyond(function, high, target)
    if at_low == 0:
        return low
    if at_high == 0:
        return high
    if at_high is not None and not at_low * at_high < 0:
        raise OutOfRange(f"no solution between {low:g} and {high:g}")
    ends = at_high is None
    while high - low > tolerance:
        middle = (low + high) / 2
        if middle in (low, high):  # neighbouring floats: as near as it gets
            break
        at_middle = _beyond(function, middle, target)
        if at_middle is not None and at_middle * at_low > 0:
            low = middle
        else:
            high, ends = middle, at_middle is None
    if ends:
        function(high)  # tells why the relation ends there
    return (low + high) / 2


def _beyond(function: Callable[[float], float], x: float, target: float) -> float | None:
    """Return by how much the function exceeds the target, or None where it is out of range."""
    try:
        return function(x) - target
    except OutOfRange:
        return None
