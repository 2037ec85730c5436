//! The summary as a PDF: PDF/A-2a (ISO 19005-2, level A), so tagged for screen readers and readable in decades; A4, or US
//! letter by the units. The previews' JPEG bytes are embedded as they are. Words are set by `text`, laid out in boxes by
//! `parts`, put on pages by `paper` and drawn by `draw`.

mod draw;
mod paper;
mod parts;
mod text;

use krilla::Document;
use krilla::configure::{Configuration, Validator};
use krilla::error::KrillaError;
use krilla::metadata::{DateTime, Metadata};
use krilla::page::PageSettings;

use super::Summary;
use super::jpeg::Pictures;
use crate::procedure::measure::Units;
use crate::round::day::there;

/// Why there is no PDF.
#[derive(Debug, thiserror::Error)]
pub enum PdfError {
    /// The fonts inside the program cannot be read.
    #[error("the built-in fonts cannot be read; this copy of the program is damaged")]
    Fonts,
    /// A picture is no JPEG that can be embedded.
    #[error("a preview could not be put into the PDF: {0}")]
    Picture(String),
    /// The document does not come to PDF/A.
    #[error("the PDF could not be made: {0}")]
    Unmade(String),
}

/// A page, in points of 1/72 inch.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Sheet {
    width: f32,
    height: f32,
    margin: f32,
}

impl Sheet {
    /// ISO 216 A4, or US letter (ANSI/ASME Y14.1 size A).
    const fn of(units: Units) -> Sheet {
        let (width, height) = match units {
            Units::Metric => (595.28, 841.89),
            Units::Us => (612.0, 792.0),
        };
        Sheet { width, height, margin: 54.0 }
    }

    fn inner_width(self) -> f32 {
        self.width - 2.0 * self.margin
    }

    /// Below the text stands the page number.
    fn bottom(self) -> f32 {
        self.height - self.margin - 14.0
    }
}

/// The summary as a PDF.
///
/// # Errors
/// Where a picture cannot be embedded or the document does not come to PDF/A.
pub fn pdf(summary: &Summary, pictures: &Pictures) -> Result<Vec<u8>, PdfError> {
    let fonts = text::Fonts::built_in().ok_or(PdfError::Fonts)?;
    let sheet = Sheet::of(summary.units);
    let laid = parts::lay_out(summary, pictures, &fonts, sheet.inner_width());
    let pages = paper::onto_pages(&laid.boxes, sheet);
    let mut document = Document::new_with(krilla::SerializeSettings {
        configuration: Configuration::new_with_validator(Validator::A2_A),
        ..krilla::SerializeSettings::default()
    });
    let settings = PageSettings::from_wh(sheet.width, sheet.height).ok_or(PdfError::Fonts)?;
    let mut marks = draw::Marks::default();
    for (at, page) in pages.iter().enumerate() {
        let number =
            summary.labels.page.replace("{page}", &(at + 1).to_string()).replace("{pages}", &pages.len().to_string());
        let mut sheet_of_paper = document.start_page_with(settings.clone());
        let mut surface = sheet_of_paper.surface();
        let mut pen = draw::Draw { surface: &mut surface, fonts: &fonts, pictures, marks: &mut marks };
        for (index, y) in page {
            if let Some(of) = laid.boxes.get(*index) {
                pen.draw(of, sheet.margin, *y)?;
            }
        }
        pen.page_number(&number, sheet);
        surface.finish();
        sheet_of_paper.finish();
    }
    document.set_tag_tree(laid.tree(&summary.language, &marks));
    document.set_metadata(metadata(summary));
    document.finish().map_err(unmade)
}

fn unmade(error: KrillaError) -> PdfError {
    PdfError::Unmade(format!("{error:?}"))
}

fn metadata(summary: &Summary) -> Metadata {
    let metadata = Metadata::new()
        .title(summary.title.clone())
        .language(summary.language.clone())
        .description(summary.lead.join(" "))
        .creator("Coilside".to_owned());
    match summary.at.as_ref().and_then(|at| there(at.utc_ms, at.offset_min).map(|there| (there, at.offset_min))) {
        Some((at, offset_min)) => metadata.creation_date(moment(&at, offset_min)),
        None => metadata,
    }
}

fn moment<T: chrono::Datelike + chrono::Timelike>(at: &T, offset_min: i32) -> DateTime {
    let small = |number: u32| u8::try_from(number).unwrap_or_default();
    DateTime::new(u16::try_from(at.year()).unwrap_or_default())
        .month(small(at.month()))
        .day(small(at.day()))
        .hour(small(at.hour()))
        .minute(small(at.minute()))
        .second(small(at.second()))
        .utc_offset_hour(i8::try_from(offset_min / 60).unwrap_or_default())
        .utc_offset_minute(small(offset_min.unsigned_abs() % 60))
}
