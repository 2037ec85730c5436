"""Heat, COP, conductance and their doubts against GTC, which propagates uncertainty by itself; water by the `iapws` package.

GTC carries the derivative of every step (JCGM 100:2008). Water's properties enter as straight lines through the two temperatures, with
slopes from iapws, which is exact to first order.
"""

import functools

import coilside
import GTC
import iapws
from gridding import Point, grid

SOURCE = "GTC 1.5.1 over iapws 1.5.5 (IAPWS-95 at 1 bar)"
POINTS = 220


@functools.lru_cache(maxsize=None)
def water(t_c):
    """Density, its slope by temperature, enthalpy and specific heat."""
    state = iapws.IAPWS95(T=t_c + 273.15, P=0.1)
    return state.rho, -state.rho * state.alfav, 1000 * state.h, 1000 * state.cp


def enthalpy(t):
    """Of an uncertain temperature."""
    _, _, h, cp = water(t.x)
    return h + cp * (t - t.x)


def density(t):
    rho, slope, _, _ = water(t.x)
    return rho + slope * (t - t.x)


def heat(flow, inlet, outlet):
    return flow / 60_000 * density(inlet) * (enthalpy(outlet) - enthalpy(inlet))


def test(draw):
    """Arguments of `heat_test`, and GTC's heat and COP of them."""
    inlet = round(draw.uniform(5, 60), 1)
    arguments = {
        "flow_l_min": draw.uniform(1, 60),
        "flow_u": draw.uniform(0.01, 1),
        "inlet_c": inlet,
        "inlet_u": draw.uniform(0, 0.4),
        "outlet_c": round(inlet + draw.uniform(2, 35), 1),
        "outlet_u": draw.uniform(0, 0.4),
        "shared_thermometer_u": draw.uniform(0, 0.5),
        "power_w": draw.uniform(400, 5000),
        "power_u": draw.uniform(1, 60),
    }
    shared = GTC.ureal(0, arguments["shared_thermometer_u"])
    flow, inlet, outlet, power = (
        GTC.ureal(arguments[value], arguments[u])
        for value, u in (("flow_l_min", "flow_u"), ("inlet_c", "inlet_u"), ("outlet_c", "outlet_u"), ("power_w", "power_u"))
    )
    reference = heat(flow, inlet + shared, outlet + shared)
    at = f"{arguments['inlet_c']:.1f} to {arguments['outlet_c']:.1f} °C, {arguments['flow_l_min']:.1f} l/min"
    return at, coilside.heat_test(**arguments), reference, reference / power


@grid("heat given to the water", bound=1e-4, kind="rel", source=SOURCE)
def heat_value(draw):
    for _ in range(POINTS):
        at, ours, reference, _ = test(draw)
        yield Point(at, ours.heat_w, reference.x)


@grid("doubt of heat given to the water", bound=2e-4, kind="rel", source=SOURCE)
def heat_doubt(draw):
    for _ in range(POINTS):
        at, ours, reference, _ = test(draw)
        yield Point(at, ours.heat_u, reference.u)


@grid("coefficient of performance", bound=1e-4, kind="rel", source=SOURCE)
def cop_value(draw):
    for _ in range(POINTS):
        at, ours, _, reference = test(draw)
        yield Point(at, ours.cop, reference.x)


@grid("doubt of the coefficient of performance", bound=2e-4, kind="rel", source=SOURCE)
def cop_doubt(draw):
    for _ in range(POINTS):
        at, ours, _, reference = test(draw)
        yield Point(at, ours.cop_u, reference.u)


class Read:
    """Readings by instruments: as the core takes them, and as GTC does, with one scale error for each instrument."""

    def __init__(self, draw):
        self.draw, self.scales = draw, {}

    def both(self, value, limit, instrument):
        common, step = self.draw.uniform(0, 1), limit / 5
        core = coilside.ReadingValue(
            value=value, error_limit=limit, step=step, scatter_u=limit / 10, instrument=instrument, common=common
        )
        u = limit / 3**0.5
        scale = self.scales.setdefault(instrument, GTC.ureal(0, 1))
        own = GTC.ureal(0, ((1 - common) * u**2 + step**2 / 12 + (limit / 10) ** 2) ** 0.5)
        return core, value + common**0.5 * u * scale + own

    def test(self, inlet, outlet):
        flow, flow_gtc = self.both(self.draw.uniform(5, 30), 0.3, "flow")
        cold, cold_gtc = self.both(inlet, 0.3, "thermometer")
        hot, hot_gtc = self.both(outlet, 0.3, "thermometer")
        heat_gtc = heat(flow_gtc, cold_gtc, hot_gtc)
        power, power_gtc = self.both(heat_gtc.x / self.draw.uniform(2, 5), 30, "wattmeter")
        readings = coilside.HeatReadings(flow_l_min=flow, inlet_c=cold, outlet_c=hot, power_w=power)
        return readings, heat_gtc, cold_gtc, hot_gtc, power_gtc


