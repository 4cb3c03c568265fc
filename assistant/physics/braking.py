"""Energy, heat and distance of a stop. Masses in kg, speeds in m/s over the ground, energies in J.

Sources: the definitions of kinetic energy, heat capacity and constant deceleration. The energy agrees with
the formula of former 14 CFR 23.735(a)(2), 0.0443 W V^2 / N in ft lb, lb and kt, to its rounding: 0.07 %.
Drag, spoilers and reverse thrust count only through the share and the deceleration that the caller gives.
"""

from math import sqrt

from assistant.physics.errors import OutOfRange


def kinetic_energy(mass: float, speed: float) -> float:
    """Return the kinetic energy in J: half the mass times the speed squared."""
    _not_negative(mass=mass)
    return mass * speed * speed / 2


def energy_per_brake(mass: float, speed: float, share: float, brakes: int) -> float:
    """Return the energy in J that each of the working brakes takes in a full stop.

    share: part of the aeroplane's kinetic energy that the brakes take together, 0 to 1.
    """
    if brakes < 1:
        raise OutOfRange("at least one brake must work")
    if not 0 <= share <= 1:
        raise OutOfRange("the share of energy is from 0 to 1")
    return kinetic_energy(mass, speed) * share / brakes


def temperature_rise(energy: float, heat_sink_mass: float, specific_heat: float) -> float:
    """Return the rise in K of a heat sink, all the energy staying in it: energy / (mass x specific heat).

    specific_heat: mean over the range, J/(kg K); that of carbon rises with temperature, so this is a guide.
    """
    _above_zero(heat_sink_mass=heat_sink_mass, specific_heat=specific_heat)
    _not_negative(energy=energy)
    return energy / (heat_sink_mass * specific_heat)


def delay_distance(speed: float, delay: float) -> float:
    """Return the distance in m run at a held speed during a delay in s."""
    _not_negative(speed=speed, delay=delay)
    return speed * delay


def stopping_distance(speed: float, deceleration: float, delay: float = 0.0) -> float:
    """Return the distance in m to a stop: the delay at full speed, then a constant deceleration in m/s2."""
    _above_zero(deceleration=deceleration)
    return delay_distance(speed, delay) + speed * speed / (2 * deceleration)


def stopping_time(speed: float, deceleration: float, delay: float = 0.0) -> float:
    """Return the time in s to a stop, the delay included."""
    _above_zero(deceleration=deceleration)
    _not_negative(speed=speed, delay=delay)
    return delay + speed / deceleration


def speed_for_distance(distance: float, deceleration: float, delay: float = 0.0) -> float:
    """Return the speed in m/s from which a stop takes a distance in m: inverse of `stopping_distance`."""
    _above_zero(deceleration=deceleration)
    _not_negative(distance=distance, delay=delay)
    held = deceleration * delay
    root = sqrt(held * held + 2 * deceleration * distance)
    # The difference root - held, written so that nearly equal terms do not cancel.
    return 2 * deceleration * distance / (root + held) if distance else 0.0


def _not_negative(**values: float) -> None:
    for name, value in values.items():
        if not value >= 0:
            raise OutOfRange(f"the {name.replace('_', ' ')} is not below zero")


def _above_zero(**values: float) -> None:
    for name, value in values.items():
        if not value > 0:
            raise OutOfRange(f"the {name.replace('_', ' ')} must be above zero")
