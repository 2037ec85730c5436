//! A counterflow heat exchanger: how well it passes heat, and how fouled it is.
//!
//! ```text
//! a = hot in − cold out        b = hot out − cold in        LMTD = (a − b) / ln(a / b)        UA = Q / LMTD
//! ε = (1 − e^(−NTU (1 − C))) / (1 − C e^(−NTU (1 − C)))        at C = 1: NTU / (1 + NTU)
//! Rf = A (1 / UA now − 1 / UA clean)
//! ```
//! Range: −50…200 °C, both differences at least 0.01 K; heat to 1 MW; NTU 0…100, C 0…1; area 0.001…1000 m²; UA 0.1…10⁶ W/K. A
//! condensing refrigerant's desuperheating is not told apart: give its condensing temperature on both ends.
//! Accuracy: exact for constant properties.
//! Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, ch. 11 (chapter from memory).

use super::error::{ScienceError, within};
use super::quantity::{celsius, to_celsius, warmer_by, within_c, within_temperatures};
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

#[cfg(test)]
mod tests {
    use super::*;
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

    proptest! {
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
