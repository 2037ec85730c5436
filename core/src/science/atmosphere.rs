//! The pressure of the air at an altitude.
//!
//! ```text
//! p = 101 325 Pa · (1 − 0.0065 K/m · H / 288.15 K) ^ 5.255 88
//! ```
//! Range: −2000…11 000 m. The altitude is taken as geopotential, which at 4000 m is 2.5 m less than the surveyed one.
//! Accuracy: the standard day exactly; on a real day the weather moves it by up to about ±4 % (common practice, no source).
//! Source: ISO 2533:1975 (the same as ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 3).

use super::error::{ScienceError, within};
use uom::si::f64::{Length, Pressure};
use uom::si::length::meter;
use uom::si::pressure::pascal;

const SEA_LEVEL_PA: f64 = 101_325.0;
const SEA_LEVEL_K: f64 = 288.15;
const LAPSE_K_M: f64 = 0.0065;
/// Standard gravity over the gas constant of dry air (287.052 87 J/(kg K)) and the lapse.
const EXPONENT: f64 = 9.80665 / (287.05287 * LAPSE_K_M);

/// Absolute pressure of the standard atmosphere at `altitude` (−2000…11 000 m).
pub fn pressure(altitude: Length) -> Result<Pressure, ScienceError> {
    let h = altitude.get::<meter>();
    within("altitude_m", h, -2000.0, 11_000.0)?;
    let ratio = libm::pow(1.0 - LAPSE_K_M * h / SEA_LEVEL_K, EXPONENT);
    Ok(Pressure::new::<pascal>(SEA_LEVEL_PA * ratio))
}
