"""The slope of readings over the years, by Theil and Sen, against scipy."""

import coilside
from gridding import Point, grid
from scipy.stats import theilslopes

POINTS = 250
SOURCE = "scipy 1.17.1 stats.theilslopes(y, x, 0.95)"


def readings(draw):
    """A few or many readings over some years, often several of one day or of one value."""
    count = draw.randint(3, 30)
    step = draw.choice((1e-3, 0.5, 1.0))
    slope, scatter = draw.uniform(-3, 3), draw.uniform(0, 2)
    xs = [round(draw.uniform(0, 12) / step) * step for _ in range(count)]
    if len(set(xs)) < 2:
        xs[0] += 1.0
    return [(x, round(slope * x + draw.gauss(10, scatter), draw.choice((0, 1, 6)))) for x in xs]


def both(draw, field, theirs):
    for _ in range(POINTS):
        points = readings(draw)
        reference = theilslopes([y for _, y in points], [x for x, _ in points], 0.95)
        ours = coilside.theil_sen([coilside.TrendPoint(x=x, y=y) for x, y in points])
        yield Point(f"{len(points)} points from {points[0]}", getattr(ours, field), float(getattr(reference, theirs)))


@grid("slope over the years", bound=1e-9, source=SOURCE)
def slope(draw):
    yield from both(draw, "slope", "slope")


@grid("where the line over the years begins", bound=1e-8, source=SOURCE)
def intercept(draw):
    yield from both(draw, "intercept", "intercept")


@grid("least slope over the years", bound=1e-9, source=SOURCE)
def least(draw):
    yield from both(draw, "least", "low_slope")


@grid("greatest slope over the years", bound=1e-9, source=SOURCE)
def most(draw):
    yield from both(draw, "most", "high_slope")
