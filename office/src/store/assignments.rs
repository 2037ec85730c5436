//! Rows of assignments.

use rusqlite::{Connection, OptionalExtension as _, params};

use super::StoreError;

pub(crate) fn put(db: &Connection, id: &str, doc: &str, now_ms: i64) -> Result<(), StoreError> {
    let sql = "INSERT INTO assignment (id, doc, put_ms) VALUES (?1, ?2, ?3)
               ON CONFLICT (id) DO UPDATE SET doc = ?2, put_ms = ?3";
    db.prepare_cached(sql)?.execute(params![id, doc, now_ms])?;
    Ok(())
}

pub(crate) fn all(db: &Connection) -> Result<Vec<String>, StoreError> {
    let mut query = db.prepare_cached("SELECT doc FROM assignment ORDER BY id")?;
    let rows = query.query_map([], |row| row.get(0))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

pub(crate) fn of(db: &Connection, id: &str) -> Result<Option<String>, StoreError> {
    let sql = "SELECT doc FROM assignment WHERE id = ?1";
    Ok(db.prepare_cached(sql)?.query_row([id], |row| row.get(0)).optional()?)
}
