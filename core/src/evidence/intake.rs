//! Intake: from a file that a camera left to an original on the shelf with its preview and what it tells.

use std::io::Cursor;

use image::codecs::jpeg::JpegEncoder;
use image::metadata::Orientation;
use image::{DynamicImage, ImageFormat, ImageReader, Limits};
use uom::si::length::meter;

use super::exif::{self, Told};
use crate::effect::PlaceFix;
use crate::id::Digest;
use crate::now::Now;
use crate::science::place::{Place, distance};
use crate::store::shelf::{Shelf, ShelfError};
use crate::visit::event::{PhotoFacts, PhotoFlag, sha256};

/// The largest file taken, bytes.
pub const PHOTO_BYTES_MAX: u64 = 60_000_000;
/// The largest picture taken, pixels.
pub const PHOTO_PIXELS_MAX: u64 = 100_000_000;
/// The longer side of a preview, pixels.
const PREVIEW_SIDE: u32 = 1600;
/// Camera and phone may differ by this much, milliseconds.
const TIME_DIFFERS_MS: i64 = 10 * 60_000;

/// The doubt of a camera's place, which writes none itself, metres. Common practice, no source.
const CAMERA_PLACE_M: f64 = 100.0;

/// A photograph that is on the shelf and ready to enter the log.
#[derive(Clone, Debug, PartialEq)]
pub struct Prepared {
    /// SHA-256 of the original.
    pub digest: Digest,
    /// Length of the original.
    pub bytes: u64,
    /// Media type.
    pub media: String,
    /// What file and phone tell.
    pub facts: PhotoFacts,
    /// What does not fit together.
    pub flags: Vec<PhotoFlag>,
}

