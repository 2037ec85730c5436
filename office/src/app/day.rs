//! Days and times as people write them, where the visit was.

use chrono::{Datelike as _, Months, NaiveDate, Timelike as _};
use coilside_core::round::day::there;
use coilside_core::words::Words;

/// '2 March 2026', '2 de marzo de 2026'.
pub(crate) fn day(words: &Words, utc_ms: i64, offset_min: i32) -> String {
    there(utc_ms, offset_min).map(|at| date(words, at.date_naive())).unwrap_or_default()
}

/// '2026-03-02 09:05': for tables, where it must sort and align.
pub(crate) fn stamp(utc_ms: i64, offset_min: i32) -> String {
    there(utc_ms, offset_min).map(|at| at.format("%Y-%m-%d %H:%M").to_string()).unwrap_or_default()
}

/// '09:05'.
pub(crate) fn clock(utc_ms: i64, offset_min: i32) -> String {
    there(utc_ms, offset_min).map(|at| format!("{:02}:{:02}", at.hour(), at.minute())).unwrap_or_default()
}

/// 'UTC+02:00'.
pub(crate) fn zone(offset_min: i32) -> String {
    let sign = if offset_min < 0 { '−' } else { '+' };
    format!("UTC{sign}{:02}:{:02}", offset_min.abs() / 60, offset_min.abs() % 60)
}

/// The month so many months later: 'March 2027'.
pub(crate) fn month_later(words: &Words, utc_ms: i64, offset_min: i32, months: u32) -> String {
    let at = there(utc_ms, offset_min).and_then(|at| at.date_naive().checked_add_months(Months::new(months)));
    let Some(at) = at else { return String::new() };
    let (month, year) = (month(words, at.month()), at.year().to_string());
    words.fill("office-month-of-year", &[("month", &month), ("year", &year)])
}

/// '2 March 2026' of a date.
pub(crate) fn date(words: &Words, date: NaiveDate) -> String {
    let (day, year) = (date.day().to_string(), date.year().to_string());
    words.fill("office-day", &[("day", &day), ("month", &month(words, date.month())), ("year", &year)])
}

fn month(words: &Words, number: u32) -> String {
    words.text(&format!("office-month-{number}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_time_is_told_as_it_was_where_the_visit_was() {
        // 2026-03-02T23:30Z is already the third, two hours east.
        let late = 1_772_494_200_000;
        assert_eq!(stamp(late, 0), "2026-03-02 23:30");
        assert_eq!(stamp(late, 120), "2026-03-03 01:30");
        assert_eq!(clock(late, -210), "20:00");
        assert_eq!(zone(-210), "UTC−03:30");
    }

    #[test]
    fn a_nonsense_offset_gives_nothing_instead_of_a_crash() {
        assert_eq!(stamp(0, i32::MAX), "");
        assert_eq!(stamp(i64::MAX, 0), "");
    }
}
