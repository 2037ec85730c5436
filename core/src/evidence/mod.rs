//! Photographs as evidence: the original is kept to the byte, and what it tells stands beside it.
//!
//! ```text
//! file ─▶ read once ─┬─▶ SHA-256, original on disk, on a thread of its own
//!                    └─▶ kind ─▶ picture (decoded at reduced size) ─▶ turned upright ─▶ preview, look
//!                        └────▶ EXIF: time, place, orientation ─────────────────────▶ judge
//! ```

mod at_once;
mod decode;
mod exif;
#[cfg(test)]
mod hostile;
mod intake;
mod judge;
mod kind;
mod look;
mod picture;
mod preview;

pub use intake::{IntakeError, PHOTO_BYTES_MAX, PHOTO_PIXELS_MAX, Prepared, look, prepare};
pub use judge::{Around, SITE_RADIUS_M, judged_beside};
pub use look::{Look, likeness_apart};
