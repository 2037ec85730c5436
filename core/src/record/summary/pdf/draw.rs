//! Boxes drawn on a page, each piece marked with its leaf of the structure, decoration marked as such.

use std::collections::BTreeMap;

use krilla::color::rgb;
use krilla::geom::{Path, PathBuilder, Point, Rect, Size, Transform};
use krilla::image::Image;
use krilla::num::NormalizedF32;
use krilla::paint::{Fill, FillRule, LineCap, LineJoin, Stroke};
use krilla::surface::Surface;
use krilla::tagging::{ArtifactType, ContentTag, Identifier, SpanTag};
use krilla::text::{GlyphId, KrillaGlyph};
use qrcodegen::{QrCode, QrCodeEcc};

use super::parts::{Ink, Item, Laid, What};
use super::text::{Fonts, Weight};
use super::{PdfError, Sheet};
use crate::record::summary::jpeg::{Pictures, Source};

/// What was drawn for each leaf of the structure: more than one piece where it goes over pages.
#[derive(Default)]
pub(super) struct Marks(BTreeMap<usize, Vec<Identifier>>);

impl Marks {
    pub(super) fn of(&self, leaf: usize) -> impl Iterator<Item = &Identifier> {
        self.0.get(&leaf).into_iter().flatten()
    }
}

impl Ink {
    fn color(self) -> rgb::Color {
        let (red, green, blue) = match self {
            Ink::Black => (0x10, 0x1c, 0x20),
            Ink::Soft => (0x47, 0x56, 0x5b),
            Ink::Line => (0xa8, 0xb4, 0xb7),
            Ink::Lead => (0x0b, 0x5c, 0x6d),
            Ink::Good => (0x17, 0x64, 0x3a),
            Ink::Attention => (0x8a, 0x4b, 0x00),
            Ink::Danger => (0xa3, 0x16, 0x1f),
            Ink::Found => (0x7a, 0x5a, 0x00),
        };
        rgb::Color::new(red, green, blue)
    }

    fn fill(self) -> Fill {
        filled(self.color())
    }

    fn stroke(self, width: f32) -> Stroke {
        Stroke { paint: self.color().into(), width, line_cap: LineCap::Round, ..Stroke::default() }
    }
}

fn filled(color: rgb::Color) -> Fill {
    Fill { paint: color.into(), opacity: NormalizedF32::ONE, rule: FillRule::NonZero }
}

/// A page that is drawn on.
pub(super) struct Draw<'a, 'page> {
    pub(super) surface: &'a mut Surface<'page>,
    pub(super) fonts: &'a Fonts,
    pub(super) pictures: &'a Pictures,
    pub(super) marks: &'a mut Marks,
}

impl Draw<'_, '_> {
    /// Draws a box with its upper left corner at a place.
    pub(super) fn draw(&mut self, of: &Laid, x: f32, y: f32) -> Result<(), PdfError> {
        if let Some(ink) = of.bar {
            self.surface.start_tagged(ContentTag::Artifact(ArtifactType::Other));
            if let Some(bar) = Rect::from_xywh(x, y, 4.0, of.high).map(rectangle) {
                self.paint(bar, Some(ink.fill()), None);
            }
            self.surface.end_tagged();
        }
        let mut rest = of.items.as_slice();
        while let Some(first) = rest.first() {
            let together = rest.iter().take_while(|item| item.leaf == first.leaf).count();
            let (now, later) = rest.split_at(together);
            self.marked(first, now, (x, y))?;
            rest = later;
        }
        Ok(())
    }

    /// Pieces of one leaf, under one mark.
    fn marked(&mut self, first: &Item, items: &[Item], origin: (f32, f32)) -> Result<(), PdfError> {
        let tag = match (first.leaf, &first.what) {
            (None, _) => ContentTag::Artifact(ArtifactType::Other),
            (Some(_), What::Words { .. }) => ContentTag::Span(SpanTag::empty()),
            (Some(_), _) => ContentTag::Other,
        };
        let mark = self.surface.start_tagged(tag);
        let drawn = items.iter().try_for_each(|item| self.item(item, origin));
        self.surface.end_tagged();
        if let Some(leaf) = first.leaf {
            self.marks.0.entry(leaf).or_default().push(mark);
        }
        drawn
    }

