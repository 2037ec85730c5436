//! JPEG without a C library, for WebAssembly and for phones whose build has none.

use jpeg_decoder::{Decoder, PixelFormat};

use super::Not;
use crate::kind::Frame;
use crate::picture::{Gather, Picture, Plane};

/// The decoder's planes, the same as RGB, and ours.
pub(super) const HELD_PLANES: u64 = 4;

pub(super) fn picture(bytes: &[u8], frame: &Frame, eighths: u32) -> Result<Picture, Not> {
    let damaged = |error: jpeg_decoder::Error| match error {
        jpeg_decoder::Error::Unsupported(_) => Not::Here,
        error => Not::Damaged(error.to_string()),
    };
    // The decoder takes the first scale at which either side is large enough: the shorter one, which may be a pixel, must
    // not decide.
    let longer = frame.width.max(frame.height);
    let wanted = |length: u32| {
        let enough = if length == longer { (length * eighths).div_ceil(8) } else { u32::MAX };
        u16::try_from(enough).unwrap_or(u16::MAX)
    };
    let mut decoder = Decoder::new(bytes);
    let (width, height) = decoder.scale(wanted(frame.width), wanted(frame.height)).map_err(damaged)?;
    let pixels = decoder.decode().map_err(damaged)?;
    let (width, height) = (u32::from(width), u32::from(height));
    match decoder.info().map(|info| info.pixel_format) {
        Some(PixelFormat::L8) => Ok(Picture { y: Plane { pixels, width, height }, colour: None }),
        Some(PixelFormat::RGB24) => {
            let mut gather = Gather::new(width, height, 1);
            pixels.chunks_exact(width as usize * 3).for_each(|row| gather.row(row, 3));
            Ok(gather.picture())
        }
        _ => Err(Not::Here),
    }
}
