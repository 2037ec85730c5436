#!/usr/bin/env python3
"""Writes the saturation tables beside this file from CoolProp's equations of state.

    python core/src/science/refrigerant/tables/generate.py      needs CoolProp and scipy (tests/outside/requirements.txt)

Each property becomes a piecewise cubic (Hermite) over evenly spaced nodes of a coordinate in which it is nearly straight:

    by temperature    s = √(1 − T / Tc)      ln p, ln of the vapour's density, density of the liquid, both enthalpies, ln of two
                                             specific heats of the vapour: on the dew line, and the mean of the first 60 K above it
    by pressure       ln p                   T

The number of nodes is the least that keeps the worst error against `SAMPLES` states below `BOUNDS`, rounding included. Slopes are
limited where they would let the curve turn between two nodes that do not (Fritsch and Carlson 1980), so a table is as monotone as
its fluid.

A mixture's flash fails here and there, more so near its critical point. It is therefore followed upwards, each state starting from
the one before; where the direct flash works (at a temperature, and back at that pressure) it is compared, and the worst is printed.
"""

import math
import pathlib
import random
from dataclasses import dataclass

import CoolProp
import numpy as np
from CoolProp.CoolProp import AbstractState, PyGuessesStructure, get_BibTeXKey
from scipy.interpolate import CubicSpline

HERE = pathlib.Path(__file__).resolve().parent
PURE = ["R290", "R600a", "R744", "R32", "R134a", "R1234yf"]
PSEUDO_PURE = ["R410A", "R407C"]
MIXTURES = ["R513A", "R454B"]

ICE_K = 273.15
LEAST_C = -40.0
BELOW_CRITICAL_K = 3.0
# The bubble line is colder than the dew line at the same pressure, so samples start lower; rounded ends need a little above.
SAMPLES_LEAST_C = -48.0
SAMPLES_ABOVE_K = 0.3
SAMPLES = 3000
LIQUID_AT_0_C_J_KG = 200_000.0  # the reference of the IIR
DIGITS = 8
# Of a logarithm, a fraction, a temperature in kelvin, an enthalpy in joules a kilogram. A fiftieth or less of what the project
# asks for (0.02 K, 0.05 %), so that there and back returns within a thousandth of a kelvin.
# Specific heats serve a sketch, so theirs is loose.
BOUNDS = {"logarithm": 5e-6, "fraction": 1e-5, "temperature": 1e-4, "enthalpy": 3.0, "logarithm, loose": 1e-3}
SUPERHEAT_K = 60.0
NODES_MOST = 200
WIDTH = 120  # rustfmt.toml


@dataclass
class Line:
    """What CoolProp gives along the bubble or the dew line, temperatures rising."""

    t_k: np.ndarray
    p_pa: np.ndarray
    kg_m3: np.ndarray
    j_kg: np.ndarray


@dataclass
class Curve:
    """A property over its coordinate, as nodes."""

    least: float
    per_step: float
    values: np.ndarray
    slopes: np.ndarray
    decimals: int
    error: float


def critical(state, name):
    """Critical temperature (K) and pressure (Pa). A mixture's search also finds an unphysical point far below."""
    if name not in MIXTURES:
        return state.T_critical(), state.p_critical()
    point = max(state.all_critical_points(), key=lambda point: point.T)
    return point.T, point.p


def guesses_from(state):
    """What the next state of a mixture starts from."""
    guesses = PyGuessesStructure()
    guesses.T, guesses.p = state.T(), state.p()
    guesses.x, guesses.y = state.mole_fractions_liquid(), state.mole_fractions_vapor()
    guesses.rhomolar_liq = state.saturated_liquid_keyed_output(CoolProp.iDmolar)
    guesses.rhomolar_vap = state.saturated_vapor_keyed_output(CoolProp.iDmolar)
    return guesses


def follow(state, quality, temperatures, mixture):
    """One line at rising temperatures."""
    rows, guesses = [], None
    for t_k in temperatures:
        if guesses is None:
            state.update(CoolProp.QT_INPUTS, quality, t_k)
        else:
            state.update_with_guesses(CoolProp.QT_INPUTS, quality, t_k, guesses)
        if mixture:
            guesses = guesses_from(state)
        rows.append((state.p(), state.rhomass(), state.hmass()))
    return Line(temperatures, *(np.array(column) for column in zip(*rows)))


def specific_heats(name, vapour):
    """Of the vapour along its dew line, J/(kg K): there, and the mean over the first `SUPERHEAT_K` above it at its pressure."""
    state = AbstractState("HEOS", name)
    state.specify_phase(CoolProp.iphase_gas)
    rows = []
    for t_k, p_pa, kg_m3, j_kg in zip(vapour.t_k, vapour.p_pa, vapour.kg_m3, vapour.j_kg):
        state.update(CoolProp.DmassT_INPUTS, kg_m3, t_k)
        on_dew = state.cpmass()
        state.update(CoolProp.PT_INPUTS, p_pa, t_k + SUPERHEAT_K)
        rows.append((on_dew, (state.hmass() - j_kg) / SUPERHEAT_K))
    return (np.array(column) for column in zip(*rows))


