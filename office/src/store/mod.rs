//! What the office keeps: an SQLite database and a folder of photographs. Knows no HTTP and decides nothing.

pub(crate) mod assignments;
pub(crate) mod block_file;
pub(crate) mod clocks;
pub(crate) mod devices;
pub(crate) mod events;
pub(crate) mod folder;
pub(crate) mod handovers;
mod hashed;
pub(crate) mod heard;
pub(crate) mod keeping;
pub(crate) mod listings;
pub(crate) mod news;
pub(crate) mod office_key;
pub(crate) mod photos;
pub(crate) mod reviews;
pub(crate) mod seals;
pub(crate) mod settings;
pub(crate) mod summaries;
pub(crate) mod tokens;
pub(crate) mod vouchers;
pub(crate) mod ways_in;

use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};

use rusqlite::types::{FromSql, FromSqlError, FromSqlResult, ToSql, ToSqlOutput, ValueRef};
use rusqlite::{Connection, Transaction, TransactionBehavior};

use crate::ids::{Digest, VisitId};
use folder::Folder;
use hashed::Hashed;
use heard::Heard;
use keeping::{Arrived, Keeping};
use office_key::OfficeKey;

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
const MIGRATIONS: &[&str] = &[
    include_str!("../../migrations/0001.sql"),
    include_str!("../../migrations/0002.sql"),
    include_str!("../../migrations/0003.sql"),
    include_str!("../../migrations/0004.sql"),
];

/// How long a writer waits for another one before it gives up.
const BUSY: std::time::Duration = std::time::Duration::from_secs(5);

/// The office's memory.
pub(crate) struct Store {
    db: Mutex<Connection>,
    /// Reads do not wait for a writer that waits for the disk.
    reader: Mutex<Connection>,
    keeping: Keeping,
    pub(crate) folder: Folder,
    /// With what the office vouches.
    pub(crate) key: OfficeKey,
    /// Two things that are remembered only to be quicker: forgetting them changes nothing that is kept.
    pub(crate) hashed: Hashed,
    pub(crate) heard: Heard,
}

impl Store {
    /// Opens the folder, makes it where there is none, and brings its database up to date.
    pub(crate) fn open(root: &Path) -> Result<Self, StoreError> {
        let folder = Folder::open(root)?;
        let mut db = connect(&folder)?;
        migrate(&mut db)?;
        let (reader, key) = (connect(&folder)?, OfficeKey::of(&folder.key())?);
        reader.pragma_update(None, "query_only", true)?;
        Ok(Self {
            db: Mutex::new(db),
            reader: Mutex::new(reader),
            keeping: Keeping::default(),
            folder,
            key,
            hashed: Hashed::default(),
            heard: Heard::default(),
        })
    }

    /// Reads what was committed. Several reads of one call see one state only inside [`Store::write`].
    pub(crate) fn read<T>(&self, work: impl FnOnce(&Connection) -> Result<T, StoreError>) -> Result<T, StoreError> {
        work(&held(&self.reader))
    }

