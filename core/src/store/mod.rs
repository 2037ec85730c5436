//! SQLite: the log, what the shell is asked, the outbox, and what lies beside them.

mod beside;
mod commit;
mod effects;
mod log;
mod news;
mod outbox;
pub mod shelf;

pub use beside::Acted;
pub use commit::{Commit, NewEffect, Sealed};
pub use effects::StoredEffect;
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

const MIGRATIONS: &[&str] =
    &[include_str!("migrations/0001.sql"), include_str!("migrations/0002.sql"), include_str!("migrations/0003.sql")];

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
