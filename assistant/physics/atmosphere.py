"""International Standard Atmosphere to 20 km, by pressure altitude (geopotential metres).

Source of constants and layers: ICAO Doc 7488 and ISO 2533:1975, as the U.S. Standard Atmosphere 1976.
"""

from math import exp, log, sqrt

from assistant.physics.errors import OutOfRange

SEA_LEVEL_TEMPERATURE = 288.15  # K
SEA_LEVEL_PRESSURE = 101_325.0  # Pa
SEA_LEVEL_DENSITY = 1.225  # kg/m3
LAPSE_RATE = 0.0065  # K/m
TROPOPAUSE = 11_000.0  # m
CEILING = 20_000.0  # m
FLOOR = -5_000.0  # m
GRAVITY = 9.80665  # m/s2
GAS_CONSTANT = 287.05287  # J/(kg K)
HEAT_RATIO = 1.4

_EXPONENT = GRAVITY / (LAPSE_RATE * GAS_CONSTANT)
_TROPOPAUSE_TEMPERATURE = SEA_LEVEL_TEMPERATURE - LAPSE_RATE * TROPOPAUSE
_TROPOPAUSE_RATIO: float = (_TROPOPAUSE_TEMPERATURE / SEA_LEVEL_TEMPERATURE) ** _EXPONENT
_SCALE_HEIGHT = GAS_CONSTANT * _TROPOPAUSE_TEMPERATURE / GRAVITY


def temperature(altitude: float) -> float:
    """Return the standard temperature in K at a pressure altitude in m. ISO 2533, table of layers."""
    _check(altitude)
    return SEA_LEVEL_TEMPERATURE - LAPSE_RATE * min(altitude, TROPOPAUSE)


def pressure_ratio(altitude: float) -> float:
    """Return delta, pressure over sea-level pressure, at a pressure altitude in m. ISO 2533."""
    _check(altitude)
    if altitude <= TROPOPAUSE:
        return float((temperature(altitude) / SEA_LEVEL_TEMPERATURE) ** _EXPONENT)
    return _TROPOPAUSE_RATIO * exp(-(altitude - TROPOPAUSE) / _SCALE_HEIGHT)


def pressure(altitude: float) -> float:
    """Return the static pressure in Pa at a pressure altitude in m. ISO 2533."""
    return SEA_LEVEL_PRESSURE * pressure_ratio(altitude)


def density_ratio(altitude: float, outside_temperature: float | None = None) -> float:
    """Return sigma, density over sea-level density, at a pressure altitude in m. Ideal gas: delta / theta.

    outside_temperature: the actual air temperature in K; the standard one when None.
    """
    actual = temperature(altitude) if outside_temperature is None else outside_temperature
    if actual <= 0:
        raise OutOfRange("an absolute temperature is above zero")
    return pressure_ratio(altitude) * SEA_LEVEL_TEMPERATURE / actual


def density(altitude: float, outside_temperature: float | None = None) -> float:
    """Return the air density in kg/m3; arguments as for `density_ratio`."""
    return SEA_LEVEL_DENSITY * density_ratio(altitude, outside_temperature)


def speed_of_sound(air_temperature: float) -> float:
    """Return the speed of sound in m/s in air of a temperature in K. ISO 2533: sqrt(kappa R T)."""
    if air_temperature <= 0:
        raise OutOfRange("an absolute temperature is above zero")
    return sqrt(HEAT_RATIO * GAS_CONSTANT * air_temperature)


def pressure_altitude(static_pressure: float) -> float:
    """Return the pressure altitude in m of a static pressure in Pa: the inverse of `pressure`."""
    if static_pressure <= 0:
        raise OutOfRange("an absolute pressure is above zero")
    ratio = static_pressure / SEA_LEVEL_PRESSURE
    if ratio >= _TROPOPAUSE_RATIO:
        altitude = float(1 - ratio ** (1 / _EXPONENT)) * SEA_LEVEL_TEMPERATURE / LAPSE_RATE
    else:
        altitude = TROPOPAUSE - _SCALE_HEIGHT * log(ratio / _TROPOPAUSE_RATIO)
    _check(altitude, margin=1e-6)
    return altitude


def _check(altitude: float, margin: float = 0.0) -> None:
    if not FLOOR - margin <= altitude <= CEILING + margin:
        raise OutOfRange("the standard atmosphere here covers pressure altitudes from -5 km to 20 km")
