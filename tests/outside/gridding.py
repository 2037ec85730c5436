"""Grids of random inputs against reference libraries.

A grid is a function in a file of `grids/` that draws inputs from the `random.Random` it is given and yields a `Point` for each:
where it is, what Coilside gives, what the reference gives. `@grid` names it with its bound and its source:

    @grid("saturation pressure of R290", bound=5e-4, kind="rel", source="CoolProp 8.0.0, HEOS, Lemmon 2009")
    def saturation_pressure(draw):
        for _ in range(POINTS):
            t_c = draw.uniform(-40, 90)
            yield Point(f"{t_c:.2f} °C", coilside.saturation("R290", t_c).dew_pressure_pa, PropsSI(…))

Fewer than `POINTS_LEAST` points fail, so that a grid cannot shrink away; so does a value that is no finite number.
"""

import importlib.util
import math
import pathlib
import random
import zlib
from dataclasses import dataclass

from report import Worst

POINTS_LEAST = 200
GRIDS = []


@dataclass(frozen=True)
class Point:
    """One input, our value and the reference's."""

    at: str
    ours: float
    reference: float


@dataclass(frozen=True)
class Grid:
    """A named grid with its bound."""

    name: str
    bound: float
    kind: str
    unit: str
    source: str
    points: object

    def worst(self):
        """The worst point, or a text that says why the grid fails."""
        count, worst = 0, None
        # A grid's points stay the same when another is added before it.
        draw = random.Random(zlib.crc32(self.name.encode()))
        for point in self.points(draw):
            count += 1
            for value in (point.ours, point.reference):
                if isinstance(value, bool) or not isinstance(value, (int, float)) or not math.isfinite(value):
                    return f"no number at {point.at}: ours {point.ours!r}, reference {point.reference!r}"
            error = abs(point.ours - point.reference)
            if self.kind == "rel":
                if point.reference == 0:
                    return f"the reference is zero at {point.at}: a relative bound means nothing there"
                error /= abs(point.reference)
            if worst is None or error > worst.error:
                worst = Worst(self.name, 0, error, self.bound, self.unit, point.at, self.source)
        if count < POINTS_LEAST:
            return f"only {count} points of at least {POINTS_LEAST}"
        return Worst(worst.subject, count, worst.error, worst.bound, worst.unit, worst.at, worst.source)


def grid(name, *, bound, kind="abs", unit="", source):
    """Registers a grid. `kind` is `abs` (bound in `unit`) or `rel` (bound a fraction)."""
    if kind not in ("abs", "rel"):
        raise ValueError(f"{name}: kind is {kind!r}")

    def register(points):
        GRIDS.append(Grid(name, bound, kind, unit if kind == "abs" else "(rel)", source, points))
        return points

    return register


def run(folder, until_wrong=False):
    """Runs every grid of a folder, or those up to the first that fails; gives the worst points and the failures as texts."""
    for path in sorted(pathlib.Path(folder).glob("*.py")):
        spec = importlib.util.spec_from_file_location(f"grid_{path.stem}", path)
        spec.loader.exec_module(importlib.util.module_from_spec(spec))
    worsts, failures = [], []
    for one in GRIDS:
        if until_wrong and failures:
            break
        try:
            worst = one.worst()
        except Exception as error:  # noqa: BLE001 whatever a grid raises is its failure, not the end of the run
            worst = f"raised {error!r}"
        if isinstance(worst, str):
            failures.append(f"{one.name}: {worst}")
            continue
        worsts.append(worst)
        if not worst.share <= 1:
            failures.append(f"{one.name}: {worst.error:.3g} {worst.unit} at {worst.at}, bound {worst.bound:g}")
    return worsts, failures
