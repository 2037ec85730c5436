//! Days as owners read them.

use chrono::{Datelike as _, NaiveDate};

use crate::words::Words;

/// '2 March 2026', '2 de marzo de 2026'.
#[must_use]
pub fn day(words: &Words, date: NaiveDate) -> String {
    let (day, year) = (date.day().to_string(), date.year().to_string());
    words.fill("summary-day", &[("day", &day), ("month", &name(words, date)), ("year", &year)])
}

/// 'March 2026', 'marzo de 2026'.
#[must_use]
pub fn month(words: &Words, date: NaiveDate) -> String {
    words.fill("summary-month-of-year", &[("month", &name(words, date)), ("year", &date.year().to_string())])
}

fn name(words: &Words, date: NaiveDate) -> String {
    words.text(&format!("summary-month-{}", date.month()))
}
