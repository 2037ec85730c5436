//! What the codes of a plate tell of the unit: its serial number and its model. Only what stands there for it is taken; where two
//! disagree or none is named, nothing is.
//!
//! Forms, each after its source: GS1 element strings (GS1 General Specifications, section 3: serial number AI (21), additional
//! product identification AI (240); from memory) with FNC1 or as people read them, in brackets; GS1 Digital Link addresses
//! (`…/01/<GTIN>/21/<serial>`, from memory); messages of ISO/IEC 15434 with data identifiers S and 1P (ANSI MH10.8.2, from
//! memory); addresses with such parameters, lines of `S/N: …`, and JSON objects, by the usual names, no source; and a text that is
//! nothing but a number, where it is the only one.

use std::collections::BTreeMap;

use serde_json::Value;

use crate::procedure::pack::{MODEL_ROLE, Quantity, Reading};
use crate::visit::event::{PhotoCode, Symbology};
use crate::visit::state::Run;

mod element;

/// A serial number or model of more characters is none.
const VALUE_MAX: usize = 40;
/// How deep a JSON object is looked into.
const JSON_DEPTH_MAX: u32 = 3;

/// What a plate tells.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Plate {
    /// The serial number; none where it is not named, or named differently in two places.
    pub serial: Option<String>,
    /// The model, in the same way.
    pub model: Option<String>,
}

/// Are two writings of one number? Only letters and digits count: plates write the rest as they like.
#[must_use]
pub fn alike(one: &str, other: &str) -> bool {
    bare(one) == bare(other)
}

fn bare(text: &str) -> String {
    text.chars().filter(|sign| sign.is_alphanumeric()).flat_map(char::to_uppercase).collect()
}

/// What the codes of a plate tell together.
#[must_use]
pub fn told(codes: &[PhotoCode]) -> Plate {
    let whole = || codes.iter().filter(|code| !code.cut);
    let named: Vec<Named> = whole().map(named).collect();
    let serials = || named.iter().flat_map(|named| named.serials.iter().map(String::as_str));
    let models = || named.iter().flat_map(|named| named.models.iter().map(String::as_str));
    let serial = if serials().next().is_some() {
        one_of(serials())
    } else {
        one_of(whole().filter(|code| is_plain_number(code)).map(|code| code.text.trim()))
    };
    Plate { serial, model: one_of(models()) }
}

/// What the newest photographs of a reading's plates tell for it; none where they disagree.
#[must_use]
pub fn offered(run: &Run, reading: &Reading) -> Option<String> {
    if reading.quantity != Quantity::Text {
        return None;
    }
    let newest =
        |slot| run.photos.get(slot).and_then(|photos| photos.iter().rfind(|photo| !photo.facts.codes.is_empty()));
    let plates: Vec<Plate> = reading.plates.iter().filter_map(newest).map(|photo| told(&photo.facts.codes)).collect();
    let of_model = reading.role.as_deref() == Some(MODEL_ROLE);
    one_of(plates.iter().filter_map(|plate| if of_model { plate.model.as_deref() } else { plate.serial.as_deref() }))
}

/// The one value that all of them write; none where there is none or they differ.
fn one_of<'a>(values: impl Iterator<Item = &'a str>) -> Option<String> {
    let distinct: BTreeMap<String, &str> = values.filter_map(value).map(|value| (bare(value), value)).collect();
    let mut distinct = distinct.into_values();
    let one = distinct.next()?;
    distinct.next().is_none().then(|| one.to_owned())
}

/// A value that can be shown and typed.
fn value(text: &str) -> Option<&str> {
    let text = text.trim();
    let length = text.chars().count();
    let written =
        |c: char| c.is_alphanumeric() || matches!(c, ' ' | '-' | '_' | '.' | '/' | '+' | '#' | '(' | ')' | '*' | ':');
    ((1..=VALUE_MAX).contains(&length) && text.chars().all(written) && text.chars().any(char::is_alphanumeric))
        .then_some(text)
}

/// What one code names.
#[derive(Debug, Default)]
struct Named {
    serials: Vec<String>,
    models: Vec<String>,
}

impl Named {
    /// Takes a value under a name that people use for it.
    fn take(&mut self, key: &str, value: &str) {
        if value.trim().is_empty() {
            return;
        }
        match key_of(key) {
            Some(Key::Serial) => self.serials.push(value.to_owned()),
            Some(Key::Model) => self.models.push(value.to_owned()),
            None => {}
        }
    }
}

#[derive(Clone, Copy)]
enum Key {
    Serial,
    Model,
}

/// The usual names, letters only, in upper case. Common practice, no source.
const SERIAL_KEYS: [&str; 18] = [
    "SN",
    "SNO",
    "SER",
    "SERNO",
    "SERNR",
    "SERIAL",
    "SERIALNO",
    "SERIALNR",
    "SERIALNUM",
    "SERIALNUMBER",
    "SRNO",
    "NSERIE",
    "NOSERIE",
    "NROSERIE",
    "NUMSERIE",
    "NÚMERODESERIE",
    "NUMERODESERIE",
    "SERIENNUMMER",
];
const MODEL_KEYS: [&str; 11] =
    ["MODEL", "MODELNO", "MODELNR", "MODELNUMBER", "MODELNAME", "MDL", "MOD", "MODELO", "TYPE", "TYP", "TIPO"];

