//! A document of TOML with the place of everything in it.

use std::collections::BTreeMap;
use std::ops::Range;

use toml::de::{DeTable, DeValue};

use super::fault::{Sink, Spot};
use super::{TOML, one_line};

/// A parsed document.
pub(super) struct Document<'a> {
    text: &'a str,
    table: DeTable<'a>,
    /// Where each value stands, by its path: `phase[2].step[0].sets[1]`.
    spans: BTreeMap<String, Range<usize>>,
}

impl<'a> Document<'a> {
    /// Parses; every error of syntax is a fault, and then there is no document.
    pub(super) fn parse(text: &'a str, sink: &mut Sink) -> Option<Document<'a>> {
        let (table, errors) = DeTable::parse_recoverable(text);
        for error in &errors {
            let spot = error.span().map(|span| Spot::of(text, span.start));
            sink.fault(TOML, spot, "toml-malformed", vec![("detail", one_line(error.message()))]);
        }
        if !errors.is_empty() {
            return None;
        }
        let table = table.into_inner();
        let mut spans = BTreeMap::new();
        collect(&table, "", &mut spans);
        Some(Document { text, table, spans })
    }

    pub(super) const fn text(&self) -> &'a str {
        self.text
    }

    pub(super) const fn table(&self) -> &DeTable<'a> {
        &self.table
    }

    /// The text of a field at the top, empty where there is none.
    pub(super) fn text_of(&self, field: &str) -> String {
        let found = self.table.iter().find(|(key, _)| key.get_ref() == field);
        found.and_then(|(_, value)| value.get_ref().as_str()).unwrap_or_default().to_owned()
    }

    /// Where a path stands; where the document leaves it out, where that stands which should have it.
    pub(super) fn spot(&self, path: &str) -> Option<Spot> {
        let mut path = path;
        loop {
            if let Some(span) = self.spans.get(path) {
                return Some(Spot::of(self.text, span.start));
            }
            path = path.get(..path.rfind(['.', '['])?)?;
        }
    }
}

fn collect(table: &DeTable<'_>, at: &str, spans: &mut BTreeMap<String, Range<usize>>) {
    for (key, value) in table {
        let path = if at.is_empty() { key.get_ref().to_string() } else { format!("{at}.{}", key.get_ref()) };
        collect_value(value.get_ref(), &path, spans);
        spans.insert(path, value.span());
    }
}

fn collect_value(value: &DeValue<'_>, path: &str, spans: &mut BTreeMap<String, Range<usize>>) {
    match value {
        DeValue::Table(table) => collect(table, path, spans),
        DeValue::Array(values) => {
            for (number, value) in values.iter().enumerate() {
                let path = format!("{path}[{number}]");
                collect_value(value.get_ref(), &path, spans);
                spans.insert(path, value.span());
            }
        }
        _ => {}
    }
}
