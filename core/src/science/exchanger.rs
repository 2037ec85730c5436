//! A counterflow heat exchanger: how well it passes heat, and how fouled it is.
//!
//! ```text
//! a = hot in − cold out        b = hot out − cold in        LMTD = (a − b) / ln(a / b)        UA = Q / LMTD
//! ε = (1 − e^(−NTU (1 − C))) / (1 − C e^(−NTU (1 − C)))        at C = 1: NTU / (1 + NTU)
//! Rf = A (1 / UA now − 1 / UA clean)
//! ∂LMTD/∂a = (1 − LMTD / a) / ln (a / b)        ∂LMTD/∂b = (LMTD / b − 1) / ln (a / b)        at a = b: 1/2 each
//! ```
//! Range: −50…200 °C, both differences at least 0.01 K; heat to 1 MW; NTU 0…100, C 0…1; area 0.001…1000 m²; UA 0.1…10⁶ W/K. A
//! condensing refrigerant's desuperheating is not told apart: give its condensing temperature on both ends.
//! Accuracy: exact for constant properties.
//! Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, ch. 11 (chapter from memory); doubt JCGM 100:2008, 5.1.2.

use super::error::{ScienceError, within};
use super::quantity::{celsius, to_celsius, warmer_by, within_c, within_temperatures};
use super::uncertainty::Doubted;
use uom::si::area::square_meter;
use uom::si::f64::{Area, Power, TemperatureInterval, ThermalConductance, ThermodynamicTemperature};
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin as kelvin_difference;
use uom::si::thermal_conductance::watt_per_kelvin;

/// A smaller difference than this cannot be measured, and makes UA run away.
const DIFFERENCE_LEAST_K: f64 = 0.01;
const HEAT_MAX_W: f64 = 1e6;
const UA_LEAST_W_K: f64 = 0.1;
const UA_MOST_W_K: f64 = 1e6;

/// The four temperatures at the ends of a counterflow exchanger.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ends {
    /// Warm side, arriving.
    pub hot_in: ThermodynamicTemperature,
    /// Warm side, leaving.
    pub hot_out: ThermodynamicTemperature,
    /// Cold side, arriving.
    pub cold_in: ThermodynamicTemperature,
    /// Cold side, leaving.
    pub cold_out: ThermodynamicTemperature,
}

impl Ends {
    /// The logarithmic mean temperature difference.
    pub fn lmtd(&self) -> Result<TemperatureInterval, ScienceError> {
        within_c("hot_in_c", self.hot_in, -50.0, 200.0)?;
        within_temperatures("hot_out_c", self.hot_out, celsius(-50.0), self.hot_in)?;
        within_temperatures("cold_in_c", self.cold_in, celsius(-50.0), just_below(self.hot_out))?;
        within_temperatures("cold_out_c", self.cold_out, self.cold_in, just_below(self.hot_in))?;
        let a = warmer_by(self.hot_in, self.cold_out).get::<kelvin_difference>();
        let b = warmer_by(self.hot_out, self.cold_in).get::<kelvin_difference>();
        // With log1p the quotient stays right where the two are nearly equal.
        let mean = if a == b { a } else { (a - b) / libm::log1p((a - b) / b) };
        Ok(TemperatureInterval::new::<kelvin_difference>(mean))
    }

    /// Heat passed for each kelvin of that difference.
    pub fn ua(&self, heat: Power) -> Result<ThermalConductance, ScienceError> {
        within("heat_w", heat.get::<watt>(), 0.0, HEAT_MAX_W)?;
        Ok(heat / self.lmtd()?)
    }
}

fn just_below(temperature: ThermodynamicTemperature) -> ThermodynamicTemperature {
    celsius(to_celsius(temperature) - DIFFERENCE_LEAST_K)
}

/// The share, 0…1, of the heat that an endless exchanger would pass.
pub fn effectiveness(ntu: f64, capacity_ratio: f64) -> Result<f64, ScienceError> {
    within("ntu", ntu, 0.0, 100.0)?;
    within("capacity_ratio", capacity_ratio, 0.0, 1.0)?;
    let unbalance = 1.0 - capacity_ratio;
    if unbalance == 0.0 {
        return Ok(ntu / (1.0 + ntu));
    }
    let passed = -libm::expm1(-ntu * unbalance);
    Ok(passed / (unbalance + capacity_ratio * passed))
}

