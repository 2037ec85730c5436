//! The shape of `pack.toml` as data: every table with its fields, what a field holds, and what it says.
//!
//! The reader of packs from outside checks a document against it with line and column, and the JSON Schema for editors
//! is made of it. The types in [`super::pack`] stay what the core works with; a test holds the two together.

mod choices;
mod schema;
mod tables;

pub use choices::{ACTS, CHEMICAL_KINDS, CONDITION_ROLES, FORMS, HAZARDS, QUANTITIES, READING_ROLES, VIEWS};
pub use schema::schema;
pub use tables::{EVERY, PACK};

use crate::visit::fact::Fact;

/// A table of `pack.toml`.
#[derive(Debug)]
pub struct Shape {
    /// Its name in the document, as in `[[reading]]`; `pack` for the whole.
    pub name: &'static str,
    /// What it is.
    pub says: &'static str,
    /// Its fields, in the order in which they are written.
    pub fields: &'static [Field],
}

/// A field of a table.
#[derive(Debug)]
pub struct Field {
    /// Its name.
    pub name: &'static str,
    /// What it holds.
    pub kind: Kind,
    /// The table cannot do without it.
    pub needed: bool,
    /// What it means.
    pub says: &'static str,
}

/// What a field holds.
#[derive(Debug)]
pub enum Kind {
    /// A name: lower-case letters, digits and single hyphens.
    Name,
    /// The name of something that stands elsewhere in the pack.
    NameOf(&'static str),
    /// Three numbers with points between.
    Version,
    /// A whole number from least to most.
    Whole(i64, i64),
    /// `true` or `false`.
    Flag,
    /// A decimal number, written as text.
    Decimal,
    /// Two decimal numbers, the smaller one first.
    Range,
    /// One of a few words.
    OneOf(&'static [&'static str]),
    /// A word of a list that may grow: another one is a matter of advice.
    Role(&'static [&'static str]),
    /// A fact with its value, `loop=water`.
    Holds,
    /// The name of a fact.
    Fact,
    /// A condition with an answer, `coil=coated`.
    When,
    /// A list of such.
    List(&'static Kind),
    /// A table.
    Table(&'static Shape),
    /// Any number of tables; at least so many.
    Tables(&'static Shape, usize),
}

impl Shape {
    /// The field of that name.
    #[must_use]
    pub fn field(&self, name: &str) -> Option<&Field> {
        self.fields.iter().find(|field| field.name == name)
    }

    /// The names of its fields.
    #[must_use]
    pub fn names(&self) -> Vec<&'static str> {
        self.fields.iter().map(|field| field.name).collect()
    }
}

/// Is it a name: `[a-z0-9]+(-[a-z0-9]+)*`?
#[must_use]
pub fn is_name(text: &str) -> bool {
    let part = |part: &str| !part.is_empty() && part.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit());
    text.split('-').all(part)
}

/// The three numbers of a version, `1.2.0`.
#[must_use]
pub fn version(text: &str) -> Option<[u32; 3]> {
    let mut parts = text.split('.').map(|part| {
        let digits = !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
        if digits { part.parse::<u32>().ok() } else { None }
    });
    let numbers = [parts.next()??, parts.next()??, parts.next()??];
    parts.next().is_none().then_some(numbers)
}

/// A decimal number as packs write it: an optional minus, digits, and a point with digits.
#[must_use]
pub fn decimal(text: &str) -> Option<f64> {
    let digits = |part: &str| !part.is_empty() && part.len() <= 12 && part.bytes().all(|byte| byte.is_ascii_digit());
    let plain = text.strip_prefix('-').unwrap_or(text);
    let good = plain.split_once('.').map_or_else(|| digits(plain), |(whole, rest)| digits(whole) && digits(rest));
    if good { text.parse().ok() } else { None }
}

/// Every fact with every value, as packs write it.
#[must_use]
pub fn every_holds() -> Vec<String> {
    let of = |fact: &Fact| fact.values().iter().map(|value| format!("{}={}", fact.name(), value.word())).collect();
    Fact::ALL.iter().flat_map(|fact| -> Vec<String> { of(fact) }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_versions_and_decimals_are_told_from_what_looks_like_them() {
        for (text, is) in
            [("coil", true), ("coil-2", true), ("Coil", false), ("coil--2", false), ("-coil", false), ("", false)]
        {
            assert_eq!(is_name(text), is, "{text}");
        }
        assert_eq!(version("1.20.3"), Some([1, 20, 3]));
        assert!(["1.2", "1.2.3.4", "1.2.x", "v1.2.3", "1..3"].iter().all(|text| version(text).is_none()));
        assert_eq!(decimal("-12.5"), Some(-12.5));
        assert!(["1,5", "1e3", ".5", "5.", "", "-", "NaN"].iter().all(|text| decimal(text).is_none()));
        assert!(version("1.10.0") > version("1.9.9"));
    }
}
