//! Heat from how fast a tank warms up, and how long a tank takes.
//!
//! ```text
//! heat = V ρ(start) (h(end) − h(start)) / t + standing loss        heating time = V ρ(start) (h(end) − h(start)) / (heat − standing loss)
//! ```
//! V ρ(start) is the mass in a full tank at the start; what expands leaves through the valve (under 1.5 %) and is taken as heated.
//! Nothing may be drawn off meanwhile. The tank's mean temperature is what one sensor does not know: **stratification** is a limit in
//! kelvin on each mean, given by whoever reads it; 3 K for one sensor in a standing tank, 1 K where it is circulated (common practice, no
//! source).
//!
//! Range: tank 1…100 000 l, water 0…100 °C, the end not colder than the start; time 60 s…7 days; standing loss 0…10 kW; heat for a
//! heating time: at least 10 W above the loss.
//! Accuracy: that of what is given. The metal that warms with the water is left out (1 to 2 % of a steel tank's heat): heat comes out low by it.
//! Source: energy balance; water IAPWS SR6-08(2011); doubt JCGM 100:2008, 5.1.2.

use super::error::{ScienceError, within};
use super::quantity::{celsius, within_temperatures};
use super::uncertainty::{Cause, Doubted, from_limits};
use super::water;
use uom::si::available_energy::joule_per_kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;

const L_OF_M3: f64 = 1000.0;
const S_OF_MIN: f64 = 60.0;
const WEEK_S: f64 = 7.0 * 86_400.0;

/// A tank that warms up.
#[derive(Debug, Clone, PartialEq)]
pub struct HeatingCurve {
    /// Water in the tank, l.
    pub volume_l: Doubted,
    /// Its temperature at the start, °C.
    pub start_c: Doubted,
    /// Its temperature at the end, °C.
    pub end_c: Doubted,
    /// How far the tank's mean may lie from what the sensor shows, at the start and again at the end, ± K (0…50).
    pub stratification_limit_k: f64,
    /// Time between, s.
    pub time_s: Doubted,
    /// Heat that the tank loses by standing, W.
    pub standing_loss_w: Doubted,
}

impl HeatingCurve {
    /// The heat in watt that the machine gave, on the mean. `run` names what is this heating's own.
    pub fn heat_w(&self, run: &str) -> Result<Doubted, ScienceError> {
        within("time_s", self.time_s.value(), 60.0, WEEK_S)?;
        within("standing_loss_w", self.standing_loss_w.value(), 0.0, 10_000.0)?;
        within("stratification_limit_k", self.stratification_limit_k, 0.0, 50.0)?;
        let layers_u = from_limits(self.stratification_limit_k)?;
        let mean = |shown: &Doubted, when: &str| {
            let cause = Cause::new(format!("{run}, layers at the {when}"));
            shown.clone().because("stratification_limit_k", cause, layers_u)
        };
        let (start, end) = (mean(&self.start_c, "start")?, mean(&self.end_c, "end")?);
        Ok(stored_j(&self.volume_l, &start, &end)?.over(&self.time_s).plus(&self.standing_loss_w))
    }
}

/// How long a tank takes, in minutes, from one temperature to another with a heat in watt, against its standing loss.
pub fn heating_time_min(
    volume_l: &Doubted,
    from_c: &Doubted,
    to_c: &Doubted,
    heat_w: &Doubted,
    standing_loss_w: &Doubted,
) -> Result<Doubted, ScienceError> {
    within("standing_loss_w", standing_loss_w.value(), 0.0, 10_000.0)?;
    within("heat_w", heat_w.value(), standing_loss_w.value() + 10.0, 1e6)?;
    let kept_w = heat_w.less(standing_loss_w);
    Ok(stored_j(volume_l, from_c, to_c)?.over(&kept_w).scaled(1.0 / S_OF_MIN))
}

/// Heat in joule that a tank's water takes up.
fn stored_j(volume_l: &Doubted, from_c: &Doubted, to_c: &Doubted) -> Result<Doubted, ScienceError> {
    within("volume_l", volume_l.value(), 1.0, 100_000.0)?;
    let stored = |[volume_l, from_c, to_c]: [f64; 3]| {
        let cold = water::liquid("from_c", celsius(from_c))?;
        let rise = water::liquid("to_c", celsius(to_c))?.enthalpy - cold.enthalpy;
        let mass_kg = volume_l / L_OF_M3 * cold.density.get::<kilogram_per_cubic_meter>();
        Ok(mass_kg * rise.get::<joule_per_kilogram>())
    };
    within_temperatures("to_c", celsius(to_c.value()), celsius(from_c.value()), celsius(100.0))?;
    Doubted::through([volume_l, from_c, to_c], stored)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn exactly(value: f64) -> Doubted {
        Doubted::new("value", value).unwrap()
    }

    fn curve(start: f64, end: f64, time_s: f64, limit: f64) -> HeatingCurve {
        HeatingCurve {
            volume_l: exactly(200.0),
            start_c: exactly(start),
            end_c: exactly(end),
            stratification_limit_k: limit,
            time_s: exactly(time_s),
            standing_loss_w: exactly(60.0),
        }
    }

    #[test]
    fn layers_widen_the_doubt_at_both_ends() {
        let heat = curve(15.0, 55.0, 3.0 * 3600.0, 3.0).heat_w("run").unwrap();
        // √2 · 3 K / √3 of 40 K of rise, within the change of specific heat.
        let share = heat.standard_u() / (heat.value() - 60.0);
        assert!((share / (libm::sqrt(6.0) / 40.0) - 1.0).abs() < 0.005);
    }

    #[test]
    fn a_tank_that_cooled_down_is_refused_by_name() {
        let refused = curve(55.0, 50.0, 3600.0, 1.0).heat_w("run").unwrap_err();
        assert!(matches!(refused, ScienceError::OutOfRange { argument, .. } if argument == "to_c"));
    }

    proptest! {
        #[test]
        fn the_heat_of_a_curve_takes_the_curves_time(start in 5.0..50.0f64, rise in 5.0..45.0f64, time_s in 600.0..100_000.0f64) {
            let heat = curve(start, start + rise, time_s, 0.0).heat_w("run").unwrap();
            let loss = exactly(60.0);
            let back = heating_time_min(&exactly(200.0), &exactly(start), &exactly(start + rise), &heat, &loss).unwrap();
            prop_assert!((back.value() * 60.0 / time_s - 1.0).abs() < 1e-9);
        }
    }
}
