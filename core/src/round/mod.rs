//! The day: what the office assigned.

mod assignment;
mod news;
mod shared;
mod technician;

pub use assignment::{AssignedUnit, Assignment, Owner, PastReading, Site};
pub use news::News;
pub use shared::Shared;
pub use technician::{Accreditation, OwnInstrument, Technician};
