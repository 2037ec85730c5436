//! PNG row by row: a picture of any size is reduced while it is read.

use std::io::Cursor;

use png::{BitDepth, ColorType, Decoder, DecodingError, Limits, Reader, Transformations};

use super::{MEMORY_BYTES_MAX, Not};
use crate::picture::{Gather, Picture};

/// What the decoder may take for chunks that are no pixels, bytes: a compressed text or colour profile may be a bomb.
const CHUNK_BYTES_MAX: usize = 8_000_000;

fn open(bytes: &[u8]) -> Result<Reader<Cursor<&[u8]>>, DecodingError> {
    let mut decoder = Decoder::new_with_limits(Cursor::new(bytes), Limits { bytes: CHUNK_BYTES_MAX });
    decoder.set_ignore_text_chunk(true);
    decoder.set_transformations(Transformations::EXPAND | Transformations::STRIP_16);
    decoder.read_info()
}

/// Pixels across and down.
pub(super) fn size(bytes: &[u8]) -> Result<(u32, u32), String> {
    // The first chunk, at its fixed place (RFC 2083, 4.1.1): asked before anything is set aside for its rows.
    let head = bytes.get(16..24).ok_or("it breaks off in its first chunk")?;
    let side =
        |at: usize| head.get(at..).and_then(|rest| rest.first_chunk::<4>()).map(|side| u32::from_be_bytes(*side));
    side(0).zip(side(4)).ok_or_else(|| "it breaks off in its first chunk".into())
}

pub(super) fn picture(bytes: &[u8], side: u32) -> Result<Picture, Not> {
    let damaged = |error: DecodingError| Not::Damaged(error.to_string());
    let mut reader = open(bytes).map_err(damaged)?;
    let (width, height) = (reader.info().width, reader.info().height);
    // At least twice the preview is left, so that reducing further by Lanczos hides how it was begun.
    let by = width.max(height) / (2 * side);
    let (colour, depth) = reader.output_color_type();
    let samples = colour.samples();
    if depth != BitDepth::Eight || !matches!(samples, 1..=4) || colour == ColorType::Indexed {
        return Err(Not::Here);
    }
    let mut gather = Gather::new(width, height, by);
    let mut rgb = Vec::new();
    let mut take = |row: &[u8]| match samples {
        3 | 4 => gather.row(row, samples),
        _ => {
            rgb.clear();
            rgb.extend(row.chunks_exact(samples).filter_map(<[u8]>::first).flat_map(|grey| [*grey; 3]));
            gather.row(&rgb, 3);
        }
    };
    if reader.info().interlaced {
        // Its rows come in seven passes over the whole picture: that must be held.
        let whole =
            reader.output_buffer_size().filter(|whole| *whole as u64 + bytes.len() as u64 <= MEMORY_BYTES_MAX / 2);
        let Some(whole) = whole else { return Err(Not::Here) };
        let mut pixels = vec![0; whole];
        reader.next_frame(&mut pixels).map_err(damaged)?;
        pixels.chunks_exact(width as usize * samples).for_each(&mut take);
    } else {
        for _ in 0..height {
            let row = reader.next_row().map_err(damaged)?;
            let Some(row) = row else { return Err(Not::Damaged("it breaks off before its end".into())) };
            take(row.data());
        }
    }
    Ok(gather.picture())
}