fn key_of(key: &str) -> Option<Key> {
    let key: String = key.chars().filter(|c| c.is_alphabetic()).flat_map(char::to_uppercase).collect();
    // '№' and 'º' of 'N.º de serie' are letters to some; the words between say nothing.
    let key = key.replace('º', "");
    let key = if key == "NDESERIE" { "NSERIE" } else { key.as_str() };
    if SERIAL_KEYS.contains(&key) { Some(Key::Serial) } else { MODEL_KEYS.contains(&key).then_some(Key::Model) }
}

fn named(code: &PhotoCode) -> Named {
    let text = code.text.trim();
    let mut named = Named::default();
    if code.symbology == Symbology::Ean13 {
        // It names a product, never one unit of it.
    } else if code.symbology.is_gs1() || text.starts_with('(') {
        element::take(&code.text, &mut named);
    } else if let Some(message) = text.strip_prefix("[)>\u{1e}") {
        message_06(message, &mut named);
    } else if let Some(address) = address(text) {
        parameters(address, &mut named);
    } else if text.starts_with('{') {
        if let Ok(object) = serde_json::from_str(text) {
            members(&object, &mut named, JSON_DEPTH_MAX);
        }
    } else {
        lines(text, &mut named);
    }
    named
}

/// Fields of a message of ISO/IEC 15434 in format 06.
fn message_06(message: &str, named: &mut Named) {
    let Some(fields) = message.strip_prefix("06\u{1d}") else { return };
    let fields = fields.split('\u{1e}').next().unwrap_or_default();
    for field in fields.split('\u{1d}') {
        if let Some(model) = field.strip_prefix("1P") {
            named.take("model", model);
        } else if let Some(serial) = field.strip_prefix('S') {
            named.take("serial", serial);
        }
    }
}

/// What follows the scheme of an address of the web.
fn address(text: &str) -> Option<&str> {
    let (scheme, rest) = text.split_once("://")?;
    (scheme.eq_ignore_ascii_case("https") || scheme.eq_ignore_ascii_case("http")).then_some(rest)
}

/// The parameters of an address, and the steps of a GS1 Digital Link.
fn parameters(address: &str, named: &mut Named) {
    let (address, fragment) = address.split_once('#').unwrap_or((address, ""));
    let (path, query) = address.split_once('?').unwrap_or((address, ""));
    let steps: Vec<&str> = path.split('/').skip(1).collect();
    let is_gtin = |gtin: &str| gtin.len() == 14 && gtin.bytes().all(|byte| byte.is_ascii_digit());
    if let Some(at) = steps.windows(2).position(|pair| matches!(pair, ["01", gtin] if is_gtin(gtin))) {
        let after = steps.get(at + 2..).unwrap_or_default();
        for pair in after.chunks_exact(2) {
            if let ["21", serial] = pair {
                named.serials.extend(decoded(serial));
            }
        }
    }
    for parameter in query.split('&').chain(fragment.split('&')) {
        if let Some((key, value)) = parameter.split_once('=')
            && let Some(value) = decoded(value)
        {
            named.take(key, &value);
        }
    }
}

/// Percent-encoding undone (RFC 3986, 2.1), and '+' for a space; none where it is broken.
fn decoded(text: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(text.len());
    let mut rest = text.bytes();
    while let Some(byte) = rest.next() {
        bytes.push(match byte {
            b'+' => b' ',
            b'%' => {
                let digit = |byte: Option<u8>| char::from(byte?).to_digit(16);
                (digit(rest.next())? * 16 + digit(rest.next())?) as u8
            }
            byte => byte,
        });
    }
    String::from_utf8(bytes).ok()
}

fn members(value: &Value, named: &mut Named, depth: u32) {
    let Value::Object(object) = value else { return };
    for (key, value) in object {
        match value {
            Value::String(text) => named.take(key, text),
            Value::Number(number) if number.is_u64() => named.take(key, &number.to_string()),
            Value::Object(_) if depth > 1 => members(value, named, depth - 1),
            _ => {}
        }
    }
}

/// Lines of `S/N: …`, `MODEL=…`, `SN 123`; a plain text has none.
fn lines(text: &str, named: &mut Named) {
    for line in text.split(['\n', '\r', ';', '|', '\t', ',', '\u{1d}', '\u{1e}']) {
        let line = line.trim();
        let parted = line.split_once([':', '=']).or_else(|| line.split_once(' '));
        if let Some((key, value)) = parted {
            named.take(key, value);
        }
    }
}

