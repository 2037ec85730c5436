//! The day: what is due and until when it is covered, what to take along, in which order, what it used up, and what past
//! visits say.

pub mod accreditation;
pub mod amount;
mod assignment;
pub mod calendar;
pub mod cover;
pub mod day;
pub mod due;
pub mod forecast;
pub mod history;
pub mod load;
#[cfg(test)]
mod load_day;
mod news;
pub mod route;
mod shared;
pub mod sheet;
mod technician;
mod terms;
pub mod used;

pub use assignment::{Appointment, AssignedUnit, Assignment, OpenFinding, Owner, PastReading, Site, Spot};
pub use day::day_of;
pub use news::{HandedVisit, News, PackOffer, Review, ReviewOutcome};
pub use shared::Shared;
pub use technician::{Accreditation, OwnInstrument, Technician};
pub use terms::Terms;
