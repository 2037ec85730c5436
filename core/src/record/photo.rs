//! What does not fit together about a photograph, in words.

use crate::procedure::measure::Units;
use crate::visit::event::{PhotoCode, PhotoFlag};
use crate::visit::state::Photo;
use crate::words::{Words, number};

/// Metres of a foot, exact by definition (NIST Handbook 44, appendix C).
const FOOT_M: f64 = 0.3048;

/// What a flag of the photograph says.
#[must_use]
pub fn flag_words(photo: &Photo, flag: PhotoFlag, units: Units, words: &Words) -> String {
    let key = match flag {
        PhotoFlag::TimeDiffers => "flag-time-differs",
        PhotoFlag::NoTime => "flag-no-time",
        PhotoFlag::PlaceDiffers => "flag-place-differs",
        PhotoFlag::SameAsOther => "flag-same-as-other",
        PhotoFlag::NoPreview => "flag-no-preview",
        PhotoFlag::Blurred => "flag-blurred",
        PhotoFlag::Dark => "flag-dark",
        PhotoFlag::BlownOut => "flag-blown-out",
        PhotoFlag::SameAsBefore => "flag-same-as-before",
        PhotoFlag::LooksLikeOther => "flag-looks-like-other",
        PhotoFlag::ClockSetBack => "flag-clock-set-back",
        PhotoFlag::NoPlace => "flag-no-place",
        PhotoFlag::Elsewhere => "flag-elsewhere",
        PhotoFlag::PlaceUnsure => "flag-place-unsure",
        PhotoFlag::OtherSerial => "flag-other-serial",
    };
    let Some(at) = &photo.facts.at_site else { return words.text(key) };
    let length = |metres: u32| length(f64::from(metres), units, words.language());
    words.fill(key, &[("apart", &length(at.apart_m)), ("doubt", &length(at.doubt_m))])
}

/// What the codes in the photograph say, a line each.
#[must_use]
pub fn code_words(photo: &Photo, words: &Words) -> Vec<String> {
    let line = |code: &PhotoCode| {
        words.fill("photo-code-read", &[("text", &shown(&code.text, code.cut)), ("kind", code.symbology.name())])
    };
    photo.facts.codes.iter().map(line).collect()
}

/// More characters of a code than this are not shown.
const CODE_SHOWN_MAX: usize = 80;

/// A code's text as it can be shown: on one line, without what turns or hides writing, and not too long.
fn shown(text: &str, cut: bool) -> String {
    let hides =
        |c: char| matches!(c, '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}');
    let visible: String = text.chars().filter(|c| !hides(*c)).map(|c| if c.is_control() { ' ' } else { c }).collect();
    let words: Vec<&str> = visible.split_whitespace().collect();
    let line = words.join(" ");
    let short: String = line.chars().take(CODE_SHOWN_MAX).collect();
    if cut || short.len() < line.len() { format!("{short}…") } else { short }
}

/// Of a photograph that is a gap or shows a disagreement: what belongs beside the record's gaps. That a picture carries no
/// time or is not shown here stands beside the picture alone.
pub(super) const fn is_noted(flag: PhotoFlag) -> bool {
    !matches!(flag, PhotoFlag::NoTime | PhotoFlag::NoPreview | PhotoFlag::NoPlace)
}

fn length(metres: f64, units: Units, language: &str) -> String {
    let (small, unit, large, many) = match units {
        Units::Metric => (metres, "m", metres / 1000.0, "km"),
        Units::Us => (metres / FOOT_M, "ft", metres / FOOT_M / 5280.0, "mi"),
    };
    if small < 5000.0 {
        format!("{} {unit}", number::write(small, 0, language))
    } else {
        format!("{} {many}", number::write(large, 1, language))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hostile_code_is_shown_on_one_short_line() {
        assert_eq!(shown("TW9\u{1d}20\u{202e}417\n\n x", false), "TW9 20417 x");
        assert_eq!(shown(&"a".repeat(5000), false).chars().count(), CODE_SHOWN_MAX + 1);
        assert_eq!(shown("número 型式", true), "número 型式…");
    }

    #[test]
    fn lengths_are_in_the_persons_units_and_never_without_one() {
        assert_eq!(length(120.0, Units::Metric, "en"), "120 m");
        assert_eq!(length(12_340.0, Units::Metric, "es"), "12,3 km");
        // 120 m are 393.7 ft: NIST Handbook 44, appendix C.
        assert_eq!(length(120.0, Units::Us, "en"), "394 ft");
    }
}
