//! A picture as the JPEG that stands for it on screens.

use crate::picture::Picture;

/// JPEG quality of previews. At 85 a preview is some 0.4 MB and the loss is below what the reduction itself costs.
const QUALITY: u8 = 85;

/// The picture as JPEG with colour at half size.
///
/// # Errors
/// What went wrong, where it cannot be one.
#[cfg(feature = "turbo")]
pub fn preview(picture: &Picture) -> Result<Vec<u8>, String> {
    use turbojpeg::{Compressor, Subsamp, YuvImage};
    let mut pixels = Vec::with_capacity(picture.y.pixels.len() * 3 / 2 + 4096);
    match &picture.colour {
        None => pixels.extend_from_slice(&picture.y.pixels),
        Some(colour) => {
            padded(&picture.y, &mut pixels);
            colour.iter().for_each(|plane| pixels.extend_from_slice(&plane.pixels));
        }
    }
    let subsamp = if picture.colour.is_some() { Subsamp::Sub2x2 } else { Subsamp::Gray };
    let (width, height) = (picture.y.width as usize, picture.y.height as usize);
    let image = YuvImage { pixels: pixels.as_slice(), width, align: 1, height, subsamp };
    let mut compressor = Compressor::new().map_err(|error| error.to_string())?;
    compressor.set_quality(i32::from(QUALITY)).map_err(|error| error.to_string())?;
    compressor.compress_yuv_to_vec(image).map_err(|error| error.to_string())
}

/// Brightness as the encoder wants it beside colour at half size: an odd last column and row are there twice.
#[cfg(feature = "turbo")]
fn padded(plane: &crate::picture::Plane, out: &mut Vec<u8>) {
    let doubled = |row: &[u8], out: &mut Vec<u8>| {
        out.extend_from_slice(row);
        out.extend(row.last().filter(|_| row.len() % 2 == 1));
    };
    plane.rows().for_each(|row| doubled(row, out));
    if let Some(last) = plane.rows().last().filter(|_| plane.height % 2 == 1) {
        doubled(last, out);
    }
}

/// The picture as JPEG with colour at half size.
///
/// # Errors
/// What went wrong, where it cannot be one.
#[cfg(not(feature = "turbo"))]
pub fn preview(picture: &Picture) -> Result<Vec<u8>, String> {
    use jpeg_encoder::{Encoder, SamplingFactor};
    let mut bytes = Vec::new();
    let mut encoder = Encoder::new(&mut bytes, QUALITY);
    encoder.set_sampling_factor(SamplingFactor::F_2_2);
    encoder.encode_image(Rows(picture)).map_err(|error| error.to_string())?;
    Ok(bytes)
}

/// Planes as the encoder asks for them: every row at full width.
#[cfg(not(feature = "turbo"))]
struct Rows<'a>(&'a Picture);

#[cfg(not(feature = "turbo"))]
impl jpeg_encoder::ImageBuffer for Rows<'_> {
    fn get_jpeg_color_type(&self) -> jpeg_encoder::JpegColorType {
        if self.0.colour.is_some() { jpeg_encoder::JpegColorType::Ycbcr } else { jpeg_encoder::JpegColorType::Luma }
    }

    fn width(&self) -> u16 {
        u16::try_from(self.0.y.width).unwrap_or(u16::MAX)
    }

    fn height(&self) -> u16 {
        u16::try_from(self.0.y.height).unwrap_or(u16::MAX)
    }

    fn fill_buffers(&self, y: u16, buffers: &mut [Vec<u8>; 4]) {
        let width = self.0.y.width as usize;
        let [brightness, blue, red, _] = buffers;
        brightness.extend(self.0.y.rows().nth(usize::from(y)).unwrap_or_default());
        let Some(colour) = &self.0.colour else { return };
        for (plane, buffer) in colour.iter().zip([blue, red]) {
            let row = plane.rows().nth(usize::from(y) / 2).unwrap_or_default();
            buffer.extend(row.iter().flat_map(|value| [*value, *value]).take(width));
        }
    }
}
