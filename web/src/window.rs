//! One window at a time.

use std::sync::{Mutex, PoisonError};

/// Which window holds the door.
#[derive(Default)]
pub(crate) struct Holder(Mutex<Option<String>>);

impl Holder {
    /// This window holds the door from now on.
    pub(crate) fn take(&self, window: &str) {
        *self.0.lock().unwrap_or_else(PoisonError::into_inner) = Some(window.to_owned());
    }

    /// Whether this window may call. Where nobody holds the door (the process was started anew), it takes it.
    pub(crate) fn admits(&self, window: &str) -> bool {
        let mut holder = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        !window.is_empty() && holder.get_or_insert_with(|| window.to_owned()) == window
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_window_that_took_the_door_holds_it() {
        let holder = Holder::default();
        assert!(holder.admits("one"), "after a restart the first to call goes on");
        assert!(!holder.admits("two"));
        holder.take("two");
        assert!(holder.admits("two") && !holder.admits("one") && !holder.admits(""));
    }
}
