//! The day: what the office assigned.

mod assignment;

pub use assignment::{Assignment, AssignedUnit, Owner, PastReading, Site};
