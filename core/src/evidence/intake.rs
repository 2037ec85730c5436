//! Intake: from a file that a camera left to an original on the shelf with its preview and what it tells.

use std::panic::catch_unwind;

use coilside_picture::{DecodeError, Decoded, Kind, Look, at_once, decode, kind, look_at, preview};

use super::exif::{self, Told};
use super::judge::judge;
use super::plate;
use crate::effect::PlaceFix;
use crate::id::Digest;
use crate::now::Now;
use crate::store::shelf::{Shelf, ShelfError};
use crate::visit::event::{PhotoCode, PhotoFacts, PhotoFlag, sha256};

/// The largest file taken, bytes.
pub const PHOTO_BYTES_MAX: u64 = 60_000_000;
/// The longer side of a preview, pixels.
const PREVIEW_SIDE: u32 = 1600;

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
    /// Not a picture.
    #[error("the file is not a picture; choose a photograph")]
    NotAPicture,
    /// Not one that can be decoded.
    #[error(transparent)]
    Picture(#[from] DecodeError),
    /// The shelf failed.
    #[error(transparent)]
    Shelf(#[from] ShelfError),
}

/// Reads what lies under `name` in `incoming`, keeps the original and a preview on the shelf, and tells what it is; of one that
/// shows a plate also the codes on it. The incoming file stays until the photograph is in the log.
///
/// # Errors
/// Where the file is no photograph that can be kept, or the shelf fails.
pub fn prepare(
    shelf: &dyn Shelf,
    name: &str,
    of_plate: bool,
    place: Option<&PlaceFix>,
    now: &Now,
) -> Result<Prepared, IntakeError> {
    let bytes_long = shelf.incoming_bytes(name)?;
    if bytes_long > PHOTO_BYTES_MAX {
        return Err(IntakeError::TooLong { bytes: bytes_long });
    }
    let mut bytes = Vec::with_capacity(bytes_long as usize);
    shelf.read_incoming(name, &mut |part| bytes.extend_from_slice(part))?;
    // The disk takes as long to have it as the picture takes to be looked at.
    let ((digest, written), examined) = at_once(
        || {
            let digest = sha256(&bytes);
            let written = shelf.write_original(&digest, &bytes);
            (digest, written)
        },
        || examined(&bytes, place, now),
    );
    let mut examined = examined?;
    if of_plate {
        examined.facts.codes = codes_in(&bytes);
    }
    written?.keep()?;
    if let Some(preview) = &examined.preview {
        shelf.keep_preview(&digest, preview)?;
    }
    Ok(examined.prepared(digest).0)
}

/// Everything that the bytes themselves tell, with a preview as JPEG where the picture can be decoded here.
///
/// # Errors
/// Where the bytes are no whole picture of a kind and size that is taken.
pub fn look(bytes: &[u8], place: Option<&PlaceFix>, now: &Now) -> Result<(Prepared, Option<Vec<u8>>), IntakeError> {
    Ok(examined(bytes, place, now)?.prepared(sha256(bytes)))
}

/// The codes in a photograph's bytes, until a serial number is known; none where they cannot be decoded here.
#[must_use]
pub fn codes_in(bytes: &[u8]) -> Vec<PhotoCode> {
    coilside_picture::codes_in(bytes, |found| plate::told(found).serial.is_some())
}

/// What came of a file, but for its digest.
struct Examined {
    bytes: u64,
    media: String,
    facts: PhotoFacts,
    flags: Vec<PhotoFlag>,
    preview: Option<Vec<u8>>,
}

impl Examined {
    fn prepared(self, digest: Digest) -> (Prepared, Option<Vec<u8>>) {
        let Examined { bytes, media, facts, flags, preview } = self;
        (Prepared { digest, bytes, media, facts, flags }, preview)
    }
}

fn examined(bytes: &[u8], place: Option<&PlaceFix>, now: &Now) -> Result<Examined, IntakeError> {
    if bytes.is_empty() {
        return Err(IntakeError::Empty);
    }
    let kind = kind(bytes).ok_or(IntakeError::NotAPicture)?;
    // What trips over hostile bytes is a damaged picture, not the end of the program: it would not even open again, for the file
    // still waits in `incoming`.
    let told = catch_unwind(|| exif::read(bytes)).unwrap_or_default();
    let Seen { size, look, preview } = catch_unwind(|| see(bytes, &kind, told.orientation))
        .unwrap_or_else(|_| Err(DecodeError::Damaged { detail: "it made the decoder fail".into() }))?;
    let mut flags = judge(&told, look.as_ref(), place, now);
    if preview.is_none() {
        flags.push(PhotoFlag::NoPreview);
    }
    let media = kind.media().to_owned();
    let facts = facts(&told, size, place, look);
    Ok(Examined { bytes: bytes.len() as u64, media, facts, flags, preview })
}

/// What came of the picture itself.
struct Seen {
    size: (u32, u32),
    look: Option<Look>,
    preview: Option<Vec<u8>>,
}

fn see(bytes: &[u8], kind: &Kind, orientation: u32) -> Result<Seen, DecodeError> {
    let Decoded { size, picture } = decode(bytes, kind, PREVIEW_SIDE)?;
    let Some(fitted) = picture.and_then(|picture| picture.fitted(PREVIEW_SIDE, orientation)) else {
        return Ok(Seen { size, look: None, preview: None });
    };
    let (look, small) = at_once(|| look_at(&fitted.y), || preview(&fitted));
    let preview = small.map_err(|detail| DecodeError::Damaged { detail })?;
    Ok(Seen { size, look, preview: Some(preview) })
}

fn facts(told: &Told, (width, height): (u32, u32), place: Option<&PlaceFix>, look: Option<Look>) -> PhotoFacts {
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
        look,
        at_site: None,
        codes: Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use std::io::Cursor;

    use image::ImageFormat;
    use image::codecs::jpeg::JpegEncoder;

    use super::*;

    fn now() -> Now {
        Now { utc_ms: 1_772_352_000_000, offset_min: 120, mono_ms: 0, mono_epoch: "a".into() }
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
        assert!(matches!(look(cut, None, &now()), Err(IntakeError::Picture(DecodeError::Damaged { .. }))));
    }

    #[test]
    fn too_many_pixels_are_refused_before_decoding() {
        // A PNG header that claims 20000 × 20000 pixels, and nothing behind it.
        let mut png = Vec::new();
        image::DynamicImage::new_luma8(1, 1).write_to(&mut Cursor::new(&mut png), ImageFormat::Png).unwrap();
        let width = 20_000_u32.to_be_bytes();
        png[16..20].copy_from_slice(&width);
        png[20..24].copy_from_slice(&width);
        assert!(matches!(
            look(&png, None, &now()),
            Err(IntakeError::Picture(DecodeError::TooLarge { width: 20_000, .. }))
        ));
    }
}
