"""The standard atmosphere: its closed form against PsychroLib's, and against the equation it is the solution of."""

import math

import coilside
import numpy
import psychrolib
from gridding import Point, grid

psychrolib.SetUnitSystem(psychrolib.SI)
POINTS = 250


@grid(
    "standard atmosphere",
    bound=1e-5,
    kind="rel",
    source="PsychroLib 2.5.0 (ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 3)",
)
def handbook(draw):
    for _ in range(POINTS):
        altitude_m = draw.uniform(-2000, 11_000)
        reference = psychrolib.GetStandardAtmPressure(altitude_m)
        yield Point(f"{altitude_m:.0f} m", coilside.atmospheric_pressure_pa(altitude_m=altitude_m), reference)


@grid(
    "standard atmosphere, summed",
    bound=1e-8,
    kind="rel",
    source="dp/p = −g dh/(R T) summed in 2000 steps with numpy 2.4.6; g, R, lapse of ISO 2533:1975, from memory",
)
def hydrostatic(draw):
    for _ in range(POINTS):
        altitude_m = draw.uniform(-2000, 11_000)
        edges_m = numpy.linspace(0, altitude_m, 2001)
        middles_k = 288.15 - 0.0065 * (edges_m[1:] + edges_m[:-1]) / 2
        reference = 101_325 * math.exp(-9.80665 / 287.05287 * numpy.sum(numpy.diff(edges_m) / middles_k))
        yield Point(f"{altitude_m:.0f} m", coilside.atmospheric_pressure_pa(altitude_m=altitude_m), reference)
