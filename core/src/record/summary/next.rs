//! What comes next, with its day.

use chrono::{Months, NaiveDate};

use super::{Part, Sources, Worked, day};
use crate::round::Assignment;

/// From one service to the next where no terms say otherwise: common practice, no source.
const YEAR_MONTHS: u32 = 12;

/// The day of the next service: by the terms that ask for the earliest, else in a year.
#[must_use]
pub fn next_service(assignment: &Assignment, day: NaiveDate) -> NaiveDate {
    let terms = assignment.units.iter().filter_map(|unit| unit.terms.as_ref());
    let months = terms.map(|terms| terms.interval_months).min().unwrap_or(YEAR_MONTHS);
    day.checked_add_months(Months::new(months)).unwrap_or(day)
}

/// After a break-off there is no day of a service yet, and the unit stays off.
pub(super) fn next(from: &Sources<'_>, worked: &[Worked<'_>]) -> Vec<Part> {
    let words = from.words;
    if from.visit.broken_off.is_some() {
        return vec![Part::List(vec![words.text("summary-next-by-phone")])];
    }
    let next = next_service(from.assignment, from.day);
    let mut lines = vec![words.fill("summary-next-service", &[("day", &day::day(words, next))])];
    // Of several units on one water, the one that is due first.
    if let Some(months) = worked.iter().filter_map(|worked| worked.results.descaling).map(|advice| advice.months).min() {
        lines.push(words.fill("summary-next-descaling", &[("months", &months.to_string())]));
    }
    lines.push(words.text("summary-next-between"));
    let calendar = from.calendar.clone().map(|ics| Part::Calendar { label: words.text("summary-calendar"), ics });
    [Part::List(lines)].into_iter().chain(calendar).collect()
}
