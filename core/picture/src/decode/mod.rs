//! From a file's bytes to a picture at reduced size, in bounded memory. Where a picture would need more, or is of a kind that
//! is not decoded here, it is kept without a preview.

#[cfg(not(feature = "turbo"))]
mod jpeg_plain;
#[cfg(feature = "turbo")]
mod jpeg_turbo;
mod png;
mod webp;

use crate::kind::{Frame, Kind};
use crate::picture::{Picture, Plane};
#[cfg(not(feature = "turbo"))]
use jpeg_plain as jpeg;
#[cfg(feature = "turbo")]
use jpeg_turbo as jpeg;

/// The largest picture that is decoded, pixels.
pub const PIXELS_MAX: u64 = 100_000_000;
/// What decoding one picture may hold at once, its file among it, bytes. Together with the preview this stays under 64 MB.
const MEMORY_BYTES_MAX: u64 = 56_000_000;

/// The most pixels that are searched for codes: a photograph of 12 megapixels whole.
const GREY_PIXELS_MAX: u64 = 12_700_000;
/// What searching holds for each pixel: its brightness, a copy of it, and what was traced already.
const GREY_HELD_PLANES: u64 = 3;
/// PNG is reduced by whole numbers, to at least twice this.
const GREY_PNG_SIDE: u32 = 1600;

/// A picture that was decoded, or that is kept without a preview.
#[derive(Debug)]
pub struct Decoded {
    /// Pixels across and down as stored.
    pub size: (u32, u32),
    /// None where it cannot be decoded here.
    pub picture: Option<Picture>,
}

/// Why bytes are no picture that is decoded.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
pub enum DecodeError {
    /// Too many pixels.
    #[error("the picture has {width} × {height} pixels, more than {PIXELS_MAX}; take it with a smaller setting")]
    TooLarge { width: u32, height: u32 },
    /// A picture that breaks off or cannot be read.
    #[error("the picture is damaged: {detail}; take it again")]
    Damaged { detail: String },
}

/// Why it is not decoded.
enum Not {
    /// The bytes are no whole picture.
    Damaged(String),
    /// They may well be one, but not one that is decoded here.
    Here,
}

/// Decodes a picture to at least `side` pixels on its longer side, or to what it has.
///
/// # Errors
/// Where the bytes are no whole picture, or one of more pixels than are taken.
pub fn decode(bytes: &[u8], kind: &Kind, side: u32) -> Result<Decoded, DecodeError> {
    let damaged = |detail: String| DecodeError::Damaged { detail };
    let size = match kind {
        Kind::Heic(_) => return Ok(Decoded { size: (0, 0), picture: None }),
        Kind::Jpeg(None) => return Err(damaged("it has no frame header".into())),
        Kind::Jpeg(Some(frame)) => (frame.width, frame.height),
        Kind::Png => png::size(bytes).map_err(damaged)?,
        Kind::WebP => webp::size(bytes).map_err(damaged)?,
    };
    let (width, height) = size;
    if width == 0 || height == 0 {
        return Err(damaged("it has no pixels".into()));
    }
    if u64::from(width) * u64::from(height) > PIXELS_MAX {
        return Err(DecodeError::TooLarge { width, height });
    }
    let picture = match kind {
        Kind::Jpeg(Some(frame)) => whole_jpeg(bytes, frame, side),
        Kind::Png => png::picture(bytes, side),
        _ => webp::picture(bytes, size),
    };
    match picture {
        Ok(picture) => Ok(Decoded { size, picture: Some(picture) }),
        Err(Not::Here) => Ok(Decoded { size, picture: None }),
        Err(Not::Damaged(detail)) => Err(damaged(detail)),
    }
}

/// The brightness of a picture at the largest size that fits the memory, for what a preview is too small for. None where it
/// cannot be decoded here: [`decode`] tells why.
pub(crate) fn grey(bytes: &[u8], kind: &Kind) -> Option<Plane> {
    let picture = match kind {
        Kind::Jpeg(Some(frame)) => {
            let pixels = |eighths: u64| u64::from(frame.width) * u64::from(frame.height) * eighths * eighths / 64;
            let side = |eighths: u64| (u64::from(frame.width.max(frame.height)) * eighths).div_ceil(8) as u32;
            let fits = |eighths: &u64| {
                let searched = pixels(*eighths) * GREY_HELD_PLANES + bytes.len() as u64;
                pixels(*eighths) <= GREY_PIXELS_MAX
                    && searched.max(needs(bytes.len(), frame, side(*eighths))) <= MEMORY_BYTES_MAX
            };
            let eighths = [8, 4, 2, 1].into_iter().find(fits)?;
            whole_jpeg(bytes, frame, side(eighths))
        }
        Kind::Png => png::picture(bytes, GREY_PNG_SIDE),
        Kind::WebP => webp::picture(bytes, webp::size(bytes).ok()?),
        Kind::Jpeg(None) | Kind::Heic(_) => return None,
    };
    picture.ok().map(|picture| picture.y)
}

fn whole_jpeg(bytes: &[u8], frame: &Frame, side: u32) -> Result<Picture, Not> {
    if !ends_like_a_jpeg(bytes) {
        // A decoder fills what is missing with grey: evidence must not.
        return Err(Not::Damaged("it breaks off before its end".into()));
    }
    let decoded_here = frame.process <= 2 && frame.precision == 8 && matches!(frame.components, 1 | 3);
    if !decoded_here || needs(bytes.len(), frame, side) > MEMORY_BYTES_MAX {
        return Err(Not::Here);
    }
    jpeg::picture(bytes, frame, eighths(frame, side))
}

/// The smallest scale that leaves at least `side` pixels on the longer side: 1, 2, 4 or 8 eighths, the ones that a decoder
/// gets by leaving out frequencies of whole blocks.
fn eighths(frame: &Frame, side: u32) -> u32 {
    let longer = frame.width.max(frame.height);
    [1, 2, 4].into_iter().find(|eighths| (longer * eighths).div_ceil(8) >= side).unwrap_or(8)
}

/// Bytes that decoding holds at once: the file, its reduced planes, twice where they come as RGB, and for a progressive
/// picture every coefficient of two bytes.
fn needs(file: usize, frame: &Frame, side: u32) -> u64 {
    let pixels = u64::from(frame.width) * u64::from(frame.height);
    let eighths = u64::from(eighths(frame, side));
    let planes = pixels * eighths * eighths / 64 * frame.samples_16 / 16;
    let coefficients = if frame.is_progressive() { pixels * frame.samples_16 / 16 * 2 } else { 0 };
    file as u64 + planes * jpeg::HELD_PLANES + coefficients
}

/// The end-of-image marker lies in the last bytes; phones append little after it, and some a second picture.
fn ends_like_a_jpeg(bytes: &[u8]) -> bool {
    bytes.windows(2).rev().take(1 << 16).any(|pair| pair == [0xff, 0xd9])
}
