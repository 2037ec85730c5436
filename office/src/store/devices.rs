//! Rows of field devices.

use rusqlite::types::{FromSql, FromSqlResult, ToSql, ToSqlOutput, ValueRef};
use rusqlite::{Connection, OptionalExtension as _, params};

use super::StoreError;
use crate::ids::Digest;

/// Names a device inside this office.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct DeviceId(i64);

impl ToSql for DeviceId {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        self.0.to_sql()
    }
}

impl FromSql for DeviceId {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        value.as_i64().map(Self)
    }
}

/// A device as the office knows it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Device {
    pub(crate) id: DeviceId,
    /// Whose it is, in words.
    pub(crate) name: String,
    /// Its P-256 key, SEC1 uncompressed, once registered.
    pub(crate) public_key: Option<Vec<u8>>,
}

pub(crate) fn add(db: &Connection, name: &str, token_hash: Digest, now_ms: i64) -> Result<DeviceId, StoreError> {
    let sql = "INSERT INTO device (name, token_hash, joined_ms) VALUES (?1, ?2, ?3)";
    db.prepare_cached(sql)?.execute(params![name, token_hash, now_ms])?;
    Ok(DeviceId(db.last_insert_rowid()))
}

pub(crate) fn by_token(db: &Connection, token_hash: Digest) -> Result<Option<Device>, StoreError> {
    one(db, "SELECT id, name, public_key FROM device WHERE token_hash = ?1", token_hash)
}

pub(crate) fn by_id(db: &Connection, id: DeviceId) -> Result<Option<Device>, StoreError> {
    one(db, "SELECT id, name, public_key FROM device WHERE id = ?1", id)
}

/// The device that registered this key first.
pub(crate) fn by_key(db: &Connection, public_key: &[u8]) -> Result<Option<Device>, StoreError> {
    one(db, "SELECT id, name, public_key FROM device WHERE public_key = ?1 ORDER BY id LIMIT 1", public_key)
}

fn one(db: &Connection, sql: &str, key: impl ToSql) -> Result<Option<Device>, StoreError> {
    let row = db
        .prepare_cached(sql)?
        .query_row([key], |row| Ok(Device { id: row.get(0)?, name: row.get(1)?, public_key: row.get(2)? }));
    Ok(row.optional()?)
}

/// Sets a device's key and what it calls itself, only where it has no key yet.
pub(crate) fn register(db: &Connection, id: DeviceId, calls_itself: &str, public_key: &[u8]) -> Result<(), StoreError> {
    let sql = "UPDATE device SET calls_itself = ?2, public_key = ?3 WHERE id = ?1 AND public_key IS NULL";
    db.prepare_cached(sql)?.execute(params![id, calls_itself, public_key])?;
    Ok(())
}
