#!/usr/bin/env python3
"""Coilside's science against general-purpose peers, in one run, on the same inputs, as ratios: smaller is better for us.

    tests/bench/run.py PROGRAM OUT.json      PROGRAM is the release build of coilside-bench

How it is made fair. Each side is timed in its fastest round of several over the same random inputs, and their results are compared
first. Ours is called from Rust, one call after another. CoolProp's states are called from Python, and what two empty method calls
cost there is taken off; `PropsSI` and PsychroLib (compiled by numba) get the whole array in one call. Prints a table, writes the
list, and closes with `N passed, N failed`: one for each ratio within its goal.
"""

import json
import math
import pathlib
import random
import subprocess
import sys
import time

import CoolProp
import numpy as np
import psychrolib
from CoolProp.CoolProp import ALTERNATIVE_TABLES_DIRECTORY, AbstractState, PropsSI, set_config_string

INPUTS = 4096
ROUNDS = 9
GOAL = 0.2  # of the project; where it names none, not slower than the peer
NO_GOAL = 1.0
ICE_K = 273.15


def ours(program, case, inputs):
    """Nanoseconds a call, and the results."""
    lines = "\n".join(" ".join(repr(number) for number in numbers) for numbers in inputs)
    answer = subprocess.run([program, *case.split()], input=lines, capture_output=True, text=True, check=True)
    answer = json.loads(answer.stdout)
    return answer["ns"], np.array(answer["values"])


def fastest(round_of_all, count):
    """Nanoseconds of one of `count` in the fastest round."""
    best = math.inf
    for _ in range(ROUNDS):
        begun = time.perf_counter_ns()
        round_of_all()
        best = min(best, time.perf_counter_ns() - begun)
    return best / count


def by_state(backend, name, pressures):
    """The dew temperature from an AbstractState: nanoseconds without the calls themselves, and the results."""
    state = AbstractState(backend, name)
    update, temperature, pair = state.update, state.T, CoolProp.PQ_INPUTS

    def all_of_them():
        for p_pa in pressures:
            update(pair, p_pa, 1.0)
            temperature()

    def empty_calls():
        for _ in pressures:
            temperature()
            temperature()

    values = []
    for p_pa in pressures:
        update(pair, p_pa, 1.0)
        values.append(temperature() - ICE_K)
    return fastest(all_of_them, len(pressures)) - fastest(empty_calls, len(pressures)), np.array(values)


def by_props_si(name, pressures):
    """The same from PropsSI, the whole array at once (fewer: it is slow)."""
    pressures = np.array(pressures[:256])
    call = lambda: PropsSI("T", "P", pressures, "Q", 1.0, name)  # noqa: E731
    return fastest(call, len(pressures)), call() - ICE_K


def agree(what, mine, theirs, bound):
    """Fails if the two sides do not compute the same thing."""
    worst = np.abs(mine[: len(theirs)] - theirs).max()
    if not worst <= bound:
        raise SystemExit(f"{what}: the results differ by {worst:.3g}, more than {bound:g}")


def dew_temperatures(program, draw, name, least_pa, most_pa):
    """Saturation temperature from pressure against everything CoolProp has for it."""
    pressures = [math.exp(draw.uniform(math.log(least_pa), math.log(most_pa))) for _ in range(INPUTS)]
    ns, values = ours(program, f"dew_temperature {name}", [[p] for p in pressures])
    peers = {
        "CoolProp BICUBIC table": (by_state("BICUBIC&HEOS", name, pressures), 0.1),
        "CoolProp TTSE table": (by_state("TTSE&HEOS", name, pressures), 0.1),
        "CoolProp HEOS": (by_state("HEOS", name, pressures), 0.02),
        "CoolProp PropsSI": (by_props_si(name, pressures), 0.02),
    }
    for peer_name, ((peer_ns, peer_values), bound) in peers.items():
        agree(f"{name}, {peer_name}", values, peer_values, bound)
        yield f"saturation temperature from pressure, {name}", ns, peer_ns, peer_name, GOAL


