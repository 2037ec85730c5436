//! What the work changed: as found against as left, at like conditions.
//!
//! ```text
//! difference = left − found · ratio        better or worse where |difference| > k u(difference), k = 2        else no difference that can be told
//! ```
//! u(difference) knows what both results share: an instrument read both times cancels as far as its error is common, and where the
//! conditions differ, the doubt of the correction is in it.
//! Which ratio brings a result as found to the conditions as left: heat and COP, `performance::ratios`; the approach of an
//! exchanger, the heat as left over the heat as found (it grows with the heat that is passed); UA and airflow hardly follow the
//! conditions and are compared as they are. What was expected (`performance::expected`) against what was measured is the same
//! comparison.
//!
//! Range: results to ±10¹². Accuracy: a change of the same sign as the work's purpose says nothing of its cause.
//! Source: JCGM 106:2012, 8.3.2 and 8.3.3 (guard band k u, against a limit of zero).

use super::conditions::Conditions;
use super::error::ScienceError;
use super::performance::{Kind, ratios};
use super::uncertainty::Doubted;
use super::verdict::{Limits, Verdict};

/// Some 95 %.
const K: f64 = 2.0;

/// Which way is better.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Better {
    /// Heat, COP, UA, airflow.
    Higher,
    /// Approach temperature, power for the same heat.
    Lower,
}

/// Whether the work changed a result.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Difference {
    /// For the better, doubt and all.
    Better,
    /// For the worse, doubt and all.
    Worse,
    /// No difference that can be told.
    NoDifference,
}

impl Difference {
    /// As it crosses a border.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Better => "better",
            Self::Worse => "worse",
            Self::NoDifference => "no difference that can be told",
        }
    }
}

/// A result as found, brought to the conditions as left, beside the same result as left.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// As found, at the conditions as left.
    pub found: Doubted,
    /// As left.
    pub left: Doubted,
    /// Left less found.
    pub difference: Doubted,
    /// Whether it can be told.
    pub verdict: Difference,
}

impl Change {
    /// Of two results at like conditions, or of a kind that does not follow them.
    pub fn between(found: &Doubted, left: &Doubted, better: Better) -> Result<Self, ScienceError> {
        let difference = left.less(found);
        let judged = Limits::new(Some(0.0), None)?.judge(difference.value(), difference.standard_u(), K)?;
        let verdict = match (judged, better) {
            // Nothing changed and nothing is in doubt: at the limit, which counts as inside.
            (Verdict::Pass, _) if difference.value() == 0.0 => Difference::NoDifference,
            (Verdict::Pass, Better::Higher) | (Verdict::Fail, Better::Lower) => Difference::Better,
            (Verdict::Pass, Better::Lower) | (Verdict::Fail, Better::Higher) => Difference::Worse,
            (Verdict::TooCloseToCall, _) => Difference::NoDifference,
        };
        Ok(Self { found: found.clone(), left: left.clone(), difference, verdict })
    }

    /// Of a result as found that `ratio` brings to the conditions as left.
    pub fn corrected(found: &Doubted, ratio: &Doubted, left: &Doubted, better: Better) -> Result<Self, ScienceError> {
        Self::between(&found.times(ratio), left, better)
    }
}

/// A heat test with what the machine worked between.
#[derive(Debug, Clone, PartialEq)]
pub struct Tested {
    /// Heat given to the water, W.
    pub heat_w: Doubted,
    /// Coefficient of performance.
    pub cop: Doubted,
    /// What it worked between, by the same readings of water.
    pub conditions: Conditions,
}

/// What the work changed in heat and COP.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkChange {
    /// Heat given to the water, W; none for variable speed, whose heat follows the speed more than the work.
    pub heat_w: Option<Change>,
    /// Coefficient of performance.
    pub cop: Change,
}

