"""Refrigerants against the equations of state in CoolProp, from -40 °C to 3 K below critical.

How CoolProp is asked stands in coolprop_fluid.py.
"""

import coilside
from coolprop_fluid import KINDS, LINES, NAMES, fluid
from gridding import Point, grid

POINTS = 200
SEA_LEVEL_PA = 101_325
PRESSURE, DENSITY, HEAT, TEMPERATURE_K = 5e-4, 5e-4, 5e-4, 0.02


def source(name):
    """What the report names as the reference."""
    return f"CoolProp 8.0.0, HEOS, {KINDS.get(name, 'pure')}"


def register_pressure(name, line):
    """Pressure of one line by temperature."""

    @grid(f"{line} pressure of {name}", bound=PRESSURE, kind="rel", source=source(name))
    def points(draw):
        for _ in range(POINTS):
            t_c = draw.uniform(-40, fluid(name).most_c)
            ours = getattr(coilside.saturation(refrigerant=name, temperature_c=t_c), f"{line}_pressure_pa")
            yield Point(f"{t_c:.2f} °C", ours, fluid(name).at_temperature(line, t_c)[0])


def register_temperature(name, line):
    """Temperature of one line by pressure."""

    @grid(f"{line} temperature of {name}", bound=TEMPERATURE_K, unit="K", source=source(name))
    def points(draw):
        most_c = fluid(name).both_lines_to_c if line == "bubble" else fluid(name).most_c
        for _ in range(POINTS):
            p_pa, reference = fluid(name).pressure_and_temperature(line, draw.uniform(-40, most_c))
            ours = getattr(coilside.saturation_temperatures(refrigerant=name, pressure_pa=p_pa), f"{line}_c")
            yield Point(f"{p_pa / 1e5:.3f} bar", ours, reference)


def register_density(name, line, phase):
    """Density of the liquid on the bubble line, or of the vapour on the dew line."""

    @grid(f"{phase} density of {name}", bound=DENSITY, kind="rel", source=source(name))
    def points(draw):
        for _ in range(POINTS):
            t_c = draw.uniform(-40, fluid(name).most_c)
            ours = getattr(coilside.saturation(refrigerant=name, temperature_c=t_c), f"{phase}_density_kg_m3")
            yield Point(f"{t_c:.2f} °C", ours, fluid(name).at_temperature(line, t_c)[1])


def register_latent_heat(name):
    """Enthalpy of the dew line less that of the bubble line, at one temperature."""

    @grid(f"latent heat of {name}", bound=HEAT, kind="rel", source=source(name))
    def points(draw):
        for _ in range(POINTS):
            t_c = draw.uniform(-40, fluid(name).most_c)
            bubble, dew = (fluid(name).at_temperature(line, t_c)[2] for line in LINES)
            yield Point(f"{t_c:.2f} °C", coilside.saturation(refrigerant=name, temperature_c=t_c).latent_heat_j_kg, dew - bubble)


for each in NAMES:
    for either in LINES:
        register_pressure(each, either)
        register_temperature(each, either)
    register_density(each, "bubble", "liquid")
    register_density(each, "dew", "vapour")
    register_latent_heat(each)


def readings(draw, line):
    """Each refrigerant in turn: its gauge pressure at sea level, a pipe's temperature, and that of the line."""
    for name in NAMES:
        for _ in range(POINTS):
            p_pa, line_c = fluid(name).pressure_and_temperature(line, draw.uniform(-40, fluid(name).most_c))
            yield name, p_pa - SEA_LEVEL_PA, draw.uniform(-40, 120), line_c


@grid("superheat, every refrigerant", bound=TEMPERATURE_K, unit="K", source="CoolProp 8.0.0, HEOS")
def superheat(draw):
    for name, gauge_pa, pipe_c, dew_c in readings(draw, "dew"):
        ours = coilside.superheat_k(refrigerant=name, pressure_pa_gauge=gauge_pa, line_temperature_c=pipe_c, altitude_m=0)
        yield Point(f"{name}, {gauge_pa / 1e5:.3f} bar gauge, {pipe_c:.1f} °C", ours, pipe_c - dew_c)


@grid("subcooling, every refrigerant", bound=TEMPERATURE_K, unit="K", source="CoolProp 8.0.0, HEOS")
def subcooling(draw):
    for name, gauge_pa, pipe_c, bubble_c in readings(draw, "bubble"):
        ours = coilside.subcooling_k(refrigerant=name, pressure_pa_gauge=gauge_pa, line_temperature_c=pipe_c, altitude_m=0)
        yield Point(f"{name}, {gauge_pa / 1e5:.3f} bar gauge, {pipe_c:.1f} °C", ours, bubble_c - pipe_c)
