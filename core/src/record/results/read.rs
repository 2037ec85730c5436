//! Readings as values with their doubt.
//!
//! The error limits that an instrument's maker states are taken as rectangular (JCGM 100:2008, 4.3.7). They hold what the
//! instrument brings to every reading in one place, as its calibration and the way it sits on the pipe, and what is new each
//! time. How they divide no data sheet says; a third of the limits is taken as new each time (common practice, no source). The
//! rest is one cause for each instrument in each place, so it largely goes out of a difference between as found and as left,
//! and does not go out of one between two places. The standard uncertainty of one reading stays that of the whole limits.

use crate::procedure::pack::{Pack, Reading};
use crate::record::results::Stage;
use crate::round::PastReading;
use crate::science::uncertainty::{Cause, Doubted, from_limits, from_resolution};
use crate::visit::state::Run;

/// The part of the limits that is new at each reading.
const NEW_EACH_TIME: f64 = 1.0 / 3.0;

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
        let name = reading.id.as_str();
        let value = Doubted::new(name, taken.value.parse().ok()?).ok()?;
        if taken.error_limit.is_empty() {
            // No instrument is stated: what the number of decimals leaves open is the least that it can be.
            let step = (0..reading.decimals).fold(1.0, |step, _| step / 10.0);
            return value.because(name, Cause::new(name.to_owned()), from_resolution(step).ok()?).ok();
        }
        let u = from_limits(taken.error_limit.parse().ok()?).ok()?;
        let new = u * NEW_EACH_TIME;
        let lasting = libm::sqrt(u * u - new * new);
        let in_its_place = Cause::new(format!("{} at {role}", taken.instrument));
        value.because(name, in_its_place, lasting).ok()?.because(name, Cause::new(name.to_owned()), new).ok()
    }

    fn declared(&self, role: &str, stage: Stage) -> Option<&'a Reading> {
        let fits = |reading: &&Reading| {
            reading.role.as_deref() == Some(role)
                && (stage == Stage::Once || is_left(reading) == (stage == Stage::Left))
        };
        self.pack.readings.iter().find(fits)
    }

    /// What a past visit read in a role, with its day.
    pub(super) fn past<'h>(&self, history: &'h [PastReading], role: &str, stage: Stage) -> Option<(Doubted, &'h str)> {
        let reading = self.declared(role, stage)?;
        let past = history.iter().rfind(|past| past.reading == reading.id.as_str())?;
        let same_unit = past.unit == reading.quantity.code();
        let value = Doubted::new(reading.id.as_str(), past.value.parse().ok()?).ok()?;
        same_unit.then_some((value, past.date.as_str()))
    }
}

fn is_left(reading: &Reading) -> bool {
    reading.as_found.is_some()
}
