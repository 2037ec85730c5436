//! SQLite: the log, what the shell is asked, the outbox, and what lies beside them.

mod beside;
mod commit;
mod effects;
mod handed;
mod log;
mod news;
mod outbox;
pub mod shelf;

pub use beside::Acted;
pub use commit::{Commit, NewEffect, Sealed};
pub use effects::StoredEffect;
pub use handed::Coming;
pub use log::VisitRow;
pub use outbox::{OutboxCount, OutboxGroup, OutboxKind, OutboxRow, OutboxState};

use std::path::Path;
use std::time::Duration;

use rusqlite::Connection;

/// The store of one device.
pub struct Store {
    connection: Connection,
}

/// Why the store failed. Whatever it was, the transaction did not happen.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// The disk is full.
    #[error("there is no room left on this device; free some space and do it again, nothing was lost")]
    Full,
    /// Another program has it open.
    #[error("another program has this folder open; close it first")]
    InUse,
    /// Written by a later version.
    #[error("this folder was written by a later version ({0}); update the program")]
    Later(i64),
    /// What is stored cannot be read.
    #[error("{what} cannot be read: {detail}")]
    Damaged {
        /// Of what.
        what: String,
        /// Why.
        detail: String,
    },
    /// Anything else that SQLite says.
    #[error("the store failed: {0}")]
    Sqlite(rusqlite::Error),
}

impl From<rusqlite::Error> for StoreError {
    fn from(error: rusqlite::Error) -> Self {
        use rusqlite::ErrorCode;
        match error.sqlite_error_code() {
            Some(ErrorCode::DiskFull) => StoreError::Full,
            Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => StoreError::InUse,
            _ => StoreError::Sqlite(error),
        }
    }
}

const MIGRATIONS: &[&str] = &[
    include_str!("migrations/0001.sql"),
    include_str!("migrations/0002.sql"),
    include_str!("migrations/0003.sql"),
    include_str!("migrations/0004.sql"),
];

impl Store {
    /// Opens the store in a folder and brings it to this version's form. Only one program at a time has it.
    ///
    /// # Errors
    /// Where it cannot be opened, is open elsewhere, or is of a later version.
    pub fn open(folder: &Path) -> Result<Store, StoreError> {
        let connection = Connection::open(folder.join("field.db"))?;
        // Whoever has the folder keeps it: waiting for them is of no use.
        connection.busy_timeout(Duration::ZERO)?;
        connection.pragma_update(None, "locking_mode", "EXCLUSIVE")?;
        connection.pragma_update_and_check(None, "journal_mode", "WAL", |_| Ok(()))?;
        connection.pragma_update(None, "synchronous", "FULL")?;
        connection.pragma_update(None, "fullfsync", "ON")?;
        connection.pragma_update(None, "foreign_keys", "ON")?;
        let mut store = Store { connection };
        store.migrate()?;
        Ok(store)
    }

    fn migrate(&mut self) -> Result<(), StoreError> {
        // Immediate: takes the lock now, so that a second program is told at once.
        let transaction = self.connection.transaction_with_behavior(rusqlite::TransactionBehavior::Immediate)?;
        let have: i64 = transaction.pragma_query_value(None, "user_version", |row| row.get(0))?;
        let known = MIGRATIONS.len() as i64;
        if have > known {
            return Err(StoreError::Later(have));
        }
        if have == known {
            // Nothing to write: a folder without room opens too.
            return Ok(());
        }
        for (number, sql) in (1..).zip(MIGRATIONS) {
            if number > have {
                transaction.execute_batch(sql)?;
            }
        }
        transaction.pragma_update(None, "user_version", known)?;
        transaction.commit()?;
        Ok(())
    }

    /// Limits the database's pages, to rehearse a full disk.
    ///
    /// # Errors
    /// Where SQLite turns it down.
    pub fn limit_pages(&self, pages: u32) -> Result<(), StoreError> {
        self.connection.pragma_update_and_check(None, "max_page_count", pages, |_| Ok(()))?;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::id::VisitId;

    /// A folder as the version before the outbox's third form left it.
    fn written_before(folder: &Path) {
        let connection = Connection::open(folder.join("field.db")).unwrap();
        for sql in MIGRATIONS.iter().take(2) {
            connection.execute_batch(sql).unwrap();
        }
        connection.pragma_update(None, "user_version", 2).unwrap();
        connection
            .execute_batch(
                "INSERT INTO outbox (kind, visit, first, count, state, since_utc_ms) VALUES
                     ('events', 'v', 0, 3, 'safe', 1), ('events', 'v', 3, 1, 'stuck', 2), ('events', 'v', 4, 2, 'waiting', 3);
                 UPDATE outbox SET why = 'The office said no: because' WHERE state = 'stuck';
                 INSERT INTO outbox (kind, visit, digest, media, bytes, since_utc_ms) VALUES ('photo', 'v', 'ab', 'image/jpeg', 7, 4);
                 INSERT INTO outbox (kind, visit, since_utc_ms) VALUES ('seal', 'v', 5);
                 INSERT INTO assignment (id, due, body, salt) VALUES ('a', '2026-05-04', '{}', 's');",
            )
            .unwrap();
    }

    #[test]
    fn what_waited_in_a_folder_of_an_earlier_version_still_waits_and_what_was_stuck_is_tried_again() {
        let folder = tempfile::tempdir().unwrap();
        written_before(folder.path());
        let mut store = Store::open(folder.path()).unwrap();
        let rows: Vec<_> = store.outbox(10).unwrap().into_iter().map(|row| (row.id, row.kind, row.why)).collect();
        let none = String::new;
        assert_eq!(
            rows,
            [
                (2, OutboxKind::Events, none()),
                (3, OutboxKind::Events, none()),
                (4, OutboxKind::Photo, none()),
                (5, OutboxKind::Seal, none()),
            ]
        );
        let count = store.outbox_count().unwrap();
        assert_eq!((count.events, count.photos, count.photo_bytes, count.seals, count.stuck), (3, 1, 7, 1, 0));
        assert_eq!(store.next_small(10).unwrap().iter().map(|row| row.id).collect::<Vec<_>>(), [2], "events in order");
        // Numbers go on where they were, and what is safe stays so.
        store.events_safe(&VisitId("v".into()), 6, 99).unwrap();
        store.row_stuck(1, "conflict").unwrap();
        assert_eq!(store.next_small(10).unwrap().iter().map(|row| row.id).collect::<Vec<_>>(), [5], "then the seal");
        assert_eq!((store.outbox_count().unwrap().stuck, store.last_safe_utc_ms().unwrap()), (0, Some(99)));
        drop(store);
        assert_eq!(Store::open(folder.path()).unwrap().outbox(10).unwrap().len(), 2, "opened again as it is");
    }
}
