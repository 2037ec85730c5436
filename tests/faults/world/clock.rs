//! Time that only goes on when the world says so, and a phone's own clocks over it.

use coilside_core::now::Now;

/// When every world begins: 2026-05-04 08:00 UTC.
pub(crate) const MORNING_MS: i64 = coilside_tests::MORNING_UTC_MS;

/// A phone's clocks: the one on its wall may be wrong and jump, the other one counts from its start.
#[derive(Clone, Default)]
pub(crate) struct Clock {
    /// How far its wall clock is ahead.
    pub(crate) ahead_ms: i64,
    started_ms: i64,
    epoch: u64,
}

impl Clock {
    /// What they show at a moment of the world.
    pub(crate) fn at(&self, world_ms: i64) -> Now {
        Now {
            utc_ms: MORNING_MS + world_ms + self.ahead_ms,
            offset_min: 120,
            mono_ms: world_ms - self.started_ms,
            mono_epoch: format!("boot-{}", self.epoch),
        }
    }

    /// The phone starts anew.
    pub(crate) fn boot(&mut self, world_ms: i64) {
        self.started_ms = world_ms;
        self.epoch += 1;
    }
}
