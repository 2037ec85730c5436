//! Rows of field devices.

use rusqlite::types::{FromSql, FromSqlResult, ToSql, ToSqlOutput, ValueRef};
use rusqlite::{Connection, OptionalExtension as _, Row, params};

use super::StoreError;
use crate::ids::Digest;

/// Names a device inside this office.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct DeviceId(i64);

impl DeviceId {
    /// Reads a device's name as it goes over the wire: decimal digits.
    pub(crate) fn parse(text: &str) -> Option<Self> {
        let digits = (1..=18).contains(&text.len()) && text.bytes().all(|b| b.is_ascii_digit());
        text.parse().ok().filter(|_| digits).map(Self)
    }

    /// Eight bytes of its own, to be signed.
    pub(crate) const fn to_bytes(self) -> [u8; 8] {
        self.0.to_be_bytes()
    }

    #[cfg(test)]
    pub(crate) const fn for_tests(id: i64) -> Self {
        Self(id)
    }
}

impl std::fmt::Display for DeviceId {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        std::fmt::Display::fmt(&self.0, f)
    }
}

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
    /// The office hears it no more.
    pub(crate) revoked: bool,
}

/// A device with what the office knows beside.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Known {
    pub(crate) device: Device,
    pub(crate) calls_itself: String,
    pub(crate) joined_ms: i64,
    pub(crate) heard_ms: Option<i64>,
    /// Photographs that its visits name and that have not come.
    pub(crate) photos_waiting: u64,
}

const COLUMNS: &str = "d.id, d.name, d.public_key, d.revoked_ms IS NOT NULL";

pub(crate) fn add(db: &Connection, name: &str, token_hash: Digest, now_ms: i64) -> Result<DeviceId, StoreError> {
    let sql = "INSERT INTO device (name, token_hash, joined_ms) VALUES (?1, ?2, ?3)";
    db.prepare_cached(sql)?.execute(params![name, token_hash, now_ms])?;
    Ok(DeviceId(db.last_insert_rowid()))
}

/// The device that a token belongs to: one that never ends, or one that has not ended yet.
pub(crate) fn by_token(db: &Connection, token_hash: Digest, now_ms: i64) -> Result<Option<Device>, StoreError> {
    let sql = format!(
        "SELECT {COLUMNS} FROM device d WHERE d.token_hash = ?1 UNION ALL
         SELECT {COLUMNS} FROM token t JOIN device d ON d.id = t.device WHERE t.hash = ?1 AND t.expires_ms > ?2"
    );
    Ok(db.prepare_cached(&sql)?.query_row(params![token_hash, now_ms], read).optional()?)
}

pub(crate) fn by_id(db: &Connection, id: DeviceId) -> Result<Option<Device>, StoreError> {
    one(db, "d.id = ?1", id)
}

/// The device that registered this key first.
pub(crate) fn by_key(db: &Connection, public_key: &[u8]) -> Result<Option<Device>, StoreError> {
    one(db, "d.public_key = ?1 ORDER BY d.id LIMIT 1", public_key)
}

fn one(db: &Connection, condition: &str, key: impl ToSql) -> Result<Option<Device>, StoreError> {
    let sql = format!("SELECT {COLUMNS} FROM device d WHERE {condition}");
    Ok(db.prepare_cached(&sql)?.query_row([key], read).optional()?)
}

fn read(row: &Row<'_>) -> rusqlite::Result<Device> {
    Ok(Device { id: row.get(0)?, name: row.get(1)?, public_key: row.get(2)?, revoked: row.get(3)? })
}

/// Every device, the last heard first.
pub(crate) fn all(db: &Connection) -> Result<Vec<Known>, StoreError> {
    let sql = format!(
        "SELECT {COLUMNS}, coalesce(d.calls_itself, ''), d.joined_ms, d.heard_ms, (
             SELECT count(DISTINCT p.digest) FROM visit v JOIN listed_photo p ON p.visit = v.id
             WHERE v.device = d.id AND NOT EXISTS (
                 SELECT 1 FROM photo o WHERE o.digest = p.digest AND o.safe_ms IS NOT NULL))
         FROM device d ORDER BY d.revoked_ms IS NOT NULL, coalesce(d.heard_ms, d.joined_ms) DESC, d.id"
    );
    let mut query = db.prepare_cached(&sql)?;
    let rows = query.query_map([], |row| {
        Ok(Known {
            device: read(row)?,
            calls_itself: row.get(4)?,
            joined_ms: row.get(5)?,
            heard_ms: row.get(6)?,
            photos_waiting: row.get(7)?,
        })
    })?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// Writes down when a device was last heard.
pub(crate) fn heard(db: &Connection, id: DeviceId, now_ms: i64) -> Result<(), StoreError> {
    db.prepare_cached("UPDATE device SET heard_ms = ?2 WHERE id = ?1")?.execute(params![id, now_ms])?;
    Ok(())
}

/// The office hears this device no more; when it was revoked first stays.
pub(crate) fn revoke(db: &Connection, id: DeviceId, now_ms: i64) -> Result<(), StoreError> {
    let sql = "UPDATE device SET revoked_ms = ?2 WHERE id = ?1 AND revoked_ms IS NULL";
    db.prepare_cached(sql)?.execute(params![id, now_ms])?;
    Ok(())
}

/// A device that is known joined anew: it is heard again, and called as it is called now.
pub(crate) fn rejoin(db: &Connection, id: DeviceId, name: &str, calls_itself: &str) -> Result<(), StoreError> {
    let sql = "UPDATE device SET name = ?2, calls_itself = ?3, revoked_ms = NULL WHERE id = ?1";
    db.prepare_cached(sql)?.execute(params![id, name, calls_itself])?;
    Ok(())
}

/// Sets a device's key and what it calls itself, only where it has no key yet.
pub(crate) fn register(db: &Connection, id: DeviceId, calls_itself: &str, public_key: &[u8]) -> Result<(), StoreError> {
    let sql = "UPDATE device SET calls_itself = ?2, public_key = ?3 WHERE id = ?1 AND public_key IS NULL";
    db.prepare_cached(sql)?.execute(params![id, calls_itself, public_key])?;
    Ok(())
}
