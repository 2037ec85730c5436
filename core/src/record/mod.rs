//! What is left of a visit: the seal, the record file, and the owner's summary.

pub mod file;
pub mod jws;
pub mod names;
pub mod notes;
pub mod photo;
pub mod results;
pub mod seal;
pub mod summary;
