//! The day: what the office assigned.

mod assignment;
mod news;
mod technician;

pub use assignment::{AssignedUnit, Assignment, Owner, PastReading, Site};
pub use news::News;
pub use technician::{Accreditation, OwnInstrument, Technician};
