//! Readings as values with their doubt.
//!
//! An instrument is known again by its kind and its place ('pipe-thermometer at water-in'): the log does not say whether the
//! clamps at two pipes are one or two, so between places nothing is taken to cancel, which is the cautious way. Between as
//! found and as left the same instrument in the same place largely does (`science::instrument`).

use crate::procedure::pack::{Pack, Reading};
use crate::record::results::Stage;
use crate::round::PastReading;
use crate::science::instrument::{Instrument, Stated};
use crate::science::uncertainty::Doubted;
use crate::visit::state::Run;

/// The readings of a run, by the role that the pack gives them.
pub(super) struct Readings<'a> {
    pub(super) pack: &'a Pack,
    pub(super) run: &'a Run,
}

impl<'a> Readings<'a> {
    /// What was read in a role; none where it was not, or is no number.
    pub(super) fn of(&self, role: &str, stage: Stage) -> Option<Doubted> {
        let reading = self.declared(role, stage)?;
        let taken = self.run.readings.get(&reading.id)?;
        let error_limit = if taken.error_limit.is_empty() { 0.0 } else { taken.error_limit.parse().ok()? };
        let step = (0..reading.decimals).fold(1.0, |step, _| step / 10.0);
        // With a serial of the technician's own it is known to be that one.
        let serial = taken.own.as_ref().map(|own| own.serial.as_str()).unwrap_or_default();
        let kind = &taken.instrument;
        let name = if kind.is_empty() { String::new() } else { format!("{kind} {serial} at {role}") };
        let stated = Stated { value: taken.value.parse().ok()?, error_limit, step, scatter_u: 0.0 };
        Instrument::named(name).reads(reading.id.as_str(), stated).ok()
    }

    fn declared(&self, role: &str, stage: Stage) -> Option<&'a Reading> {
        let fits = |reading: &&Reading| {
            let left = reading.as_found.is_some();
            reading.role.as_deref() == Some(role) && (stage == Stage::Once || left == (stage == Stage::Left))
        };
        self.pack.readings.iter().find(fits)
    }

    /// What a past visit read in a role, with its day. Its doubt is not known.
    pub(super) fn past<'h>(&self, history: &'h [PastReading], role: &str, stage: Stage) -> Option<(Doubted, &'h str)> {
        let reading = self.declared(role, stage)?;
        let past = history.iter().rfind(|past| past.reading == reading.id.as_str())?;
        let value = Doubted::new(reading.id.as_str(), past.value.parse().ok()?).ok()?;
        (past.unit == reading.quantity.code()).then_some((value, past.date.as_str()))
    }
}
