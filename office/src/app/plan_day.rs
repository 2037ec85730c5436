//! One day of the round, as the office plans it: what is open, and who may do it.

use coilside_core::round::{Assignment, Technician};

use super::hand_out_assignments;
use super::library::Library;
use crate::store::{Store, StoreError};

/// What a day is planned from.
#[derive(Clone, Debug)]
pub(crate) struct Day {
    /// Assignments that no visit answers yet, by id.
    pub(crate) assignments: Vec<Assignment>,
    /// Everyone who works with some device, by name.
    pub(crate) technicians: Vec<Technician>,
}

/// Reads it. An assignment that cannot be read as one is left out: devices do not get it either.
pub(crate) fn read(store: &Store, library: &Library) -> Result<Day, StoreError> {
    let docs = hand_out_assignments::open(store, library)?;
    let assignments = docs.into_iter().filter_map(|doc| serde_json::from_value(doc).ok()).collect();
    Ok(Day { assignments, technicians: hand_out_assignments::technicians(store)? })
}
