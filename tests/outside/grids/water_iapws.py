"""Liquid water and its vapour against the `iapws` package, which follows IAPWS-95 and IAPWS-IF97."""

import coilside
import iapws
from gridding import Point, grid

SOURCE = "iapws 1.5.5, IAPWS-95 at 1 bar"
POINTS = 250


@grid("density of water", bound=2e-5, kind="rel", source=SOURCE)
def density(draw):
    for _ in range(POINTS):
        t_c = draw.uniform(0.01, 99.5)
        reference = iapws.IAPWS95(T=t_c + 273.15, P=0.1)
        yield Point(f"{t_c:.2f} °C", coilside.water(temperature_c=t_c).density_kg_m3, reference.rho)


@grid("specific heat of water", bound=5e-4, kind="rel", source=SOURCE)
def specific_heat(draw):
    for _ in range(POINTS):
        t_c = draw.uniform(0.01, 99.5)
        reference = iapws.IAPWS95(T=t_c + 273.15, P=0.1)
        yield Point(f"{t_c:.2f} °C", coilside.water(temperature_c=t_c).specific_heat_j_kg_k, reference.cp * 1000)