def condensers(draw):
    """A condenser read with the thermometer of its heat, and GTC's LMTD, UA and fouling of it."""
    for _ in range(POINTS):
        read = Read(draw)
        inlet = round(draw.uniform(10, 50), 1)
        outlet = round(inlet + draw.uniform(3, 10), 1)
        readings, heat_gtc, cold, hot, _ = read.test(inlet, outlet)
        condensing, condensing_gtc = read.both(outlet + draw.uniform(2, 8), 0.3, "thermometer")
        a, b = condensing_gtc - hot, condensing_gtc - cold
        lmtd = (a - b) / GTC.log(a / b)
        ua = heat_gtc / lmtd
        area, area_gtc = read.both(draw.uniform(0.3, 2), 0.02, "sheet")
        clean, clean_gtc = read.both(ua.x * draw.uniform(1.1, 1.8), 20, "clean")
        ours = coilside.condenser_by_instruments(readings, condensing, area, clean)
        yield f"{inlet:.1f} to {outlet:.1f} at {condensing.value:.1f} °C", ours, lmtd, ua, area_gtc * (1 / ua - 1 / clean_gtc)


@grid("doubt of a mean temperature difference", bound=1e-6, kind="rel", source=SOURCE)
def lmtd_doubt(draw):
    for at, ours, reference, _, _ in condensers(draw):
        yield Point(at, ours.lmtd_k.standard_u, reference.u)


@grid("doubt of a conductance with shared thermometers", bound=2e-4, kind="rel", source=SOURCE)
def ua_doubt(draw):
    for at, ours, _, reference, _ in condensers(draw):
        yield Point(at, ours.ua_w_k.standard_u, reference.u)


@grid("doubt of a fouling resistance", bound=2e-4, kind="rel", source=SOURCE)
def fouling_doubt(draw):
    for at, ours, _, _, reference in condensers(draw):
        yield Point(at, ours.fouling_m2_k_w.standard_u, reference.u)


def works(draw):
    """Brine machines as found and as left with one set of instruments; GTC's COP of both at like conditions."""
    model = coilside.performance_error("brine fixed")
    slope_s, slope_w = GTC.ureal(0, 1), GTC.ureal(0, 1)
    for _ in range(POINTS):
        read = Read(draw)
        which = GTC.ureal(0, 3**-0.5)

        def test(inlet, rise, source):
            readings, heat_gtc, cold, hot, power = read.test(inlet, inlet + rise)
            brine, brine_gtc = read.both(source, 0.4, "brine thermometer")
            conditions = coilside.ConditionReadings(
                source_c=brine,
                source_rh=None,
                pressure_pa=101_325.0,
                water_in_c=readings.inlet_c,
                water_out_c=readings.outlet_c,
            )
            mean, by_outlet = (cold + hot) / 2, hot - 2.5
            # The open choice is a cause whose size is taken as it is read.
            water = (mean + by_outlet) / 2 + (by_outlet.x - mean.x) / 2 * which
            case = coilside.TestAtConditions(test=readings, conditions=conditions)
            return case, heat_gtc / power, brine_gtc, water

        inlet = round(draw.uniform(26, 38), 1)
        found, cop0, s0, w0 = test(inlet, round(draw.uniform(3, 6), 1), 0.0)
        left, cop1, s1, w1 = test(round(inlet + draw.uniform(-2, 2), 1), round(draw.uniform(3, 6), 1), draw.uniform(-3, 3))

        def carnot(s, w):
            return (w + 278.15) / (w + 15 - s)

        u = model.cop_u_per_k
        # All of the source's way lies outside the table, and counts twice.
        doubt = 1 + u * (2 * (s1.x - s0.x) * slope_s + (w1.x - w0.x) * slope_w)
        found_like = cop0 * carnot(s1, w1) / carnot(s0, w0) * doubt
        at = f"brine {s0.x:.1f} to {s1.x:.1f} °C, water {w0.x:.1f} to {w1.x:.1f} °C"
        yield at, read, found, left, found_like, cop1


