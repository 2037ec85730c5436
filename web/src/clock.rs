//! The time that goes into the core: wall, zone, and a clock that only counts.

use chrono::{Local, Offset, Utc};
use coilside_core::now::Now;

use crate::rehearsal::Rehearsal;

/// The clocks of this machine.
///
/// On Linux the counting clock is the boot clock and its epoch is the boot's id, so a waiting time runs on while this
/// process is killed and started again, and while the machine sleeps. Elsewhere it counts from the start of the process.
pub(crate) struct Clock {
    epoch: String,
    rehearsal: Option<Rehearsal>,
    #[cfg(not(target_os = "linux"))]
    started: std::time::Instant,
}

impl Clock {
    /// The clocks of this machine. `spare_epoch` names the span where the system has no name for it; it must be new
    /// for each process. In a rehearsal the clock can be leapt, and its epoch says that it is one.
    pub(crate) fn of_this_machine(spare_epoch: String, rehearsal: Option<Rehearsal>) -> Self {
        let epoch = boot_id().unwrap_or(spare_epoch);
        Self {
            epoch: if rehearsal.is_some() { format!("rehearsal-{epoch}") } else { epoch },
            rehearsal,
            #[cfg(not(target_os = "linux"))]
            started: std::time::Instant::now(),
        }
    }

    /// This moment.
    pub(crate) fn now(&self) -> Now {
        let wall = Utc::now();
        let ahead_ms = self.rehearsal.as_ref().map_or(0, Rehearsal::ahead_ms);
        Now {
            utc_ms: wall.timestamp_millis() + ahead_ms,
            offset_min: wall.with_timezone(&Local).offset().fix().local_minus_utc() / 60,
            mono_ms: self.mono_ms() + ahead_ms,
            mono_epoch: self.epoch.clone(),
        }
    }

    /// Leaps over a waiting time; `false` where this is no rehearsal.
    pub(crate) fn leap(&self, ms: i64) -> std::io::Result<bool> {
        self.rehearsal.as_ref().map_or(Ok(false), |rehearsal| rehearsal.leap(ms).map(|()| true))
    }

    /// Whether this is a rehearsal.
    pub(crate) fn is_rehearsal(&self) -> bool {
        self.rehearsal.is_some()
    }

    #[cfg(target_os = "linux")]
    #[allow(clippy::unused_self, reason = "elsewhere it counts from the start of the process")]
    fn mono_ms(&self) -> i64 {
        let at = rustix::time::clock_gettime(rustix::time::ClockId::Boottime);
        at.tv_sec.saturating_mul(1000).saturating_add(at.tv_nsec / 1_000_000)
    }

    #[cfg(not(target_os = "linux"))]
    fn mono_ms(&self) -> i64 {
        i64::try_from(self.started.elapsed().as_millis()).unwrap_or(i64::MAX)
    }
}

#[cfg(target_os = "linux")]
fn boot_id() -> Option<String> {
    let id = std::fs::read_to_string("/proc/sys/kernel/random/boot_id").ok()?;
    let id = id.trim();
    (!id.is_empty()).then(|| format!("boot-{id}"))
}

#[cfg(not(target_os = "linux"))]
fn boot_id() -> Option<String> {
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_looks_share_an_epoch_and_never_go_back() {
        let clock = Clock::of_this_machine("spare".into(), None);
        let (first, second) = (clock.now(), clock.now());
        assert_eq!(first.mono_epoch, second.mono_epoch);
        assert!(second.since(&first).proven_ms >= 0 && second.mono_ms >= first.mono_ms);
    }

    /// The system's own figure: `/proc/uptime` counts from boot, sleep included (proc(5)).
    #[cfg(target_os = "linux")]
    #[test]
    fn a_process_started_anew_goes_on_counting_where_the_last_one_was() {
        let uptime = std::fs::read_to_string("/proc/uptime").unwrap();
        let seconds: f64 = uptime.split_whitespace().next().unwrap().parse().unwrap();
        let first = Clock::of_this_machine("one".into(), None).now();
        let second = Clock::of_this_machine("two".into(), None).now();
        assert_eq!(first.mono_epoch, second.mono_epoch, "both name the boot");
        assert!((first.mono_ms as f64 / 1000.0 - seconds).abs() < 2.0, "{} against {seconds}", first.mono_ms);
    }
}
