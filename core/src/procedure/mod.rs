//! What a service consists of, as data, and what no service may do.

pub mod check;
pub mod danger;
pub mod gate;
pub mod library;
pub mod measure;
pub mod mixing;
pub mod pack;
pub mod proof;
pub mod read;
pub mod shape;
pub mod told;
