//! The ZIP of a record file, by PKWARE's APPNOTE 6.3.10: files stored one after another, their list, and its end. It has no
//! freedom: every byte that is not a file's own follows from the files' names, lengths and CRCs.

use std::io::{self, Write};

/// A file in the ZIP.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Entry {
    /// Its name: plain letters, digits, `.`, `-`, `_`, and `/` between them.
    pub(super) name: String,
    /// CRC-32 of its bytes.
    pub(super) crc: u32,
    /// How many bytes it has.
    pub(super) length: u32,
}

/// The most files of a record: a visit has a few dozen photographs.
pub(super) const ENTRIES_MAX: usize = 5_000;
/// The most letters of a name.
pub(super) const NAME_MAX: usize = 120;
/// A file begins so.
pub(super) const LOCAL: [u8; 4] = *b"PK\x03\x04";
/// A line of the list begins so.
pub(super) const LISTED: [u8; 4] = *b"PK\x01\x02";
/// Length of the words before a file, without its name.
pub(super) const LOCAL_BYTES: usize = 30;

/// Version 1.0 is enough for stored files; made on Unix, so that the files' modes are understood.
const NEEDED: u16 = 10;
const MADE_BY: u16 = 0x031e;
/// No time is told: 1980-01-01 00:00, the first that the form knows.
const DATE: u16 = 0x0021;
/// A plain file that its owner may write and others read.
const MODE: u32 = 0o100_644 << 16;

struct Bytes(Vec<u8>);

impl Bytes {
    fn two(mut self, values: &[u16]) -> Self {
        self.0.extend(values.iter().flat_map(|value| value.to_le_bytes()));
        self
    }

    fn four(mut self, values: &[u32]) -> Self {
        self.0.extend(values.iter().flat_map(|value| value.to_le_bytes()));
        self
    }

    fn plain(mut self, bytes: &[u8]) -> Self {
        self.0.extend(bytes);
        self
    }
}

impl Entry {
    /// Names are short: a longer one was refused before.
    fn name_length(&self) -> u16 {
        u16::try_from(self.name.len()).unwrap_or(u16::MAX)
    }

    /// The words before the file's own bytes.
    pub(super) fn local(&self) -> Vec<u8> {
        let head = Bytes(LOCAL.to_vec()).two(&[NEEDED, 0, 0, 0, DATE]);
        let head = head.four(&[self.crc, self.length, self.length]).two(&[self.name_length(), 0]);
        head.plain(self.name.as_bytes()).0
    }

    /// Its line in the list. `at` is where its words before begin.
    fn listed(&self, at: u32) -> Vec<u8> {
        let line = Bytes(LISTED.to_vec()).two(&[MADE_BY, NEEDED, 0, 0, 0, DATE]);
        let line = line.four(&[self.crc, self.length, self.length]).two(&[self.name_length(), 0, 0, 0, 0]);
        line.four(&[MODE, at]).plain(self.name.as_bytes()).0
    }

    fn bytes(&self) -> u64 {
        LOCAL_BYTES as u64 + self.name.len() as u64 + u64::from(self.length)
    }
}

/// What follows the files: a part for each line of the list, with the file's name, and the end of it all.
pub(super) fn list(entries: &[Entry]) -> Option<Vec<(Option<String>, Vec<u8>)>> {
    let mut at = 0_u64;
    let mut parts = Vec::with_capacity(entries.len() + 1);
    let mut bytes = 0_u64;
    for entry in entries {
        let line = entry.listed(u32::try_from(at).ok()?);
        bytes += line.len() as u64;
        parts.push((Some(entry.name.clone()), line));
        at += entry.bytes();
    }
    let count = u16::try_from(entries.len()).ok()?;
    let end = Bytes(b"PK\x05\x06".to_vec()).two(&[0, 0, count, count]);
    let end = end.four(&[u32::try_from(bytes).ok()?, u32::try_from(at).ok()?]).two(&[0]);
    parts.push((None, end.0));
    Some(parts)
}

/// Whether a name is one that a record file may have: no way out of the folder that it is unpacked into, on any system.
pub(super) fn is_plain(name: &str) -> bool {
    let plain = |c: u8| c.is_ascii_alphanumeric() || matches!(c, b'.' | b'-' | b'_' | b'/');
    (1..=NAME_MAX).contains(&name.len())
        && name.bytes().all(plain)
        && name.split('/').all(|part| !part.is_empty() && !part.starts_with('.') && !part.ends_with('.'))
}

/// Writes one file: the words before it, then its bytes.
pub(super) fn put(entry: &Entry, bytes: &mut dyn io::Read, out: &mut dyn Write) -> io::Result<()> {
    out.write_all(&entry.local())?;
    let copied = io::copy(&mut io::Read::take(bytes, u64::from(entry.length) + 1), out)?;
    if copied == u64::from(entry.length) { Ok(()) } else { Err(io::Error::other("a file changed while it was read")) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_that_leads_out_of_its_folder_is_not_plain() {
        for good in ["README.txt", "photographs/ab12.jpg", "keys/office-1.jwk"] {
            assert!(is_plain(good), "{good}");
        }
        let long = "a".repeat(NAME_MAX + 1);
        for bad in
            ["", "/etc/passwd", "../x", "a/../b", "a//b", "a/", "a\\b", "C:x", "a b", "é", ".x", "a/.", "x.", &long]
        {
            assert!(!is_plain(bad), "{bad}");
        }
    }
}
