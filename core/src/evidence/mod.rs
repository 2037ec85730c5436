//! Photographs as evidence: the original is kept to the byte, and what it tells stands beside it.

mod exif;
mod intake;

pub use intake::{IntakeError, PHOTO_BYTES_MAX, PHOTO_PIXELS_MAX, Prepared, look, prepare};