/// A text that can be nothing but a serial number: digits in it, one word, no GTIN, no day, no refrigerant, no value with its unit.
fn is_plain_number(code: &PhotoCode) -> bool {
    let text = code.text.trim();
    let digits = text.chars().filter(char::is_ascii_digit).count();
    let letters = text.chars().filter(char::is_ascii_alphabetic).count();
    let written = text.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '.' | '/' | '_'));
    let sized = (5..=VALUE_MAX).contains(&text.len()) && digits >= 3;
    let only_digits = digits == text.len();
    let is_gtin = only_digits && matches!(text.len(), 8 | 12 | 13 | 14) && coilside_picture::is_gtin(text);
    // Digits and signs alone, no letter: a day, a telephone number, a version.
    let is_day = letters == 0 && !only_digits;
    // One letter and up to four digits, 'R600a': a refrigerant; digits before letters: '230V', '50HZ'.
    let value = text.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.');
    let is_value = value.len() <= 3 && value.chars().all(|c| c.is_ascii_alphabetic()) && letters > 0;
    let is_refrigerant = text.starts_with(['R', 'r']) && digits <= 4 && text.len() <= 8;
    code.symbology != Symbology::Ean13
        && !code.symbology.is_gs1()
        && sized
        && written
        && !(is_gtin || is_day || is_value || is_refrigerant)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn code(symbology: Symbology, text: &str) -> PhotoCode {
        PhotoCode { symbology, text: text.into(), cut: false }
    }

    fn of(codes: &[(Symbology, &str)]) -> (Option<String>, Option<String>) {
        let codes: Vec<PhotoCode> = codes.iter().map(|(symbology, text)| code(*symbology, text)).collect();
        let Plate { serial, model } = told(&codes);
        (serial, model)
    }

    fn qr(text: &str) -> (Option<String>, Option<String>) {
        of(&[(Symbology::Qr, text)])
    }

    fn some(serial: &str, model: &str) -> (Option<String>, Option<String>) {
        let given = |text: &str| (!text.is_empty()).then(|| text.to_owned());
        (given(serial), given(model))
    }

    #[test]
    fn every_form_tells_serial_number_and_model() {
        for text in [
            "S/N: TW9-20417\nMODEL: Add-On 9",
            "Model=Add-On 9;Serial No.=TW9-20417",
            "SN TW9-20417, TYPE:Add-On 9, 230 V",
            "Nº de serie: TW9-20417\r\nModelo: Add-On 9",
            "https://units.example/u?sn=TW9-20417&model=Add-On%209",
            "HTTP://UNITS.EXAMPLE/?MODEL=Add-On+9&SERIAL=TW9-20417#top",
            r#"{"device":{"serialNumber":"TW9-20417","model":"Add-On 9"},"v":1}"#,
            "[)>\u{1e}06\u{1d}1PAdd-On 9\u{1d}STW9-20417\u{1e}\u{4}",
        ] {
            assert_eq!(qr(text), some("TW9-20417", "Add-On 9"), "{text}");
        }
        assert_eq!(qr("https://id.example/01/09506000134352/21/TW9-20417?x=1"), some("TW9-20417", ""));
        assert_eq!(qr(r#"{"sn":4711001}"#), some("4711001", ""));
    }

    #[test]
    fn a_plain_number_is_taken_only_where_it_is_the_only_one() {
        assert_eq!(of(&[(Symbology::Code128, "TW9-20417")]), some("TW9-20417", ""));
        assert_eq!(of(&[(Symbology::Code39, "TW9-20417"), (Symbology::Qr, "tw9 20417")]), some("TW9-20417", ""));
        assert_eq!(of(&[(Symbology::Code128, "TW9-20417"), (Symbology::Code128, "AO9-00012")]), some("", ""));
        assert_eq!(of(&[(Symbology::Code128, "AO9-00012"), (Symbology::Qr, "SN:TW9-20417")]), some("TW9-20417", ""));
    }

    #[test]
    fn what_is_no_serial_number_is_not_offered_as_one() {
        for text in [
            "R290",
            "R-600a",
            "R1234yf",
            "230V",
            "50Hz",
            "1.25MPa",
            "2026-03-01",
            "12/05/2024",
            "Tarnwick",
            "4006381333931",
            "00012345678905",
            "Add-On 9",
            "https://units.example/manual.pdf",
            "",
            "****",
            "{",
            "{\"sn\":[1,2]}",
            "sn:",
            "S/N:\u{202e}714-9WT",
        ] {
            assert_eq!(qr(text), some("", ""), "{text}");
        }
        assert_eq!(of(&[(Symbology::Ean13, "4006381333931")]), some("", ""));
        assert_eq!(qr(&format!("SN:{}", "9".repeat(41))), some("", ""), "too long");
    }

    #[test]
    fn two_serial_numbers_are_none_and_two_writings_of_one_are_one() {
        assert_eq!(qr("SN:TW9-20417\nSN:TW9-20418"), some("", ""));
        assert!(of(&[(Symbology::Qr, "SN:TW9-20417"), (Symbology::DataMatrix, "S/N=tw9 20417")]).0.is_some());
        let cut = PhotoCode { cut: true, ..code(Symbology::Qr, "SN:TW9-2041") };
        assert_eq!(told(&[cut]), Plate::default(), "what is cut off tells nothing");
    }
}
