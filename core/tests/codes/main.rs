//! Codes in pictures: fixtures by writers that are not ours, and pictures that are nothing but trouble.
//!
//! The fixtures are drawn by `tests/python/code_plates.py` (segno, pyStrich, python-barcode), turned by 6 degrees and smeared by 0.7
//! pixels. Hundreds more, and large ones, are in `tests/python/test_codes.py`.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "tests")]

use std::io::Cursor;

use coilside_core::evidence::{CODE_TEXT_MAX, CODES_MOST, codes_in};
use coilside_core::visit::event::{PhotoCode, Symbology};
use image::{GrayImage, ImageFormat, Luma};

fn png(picture: &GrayImage) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    picture.write_to(&mut bytes, ImageFormat::Png).unwrap();
    bytes.into_inner()
}

fn check(fixture: &[u8], symbology: Symbology, text: &str) {
    assert_eq!(codes_in(fixture), [PhotoCode { symbology, text: text.into(), cut: false }]);
}

#[test]
fn linear_codes_by_other_writers_are_read() {
    check(include_bytes!("code-128.png"), Symbology::Code128, "TW9-20417");
    check(include_bytes!("gs1-128.png"), Symbology::Gs1128, "010950600013435221TW9-20417");
    check(include_bytes!("code-39.png"), Symbology::Code39, "TW9-20417");
    check(include_bytes!("ean-13.png"), Symbology::Ean13, "4006381333931");
}

#[cfg(feature = "codes")]
#[test]
fn square_codes_by_other_writers_are_read() {
    check(include_bytes!("qr.png"), Symbology::Qr, "MODEL: Add-On 9\nS/N: TW9-20417");
    check(include_bytes!("data-matrix.png"), Symbology::DataMatrix, "S/N:TW9-20417");
}

#[test]
fn a_code_reads_the_same_whichever_way_the_camera_was_held() {
    let upright = image::load_from_memory(include_bytes!("code-128.png")).unwrap().into_luma8();
    for turned in [
        image::imageops::rotate90(&upright),
        image::imageops::rotate180(&upright),
        image::imageops::rotate270(&upright),
    ] {
        check(&png(&turned), Symbology::Code128, "TW9-20417");
    }
}

#[cfg(feature = "codes")]
#[test]
fn a_long_text_is_kept_up_to_its_bound_and_marked() {
    let code = qrcodegen::QrCode::encode_text(&"TW9 ".repeat(300), qrcodegen::QrCodeEcc::Low).unwrap();
    let side = (code.size() + 8) as u32 * 4;
    let dark = |x: u32, y: u32| code.get_module((x / 4) as i32 - 4, (y / 4) as i32 - 4);
    let picture = GrayImage::from_fn(side, side, |x, y| Luma([if dark(x, y) { 0 } else { 255 }]));
    let codes = codes_in(&png(&picture));
    assert_eq!(codes.len(), 1);
    assert_eq!((codes[0].text.chars().count(), codes[0].cut), (CODE_TEXT_MAX, true));
}

#[test]
fn pictures_that_are_nothing_but_trouble_have_no_codes() {
    let corner = |x: u32, y: u32| {
        let ring = (x % 9).abs_diff(4).max((y % 9).abs_diff(4));
        ring == 3 || ring <= 1
    };
    let mut seed = 1_u32;
    let mut noise = || {
        seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        (seed >> 24) as u8
    };
    let black = |is: bool| if is { 0_u8 } else { 255 };
    for (name, picture) in [
        ("one pixel", GrayImage::from_pixel(1, 1, Luma([0]))),
        ("one row", GrayImage::from_fn(2000, 1, |x, _| Luma([black(x % 2 == 0)]))),
        ("one column", GrayImage::from_fn(1, 2000, |_, y| Luma([black(y % 3 == 0)]))),
        ("black", GrayImage::from_pixel(900, 700, Luma([0]))),
        ("noise", GrayImage::from_fn(900, 700, |_, _| Luma([noise()]))),
        ("stripes", GrayImage::from_fn(900, 700, |x, _| Luma([black(x % 4 < 2)]))),
        ("corners", GrayImage::from_fn(900, 700, |x, y| Luma([black(corner(x, y))]))),
    ] {
        assert_eq!(codes_in(&png(&picture)), [], "{name}");
    }
    const { assert!(CODES_MOST < 20, "what a photograph can put into the log is bounded") };
    assert_eq!(codes_in(b"no picture"), []);
}