    fn item(&mut self, item: &Item, origin: (f32, f32)) -> Result<(), PdfError> {
        let of = |(x, y): (f32, f32)| (origin.0 + x, origin.1 + y);
        let (x, y) = of(item.at);
        match &item.what {
            What::Words { text, weight, size, ink } => self.words(text, *weight, *size, *ink, (x, y)),
            What::Stroke { to, width, ink } => {
                let mut path = PathBuilder::new();
                let (to_x, to_y) = of(*to);
                path.move_to(x, y);
                path.line_to(to_x, to_y);
                self.paint(path.finish(), None, Some(ink.stroke(*width)));
            }
            What::Path { on, width, ink } => {
                let mut path = PathBuilder::new();
                path.move_to(x, y);
                for (x, y) in on.iter().map(|place| of(*place)) {
                    path.line_to(x, y);
                }
                self.paint(path.finish(), None, Some(Stroke { line_join: LineJoin::Round, ..ink.stroke(*width) }));
            }
            What::Dot { radius, ring: true, ink } => {
                self.paint(circle(x, y, *radius), Some(filled(rgb::Color::new(255, 255, 255))), Some(ink.stroke(1.8)));
            }
            What::Dot { radius, ring: false, ink } => self.paint(circle(x, y, *radius), Some(ink.fill()), None),
            What::Picture { digest, width, height } => {
                let Some(Source::Bytes(bytes)) = self.pictures.get(digest).map(|picture| &picture.source) else {
                    return Err(PdfError::Picture("its bytes are not at hand".to_owned()));
                };
                let image = Image::from_jpeg(bytes.clone().into(), false).map_err(PdfError::Picture)?;
                if let Some(size) = Size::from_wh(*width, *height) {
                    self.surface.push_transform(&Transform::from_translate(x, y));
                    self.surface.draw_image(image, size);
                    self.surface.pop();
                }
            }
            What::Code { address, side } => self.code(address, *side, (x, y)),
        }
        Ok(())
    }

    fn paint(&mut self, path: impl Into<Option<Path>>, fill: Option<Fill>, stroke: Option<Stroke>) {
        if let Some(path) = path.into() {
            self.surface.set_fill(fill);
            self.surface.set_stroke(stroke);
            self.surface.draw_path(&path);
        }
    }

    fn words(&mut self, text: &str, weight: Weight, size: f32, ink: Ink, (x, y): (f32, f32)) {
        let face = self.fonts.face(weight);
        let glyph = |(at, character): (usize, char)| {
            let (glyph, width) = face.glyph(character)?;
            let of = at..at + character.len_utf8();
            Some(KrillaGlyph::new(GlyphId::new(glyph.into()), width, 0.0, 0.0, 0.0, of, None))
        };
        let glyphs: Vec<KrillaGlyph> = text.char_indices().filter_map(glyph).collect();
        self.surface.set_fill(Some(ink.fill()));
        self.surface.set_stroke(None);
        self.surface.draw_glyphs(Point::from_xy(x, y), &glyphs, face.font.clone(), text, size, false);
    }

    /// An address as a code (ISO/IEC 18004), four modules of white around it.
    fn code(&mut self, address: &str, side: f32, (x, y): (f32, f32)) {
        let Ok(code) = QrCode::encode_text(address, QrCodeEcc::Medium) else { return };
        let module = side / (code.size() + 8) as f32;
        let mut path = PathBuilder::new();
        for row in 0..code.size() {
            for column in (0..code.size()).filter(|column| code.get_module(*column, row)) {
                let (left, top) = (x + (column + 4) as f32 * module, y + (row + 4) as f32 * module);
                if let Some(rect) = Rect::from_xywh(left, top, module, module) {
                    path.push_rect(rect);
                }
            }
        }
        self.paint(path.finish(), Some(filled(rgb::Color::new(0, 0, 0))), None);
    }

    /// The page's number at its foot: no part of what is read out.
    pub(super) fn page_number(&mut self, text: &str, sheet: Sheet) {
        let face = self.fonts.face(Weight::Regular);
        let (text, size) = (face.fitted(text), 10.0);
        let x = sheet.width - sheet.margin - face.width(&text, size);
        self.surface.start_tagged(ContentTag::Artifact(ArtifactType::Footer));
        self.words(&text, Weight::Regular, size, Ink::Soft, (x, sheet.height - sheet.margin + 6.0));
        self.surface.end_tagged();
    }
}

fn rectangle(rect: Rect) -> Option<Path> {
    let mut path = PathBuilder::new();
    path.push_rect(rect);
    path.finish()
}

/// A circle of four cubic curves; the distance of their control points is the usual 0.5523 of the radius.
fn circle(x: f32, y: f32, radius: f32) -> Option<Path> {
    let k = radius * 0.552_284_8;
    let mut path = PathBuilder::new();
    path.move_to(x + radius, y);
    path.cubic_to(x + radius, y + k, x + k, y + radius, x, y + radius);
    path.cubic_to(x - k, y + radius, x - radius, y + k, x - radius, y);
    path.cubic_to(x - radius, y - k, x - k, y - radius, x, y - radius);
    path.cubic_to(x + k, y - radius, x + radius, y - k, x + radius, y);
    path.close();
    path.finish()
}
