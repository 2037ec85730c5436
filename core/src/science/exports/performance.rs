//! What a machine should give, and how well that is known.

use super::reading::{DoubtedValue, ReadingValue};
use crate::science::ScienceError;
use crate::science::conditions::Conditions;
use crate::science::performance::{self, Kind, Rated};
use uom::si::f64::Pressure;
use uom::si::pressure::pascal;

/// What a machine works between.
#[derive(Debug, Clone, uniffi::Record)]
pub struct ConditionReadings {
    /// Air or liquid that arrives at the source's side, °C.
    pub source_c: ReadingValue,
    /// Relative humidity, 0…1, of air; none for a liquid.
    pub source_rh: Option<ReadingValue>,
    /// Of the air; not looked at for a liquid.
    pub pressure_pa: f64,
    /// Water in, °C.
    pub water_in_c: ReadingValue,
    /// Water out, °C.
    pub water_out_c: ReadingValue,
}

impl ConditionReadings {
    /// `at` names what these readings have of their own.
    pub(super) fn conditions(&self, at: &str) -> Result<Conditions, ScienceError> {
        let source_c = self.source_c.doubted(&format!("{at} source_c"))?;
        let water_in_c = self.water_in_c.doubted(&format!("{at} inlet_c"))?;
        let water_out_c = self.water_out_c.doubted(&format!("{at} outlet_c"))?;
        match &self.source_rh {
            None => Conditions::liquid(&source_c, &water_in_c, &water_out_c),
            Some(humidity) => {
                let humidity = humidity.doubted(&format!("{at} source_rh"))?;
                let pressure = Pressure::new::<pascal>(self.pressure_pa);
                Conditions::air(&source_c, &humidity, pressure, &water_in_c, &water_out_c)
            }
        }
    }
}

/// COP and heating capacity, or factors of both; no capacity for variable speed.
#[derive(Debug, Clone, uniffi::Record)]
pub struct PerformanceValues {
    /// Coefficient of performance, or its factor.
    pub cop: DoubtedValue,
    /// Capacity in W, or its factor.
    pub capacity: Option<DoubtedValue>,
}

/// [`performance::ratios`] between two sets of conditions; `kind` as [`Kind::named`] takes it.
#[uniffi::export]
pub fn performance_ratios(
    kind: String,
    from_conditions: ConditionReadings,
    to_conditions: ConditionReadings,
) -> Result<PerformanceValues, ScienceError> {
    let (from, to) = (from_conditions.conditions("from")?, to_conditions.conditions("to")?);
    let ratios = performance::ratios(Kind::named(&kind)?, &from, &to)?;
    Ok(PerformanceValues { cop: (&ratios.cop).into(), capacity: ratios.capacity.as_ref().map(Into::into) })
}

/// A rated point.
#[derive(Debug, Clone, uniffi::Record)]
pub struct RatedPoint {
    /// What it was rated at.
    pub conditions: ConditionReadings,
    /// Heating capacity, W.
    pub capacity_w: ReadingValue,
    /// Coefficient of performance.
    pub cop: ReadingValue,
}

/// [`performance::expected`].
#[uniffi::export]
pub fn expected_performance(
    kind: String,
    points: Vec<RatedPoint>,
    site: ConditionReadings,
) -> Result<PerformanceValues, ScienceError> {
    let rated = |(index, point): (usize, &RatedPoint)| {
        let at = format!("rated point {}", index + 1);
        Ok(Rated {
            conditions: point.conditions.conditions(&at)?,
            capacity_w: point.capacity_w.doubted(&format!("{at} capacity_w"))?,
            cop: point.cop.doubted(&format!("{at} cop"))?,
        })
    };
    let points = points.iter().enumerate().map(rated).collect::<Result<Vec<_>, ScienceError>>()?;
    let expected = performance::expected(Kind::named(&kind)?, &points, &site.conditions("site")?)?;
    Ok(PerformanceValues { cop: (&expected.cop).into(), capacity: expected.capacity_w.as_ref().map(Into::into) })
}

/// What is known of the model's error for a kind of machine.
#[derive(Debug, Clone, uniffi::Record)]
pub struct PerformanceErrorValues {
    /// Machines that it was measured on.
    pub machines: u16,
    /// COP: doubt of its logarithm for each kelvin.
    pub cop_u_per_k: f64,
    /// Capacity: the same; none for variable speed.
    pub capacity_u_per_k: Option<f64>,
    /// Growth of its logarithm with each kelvin of the source.
    pub capacity_by_source_per_k: Option<f64>,
    /// The same of the water.
    pub capacity_by_water_per_k: Option<f64>,
}

/// [`Kind::error`].
#[uniffi::export]
pub fn performance_error(kind: String) -> Result<PerformanceErrorValues, ScienceError> {
    let error = Kind::named(&kind)?.error();
    Ok(PerformanceErrorValues {
        machines: error.machines,
        cop_u_per_k: error.cop_u_per_k,
        capacity_u_per_k: error.capacity.map(|capacity| capacity.u_per_k),
        capacity_by_source_per_k: error.capacity.map(|capacity| capacity.by_source_per_k),
        capacity_by_water_per_k: error.capacity.map(|capacity| capacity.by_water_per_k),
    })
}
