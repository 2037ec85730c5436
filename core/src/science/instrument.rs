//! An instrument that is read more than once: what its readings share, and what each has of its own.
//!
//! ```text
//! error limit ±a: u = a / √3, of which u √r is the same at each reading of the instrument and u √(1 − r) is each reading's own
//! display step d: u = d / (2 √3)      scatter: as given      both each reading's own
//! ```
//! With r = 1 an error is wholly common and cancels in a difference; with r = 0 nothing does. Two readings of one instrument are
//! then correlated by r. Two instruments share nothing, and an instrument without a name shares nothing with itself: nobody
//! knows that it was the same one.
//!
//! Range: values and limits to ±10¹², r 0…1. Accuracy: a limit is taken as rectangular.
//! Source: JCGM 100:2008 (GUM), 4.3.7 and F.2.2.1 (rectangular), F.1.2.3 (common causes), 5.2.2 (correlation). r = 0.8 where nothing
//! is known: common practice, no source.

use super::error::{ScienceError, within};
use super::uncertainty::{Cause, Doubted, from_limits, from_resolution};

/// How far two readings of one instrument are taken to share its error, as a correlation, where nothing else is known.
pub const COMMON_USUAL: f64 = 0.8;

/// A reading as it crosses a border; everything in the reading's unit.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Stated {
    /// What the instrument shows.
    pub value: f64,
    /// The error lies within ± this, by the maker's sheet or the last calibration.
    pub error_limit: f64,
    /// The display's smallest step; zero if it does not matter.
    pub step: f64,
    /// Standard uncertainty from what the value does while it is read (a swinging flow); zero if it stands still.
    pub scatter_u: f64,
}

/// One instrument, by the name (make it carry the serial) under which its error is known again.
#[derive(Debug, Clone, PartialEq)]
pub struct Instrument {
    name: String,
    common: f64,
}

impl Instrument {
    /// The instrument of this name, with [`COMMON_USUAL`].
    pub fn named(name: impl Into<String>) -> Self {
        Self { name: name.into(), common: COMMON_USUAL }
    }

    /// The same instrument with another correlation (0…1) between the errors of its readings.
    pub fn with_common(mut self, common: f64) -> Result<Self, ScienceError> {
        within("common", common, 0.0, 1.0)?;
        self.common = common;
        Ok(self)
    }

    /// A reading with its doubt. `reading` ("as found inlet_c") names what is its own, and the argument if it is refused: no two
    /// readings may have the same.
    pub fn reads(&self, reading: &str, stated: Stated) -> Result<Doubted, ScienceError> {
        let limit_u = from_limits(stated.error_limit)?;
        let common = if self.name.is_empty() { 0.0 } else { self.common };
        let own = |what: &str| Cause::new(format!("{reading}, {what}"));
        Doubted::new(reading, stated.value)?
            .because("error_limit", Cause::new(format!("{}, scale", self.name)), limit_u * libm::sqrt(common))?
            .because("error_limit", own("own"), limit_u * libm::sqrt(1.0 - common))?
            .because("step", own("display"), from_resolution(stated.step)?)?
            .because("scatter_u", own("scatter"), stated.scatter_u)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const HALF_KELVIN: Stated = Stated { value: 50.0, error_limit: 0.5, step: 0.1, scatter_u: 0.02 };

    #[test]
    fn a_reading_has_the_doubt_of_its_limit_its_step_and_its_scatter() {
        let u = Instrument::named("T-1").reads("inlet_c", HALF_KELVIN).unwrap().standard_u();
        assert!((u - libm::sqrt(0.25 / 3.0 + 0.01 / 12.0 + 0.0004)).abs() < 1e-15);
    }

    #[test]
    fn one_instrument_is_correlated_with_itself_two_are_not_and_an_unnamed_one_is_not() {
        let steady = Stated { step: 0.0, scatter_u: 0.0, ..HALF_KELVIN };
        let difference = |a: &str, b: &str| {
            let [a, b] =
                [(a, "found"), (b, "left")].map(|(name, at)| Instrument::named(name).reads(at, steady).unwrap());
            a.less(&b).standard_u()
        };
        let u = 0.5 / libm::sqrt(3.0);
        assert!((difference("T-1", "T-1") - u * libm::sqrt(2.0 * (1.0 - COMMON_USUAL))).abs() < 1e-15);
        assert!((difference("T-1", "T-2") - u * libm::sqrt(2.0)).abs() < 1e-15);
        assert!((difference("", "") - u * libm::sqrt(2.0)).abs() < 1e-15);
    }

    proptest! {
        #[test]
        fn how_much_is_common_does_not_change_the_doubt_of_one_reading(common in 0.0..1.0f64) {
            let instrument = Instrument::named("T-1").with_common(common).unwrap();
            let all = Instrument::named("T-1").with_common(1.0).unwrap();
            let [u, whole] = [instrument, all].map(|one| one.reads("inlet_c", HALF_KELVIN).unwrap().standard_u());
            prop_assert!((u - whole).abs() < 1e-12);
        }
    }
}
