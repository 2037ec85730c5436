//! Photographs whose bytes are here, on their way onto the disk. Those that come while one batch waits for the disk are in the
//! next one: one wait for many. Held in memory alone: of what is forgotten here the part is left, and is looked at again.

use std::cell::Cell;
use std::collections::BTreeSet;
use std::fs::File;
use std::sync::{Condvar, Mutex, MutexGuard, PoisonError};

use crate::ids::Digest;

/// A photograph whose bytes are here and are the right ones, but not on the disk yet.
pub(crate) struct Arrived {
    pub(crate) digest: Digest,
    /// Its part, which is locked as long as this is open.
    pub(crate) part: File,
    pub(crate) now_ms: i64,
}

#[derive(Default)]
struct Queue {
    waiting: Vec<Arrived>,
    /// Those of the batch that is just being kept.
    being_kept: BTreeSet<Digest>,
    /// Somebody keeps a batch.
    busy: bool,
    /// Somebody was told to come and keep what is waiting.
    called: bool,
}

impl Queue {
    fn has(&self, digest: Digest) -> bool {
        self.being_kept.contains(&digest) || self.waiting.iter().any(|one| one.digest == digest)
    }
}

/// Those that arrived and are not kept yet.
#[derive(Default)]
pub(super) struct Keeping {
    queue: Mutex<Queue>,
    turned: Condvar,
}

impl Keeping {
    /// Lines one up. Somebody must ask for it, or be called, later.
    pub(super) fn add(&self, arrived: Arrived) {
        self.lock().waiting.push(arrived);
    }

    /// True where something waits and nobody was called for it yet: then somebody must come to [`Keeping::keep_waiting`].
    pub(super) fn calls(&self) -> bool {
        let mut queue = self.lock();
        !queue.waiting.is_empty() && !std::mem::replace(&mut queue.called, true)
    }

    /// Returns when it is done, by what the queue tells then. Whoever finds nobody at work keeps a batch:
    /// `keep` gets everything that waits just then, and is called by one thread at a time.
    fn work_until(&self, is_done: impl Fn(&mut Queue) -> bool, keep: impl Fn(Vec<Arrived>)) {
        let mut queue = self.lock();
        while !is_done(&mut queue) {
            if queue.busy {
                queue = self.turned.wait(queue).unwrap_or_else(PoisonError::into_inner);
                continue;
            }
            let batch = std::mem::take(&mut queue.waiting);
            queue.being_kept = batch.iter().map(|one| one.digest).collect();
            queue.busy = true;
            drop(queue);
            // Also when it panics: nobody may wait for ever.
            let at_work = AtWork(self);
            keep(batch);
            drop(at_work);
            queue = self.lock();
        }
    }

    /// Returns when this photograph is not on its way any more.
    pub(super) fn wait_for(&self, digest: Digest, keep: impl Fn(Vec<Arrived>)) {
        self.work_until(|queue| !queue.has(digest), keep);
    }

    /// Returns when nothing is on its way any more.
    pub(super) fn wait_for_all(&self, keep: impl Fn(Vec<Arrived>)) {
        self.work_until(|queue| queue.waiting.is_empty() && !queue.busy, keep);
    }

    /// For whoever was called: keeps what waits by now, as one batch. For what comes later somebody else is called.
    pub(super) fn keep_waiting(&self, keep: impl Fn(Vec<Arrived>)) {
        let is_kept = Cell::new(false);
        let is_done = |queue: &mut Queue| {
            queue.called &= is_kept.get();
            is_kept.get() || queue.waiting.is_empty()
        };
        self.work_until(is_done, |batch| {
            is_kept.set(true);
            keep(batch);
        });
    }

    fn lock(&self) -> MutexGuard<'_, Queue> {
        self.queue.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// A batch is being kept as long as this lives.
struct AtWork<'a>(&'a Keeping);

impl Drop for AtWork<'_> {
    fn drop(&mut self) {
        let mut queue = self.0.lock();
        queue.being_kept.clear();
        queue.busy = false;
        self.0.turned.notify_all();
    }
}

#[cfg(test)]
mod tests {
    use std::sync::atomic::{AtomicUsize, Ordering};
    use std::time::Duration;

    use super::*;

    fn arrived(byte: u8) -> Arrived {
        Arrived { digest: Digest::of(&[byte]), part: tempfile::tempfile().unwrap(), now_ms: 0 }
    }

