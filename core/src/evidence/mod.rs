//! Photographs as evidence: the original is kept to the byte, and what it tells stands beside it.
//!
//! ```text
//! file ─▶ read once ─┬─▶ SHA-256, original on disk, on a thread of its own
//!                    └─▶ kind ─▶ picture (decoded at reduced size) ─▶ turned upright ─▶ preview, look
//!                        ├────▶ EXIF: time, place, orientation ─────────────────────▶ judge
//!                        └────▶ where it shows a plate: grey, larger ─▶ codes ─▶ plate: serial number, model
//! ```

mod at_once;
mod codes;
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
pub mod plate;
mod preview;
mod shown;

pub use codes::{CODE_TEXT_MAX, CODES_MOST, codes_in};
pub use ink::{Ink, InkError, Point};
pub use intake::{IntakeError, PHOTO_BYTES_MAX, PHOTO_PIXELS_MAX, Prepared, look, prepare};
pub use judge::{Around, SITE_RADIUS_M, judged_beside};
pub use look::{Look, likeness_apart};
pub use shown::{SHOWN_BYTES_MAX, SHOWN_MEDIA, Shown};
