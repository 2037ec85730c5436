//! `SHA256SUMS`: a line for each file, as `sha256sum` writes and checks it.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use crate::id::Digest;

/// The lines of these files, by name.
#[must_use]
pub fn sums(files: &BTreeMap<String, Digest>) -> String {
    files.iter().fold(String::new(), |mut text, (name, digest)| {
        // Writing into a String does not fail.
        let _ = writeln!(text, "{digest}  {name}");
        text
    })
}

/// Reads the lines; none where they have another form than [`sums`] writes.
#[must_use]
pub fn read(text: &str) -> Option<BTreeMap<String, Digest>> {
    let mut files = BTreeMap::new();
    for line in text.lines() {
        let (digest, name) = line.split_once("  ")?;
        files.insert(name.to_owned(), Digest(digest.to_owned()));
    }
    (sums(&files) == text).then_some(files)
}
