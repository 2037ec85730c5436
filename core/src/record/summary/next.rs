//! What comes next, with its day.

use chrono::{Months, NaiveDate};

use super::{Part, Sources, Worked, day};
use crate::round::Assignment;
use crate::round::calendar::{Entry, calendar};

/// From one service to the next where no terms say otherwise: common practice, no source.
const YEAR_MONTHS: u32 = 12;
/// Time enough to agree on a day.
const REMIND_DAYS: u32 = 21;

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
    if let Some(months) = worked.iter().filter_map(|worked| worked.results.descaling).map(|advice| advice.months).min()
    {
        lines.push(words.fill("summary-next-descaling", &[("months", &months.to_string())]));
    }
    lines.push(words.text("summary-next-between"));
    let day = Part::Calendar { label: words.text("summary-calendar"), ics: calendar_file(from, next) };
    vec![Part::List(lines), day]
}

/// The next service for the owner's calendar. Where the house is stays out of it.
fn calendar_file(from: &Sources<'_>, on: NaiveDate) -> String {
    let words = from.words;
    let entry = Entry {
        uid: format!("next-after-{}@coilside", from.visit.id),
        on,
        title: words.text("summary-calendar-title"),
        text: from.contact.unwrap_or_default().to_owned(),
        place: String::new(),
        remind_days: Some(REMIND_DAYS),
    };
    calendar(&[entry], from.visit.last.as_ref().map_or(0, |at| at.utc_ms))
}
