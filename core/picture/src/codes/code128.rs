//! Code 128 and GS1-128. Source: ISO/IEC 15417 and the GS1 General Specifications, 5.4, both from memory; the codes of other
//! programs are read in `tests/python/test_codes.py`.

use super::Symbology;
use super::linear::Read;

/// Widths in modules of bar, space, bar, space, bar, space, by value. The last is the stop, which a bar of two modules follows.
const PATTERNS: [u32; 107] = [
    212_222, 222_122, 222_221, 121_223, 121_322, 131_222, 122_213, 122_312, 132_212, 221_213, 221_312, 231_212,
    112_232, 122_132, 122_231, 113_222, 123_122, 123_221, 223_211, 221_132, 221_231, 213_212, 223_112, 312_131,
    311_222, 321_122, 321_221, 312_212, 322_112, 322_211, 212_123, 212_321, 232_121, 111_323, 131_123, 131_321,
    112_313, 132_113, 132_311, 211_313, 231_113, 231_311, 112_133, 112_331, 132_131, 113_123, 113_321, 133_121,
    313_121, 211_331, 231_131, 213_113, 213_311, 213_131, 311_123, 311_321, 331_121, 312_113, 312_311, 332_111,
    314_111, 221_411, 431_111, 111_224, 111_422, 121_124, 121_421, 141_122, 141_221, 112_214, 112_412, 122_114,
    122_411, 142_112, 142_211, 241_211, 221_114, 413_111, 241_112, 134_111, 111_242, 121_142, 121_241, 114_212,
    124_112, 124_211, 411_212, 421_112, 421_211, 212_141, 214_121, 412_121, 111_143, 111_341, 131_141, 114_113,
    114_311, 411_113, 411_311, 113_141, 114_131, 311_141, 411_131, 211_412, 211_214, 211_232, 233_111,
];
const FNC3: u32 = 96;
const FNC2: u32 = 97;
const SHIFT: u32 = 98;
const CODE_C: u32 = 99;
const CODE_B: u32 = 100;
const CODE_A: u32 = 101;
const FNC1: u32 = 102;
const START_A: u32 = 103;
const START_C: u32 = 105;
const STOP: u32 = 106;
/// Modules of a symbol.
const MODULES: f32 = 11.0;
/// The quiet zone is ten modules by the standard; a reader that asks for half of that reads what was printed too close.
const QUIET_MODULES: f32 = 5.0;
/// Symbols of one code are as wide as each other, but for perspective.
const WIDTH_DIFFERS: f32 = 0.2;
/// A code of more symbols than this is none.
const SYMBOLS_MOST: usize = 120;
/// What separates fields where FNC1 stands within a code: ASCII's group separator.
const GROUP_SEPARATOR: char = '\u{1d}';

/// Reads a code whose first bar is the first of `widths`; `before` is what lies before it.
pub(super) fn read(before: f32, widths: &[f32]) -> Option<Read> {
    let mut module = module_of(widths)?;
    if before < QUIET_MODULES * module {
        return None;
    }
    let start = value(widths)?;
    if !(START_A..=START_C).contains(&start) {
        return None;
    }
    let mut values = vec![start];
    let mut at = 6;
    loop {
        let rest = widths.get(at..)?;
        let here = module_of(rest)?;
        if (here - module).abs() > WIDTH_DIFFERS * module {
            return None;
        }
        module = here;
        let value = value(rest)?;
        at += 6;
        if value == STOP {
            break;
        }
        values.push(value);
        if values.len() > SYMBOLS_MOST {
            return None;
        }
    }
    let (last, behind) = (*widths.get(at)?, *widths.get(at + 1)?);
    if last > 3.0 * module || last < module || behind < QUIET_MODULES * module {
        return None;
    }
    let (symbology, text) = text_of(&checked(&values)?)?;
    Some(Read { symbology, text, elements: at + 1 })
}

/// A module's width in the symbol that begins here.
fn module_of(widths: &[f32]) -> Option<f32> {
    let sum: f32 = widths.get(..6)?.iter().sum();
    (sum > MODULES * 0.7).then_some(sum / MODULES)
}

/// The value of the symbol that begins here, by the distances from edge to like edge, which ink that spreads leaves alone, and by
/// the sum of its bars.
fn value(widths: &[f32]) -> Option<u32> {
    let widths = widths.first_chunk::<6>()?;
    let module = module_of(widths)?;
    let digits = |pattern: u32| [100_000, 10_000, 1000, 100, 10, 1].map(|place| (pattern / place % 10) as f32);
    let edges = |w: &[f32; 6]| [w[0] + w[1], w[1] + w[2], w[2] + w[3], w[3] + w[4]];
    let bars = |w: &[f32; 6]| w[0] + w[2] + w[4];
    let (seen, seen_bars) = (edges(widths).map(|edge| edge / module), bars(widths) / module);
    let fits = |pattern: &u32| {
        let pattern = digits(*pattern);
        let near = |(one, other): (f32, f32)| (one - other).abs() < 0.5;
        seen.into_iter().zip(edges(&pattern)).all(near) && (seen_bars - bars(&pattern)).abs() < 1.75
    };
    let mut fitting = PATTERNS.iter().zip(0..).filter(|(pattern, _)| fits(pattern));
    let (_, value) = fitting.next()?;
    fitting.next().is_none().then_some(value)
}

