//! Time, as the shell hands it in. The core never reads a clock.

use serde::{Deserialize, Serialize};

/// One moment, by both of a device's clocks.
///
/// The wall clock may be wrong or set back; the monotonic one only counts while its epoch lasts
/// (a boot of the phone, a load of the page). Waiting times go by the monotonic clock first, and the
/// wall clock is their witness.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Now {
    /// Wall time, milliseconds since 1970-01-01T00:00Z.
    pub utc_ms: i64,
    /// The local zone's offset from UTC, minutes east.
    pub offset_min: i32,
    /// Milliseconds of a clock that never goes back within its epoch and counts from its beginning.
    pub mono_ms: i64,
    /// Names the span in which `mono_ms` may be compared.
    pub mono_epoch: String,
}

/// How much time lies between two moments, as far as it can be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Elapsed {
    /// Time that certainly went by, milliseconds.
    pub proven_ms: i64,
    /// The longest that it can have been, milliseconds.
    pub longest_ms: i64,
}

impl Now {
    /// The local day, ISO 8601; empty where no calendar has it.
    #[must_use]
    pub fn day(&self) -> String {
        let local = self.utc_ms.saturating_add(i64::from(self.offset_min) * 60_000);
        chrono::DateTime::from_timestamp_millis(local)
            .map(|time| time.format("%Y-%m-%d").to_string())
            .unwrap_or_default()
    }

    /// The time since `earlier`. In one epoch both bounds are the monotonic difference. Across epochs
    /// nothing is proven, and the wall clock's difference is the longest, `i64::MAX` where the wall clock
    /// proves nothing at all: it went backwards, or on by less than the new epoch has counted already.
    #[must_use]
    pub fn since(&self, earlier: &Now) -> Elapsed {
        if self.mono_epoch == earlier.mono_epoch && self.mono_ms >= earlier.mono_ms {
            let ms = self.mono_ms.saturating_sub(earlier.mono_ms);
            return Elapsed { proven_ms: ms, longest_ms: ms };
        }
        let wall = self.utc_ms.saturating_sub(earlier.utc_ms);
        let believed = wall >= 0 && (self.mono_epoch == earlier.mono_epoch || wall >= self.mono_ms);
        Elapsed { proven_ms: 0, longest_ms: if believed { wall } else { i64::MAX } }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(utc_ms: i64, mono_ms: i64, epoch: &str) -> Now {
        Now { utc_ms, offset_min: 60, mono_ms, mono_epoch: epoch.into() }
    }

    #[test]
    fn a_clock_set_back_does_not_shorten_a_wait_within_one_epoch() {
        let elapsed = at(0, 90_000, "a").since(&at(1_000_000, 30_000, "a"));
        assert_eq!(elapsed, Elapsed { proven_ms: 60_000, longest_ms: 60_000 });
    }

    #[test]
    fn across_epochs_nothing_is_proven_and_the_wall_clock_is_the_longest() {
        let elapsed = at(600_000, 5, "b").since(&at(0, 30_000, "a"));
        assert_eq!(elapsed, Elapsed { proven_ms: 0, longest_ms: 600_000 });
    }

    #[test]
    fn a_wall_clock_that_went_on_by_less_than_the_device_has_been_up_was_set_back_and_bounds_nothing() {
        let elapsed = at(60_000, 240_000, "b").since(&at(0, 30_000, "a"));
        assert_eq!(elapsed, Elapsed { proven_ms: 0, longest_ms: i64::MAX });
    }

    #[test]
    fn a_day_is_that_of_the_place() {
        assert_eq!(Now { offset_min: 120, ..at(1_777_932_000_000, 0, "a") }.day(), "2026-05-05");
        assert_eq!(Now { offset_min: -300, ..at(1_777_932_000_000, 0, "a") }.day(), "2026-05-04");
    }

    #[test]
    fn a_wall_clock_that_went_backwards_across_epochs_bounds_nothing() {
        let elapsed = at(0, 5, "b").since(&at(600_000, 30_000, "a"));
        assert_eq!(elapsed, Elapsed { proven_ms: 0, longest_ms: i64::MAX });
    }
}
