//! Rows of the office's few settings.

use rusqlite::{Connection, OptionalExtension as _, params};

use super::StoreError;

pub(crate) fn put(db: &Connection, name: &str, value: &str) -> Result<(), StoreError> {
    let sql = "INSERT INTO setting (name, value) VALUES (?1, ?2) ON CONFLICT (name) DO UPDATE SET value = ?2";
    db.prepare_cached(sql)?.execute(params![name, value])?;
    Ok(())
}

pub(crate) fn forget(db: &Connection, name: &str) -> Result<(), StoreError> {
    db.prepare_cached("DELETE FROM setting WHERE name = ?1")?.execute([name])?;
    Ok(())
}

/// Every setting whose name begins so, by name.
pub(crate) fn beginning(db: &Connection, start: &str) -> Result<Vec<(String, String)>, StoreError> {
    let sql = "SELECT name, value FROM setting WHERE substr(name, 1, length(?1)) = ?1 ORDER BY name";
    let mut query = db.prepare_cached(sql)?;
    let rows = query.query_map([start], |row| Ok((row.get(0)?, row.get(1)?)))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

pub(crate) fn of(db: &Connection, name: &str) -> Result<Option<String>, StoreError> {
    let sql = "SELECT value FROM setting WHERE name = ?1";
    Ok(db.prepare_cached(sql)?.query_row([name], |row| row.get(0)).optional()?)
}

/// Writes a setting where there is none yet; what was there first stays.
pub(crate) fn put_first(db: &Connection, name: &str, value: &str) -> Result<(), StoreError> {
    let sql = "INSERT INTO setting (name, value) VALUES (?1, ?2) ON CONFLICT DO NOTHING";
    db.prepare_cached(sql)?.execute(params![name, value])?;
    Ok(())
}
