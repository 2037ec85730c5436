//! Rehearsals: the clock can be leapt over a waiting time, so that a demo or a test need not sit it out.
//!
//! Every moment of a rehearsal carries an epoch that says so: a record made in one can never pass for a real visit's.

use std::{
    fs,
    path::{Path, PathBuf},
    sync::{Mutex, PoisonError},
};

/// The farthest leap at once: a day.
const LEAP_MS_MAX: i64 = 86_400_000;

/// How far a rehearsal's clock has been leapt, kept in the folder so that a killed process goes on where it was.
pub(crate) struct Rehearsal {
    file: PathBuf,
    leapt_ms: Mutex<i64>,
}

impl Rehearsal {
    /// The rehearsal of a folder.
    pub(crate) fn of(folder: &Path) -> Self {
        let file = folder.join("rehearsal-ms");
        let leapt_ms = fs::read_to_string(&file).ok().and_then(|text| text.trim().parse().ok()).unwrap_or(0);
        Self { file, leapt_ms: Mutex::new(leapt_ms) }
    }

    /// How far the clock is ahead of the machine's, milliseconds.
    pub(crate) fn ahead_ms(&self) -> i64 {
        *self.leapt_ms.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Leaps forward, a day at most.
    pub(crate) fn leap(&self, ms: i64) -> std::io::Result<()> {
        let mut leapt_ms = self.leapt_ms.lock().unwrap_or_else(PoisonError::into_inner);
        let next = leapt_ms.saturating_add(ms.clamp(0, LEAP_MS_MAX));
        let part = self.file.with_extension("part");
        fs::write(&part, next.to_string())?;
        fs::rename(&part, &self.file)?;
        *leapt_ms = next;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_leap_is_kept_and_never_goes_back() {
        let folder = tempfile::tempdir().unwrap();
        let rehearsal = Rehearsal::of(folder.path());
        rehearsal.leap(60_000).unwrap();
        rehearsal.leap(-90_000).unwrap();
        assert_eq!(Rehearsal::of(folder.path()).ahead_ms(), 60_000);
    }
}
