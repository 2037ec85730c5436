//! What the office keeps: an SQLite database and a folder of photographs. Knows no HTTP and decides nothing.

pub(crate) mod assignments;
pub(crate) mod devices;
pub(crate) mod events;
pub(crate) mod folder;
pub(crate) mod listings;
pub(crate) mod photos;
pub(crate) mod seals;
pub(crate) mod settings;
pub(crate) mod summaries;
pub(crate) mod ways_in;

use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};

use rusqlite::types::{FromSql, FromSqlError, FromSqlResult, ToSql, ToSqlOutput, ValueRef};
use rusqlite::{Connection, Transaction, TransactionBehavior};

use crate::ids::{Digest, VisitId};
use folder::Folder;

/// The office's disk or database did not do what was asked. Nothing half done stays behind; trying again is safe.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// The database refused.
    #[error("the office's database could not be read or written; look at its disk")]
    Database(#[from] rusqlite::Error),
    /// A file or folder refused.
    #[error("{path} could not be {doing}; look at the office's disk")]
    File {
        /// Reading, writing, …
        doing: &'static str,
        /// Which.
        path: PathBuf,
        /// The system's words.
        source: std::io::Error,
    },
    /// The folder was written by a newer program.
    #[error("the office's folder is of version {found}, this program knows {known}; use the newer program")]
    Newer {
        /// What the folder says.
        found: usize,
        /// What the program knows.
        known: usize,
    },
}

/// The database's history. A number in it never changes its meaning.
const MIGRATIONS: &[&str] = &[include_str!("../../migrations/0001.sql"), include_str!("../../migrations/0002.sql")];

/// How long a writer waits for another one before it gives up.
const BUSY: std::time::Duration = std::time::Duration::from_secs(5);

/// The office's memory.
pub(crate) struct Store {
    db: Mutex<Connection>,
    pub(crate) folder: Folder,
}

impl Store {
    /// Opens the folder, makes it where there is none, and brings its database up to date.
    pub(crate) fn open(root: &Path) -> Result<Self, StoreError> {
        let folder = Folder::open(root)?;
        let mut db = Connection::open(folder.database())?;
        db.busy_timeout(BUSY)?;
        db.pragma_update(None, "journal_mode", "WAL")?;
        db.pragma_update(None, "synchronous", "FULL")?;
        db.pragma_update(None, "foreign_keys", true)?;
        migrate(&mut db)?;
        Ok(Self { db: Mutex::new(db), folder })
    }

    /// Reads. Several reads of one call see one state only inside [`Store::write`].
    pub(crate) fn read<T>(&self, work: impl FnOnce(&Connection) -> Result<T, StoreError>) -> Result<T, StoreError> {
        work(&self.connection())
    }

    /// Writes all or nothing. When this returns `Ok`, it is on disk (WAL with `synchronous = FULL`).
    pub(crate) fn write<T, E: From<StoreError>>(
        &self,
        work: impl FnOnce(&Transaction<'_>) -> Result<T, E>,
    ) -> Result<T, E> {
        let mut db = self.connection();
        let begin = db.transaction_with_behavior(TransactionBehavior::Immediate);
        let transaction = begin.map_err(StoreError::from)?;
        let done = work(&transaction)?;
        transaction.commit().map_err(StoreError::from)?;
        Ok(done)
    }

    /// A panic of another thread leaves the connection sound: its transaction was rolled back on unwinding.
    fn connection(&self) -> MutexGuard<'_, Connection> {
        self.db.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

fn migrate(db: &mut Connection) -> Result<(), StoreError> {
    let transaction = db.transaction_with_behavior(TransactionBehavior::Immediate)?;
    let found: usize = transaction.pragma_query_value(None, "user_version", |row| row.get(0))?;
    if found > MIGRATIONS.len() {
        return Err(StoreError::Newer { found, known: MIGRATIONS.len() });
    }
    for sql in MIGRATIONS.iter().skip(found) {
        transaction.execute_batch(sql)?;
    }
    transaction.pragma_update(None, "user_version", MIGRATIONS.len())?;
    Ok(transaction.commit()?)
}

impl ToSql for Digest {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(ToSqlOutput::from(self.as_bytes().as_slice()))
    }
}

impl FromSql for Digest {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        let bytes = value.as_blob()?.try_into().map_err(|_| FromSqlError::InvalidType)?;
        Ok(Digest::from_bytes(bytes))
    }
}

impl ToSql for VisitId {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(ToSqlOutput::from(self.as_str()))
    }
}

impl FromSql for VisitId {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        VisitId::parse(value.as_str()?).map_err(FromSqlError::other)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_folder_of_a_newer_program_is_refused_and_left_alone() {
        let root = tempfile::tempdir().unwrap();
        drop(Store::open(root.path()).unwrap());
        let db = Connection::open(root.path().join("office.db")).unwrap();
        db.pragma_update(None, "user_version", 99).unwrap();
        let refused = Store::open(root.path());
        assert!(matches!(refused, Err(StoreError::Newer { found: 99, .. })));
    }

    #[test]
    fn the_database_writes_through_to_disk_before_it_answers() {
        let root = tempfile::tempdir().unwrap();
        let store = Store::open(root.path()).unwrap();
        let pragma =
            |name| store.read(|db| Ok(db.pragma_query_value(None, name, |row| row.get::<_, i64>(0))?)).unwrap();
        // https://www.sqlite.org/pragma.html#pragma_synchronous: FULL is 2.
        assert_eq!(pragma("synchronous"), 2);
        let mode: String = store.read(|db| Ok(db.pragma_query_value(None, "journal_mode", |row| row.get(0))?)).unwrap();
        assert_eq!(mode, "wal");
    }
}
