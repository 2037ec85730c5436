//! What a device's clock showed, and what it should have shown.

use std::collections::BTreeMap;

use rusqlite::Connection;

use crate::ids::VisitId;
use crate::store::clocks::{self, Noted};
use crate::store::devices::DeviceId;
use crate::store::handovers;
use crate::store::{StoreError, events};

/// A clock that is wrong by less is not worth a word.
pub(crate) const WORTH_MS: i64 = 60_000;

/// By what a device's clock showed: how far it was behind then, where that is more than [`WORTH_MS`].
pub(crate) type Corrections = BTreeMap<i64, i64>;

/// How far the clock of an event that came at `received_ms` was behind: what was noted then, or first afterwards.
fn behind(history: &[Noted], received_ms: i64) -> Option<i64> {
    let then = history.iter().take_while(|noted| noted.from_ms <= received_ms).last();
    then.or_else(|| history.first()).map(|noted| noted.behind_ms)
}

/// Corrections for the times of a visit's events. `shown` are the times that they carry, in order; `device` sends it now.
pub(crate) fn corrections(
    db: &Connection,
    visit: &VisitId,
    device: DeviceId,
    shown: &[i64],
) -> Result<Corrections, StoreError> {
    let handed = handovers::of(db, visit)?;
    let mut histories: BTreeMap<DeviceId, Vec<Noted>> = BTreeMap::new();
    let mut corrections = Corrections::new();
    for ((seq, shown_ms), received_ms) in (0_u64..).zip(shown).zip(events::received(db, visit)?) {
        let sender = handed.iter().find(|handover| seq < handover.next).map_or(device, |handover| handover.from);
        let history = match histories.entry(sender) {
            std::collections::btree_map::Entry::Occupied(entry) => entry.into_mut(),
            std::collections::btree_map::Entry::Vacant(entry) => entry.insert(clocks::of(db, sender)?),
        };
        if let Some(behind_ms) = behind(history, received_ms).filter(|behind_ms| behind_ms.saturating_abs() > WORTH_MS)
        {
            corrections.insert(*shown_ms, behind_ms);
        }
    }
    Ok(corrections)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_noted_when_an_event_came_counts_and_else_what_was_noted_first() {
        let noted = |from_ms, behind_ms| Noted { from_ms, behind_ms };
        let history = [noted(100, 1), noted(200, 2)];
        assert_eq!([50, 100, 199, 200, 999].map(|at| behind(&history, at)), [1, 1, 1, 2, 2].map(Some));
        assert_eq!(behind(&[], 50), None);
    }
}
