//! What a thing is called that is measured twice.

use crate::procedure::pack::{Pack, Reading};
use crate::words::Words;

/// A reading's name. 'Water flow, as found' and 'Water flow, as left' are the same thing: what both names share before the
/// last comma is its name.
#[must_use]
pub fn name_of(words: &Words, pack: &Pack, reading: &Reading) -> String {
    let name = |reading: &Reading| words.text(&format!("reading-{}", reading.id));
    let is = name(reading);
    let other = match &reading.as_found {
        Some(found) => pack.reading(found.as_str()),
        None => pack.readings.iter().find(|left| left.as_found.as_ref() == Some(&reading.id)),
    };
    let shared = other.map(name).and_then(|other| {
        let (shared, _) = is.rsplit_once(", ")?;
        (other.rsplit_once(", ")?.0 == shared).then(|| shared.to_owned())
    });
    shared.unwrap_or(is)
}
