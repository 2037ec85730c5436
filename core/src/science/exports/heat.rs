//! Heat output with its doubt, and verdicts.

use crate::science::heat::{HeatTest, Reading};
use crate::science::verdict::Limits;
use crate::science::{ScienceError, uncertainty};

/// Result of a heat test; every `_u` is a standard uncertainty.
#[derive(Debug, Clone, uniffi::Record)]
pub struct HeatTestValues {
    /// Heat given to the water.
    pub heat_w: f64,
    /// Its doubt.
    pub heat_u: f64,
    /// Coefficient of performance.
    pub cop: f64,
    /// Its doubt.
    pub cop_u: f64,
}

/// [`HeatTest::result`].
#[uniffi::export]
#[expect(clippy::too_many_arguments, reason = "the names are what other languages call it by")]
pub fn heat_test(
    flow_l_min: f64,
    flow_u: f64,
    inlet_c: f64,
    inlet_u: f64,
    outlet_c: f64,
    outlet_u: f64,
    shared_thermometer_u: f64,
    power_w: f64,
    power_u: f64,
) -> Result<HeatTestValues, ScienceError> {
    let reading = |value, standard_u| Reading { value, standard_u };
    let result = HeatTest {
        flow_l_min: reading(flow_l_min, flow_u),
        inlet_c: reading(inlet_c, inlet_u),
        outlet_c: reading(outlet_c, outlet_u),
        shared_thermometer_u,
        power_w: reading(power_w, power_u),
    }
    .result()?;
    Ok(HeatTestValues {
        heat_w: result.heat_w.value(),
        heat_u: result.heat_w.standard_u(),
        cop: result.cop.value(),
        cop_u: result.cop.standard_u(),
    })
}

/// [`uncertainty::from_resolution`].
#[uniffi::export]
pub fn uncertainty_from_resolution(step: f64) -> Result<f64, ScienceError> {
    uncertainty::from_resolution(step)
}

/// [`uncertainty::from_limits`].
#[uniffi::export]
pub fn uncertainty_from_limits(half_width: f64) -> Result<f64, ScienceError> {
    uncertainty::from_limits(half_width)
}

/// [`Limits::judge`]: "pass", "fail" or "too close to call".
#[uniffi::export]
pub fn verdict(
    value: f64,
    value_u: f64,
    lower: Option<f64>,
    upper: Option<f64>,
    k: f64,
) -> Result<String, ScienceError> {
    Ok(Limits::new(lower, upper)?.judge(value, value_u, k)?.as_str().to_owned())
}

/// [`Limits::probability`].
#[uniffi::export]
pub fn conformance_probability(
    value: f64,
    value_u: f64,
    lower: Option<f64>,
    upper: Option<f64>,
) -> Result<f64, ScienceError> {
    Limits::new(lower, upper)?.probability(value, value_u)
}
