//! What devices' clocks showed in their last requests. Held in memory alone: whatever matters of it is a row of
//! `device_clock`, and a restart begins to listen anew.

use std::collections::{BTreeMap, VecDeque};
use std::sync::{Mutex, PoisonError};

use super::devices::DeviceId;

/// So many requests tell how far a clock is behind: the quickest of them was held up least on its way.
const SAMPLES: usize = 8;
/// Older ones tell nothing about now.
const SAMPLE_MS_MAX: i64 = 10 * 60_000;
/// When a device was heard is written down once in this time.
const WRITTEN_EVERY_MS: i64 = 60_000;
/// A clock that differs by more than this from what is written down has been changed.
const JUMP_MS: i64 = 2_000;

/// What one device let hear.
#[derive(Debug, Default)]
struct Window {
    /// When a request came, and how far behind the device's clock seemed.
    samples: VecDeque<(i64, i64)>,
    /// What stands in the device's row and in its clock's last row.
    written_ms: Option<i64>,
    noted_behind_ms: Option<i64>,
}

/// What has to be written down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct ToWrite {
    /// The clock's difference, where it is another one than before.
    pub(crate) behind_ms: Option<i64>,
}

/// By device.
#[derive(Default)]
pub(crate) struct Heard(Mutex<BTreeMap<DeviceId, Window>>);

impl Heard {
    /// A device let hear at this moment, perhaps with what its clock showed. `noted` reads what is written down about its
    /// clock; it is asked once. Tells what has to be written down now, mostly nothing.
    pub(crate) fn hear<E>(
        &self,
        device: DeviceId,
        clock_ms: Option<i64>,
        now_ms: i64,
        noted: impl FnOnce() -> Result<Option<i64>, E>,
    ) -> Result<Option<ToWrite>, E> {
        let mut all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let window = match all.entry(device) {
            std::collections::btree_map::Entry::Occupied(entry) => entry.into_mut(),
            std::collections::btree_map::Entry::Vacant(entry) => {
                entry.insert(Window { noted_behind_ms: noted()?, ..Window::default() })
            }
        };
        if let Some(behind) = clock_ms.and_then(|clock_ms| now_ms.checked_sub(clock_ms)) {
            if window.samples.len() == SAMPLES {
                window.samples.pop_front();
            }
            window.samples.push_back((now_ms, behind));
        }
        window.samples.retain(|(at, _)| now_ms.saturating_sub(*at) <= SAMPLE_MS_MAX);
        let guess = window.samples.iter().map(|(_, behind)| *behind).min();
        let changed = |guess: &i64| window.noted_behind_ms.is_none_or(|noted| guess.abs_diff(noted) > JUMP_MS as u64);
        let behind_ms = guess.filter(changed);
        let is_due = window.written_ms.is_none_or(|at| now_ms.saturating_sub(at) >= WRITTEN_EVERY_MS);
        if behind_ms.is_none() && !is_due {
            return Ok(None);
        }
        window.written_ms = Some(now_ms);
        if behind_ms.is_some() {
            window.noted_behind_ms = behind_ms;
        }
        Ok(Some(ToWrite { behind_ms }))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hear(heard: &Heard, clock_ms: i64, now_ms: i64) -> Option<i64> {
        let told = heard.hear::<()>(DeviceId::for_tests(1), Some(clock_ms), now_ms, || Ok(None)).unwrap();
        told.and_then(|told| told.behind_ms)
    }

    #[test]
    fn the_quickest_request_tells_how_far_a_clock_is_behind() {
        let heard = Heard::default();
        // The clock is 5 s behind; requests take 900, 100 and 3000 ms.
        assert_eq!(hear(&heard, 95_000, 100_900), Some(5_900));
        assert_eq!(hear(&heard, 96_000, 101_100), None, "within two seconds of what is noted");
        assert_eq!(hear(&heard, 97_000, 105_000), None, "a slow request is no changed clock");
    }

    #[test]
    fn a_clock_put_forward_is_noted_at_once_and_one_put_back_when_no_request_speaks_for_the_old_time() {
        let heard = Heard::default();
        assert_eq!(hear(&heard, 0, 0), Some(0));
        assert_eq!(hear(&heard, 3_600_000 + 1_000, 1_000), Some(-3_600_000));
        for request in 2..9 {
            assert_eq!(hear(&heard, request * 1_000, request * 1_000), None, "{request}");
        }
        assert_eq!(hear(&heard, 9_000, 9_000), Some(0));
    }

    #[test]
    fn that_a_device_was_heard_is_written_once_a_minute() {
        let heard = Heard::default();
        let writes = (0..600).filter(|s| {
            let told = heard.hear::<()>(DeviceId::for_tests(1), None, s * 1000, || Ok(None)).unwrap();
            told.is_some()
        });
        assert_eq!(writes.count(), 10);
    }
}
