"""The physics functions that a planning model may name, with the inputs they take.

Each takes SI values by the names of the model's inputs and returns SI values; the knowledge base binds the
inputs to a type's figures or to the question. A new calculation is one function here and one line in the table.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from assistant.frozen import NamedTuple
from assistant.physics import airspeed, atmosphere, braking, cooling, gas, hydroplaning, turning

Inputs = Mapping[str, float]


class Function(NamedTuple):
    """A function of SI inputs, the formula shown in the working, and further results worth telling."""

    call: Callable[[Inputs], float]
    formula: str
    extra: Callable[[Inputs], tuple[tuple[str, float, str, str], ...]] | None = None
    """(name, SI value, unit shown, quantity)."""


def _tau(i: Inputs) -> float:
    return i["tau"]


def _outside(i: Inputs) -> float:
    return i["outside"] if "outside" in i else i["ambient"]


def _brake_rise(i: Inputs) -> float:
    energy = braking.energy_per_brake(i["mass"], i["speed"], i["share"], round(i["brakes"]))
    return braking.temperature_rise(energy, i["heat_sink_mass"], i["specific_heat"])


def _energy_per_brake(i: Inputs) -> float:
    return braking.energy_per_brake(i["mass"], i["speed"], i["share"], round(i["brakes"]))


def _rise_extra(i: Inputs) -> tuple[tuple[str, float, str, str], ...]:
    return (("energy each brake", _energy_per_brake(i), "MJ", "energy"),)


def _radii_extra(i: Inputs) -> tuple[tuple[str, float, str, str], ...]:
    radii = turning.radii(i["wheelbase"], i.get("track", 0.0), i["angle"])
    nose = ("nose wheels", radii.nose, "m", "length")
    centre = ("centre of the main gear", radii.main, "m", "length")
    if not i.get("track"):  # without it the legs' own radii are not known
        return nose, centre
    outer = ("outer main legs", radii.outer, "m", "length")
    inner = ("inner main legs", radii.inner, "m", "length")
    return nose, outer, centre, inner


def _hydroplaning_extra(i: Inputs) -> tuple[tuple[str, float, str, str], ...]:
    bases = (("9.0 √p, rotating tyre", "rotating"), ("8.6 √p, as the flying handbook", "handbook"),
             ("7.7 √p, tyre not yet rotating at touchdown", "non-rotating"))  # fmt: skip
    return tuple((name, hydroplaning.hydroplaning_speed(i["pressure"], basis), "kt", "speed") for name, basis in bases)


def _hydroplaning(i: Inputs) -> float:
    rotating = hydroplaning.hydroplaning_speed(i["pressure"], "rotating")
    return rotating * i.get("constant", 9.0) / 9.0


def _headwind(i: Inputs) -> float:
    return i.get("headwind", 0.0) - i.get("tailwind", 0.0)


def _tyre_speed(i: Inputs) -> float:
    return airspeed.ground_speed(i["speed"], i["altitude"], i["temperature"], _headwind(i))


def _parking_pressure(i: Inputs) -> float:
    return min(i["quarters"] * i["quarter_pressure"], i["maximum"], i["source_pressure"])


def _locked_wheel(i: Inputs) -> float:
    return i["mate_speed"] * i["share"]


TABLE: dict[str, Function] = {
    "kinetic_energy": Function(lambda i: braking.kinetic_energy(i["mass"], i["speed"]), "½ m v²"),
    "temperature_rise": Function(
        lambda i: braking.temperature_rise(i["energy"], i["mass"], i["specific_heat"]),
        "energy / (mass × specific heat)",
    ),
    "brake_energy": Function(_energy_per_brake, "share × ½ m v² / brakes"),
    "brake_temperature_rise": Function(
        _brake_rise, "share × ½ m v² / (brakes × heat-sink mass × specific heat)", _rise_extra
    ),
    "brake_temperature_after": Function(
        lambda i: i["start"] + _brake_rise(i), "temperature before + share × ½ m v² / (brakes × mass × specific heat)",
        lambda i: (("rise", _brake_rise(i), "K", "temperature difference"),),
    ),
    "cooling_time": Function(
        lambda i: cooling.time_to_reach(i["start"], i["target"], _outside(i), _tau(i)),
        "time constant × ln((start − outside) / (target − outside))",
    ),
    "cooled_temperature": Function(
        lambda i: cooling.temperature_after(i["start"], _outside(i), _tau(i), i["elapsed"]),
        "outside + (start − outside) × e^(−time / time constant)",
    ),
    "temperature_before_cooling": Function(
        lambda i: cooling.start_for(i["target"], _outside(i), _tau(i), i["elapsed"]),
        "outside + (target − outside) × e^(time / time constant)",
    ),
    "stopping_distance": Function(
        lambda i: braking.stopping_distance(i["speed"], i["deceleration"], i.get("delay", 0.0)),
        "v × delay + v² / (2 × deceleration)",
    ),
    "stopping_time": Function(
        lambda i: braking.stopping_time(i["speed"], i["deceleration"], i.get("delay", 0.0)), "delay + v / deceleration"
    ),
    "delay_distance": Function(lambda i: braking.delay_distance(i["speed"], i["delay"]), "v × delay"),
    "landing_distance_factor": Function(lambda i: i["distance"] * i["factor"], "distance × factor"),
    "required_landing_length": Function(lambda i: i["distance"] * i["factor"], "distance × factor"),
    "share": Function(lambda i: i["part"] / i["whole"], "part / whole"),
    "turn_radius": Function(
        lambda i: turning.radii(i["wheelbase"], i.get("track", 0.0), i["angle"]).nose,
        "nose: wheelbase / sin δ; outer main: wheelbase / tan δ + half the track", _radii_extra,
    ),
    "turn_radius_outer": Function(
        lambda i: turning.radii(i["wheelbase"], i["track"], i["angle"]).outer,
        "wheelbase / tan δ + half the track", _radii_extra,
    ),
    "turn_radius_inner": Function(
        lambda i: turning.radii(i["wheelbase"], i["track"], i["angle"]).inner,
        "wheelbase / tan δ − half the track", _radii_extra,
    ),
    "turn_radius_middle": Function(
        lambda i: turning.radii(i["wheelbase"], i["track"], i["angle"]).main, "wheelbase / tan δ", _radii_extra,
    ),
    "turn_radius_general": Function(
        lambda i: turning.radii(i["wheelbase"], i.get("track", 0.0), i["angle"]).main,
        "main gear: wheelbase / tan δ; nose: wheelbase / sin δ", _radii_extra,
    ),
    "pavement_width": Function(
        lambda i: turning.pavement_width(i["wheelbase"], i["track"], i["angle"], i.get("clearance", 0.0)),
        "R outer + the larger of R outer and R nose + 2 × clearance", _radii_extra,
    ),
    "gas_pressure": Function(
        lambda i: gas.gauge_pressure_at(i["pressure"], i["from"], i["to"]),
        "absolute pressure in proportion to absolute temperature",
    ),
    "parking_brake_pressure": Function(
        _parking_pressure,
        "quarters × pressure a quarter, at most what the source holds",
    ),
    "remaining": Function(lambda i: max(i["full"] - i["used"], 0.0), "full number − number used"),
    "on_target_threshold": Function(lambda i: i["target"] * i["share"], "share × target"),
    "locked_wheel_speed": Function(_locked_wheel, "share × speed of the axle mate"),
    "hydroplaning_speed": Function(_hydroplaning, "9.0 × √(pressure in psi)", _hydroplaning_extra),
    "tyre_ground_speed": Function(_tyre_speed, "true airspeed (compressible) plus tailwind, less headwind"),
    "vle_at_altitude": Function(
        lambda i: airspeed.lower_limit(i["speed"], i["mach"], i["altitude"]),
        "the lower of the airspeed and the Mach number",
        lambda i: (("the Mach number alone", airspeed.cas_from_mach(i["mach"], i["altitude"]), "kt", "speed"),),
    ),
    "vle_crossover": Function(
        lambda i: airspeed.crossover_altitude(i["speed"], i["mach"]), "the pressure altitude where both are one"
    ),
    "isa_temperature": Function(
        lambda i: atmosphere.temperature(i["altitude"]),
        "288.15 K − 6.5 K/km, 216.65 K above 11 km",
    ),
    "isa_pressure": Function(lambda i: atmosphere.pressure(i["altitude"]), "101 325 Pa × (T/T0)^5.2559"),
    "isa_density": Function(lambda i: atmosphere.density(i["altitude"]), "p / (R T)"),
    "isa_density_ratio": Function(
        lambda i: atmosphere.density_ratio(i["altitude"]),
        "pressure ratio / temperature ratio",
        lambda i: (("density", atmosphere.density(i["altitude"]), "kg/m3", "density"),),
    ),
    "isa_speed_of_sound": Function(
        lambda i: atmosphere.speed_of_sound(atmosphere.temperature(i["altitude"])), "√(1.4 R T)"
    ),
    "mach_from_cas": Function(
        lambda i: airspeed.mach_from_cas(i["speed"], i["altitude"]),
        "impact over static pressure",
    ),
    "tas_from_cas": Function(
        lambda i: airspeed.tas_from_cas(i["speed"], i["altitude"], i.get("temperature")), "Mach × speed of sound"
    ),
    "eas_from_cas": Function(
        lambda i: airspeed.eas_from_cas(i["speed"], i["altitude"]), "true airspeed × √(density ratio)"
    ),
    "lateral_acceleration": Function(lambda i: turning.lateral_acceleration(i["speed"], i["radius"]), "v² / R"),
}  # fmt: skip

_ALIASES = {
    "general_cooling": "cooling_time", "stopping_distance_general": "stopping_distance",
    "stopping_time_general": "stopping_time", "hydroplaning_general": "hydroplaning_speed",
    "crossover": "vle_crossover", "tas_from_cas_at_temperature": "tas_from_cas",
    "pavement_width_general": "pavement_width", "gas_pressure_at_temperature": "gas_pressure",
    "precharge_at_temperature": "gas_pressure",
}  # fmt: skip


def function(name: str) -> Function | None:
    """Return the function of a name that a model gives, or None."""
    return TABLE.get(_ALIASES.get(name, name))