    #[test]
    fn those_that_come_while_a_batch_is_kept_are_in_the_next_one_and_each_is_kept_once() {
        let (keeping, calls, kept) = (Keeping::default(), AtomicUsize::new(0), AtomicUsize::new(0));
        let keep = |batch: Vec<Arrived>| {
            std::thread::sleep(Duration::from_millis(50));
            calls.fetch_add(1, Ordering::SeqCst);
            kept.fetch_add(batch.len(), Ordering::SeqCst);
        };
        std::thread::scope(|scope| {
            for byte in 0..16 {
                let (keeping, keep, kept) = (&keeping, &keep, &kept);
                scope.spawn(move || {
                    keeping.add(arrived(byte));
                    keeping.wait_for(Digest::of(&[byte]), keep);
                    assert!(kept.load(Ordering::SeqCst) > 0);
                });
            }
        });
        assert_eq!(kept.load(Ordering::SeqCst), 16);
        assert!(calls.load(Ordering::SeqCst) < 16, "{calls:?} batches for 16 photographs");
    }

    #[test]
    fn whoever_asks_for_one_that_is_just_being_kept_waits_for_it() {
        let (keeping, is_kept) = (Keeping::default(), AtomicUsize::new(0));
        keeping.add(arrived(1));
        let slowly = |_: Vec<Arrived>| {
            std::thread::sleep(Duration::from_millis(200));
            is_kept.fetch_add(1, Ordering::SeqCst);
        };
        std::thread::scope(|scope| {
            scope.spawn(|| keeping.wait_for_all(slowly));
            while !keeping.lock().busy {
                std::thread::yield_now();
            }
            keeping.wait_for(Digest::of(&[1]), |_| unreachable!("another thread is at work"));
            assert_eq!(is_kept.load(Ordering::SeqCst), 1);
            // Nobody waits for what never came.
            keeping.wait_for(Digest::of(&[2]), |_| unreachable!("nothing waits"));
        });
    }

    #[test]
    fn one_is_called_for_all_that_wait_and_another_for_what_comes_after_he_began() {
        let (keeping, batches) = (Keeping::default(), Mutex::new(Vec::new()));
        assert!(!keeping.calls(), "nothing waits");
        keeping.add(arrived(1));
        assert!(keeping.calls());
        keeping.add(arrived(2));
        assert!(!keeping.calls(), "somebody is on his way");
        let keep = |batch: Vec<Arrived>| {
            let mut batches = batches.lock().unwrap();
            batches.push(batch.len());
            if batches.len() == 1 {
                keeping.add(arrived(3));
                assert!(keeping.calls(), "he has taken his batch");
            }
        };
        keeping.keep_waiting(keep);
        assert_eq!(*batches.lock().unwrap(), [2], "one batch, whatever came meanwhile");
        assert!(!keeping.calls(), "the other one is still on his way");
        keeping.keep_waiting(keep);
        keeping.keep_waiting(|_| unreachable!("nothing waits"));
        assert_eq!(*batches.lock().unwrap(), [2, 1]);
    }

    #[test]
    fn whoever_is_called_while_others_keep_a_batch_takes_what_they_left() {
        let (keeping, kept) = (Keeping::default(), AtomicUsize::new(0));
        keeping.add(arrived(1));
        let slowly = |batch: Vec<Arrived>| {
            std::thread::sleep(Duration::from_millis(200));
            kept.fetch_add(batch.len(), Ordering::SeqCst);
        };
        std::thread::scope(|scope| {
            scope.spawn(|| keeping.wait_for(Digest::of(&[1]), slowly));
            while !keeping.lock().busy {
                std::thread::yield_now();
            }
            keeping.add(arrived(2));
            assert!(keeping.calls());
            keeping.keep_waiting(|batch| {
                assert_eq!(kept.load(Ordering::SeqCst), 1, "one batch at a time");
                kept.fetch_add(batch.len(), Ordering::SeqCst);
            });
            assert_eq!(kept.load(Ordering::SeqCst), 2);
        });
    }

    #[test]
    fn a_batch_that_panics_keeps_nobody_waiting() {
        let keeping = Keeping::default();
        keeping.add(arrived(1));
        let broken = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| {
            keeping.wait_for_all(|_| std::panic::panic_any("broken"));
        }));
        assert!(broken.is_err());
        keeping.wait_for(Digest::of(&[1]), |_| unreachable!("it is not on its way any more"));
        keeping.wait_for_all(|_| unreachable!("nothing waits"));
    }
}
