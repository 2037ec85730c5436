//! Codes on a plate: QR and Data Matrix by the crate `rxing` (feature `codes`), the linear ones by scan lines of our own.
//!
//! ```text
//! grey picture ─▶ itself and its halves ─┬─▶ black and white ─▶ QR, Data Matrix, also light on dark   matrix.rs
//!                                        └─▶ lines in sixteen directions ─▶ bars ─▶ text, twice alike  lines.rs, linear.rs
//! ```
//! Where the two meet nothing is guessed: a linear code counts only where several lines read the same, and what fails its check
//! characters is not there.

mod code;
mod code128;
mod code39;
mod ean;
mod linear;
mod lines;
#[cfg(feature = "codes")]
mod matrix;

use std::panic::{AssertUnwindSafe, catch_unwind};

pub use self::code::{Code, Symbology};
pub use self::ean::is_gtin;
use crate::decode::grey;
use crate::kind::kind;
use crate::picture::Plane;

/// More codes than this are not kept of one picture: a plate has one to four.
pub const CODES_MOST: usize = 8;
/// A longer text is kept up to here, in characters, and marked: what names a unit is a tenth of that.
pub const CODE_TEXT_MAX: usize = 1000;
/// A picture is looked at again at half its size, and half of that, while its longer side is at least this, pixels: what is
/// blurred at full size is sharp enough then.
const HALVED_FROM: u32 = 1400;

/// A text that was read, and how.
type Found = (Symbology, String);

/// The codes in a file's bytes, until what was found is `enough`; none where they cannot be decoded here. Whatever trips over
/// hostile bytes reads nothing.
#[must_use]
pub fn codes_in(bytes: &[u8], enough: impl Fn(&[Code]) -> bool) -> Vec<Code> {
    let search = || kind(bytes).and_then(|kind| grey(bytes, &kind)).map(|picture| read(picture, &enough));
    catch_unwind(AssertUnwindSafe(search)).ok().flatten().unwrap_or_default()
}

/// The codes in a grey picture. It is looked at from its smallest size on, since most codes are large, and until it is enough:
/// a search of all of it takes many times as long.
fn read(picture: Plane, enough: &dyn Fn(&[Code]) -> bool) -> Vec<Code> {
    let mut sizes = vec![picture];
    while let Some(half) = sizes.last().filter(|last| last.width.max(last.height) >= HALVED_FROM).map(halved) {
        sizes.push(half);
    }
    let mut found = Vec::new();
    for picture in sizes.iter().rev() {
        for search in SEARCHES {
            add(&mut found, search(picture));
            if enough(&found) {
                return found;
            }
        }
    }
    found
}

/// The quicker one first.
const SEARCHES: &[fn(&Plane) -> Vec<Found>] = &[
    #[cfg(feature = "codes")]
    matrix::read,
    linear::read,
];

fn add(found: &mut Vec<Code>, more: Vec<Found>) {
    for (symbology, text) in more {
        let one = kept(symbology, text);
        if found.len() < CODES_MOST && !one.text.is_empty() && !found.contains(&one) {
            found.push(one);
        }
    }
}

/// As it stands in the record: exactly as read, up to a length.
fn kept(symbology: Symbology, text: String) -> Code {
    match text.char_indices().nth(CODE_TEXT_MAX) {
        Some((end, _)) => Code { symbology, text: text.get(..end).unwrap_or_default().to_owned(), cut: true },
        None => Code { symbology, text, cut: false },
    }
}

/// Each pixel the mean of four; an odd last row or column is left out.
fn halved(picture: &Plane) -> Plane {
    let (width, height) = (picture.width / 2, picture.height / 2);
    let mut pixels = Vec::with_capacity(width as usize * height as usize);
    let mut rows = picture.rows();
    while let (Some(upper), Some(lower)) = (rows.next(), rows.next()) {
        let pairs = upper.chunks_exact(2).zip(lower.chunks_exact(2));
        pixels.extend(pairs.map(|(one, other)| {
            let sum: u16 = one.iter().chain(other).map(|value| u16::from(*value)).sum();
            ((sum + 2) / 4) as u8
        }));
    }
    Plane { pixels, width, height }
}
