//! A phone that may go dark with acid in the loop: said before, with the time to write on the bucket.

use super::notices::clock;
use super::{Block, Tone, View};
use crate::procedure::pack::{DwellTime, Step};
use crate::visit::fact::{Fact, Value};
use crate::visit::state::Mark;

/// Below this charge, per cent, the phone cannot be relied on to call in time. Common practice, no source.
const LOW_PERCENT: u8 = 10;

/// The warning at a step that puts acid into the vessel or the loop and is not behind.
pub(super) fn warning(view: &View<'_>, step: &Step, mark: Option<&Mark>) -> Option<Block> {
    let percent = view.charge_percent.filter(|percent| *percent < LOW_PERCENT)?;
    let is_acid =
        step.starts.iter().chain(&step.sets).any(|holds| {
            matches!((holds.fact, holds.value), (Fact::Loop, Value::Acid) | (Fact::Vessel, Value::AcidMix))
        });
    if !is_acid {
        return None;
    }
    let percent = percent.to_string();
    let text = match step.dwell {
        Some(dwell) => {
            let (least, most) = ends(view, dwell, mark);
            let parts = [("percent", percent.as_str()), ("least", &least), ("most", &most)];
            view.words.fill("charge-low-times", &parts)
        }
        None => view.words.fill("charge-low", &[("percent", &percent)]),
    };
    Some(Block::Text { text, level: 0, tone: Tone::Danger })
}

/// The clock at the least and at the most, as if it began now where it has not begun.
fn ends(view: &View<'_>, dwell: DwellTime, mark: Option<&Mark>) -> (String, String) {
    let gone_ms = mark.and_then(|mark| mark.waited(view.now)).map_or((0, 0), |gone| (gone.proven_ms, gone.longest_ms));
    let at = |after_s: u32, gone_ms: i64| {
        let left_ms = i64::from(after_s) * 1000 - gone_ms;
        clock(view.now.utc_ms.saturating_add(left_ms), view.now.offset_min)
    };
    (at(dwell.least_s, gone_ms.0), at(dwell.most_s, gone_ms.1))
}
