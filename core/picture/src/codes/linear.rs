//! Linear codes: every line that crosses one reads it, and several must agree.

use std::collections::BTreeMap;

use super::Symbology;
use super::lines::{DIRECTIONS, lines, widths};
use super::{Found, code39, code128, ean};
use crate::picture::Plane;

/// Edges swing by at least this share of the line's range: the first for even light, the second for a code in a shadow.
const SHARES: [f32; 2] = [0.3, 0.12];

/// How many lines must read the same. A Code 39 has no check character.
const fn lines_least(symbology: Symbology) -> usize {
    match symbology {
        Symbology::Code39 => 3,
        _ => 2,
    }
}

/// The linear codes of a picture.
pub(super) fn read(picture: &Plane) -> Vec<Found> {
    let mut votes: BTreeMap<Found, usize> = BTreeMap::new();
    for direction in DIRECTIONS {
        for line in lines(picture, direction) {
            let mut here: Vec<Found> = Vec::new();
            for share in SHARES {
                let mut widths = widths(&line, share);
                read_line(&widths, &mut here);
                widths.reverse();
                read_line(&widths, &mut here);
            }
            here.sort_unstable();
            here.dedup();
            here.into_iter().for_each(|one| *votes.entry(one).or_default() += 1);
        }
    }
    votes.retain(|(symbology, _), count| *count >= lines_least(*symbology));
    votes.into_keys().collect()
}

fn read_line(widths: &[f32], found: &mut Vec<Found>) {
    let mut at = 1;
    while at < widths.len() {
        let rest = widths.get(at..).unwrap_or_default();
        let before = widths.get(at - 1).copied().unwrap_or_default();
        let read =
            code128::read(before, rest).or_else(|| ean::read(before, rest)).or_else(|| code39::read(before, rest));
        match read {
            Some(Read { symbology, text, elements }) => {
                found.push((symbology, text));
                at += elements;
            }
            None => at += 1,
        }
    }
}

/// A code that begins at an element, with the number of its elements.
pub(super) struct Read {
    pub(super) symbology: Symbology,
    pub(super) text: String,
    pub(super) elements: usize,
}
