//! Readings with what is known of their instruments, as they cross a border.

use crate::science::ScienceError;
use crate::science::instrument::{COMMON_USUAL, Instrument, Stated};
use crate::science::uncertainty::Doubted;

/// A reading; everything in its unit.
#[derive(Debug, Clone, uniffi::Record)]
pub struct ReadingValue {
    /// What the instrument shows.
    pub value: f64,
    /// The error lies within ± this.
    #[uniffi(default = 0.0)]
    pub error_limit: f64,
    /// The display's smallest step.
    #[uniffi(default = 0.0)]
    pub step: f64,
    /// Standard uncertainty from what the value does while it is read.
    #[uniffi(default = 0.0)]
    pub scatter_u: f64,
    /// The instrument's name; readings of one name share its error.
    #[uniffi(default = "")]
    pub instrument: String,
    /// How far they do, 0…1; [`COMMON_USUAL`] if not given.
    #[uniffi(default = None)]
    pub common: Option<f64>,
}

impl ReadingValue {
    /// With its doubt; see [`Instrument::reads`].
    pub(super) fn doubted(&self, reading: &str) -> Result<Doubted, ScienceError> {
        let stated =
            Stated { value: self.value, error_limit: self.error_limit, step: self.step, scatter_u: self.scatter_u };
        Instrument::named(&*self.instrument).with_common(self.common.unwrap_or(COMMON_USUAL))?.reads(reading, stated)
    }
}

/// A result with its standard uncertainty, in the result's unit.
#[derive(Debug, Clone, uniffi::Record)]
pub struct DoubtedValue {
    /// The value.
    pub value: f64,
    /// Its standard uncertainty.
    pub standard_u: f64,
}

impl From<&Doubted> for DoubtedValue {
    fn from(doubted: &Doubted) -> Self {
        Self { value: doubted.value(), standard_u: doubted.standard_u() }
    }
}

/// [`Instrument::reads`].
#[uniffi::export]
pub fn reading_with_doubt(reading: ReadingValue) -> Result<DoubtedValue, ScienceError> {
    Ok((&reading.doubted("reading")?).into())
}
