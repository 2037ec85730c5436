//! How much of a photograph goes in one request: as much as the line carries in about ten seconds.

use super::answer::Meaning;
use super::photo::Stage;
use super::request::What;

/// What is sent before the line is known.
const FIRST_BYTES: u64 = 256 << 10;
/// In a short span before the line is known.
const FIRST_BYTES_SHORT: u64 = 64 << 10;
const LEAST_BYTES: u64 = 32 << 10;
const MOST_BYTES: u64 = 8 << 20;
/// A slice is to take so long, milliseconds.
const TAKES_MS: u64 = 10_000;

/// The size of slices.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Slices {
    /// What fits, by the last slice that went.
    bytes: Option<u64>,
    /// What the line carried then, bytes in a second.
    rate: Option<u64>,
}

impl Slices {
    /// The most bytes of the next slice, where the shell can send for so long.
    pub(super) fn bytes(&self, window_ms: Option<i64>) -> u64 {
        let free = self.bytes.unwrap_or(FIRST_BYTES);
        let Some(window_ms) = window_ms else { return free };
        // A third of the span: what is slower than before must still get through.
        let fits = self.rate.map_or(FIRST_BYTES_SHORT, |rate| rate.saturating_mul(window_ms.max(0) as u64) / 3_000);
        free.min(fits).max(LEAST_BYTES)
    }

    /// A request was answered after so many milliseconds.
    pub(super) fn heard(&mut self, what: &What, bytes: u64, took_ms: i64, meaning: &Meaning) {
        let What::Photo(_, Stage::Send(_)) = what else { return };
        let before = self.bytes.unwrap_or(FIRST_BYTES);
        match meaning {
            Meaning::Stage(Stage::Send(_) | Stage::Receipt) => {
                let rate = bytes.saturating_mul(1_000) / took_ms.max(1) as u64;
                self.rate = Some(rate);
                let fits = (rate.saturating_mul(TAKES_MS) / 1_000).clamp(LEAST_BYTES, MOST_BYTES);
                // The last slice of a file is short and says little of what a long one would do.
                self.bytes = Some(if bytes < before { before.max(fits.min(before)) } else { fits.min(before * 4) });
            }
            Meaning::Wait { .. } => {
                self.bytes = Some((before / 2).max(LEAST_BYTES));
                self.rate = self.rate.map(|rate| rate / 2);
            }
            _ => {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sync::trouble::Hindrance;

    fn sent(slices: &mut Slices, bytes: u64, took_ms: i64) {
        slices.heard(&What::Photo(1, Stage::Send(0)), bytes, took_ms, &Meaning::Stage(Stage::Send(bytes)));
    }

    #[test]
    fn slices_grow_on_a_good_line_and_shrink_where_it_breaks() {
        let mut slices = Slices::default();
        for grown in [1 << 20, 4 << 20, 8 << 20, 8 << 20] {
            let bytes = slices.bytes(None);
            sent(&mut slices, bytes, 20);
            assert_eq!(slices.bytes(None), grown);
        }
        for _ in 0..20 {
            let broke = Meaning::Wait { least_ms: 0, why: Hindrance::NoAnswer };
            slices.heard(&What::Photo(1, Stage::Send(0)), 1, 90_000, &broke);
        }
        assert_eq!(slices.bytes(None), 32 << 10);
    }

    #[test]
    fn in_a_short_span_a_slice_is_what_the_line_carries_in_a_third_of_it() {
        let mut slices = Slices::default();
        assert_eq!(slices.bytes(Some(30_000)), 64 << 10, "nothing is known of the line yet");
        // 64 kbit in a second, as a bad mobile network has it.
        sent(&mut slices, 256 << 10, 32_768);
        assert_eq!(slices.bytes(None), 80_000);
        assert_eq!(slices.bytes(Some(30_000)), 80_000);
        assert_eq!(slices.bytes(Some(12_000)), 32 << 10);
    }
}
