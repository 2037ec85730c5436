//! That the customer was shown the visit on the spot: their name, their drawn signature, or both. Personal data: the file
//! lies beside the log and carries its own salt, and an event holds nothing but the SHA-256 of it. So it can be erased, and
//! the chain holds as before; who has the file can show that it is the visit's.

use serde::{Deserialize, Serialize};

use super::ink::{Ink, InkError, POINTS_MAX, Point};

/// The media type of the file.
pub const SHOWN_MEDIA: &str = "application/json";
/// The most bytes of the file: some 11 for each point that may be kept, and the rest.
pub const SHOWN_BYTES_MAX: usize = 64 * 1024;
/// The most letters of a name.
const NAME_MAX: usize = 120;

/// The file, in canonical form (RFC 8785). Strings and whole numbers only, so that its canonical form is one.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Shown {
    /// Random, hexadecimal: without it a short name could be guessed from the digest.
    pub salt: String,
    /// The name as it was typed; empty where none was.
    pub name: String,
    /// What was drawn; none where nothing was.
    pub strokes: Vec<Vec<Point>>,
    /// How wide the box of the drawing is; 0 without one.
    pub width: u32,
    /// How high it is; 0 without one.
    pub height: u32,
    /// When, UTC milliseconds.
    pub utc_ms: i64,
}

impl Shown {
    /// Puts name and drawing together. At least one of them is there.
    ///
    /// # Errors
    /// Where both are missing, or one breaks a limit.
    pub fn of(name: &str, ink: Option<&Ink>, salt: &str, utc_ms: i64) -> Result<Shown, InkError> {
        let name = name.split_whitespace().collect::<Vec<_>>().join(" ");
        let thin = ink.map(Ink::thinned).transpose()?.unwrap_or_default();
        let Ink { width, height, strokes } = thin;
        let shown = Shown { salt: salt.to_owned(), name, strokes, width, height, utc_ms };
        shown.check()?;
        Ok(shown)
    }

    /// The bytes of the file.
    ///
    /// # Errors
    /// Where it is too long.
    pub fn to_bytes(&self) -> Result<Vec<u8>, InkError> {
        let bytes = serde_json_canonicalizer::to_vec(self).map_err(|_| InkError::Unreadable)?;
        if bytes.len() > SHOWN_BYTES_MAX { Err(InkError::TooMuch) } else { Ok(bytes) }
    }

    /// Reads the file. That it is the one of the visit the digest says, and nothing in here.
    ///
    /// # Errors
    /// Where it is none, or not in canonical form.
    pub fn read(bytes: &[u8]) -> Result<Shown, InkError> {
        let shown: Shown = serde_json::from_slice(bytes).map_err(|_| InkError::Unreadable)?;
        shown.check()?;
        if shown.to_bytes()? == bytes { Ok(shown) } else { Err(InkError::Unreadable) }
    }

    /// What was drawn.
    #[must_use]
    pub fn ink(&self) -> Option<Ink> {
        let Shown { width, height, strokes, .. } = self;
        (!strokes.is_empty()).then(|| Ink { width: *width, height: *height, strokes: strokes.clone() })
    }

    fn check(&self) -> Result<(), InkError> {
        if self.name.chars().count() > NAME_MAX || self.name.chars().any(char::is_control) {
            return Err(InkError::Name);
        }
        match self.ink() {
            Some(ink) => ink.check(POINTS_MAX),
            None if self.name.is_empty() => Err(InkError::Nothing),
            None => Ok(()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn drawn() -> Ink {
        Ink { width: 1200, height: 480, strokes: vec![vec![(10, 20), (300, 40), (310, 400)], vec![(700, 240)]] }
    }

    #[test]
    fn the_file_is_canonical_json_of_whole_numbers_and_reads_back() {
        let shown = Shown::of("  Edda \n Marsh ", Some(&drawn()), "00ff", 1_777_881_600_000).unwrap();
        let bytes = shown.to_bytes().unwrap();
        assert_eq!(
            String::from_utf8(bytes.clone()).unwrap(),
            r#"{"height":480,"name":"Edda Marsh","salt":"00ff","strokes":[[[10,20],[300,40],[310,400]],[[700,240]]],"utc_ms":1777881600000,"width":1200}"#
        );
        assert_eq!(Shown::read(&bytes).unwrap(), shown);
        assert_eq!(shown.ink(), Some(drawn()));
    }

    #[test]
    fn the_name_alone_is_as_good_and_nothing_at_all_is_refused() {
        let named = Shown::of("Edda Marsh", None, "00", 1).unwrap();
        assert_eq!((named.ink(), named.width), (None, 0));
        assert!(Shown::of("", Some(&drawn()), "00", 1).is_ok());
        assert_eq!(Shown::of(" ", None, "00", 1).unwrap_err(), InkError::Nothing);
        assert_eq!(Shown::of(&"n".repeat(NAME_MAX + 1), None, "00", 1).unwrap_err(), InkError::Name);
        assert_eq!(Shown::of("a\u{7}b", None, "00", 1).unwrap_err(), InkError::Name);
    }

    #[test]
    fn the_longest_drawing_that_is_kept_fits_the_file() {
        // No two points on one line, each with four digits twice.
        let stroke: Vec<Point> =
            (0..POINTS_MAX as u32).map(|at| (1000 + at * 947 % 3001, 1000 + at * 613 % 2999)).collect();
        let ink = Ink { width: 4096, height: 4096, strokes: vec![stroke] };
        let shown = Shown::of(&"ñ".repeat(NAME_MAX), Some(&ink), &"f".repeat(64), i64::MAX >> 12).unwrap();
        assert!(shown.to_bytes().unwrap().len() <= SHOWN_BYTES_MAX);
    }

    #[test]
    fn what_is_not_canonical_or_no_such_file_is_not_read() {
        let bytes = Shown::of("Edda", None, "00", 1).unwrap().to_bytes().unwrap();
        let text = String::from_utf8(bytes).unwrap();
        for other in [
            text.replace(r#""name""#, r#" "name""#),
            text.replace("}", r#","more":1}"#),
            text.replace("Edda", ""),
            text.replace(r#""utc_ms":1"#, r#""utc_ms":1.0"#),
            text.replace(r#""strokes":[]"#, r#""strokes":[[[1,1]]]"#),
            String::new(),
        ] {
            assert!(Shown::read(other.as_bytes()).is_err(), "{other}");
        }
    }
}
