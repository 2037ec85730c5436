//! Ways into the office's pages: a link that works once, then a session.

use crate::ids::Secret;
use crate::store::{Store, StoreError, ways_in};

const DAY_MS: i64 = 24 * 3600 * 1000;

/// A printed link that nobody used stops working after this.
const LINK_MS: i64 = 7 * DAY_MS;

/// A session lasts this long.
pub(crate) const SESSION_MS: i64 = 30 * DAY_MS;

/// No link was ever made: the office starts for the first time.
pub(crate) fn first_start(store: &Store) -> Result<bool, StoreError> {
    store.read(ways_in::no_link_yet)
}

/// Makes a link that works once.
pub(crate) fn new_link(store: &Store, secret: &Secret, now_ms: i64) -> Result<(), StoreError> {
    store.write(|db| ways_in::add_link(db, secret.hash(), now_ms))
}

/// Uses a link up and begins a session under the fresh secret. False where the link does not work (any more).
pub(crate) fn enter(store: &Store, link: &str, session: &Secret, now_ms: i64) -> Result<bool, StoreError> {
    store.write(|db| {
        let works = ways_in::use_link(db, Secret::hash_of(link), now_ms, now_ms - LINK_MS)?;
        if works {
            ways_in::add_session(db, session.hash(), now_ms + SESSION_MS)?;
        }
        Ok(works)
    })
}

/// Whether this cookie's session holds.
pub(crate) fn holds(store: &Store, session: &str, now_ms: i64) -> Result<bool, StoreError> {
    store.read(|db| ways_in::session_holds(db, Secret::hash_of(session), now_ms))
}

/// Ends a session.
pub(crate) fn leave(store: &Store, session: &str, now_ms: i64) -> Result<(), StoreError> {
    store.write(|db| ways_in::end_session(db, Secret::hash_of(session), now_ms))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn store() -> (tempfile::TempDir, Store) {
        let root = tempfile::tempdir().unwrap();
        let store = Store::open(root.path()).unwrap();
        (root, store)
    }

    fn secret(byte: u8) -> Secret {
        Secret::from_bytes([byte; 32])
    }

    #[test]
    fn a_link_works_once_and_opens_one_session() {
        let (_root, store) = store();
        assert!(first_start(&store).unwrap());
        new_link(&store, &secret(1), 1000).unwrap();
        assert!(!first_start(&store).unwrap());
        assert!(enter(&store, &secret(1).text(), &secret(2), 2000).unwrap());
        assert!(!enter(&store, &secret(1).text(), &secret(3), 3000).unwrap());
        assert!(holds(&store, &secret(2).text(), 4000).unwrap());
        assert!(!holds(&store, &secret(3).text(), 4000).unwrap());
    }

    #[test]
    fn a_link_left_lying_for_a_week_does_not_work() {
        let (_root, store) = store();
        new_link(&store, &secret(1), 1000).unwrap();
        assert!(!enter(&store, &secret(1).text(), &secret(2), 1000 + LINK_MS).unwrap());
    }

    #[test]
    fn a_session_ends_by_leaving_and_by_time() {
        let (_root, store) = store();
        for (link, session) in [(1, 2), (3, 4)] {
            new_link(&store, &secret(link), 0).unwrap();
            enter(&store, &secret(link).text(), &secret(session), 0).unwrap();
        }
        leave(&store, &secret(2).text(), 10).unwrap();
        assert!(!holds(&store, &secret(2).text(), 10).unwrap());
        assert!(holds(&store, &secret(4).text(), SESSION_MS - 1).unwrap());
        assert!(!holds(&store, &secret(4).text(), SESSION_MS).unwrap());
    }
}
