"""Find where a monotonic function takes a value, by halving a bracket: slow, and never wrong."""

from collections.abc import Callable

from assistant.physics.errors import OutOfRange


def solve_monotonic(
    function: Callable[[float], float], target: float, low: float, high: float, tolerance: float = 1e-9
) -> float:
    """Return x in [low, high] with function(x) = target, to an absolute tolerance in x.

    Raises OutOfRange when the target is not taken between low and high.
    """
    at_low, at_high = function(low) - target, function(high) - target
    if at_low == 0:
        return low
    if at_high == 0:
        return high
    if not at_low * at_high < 0:
        raise OutOfRange(f"no solution between {low:g} and {high:g}")
    while high - low > tolerance:
        middle = (low + high) / 2
        if middle in (low, high):  # neighbouring floats: as near as it gets
            break
        if (function(middle) - target) * at_low > 0:
            low = middle
        else:
            high = middle
    return (low + high) / 2
