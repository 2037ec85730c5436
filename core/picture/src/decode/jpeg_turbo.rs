//! JPEG by libjpeg-turbo: straight to planes, scaled inside the decoder.

use turbojpeg::{Colorspace, Decompressor, Image, PixelFormat, ScalingFactor, Subsamp, YuvImage, yuv_pixels_len};

use super::Not;
use crate::kind::Frame;
use crate::picture::{Gather, Picture, Plane};

/// The planes as decoded, and the ones that are cut from them.
pub(super) const HELD_PLANES: u64 = 2;

/// A progressive picture of more scans than this is a bomb: each costs a pass over the whole picture. Encoders write ten.
const SCANS_MAX: u32 = 100;

pub(super) fn picture(bytes: &[u8], frame: &Frame, eighths: u32) -> Result<Picture, Not> {
    let damaged = |error: turbojpeg::Error| Not::Damaged(error.to_string());
    let mut decoder = Decompressor::new().map_err(damaged)?;
    decoder.set_scan_limit(SCANS_MAX).map_err(damaged)?;
    let header = decoder.read_header(bytes).map_err(damaged)?;
    if (header.width, header.height) != (frame.width as usize, frame.height as usize) {
        return Err(Not::Damaged("it has two frame headers that differ".into()));
    }
    let scale = ScalingFactor::new(eighths as usize, 8);
    decoder.set_scaling_factor(scale).map_err(damaged)?;
    let (width, height) = (scale.scale(header.width), scale.scale(header.height));
    let planar = matches!(header.colorspace, Colorspace::YCbCr | Colorspace::Gray);
    if !planar || header.subsamp == Subsamp::Unknown {
        let mut rgb = vec![0; width * height * 3];
        let image = Image { pixels: rgb.as_mut_slice(), width, pitch: width * 3, height, format: PixelFormat::RGB };
        whole(decoder.decompress(bytes, image))?;
        let mut gather = Gather::new(width as u32, height as u32, 1);
        rgb.chunks_exact(width * 3).for_each(|row| gather.row(row, 3));
        return Ok(gather.picture());
    }
    let length = yuv_pixels_len(width, 1, height, header.subsamp).map_err(damaged)?;
    let mut image = YuvImage { pixels: vec![0; length], width, align: 1, height, subsamp: header.subsamp };
    whole(decoder.decompress_to_yuv(bytes, image.as_deref_mut()))?;
    let ((y_width, y_height), (c_width, c_height)) = (image.y_size(), image.uv_size());
    let mut rest = image.pixels;
    let mut cut = |across: usize, down: usize| {
        let behind = rest.split_off((across * down).min(rest.len()));
        let pixels = std::mem::replace(&mut rest, behind);
        Plane { pixels, width: across as u32, height: down as u32 }
    };
    let mut y = cut(y_width, y_height);
    let colour = (header.subsamp != Subsamp::Gray).then(|| [cut(c_width, c_height), cut(c_width, c_height)]);
    // The planes are padded to whole colour samples; the picture is not.
    if y.width as usize != width {
        y.pixels = y.rows().flat_map(|row| row.iter().take(width).copied()).collect();
        y.width = width as u32;
    }
    y.pixels.truncate(width * height);
    y.height = height as u32;
    Ok(Picture { y, colour })
}

/// libjpeg-turbo warns of bytes that cameras leave between segments, after it has decoded all of the picture: that is no damage.
fn whole(result: turbojpeg::Result<()>) -> Result<(), Not> {
    match result {
        Err(error) if !error.to_string().contains("extraneous bytes") => Err(Not::Damaged(error.to_string())),
        _ => Ok(()),
    }
}
