//! EAN-13, and UPC-A as one that begins with 0. Source: ISO/IEC 15420, from memory; the codes of other programs are read in
//! `tests/python/test_codes.py`.

use super::Symbology;
use super::linear::Read;

/// Widths in modules of a digit of set A, and of set C with colours changed. Set B is the same from behind.
const DIGITS: [[f32; 4]; 10] = [
    [3.0, 2.0, 1.0, 1.0],
    [2.0, 2.0, 2.0, 1.0],
    [2.0, 1.0, 2.0, 2.0],
    [1.0, 4.0, 1.0, 1.0],
    [1.0, 1.0, 3.0, 2.0],
    [1.0, 2.0, 3.0, 1.0],
    [1.0, 1.0, 1.0, 4.0],
    [1.0, 3.0, 1.0, 2.0],
    [1.0, 2.0, 1.0, 3.0],
    [3.0, 1.0, 1.0, 2.0],
];
/// Which of the six digits on the left stand in set B, by the digit that comes before them all: the first is the highest bit.
const IN_SET_B: [u8; 10] =
    [0b00_0000, 0b00_1011, 0b00_1101, 0b00_1110, 0b01_0011, 0b01_1001, 0b01_1100, 0b01_0101, 0b01_0110, 0b01_1010];
/// Modules of a whole code, and of a digit.
const MODULES: f32 = 95.0;
const DIGIT_MODULES: f32 = 7.0;
/// Elements of a whole code: three, six digits, five, six digits, three.
const ELEMENTS: usize = 3 + 24 + 5 + 24 + 3;
/// The quiet zone is 11 modules on the left and 7 on the right by the standard.
const QUIET_MODULES: f32 = 4.0;
/// What a digit's elements may differ from its own by, squared and summed, modules.
const DIFFERS_MOST: f32 = 0.9;
/// The next best digit must differ by so much more.
const CLEARER_BY: f32 = 0.25;

/// Reads a code whose first bar is the first of `widths`; `before` is what lies before it.
pub(super) fn read(before: f32, widths: &[f32]) -> Option<Read> {
    // Before all else, for most of what is asked is none: the guard is three modules wide.
    if before < QUIET_MODULES * 0.2 * widths.get(..3)?.iter().sum::<f32>() {
        return None;
    }
    let code = widths.get(..ELEMENTS)?;
    let module = code.iter().sum::<f32>() / MODULES;
    let quiet = QUIET_MODULES * module;
    if module < 0.7 || before < quiet || *widths.get(ELEMENTS)? < quiet {
        return None;
    }
    let single = |elements: &[f32]| elements.iter().all(|width| (0.4 * module..=1.7 * module).contains(width));
    let [start, middle, end] = [code.get(..3)?, code.get(27..32)?, code.get(56..)?];
    if !(single(start) && single(middle) && single(end)) {
        return None;
    }
    let mut digits = Vec::with_capacity(13);
    let mut set_b = 0_u8;
    for digit in code.get(3..27)?.chunks_exact(4) {
        let (value, from_behind) = digit_of(digit, true)?;
        digits.push(value);
        set_b = set_b << 1 | u8::from(from_behind);
    }
    for digit in code.get(32..56)?.chunks_exact(4) {
        digits.push(digit_of(digit, false)?.0);
    }
    let first = IN_SET_B.iter().position(|known| *known == set_b)?;
    digits.insert(0, first as u32);
    let text: String = digits.iter().filter_map(|digit| char::from_digit(*digit, 10)).collect();
    is_gtin(&text).then_some(Read { symbology: Symbology::Ean13, text, elements: ELEMENTS })
}

/// The digit, and whether it stands in set B.
fn digit_of(widths: &[f32], may_be_b: bool) -> Option<(u32, bool)> {
    let widths = widths.first_chunk::<4>()?;
    let module = widths.iter().sum::<f32>() / DIGIT_MODULES;
    let differs = |pattern: [f32; 4]| -> f32 {
        widths.iter().zip(pattern).map(|(width, modules)| (width / module - modules) * (width / module - modules)).sum()
    };
    let behind = |[a, b, c, d]: [f32; 4]| [d, c, b, a];
    let of_a = DIGITS.iter().zip(0..).map(|(pattern, digit)| (differs(*pattern), digit, false));
    let of_b = DIGITS.iter().zip(0..).map(|(pattern, digit)| (differs(behind(*pattern)), digit, true));
    let mut all: Vec<(f32, u32, bool)> = of_a.chain(of_b.filter(|_| may_be_b)).collect();
    all.sort_unstable_by(|one, other| one.0.total_cmp(&other.0));
    let [(best, digit, in_b), (next, ..)] = *all.first_chunk::<2>()?;
    (best < DIFFERS_MOST && next > best + CLEARER_BY).then_some((digit, in_b))
}

/// Does the last digit of a GTIN hold? GS1 General Specifications, 7.9: weights 3 and 1 in turn, from the right.
#[must_use]
pub fn is_gtin(digits: &str) -> bool {
    let sum: Option<u32> =
        digits.chars().rev().zip([1, 3].into_iter().cycle()).map(|(digit, by)| Some(digit.to_digit(10)? * by)).sum();
    sum.is_some_and(|sum| sum.is_multiple_of(10))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn drawn(text: &str, module: f32) -> Vec<f32> {
        let digits: Vec<usize> = text.chars().map(|digit| digit.to_digit(10).unwrap() as usize).collect();
        let mut modules = vec![11.0, 1.0, 1.0, 1.0];
        for (at, digit) in digits[1..7].iter().enumerate() {
            let mut pattern = DIGITS[*digit];
            if IN_SET_B[digits[0]] >> (5 - at) & 1 == 1 {
                pattern.reverse();
            }
            modules.extend(pattern);
        }
        modules.extend([1.0; 5]);
        digits[7..].iter().for_each(|digit| modules.extend(DIGITS[*digit]));
        modules.extend([1.0, 1.0, 1.0, 7.0]);
        modules.iter().map(|width| width * module).collect()
    }

    #[test]
    fn digits_are_seven_modules_wide_and_codes_are_read_back() {
        assert!(DIGITS.iter().all(|pattern| pattern.iter().sum::<f32>() == DIGIT_MODULES));
        // The example of the GS1 General Specifications, 6291041500213, and one for each first digit.
        for text in
            ["6291041500213", "4006381333931", "0123456789012", "9780201379624", "2012345678903", "5901234123457"]
        {
            assert!(is_gtin(text), "{text}");
            let widths = drawn(text, 2.1);
            assert_eq!(read(widths[0], &widths[1..]).map(|read| read.text), Some(text.into()));
        }
    }

    #[test]
    fn a_wrong_check_digit_is_not_read() {
        let widths = drawn("6291041500214", 2.1);
        assert!(!is_gtin("6291041500214"));
        assert!(read(widths[0], &widths[1..]).is_none());
    }
}
