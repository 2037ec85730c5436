//! Rows of the office's few settings.

use rusqlite::{Connection, OptionalExtension as _, params};

use super::StoreError;

pub(crate) fn put(db: &Connection, name: &str, value: &str) -> Result<(), StoreError> {
    let sql = "INSERT INTO setting (name, value) VALUES (?1, ?2) ON CONFLICT (name) DO UPDATE SET value = ?2";
    db.prepare_cached(sql)?.execute(params![name, value])?;
    Ok(())
}

pub(crate) fn of(db: &Connection, name: &str) -> Result<Option<String>, StoreError> {
    let sql = "SELECT value FROM setting WHERE name = ?1";
    Ok(db.prepare_cached(sql)?.query_row([name], |row| row.get(0)).optional()?)
}
