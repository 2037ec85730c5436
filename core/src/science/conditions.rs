//! What a machine works between: one temperature that stands for its source and one for its water.
//!
//! ```text
//! liquid source: s = inlet         air: s = (t + t* + 1 K) / 2,  limits ± (t − t* − 1 K) / 2        t* the wet bulb
//! water: w = (mean + outlet − 2.5 K) / 2,  limits ± (outlet − 2.5 K − mean) / 2        mean = (inlet + outlet) / 2
//! ```
//! In the tests that `performance.rs` is measured on the wet bulb is 1 K below the dry one and the water rises by 5 K: there s is the air's
//! temperature, w the water's mean, and neither limit opens. A dry coil follows the dry bulb and a wet one the wet bulb; a refrigerant
//! that cools down along with the water (R744) follows the water's mean, one that condenses its outlet. Which of the two a machine
//! does is not known here, so the middle is taken and the limits count as doubt, under one name, so that it cancels between
//! like conditions.
//! The mean is Lorenz' logarithmic one within 0.5 K for rises to 45 K.
//!
//! Range: source −25…45 °C (air: also that of moist air), water 0…90 °C, outlet not colder than inlet.
//! Source: H. Lorenz 1894 for gliding temperatures (from memory); EN 14511-2 for the tests' air (from memory); the middle and its limits are our
//! own choice, no source.

use super::air;
use super::error::{ScienceError, within};
use super::quantity::{celsius, to_celsius};
use super::uncertainty::{Cause, Doubted};
use uom::si::f64::Pressure;

/// Half of the water's rise in the tests.
const TEST_HALF_RISE_K: f64 = 2.5;
/// How far the wet bulb lies below the dry one in the tests.
const TEST_WET_BULB_K: f64 = 1.0;

/// What a machine works between.
#[derive(Debug, Clone, PartialEq)]
pub struct Conditions {
    pub(super) source_c: Doubted,
    pub(super) water_c: Doubted,
}

impl Conditions {
    /// Of a machine that takes its heat from air: dry bulb in °C, relative humidity 0.001…1 and pressure at the coil's inlet; water in and
    /// out in °C (the tank's temperature twice where the condenser lies in the tank).
    pub fn air(
        air_c: &Doubted,
        humidity_rh: &Doubted,
        pressure: Pressure,
        water_in_c: &Doubted,
        water_out_c: &Doubted,
    ) -> Result<Self, ScienceError> {
        within("air_c", air_c.value(), -25.0, 45.0)?;
        let wet_bulb_c = Doubted::through([air_c, humidity_rh], |[air_c, humidity]| {
            Ok(to_celsius(air::from_humidity(celsius(air_c), humidity, pressure)?.wet_bulb))
        })?;
        let limits = (air_c.value() - wet_bulb_c.value() - TEST_WET_BULB_K) / 2.0;
        let middle = (air_c.value() + wet_bulb_c.value() + TEST_WET_BULB_K) / 2.0;
        let source_c = Doubted::from_slopes(middle, &[(0.5, air_c), (0.5, &wet_bulb_c)])
            .with_part(Cause::new("performance model, humidity at the coil"), limits / libm::sqrt(3.0));
        Ok(Self { source_c, water_c: water(water_in_c, water_out_c)? })
    }

    /// Of a machine that takes its heat from a liquid, which arrives at `source_in_c`; water as above.
    pub fn liquid(source_in_c: &Doubted, water_in_c: &Doubted, water_out_c: &Doubted) -> Result<Self, ScienceError> {
        within("source_in_c", source_in_c.value(), -25.0, 45.0)?;
        Ok(Self { source_c: source_in_c.clone(), water_c: water(water_in_c, water_out_c)? })
    }
}

fn water(water_in_c: &Doubted, water_out_c: &Doubted) -> Result<Doubted, ScienceError> {
    within("water_in_c", water_in_c.value(), 0.0, 90.0)?;
    within("water_out_c", water_out_c.value(), water_in_c.value(), 90.0)?;
    let mean = (water_in_c.value() + water_out_c.value()) / 2.0;
    let by_outlet = water_out_c.value() - TEST_HALF_RISE_K;
    let middle = Doubted::from_slopes((mean + by_outlet) / 2.0, &[(0.25, water_in_c), (0.75, water_out_c)]);
    let limits = (by_outlet - mean) / 2.0;
    Ok(middle.with_part(Cause::new("performance model, which water temperature counts"), limits / libm::sqrt(3.0)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::pressure::pascal;

    fn exactly(value: f64) -> Doubted {
        Doubted::new("value", value).unwrap()
    }

    #[test]
    fn in_the_tests_conditions_nothing_is_left_open() {
        // A7/W35 of EN 14511: wet bulb 6 °C (relative humidity 0.868, by ASHRAE's equations), water 30 to 35 °C.
        let pressure = Pressure::new::<pascal>(101_325.0);
        let test = Conditions::air(&exactly(7.0), &exactly(0.868), pressure, &exactly(30.0), &exactly(35.0)).unwrap();
        assert!((test.source_c.value() - 7.0).abs() < 0.05 && test.source_c.standard_u() < 0.05);
        assert_eq!((test.water_c.value(), test.water_c.standard_u()), (32.5, 0.0));
    }

    #[test]
    fn water_heated_in_one_pass_leaves_open_which_temperature_counts() {
        let once = Conditions::liquid(&exactly(10.0), &exactly(15.0), &exactly(55.0)).unwrap();
        // Between the mean, 35 °C, and outlet less 2.5 K.
        assert_eq!(once.water_c.value(), 43.75);
        assert!((once.water_c.standard_u() - 8.75 / libm::sqrt(3.0)).abs() < 1e-12);
    }
}
