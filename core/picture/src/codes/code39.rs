//! Code 39. Source: ISO/IEC 16388, from memory; the codes of other programs are read in `tests/python/test_codes.py`.

use super::Symbology;
use super::linear::Read;

/// Characters with their wide elements, of nine: the first bar is the highest bit.
const CHARACTERS: [(char, u16); 44] = [
    ('0', 0x034),
    ('1', 0x121),
    ('2', 0x061),
    ('3', 0x160),
    ('4', 0x031),
    ('5', 0x130),
    ('6', 0x070),
    ('7', 0x025),
    ('8', 0x124),
    ('9', 0x064),
    ('A', 0x109),
    ('B', 0x049),
    ('C', 0x148),
    ('D', 0x019),
    ('E', 0x118),
    ('F', 0x058),
    ('G', 0x00d),
    ('H', 0x10c),
    ('I', 0x04c),
    ('J', 0x01c),
    ('K', 0x103),
    ('L', 0x043),
    ('M', 0x142),
    ('N', 0x013),
    ('O', 0x112),
    ('P', 0x052),
    ('Q', 0x007),
    ('R', 0x106),
    ('S', 0x046),
    ('T', 0x016),
    ('U', 0x181),
    ('V', 0x0c1),
    ('W', 0x1c0),
    ('X', 0x091),
    ('Y', 0x190),
    ('Z', 0x0d0),
    ('-', 0x085),
    ('.', 0x184),
    (' ', 0x0c4),
    ('$', 0x0a8),
    ('/', 0x0a2),
    ('+', 0x08a),
    ('%', 0x02a),
    (EDGE, 0x094),
];
/// The character at both ends.
const EDGE: char = '*';
/// Elements of a character.
const ELEMENTS: usize = 9;
/// A wide element is at least so many times a narrow one; the standard prints 2 to 3.
const WIDE_LEAST: f32 = 1.5;
/// Characters of one code are as wide as each other, but for perspective.
const WIDTH_DIFFERS: f32 = 0.2;
/// The quiet zone is ten narrow elements by the standard.
const QUIET: f32 = 5.0;
/// The gap between characters is at most 5.3 narrow elements by the standard.
const GAP_MOST: f32 = 5.5;
/// Shorter texts are too easily read where there are none; longer ones are none.
const LENGTH: std::ops::RangeInclusive<usize> = 3..=60;

/// Reads a code whose first bar is the first of `widths`; `before` is what lies before it.
pub(super) fn read(before: f32, widths: &[f32]) -> Option<Read> {
    // Before all else, for most of what is asked is none: a character is at most 15 narrow elements wide.
    if before < QUIET / 15.0 * widths.get(..ELEMENTS)?.iter().sum::<f32>() {
        return None;
    }
    let (first, narrow) = character(widths)?;
    if first != EDGE || before < QUIET * narrow {
        return None;
    }
    let wide = |widths: &[f32]| widths.get(..ELEMENTS).map(|of| of.iter().sum::<f32>());
    let mut last = wide(widths)?;
    let mut text = String::new();
    let mut at = ELEMENTS;
    loop {
        let gap = *widths.get(at)?;
        let rest = widths.get(at + 1..)?;
        let (character, narrow) = character(rest)?;
        let here = wide(rest)?;
        if gap > GAP_MOST * narrow || (here - last).abs() > WIDTH_DIFFERS * last {
            return None;
        }
        last = here;
        at += 1 + ELEMENTS;
        if character == EDGE {
            let quiet = *widths.get(at)? >= QUIET * narrow;
            let length = text.chars().count();
            return (quiet && LENGTH.contains(&length)).then_some(Read {
                symbology: Symbology::Code39,
                text,
                elements: at,
            });
        }
        text.push(character);
        if text.len() > *LENGTH.end() {
            return None;
        }
    }
}

/// The character that begins here, and how wide its narrow elements are.
fn character(widths: &[f32]) -> Option<(char, f32)> {
    let widths = widths.first_chunk::<ELEMENTS>()?;
    let mut sorted = *widths;
    sorted.sort_unstable_by(f32::total_cmp);
    let (narrow, wide) = sorted.split_at(ELEMENTS - 3);
    let (widest_narrow, narrowest_wide) = (*narrow.last()?, *wide.first()?);
    let (thinnest, widest) = (*narrow.first()?, *wide.last()?);
    // Narrow ones alike, wide ones alike, and both well apart.
    if thinnest <= 0.5 || narrowest_wide < WIDE_LEAST * widest_narrow || widest > 1.8 * narrowest_wide {
        return None;
    }
    let mean: f32 = narrow.iter().sum::<f32>() / narrow.len() as f32;
    if widest_narrow > 2.2 * thinnest || widest > 4.5 * mean {
        return None;
    }
    let middle = (widest_narrow + narrowest_wide) / 2.0;
    let bits = widths.iter().fold(0_u16, |bits, width| bits << 1 | u16::from(*width > middle));
    CHARACTERS.iter().find(|(_, pattern)| *pattern == bits).map(|(character, _)| (*character, mean))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn drawn(text: &str, narrow: f32, ratio: f32) -> Vec<f32> {
        let mut widths = vec![10.0 * narrow];
        for character in format!("*{text}*").chars() {
            let (_, pattern) = CHARACTERS.iter().find(|(known, _)| *known == character).unwrap();
            let wide = |bit: u16| pattern >> bit & 1 == 1;
            widths.extend((0..9).rev().map(|bit| if wide(bit) { narrow * ratio } else { narrow }));
            widths.push(narrow);
        }
        *widths.last_mut().unwrap() = 10.0 * narrow;
        widths
    }

    #[test]
    fn every_character_has_three_wide_elements_and_is_read_back() {
        // ISO/IEC 16388: three of nine elements are wide.
        assert!(CHARACTERS.iter().all(|(_, pattern)| pattern.count_ones() == 3));
        for text in ["TW9-20417", "ABC 123.45/6+7%$", "OVELLE", "QRSTUVWXYZ", "0123456789"] {
            for ratio in [2.0, 2.5, 3.0] {
                let widths = drawn(text, 2.4, ratio);
                assert_eq!(read(widths[0], &widths[1..]).map(|read| read.text), Some(text.into()), "{ratio}");
            }
        }
    }

    #[test]
    fn what_has_no_end_no_quiet_zone_or_is_too_short_is_not_read() {
        let widths = drawn("TW9-20417", 2.4, 2.5);
        assert!(read(8.0, &widths[1..]).is_none());
        assert!(read(widths[0], &widths[1..widths.len() - 12]).is_none());
        let short = drawn("A1", 2.4, 2.5);
        assert!(read(short[0], &short[1..]).is_none());
    }
}
