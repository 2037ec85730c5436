//! Small pictures for pages: turned upright, and with nothing of the original's metadata.

use std::fs::File;
use std::io::{BufRead, BufReader, Cursor, Read as _, Seek};

use image::codecs::jpeg::JpegEncoder;
use image::{DynamicImage, ImageDecoder as _, ImageError, ImageFormat, ImageReader, Limits};

use crate::ids::Digest;
use crate::store::folder::{Folder, failed};
use crate::store::{Store, StoreError};

/// The longer side of a preview.
const SIDE_PX: u32 = 1280;
/// More pixels than any phone's picture; beyond this a file is more likely made to exhaust memory.
const PIXELS_MAX: u64 = 100_000_000;
const QUALITY: u8 = 82;

/// No preview can be shown.
#[derive(Debug, thiserror::Error)]
pub(crate) enum PreviewError {
    #[error("the photograph is not here yet")]
    NotHere,
    #[error("this office cannot show photographs of this kind; the original can be downloaded")]
    NotShown(#[source] ImageError),
    #[error("the photograph has more pixels than the office shows; the original can be downloaded")]
    TooLarge,
    #[error(transparent)]
    Store(#[from] StoreError),
}

/// The preview's JPEG bytes; made at the first call, then kept.
pub(crate) fn preview(store: &Store, digest: Digest) -> Result<Vec<u8>, PreviewError> {
    if let Ok(kept) = std::fs::read(store.folder.preview(digest)) {
        return Ok(kept);
    }
    let path = store.folder.original(digest);
    let file = File::open(&path).map_err(|_| PreviewError::NotHere)?;
    let jpeg = make(file).map_err(|error| match error {
        Trouble::Image(error) => PreviewError::NotShown(error),
        Trouble::TooLarge => PreviewError::TooLarge,
        Trouble::Read(error) => failed("read", &path, error).into(),
    })?;
    Folder::write_preview(&store.folder.preview(digest), &jpeg)?;
    // What was sent ahead has done its duty; one that stays behind is shown no more.
    let _ = std::fs::remove_file(store.folder.sent_ahead(digest));
    Ok(jpeg)
}

/// A small picture as pages show it: of the original, or the one that the device sent ahead of it. The second value tells
/// whether it is final.
pub(crate) fn shown(store: &Store, digest: Digest) -> Result<(Vec<u8>, bool), PreviewError> {
    match preview(store, digest) {
        Err(PreviewError::NotHere) => {
            let ahead = std::fs::read(store.folder.sent_ahead(digest));
            ahead.map(|jpeg| (jpeg, false)).map_err(|_| PreviewError::NotHere)
        }
        made => made.map(|jpeg| (jpeg, true)),
    }
}

/// Keeps the small picture that a device sent ahead of a photograph, redrawn, so that nothing but its pixels stays. Where the
/// original is here it is not wanted.
pub(crate) fn keep_sent_ahead(store: &Store, digest: Digest, jpeg: &[u8]) -> Result<(), PreviewError> {
    if store.folder.original(digest).exists() {
        return Ok(());
    }
    let drawn = draw(Cursor::new(jpeg), ImageFormat::Jpeg).map_err(|error| match error {
        Trouble::TooLarge => PreviewError::TooLarge,
        Trouble::Image(error) => PreviewError::NotShown(error),
        Trouble::Read(error) => PreviewError::NotShown(ImageError::IoError(error)),
    })?;
    Ok(Folder::write_preview(&store.folder.sent_ahead(digest), &drawn)?)
}

enum Trouble {
    Image(ImageError),
    TooLarge,
    Read(std::io::Error),
}

impl From<ImageError> for Trouble {
    fn from(error: ImageError) -> Self {
        Trouble::Image(error)
    }
}

/// Only the pixels go into the new file, so no place, time or device can leak with it.
fn make(mut file: File) -> Result<Vec<u8>, Trouble> {
    let mut start = [0; 64];
    let read = file.read(&mut start).map_err(Trouble::Read)?;
    file.rewind().map_err(Trouble::Read)?;
    let format = image::guess_format(start.get(..read).unwrap_or_default())?;
    draw(BufReader::new(file), format)
}

fn draw(file: impl BufRead + Seek, format: ImageFormat) -> Result<Vec<u8>, Trouble> {
    let mut reader = ImageReader::with_format(file, format);
    let mut limits = Limits::default();
    limits.max_alloc = Some(PIXELS_MAX * 8);
    reader.limits(limits);
    let mut decoder = reader.into_decoder()?;
    let (width, height) = decoder.dimensions();
    if u64::from(width) * u64::from(height) > PIXELS_MAX {
        return Err(Trouble::TooLarge);
    }
    let orientation = decoder.orientation()?;
    let mut picture = DynamicImage::from_decoder(decoder)?;
    if width.max(height) > SIDE_PX {
        picture = picture.thumbnail(SIDE_PX, SIDE_PX);
    }
    picture.apply_orientation(orientation);
    let mut jpeg = Cursor::new(Vec::new());
    JpegEncoder::new_with_quality(&mut jpeg, QUALITY).encode_image(&picture.to_rgb8())?;
    Ok(jpeg.into_inner())
}