/// Why a file was not taken as a photograph. The file is set aside, not deleted.
#[derive(Debug, thiserror::Error)]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
pub enum IntakeError {
    /// Nothing in it.
    #[error("the file is empty; take the photograph again")]
    Empty,
    /// Too long.
    #[error("the file has {bytes} bytes, more than {PHOTO_BYTES_MAX}; take it with a smaller setting")]
    TooLong { bytes: u64 },
    /// Too many pixels.
    #[error("the picture has {width} × {height} pixels, more than {PHOTO_PIXELS_MAX}; take it with a smaller setting")]
    TooLarge { width: u32, height: u32 },
    /// Not a picture.
    #[error("the file is not a picture; choose a photograph")]
    NotAPicture,
    /// A picture that breaks off or cannot be read.
    #[error("the picture is damaged: {detail}; take it again")]
    Damaged { detail: String },
    /// The shelf failed.
    #[error(transparent)]
    Shelf(#[from] ShelfError),
}

/// Reads what lies under `name` in `incoming`, keeps the original and a preview on the shelf, and tells what it is.
/// The incoming file stays until the photograph is in the log.
///
/// # Errors
/// Where the file is no photograph that can be kept, or the shelf fails.
pub fn prepare(shelf: &dyn Shelf, name: &str, place: Option<&PlaceFix>, now: &Now) -> Result<Prepared, IntakeError> {
    let bytes_long = shelf.incoming_bytes(name)?;
    if bytes_long > PHOTO_BYTES_MAX {
        return Err(IntakeError::TooLong { bytes: bytes_long });
    }
    let bytes = shelf.read_incoming(name)?;
    let (mut prepared, preview) = look(&bytes, place, now)?;
    shelf.keep_original(&prepared.digest, &bytes)?;
    match preview {
        Some(preview) => shelf.keep_preview(&prepared.digest, &preview)?,
        None => prepared.flags.push(PhotoFlag::NoPreview),
    }
    Ok(prepared)
}

/// Everything that the bytes themselves tell, with a preview as JPEG where the picture can be decoded here.
///
/// # Errors
/// Where the bytes are no whole picture of a kind and size that is taken.
pub fn look(bytes: &[u8], place: Option<&PlaceFix>, now: &Now) -> Result<(Prepared, Option<Vec<u8>>), IntakeError> {
    if bytes.is_empty() {
        return Err(IntakeError::Empty);
    }
    let (media, picture) = match image::guess_format(bytes) {
        Ok(format @ (ImageFormat::Jpeg | ImageFormat::Png | ImageFormat::WebP)) => {
            (format.to_mime_type(), Some(decode(bytes, format)?))
        }
        _ if is_heic(bytes) => ("image/heic", None),
        _ => return Err(IntakeError::NotAPicture),
    };
    let told = exif::read(bytes);
    let (width, height) = picture.as_ref().map_or((0, 0), |picture| (picture.width(), picture.height()));
    let prepared = Prepared {
        digest: sha256(bytes),
        bytes: bytes.len() as u64,
        media: media.to_owned(),
        facts: facts(&told, width, height, place),
        flags: flags(&told, place, now),
    };
    let preview = picture.map(|picture| preview(picture, &told)).transpose()?;
    Ok((prepared, preview))
}

fn decode(bytes: &[u8], format: ImageFormat) -> Result<DynamicImage, IntakeError> {
    let damaged = |error: image::ImageError| IntakeError::Damaged { detail: error.to_string() };
    let (width, height) = ImageReader::with_format(Cursor::new(bytes), format).into_dimensions().map_err(damaged)?;
    if u64::from(width) * u64::from(height) > PHOTO_PIXELS_MAX {
        return Err(IntakeError::TooLarge { width, height });
    }
    if format == ImageFormat::Jpeg && !ends_like_a_jpeg(bytes) {
        // The decoder fills what is missing with grey: evidence must not.
        return Err(IntakeError::Damaged { detail: "it breaks off before its end".into() });
    }
    let mut reader = ImageReader::with_format(Cursor::new(bytes), format);
    let mut limits = Limits::default();
    limits.max_alloc = Some(PHOTO_PIXELS_MAX * 8);
    reader.limits(limits);
    reader.decode().map_err(damaged)
}

/// The end-of-image marker lies in the last bytes; phones append little after it, and some a second picture.
fn ends_like_a_jpeg(bytes: &[u8]) -> bool {
    bytes.windows(2).rev().take(1 << 16).any(|pair| pair == [0xff, 0xd9])
}

fn is_heic(bytes: &[u8]) -> bool {
    bytes.get(4..12).is_some_and(|box_| {
        matches!(box_, b"ftypheic" | b"ftypheix" | b"ftypmif1" | b"ftypmsf1" | b"ftyphevc" | b"ftypheim")
    })
}

fn facts(told: &Told, width: u32, height: u32, place: Option<&PlaceFix>) -> PhotoFacts {
    PhotoFacts {
        width,
        height,
        orientation: told.orientation,
        taken: told.taken.clone(),
        offset: told.offset.clone(),
        exif_place: told.place.map(|(latitude, longitude)| format!("{latitude:.5} {longitude:.5}")).unwrap_or_default(),
        phone_place: place
            .map(|place| format!("{:.5} {:.5} {:.0}", place.latitude_deg, place.longitude_deg, place.accuracy_m))
            .unwrap_or_default(),
    }
}

fn flags(told: &Told, place: Option<&PlaceFix>, now: &Now) -> Vec<PhotoFlag> {
    let mut flags = Vec::new();
    match told.utc_ms(now.offset_min) {
        None => flags.push(PhotoFlag::NoTime),
        Some(taken_ms) if (taken_ms - now.utc_ms).abs() > TIME_DIFFERS_MS => flags.push(PhotoFlag::TimeDiffers),
        Some(_) => {}
    }
    // A picture without a place is not flagged: galleries take it out.
    if let (Some((latitude, longitude)), Some(phone)) = (told.place, place) {
        let camera = Place { latitude, longitude };
        let here = Place { latitude: phone.latitude_deg, longitude: phone.longitude_deg };
        let apart_m = distance(camera, here).map(|length| length.get::<meter>());
        if apart_m.is_ok_and(|apart_m| apart_m > phone.accuracy_m + CAMERA_PLACE_M) {
            flags.push(PhotoFlag::PlaceDiffers);
        }
    }
    flags
}

fn preview(picture: DynamicImage, told: &Told) -> Result<Vec<u8>, IntakeError> {
    let mut small = if picture.width().max(picture.height()) > PREVIEW_SIDE {
        picture.thumbnail(PREVIEW_SIDE, PREVIEW_SIDE)
    } else {
        picture
    };
    let orientation = u8::try_from(told.orientation).ok().and_then(Orientation::from_exif);
    if let Some(orientation) = orientation {
        small.apply_orientation(orientation);
    }
    let mut bytes = Vec::new();
    JpegEncoder::new_with_quality(&mut bytes, 82)
        .encode_image(&small.to_rgb8())
        .map_err(|error| IntakeError::Damaged { detail: error.to_string() })?;
    Ok(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn now() -> Now {
        Now { utc_ms: 1_772_352_000_000, offset_min: 120, mono_ms: 0, mono_epoch: "a".into() }
    }

    #[test]
    fn a_camera_that_was_elsewhere_is_flagged_and_one_nearby_is_not() {
        let told = |latitude| Told { place: Some((latitude, 2.0)), ..Told::default() };
        let phone = PlaceFix { latitude_deg: 1.0, longitude_deg: 2.0, accuracy_m: 10.0, age_ms: 0 };
        // A hundredth of a degree of latitude is about 1.1 km (WGS 84).
        let flags_at = |latitude| flags(&told(latitude), Some(&phone), &now());
        assert_eq!(flags_at(1.01), [PhotoFlag::NoTime, PhotoFlag::PlaceDiffers]);
        assert_eq!(flags_at(1.0005), [PhotoFlag::NoTime]);
    }

    fn jpeg(width: u32, height: u32) -> Vec<u8> {
        let picture = image::RgbImage::from_fn(width, height, |x, y| {
            image::Rgb([(x * 7 % 251) as u8, (y * 13 % 241) as u8, ((x ^ y) % 255) as u8])
        });
        let mut bytes = Vec::new();
        JpegEncoder::new_with_quality(&mut bytes, 85).encode_image(&picture).unwrap();
        bytes
    }

    #[test]
    fn a_picture_is_named_by_the_digest_of_its_very_bytes() {
        let bytes = jpeg(64, 48);
        let (prepared, preview) = look(&bytes, None, &now()).unwrap();
        assert_eq!(prepared.digest, sha256(&bytes));
        assert_eq!((prepared.facts.width, prepared.facts.height), (64, 48));
        assert_eq!(prepared.flags, [PhotoFlag::NoTime]);
        assert!(preview.is_some_and(|preview| preview.starts_with(&[0xff, 0xd8])));
    }

    #[test]
    fn an_empty_file_is_refused_by_name() {
        assert!(matches!(look(&[], None, &now()), Err(IntakeError::Empty)));
    }

    #[test]
    fn a_renamed_pdf_is_no_picture() {
        assert!(matches!(look(b"%PDF-1.7\n%\xe2\xe3", None, &now()), Err(IntakeError::NotAPicture)));
    }

    #[test]
    fn a_picture_that_breaks_off_is_damaged() {
        let bytes = jpeg(640, 480);
        let cut = &bytes[..bytes.len() / 2];
        assert!(matches!(look(cut, None, &now()), Err(IntakeError::Damaged { .. })));
    }

    #[test]
    fn too_many_pixels_are_refused_before_decoding() {
        // A PNG header that claims 20000 × 20000 pixels, and nothing behind it.
        let mut png = Vec::new();
        image::codecs::png::PngEncoder::new(&mut png);
        image::DynamicImage::new_luma8(1, 1).write_to(&mut Cursor::new(&mut png), ImageFormat::Png).unwrap();
        let width = 20_000_u32.to_be_bytes();
        png[16..20].copy_from_slice(&width);
        png[20..24].copy_from_slice(&width);
        let crc = crc32(&png[12..29]);
        png[29..33].copy_from_slice(&crc.to_be_bytes());
        assert!(matches!(look(&png, None, &now()), Err(IntakeError::TooLarge { width: 20_000, .. })));
    }

    fn crc32(bytes: &[u8]) -> u32 {
        !bytes.iter().fold(!0_u32, |crc, byte| {
            (0..8).fold(crc ^ u32::from(*byte), |crc, _| (crc >> 1) ^ (0xedb8_8320 & (crc & 1).wrapping_neg()))
        })
    }
}
