//! The document against the shape: what each field may hold, all of it at once, each with its place.

use std::ops::Range;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::document::Document;
use super::fault::{Sink, Spot};
use super::{TOML, nearest, unknown};
use crate::procedure::shape::{Field, Kind, PACK, Shape, decimal, is_name, version};
use crate::visit::fact::Fact;

type Values = Vec<(&'static str, String)>;

/// Checks the whole document.
pub(super) fn walk(document: &Document<'_>, sink: &mut Sink) {
    let whole = 0..0;
    Walk { text: document.text(), sink }.table(&PACK, document.table(), &whole);
}

struct Walk<'a> {
    text: &'a str,
    sink: &'a mut Sink,
}

impl Walk<'_> {
    fn fault(&mut self, span: &Range<usize>, rule: &'static str, values: Values) {
        self.sink.fault(TOML, Some(Spot::of(self.text, span.start)), rule, values);
    }

    /// A word that is not among those that it must be of.
    fn not_among(
        &mut self,
        span: &Range<usize>,
        rule: (&'static str, &'static str),
        values: Values,
        word: &str,
        known: &[&str],
    ) {
        let found = unknown(rule, values, word, known, String::new());
        self.fault(span, found.rule, found.values);
    }

    fn table(&mut self, shape: &'static Shape, table: &DeTable<'_>, span: &Range<usize>) {
        for (key, value) in table {
            let name: &str = key.get_ref();
            match shape.field(name) {
                Some(field) => self.value(field, &field.kind, value),
                None => {
                    let values = vec![("field", name.to_owned()), ("table", shape.name.to_owned())];
                    self.not_among(&key.span(), ("field-unknown", "field-unknown-near"), values, name, &shape.names());
                }
            }
        }
        for field in shape.fields.iter().filter(|field| field.needed) {
            if !table.iter().any(|(key, _)| key.get_ref() == field.name) {
                let values = vec![
                    ("field", field.name.to_owned()),
                    ("table", shape.name.to_owned()),
                    ("example", example(field.name, &field.kind)),
                ];
                self.fault(span, "field-missing", values);
            }
        }
    }

    fn value(&mut self, field: &'static Field, kind: &'static Kind, value: &Spanned<DeValue<'_>>) {
        let span = value.span();
        match (kind, value.get_ref()) {
            (Kind::List(of), DeValue::Array(values)) => values.iter().for_each(|value| self.value(field, of, value)),
            (Kind::Table(shape), DeValue::Table(table)) => self.table(shape, table, &span),
            (Kind::Tables(shape, least), DeValue::Array(values)) => {
                for value in values {
                    match value.get_ref() {
                        DeValue::Table(table) => self.table(shape, table, &value.span()),
                        _ => self.wrong(field, &value.span()),
                    }
                }
                if values.len() < *least {
                    self.fault(
                        &span,
                        "tables-few",
                        vec![("field", field.name.to_owned()), ("least", least.to_string())],
                    );
                }
            }
            (Kind::Range, DeValue::Array(values)) => {
                let numbers: Option<Vec<f64>> =
                    values.iter().map(|value| value.get_ref().as_str().and_then(decimal)).collect();
                if numbers.is_none_or(|numbers| numbers.len() != 2) {
                    self.fault(&span, "range-wrong", vec![("field", field.name.to_owned())]);
                }
            }
            (Kind::Whole(least, most), DeValue::Integer(number)) => {
                let number: Option<i64> = i64::from_str_radix(number.as_str(), number.radix()).ok();
                if number.is_none_or(|number| !(*least..=*most).contains(&number)) {
                    let values = vec![
                        ("field", field.name.to_owned()),
                        ("least", least.to_string()),
                        ("most", most.to_string()),
                    ];
                    self.fault(&span, "number-outside", values);
                }
            }
            (Kind::Flag, DeValue::Boolean(_)) => {}
            (_, DeValue::String(text)) => self.text(field, kind, text, &span),
            _ => self.wrong(field, &span),
        }
    }

    fn wrong(&mut self, field: &'static Field, span: &Range<usize>) {
        let written: String = self.text.get(span.clone()).unwrap_or_default().chars().take(40).collect();
        let found = super::one_line(&written);
        let values =
            vec![("field", field.name.to_owned()), ("found", found), ("example", example(field.name, &field.kind))];
        self.fault(span, "type-wrong", values);
    }

    fn text(&mut self, field: &'static Field, kind: &Kind, text: &str, span: &Range<usize>) {
        let of_field = || vec![("field", field.name.to_owned()), ("value", text.to_owned())];
        match kind {
            Kind::Name | Kind::NameOf(_) if !is_name(text) => self.fault(span, "name-wrong", of_field()),
            Kind::Version if version(text).is_none() => self.fault(span, "version-wrong", of_field()),
            Kind::Decimal if decimal(text).is_none() => self.fault(span, "decimal-wrong", of_field()),
            Kind::OneOf(words) if !words.contains(&text) => {
                self.not_among(span, ("choice-unknown", "choice-unknown-near"), of_field(), text, words);
            }
            Kind::Role(words) if !words.contains(&text) => {
                let found = unknown(("role-unknown", "role-unknown-near"), of_field(), text, words, String::new());
                self.sink.advise(TOML, Some(Spot::of(self.text, span.start)), found.rule, found.values);
            }
            Kind::Fact => {
                self.fact(text, span);
            }
            Kind::Holds => self.holds(text, span),
            Kind::When if text.split_once('=').is_none_or(|(name, option)| !is_name(name) || !is_name(option)) => {
                self.fault(span, "when-wrong", of_field());
            }
            Kind::Name
            | Kind::NameOf(_)
            | Kind::Version
            | Kind::Decimal
            | Kind::OneOf(_)
            | Kind::Role(_)
            | Kind::When => {}
            _ => self.wrong(field, span),
        }
    }

    fn fact(&mut self, name: &str, span: &Range<usize>) -> Option<Fact> {
        let found = Fact::ALL.iter().find(|fact| fact.name() == name).copied();
        if found.is_none() {
            let names: Vec<_> = Fact::ALL.iter().map(|fact| fact.name()).collect();
            let values = vec![("value", name.to_owned())];
            self.not_among(span, ("fact-unknown", "fact-unknown-near"), values, name, &names);
        }
        found
    }

    fn holds(&mut self, text: &str, span: &Range<usize>) {
        let Some((name, word)) = text.split_once('=') else {
            let near = nearest(text, Fact::ALL.iter().map(|fact| fact.name()));
            let example = near
                .and_then(|name| name.parse::<Fact>().ok())
                .and_then(|fact| Some(format!("{}={}", fact.name(), fact.values().first()?.word())))
                .unwrap_or_else(|| "loop=water".to_owned());
            return self.fault(span, "holds-wrong", vec![("value", text.to_owned()), ("example", example)]);
        };
        let Some(fact) = self.fact(name, span) else { return };
        let words: Vec<_> = fact.values().iter().map(|value| value.word()).collect();
        if !words.contains(&word) {
            let values = vec![("fact", name.to_owned()), ("value", word.to_owned())];
            self.not_among(span, ("value-unknown", "value-unknown-near"), values, word, &words);
        }
    }
}

