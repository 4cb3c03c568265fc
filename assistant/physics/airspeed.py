"""Calibrated airspeed, Mach number, true airspeed and ground speed, for subsonic flight.

Source of the relations: W. Gracey, "Measurement of Aircraft Speed and Altitude", NASA RP-1046 (1980).
Indicated is taken as calibrated airspeed: no position or instrument error is modelled. Speeds in m/s,
altitudes in m of pressure altitude, temperatures in K.
"""

from math import sqrt

from assistant.physics import atmosphere
from assistant.physics.errors import OutOfRange

_SEA_LEVEL_SOUND = atmosphere.speed_of_sound(atmosphere.SEA_LEVEL_TEMPERATURE)


def mach_from_cas(cas: float, altitude: float) -> float:
    """Return the Mach number flown at a calibrated airspeed and a pressure altitude (RP-1046)."""
    if cas < 0:
        raise OutOfRange("an airspeed is not below zero")
    mach = _mach_of_impact(_impact(cas / _SEA_LEVEL_SOUND) / atmosphere.pressure_ratio(altitude))
    if mach > 1:
        raise OutOfRange("faster than sound, where these relations do not hold")
    return mach


def cas_from_mach(mach: float, altitude: float) -> float:
    """Return the calibrated airspeed at a Mach number and a pressure altitude: inverse of `mach_from_cas`."""
    if not 0 <= mach <= 1:
        raise OutOfRange("a Mach number from 0 to 1 is needed")
    return _SEA_LEVEL_SOUND * _mach_of_impact(_impact(mach) * atmosphere.pressure_ratio(altitude))


def tas_from_cas(cas: float, altitude: float, outside_temperature: float | None = None) -> float:
    """Return the true airspeed, compressibility included: Mach number times speed of sound.

    outside_temperature: actual, in K; the standard one when None.
    """
    air = atmosphere.temperature(altitude) if outside_temperature is None else outside_temperature
    return mach_from_cas(cas, altitude) * atmosphere.speed_of_sound(air)


def eas_from_cas(cas: float, altitude: float) -> float:
    """Return the equivalent airspeed: true airspeed times the square root of the density ratio (RP-1046)."""
    return tas_from_cas(cas, altitude) * sqrt(atmosphere.density_ratio(altitude))


def cas_from_tas(tas: float, altitude: float, outside_temperature: float | None = None) -> float:
    """Return the calibrated airspeed of a true airspeed: inverse of `tas_from_cas`."""
    air = atmosphere.temperature(altitude) if outside_temperature is None else outside_temperature
    return cas_from_mach(tas / atmosphere.speed_of_sound(air), altitude)


def crossover_altitude(cas: float, mach: float) -> float:
    """Return the pressure altitude at which a calibrated airspeed and a Mach number are the same speed.

    Above it the Mach number is the lower limit. It depends on no temperature. Raises OutOfRange where they
    never meet between -5 km and 20 km.
    """
    if cas <= 0 or not 0 < mach <= 1:
        raise OutOfRange("an airspeed above zero and a Mach number from 0 to 1 are needed")
    ratio = _impact(cas / _SEA_LEVEL_SOUND) / _impact(mach)
    return atmosphere.pressure_altitude(ratio * atmosphere.SEA_LEVEL_PRESSURE)


def lower_limit(cas: float, mach: float, altitude: float) -> float:
    """Return, as a calibrated airspeed, the lower of a CAS limit and a Mach limit at a pressure altitude."""
    return min(cas, cas_from_mach(mach, altitude))


def ground_speed(
    cas: float, altitude: float, outside_temperature: float | None = None, headwind: float = 0.0
) -> float:
    """Return the ground speed of a level run: true airspeed less the headwind (a tailwind is negative)."""
    return tas_from_cas(cas, altitude, outside_temperature) - headwind


def cas_for_ground_speed(
    speed: float, altitude: float, outside_temperature: float | None = None, headwind: float = 0.0
) -> float:
    """Return the calibrated airspeed at which a ground speed is reached: inverse of `ground_speed`."""
    return cas_from_tas(speed + headwind, altitude, outside_temperature)


def _impact(mach: float) -> float:
    """Return impact over static pressure at a Mach number (RP-1046, isentropic, ratio of heats 1.4)."""
    return float((1 + 0.2 * mach * mach) ** 3.5 - 1)


def _mach_of_impact(ratio: float) -> float:
    return sqrt(5 * ((ratio + 1) ** (2 / 7) - 1))
