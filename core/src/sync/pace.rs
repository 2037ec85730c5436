//! How long to rest after failures: twice as long each time up to a minute, spread by chance, and never shorter than the
//! office asked for.

use chrono::NaiveDateTime;

use crate::now::Now;

/// The full wait after the first failure, milliseconds.
const WAIT_FIRST_MS: i64 = 1_000;
/// The longest full wait, milliseconds.
const WAIT_MOST_MS: i64 = 60_000;
/// The longest rest that the office can ask for, milliseconds: a wrong figure must not stop a device for a day.
const ASKED_MOST_MS: i64 = 3_600_000;
/// By how much a rest that the office asked for is stretched at most, milliseconds.
const SPREAD_MOST_MS: i64 = 5_000;

/// So many lines that broke in a row may be the fault of what went over them.
const LINES_BROKEN: u32 = 3;

/// Failures in a row, and the rest after the last one.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Pace {
    failures: u32,
    rest: Option<(Now, i64)>,
}

impl Pace {
    /// May it be tried now?
    #[must_use]
    pub fn is_free(&self, now: &Now) -> bool {
        self.left_ms(now) == 0
    }

    /// How long it still rests, milliseconds.
    #[must_use]
    pub fn left_ms(&self, now: &Now) -> i64 {
        self.rest.as_ref().map_or(0, |(since, ms)| ms.saturating_sub(now.since(since).longest_ms).max(0))
    }

    /// It failed. `least_ms` is what the office asked for, `chance` a fresh random number.
    pub fn failed(&mut self, least_ms: i64, chance: u32, now: &Now) {
        self.failures = self.failures.saturating_add(1);
        self.rest = Some((now.clone(), wait_ms(self.failures, least_ms, chance)));
    }

    /// It failed where the way to it failed already: it rests longer than the way, however long both have failed, so that something
    /// else is tried first. A line that broke (`line`) says nothing of what went over it until it has broken three times.
    pub(super) fn failed_beside(&mut self, line: bool, least_ms: i64, chance: u32, now: &Now) {
        self.failures = self.failures.saturating_add(1);
        if !line || self.failures >= LINES_BROKEN {
            let of_way_ms = wait_ms(self.failures, least_ms, chance);
            self.rest = Some((now.clone(), of_way_ms + wait_ms(self.failures, 0, chance)));
        }
    }

    /// Failures in a row.
    #[must_use]
    pub const fn failures(&self) -> u32 {
        self.failures
    }
}

/// The wait after so many failures in a row: between half of the full wait and all of it, by chance. Devices that lost the
/// office at the same moment do not come back at the same moment.
#[must_use]
pub fn wait_ms(failures: u32, least_ms: i64, chance: u32) -> i64 {
    let full = (WAIT_FIRST_MS << failures.saturating_sub(1).min(16)).min(WAIT_MOST_MS);
    let share = |ms: i64| ((i128::from(ms) * i128::from(chance)) >> 32) as i64;
    let own = full / 2 + share(full / 2);
    if least_ms <= 0 {
        return own;
    }
    let least = least_ms.min(ASKED_MOST_MS);
    own.max(least + share((least / 10).min(SPREAD_MOST_MS)))
}

/// What `Retry-After` asks for, milliseconds: seconds, or a date in any of the three forms of RFC 9110, 5.6.7, counted from
/// the answer's own `Date` or else from the device's clock. 0 where it cannot be read.
#[must_use]
pub fn retry_after_ms(value: &str, date: Option<&str>, now_utc_ms: i64) -> i64 {
    let value = value.trim();
    if !value.is_empty() && value.bytes().all(|byte| byte.is_ascii_digit()) {
        return value.parse().map_or(ASKED_MOST_MS, |seconds: i64| seconds.saturating_mul(1000)).min(ASKED_MOST_MS);
    }
    let Some(until) = http_date_ms(value) else { return 0 };
    let from = date.and_then(http_date_ms).unwrap_or(now_utc_ms);
    until.saturating_sub(from).clamp(0, ASKED_MOST_MS)
}

