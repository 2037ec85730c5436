//! Counting months and days, as a warranty's terms do.
//!
//! ```text
//! the same day so many months on; where that month has no such day, its last
//! days of grace come on top of that day, and the last of them still counts
//! ```
//! Range: years 1900…2200, −1200…1200 months, −40 000…40 000 days. Exact; Gregorian calendar.
//! Source: ISO 8601 for the dates; the last day of the month as python-dateutil's `relativedelta` and common practice have it.

use super::error::{ScienceError, within};
use chrono::{Datelike, Months, NaiveDate, TimeDelta};

const YEAR_LEAST: i32 = 1900;
const YEAR_MOST: i32 = 2200;
const MONTHS_MOST: i32 = 1200;
const DAYS_MOST: i32 = 40_000;

/// The date `months` (−1200…1200) after `date`.
pub fn add_months(date: NaiveDate, months: i32) -> Result<NaiveDate, ScienceError> {
    within("months", f64::from(months), f64::from(-MONTHS_MOST), f64::from(MONTHS_MOST))?;
    within("date (its year)", f64::from(date.year()), f64::from(YEAR_LEAST), f64::from(YEAR_MOST))?;
    let step = Months::new(months.unsigned_abs());
    let moved = if months < 0 { date.checked_sub_months(step) } else { date.checked_add_months(step) };
    moved.filter(|moved| (YEAR_LEAST..=YEAR_MOST).contains(&moved.year())).ok_or_else(|| {
        // So many months can be taken off or put on before the years run out.
        let since_first = (date.year() - YEAR_LEAST) * 12 + i32::try_from(date.month0()).unwrap_or_default();
        let until_last = (YEAR_MOST - YEAR_LEAST + 1) * 12 - 1 - since_first;
        ScienceError::out_of_range("months", f64::from(months), f64::from(-since_first), f64::from(until_last))
    })
}

/// The date `days` (−40 000…40 000) after `date`.
pub fn add_days(date: NaiveDate, days: i32) -> Result<NaiveDate, ScienceError> {
    within("days", f64::from(days), f64::from(-DAYS_MOST), f64::from(DAYS_MOST))?;
    within("date (its year)", f64::from(date.year()), f64::from(YEAR_LEAST), f64::from(YEAR_MOST))?;
    let moved = TimeDelta::try_days(i64::from(days)).and_then(|step| date.checked_add_signed(step));
    moved.filter(|moved| (YEAR_LEAST..=YEAR_MOST).contains(&moved.year())).ok_or_else(|| {
        // So many days can be taken off or put on before the years run out.
        let of = |year: i32, month, day| NaiveDate::from_ymd_opt(year, month, day).unwrap_or(date);
        let left = |end: NaiveDate| end.signed_duration_since(date).num_days() as f64;
        let (least, most) = (left(of(YEAR_LEAST, 1, 1)), left(of(YEAR_MOST, 12, 31)));
        ScienceError::out_of_range(
            "days",
            f64::from(days),
            least.max(-f64::from(DAYS_MOST)),
            most.min(f64::from(DAYS_MOST)),
        )
    })
}

/// How many days `to` lies after `from`; below zero it lies before.
pub fn days_between(from: NaiveDate, to: NaiveDate) -> i64 {
    to.signed_duration_since(from).num_days()
}

/// A date in the one form `2025-01-31`.
pub fn parse_date(date: &str) -> Result<NaiveDate, ScienceError> {
    NaiveDate::parse_from_str(date, "%Y-%m-%d")
        .ok()
        // chrono also reads spaces, signs and single digits.
        .filter(|parsed| parsed.to_string() == date)
        .ok_or_else(|| ScienceError::word("date", date, "a date of the calendar such as 2025-01-31"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn only_whole_dates_of_the_calendar_are_read() {
        for wrong in ["2025-02-29", "2025-1-31", " 2025-01-31", "31.01.2025", "", "2025-01-31T00:00"] {
            assert!(parse_date(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn the_years_run_out_with_a_range_and_not_with_a_panic() {
        let refused = add_months(parse_date("2200-06-30").unwrap(), 7).unwrap_err();
        assert_eq!(refused, ScienceError::out_of_range("months", 7.0, -3605.0, 6.0));
    }

    #[test]
    fn thirty_days_of_grace_after_the_middle_of_april_end_in_the_middle_of_may() {
        let (due, end) = (parse_date("2026-04-20").unwrap(), parse_date("2026-05-20").unwrap());
        assert_eq!(add_days(due, 30).unwrap(), end);
        assert_eq!(days_between(end, due), -30);
        assert!(add_days(parse_date("2200-12-31").unwrap(), 1).is_err());
    }

    proptest! {
        #[test]
        fn months_there_and_back_return_up_to_the_28th(year in 2000..2100i32, month in 1..13u32, day in 1..29u32, months in -1200..1201i32) {
            let date = NaiveDate::from_ymd_opt(year, month, day).unwrap();
            let there = add_months(date, months).unwrap();
            prop_assert_eq!(add_months(there, -months).unwrap(), date);
        }
    }
}
