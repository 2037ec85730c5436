"""Refrigerants against the equations of state in CoolProp, from -40 °C to 3 K below critical.

A mixture's flash does not converge everywhere, more seldom near critical. Where it does not, the state is followed in small steps
from the last one that did; everywhere else the reference is the plain flash.
"""

import functools
import math

import CoolProp
import coilside
from CoolProp.CoolProp import AbstractState, PyGuessesStructure
from gridding import Point, grid

POINTS = 200
STEP_K = 0.1
ICE_K = 273.15
SEA_LEVEL_PA = 101_325
PRESSURE, DENSITY, HEAT, TEMPERATURE_K = 5e-4, 5e-4, 5e-4, 0.02
NAMES = ["R290", "R600a", "R744", "R32", "R134a", "R1234yf", "R410A", "R407C", "R513A", "R454B"]
KINDS = {"R410A": "pseudo-pure", "R407C": "pseudo-pure", "R513A": "mixture R513A.mix", "R454B": "mixture R454B.mix"}
LINES = {"bubble": 0, "dew": 1}


def source(name):
    """What the report names as the reference."""
    return f"CoolProp 8.0.0, HEOS, {KINDS.get(name, 'pure')}"


class Fluid:
    """One refrigerant in CoolProp."""

    def __init__(self, name):
        self.name = name
        self.mixture = name in KINDS and KINDS[name].startswith("mixture")
        self.state = AbstractState("HEOS", f"{name}.mix" if self.mixture else name)
        critical_k = max(p.T for p in self.state.all_critical_points()) if self.mixture else self.state.T_critical()
        # Our range ends at a tenth of a degree.
        self.most_c = math.floor((critical_k - ICE_K - 3) * 10) / 10

    def at_temperature(self, line, t_c):
        """Pressure, density and enthalpy on a line at a temperature."""
        state = self.state
        try:
            state.update(CoolProp.QT_INPUTS, LINES[line], t_c + ICE_K)
        except ValueError:
            if not self.mixture:
                raise
            self.follow(line, t_c)
        return state.p(), state.rhomass(), state.hmass()

    def follow(self, line, t_c):
        """Steps to a temperature from 60 °C, where the plain flash works."""
        at_c = 60.0
        self.state.update(CoolProp.QT_INPUTS, LINES[line], at_c + ICE_K)
        while at_c != t_c:
            guesses = PyGuessesStructure()
            guesses.T, guesses.p = self.state.T(), self.state.p()
            guesses.x, guesses.y = self.state.mole_fractions_liquid(), self.state.mole_fractions_vapor()
            guesses.rhomolar_liq = self.state.saturated_liquid_keyed_output(CoolProp.iDmolar)
            guesses.rhomolar_vap = self.state.saturated_vapor_keyed_output(CoolProp.iDmolar)
            at_c = min(at_c + STEP_K, t_c) if at_c < t_c else max(at_c - STEP_K, t_c)
            self.state.update_with_guesses(CoolProp.QT_INPUTS, LINES[line], at_c + ICE_K, guesses)

    def pressure_and_temperature(self, line, t_c):
        """The pressure at a temperature, and the temperature that the flash at that pressure gives back."""
        p_pa = self.at_temperature(line, t_c)[0]
        try:
            self.state.update(CoolProp.PQ_INPUTS, p_pa, LINES[line])
        except ValueError:
            if not self.mixture:
                raise
            return p_pa, t_c
        return p_pa, self.state.T() - ICE_K

    @functools.cached_property
    def both_lines_to_c(self):
        """Where the bubble line has the pressure at which the dew line ends: above it only one temperature is known."""
        dew_pa = self.at_temperature("dew", self.most_c)[0]
        low_c, high_c = self.most_c - 20, self.most_c
        while high_c - low_c > 1e-3:
            middle_c = (low_c + high_c) / 2
            if self.at_temperature("bubble", middle_c)[0] > dew_pa:
                high_c = middle_c
            else:
                low_c = middle_c
        return low_c


@functools.cache
def fluid(name):
    """Each refrigerant once."""
    return Fluid(name)


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
