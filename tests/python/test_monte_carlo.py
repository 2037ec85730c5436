"""Monte Carlo on the doubts that the core states: 100 000 draws of every cause of error, through the same measurement worked out
with reference libraries (iapws for water, PsychroLib for air, numpy for the rest), must scatter as the core says, within 5 %.

A limit is drawn evenly; what one instrument's readings share is drawn once. Source of the method: JCGM 101:2008 (propagation of distributions).
"""

import unittest

import iapws
import numpy
import psychrolib
from scipy.interpolate import CubicSpline, RegularGridInterpolator

import coilside

DRAWS = 100_000
SEED = 101
WITHIN = 0.05
PRESSURE_PA = 101_325.0
# What the core takes where nothing is given, as its documentation states it.
COMMON = 0.8

psychrolib.SetUnitSystem(psychrolib.SI)


def water_splines():
    """Density kg/m³ and enthalpy J/kg of water at 1 bar, by temperature in °C."""
    at = numpy.linspace(0.01, 99.0, 60)
    states = [iapws.IAPWS95(T=t + 273.15, P=0.1) for t in at]
    density = CubicSpline(at, [state.rho for state in states])
    enthalpy = CubicSpline(at, [1000 * state.h for state in states])
    return density, enthalpy


DENSITY, ENTHALPY = water_splines()


def over_states(function, t, rh):
    """A PsychroLib function of temperature and humidity, on arrays, between the points of a close grid."""
    axes = [numpy.linspace(one.min(), one.max(), 25) for one in (t, rh)]
    values = [[function(a, b) for b in axes[1]] for a in axes[0]]
    return RegularGridInterpolator(axes, numpy.array(values), method="cubic")(numpy.stack([t, rh], axis=-1))


def moist_enthalpy(t, rh):
    return psychrolib.GetMoistAirEnthalpy(t, psychrolib.GetHumRatioFromRelHum(t, rh, PRESSURE_PA))


def moist_volume(t, rh):
    return psychrolib.GetMoistAirVolume(t, psychrolib.GetHumRatioFromRelHum(t, rh, PRESSURE_PA), PRESSURE_PA)


class Errors:
    """Draws of causes. What carries one name is drawn once."""

    def __init__(self):
        self.draw = numpy.random.default_rng(SEED)
        self.common = {}

    def even(self, half_width):
        return self.draw.uniform(-half_width, half_width, DRAWS)

    def unit(self, name):
        """One cause, evenly in ±1, the same at each call with this name."""
        if name not in self.common:
            self.common[name] = self.even(1)
        return self.common[name]

    def normal(self, name):
        if name not in self.common:
            self.common[name] = self.draw.normal(0, 1, DRAWS)
        return self.common[name]

    def read(self, reading):
        """What one reading may truly have been."""
        common = 0 if not reading.instrument else COMMON if reading.common is None else reading.common
        shared = reading.error_limit * common**0.5 * self.unit(reading.instrument)
        own = self.even(reading.error_limit) * (1 - common) ** 0.5
        scatter = self.draw.normal(0, reading.scatter_u, DRAWS) if reading.scatter_u else 0
        return reading.value + shared + own + self.even(reading.step / 2) + scatter

    def test(self, readings):
        return Test(*(self.read(getattr(readings, name)) for name in ("flow_l_min", "inlet_c", "outlet_c", "power_w")))


class Test:
    """A heat test on draws."""

    def __init__(self, flow, inlet, outlet, power):
        self.inlet, self.outlet = inlet, outlet
        self.heat = flow / 60_000 * DENSITY(inlet) * (ENTHALPY(outlet) - ENTHALPY(inlet))
        self.cop = self.heat / power


def reading(value, error_limit=0.0, instrument="", step=0.0, scatter_u=0.0, common=None):
    return coilside.ReadingValue(
        value=value, error_limit=error_limit, instrument=instrument, step=step, scatter_u=scatter_u, common=common
    )


