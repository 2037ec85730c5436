//! Photographs whose files are on disk at the same time get their rows in one transaction: one wait for the disk instead of
//! many. Whoever comes while a transaction runs is in the next one.

use std::sync::{Arc, Condvar, Mutex, MutexGuard, OnceLock, PoisonError};

use crate::ids::Digest;

/// One photograph that waits for its row.
struct Waiting {
    digest: Digest,
    now_ms: i64,
    /// Whether the transaction that held it came to its end.
    came: Arc<OnceLock<bool>>,
}

#[derive(Default)]
struct Queue {
    waiting: Vec<Waiting>,
    /// Somebody is writing.
    busy: bool,
}

/// Those that wait.
#[derive(Default)]
pub(super) struct Together {
    queue: Mutex<Queue>,
    turned: Condvar,
}

impl Together {
    /// Returns when a transaction with this photograph has ended; false where it failed. `write` gets everything that waits
    /// just then, and is called by one thread at a time.
    pub(super) fn wait_for(&self, digest: Digest, now_ms: i64, write: impl Fn(&[(Digest, i64)]) -> bool) -> bool {
        let came = Arc::new(OnceLock::new());
        let mut queue = self.lock();
        queue.waiting.push(Waiting { digest, now_ms, came: Arc::clone(&came) });
        loop {
            if let Some(came) = came.get() {
                return *came;
            }
            if queue.busy {
                queue = self.turned.wait(queue).unwrap_or_else(PoisonError::into_inner);
                continue;
            }
            queue.busy = true;
            let batch = std::mem::take(&mut queue.waiting);
            drop(queue);
            let rows: Vec<_> = batch.iter().map(|one| (one.digest, one.now_ms)).collect();
            let done = write(&rows);
            for one in batch {
                // Only this thread writes it.
                let _ = one.came.set(done);
            }
            queue = self.lock();
            queue.busy = false;
            self.turned.notify_all();
        }
    }

    fn lock(&self) -> MutexGuard<'_, Queue> {
        self.queue.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

#[cfg(test)]
mod tests {
    use std::sync::atomic::{AtomicUsize, Ordering};
    use std::time::Duration;

    use super::*;

    #[test]
    fn those_who_come_while_a_transaction_runs_share_the_next_one() {
        let (together, calls, rows) = (Together::default(), AtomicUsize::new(0), AtomicUsize::new(0));
        let write = |batch: &[(Digest, i64)]| {
            std::thread::sleep(Duration::from_millis(50));
            calls.fetch_add(1, Ordering::SeqCst);
            rows.fetch_add(batch.len(), Ordering::SeqCst);
            true
        };
        std::thread::scope(|scope| {
            for byte in 0..16 {
                let (together, write) = (&together, &write);
                scope.spawn(move || assert!(together.wait_for(Digest::of(&[byte]), 0, write)));
            }
        });
        assert_eq!(rows.load(Ordering::SeqCst), 16);
        assert!(calls.load(Ordering::SeqCst) < 16, "{calls:?} transactions for 16 photographs");
    }

    #[test]
    fn a_failed_transaction_is_told_to_everyone_in_it() {
        let together = Together::default();
        assert!(!together.wait_for(Digest::ZERO, 0, |_| false));
        assert!(together.wait_for(Digest::ZERO, 0, |_| true));
    }
}