/// Resistance in m² K/W of what has settled on the surface. An exchanger that passes more than it did clean is refused: one of the two
/// measurements is wrong, or the clean one was not clean.
pub fn fouling_resistance(
    area: Area,
    ua_now: ThermalConductance,
    ua_clean: ThermalConductance,
) -> Result<f64, ScienceError> {
    within("area_m2", area.get::<square_meter>(), 0.001, 1000.0)?;
    let clean_w_k = ua_clean.get::<watt_per_kelvin>();
    within("ua_clean_w_k", clean_w_k, UA_LEAST_W_K, UA_MOST_W_K)?;
    within("ua_now_w_k", ua_now.get::<watt_per_kelvin>(), UA_LEAST_W_K, clean_w_k)?;
    // In SI, which is m² K/W; uom has no name for it.
    Ok((area / ua_now - area / ua_clean).value)
}

/// The same four temperatures as they were read, °C.
#[derive(Debug, Clone, PartialEq)]
pub struct EndsRead {
    /// Warm side, arriving.
    pub hot_in_c: Doubted,
    /// Warm side, leaving.
    pub hot_out_c: Doubted,
    /// Cold side, arriving.
    pub cold_in_c: Doubted,
    /// Cold side, leaving.
    pub cold_out_c: Doubted,
}

impl EndsRead {
    /// The logarithmic mean temperature difference in kelvin, with its doubt. For a refrigerant that condenses, give its temperature at
    /// both ends: the same doubt, not two.
    pub fn lmtd_k(&self) -> Result<Doubted, ScienceError> {
        let (hot_in, hot_out) = (self.hot_in_c.value(), self.hot_out_c.value());
        let (cold_in, cold_out) = (self.cold_in_c.value(), self.cold_out_c.value());
        let ends = Ends {
            hot_in: celsius(hot_in),
            hot_out: celsius(hot_out),
            cold_in: celsius(cold_in),
            cold_out: celsius(cold_out),
        };
        let lmtd = ends.lmtd()?.get::<kelvin_difference>();
        let (a, b) = (hot_in - cold_out, hot_out - cold_in);
        let log = libm::log(a / b);
        // Where both ends are nearly equal the quotients lose their digits; two terms of their series do not.
        let (by_a, by_b) = if libm::fabs(log) < 1e-3 {
            (0.5 - log / 6.0, 0.5 + log / 6.0)
        } else {
            ((1.0 - lmtd / a) / log, (lmtd / b - 1.0) / log)
        };
        Ok(Doubted::from_slopes(
            lmtd,
            &[(by_a, &self.hot_in_c), (by_b, &self.hot_out_c), (-by_b, &self.cold_in_c), (-by_a, &self.cold_out_c)],
        ))
    }

    /// Heat passed for each kelvin of that difference, W/K. Thermometers that the heat was worked out from are not counted twice.
    pub fn ua_w_k(&self, heat_w: &Doubted) -> Result<Doubted, ScienceError> {
        within("heat_w", heat_w.value(), 0.0, HEAT_MAX_W)?;
        Ok(heat_w.over(&self.lmtd_k()?))
    }
}

