//! Rows of visits that went over to another device.

use rusqlite::{Connection, Row, params};

use super::StoreError;
use super::devices::DeviceId;
use crate::ids::{Digest, VisitId};

/// The office let another device go on with a visit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Handover {
    pub(crate) from: DeviceId,
    pub(crate) to: DeviceId,
    /// How far the visit had arrived then.
    pub(crate) next: u64,
    pub(crate) head: Digest,
    pub(crate) at_ms: i64,
}

/// All of a visit, in order.
pub(crate) fn of(db: &Connection, visit: &VisitId) -> Result<Vec<Handover>, StoreError> {
    let sql = "SELECT from_device, to_device, next, head, at_ms FROM handover WHERE visit = ?1 ORDER BY number";
    let mut query = db.prepare_cached(sql)?;
    let rows = query.query_map([visit], read)?;
    Ok(rows.collect::<Result<_, _>>()?)
}

pub(crate) fn add(db: &Connection, visit: &VisitId, handover: Handover) -> Result<(), StoreError> {
    let Handover { from, to, next, head, at_ms } = handover;
    let sql = "INSERT INTO handover (visit, number, from_device, to_device, next, head, at_ms)
               SELECT ?1, count(*), ?2, ?3, ?4, ?5, ?6 FROM handover WHERE visit = ?1";
    db.prepare_cached(sql)?.execute(params![visit, from, to, next, head, at_ms])?;
    db.prepare_cached("UPDATE visit SET device = ?2 WHERE id = ?1")?.execute(params![visit, to])?;
    Ok(())
}

fn read(row: &Row<'_>) -> rusqlite::Result<Handover> {
    Ok(Handover { from: row.get(0)?, to: row.get(1)?, next: row.get(2)?, head: row.get(3)?, at_ms: row.get(4)? })
}

/// Keeps the seal of a device that had handed its visit over. The same one again changes nothing.
pub(crate) fn keep_seal(
    db: &Connection,
    visit: &VisitId,
    device: DeviceId,
    covers: u64,
    jws: &str,
    now_ms: i64,
) -> Result<(), StoreError> {
    let sql = "INSERT INTO branch_seal (visit, device, covers, jws, received_ms) VALUES (?1, ?2, ?3, ?4, ?5)
               ON CONFLICT DO NOTHING";
    db.prepare_cached(sql)?.execute(params![visit, device, covers, jws, now_ms])?;
    Ok(())
}

/// Who sealed beside the chain, and how many events.
pub(crate) fn seals(db: &Connection, visit: &VisitId) -> Result<Vec<(DeviceId, u64)>, StoreError> {
    let mut query =
        db.prepare_cached("SELECT device, covers FROM branch_seal WHERE visit = ?1 ORDER BY device, covers")?;
    let rows = query.query_map([visit], |row| Ok((row.get(0)?, row.get(1)?)))?;
    Ok(rows.collect::<Result<_, _>>()?)
}
