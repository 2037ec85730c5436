"""Verdicts, their probability, and rectangular doubt against scipy, GTC and a display that is rounded on purpose."""

import coilside
import GTC
import numpy
from gridding import Point, grid
from scipy.stats import norm

POINTS = 300
# A verdict as a number, to be compared.
VERDICTS = {"pass": 1, "too close to call": 0, "fail": -1}


def measured(draw):
    """A value with its doubt and one or two limits near it."""
    value, value_u = draw.uniform(-100, 100), 10 ** draw.uniform(-3, 2)
    lower = value + value_u * draw.uniform(-8, 4)
    upper = lower + value_u * draw.uniform(0, 12)
    lower, upper = draw.choice(((lower, upper), (lower, None), (None, upper)))
    shown = " to ".join("none" if limit is None else f"{limit:.4g}" for limit in (lower, upper))
    return value, value_u, lower, upper, f"{value:.4g} ± {value_u:.3g}, limits {shown}"


@grid("probability of conformity", bound=1e-13, source="scipy 1.17.1 norm; JCGM 106:2012, 7.3")
def probability(draw):
    for _ in range(POINTS):
        value, value_u, lower, upper, at = measured(draw)
        ours = coilside.conformance_probability(value=value, value_u=value_u, lower=lower, upper=upper)
        below = 0.0 if lower is None else norm.cdf(lower, value, value_u)
        above = 0.0 if upper is None else norm.sf(upper, value, value_u)
        yield Point(at, ours, float(1 - below - above))


@grid("verdicts", bound=0, source="scipy 1.17.1 norm: the error's probability against that beyond k; JCGM 106:2012, 8.3")
def verdicts(draw):
    for _ in range(POINTS):
        value, value_u, lower, upper, at = measured(draw)
        k = draw.choice((1, 2, 3, draw.uniform(0, 6)))
        ours = coilside.verdict(value=value, value_u=value_u, lower=lower, upper=upper, k=k)
        # How probable it is that the true value lies beyond each limit.
        beyond = [
            *([] if lower is None else [(norm.cdf(lower, value, value_u), norm.sf(lower, value, value_u))]),
            *([] if upper is None else [(norm.sf(upper, value, value_u), norm.cdf(upper, value, value_u))]),
        ]
        risk = norm.sf(k)
        if all(outside <= risk for outside, _ in beyond):
            reference = 1
        elif any(inside < risk for _, inside in beyond):
            reference = -1
        else:
            reference = 0
        yield Point(f"{at}, k {k:.2f}", VERDICTS[ours], reference)


@grid("doubt from limits", bound=1e-14, kind="rel", source="GTC 1.5.1 type_b.uniform")
def limits(draw):
    for _ in range(POINTS):
        half_width = 10 ** draw.uniform(-6, 6)
        ours = coilside.uncertainty_from_limits(half_width=half_width)
        yield Point(f"± {half_width:.4g}", ours, GTC.type_b.uniform(half_width))


@grid("doubt from a display's step", bound=1e-4, kind="rel", source="scatter of 200 000 values rounded to the step, numpy 2.4.6")
def resolution(draw):
    for _ in range(POINTS):
        step = 10 ** draw.uniform(-3, 2)
        true = numpy.linspace(-50 * step, 50 * step, 200_001)
        shown = numpy.round(true / step) * step
        yield Point(f"{step:.4g}", coilside.uncertainty_from_resolution(step=step), float(numpy.std(shown - true)))