fn http_date_ms(text: &str) -> Option<i64> {
    let text = text.trim();
    ["%a, %d %b %Y %H:%M:%S GMT", "%A, %d-%b-%y %H:%M:%S GMT", "%a %b %e %H:%M:%S %Y"]
        .iter()
        .find_map(|form| NaiveDateTime::parse_from_str(text, form).ok())
        .map(|time| time.and_utc().timestamp_millis())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(ms: i64) -> Now {
        Now { utc_ms: 784_111_000_000 + ms, offset_min: 0, mono_ms: ms, mono_epoch: "a".into() }
    }

    #[test]
    fn what_fails_again_and_again_rests_longer_than_the_way_that_failed_with_it() {
        for least_ms in [0, 5_000, 7_200_000] {
            let (mut way, mut row) = (Pace::default(), Pace::default());
            for failure in 1..40 {
                for chance in [0, 1 << 31, u32::MAX] {
                    (way.failures, row.failures) = (failure - 1, failure - 1);
                    way.failed(least_ms, chance, &at(0));
                    row.failed_beside(false, least_ms, chance, &at(0));
                    assert!(row.left_ms(&at(0)) > way.left_ms(&at(0)), "after {failure}, asked for {least_ms} ms");
                }
            }
        }
    }

    #[test]
    fn a_wait_lies_between_half_and_all_of_a_span_that_doubles_up_to_a_minute() {
        for failures in 1..40 {
            let full = [1_000, 2_000, 4_000, 8_000, 16_000, 32_000].get(failures - 1).copied().unwrap_or(60_000);
            let waits = [0, 1 << 31, u32::MAX].map(|chance| wait_ms(failures as u32, 0, chance));
            assert_eq!(waits[0], full / 2, "the shortest after {failures}");
            assert!(waits[1] > waits[0] && waits[1] < waits[2], "spread: {waits:?}");
            assert!(waits[2] <= full && waits[2] >= full - 1, "the longest after {failures}: {waits:?}");
        }
    }

    #[test]
    fn what_the_office_asked_for_is_never_cut_short_and_never_more_than_an_hour() {
        for chance in [0, 7, u32::MAX] {
            assert!(wait_ms(1, 120_000, chance) >= 120_000);
            assert!(wait_ms(1, 120_000, chance) <= 125_000);
            assert!(wait_ms(9, 1_000, chance) >= 30_000, "nor does it shorten our own");
            assert!((3_600_000..=3_605_000).contains(&wait_ms(1, i64::MAX, chance)));
        }
    }

    /// The three spellings are those of RFC 9110, 5.6.7: one moment, 784111777 seconds after 1970 (by GNU date).
    #[test]
    fn retry_after_is_read_as_seconds_and_in_the_three_forms_of_a_date() {
        let now = 784_111_777_000 - 90_000;
        for date in ["Sun, 06 Nov 1994 08:49:37 GMT", "Sunday, 06-Nov-94 08:49:37 GMT", "Sun Nov  6 08:49:37 1994"] {
            assert_eq!(retry_after_ms(date, None, now), 90_000, "{date}");
            // By the answer's own clock, where this device's is wrong.
            assert_eq!(retry_after_ms(date, Some("Sun, 06 Nov 1994 08:49:07 GMT"), 0), 30_000, "{date}");
        }
        assert_eq!(retry_after_ms(" 120 ", None, now), 120_000);
        for (odd, means) in [("-5", 0), ("", 0), ("soon", 0), ("1e9", 0), ("99999999999999999999", 3_600_000)] {
            assert_eq!(retry_after_ms(odd, None, now), means, "{odd}");
        }
        assert_eq!(retry_after_ms("Sun, 06 Nov 1994 08:49:37 GMT", None, now + 600_000), 0, "long past");
    }

    #[test]
    fn a_rest_ends_by_the_clock_that_cannot_be_set() {
        let mut pace = Pace::default();
        pace.failed(0, u32::MAX, &at(0));
        pace.failed(0, u32::MAX, &at(0));
        assert_eq!(pace.failures(), 2);
        assert!(!pace.is_free(&at(1_900)) && pace.is_free(&at(2_000)));
        let set_back = Now { utc_ms: 0, ..at(2_000) };
        assert!(pace.is_free(&set_back));
    }
}
