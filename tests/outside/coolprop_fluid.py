"""A refrigerant as CoolProp has it, on its bubble and its dew line.

A mixture's flash does not converge everywhere, more seldom near critical. Where it does not, the state is followed in small steps
from the last one that did; everywhere else it is the plain flash.
"""

import functools
import math

import CoolProp
from CoolProp.CoolProp import AbstractState, PyGuessesStructure

STEP_K = 0.1
ICE_K = 273.15
NAMES = ["R290", "R600a", "R744", "R32", "R134a", "R1234yf", "R410A", "R407C", "R513A", "R454B"]
KINDS = {"R410A": "pseudo-pure", "R407C": "pseudo-pure", "R513A": "mixture R513A.mix", "R454B": "mixture R454B.mix"}
MIXTURES = [name for name, kind in KINDS.items() if kind.startswith("mixture")]
LINES = {"bubble": 0, "dew": 1}


class Fluid:
    """One refrigerant in CoolProp."""

    def __init__(self, name):
        self.name = name
        self.mixture = name in MIXTURES
        self.state = self.another()
        critical_k = max(p.T for p in self.state.all_critical_points()) if self.mixture else self.state.T_critical()
        # Our range ends at a tenth of a degree.
        self.most_c = math.floor((critical_k - ICE_K - 3) * 10) / 10

    def another(self):
        """A state of its own."""
        return AbstractState("HEOS", f"{self.name}.mix" if self.mixture else self.name)

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
