//! WebP, which can only be decoded whole: larger ones are kept without a preview.

use std::io::Cursor;

use image_webp::WebPDecoder;

use super::{MEMORY_BYTES_MAX, Not};
use crate::picture::{Gather, Picture};

/// What decoding holds for a pixel: the decoder's own planes and the picture as RGBA, bytes.
const BYTES_A_PIXEL: u64 = 9;

/// Pixels across and down.
pub(super) fn size(bytes: &[u8]) -> Result<(u32, u32), String> {
    WebPDecoder::new(Cursor::new(bytes)).map(|decoder| decoder.dimensions()).map_err(|error| error.to_string())
}

pub(super) fn picture(bytes: &[u8], (width, height): (u32, u32)) -> Result<Picture, Not> {
    if u64::from(width) * u64::from(height) * BYTES_A_PIXEL + bytes.len() as u64 > MEMORY_BYTES_MAX {
        return Err(Not::Here);
    }
    let damaged = |error: image_webp::DecodingError| Not::Damaged(error.to_string());
    let mut decoder = WebPDecoder::new(Cursor::new(bytes)).map_err(damaged)?;
    decoder.set_memory_limit(MEMORY_BYTES_MAX as usize / 4);
    let bytes_a_pixel = if decoder.has_alpha() { 4 } else { 3 };
    let Some(length) = decoder.output_buffer_size() else { return Err(Not::Here) };
    let mut pixels = vec![0; length];
    decoder.read_image(&mut pixels).map_err(damaged)?;
    let mut gather = Gather::new(width, height, 1);
    pixels.chunks_exact(width as usize * bytes_a_pixel).for_each(|row| gather.row(row, bytes_a_pixel));
    Ok(gather.picture())
}