/// What the work changed on a machine of this kind, at the conditions as left.
pub fn work(kind: Kind, found: &Tested, left: &Tested) -> Result<WorkChange, ScienceError> {
    let ratios = ratios(kind, &found.conditions, &left.conditions)?;
    let heat = |ratio| Change::corrected(&found.heat_w, ratio, &left.heat_w, Better::Higher);
    Ok(WorkChange {
        heat_w: ratios.capacity.as_ref().map(heat).transpose()?,
        cop: Change::corrected(&found.cop, &ratios.cop, &left.cop, Better::Higher)?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::science::instrument::{Instrument, Stated};
    use proptest::prelude::*;

    fn reading(name: &str, at: &str, value: f64, error_limit: f64) -> Doubted {
        Instrument::named(name).reads(at, Stated { value, error_limit, step: 0.1, scatter_u: 0.0 }).unwrap()
    }

    fn exactly(value: f64) -> Doubted {
        Doubted::new("value", value).unwrap()
    }

    #[test]
    fn one_instrument_tells_a_smaller_change_than_two() {
        let found = reading("meter", "found", 100.0, 5.0);
        let by_the_same = Change::between(&found, &reading("meter", "left", 104.0, 5.0), Better::Higher).unwrap();
        let by_another = Change::between(&found, &reading("other", "left", 104.0, 5.0), Better::Higher).unwrap();
        assert_eq!(by_the_same.verdict, Difference::Better);
        assert_eq!(by_another.verdict, Difference::NoDifference);
    }

    #[test]
    fn a_cop_that_rose_with_the_air_alone_did_not_change() {
        let at = |air: f64| Conditions::liquid(&exactly(air), &exactly(40.0), &exactly(45.0)).unwrap();
        let ratio = ratios(Kind::AirFixed, &at(5.0), &at(10.0)).unwrap().cop;
        let (found, left) = (reading("meter", "found", 3.0, 0.05), reading("meter", "left", 3.0 * ratio.value(), 0.05));
        assert_eq!(Change::between(&found, &left, Better::Higher).unwrap().verdict, Difference::Better);
        let corrected = Change::corrected(&found, &ratio, &left, Better::Higher).unwrap();
        assert_eq!(corrected.verdict, Difference::NoDifference);
    }

    #[test]
    fn heat_at_variable_speed_is_not_compared() {
        let tested = Tested {
            heat_w: reading("meter", "heat", 3000.0, 100.0),
            cop: reading("meter", "cop", 3.0, 0.1),
            conditions: Conditions::liquid(&exactly(5.0), &exactly(40.0), &exactly(45.0)).unwrap(),
        };
        assert!(work(Kind::AirRegulated, &tested, &tested).unwrap().heat_w.is_none());
        let fixed = work(Kind::AirFixed, &tested, &tested).unwrap().heat_w.unwrap();
        assert_eq!(fixed.verdict, Difference::NoDifference);
    }

    proptest! {
        #[test]
        fn a_thing_has_not_changed_from_itself(value in -1e6..1e6f64, limit in 0.0..100.0f64) {
            let thing = reading("meter", "once", value, limit);
            for better in [Better::Higher, Better::Lower] {
                prop_assert_eq!(Change::between(&thing, &thing, better).unwrap().verdict, Difference::NoDifference);
            }
        }

        #[test]
        fn a_wider_error_never_makes_a_difference(found in 50.0..150.0f64, left in 50.0..150.0f64, limit in 0.0..20.0f64, wider in 1.0..5.0f64, same in any::<bool>()) {
            let change = |limit: f64| {
                let other = if same { "meter" } else { "other" };
                Change::between(&reading("meter", "found", found, limit), &reading(other, "left", left, limit), Better::Higher).unwrap()
            };
            if change(limit).verdict == Difference::NoDifference {
                prop_assert_eq!(change(limit * wider).verdict, Difference::NoDifference);
            }
        }

        #[test]
        fn lower_is_better_where_higher_is_worse(found in 50.0..150.0f64, left in 50.0..150.0f64, limit in 0.0..20.0f64) {
            let change = |better| {
                let [found, left] = [("found", found), ("left", left)].map(|(at, value)| reading("meter", at, value, limit));
                Change::between(&found, &left, better).unwrap().verdict
            };
            let mirrored = match change(Better::Higher) {
                Difference::Better => Difference::Worse,
                Difference::Worse => Difference::Better,
                Difference::NoDifference => Difference::NoDifference,
            };
            prop_assert_eq!(change(Better::Lower), mirrored);
        }
    }
}
