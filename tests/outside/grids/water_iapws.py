"""Liquid water, its vapour and its boiling point against the `iapws` package."""

import coilside
import iapws
import psychrolib
from gridding import Point, grid
from iapws._iapws import _Sublimation_Pressure as sublimation_mpa
from iapws.iapws97 import _TSat_P as boiling_k

psychrolib.SetUnitSystem(psychrolib.SI)
LIQUID = "iapws 1.5.5, IAPWS-95 at 1 bar"
POINTS = 250


@grid("density of water", bound=2e-5, kind="rel", source=LIQUID)
def density(draw):
    for _ in range(POINTS):
        t_c = draw.uniform(0.01, 99.5)
        reference = iapws.IAPWS95(T=t_c + 273.15, P=0.1)
        yield Point(f"{t_c:.2f} °C", coilside.water(temperature_c=t_c).density_kg_m3, reference.rho)


@grid("specific heat of water", bound=5e-4, kind="rel", source=LIQUID)
def specific_heat(draw):
    for _ in range(POINTS):
        t_c = draw.uniform(0.01, 99.5)
        reference = iapws.IAPWS95(T=t_c + 273.15, P=0.1)
        yield Point(f"{t_c:.2f} °C", coilside.water(temperature_c=t_c).specific_heat_j_kg_k, reference.cp * 1000)


@grid("vapour pressure over water", bound=3e-4, kind="rel", source="iapws 1.5.5, IAPWS-95 saturation")
def vapour_pressure_over_water(draw):
    for _ in range(POINTS):
        t_c = draw.uniform(0.011, 199.9)
        reference = iapws.IAPWS95(T=t_c + 273.15, x=0)
        yield Point(f"{t_c:.2f} °C", coilside.water_vapour_pressure_pa(temperature_c=t_c), reference.P * 1e6)


# Hyland and Wexler of 1983 and the release of 2011 part by 0.033 % at most, near −47 °C.
@grid("vapour pressure over ice", bound=4e-4, kind="rel", source="iapws 1.5.5, IAPWS R14-08(2011) sublimation pressure")
def vapour_pressure_over_ice(draw):
    for _ in range(POINTS):
        t_c = draw.uniform(-100, 0.01)
        reference = sublimation_mpa(t_c + 273.15)
        yield Point(f"{t_c:.2f} °C", coilside.water_vapour_pressure_pa(temperature_c=t_c), reference * 1e6)


@grid(
    "boiling point of water",
    bound=0.004,
    unit="K",
    source="iapws 1.5.5, IAPWS-IF97 region 4; PsychroLib 2.5.0, standard atmosphere",
)
def boiling(draw):
    for _ in range(POINTS):
        altitude_m = draw.uniform(-2000, 11_000)
        reference = boiling_k(psychrolib.GetStandardAtmPressure(altitude_m) / 1e6) - 273.15
        yield Point(f"{altitude_m:.0f} m", coilside.water_boiling_c(altitude_m=altitude_m), reference)