/// [`fouling_resistance`] with its doubt: area in m², both UA in W/K.
pub fn fouling_resistance_read(
    area_m2: &Doubted,
    ua_now_w_k: &Doubted,
    ua_clean_w_k: &Doubted,
) -> Result<Doubted, ScienceError> {
    Doubted::through([area_m2, ua_now_w_k, ua_clean_w_k], |[area, now, clean]| {
        let [now, clean] = [now, clean].map(ThermalConductance::new::<watt_per_kelvin>);
        fouling_resistance(Area::new::<square_meter>(area), now, clean)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::science::uncertainty::Cause;
    use proptest::prelude::*;

    fn ends(hot_in: f64, hot_out: f64, cold_in: f64, cold_out: f64) -> Ends {
        Ends {
            hot_in: celsius(hot_in),
            hot_out: celsius(hot_out),
            cold_in: celsius(cold_in),
            cold_out: celsius(cold_out),
        }
    }

    #[test]
    fn water_hotter_than_what_heats_it_is_refused_by_name() {
        let refused = ends(60.0, 50.0, 40.0, 60.0).lmtd().unwrap_err();
        assert!(matches!(refused, ScienceError::OutOfRange { argument, .. } if argument == "cold_out_c"));
    }

    fn read(cause: &'static str, value: f64, u: f64) -> Doubted {
        Doubted::new("value", value).unwrap().because("u", Cause::new(cause), u).unwrap()
    }

    #[test]
    fn an_error_that_all_thermometers_share_does_not_reach_the_mean_difference() {
        let shared = |value| read("shared", value, 0.5);
        let ends = EndsRead {
            hot_in_c: shared(60.0),
            hot_out_c: shared(60.0),
            cold_in_c: shared(45.0),
            cold_out_c: shared(50.0),
        };
        assert!(ends.lmtd_k().unwrap().standard_u() < 1e-12);
    }

    #[test]
    fn more_than_clean_is_refused_by_name() {
        let one = |value| read("one", value, 1.0);
        let refused = fouling_resistance_read(&one(2.0), &one(1300.0), &one(1200.0)).unwrap_err();
        assert!(matches!(refused, ScienceError::OutOfRange { argument, .. } if argument == "ua_now_w_k"));
    }

    proptest! {
        #[test]
        fn the_slopes_of_the_mean_difference_are_those_of_its_values(cold_in in 0.0..80.0f64, b in 0.5..20.0f64, drop in 0.1..30.0f64, share in 0.05..0.95f64) {
            let hot_out = cold_in + b;
            let hot_in = hot_out + drop;
            let cold_out = cold_in + share * (hot_in - cold_in - 0.05);
            let read = [hot_in, hot_out, cold_in, cold_out].map(|value| read("all", value, 0.0));
            for moved in 0..4 {
                let cause = Cause::new("moved");
                let mut one = read.clone();
                one[moved] = one[moved].clone().because("u", cause, 1e-4).unwrap();
                let [hot_in_c, hot_out_c, cold_in_c, cold_out_c] = one.clone();
                let by_slopes = EndsRead { hot_in_c, hot_out_c, cold_in_c, cold_out_c }.lmtd_k().unwrap().standard_u();
                let mean = |[a, b, c, d]: [f64; 4]| Ok(ends(a, b, c, d).lmtd()?.get::<kelvin_difference>());
                let by_values = Doubted::through([&one[0], &one[1], &one[2], &one[3]], mean).unwrap().standard_u();
                prop_assert!((by_slopes - by_values).abs() < 1e-4 * 1e-4 + 1e-3 * by_values);
            }
        }

        #[test]
        fn the_mean_difference_lies_between_the_ends(cold_in in -40.0..100.0f64, b in 0.02..50.0f64, drop in 0.0..40.0f64, share in 0.0..1.0f64) {
            let hot_out = cold_in + b;
            let hot_in = hot_out + drop;
            let cold_out = cold_in + share * (hot_in - cold_in - 0.02);
            let (a, mean) = (hot_in - cold_out, ends(hot_in, hot_out, cold_in, cold_out).lmtd().unwrap().get::<kelvin_difference>());
            prop_assert!(mean >= a.min(b) - 1e-9 && mean <= a.max(b) + 1e-9);
        }

        #[test]
        fn effectiveness_and_mean_difference_tell_the_same_heat(ntu in 0.01..4.0f64, c in 0.01..0.99f64) {
            // Cold side of capacity 1 W/K from 0 °C, hot side of 1/c from 100 °C; heat by effectiveness, UA back by LMTD.
            let heat = 100.0 * effectiveness(ntu, c).unwrap();
            let ends = ends(100.0, 100.0 - heat * c, 0.0, heat);
            let ua = ends.ua(Power::new::<watt>(heat)).unwrap().get::<watt_per_kelvin>();
            prop_assert!((ua / ntu - 1.0).abs() < 1e-6);
        }
    }
}
