//! QR and Data Matrix by the parts of `rxing` that find and decode them. Its readers are left alone: they put the clock's time onto
//! every result, and work without bounds on a picture full of what looks like corners.

use rxing::Binarizer as _;
use rxing::Luma8Source;
use rxing::common::{AIFlag, BitMatrix, DetectorRXingResult as _, HybridBinarizer};
use rxing::datamatrix::decoder::Decoder;
use rxing::datamatrix::detector::zxing_cpp_detector::detect;
use rxing::qrcode::cpp_port::decoder::Decode;
use rxing::qrcode::cpp_port::detector::{FindFinderPatterns, GenerateFinderPatternSets, SampleQR};

use super::Found;
use super::Symbology;
use crate::picture::Plane;

/// Smaller pictures hold no code.
const SIDE_LEAST: u32 = 16;
/// The largest of the corners found are looked at: a plate with eight codes has 24.
const CORNERS_MOST: usize = 90;
/// So many threes of corners are tried, the most likely first.
const THREES_MOST: usize = 200;
/// So many Data Matrix symbols are decoded.
const SYMBOLS_MOST: usize = 60;
/// A Data Matrix of fewer characters is too easily read where there is none: its smallest symbols check little.
const TEXT_LEAST: usize = 3;
/// What `rxing` calls the content of a Data Matrix that begins with FNC1.
const GS1: &str = "GS1";

/// The codes of a picture, dark on light or light on dark.
pub(super) fn read(picture: &Plane) -> Vec<Found> {
    if picture.width.min(picture.height) < SIDE_LEAST {
        return Vec::new();
    }
    let Ok(source) = Luma8Source::new_with_slice(&picture.pixels, picture.width, picture.height) else {
        return Vec::new();
    };
    let binarizer = HybridBinarizer::new(source);
    let Ok(black) = binarizer.get_black_matrix() else { return Vec::new() };
    let mut found = read_dark(black);
    let mut inverted = black.clone();
    inverted.flip_self();
    found.extend(read_dark(&inverted));
    found
}

fn read_dark(black: &BitMatrix) -> Vec<Found> {
    let mut found = qr(black);
    found.extend(data_matrix(black));
    found
}

fn qr(black: &BitMatrix) -> Vec<Found> {
    let mut corners = FindFinderPatterns(black, true, 0);
    corners.sort_by_key(|corner| std::cmp::Reverse(corner.size));
    corners.truncate(CORNERS_MOST);
    let mut used = Vec::new();
    let mut found = Vec::new();
    for three in GenerateFinderPatternSets(&mut corners).into_iter().take(THREES_MOST) {
        let corners = [three.bl, three.tl, three.tr];
        if corners.iter().any(|corner| used.contains(corner)) {
            continue;
        }
        let decoded = SampleQR(black, &three).and_then(|symbol| Decode(symbol.getBits()));
        let Some(decoded) = decoded.ok().filter(|decoded| decoded.isValid()) else { continue };
        used.extend(corners);
        let gs1 = decoded.content().symbology.aiFlag == AIFlag::GS1;
        found.push((if gs1 { Symbology::Gs1Qr } else { Symbology::Qr }, decoded.content().to_string()));
    }
    found
}

fn data_matrix(black: &BitMatrix) -> Vec<Found> {
    let decoder = Decoder::new();
    let symbols = detect(black, true, true).unwrap_or_default();
    let decoded = symbols.iter().take(SYMBOLS_MOST).filter_map(|symbol| decoder.decode(symbol.getBits()).ok());
    decoded
        .filter(|decoded| decoded.getText().chars().count() >= TEXT_LEAST)
        .map(|decoded| {
            let gs1 = decoded.getContentType() == GS1;
            (if gs1 { Symbology::Gs1DataMatrix } else { Symbology::DataMatrix }, decoded.getText().to_owned())
        })
        .collect()
}
