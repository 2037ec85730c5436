//! Pictures as the core needs them: told by their first bytes, decoded at reduced size in bounded memory, turned upright, measured, made
//! small again, and searched for codes. Pure functions of bytes; nothing here knows what a visit is.
//!
//! ```text
//! bytes ─▶ kind ─▶ decode ─▶ Picture ─▶ fitted ─┬─▶ look_at
//!                    │                          └─▶ preview
//!                    └─▶ grey, larger ─▶ codes
//! ```

mod at_once;
mod codes;
mod decode;
mod kind;
mod look;
mod picture;
mod preview;

pub use at_once::at_once;
pub use codes::{CODE_TEXT_MAX, CODES_MOST, Code, Symbology, codes_in, is_gtin};
pub use decode::{DecodeError, Decoded, PIXELS_MAX, decode};
pub use kind::{Frame, Kind, kind};
pub use look::{Look, likeness_apart, look_at};
pub use picture::{Picture, Plane, fit};
pub use preview::preview;
