//! Pass, fail, or too close to call.
//!
//! ```text
//! pass where lower + k u ≤ value ≤ upper − k u       fail where value < lower − k u or value > upper + k u       else too close to call
//! probability of conformity = Φ((upper − value) / u) − Φ((lower − value) / u)
//! ```
//! Range: values to ±10¹², u 0…10¹², k 0…10 (2 is usual: some 95 %). One limit may be missing, not both.
//! Accuracy: the doubt is taken as normal, without knowledge of what values are likely beforehand.
//! Source: JCGM 106:2012, 7.3 (probability), 8.3.2 and 8.3.3 (guarded acceptance and guarded rejection, w = k u).

use super::error::{ScienceError, within};
use core::f64::consts::SQRT_2;

const VALUE_MAX: f64 = 1e12;

/// What a reading says about a limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// Inside the limits, doubt and all.
    Pass,
    /// Outside, doubt and all.
    Fail,
    /// The doubt reaches across a limit.
    TooCloseToCall,
}

impl Verdict {
    /// As it crosses a border.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Pass => "pass",
            Self::Fail => "fail",
            Self::TooCloseToCall => "too close to call",
        }
    }
}

/// What is allowed; at least one limit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    lower: Option<f64>,
    upper: Option<f64>,
}

impl Limits {
    /// Refuses no limit at all, and an upper limit below the lower.
    pub fn new(lower: Option<f64>, upper: Option<f64>) -> Result<Self, ScienceError> {
        if lower.is_none() && upper.is_none() {
            return Err(ScienceError::Missing { argument: "lower or upper".to_owned() });
        }
        if let Some(lower) = lower {
            within("lower", lower, -VALUE_MAX, VALUE_MAX)?;
        }
        if let Some(upper) = upper {
            within("upper", upper, lower.unwrap_or(-VALUE_MAX), VALUE_MAX)?;
        }
        Ok(Self { lower, upper })
    }

    /// The verdict on a value with its standard uncertainty and a guard band of `k` times that.
    pub fn judge(&self, value: f64, value_u: f64, k: f64) -> Result<Verdict, ScienceError> {
        checked(value, value_u)?;
        within("k", k, 0.0, 10.0)?;
        let guard = k * value_u;
        let inside = self.lower.is_none_or(|lower| value >= lower + guard)
            && self.upper.is_none_or(|upper| value <= upper - guard);
        let outside = self.lower.is_some_and(|lower| value < lower - guard)
            || self.upper.is_some_and(|upper| value > upper + guard);
        Ok(match (inside, outside) {
            (true, _) => Verdict::Pass,
            (false, true) => Verdict::Fail,
            (false, false) => Verdict::TooCloseToCall,
        })
    }

    /// How probable it is, 0…1, that the true value lies inside.
    pub fn probability(&self, value: f64, value_u: f64) -> Result<f64, ScienceError> {
        checked(value, value_u)?;
        let beyond = |distance: f64| {
            if value_u > 0.0 {
                libm::erfc(distance / value_u / SQRT_2) / 2.0
            } else if distance >= 0.0 {
                0.0
            } else {
                1.0
            }
        };
        let below = self.lower.map_or(0.0, |lower| beyond(value - lower));
        let above = self.upper.map_or(0.0, |upper| beyond(upper - value));
        Ok((1.0 - below - above).clamp(0.0, 1.0))
    }
}

fn checked(value: f64, value_u: f64) -> Result<(), ScienceError> {
    within("value", value, -VALUE_MAX, VALUE_MAX)?;
    within("value_u", value_u, 0.0, VALUE_MAX)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn without_a_limit_there_is_nothing_to_judge() {
        assert!(matches!(Limits::new(None, None), Err(ScienceError::Missing { .. })));
        assert!(Limits::new(Some(2.0), Some(1.0)).is_err());
    }

    #[test]
    fn between_limits_closer_than_the_doubt_nothing_passes() {
        let limits = Limits::new(Some(1.0), Some(1.1)).unwrap();
        assert_eq!(limits.judge(1.05, 0.1, 2.0).unwrap(), Verdict::TooCloseToCall);
    }

    proptest! {
        #[test]
        fn a_pass_at_k_2_is_at_least_95_percent_probable(value in -10.0..10.0f64, u in 0.001..5.0f64, lower in -10.0..0.0f64, upper in 0.0..10.0f64) {
            let limits = Limits::new(Some(lower), Some(upper)).unwrap();
            let probability = limits.probability(value, u).unwrap();
            match limits.judge(value, u, 2.0).unwrap() {
                Verdict::Pass => prop_assert!(probability > 0.954),
                Verdict::Fail => prop_assert!(probability < 0.0228),
                Verdict::TooCloseToCall => {}
            }
        }
    }
}
