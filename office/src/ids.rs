//! Names of things: parsed once at the edge, trusted inside.

use std::fmt;

use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use sha2::{Digest as _, Sha256};

/// A text that is not the name that it should be.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("this is not {wanted}")]
pub struct NotAName {
    /// What was wanted, in words.
    pub wanted: &'static str,
}

/// Names a visit: 1 to 64 letters, digits and hyphens, as the device chose it.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct VisitId(String);

impl VisitId {
    /// Reads a visit's name.
    ///
    /// # Errors
    /// When it is empty, longer than 64, or holds anything but letters, digits and hyphens.
    pub fn parse(text: &str) -> Result<Self, NotAName> {
        let fits = (1..=64).contains(&text.len()) && text.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-');
        if fits { Ok(Self(text.to_owned())) } else { Err(NotAName { wanted: "the name of a visit" }) }
    }

    /// The name as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for VisitId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// A SHA-256: of an event's bytes, or of a photograph's.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Digest([u8; 32]);

impl Digest {
    /// What the first event of a visit points at: 32 zero bytes.
    pub const ZERO: Digest = Digest([0; 32]);

    /// The SHA-256 of these bytes.
    #[must_use]
    pub fn of(bytes: &[u8]) -> Self {
        Self(Sha256::digest(bytes).into())
    }

    /// Takes a finished hash.
    #[must_use]
    pub const fn from_bytes(bytes: [u8; 32]) -> Self {
        Self(bytes)
    }

    /// Reads 64 lower-case hexadecimal digits.
    ///
    /// # Errors
    /// When it is anything else.
    pub fn parse(text: &str) -> Result<Self, NotAName> {
        let wrong = NotAName { wanted: "a SHA-256 in 64 lower-case hexadecimal digits" };
        if text.bytes().any(|b| b.is_ascii_uppercase()) {
            return Err(wrong);
        }
        unhex(text).and_then(|bytes| bytes.try_into().ok()).map(Self).ok_or(wrong)
    }

    /// The 32 bytes.
    #[must_use]
    pub const fn as_bytes(&self) -> &[u8; 32] {
        &self.0
    }
}

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl fmt::Debug for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

/// 256 random bits that open something. Its text is given away once; the office keeps the hash.
#[derive(Clone, PartialEq, Eq)]
pub struct Secret([u8; 32]);

impl Secret {
    /// Takes fresh random bytes.
    #[must_use]
    pub const fn from_bytes(bytes: [u8; 32]) -> Self {
        Self(bytes)
    }

    /// Draws from the operating system.
    ///
    /// # Errors
    /// When the system has no randomness to give.
    pub fn random() -> Result<Self, getrandom::Error> {
        let mut bytes = [0; 32];
        getrandom::fill(&mut bytes)?;
        Ok(Self(bytes))
    }

    /// The text that goes into an address, a cookie or a header: 43 characters.
    #[must_use]
    pub fn text(&self) -> String {
        URL_SAFE_NO_PAD.encode(self.0)
    }

    /// What is kept of it, worked out from the text that comes back.
    #[must_use]
    pub fn hash_of(text: &str) -> Digest {
        Digest::of(text.as_bytes())
    }

    /// What is kept of it.
    #[must_use]
    pub fn hash(&self) -> Digest {
        Self::hash_of(&self.text())
    }
}

/// Reads hexadecimal digits of either case.
pub(crate) fn unhex(text: &str) -> Option<Vec<u8>> {
    let digits: Option<Vec<u8>> =
        text.chars().map(|c| c.to_digit(16).and_then(|digit| u8::try_from(digit).ok())).collect();
    let digits = digits?;
    if digits.len() % 2 != 0 {
        return None;
    }
    Some(digits.chunks_exact(2).map(|pair| pair.iter().fold(0, |byte, digit| byte * 16 + digit)).collect())
}

/// Writes bytes as lower-case hexadecimal digits.
pub(crate) fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_digest_of_abc_is_the_one_of_fips_180() {
        // FIPS 180-4 example, SHA-256 of "abc".
        let published = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(Digest::of(b"abc").to_string(), published);
        assert_eq!(Digest::parse(published), Ok(Digest::of(b"abc")));
    }

    #[test]
    fn a_digest_is_refused_when_it_is_short_long_upper_case_or_not_hexadecimal() {
        let good = Digest::of(b"").to_string();
        for bad in ["", &good[1..], &format!("{good}00"), &good.to_uppercase(), &good.replace('e', "g")] {
            assert!(Digest::parse(bad).is_err(), "{bad}");
        }
    }

    #[test]
    fn a_visit_name_cannot_climb_out_of_its_folder() {
        for bad in ["", ".", "../x", "a/b", "a b", "é", &"a".repeat(65)] {
            assert!(VisitId::parse(bad).is_err(), "{bad}");
        }
        assert_eq!(VisitId::parse("0199-Ab").map(|id| id.to_string()), Ok("0199-Ab".to_owned()));
    }
}
