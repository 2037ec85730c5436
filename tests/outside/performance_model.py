#!/usr/bin/env python3
"""How wrong the core's performance model is, measured on the rated machines of hplib's table.

tests/outside/performance_model.py          prints the distribution by kind of machine and writes performance_error.tsv beside this file

The table is `hplib_database.csv` of the PyPI package hplib 1.9 (T. Tjaden, H. Hoops, K. Rösken; CC BY 4.0), read from the installed package;
nothing of it is copied here. It holds, for 505 machines of the public Keymark test results of March 2021 (and 6 made-up 'Generic'
rows, left out), linear fits of COP and heating power to eight tests each after EN 14825, average climate. Of each machine:

    reference = ln (fit at the site / fit at the rated point)        model = ln of the ratio that the core gives for the same two points
    error = model − reference        error a kelvin = error / √(Δsource² + Δwater²)

Rated point and site are both drawn from where the tests lie: outdoor air −7…12 °C, evenly; flow temperature evenly between the lines
through the tests of low (34 °C at −7 to 24 °C at 12) and medium temperature (52 °C at −7 to 30 °C at 12). Pairs less than 1 K apart are
left out. Brine stands at 0 °C and well water at 10 °C in every test.

What this does not tell: these are **space-heating** machines. No open table of hot-water ratings was found, so nothing here is
measured at 20 °C of air with 55 °C of water. The fits are linear and smooth, the tests are not: the table's own mean absolute errors
(MAPE) are counted on top, as two independent errors at the drawn conditions' mean distance. Variable-speed machines were tested at
the house's load, so their capacity says nothing of what they can give; and their COP follows the load too.
"""

import math
import os
import pathlib
import sys
from dataclasses import dataclass

import hplib
import numpy
import pandas

HERE = pathlib.Path(__file__).resolve().parent
TABLE = HERE / "performance_error.tsv"
MACHINES = 505
PAIRS = 4000
SEED = 505
PERCENT = (2.5, 16, 50, 84, 97.5)
# Of a normal distribution: standard deviation over mean absolute deviation.
MEAN_ABSOLUTE = math.sqrt(math.pi / 2)
# hplib's group, the core's name, and the source's fixed temperature where it has one. Group 3 has no machine.
KINDS = (
    (4, "air fixed", None),
    (1, "air regulated", None),
    (5, "brine fixed", 0.0),
    (2, "brine regulated", 0.0),
    (6, "water fixed", 10.0),
)
COP = ("p1_COP [-]", "p2_COP [-]", "p3_COP [-]", "p4_COP [-]")
HEAT = ("p1_P_th [1/°C]", "p2_P_th [1/°C]", "p3_P_th [-]", "p4_P_th [1/°C]")
# Flow less return in hplib.
RISE_K = 5.0


@dataclass(frozen=True)
class Points:
    """Conditions: outdoor air, source and flow temperature, °C."""

    outdoor: numpy.ndarray
    source: numpy.ndarray
    flow: numpy.ndarray


@dataclass(frozen=True)
class Spread:
    """The model's error for one kind and one quantity."""

    kind: str
    quantity: str
    machines: int
    by_source_per_k: float
    by_water_per_k: float
    total: tuple
    per_k: tuple
    model_u_per_k: float
    fit_u_per_k: float

    @property
    def u_per_k(self):
        """What the core uses."""
        return math.hypot(self.model_u_per_k, self.fit_u_per_k)


def machines():
    """The table without its made-up rows."""
    path = pathlib.Path(hplib.__file__).parent / "hplib_database.csv"
    table = pandas.read_csv(path)
    table = table[table["Model"] != "Generic"]
    if len(table) != MACHINES:
        raise ValueError(f"{len(table)} machines in {path.name}, {MACHINES} expected")
    if sorted(table["Group"].unique()) != sorted(group for group, _, _ in KINDS):
        raise ValueError("the table's groups are not those known here")
    return table


def drawn(source_c):
    """Pairs of conditions: rated point, site, and their distance in kelvin."""
    draw = numpy.random.default_rng(SEED)

    def points():
        outdoor = draw.uniform(-7, 12, PAIRS)
        along = (outdoor + 7) / 19
        flow = draw.uniform(34 - 10 * along, 52 - 22 * along)
        return Points(outdoor, outdoor if source_c is None else numpy.full(PAIRS, source_c), flow)

    rated, site = points(), points()
    apart = numpy.hypot(site.source - rated.source, site.flow - rated.flow)
    keep = apart >= 1

    def kept(points):
        return Points(points.outdoor[keep], points.source[keep], points.flow[keep])

    return kept(rated), kept(site), apart[keep]


def fit(group, columns, points):
    """A fit of every machine (rows) at every point (columns)."""
    p = group[list(columns)].to_numpy()
    return p[:, 0:1] * points.source + p[:, 1:2] * points.flow + p[:, 2:3] + p[:, 3:4] * points.outdoor


def reference(group, columns, rated, site, least):
    """ln of the fits' ratio; no number where a fit gives what no machine does."""
    before, after = fit(group, columns, rated), fit(group, columns, site)
    sound = (before > least) & (after > least)
    return numpy.log(numpy.where(sound, after / before, numpy.nan))


