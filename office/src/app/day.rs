//! Days and times as people write them, where the visit was.

use chrono::Timelike as _;
pub(crate) use coilside_core::record::summary::day::day as date;
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
