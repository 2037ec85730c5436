//! A value with its doubt, after the law of propagation of uncertainty.
//!
//! ```text
//! y = f(x1, x2, …)      part of cause c in y = Σ ∂f/∂xi · (part of c in xi)      u(y)² = Σ over causes (part of c in y)²
//! rectangular limits ±a: u = a / √3          a display's step d: u = d / (2 √3)
//! ```
//! Each independent cause of error has a name and a signed part, one standard uncertainty long. What two results share they
//! carry under the same name, so correlation needs no coefficient: one thermometer read twice cancels in a difference exactly
//! as far as its error is common, also between as found and as left.
//!
//! Range: first order; right while the function is close to straight over a few standard uncertainties.
//! Source: JCGM 100:2008 (GUM), 5.1.2 and 5.2.2 (propagation), F.1.2.3 (common causes), 4.3.7 and F.2.2.1 (rectangular).

use super::error::{ScienceError, within};
use std::borrow::Cow;
use std::collections::BTreeMap;

/// No reading in this trade is larger, in any SI unit.
const VALUE_MAX: f64 = 1e12;

/// The name of one independent cause of error: "inlet thermometer", "flow meter 7 scale".
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Cause(Cow<'static, str>);

impl Cause {
    /// Equal names are the same cause.
    pub fn new(name: impl Into<Cow<'static, str>>) -> Self {
        Self(name.into())
    }
}

/// A value and the part that each cause has in its doubt.
#[derive(Debug, Clone, PartialEq)]
pub struct Doubted {
    value: f64,
    parts: BTreeMap<Cause, f64>,
}

impl Doubted {
    /// A value with no doubt yet. `argument` names it if it is not a usable number.
    pub fn new(argument: &str, value: f64) -> Result<Self, ScienceError> {
        within(argument, value, -VALUE_MAX, VALUE_MAX)?;
        Ok(Self { value, parts: BTreeMap::new() })
    }

    /// The same value with one more cause, whose standard uncertainty is given in the value's unit (0 to 10¹²). `argument`
    /// names it if it is not a usable number.
    pub fn because(mut self, argument: &str, cause: Cause, standard_u: f64) -> Result<Self, ScienceError> {
        within(argument, standard_u, 0.0, VALUE_MAX)?;
        *self.parts.entry(cause).or_default() += standard_u;
        Ok(self)
    }

    /// The result of any function, from its value and its slope toward each input (the chain rule).
    pub fn from_slopes(value: f64, inputs: &[(f64, &Doubted)]) -> Self {
        let mut parts = BTreeMap::new();
        for (slope, input) in inputs {
            for (cause, part) in &input.parts {
                *parts.entry(cause.clone()).or_default() += slope * part;
            }
        }
        Self { value, parts }
    }

    /// The value itself.
    pub fn value(&self) -> f64 {
        self.value
    }

    /// The combined standard uncertainty, in the value's unit.
    pub fn standard_u(&self) -> f64 {
        libm::sqrt(self.parts.values().map(|part| part * part).sum())
    }

    /// This over another, which is not zero.
    pub fn over(&self, divisor: &Self) -> Self {
        let value = self.value / divisor.value;
        Self::from_slopes(value, &[(1.0 / divisor.value, self), (-value / divisor.value, divisor)])
    }

    /// This less another: what the work changed.
    pub fn less(&self, other: &Self) -> Self {
        Self::from_slopes(self.value - other.value, &[(1.0, self), (-1.0, other)])
    }
}

/// Standard uncertainty of a value known only to lie within ± `half_width` (0 to 10¹²), in its unit.
pub fn from_limits(half_width: f64) -> Result<f64, ScienceError> {
    within("half_width", half_width, 0.0, VALUE_MAX)?;
    Ok(half_width / libm::sqrt(3.0))
}

/// Standard uncertainty from a display's smallest `step` (0 to 10¹²), in its unit.
pub fn from_resolution(step: f64) -> Result<f64, ScienceError> {
    within("step", step, 0.0, VALUE_MAX)?;
    Ok(step / libm::sqrt(12.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn reading(value: f64, cause: &'static str, u: f64) -> Doubted {
        Doubted::new("reading", value).unwrap().because("u", Cause::new(cause), u).unwrap()
    }

    #[test]
    fn one_thermometer_read_twice_cancels_in_the_difference() {
        let found = reading(50.0, "thermometer", 0.5);
        let left = reading(55.0, "thermometer", 0.5);
        assert_eq!(left.less(&found).standard_u(), 0.0);
    }

    #[test]
    fn two_thermometers_add_in_squares() {
        let difference = reading(55.0, "one", 0.3).less(&reading(50.0, "other", 0.4));
        assert!((difference.standard_u() - 0.5).abs() < 1e-15);
    }

    #[test]
    fn relative_doubts_of_a_quotient_add_in_squares() {
        let quotient = reading(100.0, "one", 3.0).over(&reading(50.0, "other", 2.0));
        assert!((quotient.standard_u() / 2.0 - 0.05).abs() < 1e-15);
    }
}
