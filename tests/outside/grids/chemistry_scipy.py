"""The gas that limescale gives off, by the gas constant of scipy and the molar mass of molmass."""

import coilside
from gridding import Point, grid
from molmass import Formula
from scipy.constants import R

POINTS = 250
LIME_G_MOL = Formula("CaCO3").mass


# Atomic weights to five digits here, as the abridged table has them: 2e-5 of the result.
@grid("carbon dioxide released", bound=1e-4, kind="rel", source="ideal gas; scipy 1.17.1 constants (CODATA), molmass 2026.1.8")
def co2_released(draw):
    for _ in range(POINTS):
        grams, t_c, p_pa = draw.uniform(1, 5000), draw.uniform(-20, 100), draw.uniform(50_000, 120_000)
        ours = coilside.co2_released_l(dissolved_g_caco3=grams, temperature_c=t_c, pressure_pa=p_pa)
        reference = grams / LIME_G_MOL * R * (t_c + 273.15) / p_pa * 1000
        yield Point(f"{grams:.0f} g, {t_c:.1f} °C, {p_pa:.0f} Pa", ours, reference)