def beside_direct_flash(state, quality, line):
    """How many of 300 samples the direct flash reaches, and its worst difference of ln p, ln density, and temperature back."""
    worst, reached = [0.0, 0.0, 0.0], 0
    for i in random.Random(1).sample(range(len(line.t_k)), 300):
        try:
            state.update(CoolProp.QT_INPUTS, quality, line.t_k[i])
            differences = [math.log(state.p() / line.p_pa[i]), math.log(state.rhomass() / line.kg_m3[i])]
            state.update(CoolProp.PQ_INPUTS, line.p_pa[i], quality)
            differences.append(state.T() - line.t_k[i])
        except ValueError:
            continue
        reached += 1
        worst = [max(a, abs(b)) for a, b in zip(worst, differences)]
    return f"{reached} of 300 reached by the direct flash, worst {' '.join(f'{w:.1e}' for w in worst)}"


def limited(values, slopes):
    """Slopes, each for one step, that do not let a cubic turn where the values go one way."""
    slopes = slopes.copy()
    for i, rise in enumerate(np.diff(values)):
        a, b = slopes[i] / rise, slopes[i + 1] / rise
        if a >= 0 and b >= 0 and math.hypot(a, b) > 3:
            slopes[i], slopes[i + 1] = (3 / math.hypot(a, b) * part * rise for part in (a, b))
    return slopes


def hermite(values, slopes, steps):
    """The piecewise cubic at so many steps from the first node."""
    i = np.clip(steps.astype(int), 0, len(values) - 2)
    t = steps - i
    rise = values[i + 1] - values[i]
    bend, twist = 3 * rise - 2 * slopes[i] - slopes[i + 1], slopes[i] + slopes[i + 1] - 2 * rise
    return values[i] + t * (slopes[i] + t * (bend + t * twist))


def fit(x, y, least, most, kind):
    """The least number of nodes that hold the bound between two ends of the coordinate."""
    spline = CubicSpline(x, y)
    inside = (x >= least) & (x <= most)
    decimals = DIGITS - 1 - math.floor(math.log10(np.abs(y).max()))
    for count in range(4, NODES_MOST):
        nodes = np.linspace(least, most, count)
        step = nodes[1] - nodes[0]
        values = np.round(spline(nodes), decimals)
        slopes = np.round(limited(values, spline(nodes, 1) * step), decimals)
        error = np.abs(hermite(values, slopes, (x[inside] - least) / step) - y[inside])
        if kind == "fraction":
            error /= np.abs(y[inside])
        if error.max() <= BOUNDS[kind]:
            return Curve(least, 1 / step, values, slopes, decimals, error.max())
    raise SystemExit(f"{NODES_MOST} nodes do not hold {BOUNDS[kind]} of a {kind}")


def ends(line, least_pa, most_c):
    """Least and most pressure for which the temperature is tabled: that of the ends, rounded outwards."""
    most_pa = float(np.exp(CubicSpline(line.t_k, np.log(line.p_pa))(most_c + ICE_K)))
    unit = 10 ** (math.floor(math.log10(most_pa)) - 4)
    return least_pa, float(math.ceil(most_pa / unit) * unit)


def curves(liquid, vapour, heats, critical_k, most_c, pure):
    """Every curve of a fluid by its field's name, and the ends of the two pressure ranges."""
    s = np.sqrt(1 - liquid.t_k / critical_k)[::-1]
    by_s = [math.sqrt(1 - (c + ICE_K) / critical_k) for c in (most_c, LEAST_C)]
    dew_ln_p = CubicSpline(vapour.t_k, np.log(vapour.p_pa))
    least_pa = float(math.floor(math.exp(dew_ln_p(LEAST_C + ICE_K)) / 100) * 100)
    found, ranges = {}, {}
    for name, line in {"bubble": liquid, "dew": vapour}.items():
        ranges[name] = ends(line, least_pa, most_c)
        if pure and name == "dew":
            found["dew_pressure"], found["dew_temperature"] = found["bubble_pressure"], found["bubble_temperature"]
            continue
        ln_p = np.log(line.p_pa)
        found[f"{name}_pressure"] = fit(s, ln_p[::-1], *by_s, "logarithm")
        found[f"{name}_temperature"] = fit(ln_p, line.t_k, *map(math.log, ranges[name]), "temperature")
    found["liquid_density"] = fit(s, liquid.kg_m3[::-1], *by_s, "fraction")
    found["vapour_density"] = fit(s, np.log(vapour.kg_m3)[::-1], *by_s, "logarithm")
    shift = LIQUID_AT_0_C_J_KG - CubicSpline(liquid.t_k, liquid.j_kg)(ICE_K)
    found["liquid_enthalpy"] = fit(s, liquid.j_kg[::-1] + shift, *by_s, "enthalpy")
    found["vapour_enthalpy"] = fit(s, vapour.j_kg[::-1] + shift, *by_s, "enthalpy")
    for field, j_kg_k in zip(["vapour_specific_heat", "superheated_specific_heat"], heats):
        found[field] = fit(s, np.log(j_kg_k)[::-1], *by_s, "logarithm, loose")
    return found, ranges


