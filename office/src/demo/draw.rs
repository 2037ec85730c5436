//! Photographs for the demo, drawn by the program and marked as such. No picture of anything real.

use font8x8::UnicodeFonts as _;
use image::codecs::jpeg::JpegEncoder;
use image::{Rgb, RgbImage};
use qrcodegen::{QrCode, QrCodeEcc};

const WIDTH: u32 = 1200;
const HEIGHT: u32 = 900;

/// Where the code stands on a plate, and how large one of its modules is, pixels.
const CODE_LEFT: u32 = 794;
const CODE_TOP: u32 = 430;
const CODE_MODULE: u32 = 7;

const SKY: Rgb<u8> = Rgb([196, 206, 212]);
const CASE: Rgb<u8> = Rgb([222, 220, 212]);
const CASE_DARK: Rgb<u8> = Rgb([150, 150, 146]);
const INK: Rgb<u8> = Rgb([38, 42, 46]);
const PAPER: Rgb<u8> = Rgb([246, 244, 236]);
const DIRT: Rgb<u8> = Rgb([120, 104, 78]);
const COPPER: Rgb<u8> = Rgb([176, 110, 72]);
const LEAF: Rgb<u8> = Rgb([96, 120, 62]);

/// A drawn photograph for a slot, as JPEG. `lines` are written onto the plate or display that it shows; `year` makes one
/// year's pictures differ from another's.
#[must_use]
pub(super) fn photograph(slot: &str, lines: &[&str], year: u32) -> Vec<u8> {
    let mut picture = RgbImage::from_pixel(WIDTH, HEIGHT, SKY);
    let mut random = Random(slot.bytes().fold(year, |sum, byte| sum.wrapping_mul(33).wrapping_add(u32::from(byte))));
    let clean = slot.ends_with("after") || slot.ends_with("left");
    match slot {
        "coil-before" | "coil-after" | "coating" | "salt" => coil(&mut picture, clean, &mut random),
        "nameplate" | "serial-plate" => {
            plate(&mut picture, lines);
            code(&mut picture, lines);
        }
        "controller-plate" | "tag" => plate(&mut picture, lines),
        "settings-before" | "settings-after" | "display-left" => display(&mut picture, lines),
        "wiring-before" | "wiring-after" => wiring(&mut picture, clean, &mut random),
        "loop-connected" | "rinse-proof" | "pipe-clear" => hoses(&mut picture, slot == "rinse-proof"),
        _ => unit(&mut picture, clean, &mut random),
    }
    grain(&mut picture, &mut random);
    fill(&mut picture, 0, HEIGHT - 84, WIDTH, 84, INK);
    write(&mut picture, 28, HEIGHT - 64, 5, PAPER, "DEMO");
    write(&mut picture, 230, HEIGHT - 54, 3, PAPER, &format!("drawn by the program: {slot}"));
    let mut bytes = Vec::new();
    // Encoding into memory does not fail; an empty file would be refused at intake and say so.
    let _ = JpegEncoder::new_with_quality(&mut bytes, 78).encode_image(&picture);
    bytes
}

/// A small generator for texture: the same picture every time.
struct Random(u32);

impl Random {
    fn below(&mut self, limit: u32) -> u32 {
        self.0 = self.0.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        (self.0 >> 8) % limit.max(1)
    }
}

fn fill(picture: &mut RgbImage, left: u32, top: u32, width: u32, height: u32, colour: Rgb<u8>) {
    for y in top..(top + height).min(HEIGHT) {
        for x in left..(left + width).min(WIDTH) {
            picture.put_pixel(x, y, colour);
        }
    }
}

fn disc(picture: &mut RgbImage, x0: i64, y0: i64, radius: i64, colour: Rgb<u8>) {
    for y in (y0 - radius).max(0)..(y0 + radius).min(i64::from(HEIGHT)) {
        for x in (x0 - radius).max(0)..(x0 + radius).min(i64::from(WIDTH)) {
            if (x - x0).pow(2) + (y - y0).pow(2) < radius.pow(2) {
                picture.put_pixel(x as u32, y as u32, colour);
            }
        }
    }
}

fn write(picture: &mut RgbImage, left: u32, top: u32, scale: u32, colour: Rgb<u8>, text: &str) {
    let glyphs =
        text.chars().filter_map(|letter| font8x8::BASIC_FONTS.get(letter).or_else(|| font8x8::LATIN_FONTS.get(letter)));
    for (at, glyph) in (0..).zip(glyphs) {
        for (row, bits) in (0..).zip(glyph) {
            for column in (0..8).filter(|column| bits & (1 << column) != 0) {
                let x = left + (at * 8 + column) * scale;
                fill(picture, x, top + row * scale, scale, scale, colour);
            }
        }
    }
}

fn grain(picture: &mut RgbImage, random: &mut Random) {
    for pixel in picture.pixels_mut() {
        let noise = random.below(9) as i16 - 4;
        for channel in &mut pixel.0 {
            *channel = (i16::from(*channel) + noise).clamp(0, 255) as u8;
        }
    }
}

