//! Rows of what the office vouches for, of packs' bytes, of seals over addenda and of visits that were imported.

use rusqlite::{Connection, OptionalExtension as _, params};

use super::StoreError;
use super::devices::DeviceId;
use crate::ids::{Digest, VisitId};

pub(crate) fn certificate(db: &Connection, device: DeviceId) -> Result<Option<String>, StoreError> {
    let sql = "SELECT certificate FROM device WHERE id = ?1";
    Ok(db.prepare_cached(sql)?.query_row([device], |row| row.get(0)).optional()?.flatten())
}

/// Keeps a device's certificate; the first one stays.
pub(crate) fn put_certificate(db: &Connection, device: DeviceId, jws: &str) -> Result<(), StoreError> {
    let sql = "UPDATE device SET certificate = ?2 WHERE id = ?1 AND certificate IS NULL";
    db.prepare_cached(sql)?.execute(params![device, jws])?;
    Ok(())
}

/// The office's receipts of a visit, in order.
pub(crate) fn receipts(db: &Connection, visit: &VisitId) -> Result<Vec<(u64, String)>, StoreError> {
    let mut query = db.prepare_cached("SELECT covers, jws FROM receipt WHERE visit = ?1 ORDER BY covers")?;
    let rows = query.query_map([visit], |row| Ok((row.get(0)?, row.get(1)?)))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// Keeps a receipt; the first one over so many events stays.
pub(crate) fn put_receipt(db: &Connection, visit: &VisitId, covers: u64, jws: &str) -> Result<(), StoreError> {
    let sql = "INSERT INTO receipt (visit, covers, jws) VALUES (?1, ?2, ?3) ON CONFLICT DO NOTHING";
    db.prepare_cached(sql)?.execute(params![visit, covers, jws])?;
    Ok(())
}

/// A seal over addenda.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct LaterSeal {
    pub(crate) covers: u64,
    pub(crate) last: Digest,
    pub(crate) jws: String,
    pub(crate) received_ms: i64,
}

/// Seals over addenda, in order.
pub(crate) fn later_seals(db: &Connection, visit: &VisitId) -> Result<Vec<LaterSeal>, StoreError> {
    let sql = "SELECT covers, last, jws, received_ms FROM later_seal WHERE visit = ?1 ORDER BY covers";
    let mut query = db.prepare_cached(sql)?;
    let rows = query.query_map([visit], |row| {
        Ok(LaterSeal { covers: row.get(0)?, last: row.get(1)?, jws: row.get(2)?, received_ms: row.get(3)? })
    })?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// Keeps a seal over addenda; the first one over so many events stays.
pub(crate) fn put_later_seal(db: &Connection, visit: &VisitId, seal: &LaterSeal) -> Result<(), StoreError> {
    let sql = "INSERT INTO later_seal (visit, covers, last, jws, received_ms) VALUES (?1, ?2, ?3, ?4, ?5)
               ON CONFLICT DO NOTHING";
    db.prepare_cached(sql)?.execute(params![visit, seal.covers, seal.last, seal.jws, seal.received_ms])?;
    Ok(())
}

pub(crate) fn pack(db: &Connection, digest: Digest) -> Result<Option<Vec<u8>>, StoreError> {
    let sql = "SELECT bytes FROM pack WHERE digest = ?1";
    Ok(db.prepare_cached(sql)?.query_row([digest], |row| row.get(0)).optional()?)
}

/// Keeps a pack's bytes. Those that are here already are not handed to the database, which would copy them.
pub(crate) fn put_pack(db: &Connection, digest: Digest, bytes: &[u8]) -> Result<(), StoreError> {
    if !db.prepare_cached("SELECT 1 FROM pack WHERE digest = ?1")?.exists([digest])? {
        let sql = "INSERT INTO pack (digest, bytes) VALUES (?1, ?2) ON CONFLICT DO NOTHING";
        db.prepare_cached(sql)?.execute(params![digest, bytes])?;
    }
    Ok(())
}

/// What other offices vouched for when the visit was imported; none where it came from its own device.
pub(crate) fn imported(db: &Connection, visit: &VisitId) -> Result<Option<String>, StoreError> {
    let sql = "SELECT offices FROM imported WHERE visit = ?1";
    Ok(db.prepare_cached(sql)?.query_row([visit], |row| row.get(0)).optional()?)
}

/// Keeps what other offices vouch for. A later import may bring more of them, and never takes an anchor away.
pub(crate) fn put_imported(
    db: &Connection,
    visit: &VisitId,
    offices: &str,
    anchored: bool,
    now_ms: i64,
) -> Result<(), StoreError> {
    let sql = "INSERT INTO imported (visit, offices, anchored, imported_ms) VALUES (?1, ?2, ?3, ?4)
               ON CONFLICT (visit) DO UPDATE SET offices = ?2, anchored = max(anchored, ?3)";
    db.prepare_cached(sql)?.execute(params![visit, offices, anchored, now_ms])?;
    Ok(())
}