/// How a field is written.
fn example(name: &str, kind: &Kind) -> String {
    match kind {
        Kind::Tables(_, _) => format!("[[{name}]]"),
        _ => format!("{name} = {}", written(kind)),
    }
}

fn written(kind: &Kind) -> String {
    match kind {
        Kind::Name | Kind::NameOf(_) => "\"a-name\"".to_owned(),
        Kind::Version => "\"1.0.0\"".to_owned(),
        Kind::Whole(least, _) => least.to_string(),
        Kind::Flag => "true".to_owned(),
        Kind::Decimal => "\"0.5\"".to_owned(),
        Kind::Range => "[\"5\", \"60\"]".to_owned(),
        Kind::OneOf(words) | Kind::Role(words) => format!("\"{}\"", words.first().unwrap_or(&"")),
        Kind::Holds => "\"loop=water\"".to_owned(),
        Kind::Fact => "\"loop\"".to_owned(),
        Kind::When => "\"coil=coated\"".to_owned(),
        Kind::List(of) => format!("[{}]", written(of)),
        Kind::Table(shape) => {
            let fields: Vec<_> = shape.fields.iter().map(|field| example(field.name, &field.kind)).collect();
            format!("{{ {} }}", fields.join(", "))
        }
        Kind::Tables(_, _) => "[]".to_owned(),
    }
}