fn coil(picture: &mut RgbImage, clean: bool, random: &mut Random) {
    fill(picture, 60, 60, WIDTH - 120, HEIGHT - 210, CASE_DARK);
    for x in (80..WIDTH - 80).step_by(9) {
        let shade = 168 + random.below(26) as u8;
        fill(picture, x, 80, 6, HEIGHT - 250, Rgb([shade, shade, shade + 6]));
    }
    for y in (120..HEIGHT - 200).step_by(90) {
        fill(picture, 80, y, WIDTH - 160, 10, COPPER);
    }
    if clean {
        return;
    }
    for _ in 0..900 {
        let (x, y) = (i64::from(80 + random.below(WIDTH - 170)), i64::from(80 + random.below(HEIGHT - 260)));
        disc(picture, x, y, i64::from(3 + random.below(10)), DIRT);
    }
    for _ in 0..26 {
        let (x, y) = (i64::from(90 + random.below(WIDTH - 190)), i64::from(420 + random.below(HEIGHT - 640)));
        disc(picture, x, y, i64::from(14 + random.below(16)), LEAF);
    }
}

fn plate(picture: &mut RgbImage, lines: &[&str]) {
    fill(picture, 0, 0, WIDTH, HEIGHT, CASE);
    fill(picture, 140, 140, WIDTH - 280, HEIGHT - 340, CASE_DARK);
    fill(picture, 152, 152, WIDTH - 304, HEIGHT - 364, PAPER);
    for (at, line) in (0..).zip(lines) {
        write(picture, 200, 210 + at * 90, 6, INK, line);
    }
}

/// A code (ISO/IEC 18004) beside the writing, four modules of paper around it. It says model and serial number, the second and
/// third line.
fn code(picture: &mut RgbImage, lines: &[&str]) {
    let [_, model, serial, ..] = lines else { return };
    let text = format!("MODEL: {model}\nS/N: {serial}");
    let Ok(code) = QrCode::encode_text(&text, QrCodeEcc::Medium) else { return };
    let (left, top) = (CODE_LEFT + 4 * CODE_MODULE, CODE_TOP + 4 * CODE_MODULE);
    let size = code.size();
    for (row, y) in (0..size).zip(0..) {
        for (_, x) in (0..size).zip(0..).filter(|(column, _)| code.get_module(*column, row)) {
            fill(picture, left + x * CODE_MODULE, top + y * CODE_MODULE, CODE_MODULE, CODE_MODULE, INK);
        }
    }
}

fn display(picture: &mut RgbImage, lines: &[&str]) {
    fill(picture, 0, 0, WIDTH, HEIGHT, CASE);
    fill(picture, 200, 160, WIDTH - 400, HEIGHT - 380, INK);
    for (at, line) in (0..).zip(lines) {
        write(picture, 260, 230 + at * 110, 7, Rgb([150, 220, 170]), line);
    }
    for x in [300, 520, 740] {
        disc(picture, x, 770, 34, CASE_DARK);
    }
}

fn wiring(picture: &mut RgbImage, clean: bool, random: &mut Random) {
    fill(picture, 60, 60, WIDTH - 120, HEIGHT - 210, CASE_DARK);
    for (at, colour) in (0..).zip([COPPER, INK, LEAF, Rgb([60, 90, 150]), Rgb([170, 60, 50]), PAPER]) {
        let y = 140 + at * 90;
        fill(picture, 120, y, 760 + random.below(120), 16, colour);
        fill(picture, 900, y - 14, 120, 44, PAPER);
        disc(picture, 960, i64::from(y) + 8, 14, CASE_DARK);
    }
    if !clean {
        for _ in 0..160 {
            let (x, y) = (i64::from(90 + random.below(900)), i64::from(100 + random.below(560)));
            disc(picture, x, y, i64::from(2 + random.below(5)), DIRT);
        }
    }
}

fn hoses(picture: &mut RgbImage, strip: bool) {
    fill(picture, 0, 600, WIDTH, 300, Rgb([140, 138, 128]));
    fill(picture, 640, 330, 360, 420, Rgb([70, 110, 160]));
    fill(picture, 660, 350, 320, 380, Rgb([190, 208, 216]));
    for (y, colour) in [(220, COPPER), (420, Rgb([90, 96, 100]))] {
        fill(picture, 80, y, 620, 26, colour);
        fill(picture, 690, y, 26, 260, colour);
    }
    if strip {
        for (at, colour) in (0..).zip([LEAF, Rgb([140, 160, 80]), Rgb([190, 180, 90]), COPPER]) {
            fill(picture, 160, 480 + at * 44, 120, 36, colour);
        }
    }
}

fn unit(picture: &mut RgbImage, clean: bool, random: &mut Random) {
    fill(picture, 0, 690, WIDTH, 210, Rgb([126, 128, 112]));
    fill(picture, 180, 140, 840, 560, CASE);
    disc(picture, 520, 420, 230, CASE_DARK);
    disc(picture, 520, 420, 208, INK);
    for radius in [180, 130, 80, 30] {
        disc(picture, 520, 420, radius, CASE_DARK);
        disc(picture, 520, 420, radius - 12, INK);
    }
    fill(picture, 820, 200, 150, 440, CASE_DARK);
    if !clean {
        for _ in 0..60 {
            let (x, y) = (i64::from(190 + random.below(820)), i64::from(520 + random.below(200)));
            disc(picture, x, y, i64::from(8 + random.below(14)), LEAF);
        }
    }
}
