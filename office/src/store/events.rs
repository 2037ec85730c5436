//! Rows of events, visits and branches.

use rusqlite::{Connection, OptionalExtension as _, params};

use super::StoreError;
use super::devices::DeviceId;
use crate::ids::{Digest, VisitId};

/// How far a visit has arrived.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Head {
    /// Who sends it.
    pub(crate) device: DeviceId,
    /// The sequence number that is wanted next; also how many events are stored.
    pub(crate) next: u64,
    /// The hash of the last stored event.
    pub(crate) hash: Digest,
}

pub(crate) fn head(db: &Connection, visit: &VisitId) -> Result<Option<Head>, StoreError> {
    let sql = "SELECT device, next, head FROM visit WHERE id = ?1";
    let row = db
        .prepare_cached(sql)?
        .query_row([visit], |row| Ok(Head { device: row.get(0)?, next: row.get(1)?, hash: row.get(2)? }));
    Ok(row.optional()?)
}

pub(crate) fn put_head(db: &Connection, visit: &VisitId, head: Head, now_ms: i64) -> Result<(), StoreError> {
    let sql = "INSERT INTO visit (id, device, next, head, first_received_ms, last_received_ms)
               VALUES (?1, ?2, ?3, ?4, ?5, ?5)
               ON CONFLICT (id) DO UPDATE SET next = ?3, head = ?4, last_received_ms = ?5";
    db.prepare_cached(sql)?.execute(params![visit, head.device, head.next, head.hash, now_ms])?;
    Ok(())
}

/// The hash of one stored event.
pub(crate) fn hash_at(db: &Connection, visit: &VisitId, seq: u64) -> Result<Option<Digest>, StoreError> {
    let sql = "SELECT hash FROM event WHERE visit = ?1 AND seq = ?2";
    Ok(db.prepare_cached(sql)?.query_row(params![visit, seq], |row| row.get(0)).optional()?)
}

pub(crate) fn append(
    db: &Connection,
    visit: &VisitId,
    seq: u64,
    bytes: &[u8],
    hash: Digest,
    now_ms: i64,
) -> Result<(), StoreError> {
    let sql = "INSERT INTO event (visit, seq, bytes, hash, received_ms) VALUES (?1, ?2, ?3, ?4, ?5)";
    db.prepare_cached(sql)?.execute(params![visit, seq, bytes, hash, now_ms])?;
    Ok(())
}

/// The original bytes of all events of a visit, in order.
pub(crate) fn all(db: &Connection, visit: &VisitId) -> Result<Vec<Vec<u8>>, StoreError> {
    let mut query = db.prepare_cached("SELECT bytes FROM event WHERE visit = ?1 ORDER BY seq")?;
    let rows = query.query_map([visit], |row| row.get(0))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// The bytes of events of a visit from one number on, at most so many.
pub(crate) fn from(db: &Connection, visit: &VisitId, from: u64, most: usize) -> Result<Vec<Vec<u8>>, StoreError> {
    let sql = "SELECT bytes FROM event WHERE visit = ?1 AND seq >= ?2 ORDER BY seq LIMIT ?3";
    let mut query = db.prepare_cached(sql)?;
    let rows = query.query_map(params![visit, from, most], |row| row.get(0))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// When each event of a visit came, in order.
pub(crate) fn received(db: &Connection, visit: &VisitId) -> Result<Vec<i64>, StoreError> {
    let mut query = db.prepare_cached("SELECT received_ms FROM event WHERE visit = ?1 ORDER BY seq")?;
    let rows = query.query_map([visit], |row| row.get(0))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// An event that is kept beside the chain.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Beside {
    pub(crate) seq: u64,
    pub(crate) hash: Digest,
    pub(crate) bytes: Vec<u8>,
    pub(crate) device: DeviceId,
}

/// What is kept beside a visit's chain, by device and number.
pub(crate) fn beside(db: &Connection, visit: &VisitId) -> Result<Vec<Beside>, StoreError> {
    let sql = "SELECT seq, hash, bytes, device FROM branch WHERE visit = ?1 ORDER BY device, seq, received_ms";
    let mut query = db.prepare_cached(sql)?;
    let rows = query.query_map([visit], |row| {
        Ok(Beside { seq: row.get(0)?, hash: row.get(1)?, bytes: row.get(2)?, device: row.get(3)? })
    })?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// Keeps an event that contradicts what is stored. The same one again changes nothing.
pub(crate) fn keep_branch(
    db: &Connection,
    visit: &VisitId,
    seq: u64,
    bytes: &[u8],
    hash: Digest,
    device: DeviceId,
    now_ms: i64,
) -> Result<(), StoreError> {
    let sql = "INSERT INTO branch (visit, hash, seq, bytes, device, received_ms) VALUES (?1, ?2, ?3, ?4, ?5, ?6)
               ON CONFLICT DO NOTHING";
    db.prepare_cached(sql)?.execute(params![visit, hash, seq, bytes, device, now_ms])?;
    Ok(())
}

/// How many events of a visit are kept beside its chain.
pub(crate) fn branch_count(db: &Connection, visit: &VisitId) -> Result<u64, StoreError> {
    let sql = "SELECT count(*) FROM branch WHERE visit = ?1";
    Ok(db.prepare_cached(sql)?.query_row([visit], |row| row.get(0))?)
}
