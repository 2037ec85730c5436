//! Words in lines: how wide they are in the two built-in fonts, and where a line ends. For scripts that run from left to
//! right with one glyph a character (Latin, Greek, Cyrillic); a full shaper costs three minutes of every clean build.

use krilla::text::Font;

/// Open Sans 1.10, Apache License 2.0 (see `core/fonts/README.md`).
const REGULAR: &[u8] = include_bytes!("../../../../fonts/OpenSans-Regular.ttf");
const BOLD: &[u8] = include_bytes!("../../../../fonts/OpenSans-Bold.ttf");

/// Which font.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Weight {
    Regular,
    Bold,
}

/// A font as it is measured and as it is embedded.
pub(super) struct Face {
    parsed: ttf_parser::Face<'static>,
    pub(super) font: Font,
}

/// Both fonts.
pub(super) struct Fonts {
    regular: Face,
    bold: Face,
}

impl Fonts {
    pub(super) fn built_in() -> Option<Fonts> {
        let face = |bytes: &'static [u8]| {
            let parsed = ttf_parser::Face::parse(bytes, 0).ok()?;
            Some(Face { parsed, font: Font::new(bytes.to_vec().into(), 0)? })
        };
        Some(Fonts { regular: face(REGULAR)?, bold: face(BOLD)? })
    }

    pub(super) const fn face(&self, weight: Weight) -> &Face {
        match weight {
            Weight::Regular => &self.regular,
            Weight::Bold => &self.bold,
        }
    }
}

impl Face {
    /// The glyph of a character with its width in parts of the size.
    pub(super) fn glyph(&self, character: char) -> Option<(u16, f32)> {
        let glyph = self.parsed.glyph_index(character)?;
        let units = f32::from(self.parsed.units_per_em());
        Some((glyph.0, f32::from(self.parsed.glyph_hor_advance(glyph)?) / units))
    }

    /// How wide words are, in points.
    pub(super) fn width(&self, text: &str, size: f32) -> f32 {
        text.chars().filter_map(|character| self.glyph(character)).map(|(_, width)| width * size).sum()
    }

    /// Words with characters that the font has: a sign that looks alike, or '?', so that what is missing shows.
    pub(super) fn fitted(&self, text: &str) -> String {
        let of = |character: char| match character {
            '\u{ad}' | '\u{200b}' | '\u{200d}' | '\u{feff}' => None,
            '\u{2011}' => Some('-'),
            '\u{202f}' | '\u{2009}' => Some('\u{a0}'),
            control if control.is_control() => Some(' '),
            known if self.glyph(known).is_some() => Some(known),
            _ => Some('?'),
        };
        text.chars().filter_map(of).collect()
    }

    /// Lines that are at most so wide. A line keeps the space at its end, so that its last word is parted from the next one
    /// for those who have it read out. A word that is wider than a line is cut.
    pub(super) fn lines(&self, text: &str, size: f32, width: f32) -> Vec<String> {
        let text = self.fitted(text);
        let mut lines = vec![String::new()];
        let mut so_far = 0.0;
        for word in words(&text) {
            let bare = self.width(word.trim_end_matches(' '), size);
            if so_far > 0.0 && so_far + bare > width {
                lines.push(String::new());
                so_far = 0.0;
            }
            for character in word.chars() {
                let wide = self.glyph(character).map_or(0.0, |(_, wide)| wide * size);
                if bare > width && so_far > 0.0 && so_far + wide > width {
                    lines.push(String::new());
                    so_far = 0.0;
                }
                if let Some(line) = lines.last_mut() {
                    line.push(character);
                }
                so_far += wide;
            }
        }
        lines
    }
}

/// Words with the spaces behind them. A line may also end behind a hyphen or slash between letters.
fn words(text: &str) -> Vec<&str> {
    let mut words = Vec::new();
    let mut from = 0;
    let mut before: Option<char> = None;
    for (at, character) in text.char_indices() {
        let after_space = before == Some(' ') && character != ' ';
        let after_hyphen = matches!(before, Some('-' | '/' | '–')) && character.is_alphabetic() && at - from > 2;
        if after_space || after_hyphen {
            words.extend(text.get(from..at));
            from = at;
        }
        before = Some(character);
    }
    words.extend(text.get(from..));
    words.retain(|word| !word.is_empty());
    words
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_is_never_wider_than_asked_and_nothing_is_lost() {
        let fonts = Fonts::built_in().unwrap();
        let text =
            "Words of a Supercalifragilisticexpialidocious-kind, and 42.5\u{a0}±\u{a0}1.0\u{a0}°C stays together.";
        for width in [60.0, 120.0, 300.0] {
            let face = fonts.face(Weight::Regular);
            let lines = face.lines(text, 12.0, width);
            assert_eq!(lines.concat(), text);
            for line in &lines {
                assert!(face.width(line.trim_end(), 12.0) <= width + 0.01, "{line}");
            }
        }
        let lines = fonts.face(Weight::Regular).lines(text, 12.0, 150.0);
        assert!(lines.iter().any(|line| line.contains("42.5\u{a0}±\u{a0}1.0\u{a0}°C")), "{lines:?}");
    }

    /// Every sign that units, ranges and both languages need.
    #[test]
    fn the_fonts_have_every_sign_that_summaries_use() {
        let fonts = Fonts::built_in().unwrap();
        for weight in [Weight::Regular, Weight::Bold] {
            for sign in "°±−µΩ½¼¾²³×’“”…·–áéíóúüñÁÉÍÓÚÑ¿¡€%/".chars() {
                assert!(fonts.face(weight).glyph(sign).is_some(), "{weight:?} {sign}");
            }
        }
        assert_eq!(fonts.face(Weight::Regular).fitted("a\u{2011}b 水"), "a-b ?");
    }
}
