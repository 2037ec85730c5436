//! The day: what the office assigned.

mod assignment;

pub use assignment::{AssignedUnit, Assignment, Owner, PastReading, Site};
