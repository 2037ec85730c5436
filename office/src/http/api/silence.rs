//! How long nothing came. One timer for many waits: to set one anew for each part of a piece would wake the system each time.

use std::pin::{Pin, pin};
use std::time::Duration;

use tokio::time::{Instant, Sleep};

/// Ends a wait when nothing came for too long.
pub(super) struct Silence {
    most: Duration,
    heard: Instant,
    /// May go off too early; then it is set to what is left.
    timer: Pin<Box<Sleep>>,
}

impl Silence {
    /// Listens from now on.
    pub(super) fn of_at_most(most: Duration) -> Self {
        Self { most, heard: Instant::now(), timer: Box::pin(tokio::time::sleep(most)) }
    }

    /// Waits for the next thing to come; none where it was silent for too long.
    pub(super) async fn or<T>(&mut self, next: impl Future<Output = T>) -> Option<T> {
        let mut next = pin!(next);
        loop {
            tokio::select! {
                biased;
                came = &mut next => {
                    self.heard = Instant::now();
                    return Some(came);
                }
                () = self.timer.as_mut() => {
                    let over = self.heard + self.most;
                    if over <= Instant::now() {
                        return None;
                    }
                    self.timer.as_mut().reset(over);
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[tokio::test]
    async fn only_a_silence_ends_the_wait_however_long_all_of_it_takes() {
        let (most, step) = (Duration::from_millis(300), Duration::from_millis(120));
        let begun = Instant::now();
        let mut silence = Silence::of_at_most(most);
        for n in 0..6 {
            assert_eq!(
                silence
                    .or(async {
                        tokio::time::sleep(step).await;
                        n
                    })
                    .await,
                Some(n)
            );
        }
        assert!(begun.elapsed() > 2 * most);
        let last = Instant::now();
        assert_eq!(silence.or(std::future::pending::<()>()).await, None);
        assert!((most - step..4 * most).contains(&last.elapsed()), "{:?}", last.elapsed());
        assert!(last.elapsed() >= most);
    }

    #[tokio::test]
    async fn what_comes_at_the_last_moment_counts() {
        let mut silence = Silence::of_at_most(Duration::ZERO);
        assert_eq!(silence.or(async { 1 }).await, Some(1));
        assert_eq!(silence.or(std::future::pending::<()>()).await, None);
    }
}
