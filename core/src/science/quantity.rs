//! Small hands for `uom`, which neither subtracts absolute temperatures nor keeps a Celsius bound exact.

use super::error::ScienceError;
use uom::si::f64::{TemperatureInterval, ThermodynamicTemperature};
use uom::si::temperature_interval::kelvin as kelvin_difference;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};

/// A temperature from degrees Celsius.
pub fn celsius(value: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(value)
}

/// A temperature in degrees Celsius.
pub fn to_celsius(temperature: ThermodynamicTemperature) -> f64 {
    temperature.get::<degree_celsius>()
}

/// How much warmer `a` is than `b`.
pub fn warmer_by(a: ThermodynamicTemperature, b: ThermodynamicTemperature) -> TemperatureInterval {
    TemperatureInterval::new::<kelvin_difference>(a.get::<kelvin>() - b.get::<kelvin>())
}

/// Refuses a temperature outside bounds in degrees Celsius, which are themselves inside.
pub(crate) fn within_c(
    argument: &str,
    temperature: ThermodynamicTemperature,
    least_c: f64,
    most_c: f64,
) -> Result<(), ScienceError> {
    within_temperatures(argument, temperature, celsius(least_c), celsius(most_c))
}

/// As [`within_c`], where the bounds are temperatures too. Compared in kelvin, so that a bound itself is inside; said in
/// degrees Celsius, without the rounding that the way there and back adds.
pub(crate) fn within_temperatures(
    argument: &str,
    temperature: ThermodynamicTemperature,
    least: ThermodynamicTemperature,
    most: ThermodynamicTemperature,
) -> Result<(), ScienceError> {
    if temperature >= least && temperature <= most {
        return Ok(());
    }
    let [value, least, most] = [temperature, least, most].map(|t| libm::round(to_celsius(t) * 1e9) / 1e9);
    Err(ScienceError::out_of_range(argument, value, least, most))
}