def test_of(inlet, outlet, power, flow=10.0):
    """A heat test with one thermometer for both temperatures, a flow meter and a wattmeter."""
    return coilside.HeatReadings(
        flow_l_min=reading(flow, 0.2, "flow meter", step=0.1, scatter_u=0.05),
        inlet_c=reading(inlet, 0.5, "thermometer", step=0.1),
        outlet_c=reading(outlet, 0.5, "thermometer", step=0.1),
        power_w=reading(power, 15.0, "wattmeter", step=1.0),
    )


FOUND = (test_of(45.0, 49.0, 1000.0), 9.0, 0.80)
LEFT = (test_of(46.0, 51.0, 1010.0), 11.0, 0.75)


def at_conditions(case):
    test, air, humidity = case
    conditions = coilside.ConditionReadings(
        source_c=reading(air, 0.5, "hygrometer's thermometer", step=0.1),
        source_rh=reading(humidity, 0.03, "hygrometer", step=0.01),
        pressure_pa=PRESSURE_PA,
        water_in_c=test.inlet_c,
        water_out_c=test.outlet_c,
    )
    return coilside.TestAtConditions(test=test, conditions=conditions)


class MonteCarlo(unittest.TestCase):
    def setUp(self):
        self.errors = Errors()

    def check(self, stated, draws):
        """The stated value is the draws' mean within its doubt, the stated doubt their standard deviation within 5 %."""
        self.assertGreater(stated.standard_u, 0)
        self.assertLess(abs(stated.value - draws.mean()), 0.2 * stated.standard_u)
        ratio = stated.standard_u / draws.std()
        print(f"{stated.value:.5g} ± {stated.standard_u:.3g}, over the draws' {ratio:.4f}", end=" ")
        self.assertLess(abs(ratio - 1), WITHIN)

    def test_a_reading(self):
        one = reading(50.0, 0.5, "thermometer", step=0.1, scatter_u=0.1)
        self.check(coilside.reading_with_doubt(one), self.errors.read(one))

    def test_heat_with_one_thermometer_for_both_temperatures(self):
        result = coilside.heat_by_instruments(FOUND[0])
        draws = self.errors.test(FOUND[0])
        self.check(coilside.DoubtedValue(value=result.heat_w, standard_u=result.heat_u), draws.heat)

    def test_cop_with_one_thermometer_for_both_temperatures(self):
        result = coilside.heat_by_instruments(FOUND[0])
        draws = self.errors.test(FOUND[0])
        self.check(coilside.DoubtedValue(value=result.cop, standard_u=result.cop_u), draws.cop)

    def bucket(self):
        filling = coilside.BucketFilling(volume_l=10.0, volume_limit_l=0.3, time_s=45.0, reaction_limit_s=0.4)
        time = 45.0 + self.errors.even(0.4) + self.errors.even(0.4)
        return filling, (10.0 + self.errors.even(0.3)) / time * 60

    def test_bucket_and_stopwatch(self):
        filling, draws = self.bucket()
        self.check(coilside.bucket_flow(filling), draws)

    def test_heat_of_water_that_runs_hot_into_a_bucket(self):
        filling, flow = self.bucket()
        test = test_of(12.0, 52.0, 1000.0)
        inlet, outlet = self.errors.read(test.inlet_c), self.errors.read(test.outlet_c)
        draws = flow / 60_000 * DENSITY(outlet) * (ENTHALPY(outlet) - ENTHALPY(inlet))
        self.check(coilside.once_through_heat(filling, test.inlet_c, test.outlet_c), draws)

    def test_a_counter_over_a_period(self):
        period = coilside.CountedPeriod(
            start=812.3, end=813.9, time_s=3600.0, time_limit_s=5.0, percent_of_count=2.0, step=0.1
        )
        counted = 1.6 * (1 + self.errors.even(0.02)) + self.errors.even(0.05) - self.errors.even(0.05)
        self.check(coilside.counted_power(period), counted * 3.6e6 / (3600 + self.errors.even(5)))

    def test_heat_by_a_tank_that_warms_up(self):
        volume, time, loss = reading(200.0, 6.0, "tank"), reading(7200.0, 20.0, "watch"), reading(60.0, 25.0, "loss")
        start, end = reading(20.0, 0.5, "thermometer", step=0.1), reading(50.0, 0.5, "thermometer", step=0.1)
        cold = self.errors.read(start) + self.errors.even(2)
        hot = self.errors.read(end) + self.errors.even(2)
        joules = self.errors.read(volume) / 1000 * DENSITY(cold) * (ENTHALPY(hot) - ENTHALPY(cold))
        draws = joules / self.errors.read(time) + self.errors.read(loss)
        self.check(coilside.heating_curve_heat(volume, start, end, 2.0, time, loss), draws)

    def test_heating_time(self):
        volume, heat, loss = reading(200.0, 6.0, "tank"), reading(3000.0, 250.0, "heat"), reading(60.0, 25.0, "loss")
        cold, hot = reading(15.0, 0.5, "thermometer"), reading(55.0, 0.5, "thermometer")
        low, high = self.errors.read(cold), self.errors.read(hot)
        joules = self.errors.read(volume) / 1000 * DENSITY(low) * (ENTHALPY(high) - ENTHALPY(low))
        draws = joules / (self.errors.read(heat) - self.errors.read(loss)) / 60
        self.check(coilside.heating_time(volume, cold, hot, heat, loss), draws)

    def test_airflow_from_the_heat_balance(self):
        air = {"error_limit": 0.3, "instrument": "air thermometer", "step": 0.1}
        damp = {"error_limit": 0.015, "instrument": "hygrometer", "step": 0.001}
        readings = coilside.CoilBalanceReadings(
            heat_w=reading(3400.0, 200.0),
            power_w=reading(950.0, 15.0),
            share_to_refrigerant=reading(0.9, 0.1),
            air_on_c=reading(20.0, **air),
            air_on_rh=reading(0.60, **damp),
            air_off_c=reading(12.0, **air),
            air_off_rh=reading(0.85, **damp),
            pressure_pa=PRESSURE_PA,
        )
        names = ("heat_w", "power_w", "share_to_refrigerant", "air_on_c", "air_on_rh", "air_off_c", "air_off_rh")
        heat, power, share, on_c, on_rh, off_c, off_rh = (self.errors.read(getattr(readings, name)) for name in names)
        drop = over_states(moist_enthalpy, on_c, on_rh) - over_states(moist_enthalpy, off_c, off_rh)
        draws = (heat - share * power) * over_states(moist_volume, on_c, on_rh) / drop
        self.check(coilside.airflow_by_balance(readings), draws)

    def condenser(self):
        """A condenser whose two water temperatures are also those of its heat."""
        area, clean = reading(0.6, 0.02, "area"), reading(1100.0, 40.0, "clean")
        condensing = reading(52.5, 0.3, "gauge", step=0.1)
        stated = coilside.condenser_by_instruments(FOUND[0], condensing, area, clean)
        draws = self.errors.test(FOUND[0])
        hot = self.errors.read(condensing)
        a, b = hot - draws.outlet, hot - draws.inlet
        lmtd = (a - b) / numpy.log(a / b)
        fouling = self.errors.read(area) * (lmtd / draws.heat - 1 / self.errors.read(clean))
        return stated, lmtd, draws.heat / lmtd, fouling

    def test_mean_temperature_difference(self):
        stated, lmtd, _, _ = self.condenser()
        self.check(stated.lmtd_k, lmtd)

    def test_conductance_with_the_thermometers_of_the_heat(self):
        stated, _, ua, _ = self.condenser()
        self.check(stated.ua_w_k, ua)

    def test_fouling_resistance(self):
        stated, _, _, fouling = self.condenser()
        self.check(stated.fouling_m2_k_w, fouling)

    def effective(self, case, test):
        """Source and water temperature that stand for the conditions."""
        at = at_conditions(case).conditions
        air, humidity = self.errors.read(at.source_c), self.errors.read(at.source_rh)
        wet = over_states(lambda t, rh: psychrolib.GetTWetBulbFromRelHum(t, rh, PRESSURE_PA), air, humidity)
        source = (air + wet + 1) / 2 + (air - wet - 1) / 2 * self.errors.unit("humidity at the coil")
        mean, by_outlet = (test.inlet + test.outlet) / 2, test.outlet - 2.5
        water = (mean + by_outlet) / 2 + (by_outlet - mean) / 2 * self.errors.unit("which water temperature")
        return source, water

    def work(self):
        """As found and as left on draws, the first brought to the conditions of the second."""
        model = coilside.performance_error("air fixed")
        found, left = self.errors.test(FOUND[0]), self.errors.test(LEFT[0])
        (s0, w0), (s1, w1) = self.effective(FOUND, found), self.effective(LEFT, left)

        def carnot(s, w):
            return (w + 5 + 273.15) / (w + 5 - (s - 10))

        def slopes(name, u_per_k):
            return u_per_k * (self.errors.normal(f"{name} s") * (s1 - s0) + self.errors.normal(f"{name} w") * (w1 - w0))

        cop = carnot(s1, w1) / carnot(s0, w0) * numpy.exp(slopes("cop", model.cop_u_per_k))
        growth = model.capacity_by_source_per_k * (s1 - s0) + model.capacity_by_water_per_k * (w1 - w0)
        heat = numpy.exp(growth + slopes("capacity", model.capacity_u_per_k))
        return found.heat * heat, left.heat, found.cop * cop, left.cop

    def test_change_of_heat_at_like_conditions_with_one_set_of_instruments(self):
        found, left, _, _ = self.work()
        stated = coilside.work_change("air fixed", at_conditions(FOUND), at_conditions(LEFT)).heat_w
        self.check(stated.difference, left - found)
        self.assertEqual(stated.verdict, "better")

    def test_change_of_cop_at_like_conditions_with_one_set_of_instruments(self):
        _, _, found, left = self.work()
        stated = coilside.work_change("air fixed", at_conditions(FOUND), at_conditions(LEFT)).cop
        self.check(stated.difference, left - found)

    def test_change_of_an_approach_read_with_one_thermometer(self):
        found = reading(7.2, 0.5, "thermometer", step=0.1, scatter_u=0.05)
        left = reading(4.1, 0.5, "thermometer", step=0.1, scatter_u=0.05)
        stated = coilside.reading_change(found, left, False)
        self.check(stated.difference, self.errors.read(left) - self.errors.read(found))
        self.assertEqual(stated.verdict, "better")

    def test_a_change_is_told_where_less_than_one_draw_in_44_speaks_against_it(self):
        # Two standard uncertainties of a normal distribution leave 2.28 % on the far side.
        scatter = 0.5
        for times_u, told in ((1.95, False), (2.05, True)):
            change = times_u * scatter * 2**0.5
            for sign, verdict in ((1, "better"), (-1, "worse")):
                found, left = reading(50.0, scatter_u=scatter), reading(50.0 + sign * change, scatter_u=scatter)
                against = numpy.mean(sign * (self.errors.read(left) - self.errors.read(found)) < 0)
                self.assertEqual(against < 0.0228, told)
                stated = coilside.reading_change(found, left, True).verdict
                self.assertEqual(stated, verdict if told else "no difference that can be told")

    def year(self):
        use = coilside.HotWaterUse(
            litres_a_day=reading(250.0, 50.0, "use"),
            cold_c=reading(12.0, 3.0, "cold"),
            hot_c=reading(55.0, 3.0, "hot"),
            price_a_kwh=reading(0.30, 0.02, "price"),
        )
        stated = coilside.year_change("air fixed", at_conditions(FOUND), at_conditions(LEFT), use)
        _, _, found, left = self.work()
        cold, hot = self.errors.read(use.cold_c), self.errors.read(use.hot_c)
        heat = 365 * self.errors.read(use.litres_a_day) / 1000 * DENSITY(cold) * (ENTHALPY(hot) - ENTHALPY(cold)) / 3.6e6
        saved = heat / found - heat / left
        return stated, saved, saved * self.errors.read(use.price_a_kwh)

    def test_electricity_saved_in_a_year(self):
        stated, saved, _ = self.year()
        self.check(stated.saved_kwh, saved)

    def test_cost_saved_in_a_year(self):
        stated, _, cost = self.year()
        self.assertIsNotNone(stated.saved_cost, "this difference can be told")
        self.check(stated.saved_cost, cost)


if __name__ == "__main__":
    unittest.main()
