//! The high side of the circuit: subcooling below critical, and for R744 above it the gas cooler.
//!
//! ```text
//! p / bar = (2.778 − 0.0157 te) tc + 0.381 te − 9.34        best pressure; te evaporating, tc gas cooler outlet, both °C
//! approach = gas cooler outlet − what cools it, where that enters
//! ```
//! Range: te −10…20 °C, tc 30…60 °C; R744 up to 16 MPa.
//! Accuracy: the correlation is a fit to one compressor's efficiency; take its pressure as a start, not as a setting.
//! Source: Liao, Zhao and Jakobsen, Applied Thermal Engineering 20 (2000) 831 (correlation and range from memory).

use super::Refrigerant;
use super::line::Line;
use crate::science::ScienceError;
use crate::science::quantity::{to_celsius, warmer_by, within_c};
use uom::si::f64::{Pressure, TemperatureInterval, ThermodynamicTemperature};
use uom::si::pressure::{bar, pascal};

/// The most that a transcritical circuit is built for (common practice, no source).
const TRANSCRITICAL_MOST_PA: f64 = 16e6;

/// What the readings after the condenser or gas cooler mean.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum HighSide {
    /// Below critical: liquid.
    Condenser {
        /// How much colder than its bubble point.
        subcooling: TemperatureInterval,
    },
    /// Above critical (R744): no liquid, so no subcooling.
    GasCooler {
        /// Absolute pressure.
        pressure: Pressure,
        /// How much warmer the gas leaves than what cools it enters.
        approach: TemperatureInterval,
    },
}

/// The high side from the readings at the outlet of the condenser or gas cooler, and the temperature (−40…100 °C) at which water
/// or air enters it. From 3 K below critical up to critical, and above it for any but R744, it is refused.
pub fn high_side(
    refrigerant: Refrigerant,
    outlet: &Line,
    cooled_by: ThermodynamicTemperature,
) -> Result<HighSide, ScienceError> {
    within_c("cooled_by_c", cooled_by, -40.0, 100.0)?;
    let table = refrigerant.table();
    if refrigerant == Refrigerant::R744 {
        let [least_pa, _] = table.bubble_pa;
        let pressure = outlet.absolute([least_pa, TRANSCRITICAL_MOST_PA])?;
        if pressure.get::<pascal>() > table.critical_pa {
            return Ok(HighSide::GasCooler { pressure, approach: warmer_by(outlet.temperature, cooled_by) });
        }
    }
    Ok(HighSide::Condenser { subcooling: outlet.subcooling(refrigerant)? })
}

/// The gas cooler's pressure (absolute) at which an R744 circuit takes least power, from the evaporating temperature
/// (−10…20 °C) and that of the gas leaving the gas cooler (30…60 °C).
pub fn gas_cooler_pressure(
    evaporating: ThermodynamicTemperature,
    gas_cooler_outlet: ThermodynamicTemperature,
) -> Result<Pressure, ScienceError> {
    within_c("evaporating_c", evaporating, -10.0, 20.0)?;
    within_c("gas_cooler_outlet_c", gas_cooler_outlet, 30.0, 60.0)?;
    let (te, tc) = (to_celsius(evaporating), to_celsius(gas_cooler_outlet));
    Ok(Pressure::new::<bar>((2.778 - 0.0157 * te) * tc + 0.381 * te - 9.34))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::science::quantity::celsius;
    use uom::si::f64::Length;
    use uom::si::length::meter;
    use uom::si::temperature_interval::kelvin;

    fn at_the_sea(gauge_pa: f64, outlet_c: f64) -> Line {
        Line {
            gauge_pressure: Pressure::new::<pascal>(gauge_pa),
            temperature: celsius(outlet_c),
            altitude: Length::new::<meter>(0.0),
        }
    }

    #[test]
    fn above_critical_r744_has_an_approach_and_no_subcooling() {
        let HighSide::GasCooler { pressure, approach } =
            high_side(Refrigerant::R744, &at_the_sea(9_000_000.0, 22.5), celsius(18.0)).unwrap()
        else {
            panic!("not a gas cooler")
        };
        assert!((pressure.get::<pascal>() - 9_101_325.0).abs() < 1e-6);
        assert!((approach.get::<kelvin>() - 4.5).abs() < 1e-9);
    }

    #[test]
    fn below_critical_it_is_the_subcooling_of_the_line() {
        let line = at_the_sea(5_000_000.0, 10.0);
        let subcooling = line.subcooling(Refrigerant::R744).unwrap();
        assert_eq!(high_side(Refrigerant::R744, &line, celsius(8.0)), Ok(HighSide::Condenser { subcooling }));
    }

    #[test]
    fn just_below_critical_it_is_refused() {
        assert!(high_side(Refrigerant::R744, &at_the_sea(7_100_000.0, 25.0), celsius(20.0)).is_err());
    }

    #[test]
    fn above_critical_any_other_is_refused_and_so_is_a_burst_gauge() {
        assert!(high_side(Refrigerant::R32, &at_the_sea(6_500_000.0, 60.0), celsius(50.0)).is_err());
        let refused = high_side(Refrigerant::R744, &at_the_sea(17e6, 40.0), celsius(20.0)).unwrap_err();
        assert!(matches!(refused, ScienceError::OutOfRange { most, .. } if most == 16e6 - 101_325.0));
    }
}
