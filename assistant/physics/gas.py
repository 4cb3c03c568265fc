"""Gas charges of accumulators, tyres and struts, as an ideal gas. Gauge pressures in Pa, temperatures in K.

Source: the ideal-gas law. Real nitrogen departs from it: by a few per cent at the pressures of an
accumulator, by about one at those of a tyre.
"""

from assistant.physics.errors import OutOfRange

STANDARD_PRESSURE = 101_325.0  # Pa, ISO 2533


def gauge_pressure_at(
    gauge: float, temperature: float, new_temperature: float, ambient: float = STANDARD_PRESSURE
) -> float:
    """Return the gauge pressure of a charge of constant volume at another temperature.

    The law holds for absolute pressure, so the ambient pressure in Pa is added first and taken off again.
    """
    _absolute(temperature, new_temperature)
    if gauge + ambient <= 0:
        raise OutOfRange("an absolute pressure is above zero")
    return (gauge + ambient) * new_temperature / temperature - ambient


def temperature_for_gauge(
    gauge: float, temperature: float, new_gauge: float, ambient: float = STANDARD_PRESSURE
) -> float:
    """Return the temperature in K at which the charge shows another gauge pressure: the inverse."""
    _absolute(temperature)
    if gauge + ambient <= 0 or new_gauge + ambient <= 0:
        raise OutOfRange("an absolute pressure is above zero")
    return temperature * (new_gauge + ambient) / (gauge + ambient)


def oil_delivered(
    precharge: float, charged: float, minimum: float, ambient: float = STANDARD_PRESSURE
) -> float:
    """Return the oil an accumulator gives from charged to minimum pressure, per unit of its volume.

    Isothermal: p0 (1/p2 - 1/p1) in absolute pressures. Below the pre-charge there is no oil left to give.
    """
    p0, p1, p2 = (pressure + ambient for pressure in (precharge, charged, max(minimum, precharge)))
    if p0 <= 0 or not p2 <= p1:
        raise OutOfRange("the charged pressure must be at least the pre-charge and the minimum")
    return p0 * (1 / p2 - 1 / p1)


def _absolute(*temperatures: float) -> None:
    if not all(temperature > 0 for temperature in temperatures):
        raise OutOfRange("an absolute temperature is above zero")
