"""Flow by bucket and stopwatch, by a counter and by a meter, and power by a counter, with their doubts, against GTC."""

import coilside
import GTC
from gridding import Point, grid

SOURCE = "definition (volume over time), doubt by GTC 1.5.1 with rectangular limits"
POINTS = 220


def within(limit):
    """An error that lies within ± limit."""
    return GTC.ureal(0, limit / 3**0.5)


def rounded(step):
    """What a display of that step hides."""
    return GTC.ureal(0, step / 12**0.5)


def bucket(draw):
    volume, time = draw.uniform(5, 20), draw.uniform(20, 300)
    volume_limit, reaction = draw.uniform(0.01, 0.5), draw.uniform(0.05, 0.5)
    filling = coilside.BucketFilling(volume_l=volume, volume_limit_l=volume_limit, time_s=time, reaction_limit_s=reaction)
    minutes = (time + within(reaction) + within(reaction)) / 60
    return f"{volume:.2f} l in {time:.1f} s", coilside.bucket_flow(filling), (volume + within(volume_limit)) / minutes


def counted(draw, function, most_each_s, scale):
    start, time = draw.uniform(0, 1e4), draw.uniform(60, 3600)
    count = draw.uniform(0.1, 1) * most_each_s * time
    time_limit, percent, step = draw.uniform(0.1, 2), draw.uniform(0.5, 5), count / draw.uniform(50, 5000)
    period = coilside.CountedPeriod(
        start=start, end=start + count, time_s=time, time_limit_s=time_limit, percent_of_count=percent, step=step
    )
    read = count + within(count * percent / 100) + rounded(step) + rounded(step)
    return f"{count:.4g} in {time:.0f} s", function(period), scale * read / (time + within(time_limit))


def meter(draw):
    flow, percent, digits = draw.uniform(1, 100), draw.uniform(0.1, 5), draw.uniform(0, 5)
    step = draw.choice((0.01, 0.1, 1.0))
    ours = coilside.meter_flow(reading_l_min=flow, percent_of_reading=percent, digits=digits, step_l_min=step)
    return f"{flow:.2f} l/min", ours, flow + within(flow * percent / 100 + digits * step) + rounded(step)


WAYS = {
    "flow by bucket": bucket,
    "flow by a counter": lambda draw: counted(draw, coilside.counted_flow, 1.0, 60),
    "power by a counter": lambda draw: counted(draw, coilside.counted_power, 2e-3, 3.6e6),
    "flow by a meter": meter,
}


def register(name, way):
    # The counts are differences of far larger ones.
    @grid(name, bound=1e-9, kind="rel", source=SOURCE)
    def value(draw):
        for _ in range(POINTS):
            at, ours, reference = way(draw)
            yield Point(at, ours.value, reference.x)

    @grid(f"doubt of {name}", bound=1e-9, kind="rel", source=SOURCE)
    def doubt(draw):
        for _ in range(POINTS):
            at, ours, reference = way(draw)
            yield Point(at, ours.standard_u, reference.u)


for name, way in WAYS.items():
    register(name, way)
