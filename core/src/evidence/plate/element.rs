//! GS1 element strings. Source: GS1 General Specifications, sections 3 and 7.8 (application identifiers, which of them have a fixed
//! length, and the separator behind the others), from memory.

use super::Named;

const SEPARATOR: char = '\u{1d}';
/// Serial number.
const SERIAL: &str = "21";
/// Additional product identification, assigned by the maker.
const MODEL: &str = "240";

/// Takes what the elements name; nothing where one of them is not understood, for then the rest may be anything.
pub(super) fn take(text: &str, named: &mut Named) {
    let text = text.trim_matches([SEPARATOR, ' ']);
    let elements = if text.starts_with('(') { bracketed(text) } else { plain(text) };
    for (identifier, value) in elements.unwrap_or_default() {
        match identifier {
            SERIAL => named.serials.push(value.to_owned()),
            MODEL => named.models.push(value.to_owned()),
            _ => {}
        }
    }
}

type Elements<'a> = Vec<(&'a str, &'a str)>;

/// `(01)09506000134352(21)12345`: a value may have brackets of its own, but none around two to four digits.
fn bracketed(text: &str) -> Option<Elements<'_>> {
    let mut elements = Elements::new();
    let mut rest = text;
    while !rest.is_empty() {
        let (identifier, behind) = opened(rest)?;
        let (digits, length) = identifier_of(identifier)?;
        let end = behind.char_indices().find(|(at, _)| behind.get(*at..).and_then(opened).is_some());
        let (value, after) = behind.split_at_checked(end.map_or(behind.len(), |(at, _)| at))?;
        let value = value.trim_end_matches(SEPARATOR);
        if digits != identifier || !fits(value, length) {
            return None;
        }
        elements.push((identifier, value));
        rest = after;
    }
    Some(elements)
}

/// An identifier in brackets at the beginning, and what is behind it.
fn opened(text: &str) -> Option<(&str, &str)> {
    let (identifier, behind) = text.strip_prefix('(')?.split_once(')')?;
    let is_one = (2..=4).contains(&identifier.len()) && identifier.bytes().all(|byte| byte.is_ascii_digit());
    is_one.then_some((identifier, behind))
}

/// Identifiers and values without a sign between, but the separator behind those of any length.
fn plain(text: &str) -> Option<Elements<'_>> {
    let mut elements = Elements::new();
    let mut rest = text;
    while !rest.is_empty() {
        let (identifier, length) = identifier_of(rest)?;
        let behind = rest.get(identifier.len()..)?;
        let end = match length {
            Length::Is(length) => length,
            Length::AtMost(_) => behind.find(SEPARATOR).unwrap_or(behind.len()),
        };
        let (value, after) = behind.split_at_checked(end)?;
        if !fits(value, length) {
            return None;
        }
        elements.push((identifier, value));
        rest = after.strip_prefix(SEPARATOR).unwrap_or(after);
    }
    Some(elements)
}

/// How long a value is, characters.
#[derive(Clone, Copy)]
enum Length {
    Is(usize),
    AtMost(usize),
}

fn fits(value: &str, length: Length) -> bool {
    let count = value.chars().count();
    let (fits, digits) = match length {
        Length::Is(length) => (count == length, true),
        Length::AtMost(most) => ((1..=most).contains(&count), false),
    };
    fits && (!digits || value.bytes().all(|byte| byte.is_ascii_digit())) && !value.contains(SEPARATOR)
}

/// The identifier at the beginning, and how long its value is. Only those that a plate may have: none for any other.
fn identifier_of(text: &str) -> Option<(&str, Length)> {
    let long = |digits: usize, length: Length| Some((text.get(..digits)?, length));
    match text.get(..2)? {
        "00" => long(2, Length::Is(18)),
        "01" | "02" => long(2, Length::Is(14)),
        "11" | "12" | "13" | "15" | "16" | "17" => long(2, Length::Is(6)),
        "20" => long(2, Length::Is(2)),
        "10" | "21" | "22" => long(2, Length::AtMost(20)),
        "23" | "24" | "25" => match text.get(..3)? {
            "235" => long(3, Length::AtMost(28)),
            "240" | "241" | "250" | "251" => long(3, Length::AtMost(30)),
            "242" => long(3, Length::AtMost(6)),
            "243" | "254" => long(3, Length::AtMost(20)),
            "253" => long(3, Length::AtMost(30)),
            _ => None,
        },
        "30" | "37" => long(2, Length::AtMost(8)),
        "31" | "32" | "33" | "34" | "35" | "36" => long(4, Length::Is(6)),
        "40" => long(3, Length::AtMost(30)),
        "41" => long(3, Length::Is(13)),
        "90" => long(2, Length::AtMost(30)),
        "91" | "92" | "93" | "94" | "95" | "96" | "97" | "98" | "99" => long(2, Length::AtMost(90)),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(text: &str) -> (Vec<String>, Vec<String>) {
        let mut named = Named::default();
        take(text, &mut named);
        (named.serials, named.models)
    }

    #[test]
    fn the_serial_number_is_found_among_fields_of_fixed_and_of_any_length() {
        let one = |serial: &str, model: &[&str]| {
            (vec![serial.to_owned()], model.iter().map(|model| (*model).to_owned()).collect::<Vec<String>>())
        };
        // GTIN 09506000134352 is the one that the specifications use in examples.
        assert_eq!(told("010950600013435221TW9-20417"), one("TW9-20417", &[]));
        assert_eq!(told("01095060001343521125030121TW9-20417\u{1d}240Add-On 9"), one("TW9-20417", &["Add-On 9"]));
        assert_eq!(told("21TW9-20417\u{1d}10LOT 7\u{1d}3103001750"), one("TW9-20417", &[]));
        assert_eq!(told("(01)09506000134352(21)TW9-20417(240)Add-On 9"), one("TW9-20417", &["Add-On 9"]));
        assert_eq!(told("(21)TW(9)-20417"), one("TW(9)-20417", &[]));
    }

    #[test]
    fn what_is_not_understood_tells_nothing_at_all() {
        for text in [
            "",
            "21",
            "0109506000134352",
            "01123421TW9",
            "(21)",
            "(21)TW9(99",
            "7721TW9-20417",
            "21TW9-20417\u{1d}88x",
            "(5)21TW9",
        ] {
            let (serials, models) = told(text);
            if text == "(21)TW9(99" {
                assert_eq!(serials, ["TW9(99"], "brackets that open nothing belong to the value");
            } else {
                assert!(serials.is_empty() && models.is_empty(), "{text}: {serials:?}");
            }
        }
        assert_eq!(told(&format!("21{}", "9".repeat(21))).0, Vec::<String>::new(), "20 characters at most");
    }
}
