"""The refrigerant cycle's sketch against the equations of state in CoolProp: how far the enthalpies that it is drawn from are off."""

import functools

import CoolProp
import coilside
from coolprop_fluid import ICE_K, MIXTURES, NAMES, fluid
from gridding import Point, grid

POINTS = 100
SOURCE = "CoolProp 8.0.0, HEOS"
LIQUID_AT_0_C = 200_000


@functools.cache
def one_phase(name, phase):
    """CoolProp beside the saturation lines, where a flash would look for both phases."""
    state = fluid(name).another()
    state.specify_phase(phase)
    return state


@functools.cache
def shift(name):
    """From CoolProp's zero of enthalpy to ours."""
    return LIQUID_AT_0_C - fluid(name).at_temperature("bubble", 0.0)[2]


def critical_c(name):
    """Within a tenth of a degree."""
    return fluid(name).most_c + 3


def enthalpy(name, phase, p_pa, t_c):
    """Of one phase, from our zero."""
    state = one_phase(name, phase)
    state.update(CoolProp.PT_INPUTS, p_pa, t_c + ICE_K)
    return state.hmass() + shift(name)


@grid("specific heat of saturated vapour, every refrigerant", bound=1e-3, kind="rel", source=SOURCE)
def specific_heat(draw):
    for name in NAMES:
        for _ in range(POINTS):
            t_c = draw.uniform(-40, fluid(name).most_c)
            kg_m3 = fluid(name).at_temperature("dew", t_c)[1]
            state = one_phase(name, CoolProp.iphase_gas)
            state.update(CoolProp.DmassT_INPUTS, kg_m3, t_c + ICE_K)
            ours = coilside.saturation(refrigerant=name, temperature_c=t_c).vapour_specific_heat_j_kg_k
            yield Point(f"{name}, {t_c:.2f} °C", ours, state.cpmass())


def register_vapour(below_critical_k, bound):
    """Superheated vapour up to so far below critical on its dew line."""

    @grid(f"enthalpy of vapour 0…60 K above its dew line, {below_critical_k} K or more below critical", bound=bound, unit="J/kg", source=SOURCE)
    def points(draw):
        for name in NAMES:
            for _ in range(POINTS):
                dew_c, above_k = draw.uniform(-39.9, critical_c(name) - below_critical_k), draw.uniform(0.1, 59.9)
                p_pa = fluid(name).at_temperature("dew", dew_c)[0]
                reference = enthalpy(name, CoolProp.iphase_gas, p_pa, dew_c + above_k)
                ours = coilside.vapour_enthalpy_j_kg(refrigerant=name, pressure_pa=p_pa, temperature_c=dew_c + above_k)
                yield Point(f"{name}, dew {dew_c:.1f} °C, {above_k:.1f} K above", ours, reference)


for each in ((10.1, 2000), (15, 1200)):
    register_vapour(*each)


@functools.cache
def cycles(name):
    """How cold the evaporator and how warm the condenser of the drawn cycles may be, °C."""
    if name == "R744":
        return (-35, -10), (5, critical_c(name) - 15)
    return (-15, 10), (30, min(65, critical_c(name) - 15))


def drawn(draw, name):
    """A cycle as CoolProp has it: readings for ours, and its enthalpies, with a compressor of 0.55…0.8 of isentropic."""
    cold_c, warm_c = cycles(name)
    low_pa = fluid(name).at_temperature("dew", draw.uniform(*cold_c))[0]
    high_pa = fluid(name).at_temperature("dew", draw.uniform(*warm_c))[0]
    dew_c, high_dew_c, bubble_c = (
        coilside.saturation_temperatures(refrigerant=name, pressure_pa=low_pa).dew_c,
        coilside.saturation_temperatures(refrigerant=name, pressure_pa=high_pa).dew_c,
        coilside.saturation_temperatures(refrigerant=name, pressure_pa=high_pa).bubble_c,
    )
    suction_c, liquid_c = dew_c + draw.uniform(2, 15), bubble_c - draw.uniform(1, 12)
    gas = one_phase(name, CoolProp.iphase_gas)
    gas.update(CoolProp.PT_INPUTS, low_pa, suction_c + ICE_K)
    suction, entropy = gas.hmass(), gas.smass()
    gas.update(CoolProp.PSmass_INPUTS, high_pa, entropy)
    discharge = suction + (gas.hmass() - suction) / draw.uniform(0.55, 0.8)
    gas.update(CoolProp.HmassP_INPUTS, discharge, high_pa)
    discharge_c = gas.T() - ICE_K
    if not high_dew_c < discharge_c < high_dew_c + 60:
        return None
    liquid = enthalpy(name, CoolProp.iphase_liquid, high_pa, liquid_c)
    readings = dict(low_pressure_pa=low_pa, high_pressure_pa=high_pa, suction_c=suction_c, discharge_c=discharge_c, liquid_c=liquid_c)
    return readings, suction + shift(name), discharge + shift(name), liquid


def register_cycle(what, bound, kind, unit, ours, reference):
    """One number of the cycle, over the pure and pseudo-pure fluids: a mixture has no flash from entropy."""

    @grid(f"refrigerant cycle: {what}", bound=bound, kind=kind, unit=unit, source=SOURCE)
    def points(draw):
        for name in NAMES:
            if name in MIXTURES:
                continue
            left = 60
            while left:
                cycle = drawn(draw, name)
                if cycle is None:
                    continue
                left -= 1
                readings, *enthalpies = cycle
                got = coilside.refrigerant_cycle(refrigerant=name, **readings)
                at = f"{name}, {readings['low_pressure_pa'] / 1e5:.2f} and {readings['high_pressure_pa'] / 1e5:.2f} bar"
                yield Point(at, ours(got), reference(*enthalpies))


register_cycle("liquid before the expansion", 2000, "abs", "J/kg", lambda got: got.liquid_enthalpy_j_kg, lambda _, __, liquid: liquid)
register_cycle("work", 1200, "abs", "J/kg", lambda got: got.discharge_enthalpy_j_kg - got.suction_enthalpy_j_kg, lambda low, high, _: high - low)
register_cycle("COP", 0.02, "rel", "", lambda got: got.cop, lambda low, high, liquid: (high - liquid) / (high - low))
