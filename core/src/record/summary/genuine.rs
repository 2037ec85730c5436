//! How an owner checks that the summary is genuine: what marks the record and the device that sealed it, to be read to
//! each other on the telephone; the record file, and the office's own page.

use sha2::{Digest as _, Sha256};

use super::{Part, Sources, Tone};
use crate::id::Digest;

/// What marks a sealed record, short enough to be read aloud.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SealMarks {
    /// Of the last sealed event's digest.
    pub record: String,
    /// Of the device's public key.
    pub key: String,
}

impl SealMarks {
    /// From the digest of the last sealed event and the device's public key (SEC1).
    #[must_use]
    pub fn of(last: &Digest, public_key: &[u8]) -> SealMarks {
        let hex = |byte: &u8| format!("{byte:02x}");
        let key = Digest(Sha256::digest(public_key).iter().map(hex).collect());
        SealMarks { record: in_fours(last), key: in_fours(&key) }
    }
}

/// The first 16 hexadecimal digits of a digest, in fours: 64 bits, more than anyone can search through on purpose for one
/// given record.
#[must_use]
pub fn in_fours(digest: &Digest) -> String {
    let digits: Vec<char> = digest.as_str().chars().take(16).collect();
    let fours: Vec<String> = digits.chunks(4).map(|four| four.iter().collect()).collect();
    fours.join("\u{a0}")
}

pub(super) fn genuine(from: &Sources<'_>) -> Vec<Part> {
    let words = from.words;
    let Some(marks) = &from.seal else { return Vec::new() };
    let facts = [("summary-mark-record", &marks.record), ("summary-mark-key", &marks.key)];
    let facts = facts.into_iter().map(|(key, mark)| (words.text(key), mark.clone())).collect();
    let mut parts = vec![
        Part::Text(words.text("summary-genuine"), Tone::Plain),
        Part::Facts(facts),
        Part::Text(words.text("summary-genuine-file"), Tone::Plain),
    ];
    if let Some(address) = from.address {
        parts.push(Part::Text(words.text("summary-genuine-page"), Tone::Plain));
        parts.push(Part::Code(address.to_owned()));
    }
    parts
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mark_can_be_read_aloud_in_fours() {
        let marks = SealMarks::of(&Digest("0123456789abcdef".repeat(4)), b"");
        assert_eq!(marks.record, "0123\u{a0}4567\u{a0}89ab\u{a0}cdef");
        // SHA-256 of nothing, FIPS 180-4's well-known value.
        assert_eq!(marks.key, "e3b0\u{a0}c442\u{a0}98fc\u{a0}1c14");
    }
}
