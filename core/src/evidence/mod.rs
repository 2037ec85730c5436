//! Photographs as evidence: the original is kept to the byte, and what it tells stands beside it.
//!
//! ```text
//! file ─▶ read once ─┬─▶ SHA-256, original on disk, on a thread of its own
//!                    └─▶ kind ─▶ picture (decoded at reduced size) ─▶ turned upright ─▶ preview, look
//!                        ├────▶ EXIF: time, place, orientation ─────────────────────▶ judge
//!                        └────▶ where it shows a plate: grey, larger ─▶ codes ─▶ plate: serial number, model
//! ```
//! What is done with pixels is the crate `coilside-picture`.

mod exif;
#[cfg(test)]
mod hostile;
mod ink;
mod intake;
mod judge;
pub mod plate;
mod shown;

pub use coilside_picture::{CODE_TEXT_MAX, CODES_MOST};
pub use ink::{Ink, InkError, Point};
pub use intake::{IntakeError, PHOTO_BYTES_MAX, Prepared, codes_in, look, prepare};
pub use judge::{Around, SITE_RADIUS_M, judged_beside};
pub use shown::{SHOWN_BYTES_MAX, SHOWN_MEDIA, Shown};