def changes(draw):
    """The core's change of COP, and GTC's."""
    for at, _, found, left, before, after in works(draw):
        yield at, coilside.work_change("brine fixed", found, left).cop.difference, after - before


@grid("change of COP at like conditions", bound=1e-3, source=SOURCE)
def change(draw):
    for at, ours, reference in changes(draw):
        yield Point(at, ours.value, reference.x)


@grid("doubt of a change of COP with one set of instruments", bound=2e-4, kind="rel", source=SOURCE)
def change_doubt(draw):
    for at, ours, reference in changes(draw):
        yield Point(at, ours.standard_u, reference.u)


def years(draw):
    """The core's year before and after, and GTC's electricity with the COP as found and saved."""
    for at, read, found, left, before, after in works(draw):
        litres, litres_gtc = read.both(draw.uniform(100, 2000), 20, "use")
        cold, cold_gtc = read.both(round(draw.uniform(5, 18), 1), 1, "cold")
        hot, hot_gtc = read.both(round(draw.uniform(45, 65), 1), 1, "hot")
        price, _ = read.both(draw.uniform(0.1, 0.5), 0.01, "price")
        use = coilside.HotWaterUse(litres_a_day=litres, cold_c=cold, hot_c=hot, price_a_kwh=price)
        mass = 365 * litres_gtc / 1000 * density(cold_gtc)
        heat_kwh = mass * (enthalpy(hot_gtc) - enthalpy(cold_gtc)) / 3.6e6
        yield at, coilside.year_change("brine fixed", found, left, use), heat_kwh / before, heat_kwh / before - heat_kwh / after


@grid("electricity for a year's hot water", bound=2e-4, kind="rel", source=SOURCE)
def year_value(draw):
    for at, ours, reference, _ in years(draw):
        yield Point(at, ours.found_kwh.value, reference.x)


@grid("doubt of electricity for a year's hot water", bound=2e-4, kind="rel", source=SOURCE)
def year_doubt(draw):
    for at, ours, reference, _ in years(draw):
        yield Point(at, ours.found_kwh.standard_u, reference.u)


@grid("doubt of electricity saved in a year", bound=5e-4, kind="rel", source=SOURCE)
def saved_doubt(draw):
    for at, ours, _, reference in years(draw):
        yield Point(at, ours.saved_kwh.standard_u, reference.u)


WORTH = {"better": 1, "no difference that can be told": 0, "worse": -1}


@grid("verdict on a change", bound=0, source="JCGM 106:2012 8.3.2, guard band of 2 u; u by GTC 1.5.1")
def verdict_on_a_change(draw):
    """Two readings by one instrument, whose error is common to a correlation of 0.8, or by two."""
    for _ in range(POINTS):
        found, rise, limit = draw.uniform(90, 110), draw.uniform(-3, 3), draw.uniform(0.1, 2)
        same = draw.random() < 0.5
        scales = [GTC.ureal(0, 1), GTC.ureal(0, 1)]
        scales[1] = scales[0] if same else scales[1]
        own = limit / 3**0.5
        values = [value + own * (0.8**0.5 * scale + 0.2**0.5 * GTC.ureal(0, 1)) for value, scale in zip((found, found + rise), scales)]
        difference = values[1] - values[0]
        told = 0 if abs(difference.x) <= 2 * difference.u else (1 if difference.x > 0 else -1)
        readings = [
            coilside.ReadingValue(value=value, error_limit=limit, instrument=name)
            for value, name in zip((found, found + rise), ("meter", "meter" if same else "other"))
        ]
        ours = coilside.reading_change(found=readings[0], left=readings[1], higher_is_better=True).verdict
        yield Point(f"{found:.2f} {rise:+.2f} ± {limit:.2f} {'one instrument' if same else 'two'}", WORTH[ours], told)
