"""Whether a number of an answer says a figure: in its own unit or another, as a share, rounded as people do."""

from __future__ import annotations

from assistant.practice.marking.points import Figure
from assistant.practice.marking.reading.said import Claim
from assistant.quantities.amounts import Amount
from assistant.quantities.units import Units
from assistant.resolving.knowing import Knowledge

_ROUNDED = 0.006


_RATIOS = ("percent", "factor", "")


def says(claim: Claim, figure: Figure, know: Knowledge) -> bool:
    """Return whether a number says a figure, in its own unit or, where that is the next number's, without one."""
    if equals(claim.amount, figure, know.units):
        return not (figure.value > 1 and claim.amount.unit == "percent" and _is_part(claim, figure))
    if claim.amount.unit == "min" and figure.unit in ("s", "h", "min"):
        return False  # minutes, and no minimum
    shared = bool(claim.carried) and claim.carried != figure.unit
    if shared and equals(claim.amount._replace(unit=claim.carried), figure, know.units):
        return True
    return claim.bare and equals(claim.amount._replace(unit=None), figure, know.units)


def _is_part(claim: Claim, figure: Figure) -> bool:
    """Return whether a share is said as one of the whole where it is one on top of it, or the other way round."""
    return figure.unit in ("factor", "") and claim.added is not (claim.amount.value < 100)


def equals(amount: Amount, figure: Figure, units: Units) -> bool:
    """Return whether an amount says a figure: exactly, within its tolerance, or converted and rounded."""
    unit = amount.unit
    if unit in (None, figure.unit, "count") or figure.unit in ("", "count"):
        if _ratio(amount, figure):
            return True
        bare = (
            unit is None or figure.unit == "" or unit == figure.unit or {unit, figure.unit} <= {"count", "factor", ""}
        )
        return bare and _near(amount.value, figure.value, figure.tolerance)
    if unit == "lb" and figure.unit == "psi":
        return _near(amount.value, figure.value, figure.tolerance)  # pounds on the gauge
    if unit in _RATIOS and figure.unit in _RATIOS:
        return _ratio(amount, figure)
    value = _converted(amount.value, str(unit), figure.unit, units)
    if value is None:
        return False
    exact = unit == figure.unit or {unit, figure.unit} <= {"deg", "degC", "K"}
    if not exact and _is_rounded(amount, figure, str(unit), units):
        return True
    return _near(value, figure.value, max(figure.tolerance, 0.0 if exact else _ROUNDED))


def _is_rounded(amount: Amount, figure: Figure, unit: str, units: Units) -> bool:
    """Return whether an amount is a figure in another unit, rounded to the places that it is given with."""
    digits = amount.raw.split()[0].replace(",", "")
    if amount.spoken or sum(c.isdigit() for c in digits) < _PLACES or not figure.unit:
        return False
    value = _converted(figure.value, figure.unit, unit, units)
    return value is not None and abs(round(value, len(digits.partition(".")[2])) - amount.value) < _DUST


_PLACES = 2
_DUST = 1e-9


def _ratio(amount: Amount, figure: Figure) -> bool:
    """Return whether a share is said in percent or as a factor: 0.85 is 85 percent, 60 % more is 1.6."""
    if amount.unit == "percent" and figure.unit in ("factor", ""):
        return any(_near(v, figure.value, figure.tolerance) for v in (amount.value / 100, 1 + amount.value / 100))
    if figure.unit == "percent" and amount.unit in ("factor", None) and amount.value < 1:
        return _near(amount.value * 100, figure.value, figure.tolerance)
    return False


def _near(value: float, wanted: float, tolerance: float) -> bool:
    return abs(value - wanted) <= max(tolerance * abs(wanted), 1e-9)


def _converted(value: float, unit: str, target: str, units: Units) -> float | None:
    if unit == "deg" and target in ("degC", "K"):
        return value
    if target == "K":
        return value if unit in ("degC", "K") else value * 5 / 9 if unit == "degF" else None
    if unit == "K":
        unit = "degC"
    if units.get(unit).dimension != units.get(target).dimension:
        return None
    return units.convert(value, unit, target)


def in_unit(amount: Amount, unit: str, units: Units) -> float | None:
    """Return an amount in a unit, None where it has none or measures something else."""
    if amount.unit == unit:
        return amount.value
    if amount.unit is None or not unit or "percent" in (amount.unit, unit):
        return None
    return _converted(amount.value, amount.unit, unit, units)


def rounded(amount: Amount, figure: Figure, units: Units) -> bool:
    """Return whether an amount says a figure but for its rounding."""
    return equals(amount, figure._replace(tolerance=max(figure.tolerance, _ROUNDED)), units)


def same_kind(amount: Amount, figure: Figure, units: Units) -> bool:
    """Return whether an amount may be meant for a figure: it measures the same."""
    if amount.unit is None:
        return True
    return (
        figure.unit not in ("", "count", "factor")
        and _converted(amount.value, amount.unit, figure.unit, units) is not None
    )