    /// Writes all or nothing. When this returns `Ok`, it is on disk (WAL with `synchronous = FULL`).
    pub(crate) fn write<T, E: From<StoreError>>(
        &self,
        work: impl FnOnce(&Transaction<'_>) -> Result<T, E>,
    ) -> Result<T, E> {
        transact(&mut held(&self.db), work)
    }

    /// Writes all or nothing, without waiting for the disk: after a power failure it may be as if it had not been written.
    /// Only for what its sender says again when it is asked to. Whatever [`Store::write`] writes later takes it along to
    /// the disk, since both stand in one log in their order (<https://www.sqlite.org/pragma.html#pragma_synchronous>:
    /// with WAL, `NORMAL` loses no consistency, only the last commits).
    pub(crate) fn note<T, E: From<StoreError>>(
        &self,
        work: impl FnOnce(&Transaction<'_>) -> Result<T, E>,
    ) -> Result<T, E> {
        let mut db = held(&self.db);
        db.pragma_update(None, "synchronous", "NORMAL").map_err(StoreError::from)?;
        let done = transact(&mut db, work);
        // Before anyone else can write: the connection is held.
        db.pragma_update(None, "synchronous", "FULL").map_err(StoreError::from)?;
        done
    }

    /// Lines up a photograph whose bytes are here and right. It is safe only after [`Store::keep_waiting`], and where
    /// that is never called or fails, its part or its original lies there for whoever asks next.
    pub(crate) fn line_up(&self, arrived: Arrived) {
        self.keeping.add(arrived);
    }

    /// Returns when this photograph is not on its way onto the disk any more, whether or not it could be kept.
    pub(crate) fn keep_arrived(&self, digest: Digest) {
        self.keeping.wait_for(digest, |batch| self.keep(&batch));
    }

    /// True where somebody must come to [`Store::keep_waiting`], and nobody was called yet.
    pub(crate) fn calls_for_keeping(&self) -> bool {
        self.keeping.calls()
    }

    /// Puts what was lined up by now onto the disk.
    pub(crate) fn keep_waiting(&self) {
        self.keeping.keep_waiting(|batch| self.keep(&batch));
    }

    /// Returns when nothing is on its way onto the disk any more.
    pub(crate) fn keep_all_arrived(&self) {
        self.keeping.wait_for_all(|batch| self.keep(&batch));
    }

    /// Puts files and folders onto the disk, then all their rows in one transaction.
    fn keep(&self, batch: &[Arrived]) {
        let kept = batch.iter().filter(|one| self.folder.keep(one.digest, &one.part, one.now_ms).is_ok());
        let kept: Vec<_> = kept.map(|one| (one.digest, one.now_ms)).collect();
        // One that failed has no row: whoever asks for it next tries it again, and is told what failed then.
        let _ =
            self.write::<_, StoreError>(|db| kept.iter().try_for_each(|(one, at)| photos::mark_safe(db, *one, *at)));
    }
}

/// A panic of another thread leaves a connection sound: its transaction was rolled back on unwinding.
fn held(db: &Mutex<Connection>) -> MutexGuard<'_, Connection> {
    db.lock().unwrap_or_else(PoisonError::into_inner)
}

/// So many statements stay prepared on a connection. All that devices need while they send fit in.
const STATEMENTS: usize = 64;

fn connect(folder: &Folder) -> Result<Connection, StoreError> {
    let db = Connection::open(folder.database())?;
    db.busy_timeout(BUSY)?;
    db.set_prepared_statement_cache_capacity(STATEMENTS);
    db.pragma_update(None, "journal_mode", "WAL")?;
    db.pragma_update(None, "synchronous", "FULL")?;
    db.pragma_update(None, "foreign_keys", true)?;
    Ok(db)
}

fn transact<T, E: From<StoreError>>(
    db: &mut Connection,
    work: impl FnOnce(&Transaction<'_>) -> Result<T, E>,
) -> Result<T, E> {
    let begin = db.transaction_with_behavior(TransactionBehavior::Immediate);
    let transaction = begin.map_err(StoreError::from)?;
    let done = work(&transaction)?;
    transaction.commit().map_err(StoreError::from)?;
    Ok(done)
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
        let level =
            || store.write::<i64, StoreError>(|db| Ok(db.pragma_query_value(None, "synchronous", |row| row.get(0))?));
        // https://www.sqlite.org/pragma.html#pragma_synchronous: FULL is 2, NORMAL is 1.
        assert_eq!(level().unwrap(), 2);
        let noted =
            store.note::<i64, StoreError>(|db| Ok(db.pragma_query_value(None, "synchronous", |row| row.get(0))?));
        assert_eq!(noted.unwrap(), 1);
        // Also when what was noted failed.
        store.note::<(), StoreError>(|db| Ok(db.execute_batch("INSERT INTO nothing VALUES (1)")?)).unwrap_err();
        assert_eq!(level().unwrap(), 2);
        let mode: String = store.read(|db| Ok(db.pragma_query_value(None, "journal_mode", |row| row.get(0))?)).unwrap();
        assert_eq!(mode, "wal");
    }
}
