//! How far the device's clock is from the office's. The device's clock is never corrected: the person is told.

use crate::now::Now;

/// A difference of more than this is told, milliseconds.
const TOLD_MS: i64 = 120_000;
/// A better measurement than this one may come until it is so old, milliseconds.
const AGES_MS: i64 = 10 * 60_000;

/// The office's clock minus the device's, as it was measured best of late.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Skew {
    /// How far the office is ahead, milliseconds.
    pub ahead_ms: i64,
    /// Half the time of the way there and back: the measurement's bound, milliseconds.
    pub doubt_ms: i64,
    at: Now,
}

impl Skew {
    /// A measurement: the request went out at `sent`, the office's clock stood at `office_utc_ms`, the answer came at `now`.
    /// None where the device's clock was set in between.
    #[must_use]
    pub fn measured(sent: &Now, office_utc_ms: i64, now: &Now) -> Option<Skew> {
        let gone = now.since(sent);
        let wall = now.utc_ms.saturating_sub(sent.utc_ms);
        if gone.proven_ms != gone.longest_ms || (wall - gone.longest_ms).abs() > 1_000 {
            return None;
        }
        let middle = sent.utc_ms.saturating_add(wall / 2);
        Some(Skew { ahead_ms: office_utc_ms.saturating_sub(middle), doubt_ms: wall / 2, at: now.clone() })
    }

    /// The better of what was known and what was measured now: the one that took less time, unless it is old, or both cannot
    /// be true.
    #[must_use]
    pub fn better(known: Option<Skew>, fresh: Skew, now: &Now) -> Skew {
        match known {
            Some(known)
                if known.doubt_ms <= fresh.doubt_ms
                    && now.since(&known.at).longest_ms < AGES_MS
                    && (known.ahead_ms - fresh.ahead_ms).abs() <= known.doubt_ms + fresh.doubt_ms + 1_000 =>
            {
                known
            }
            _ => fresh,
        }
    }

    /// Whether the clocks differ by so much, beyond doubt, that the person is told.
    #[must_use]
    pub const fn is_told(&self) -> bool {
        self.ahead_ms.saturating_abs() - self.doubt_ms > TOLD_MS
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(ms: i64) -> Now {
        Now { utc_ms: 1_000_000 + ms, offset_min: 0, mono_ms: ms, mono_epoch: "a".into() }
    }

    #[test]
    fn the_office_is_ahead_of_the_middle_between_question_and_answer() {
        let skew = Skew::measured(&at(0), 1_000_000 + 200_000, &at(800)).unwrap();
        assert_eq!((skew.ahead_ms, skew.doubt_ms), (199_600, 400));
        assert!(skew.is_told());
        assert!(!Skew::measured(&at(0), 1_000_000 + 120_000, &at(800)).unwrap().is_told());
        assert!(
            !Skew::measured(&at(0), 1_000_000 + 200_000, &at(200_000)).unwrap().is_told(),
            "the line is too slow to say"
        );
    }

    #[test]
    fn a_clock_that_was_set_while_the_request_was_out_measures_nothing() {
        assert_eq!(Skew::measured(&at(0), 1_000_000, &Now { utc_ms: 9_000_000, ..at(800) }), None);
        assert_eq!(Skew::measured(&at(0), 1_000_000, &Now { mono_epoch: "b".into(), ..at(800) }), None);
    }

    #[test]
    fn the_quicker_measurement_stays_until_it_is_old_or_cannot_be_true_any_more() {
        let quick = Skew::measured(&at(0), 1_000_050, &at(100)).unwrap();
        let slow = Skew::measured(&at(1_000), 1_003_000, &at(5_000)).unwrap();
        assert_eq!(Skew::better(Some(quick.clone()), slow.clone(), &at(5_000)).doubt_ms, 50);
        assert_eq!(Skew::better(Some(quick.clone()), slow, &at(800_000)).doubt_ms, 2_000);
        let set = Skew::measured(&at(6_000), 1_000_000 + 90_000, &at(7_000)).unwrap();
        assert_eq!(Skew::better(Some(quick), set.clone(), &at(7_000)), set, "somebody set the clock");
    }
}
