"""Moist air against real-gas moist air: how far the handbook's ideal gas is from the air of the world.

Wide bounds, for the spread is physics: real air holds 0.3 to 0.7 % more water than the ideal gas.
"""

import coilside
from CoolProp.HumidAirProp import HAPropsSI
from gridding import Point, grid

SOURCE = "CoolProp 8.0.0 HAPropsSI (Herrmann, Kretzschmar, Gatley 2009, ASHRAE RP-1485: real gas)"
POINTS = 300


def real_air(draw, attribute, output, *, to_ours=lambda value: value):
    for _ in range(POINTS):
        # Dry bulbs around the freezing point too; CoolProp's humidity is over ice there as well.
        dry_c, humidity, pressure_pa = draw.uniform(-30, 55), draw.uniform(0.05, 1), draw.uniform(60_000, 110_000)
        ours = coilside.air_from_humidity(dry_bulb_c=dry_c, humidity_rh=humidity, pressure_pa=pressure_pa)
        theirs = HAPropsSI(output, "T", dry_c + 273.15, "R", humidity, "P", pressure_pa)
        at = f"{dry_c:.2f} °C, {humidity:.3f}, {pressure_pa:.0f} Pa"
        yield Point(at, getattr(ours, attribute), to_ours(theirs))


def from_kelvin(kelvin):
    return kelvin - 273.15


@grid("humidity ratio of real air", bound=0.008, kind="rel", source=SOURCE)
def humidity_ratio(draw):
    return real_air(draw, "humidity_ratio_kg_kg", "W")


@grid("volume of real air", bound=0.002, kind="rel", source=SOURCE)
def volume(draw):
    return real_air(draw, "volume_m3_kg", "V")


@grid("enthalpy of real air", bound=2500, unit="J/kg", source=SOURCE)
def enthalpy(draw):
    return real_air(draw, "enthalpy_j_kg", "H")


@grid("dew point of real air", bound=0.03, unit="K", source=SOURCE)
def dew_point(draw):
    return real_air(draw, "dew_point_c", "D", to_ours=from_kelvin)


@grid("wet bulb of real air, away from 0 °C", bound=0.05, unit="K", source=SOURCE)
def wet_bulb(draw):
    for point in real_air(draw, "wet_bulb_c", "B", to_ours=from_kelvin):
        # Between, a wet and an iced bulb differ and either is right.
        if abs(point.reference) > 1:
            yield point
