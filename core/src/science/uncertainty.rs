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

    /// The result of a function known only by its values: the slope toward each input is taken over a hundredth of that
    /// input's doubt, on both sides of it, or on one where the function's range ends.
    pub fn through<const N: usize>(
        inputs: [&Doubted; N],
        function: impl Fn([f64; N]) -> Result<f64, ScienceError>,
    ) -> Result<Self, ScienceError> {
        let at = inputs.map(Self::value);
        let value = function(at)?;
        let mut parts = BTreeMap::new();
        for (index, input) in inputs.iter().enumerate() {
            // Where an input has no doubt its slope does not matter.
            let doubt = input.standard_u();
            if doubt == 0.0 {
                continue;
            }
            let beside = |step: f64| {
                let mut moved = at;
                if let Some(x) = moved.get_mut(index) {
                    *x += step;
                }
                function(moved)
            };
            let step = (doubt / 100.0).max(libm::fabs(input.value) * 1e-6);
            let rise = match (beside(-step), beside(step)) {
                (Ok(before), Ok(after)) => (after - before) / 2.0,
                (Err(_), Ok(after)) => after - value,
                (Ok(before), Err(_)) => value - before,
                (Err(refused), Err(_)) => return Err(refused),
            };
            for (cause, part) in &input.parts {
                *parts.entry(cause.clone()).or_default() += rise / step * part;
            }
        }
        Ok(Self { value, parts })
    }

    /// The same value with one more cause whose part has a sign: where it pushes the other way than in another result, the
    /// two cancel.
    pub(super) fn with_part(mut self, cause: Cause, part: f64) -> Self {
        *self.parts.entry(cause).or_default() += part;
        self
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

    /// This times another.
    pub fn times(&self, factor: &Self) -> Self {
        Self::from_slopes(self.value * factor.value, &[(factor.value, self), (self.value, factor)])
    }

    /// This times a number that is not in doubt.
    pub fn scaled(&self, factor: f64) -> Self {
        Self::from_slopes(self.value * factor, &[(factor, self)])
    }

    /// This and another together.
    pub fn plus(&self, other: &Self) -> Self {
        Self::from_slopes(self.value + other.value, &[(1.0, self), (1.0, other)])
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
    fn a_function_known_by_its_values_has_the_slopes_of_the_same_function_by_its_formula() {
        let (a, b) = (reading(100.0, "one", 3.0), reading(50.0, "other", 2.0));
        let by_values = Doubted::through([&a, &b], |[a, b]| Ok(a / b)).unwrap();
        assert!((by_values.standard_u() / a.over(&b).standard_u() - 1.0).abs() < 1e-6);
        let product = Doubted::through([&a, &b], |[a, b]| Ok(a * b)).unwrap();
        assert!((product.standard_u() / a.times(&b).standard_u() - 1.0).abs() < 1e-6);
    }

    #[test]
    fn where_a_range_ends_the_slope_is_taken_on_the_other_side() {
        let x = reading(1.0, "one", 0.3);
        let ends_at_1 = |[x]: [f64; 1]| within("x", x, 0.0, 1.0).map(|()| 2.0 * x);
        assert!((Doubted::through([&x], ends_at_1).unwrap().standard_u() - 0.6).abs() < 1e-9);
    }

    #[test]
    fn relative_doubts_of_a_quotient_add_in_squares() {
        let quotient = reading(100.0, "one", 3.0).over(&reading(50.0, "other", 2.0));
        assert!((quotient.standard_u() / 2.0 - 0.05).abs() < 1e-15);
    }
}
