//! The enthalpy of superheated vapour, from two specific heats: on the dew line, and the mean of the first 60 K above it.
//!
//! ```text
//! h = h dew + c x        x = T − dew(p), K        c, the mean from the dew line to x, = c dew + (c 60 − c dew) x (60 + L) / (60 (x + L))
//! L = 0.9 (Tc − dew(p)), at most 30 K: over how many kelvin the specific heat falls, the fewer the nearer to critical
//! ```
//! Range: −40 °C on the dew line to 10 K below critical, 0…60 K above the dew line.
//! Accuracy: within 2 kJ/kg of CoolProp, and within 1.2 kJ/kg where the dew line is 15 K or more below critical
//! (tests/outside/REPORT.md has what was found): for a sketch, not for a rating.
//! Source: the tables' (see the head of this folder); the form between the two specific heats is our own, fitted to CoolProp.

use super::Refrigerant;
use super::tables::LEAST_C;
use crate::science::ScienceError;
use crate::science::error::within;
use crate::science::quantity::{celsius, warmer_by, within_temperatures};
use uom::si::available_energy::joule_per_kilogram;
use uom::si::f64::{AvailableEnergy, Pressure, TemperatureInterval, ThermodynamicTemperature};
use uom::si::pressure::pascal;
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::temperature_interval::kelvin as kelvin_difference;
use uom::si::thermodynamic_temperature::kelvin;

/// Over so many kelvin the second specific heat is the mean, and no further is it used.
const SUPERHEAT_MOST_K: f64 = 60.0;
/// Nearer to critical a specific heat says little.
pub(super) const BELOW_CRITICAL_K: f64 = 10.0;
const FALL_PER_KELVIN: f64 = 0.9;
const FALL_MOST_K: f64 = 30.0;

/// What an argument is called where it is refused.
#[derive(Clone, Copy)]
pub(super) struct Names {
    pub(super) pressure: &'static str,
    pub(super) temperature: &'static str,
}

/// Vapour above its dew line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Vapour {
    pub(super) superheat: TemperatureInterval,
    pub(super) enthalpy: AvailableEnergy,
}

impl Refrigerant {
    /// The enthalpy of vapour at an absolute `pressure`, from its dew `temperature` to 60 K above; zero as for the liquid.
    /// The pressure reaches from the dew pressure at −40 °C to that 10 K below critical.
    pub fn vapour_enthalpy(
        self,
        pressure: Pressure,
        temperature: ThermodynamicTemperature,
    ) -> Result<AvailableEnergy, ScienceError> {
        let names = Names { pressure: "pressure_pa", temperature: "temperature_c" };
        Ok(self.vapour(pressure, temperature, names)?.enthalpy)
    }

    pub(super) fn vapour(
        self,
        pressure: Pressure,
        temperature: ThermodynamicTemperature,
        names: Names,
    ) -> Result<Vapour, ScienceError> {
        let table = self.table();
        let dew = self.dew_of_vapour(pressure, names.pressure)?;
        let most = dew + TemperatureInterval::new::<kelvin_difference>(SUPERHEAT_MOST_K);
        within_temperatures(names.temperature, temperature, dew, most)?;
        let superheat = warmer_by(temperature, dew);
        let state = self.saturation(dew)?;
        let fall = (FALL_PER_KELVIN * (table.critical_k - dew.get::<kelvin>())).min(FALL_MOST_K);
        let x = superheat.get::<kelvin_difference>();
        let [on_dew, over_60] = [state.vapour_specific_heat, state.superheated_specific_heat]
            .map(|heat| heat.get::<joule_per_kilogram_kelvin>());
        let part = x * (SUPERHEAT_MOST_K + fall) / (SUPERHEAT_MOST_K * (x + fall));
        let above = AvailableEnergy::new::<joule_per_kilogram>(x * (on_dew + (over_60 - on_dew) * part));
        Ok(Vapour { superheat, enthalpy: state.vapour_enthalpy + above })
    }

    /// From where to where the vapour above the dew line has an enthalpy here, Pa.
    pub(super) fn vapour_pressures(self) -> Result<[f64; 2], ScienceError> {
        let [least, most] = [celsius(LEAST_C).get::<kelvin>(), self.table().critical_k - BELOW_CRITICAL_K];
        let pressure = |t_k| {
            self.saturation(ThermodynamicTemperature::new::<kelvin>(t_k)).map(|at| at.dew_pressure.get::<pascal>())
        };
        Ok([pressure(least)?, pressure(most)?])
    }

    fn dew_of_vapour(self, pressure: Pressure, name: &str) -> Result<ThermodynamicTemperature, ScienceError> {
        let [least_pa, most_pa] = self.vapour_pressures()?;
        within(name, pressure.get::<pascal>(), least_pa, most_pa)?;
        // Two tables differ by a hair, so an end of the range could fall a hair outside.
        let dew_k = self.dew_temperature(pressure)?.get::<kelvin>().max(celsius(LEAST_C).get::<kelvin>());
        Ok(ThermodynamicTemperature::new::<kelvin>(dew_k))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn on_the_dew_line_it_is_that_of_the_dew_line() {
        for refrigerant in Refrigerant::ALL {
            let state = refrigerant.saturation(celsius(0.0)).unwrap();
            let dew = refrigerant.dew_temperature(state.dew_pressure).unwrap();
            let enthalpy = refrigerant.vapour_enthalpy(state.dew_pressure, dew).unwrap();
            assert!((enthalpy - state.vapour_enthalpy).get::<joule_per_kilogram>().abs() < 1.0, "{refrigerant:?}");
        }
    }

    #[test]
    fn wet_vapour_and_what_is_hotter_than_60_k_above_it_are_refused_by_the_range_at_that_pressure() {
        let pressure = Pressure::new::<pascal>(474_457.5);
        for outside_c in [-0.1, 60.1] {
            let refused = Refrigerant::R290.vapour_enthalpy(pressure, celsius(outside_c)).unwrap_err();
            assert!(
                matches!(&refused, ScienceError::OutOfRange { argument, least, most, .. }
                    if argument == "temperature_c" && least.abs() < 0.01 && (most - 60.0).abs() < 0.01),
                "{refused}"
            );
        }
    }

    #[test]
    fn within_10_k_of_critical_it_is_refused() {
        let near = Refrigerant::R410A.saturation(celsius(62.0)).unwrap().dew_pressure;
        let refused = Refrigerant::R410A.vapour_enthalpy(near, celsius(80.0)).unwrap_err();
        assert!(matches!(refused, ScienceError::OutOfRange { argument, .. } if argument == "pressure_pa"));
    }
}