/// The values between start and check character, the start first, where the check character holds.
fn checked(values: &[u32]) -> Option<Vec<u32>> {
    let (check, values) = values.split_last()?;
    let (start, data) = values.split_first()?;
    let sum: u32 = data.iter().zip(1..).map(|(value, weight)| value * weight).sum();
    ((start + sum) % 103 == *check && !data.is_empty()).then(|| values.to_vec())
}

/// The characters. None where they use FNC4, whose characters beyond ASCII no plate has and readers differ about.
fn text_of(values: &[u32]) -> Option<(Symbology, String)> {
    let (start, data) = values.split_first()?;
    // A, B, C as the values that switch to them.
    let mut set = CODE_A + START_A - start;
    let mut shifted = false;
    let mut symbology = Symbology::Code128;
    let mut text = String::new();
    for (at, value) in data.iter().copied().enumerate() {
        let now = match (shifted, set) {
            (true, CODE_A) => CODE_B,
            (true, _) => CODE_A,
            (false, set) => set,
        };
        shifted = false;
        match (now, value) {
            (_, FNC1) if at == 0 => symbology = Symbology::Gs1128,
            (_, FNC1) => text.push(GROUP_SEPARATOR),
            (CODE_C, 0..=99) => text.push_str(&format!("{value:02}")),
            (CODE_A, 0..=95) => text.push(char::from_u32(if value < 64 { value + 32 } else { value - 64 })?),
            (CODE_B, 0..=95) => text.push(char::from_u32(value + 32)?),
            (CODE_A | CODE_B, SHIFT) => shifted = true,
            (CODE_A | CODE_B, FNC2 | FNC3) => {}
            (now, CODE_A | CODE_B | CODE_C) if now != value => set = value,
            _ => return None,
        }
    }
    (!text.is_empty()).then_some((symbology, text))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Widths of a code of these values, check character and quiet zones and all, a module so many pixels wide.
    fn drawn(values: &[u32], module: f32) -> Vec<f32> {
        let sum: u32 = values.iter().enumerate().map(|(at, value)| value * (at as u32).max(1)).sum();
        let mut widths = vec![10.0 * module];
        for value in values.iter().chain([&(sum % 103), &STOP]) {
            let pattern = PATTERNS[*value as usize].to_string();
            widths.extend(pattern.bytes().map(|digit| f32::from(digit - b'0') * module));
        }
        widths.extend([2.0 * module, 10.0 * module]);
        widths
    }

    fn read_back(values: &[u32]) -> Option<(Symbology, String)> {
        let widths = drawn(values, 2.3);
        read(widths[0], &widths[1..]).map(|read| (read.symbology, read.text))
    }

    #[test]
    fn every_pattern_is_eleven_modules_and_has_an_even_number_of_dark_ones() {
        // ISO/IEC 15417, 4.3.2, from memory.
        let mut seen = std::collections::BTreeSet::new();
        for pattern in PATTERNS {
            let digits: Vec<u32> = pattern.to_string().bytes().map(|digit| u32::from(digit - b'0')).collect();
            assert_eq!((digits.len(), digits.iter().sum::<u32>()), (6, 11), "{pattern}");
            assert!((digits[0] + digits[2] + digits[4]).is_multiple_of(2), "{pattern}");
            assert!(seen.insert(pattern), "{pattern} stands twice");
        }
    }

    #[test]
    fn code_sets_change_shift_and_separate_as_the_standard_says() {
        let text = |symbology, text: &str| Some((symbology, text.to_owned()));
        // 'PJJ123C' in set A with check character 54: the example that descriptions of the code use, from memory.
        assert!(checked(&[103, 48, 42, 42, 17, 18, 19, 35, 54]).is_some());
        assert_eq!(read_back(&[103, 48, 42, 42, 17, 18, 19, 35]), text(Symbology::Code128, "PJJ123C"));
        assert_eq!(read_back(&[105, 12, 34, 100, 33]), text(Symbology::Code128, "1234A"));
        assert_eq!(read_back(&[105, 102, 21, 12, 34, 102, 10, 99]), text(Symbology::Gs1128, "211234\u{1d}1099"));
        assert_eq!(read_back(&[104, 33, 98, 65, 34]), text(Symbology::Code128, "A\u{1}B"), "one character of set A");
    }

    #[test]
    fn a_wrong_check_character_a_cut_code_and_a_crowded_one_are_not_read() {
        let mut widths = drawn(&[104, 48, 42, 42, 17], 2.0);
        assert!(read(widths[0], &widths[1..]).is_some());
        assert!(read(4.0, &widths[1..]).is_none(), "no quiet zone");
        assert!(read(widths[0], &widths[1..widths.len() - 2]).is_none(), "no end");
        // The third symbol as another one: 10 in place of 42.
        widths[13..19].copy_from_slice(&[4.0, 4.0, 2.0, 6.0, 2.0, 4.0]);
        assert!(read(widths[0], &widths[1..]).is_none());
        assert_eq!(read_back(&[104, 100, 33]), None, "FNC4");
    }
}