def saturation_states(program, draw, name, least_c, most_c):
    """Pressure, densities and enthalpies of both phases from a temperature, against both flashes."""
    temperatures = [draw.uniform(least_c, most_c) for _ in range(INPUTS)]
    ns, values = ours(program, f"saturation {name}", [[t] for t in temperatures])
    state = AbstractState("HEOS", name)

    def all_of_them():
        for t_c in temperatures:
            for quality in (0.0, 1.0):
                state.update(CoolProp.QT_INPUTS, quality, t_c + ICE_K)
                state.p(), state.rhomass(), state.hmass()

    def empty_calls():
        for _ in range(8 * len(temperatures)):
            state.T()

    expected = PropsSI("P", "T", np.array(temperatures) + ICE_K, "Q", 1.0, name)
    agree(f"{name}, saturation", np.log(values), np.log(expected), 5e-4)
    peer_ns = fastest(all_of_them, INPUTS) - fastest(empty_calls, INPUTS)
    yield f"both saturated phases from temperature, {name}", ns, peer_ns, "CoolProp HEOS", NO_GOAL


def wet_bulbs(program, draw):
    """The wet bulb from humidity, alone and with all of moist air's state."""
    inputs = [[draw.uniform(-15, 45), draw.uniform(0.1, 1.0), draw.uniform(70_000, 104_000)] for _ in range(INPUTS)]
    psychrolib.SetUnitSystem(psychrolib.SI)
    columns = [np.array(column) for column in zip(*inputs)]
    peer_values = psychrolib.GetTWetBulbFromRelHum(*columns)  # compiles
    # Around 0 °C two wet bulbs are right, and the two sides may choose differently.
    clear = np.abs(peer_values) > 0.5
    peer_ns = fastest(lambda: psychrolib.GetTWetBulbFromRelHum(*columns), INPUTS)
    cases = {
        "wet_bulb": ("wet bulb from humidity", GOAL),
        "air_from_humidity": ("dew point, wet bulb and four more of moist air", NO_GOAL),
    }
    for case, (name, goal) in cases.items():
        ns, values = ours(program, case, inputs)
        agree(name, values[clear], peer_values[clear], 0.002)
        yield name, ns, peer_ns, "PsychroLib with numba, the wet bulb", goal


def main(program, out):
    """Runs every bench."""
    tables = pathlib.Path(out).resolve().parent / "bench-coolprop"
    tables.mkdir(parents=True, exist_ok=True)
    set_config_string(ALTERNATIVE_TABLES_DIRECTORY, f"{tables}/")
    draw = random.Random(4)
    found = [
        *dew_temperatures(program, draw, "R290", 2e5, 3.5e6),
        *dew_temperatures(program, draw, "R410A", 3e5, 4e6),
        *saturation_states(program, draw, "R290", -30, 85),
        *wet_bulbs(program, draw),
    ]
    rows = [
        {
            "name": name,
            "ours": round(mine / 1e3, 5),
            "peer": round(theirs / 1e3, 5),
            "peer_name": peer_name,
            "unit": "µs a call",
            "ratio": round(mine / theirs, 4),
            "goal": goal,
        }
        for name, mine, theirs, peer_name, goal in found
    ]
    pathlib.Path(out).write_text(json.dumps(rows, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
    print(f"{'':52} {'ours':>8} {'peer':>8}  {'ratio':>6} {'goal':>5}   µs a call")
    for row in rows:
        verdict = "" if row["ratio"] <= row["goal"] else "   MISSED"
        print(
            f"{row['name']:52} {row['ours']:8.4f} {row['peer']:8.4f}  {row['ratio']:6.3f} {row['goal']:5.2f}   "
            f"{row['peer_name']}{verdict}"
        )
    missed = sum(row["ratio"] > row["goal"] for row in rows)
    print(f"{len(rows) - missed} passed, {missed} failed")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