def model(coilside, kind, rated, site):
    """ln of the core's COP ratio, and of its capacity ratio (no numbers for variable speed)."""

    def conditions(points, i):
        def reading(value):
            return coilside.ReadingValue(value=float(value))

        return coilside.ConditionReadings(
            source_c=reading(points.source[i]),
            source_rh=None,
            pressure_pa=101_325.0,
            water_in_c=reading(points.flow[i] - RISE_K),
            water_out_c=reading(points.flow[i]),
        )

    cop, capacity = [], []
    for i in range(len(rated.flow)):
        ratios = coilside.performance_ratios(kind, conditions(rated, i), conditions(site, i))
        cop.append(math.log(ratios.cop.value))
        capacity.append(math.log(ratios.capacity.value) if ratios.capacity else math.nan)
    return numpy.array(cop), numpy.array(capacity)


def percentiles(errors):
    return tuple(float(value) for value in numpy.nanpercentile(errors, PERCENT))


def spread(kind, quantity, group, errors, apart, mape, slopes=(math.nan, math.nan)):
    """The distribution of one quantity's errors."""
    per_k = percentiles(errors / apart)
    half = (per_k[3] - per_k[1]) / 2
    quarter = (per_k[4] - per_k[0]) / 4
    fit_u = MEAN_ABSOLUTE * group[mape].median() / 100 * math.sqrt(2) / float(apart.mean())
    return Spread(kind, quantity, len(group), *slopes, percentiles(errors), per_k, max(half, quarter), fit_u)


def slopes_of(reference, rated, site, source_c):
    """Least squares of the logarithm on both differences; no slope where the source stands still."""
    differences = [site.flow - rated.flow] if source_c is not None else [site.source - rated.source, site.flow - rated.flow]
    known = ~numpy.isnan(reference)
    columns = [numpy.broadcast_to(one, reference.shape)[known] for one in differences]
    solved = numpy.linalg.lstsq(numpy.column_stack(columns), reference[known], rcond=None)[0]
    return (math.nan, float(solved[0])) if source_c is not None else (float(solved[0]), float(solved[1]))


def measured(coilside):
    """Every kind's spreads of COP, and of capacity for fixed speed."""
    table = machines()
    spreads = []
    for number, kind, source_c in KINDS:
        group = table[table["Group"] == number]
        rated, site, apart = drawn(source_c)
        cop, capacity = model(coilside, kind, rated, site)
        spreads.append(spread(kind, "COP", group, cop - reference(group, COP, rated, site, 1.0), apart, "MAPE_COP"))
        if "regulated" in kind:
            continue
        of_fit = reference(group, HEAT, rated, site, 0.0)
        slopes = slopes_of(of_fit, rated, site, source_c)
        spreads.append(spread(kind, "capacity", group, capacity - of_fit, apart, "MAPE_P_th", slopes))
    return spreads


def alternatives():
    """Root mean square of COP's error with other models: between the water's and the source's own temperatures; between the core's
    refrigerant temperatures; and with slopes beside it, fitted on every other machine and tried on the rest."""
    table = machines()
    for number, kind, source_c in KINDS:
        group = table[table["Group"] == number]
        rated, site, _ = drawn(source_c)
        of_fit = reference(group, COP, rated, site, 1.0)

        def error(above_k, below_k):
            def ideal(points):
                hot_k = points.flow - RISE_K / 2 + above_k + 273.15
                return hot_k / (hot_k - 273.15 - points.source + below_k)

            return numpy.log(ideal(site) / ideal(rated)) - of_fit

        def rms(errors):
            return math.sqrt(float(numpy.nanmean(errors**2)))

        ours = error(5.0, 10.0)
        by_source, by_water = slopes_of(ours[::2], rated, site, source_c)
        sloped = ours - by_water * (site.flow - rated.flow)
        if source_c is None:
            sloped = sloped - by_source * (site.source - rated.source)
        print(
            f"{kind}: rms of ln COP's error: own temperatures {rms(error(0.0, 0.0)):.3f}, the core's {rms(ours):.3f}; "
            f"on every other machine the core's {rms(ours[1::2]):.3f}, with slopes of the others {rms(sloped[1::2]):.3f}"
        )


def page(spreads):
    """The table's text."""
    head = ["kind", "quantity", "machines", "by_source_per_k", "by_water_per_k"]
    head += [f"ln_{percent}" for percent in PERCENT] + [f"ln_per_k_{percent}" for percent in PERCENT]
    head += ["model_u_per_k", "fit_u_per_k", "u_per_k"]
    lines = ["\t".join(head)]
    for one in spreads:
        numbers = (one.by_source_per_k, one.by_water_per_k, *one.total, *one.per_k)
        numbers += (one.model_u_per_k, one.fit_u_per_k, one.u_per_k)
        shown = ["" if math.isnan(number) else f"{number:.5f}" for number in numbers]
        lines.append("\t".join([one.kind, one.quantity, str(one.machines), *shown]))
    return "\n".join(lines) + "\n"


def main():
    root = HERE.parent.parent
    target = pathlib.Path(os.environ.get("CARGO_TARGET_DIR", root / "target"))
    sys.path.insert(0, str(target / "bindings" / "python"))
    import coilside

    spreads = measured(coilside)
    print(f"{sum(one.machines for one in spreads if one.quantity == 'COP')} machines of hplib 1.9")
    for one in spreads:
        total = " ".join(f"{value:+.3f}" for value in one.total)
        print(f"{one.kind}, {one.quantity}, {one.machines} machines: ln(model/reference) at {PERCENT} %: {total}")
        per_k = " ".join(f"{100 * value:+.2f}" for value in one.per_k)
        print(f"    % a kelvin: {per_k}; standard uncertainty {100 * one.u_per_k:.2f} % a kelvin")
    alternatives()
    TABLE.write_text(page(spreads), encoding="utf-8")


if __name__ == "__main__":
    main()