def nodes_text(static, curve):
    """The nodes as a Rust array."""
    pairs = [f"[{v:.{curve.decimals}f},{d:.{curve.decimals}f}]" for v, d in zip(curve.values, curve.slopes)]
    lines = [",".join(pairs[i : i + 5]) + ",\n" for i in range(0, len(pairs), 5)]
    return f"#[rustfmt::skip]\nstatic {static}: [[f64; 2]; {len(pairs)}] = [\n{''.join(lines)}];\n"


def field_text(field, curve, static):
    """A field of the table as rustfmt writes it."""
    parts = [f"least: {float(curve.least)!r}", f"per_step: {float(curve.per_step)!r}", f"nodes: &{static}"]
    line = f"    {field}: Curve {{ {', '.join(parts)} }},\n"
    if len(line) <= WIDTH + 1:
        return line
    return f"    {field}: Curve {{\n" + "".join(f"        {part},\n" for part in parts) + "    },\n"


def source(name):
    """Which equation of state, for the header."""
    if name in MIXTURES:
        return f"mixture {name}.mix"
    return f"{'pseudo-pure' if name in PSEUDO_PURE else 'pure'} fluid, {get_BibTeXKey(name, 'EOS')}"


def rust(name, critical_k, critical_pa, most_c, found, ranges):
    """The text of a table."""
    same = {}
    for field, curve in found.items():
        same.setdefault(id(curve), field.upper() if name not in PURE else field.upper().replace("BUBBLE_", ""))
    once = {same[id(curve)]: curve for curve in found.values()}
    worst = {"ln p": "pressure", "T": "temperature", "density": "density", "enthalpy": "enthalpy", "specific heat": "heat"}
    errors = {what: max(c.error for f, c in found.items() if f.endswith(ending)) for what, ending in worst.items()}
    shown = ", ".join(f"{what} {error:.1e}{ {'T': ' K', 'enthalpy': ' J/kg'}.get(what, '') }" for what, error in errors.items())
    fields = "".join(field_text(field, curve, same[id(curve)]) for field, curve in found.items())
    return (
        f"//! {name}. Written by generate.py from CoolProp {CoolProp.__version__}, HEOS, {source(name)}. Do not edit.\n"
        f"//! Worst error beside CoolProp: {shown}.\n\n"
        "use super::{Curve, Table};\n\n"
        f"pub(super) static TABLE: Table = Table {{\n"
        f"    critical_k: {round(critical_k, 4)!r},\n    critical_pa: {round(critical_pa, -1)!r},\n    most_c: {most_c!r},\n"
        f"    bubble_pa: {list(ranges['bubble'])!r},\n    dew_pa: {list(ranges['dew'])!r},\n{fields}}};\n"
        + "".join(nodes_text(static, curve) for static, curve in once.items())
    )


def main():
    """Writes every table."""
    written = 0
    for name in PURE + PSEUDO_PURE + MIXTURES:
        mixture = name in MIXTURES
        full_name = f"{name}.mix" if mixture else name
        state = AbstractState("HEOS", full_name)
        critical_k, critical_pa = critical(state, name)
        critical_k = round(critical_k, 4)
        most_c = math.floor((critical_k - BELOW_CRITICAL_K - ICE_K) * 10) / 10
        span_k = SAMPLES_LEAST_C + ICE_K, most_c + SAMPLES_ABOVE_K + ICE_K
        temperatures = critical_k * (1 - np.linspace(*(math.sqrt(1 - t / critical_k) for t in span_k), SAMPLES) ** 2)
        liquid, vapour = (follow(state, quality, temperatures, mixture) for quality in (0, 1))
        print(name, f"to {most_c} °C; bubble:", beside_direct_flash(state, 0, liquid))
        print(" " * len(name), "dew:", beside_direct_flash(state, 1, vapour))
        heats = specific_heats(full_name, vapour)
        found, ranges = curves(liquid, vapour, heats, critical_k, most_c, name in PURE)
        text = rust(name, critical_k, critical_pa, most_c, found, ranges)
        (HERE / f"{name.lower()}.rs").write_text(text, encoding="utf-8")
        written += len(text.encode())
        print(" " * len(name), {field: len(curve.values) for field, curve in found.items()})
    print(f"{written} bytes written")


if __name__ == "__main__":
    main()
