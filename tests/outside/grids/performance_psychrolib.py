"""The performance model's factors for air machines, worked out from its own description with PsychroLib's wet bulb, and their doubt by
GTC. How right the model is, `performance_model.py` measures; this checks that the core computes what it says."""

import coilside
import GTC
import psychrolib
from gridding import Point, grid

SOURCE = "the model's description over PsychroLib 2.5.0 and GTC 1.5.1"
POINTS = 220
# Within so much of 0 °C a wet and an iced bulb may both have a solution, and the two libraries give one of them.
TWO_BULBS_K = 1.5
PRESSURE_PA = 101_325.0

psychrolib.SetUnitSystem(psychrolib.SI)


def wet_bulb(air_c, humidity):
    """With straight slopes through the values, so that GTC can carry doubt through it."""

    def value(t, rh):
        return psychrolib.GetTWetBulbFromRelHum(t, rh, PRESSURE_PA)

    t, rh = air_c.x, humidity.x
    by_t = (value(t + 0.05, rh) - value(t - 0.05, rh)) / 0.1
    by_rh = (value(t, rh + 0.002) - value(t, rh - 0.002)) / 0.004
    return value(t, rh) + by_t * (air_c - t) + by_rh * (humidity - rh)


def counted_twice(value, least, most):
    """A kelvin outside the table counts twice."""
    return value + value - min(max(value, least), most)


class Case:
    """One pair of conditions, as the core takes it and with GTC's source and water temperatures."""

    def __init__(self, draw):
        self.humidity, self.which = GTC.ureal(0, 3**-0.5), GTC.ureal(0, 3**-0.5)
        air = draw.uniform(5, 30)
        water = draw.uniform(max(air, 25), 50)
        self.start = self.at(draw, air, water)
        self.end = self.at(draw, air + draw.uniform(-8, 8), water + draw.uniform(0, 12))

    def at(self, draw, air, inlet):
        outlet = inlet + draw.uniform(2, 12)
        humidity = draw.uniform(0.3, 0.95)
        while abs(psychrolib.GetTWetBulbFromRelHum(air, humidity, PRESSURE_PA)) < TWO_BULBS_K:
            air += 0.5
        values = {"source_c": air, "source_rh": humidity, "water_in_c": inlet, "water_out_c": outlet}
        limits = {"source_c": 0.5, "source_rh": 0.03, "water_in_c": 0.3, "water_out_c": 0.3}
        core = {name: coilside.ReadingValue(value=values[name], error_limit=limits[name]) for name in values}
        gtc = {name: GTC.ureal(values[name], limits[name] / 3**0.5) for name in values}
        wet = wet_bulb(gtc["source_c"], gtc["source_rh"])
        open_source = (air - wet.x - 1) / 2
        source = (gtc["source_c"] + wet + 1) / 2 + open_source * self.humidity
        mean, by_outlet = (gtc["water_in_c"] + gtc["water_out_c"]) / 2, gtc["water_out_c"] - 2.5
        water = (mean + by_outlet) / 2 + (by_outlet.x - mean.x) / 2 * self.which
        return coilside.ConditionReadings(pressure_pa=PRESSURE_PA, **core), source, water

    def both(self):
        """The core's factors, and GTC's of COP and of capacity."""
        (from_conditions, s0, w0), (to_conditions, s1, w1) = self.start, self.end
        model = coilside.performance_error("air fixed")
        source_k = counted_twice(s1.x, -7, 12) - counted_twice(s0.x, -7, 12)
        water_k = counted_twice(w1.x, 21.5, 49.5) - counted_twice(w0.x, 21.5, 49.5)

        def doubt(u):
            return 1 + u * (source_k * GTC.ureal(0, 1) + water_k * GTC.ureal(0, 1))

        cop = (w1 + 278.15) / (w1 + 15 - s1) / ((w0 + 278.15) / (w0 + 15 - s0)) * doubt(model.cop_u_per_k)
        growth = model.capacity_by_source_per_k * (s1 - s0) + model.capacity_by_water_per_k * (w1 - w0)
        capacity = GTC.exp(growth) * doubt(model.capacity_u_per_k)
        ours = coilside.performance_ratios("air fixed", from_conditions, to_conditions)
        return f"air {s0.x:.1f} to {s1.x:.1f} °C, water {w0.x:.1f} to {w1.x:.1f} °C", ours, cop, capacity


def cases(draw):
    return (Case(draw).both() for _ in range(POINTS))


@grid("factor of COP between conditions", bound=1e-4, kind="rel", source=SOURCE)
def cop_value(draw):
    for at, ours, cop, _ in cases(draw):
        yield Point(at, ours.cop.value, cop.x)


@grid("doubt of the factor of COP", bound=2e-3, kind="rel", source=SOURCE)
def cop_doubt(draw):
    for at, ours, cop, _ in cases(draw):
        yield Point(at, ours.cop.standard_u, cop.u)


@grid("factor of capacity between conditions", bound=1e-4, kind="rel", source=SOURCE)
def capacity_value(draw):
    for at, ours, _, capacity in cases(draw):
        yield Point(at, ours.capacity.value, capacity.x)


@grid("doubt of the factor of capacity", bound=2e-3, kind="rel", source=SOURCE)
def capacity_doubt(draw):
    for at, ours, _, capacity in cases(draw):
        yield Point(at, ours.capacity.standard_u, capacity.u)


@grid("expected COP from two rated points", bound=1e-4, kind="rel", source=SOURCE)
def expected(draw):
    for _ in range(POINTS):
        case = Case(draw)
        at, _, cop, _ = case.both()
        (near, _, _), (site, s1, w1) = case.start, case.end
        rated_cop = draw.uniform(2.5, 5)
        # A point much further away than the other, which must not be taken.
        far = coilside.ConditionReadings(
            source_c=coilside.ReadingValue(value=max(s1.x - 25, -24)),
            source_rh=coilside.ReadingValue(value=0.85),
            pressure_pa=PRESSURE_PA,
            water_in_c=coilside.ReadingValue(value=w1.x - 22),
            water_out_c=coilside.ReadingValue(value=w1.x - 17),
        )
        points = [
            coilside.RatedPoint(
                conditions=conditions,
                capacity_w=coilside.ReadingValue(value=3000.0),
                cop=coilside.ReadingValue(value=value),
            )
            for conditions, value in ((far, 9.0), (near, rated_cop))
        ]
        ours = coilside.expected_performance("air fixed", points, site)
        yield Point(at, ours.cop.value, rated_cop * cop.x)
