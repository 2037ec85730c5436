//! Rows of assignments.

use rusqlite::{Connection, OptionalExtension as _, params};

use super::StoreError;

pub(crate) fn put(db: &Connection, id: &str, doc: &str, now_ms: i64) -> Result<(), StoreError> {
    let sql = "INSERT INTO assignment (id, doc, put_ms) VALUES (?1, ?2, ?3)
               ON CONFLICT (id) DO UPDATE SET doc = ?2, put_ms = ?3";
    db.prepare_cached(sql)?.execute(params![id, doc, now_ms])?;
    Ok(())
}

/// Those that no visit answers yet, by id. A visit names its assignment in its first event.
pub(crate) fn open(db: &Connection) -> Result<Vec<String>, StoreError> {
    let sql = "SELECT doc FROM assignment WHERE id NOT IN (
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
