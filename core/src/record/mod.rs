//! What is left of a visit: the seal, and the owner's summary.

pub mod names;
pub mod notes;
pub mod photo;
pub mod results;
pub mod seal;
pub mod summary;
