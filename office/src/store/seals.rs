//! Rows of seals.

use rusqlite::{Connection, OptionalExtension as _, params};

use super::StoreError;
use crate::ids::{Digest, VisitId};

/// A seal that was verified when it came.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Seal {
    /// The compact JWS as it came.
    pub(crate) jws: String,
    /// The key that made it, SEC1 uncompressed.
    pub(crate) public_key: Vec<u8>,
    /// The hash of the last event under it.
    pub(crate) last: Digest,
    /// How many events are under it.
    pub(crate) covers: u64,
    /// Nothing was missing.
    pub(crate) complete: bool,
    /// When it came.
    pub(crate) received_ms: i64,
}

pub(crate) fn of(db: &Connection, visit: &VisitId) -> Result<Option<Seal>, StoreError> {
    let sql = "SELECT jws, public_key, last, covers, complete, received_ms FROM seal WHERE visit = ?1";
    let row = db.prepare_cached(sql)?.query_row([visit], |row| {
        Ok(Seal {
            jws: row.get(0)?,
            public_key: row.get(1)?,
            last: row.get(2)?,
            covers: row.get(3)?,
            complete: row.get(4)?,
            received_ms: row.get(5)?,
        })
    });
    Ok(row.optional()?)
}

pub(crate) fn put(db: &Connection, visit: &VisitId, seal: &Seal) -> Result<(), StoreError> {
    let sql = "INSERT INTO seal (visit, jws, public_key, last, covers, complete, received_ms)
               VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
    db.prepare_cached(sql)?.execute(params![
        visit,
        seal.jws,
        seal.public_key,
        seal.last,
        seal.covers,
        seal.complete,
        seal.received_ms
    ])?;
    Ok(())
}
