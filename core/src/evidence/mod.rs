//! Photographs as evidence: the original is kept to the byte, and what it tells stands beside it.
//!
//! ```text
//! file ─▶ SHA-256 while reading ─▶ kind ─▶ picture (decoded at reduced size) ─▶ turned upright ─▶ preview, look
//!                                   └────▶ EXIF: time, place, orientation ─────────────────────▶ judge
//! ```

mod decode;
mod exif;
#[cfg(test)]
mod hostile;
mod ink;
mod intake;
mod judge;
mod kind;
mod look;
mod picture;
mod preview;
mod shown;

pub use ink::{Ink, InkError, Point};
pub use intake::{IntakeError, PHOTO_BYTES_MAX, PHOTO_PIXELS_MAX, Prepared, look, prepare};
pub use judge::{Around, SITE_RADIUS_M, judged_beside};
pub use look::{Look, likeness_apart};
pub use shown::{SHOWN_BYTES_MAX, SHOWN_MEDIA, Shown};
