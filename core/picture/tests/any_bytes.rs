//! Pictures of any size have a preview, and any bytes have an answer, whichever way JPEG goes: with libjpeg-turbo and without.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "tests")]

use std::path::PathBuf;

use coilside_picture::{DecodeError, Decoded, codes_in, decode, fit, kind, look_at, preview};
use image::codecs::jpeg::JpegEncoder;
use proptest::prelude::*;

const SIDE: u32 = 1600;

fn jpeg(width: u32, height: u32) -> Vec<u8> {
    let picture = image::RgbImage::from_fn(width, height, |x, y| {
        image::Rgb([(x * 7 % 251) as u8, (y * 13 % 241) as u8, ((x ^ y) % 255) as u8])
    });
    let mut bytes = Vec::new();
    JpegEncoder::new_with_quality(&mut bytes, 85).encode_image(&picture).unwrap();
    bytes
}

/// What a photograph goes through. None where it is kept without a preview.
fn through(bytes: &[u8], orientation: u32) -> Result<Option<Vec<u8>>, DecodeError> {
    let Some(kind) = kind(bytes) else { return Ok(None) };
    let Decoded { picture, .. } = decode(bytes, &kind, SIDE)?;
    let Some(fitted) = picture.and_then(|picture| picture.fitted(SIDE, orientation)) else { return Ok(None) };
    let _ = look_at(&fitted.y);
    Ok(Some(preview(&fitted).unwrap()))
}

#[test]
fn pictures_of_odd_sizes_have_previews_that_can_be_shown() {
    for (width, height) in [(1, 1), (3, 2), (201, 301), (1601, 1201), (1999, 1)] {
        let preview = through(&jpeg(width, height), 1).unwrap().unwrap();
        let shown = image::load_from_memory(&preview).unwrap();
        assert_eq!((shown.width(), shown.height()), fit(width, height, SIDE));
    }
}

#[test]
fn a_picture_that_breaks_off_is_damaged() {
    let bytes = jpeg(640, 480);
    assert!(matches!(through(&bytes[..bytes.len() / 2], 1), Err(DecodeError::Damaged { .. })));
}

/// The pure decoder fills the gap with grey and says nothing.
#[cfg(feature = "turbo")]
#[test]
fn what_is_missing_before_the_end_marker_is_not_made_up() {
    let bytes = jpeg(640, 480);
    let mended = [&bytes[..bytes.len() / 2], &[0xff, 0xd9]].concat();
    assert!(matches!(through(&mended, 1), Err(DecodeError::Damaged { .. })));
}

/// The kept corpus of `tests/fuzz`, by name.
fn corpus() -> Vec<Vec<u8>> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../tests/fuzz/corpus/intake");
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.sort();
    assert!(files.len() >= 20, "the corpus is there");
    files.iter().map(|file| std::fs::read(file).unwrap()).collect()
}

#[test]
fn every_file_of_the_kept_corpus_is_answered_whichever_way_it_was_held() {
    let mut shown = 0;
    for bytes in corpus() {
        for orientation in 0..=9 {
            let Ok(Some(preview)) = through(&bytes, orientation) else { continue };
            assert!(image::load_from_memory(&preview).is_ok(), "a preview can be shown");
            shown += 1;
        }
    }
    assert!(shown >= 50, "only {shown} previews came of it");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, ..ProptestConfig::default() })]

    /// Decoders of others may fail on hostile bytes; whoever calls catches that. Nothing here adds a failure of its own.
    #[test]
    fn broken_files_are_answered(
        which in any::<prop::sample::Index>(),
        breaks in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 0..8),
        cut in any::<prop::sample::Index>(),
    ) {
        let corpus = corpus();
        let mut bytes = which.get(&corpus).clone();
        for (at, byte) in breaks {
            let at = at.index(bytes.len());
            bytes[at] = byte;
        }
        bytes.truncate(cut.index(bytes.len() * 2));
        let answered = std::panic::catch_unwind(|| through(&bytes, 1));
        if let Ok(Ok(Some(preview))) = answered {
            prop_assert!(image::load_from_memory(&preview).is_ok());
        }
        let _ = codes_in(&bytes, |_| false);
    }
}
