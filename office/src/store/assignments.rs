//! Rows of assignments.

use rusqlite::{Connection, OptionalExtension as _, params};

use super::StoreError;
use super::devices::DeviceId;

pub(crate) fn put(db: &Connection, id: &str, doc: &str, now_ms: i64) -> Result<(), StoreError> {
    let sql = "INSERT INTO assignment (id, doc, put_ms) VALUES (?1, ?2, ?3)
               ON CONFLICT (id) DO UPDATE SET doc = ?2, put_ms = ?3, withdrawn_ms = NULL";
    db.prepare_cached(sql)?.execute(params![id, doc, now_ms])?;
    Ok(())
}

/// Those that no visit answers yet, by id. A visit names its assignment in its first event.
pub(crate) fn open(db: &Connection) -> Result<Vec<String>, StoreError> {
    let sql = "SELECT doc FROM assignment WHERE withdrawn_ms IS NULL AND id NOT IN (
                   SELECT json_extract(CAST(event.bytes AS TEXT), '$.assignment')
                   FROM visit JOIN event ON event.visit = visit.id AND event.seq = 0
                   WHERE json_extract(CAST(event.bytes AS TEXT), '$.assignment') IS NOT NULL)
               ORDER BY id";
    let mut query = db.prepare_cached(sql)?;
    let rows = query.query_map([], |row| row.get(0))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

pub(crate) fn of(db: &Connection, id: &str) -> Result<Option<String>, StoreError> {
    let sql = "SELECT doc FROM assignment WHERE id = ?1";
    Ok(db.prepare_cached(sql)?.query_row([id], |row| row.get(0)).optional()?)
}

/// An assignment is not to be done any more; false where there is none of that name.
pub(crate) fn withdraw(db: &Connection, id: &str, now_ms: i64) -> Result<bool, StoreError> {
    let sql = "UPDATE assignment SET withdrawn_ms = ?2 WHERE id = ?1";
    Ok(db.prepare_cached(sql)?.execute(params![id, now_ms])? == 1)
}

/// The devices that answer an assignment with a visit.
pub(crate) fn answered_by(db: &Connection, id: &str) -> Result<Vec<DeviceId>, StoreError> {
    let sql = "SELECT visit.device FROM visit JOIN event ON event.visit = visit.id AND event.seq = 0
               WHERE json_extract(CAST(event.bytes AS TEXT), '$.assignment') = ?1";
    let mut query = db.prepare_cached(sql)?;
    let rows = query.query_map([id], |row| row.get(0))?;
    Ok(rows.collect::<Result<_, _>>()?)
}
