//! Rows of ways for devices to come in: codes that join one, and tokens that end. Only hashes of their secrets.

use rusqlite::{Connection, OptionalExtension as _, params};

use super::StoreError;
use super::devices::DeviceId;
use crate::ids::Digest;

/// Keeps a code for a device of this name.
pub(crate) fn add_code(db: &Connection, hash: Digest, name: &str, now_ms: i64) -> Result<(), StoreError> {
    let sql = "INSERT INTO join_code (hash, name, made_ms) VALUES (?1, ?2, ?3)";
    db.prepare_cached(sql)?.execute(params![hash, name, now_ms])?;
    Ok(())
}

/// Uses a code up, and gives the name of the device that it was made for. None when it was used before, is too old, or
/// never was.
pub(crate) fn use_code(
    db: &Connection,
    hash: Digest,
    now_ms: i64,
    made_after_ms: i64,
) -> Result<Option<String>, StoreError> {
    let sql = "UPDATE join_code SET used_ms = ?2 WHERE hash = ?1 AND used_ms IS NULL AND made_ms > ?3 RETURNING name";
    Ok(db.prepare_cached(sql)?.query_row(params![hash, now_ms, made_after_ms], |row| row.get(0)).optional()?)
}

/// Writes down that a code was tried which does not hold, and forgets tries that no longer count.
pub(crate) fn add_wrong_code(db: &Connection, now_ms: i64, counted_after_ms: i64) -> Result<(), StoreError> {
    db.prepare_cached("DELETE FROM wrong_code WHERE at_ms <= ?1")?.execute([counted_after_ms])?;
    db.prepare_cached("INSERT INTO wrong_code (at_ms) VALUES (?1)")?.execute([now_ms])?;
    Ok(())
}

/// When codes were tried that did not hold, after a moment, the oldest first.
pub(crate) fn wrong_codes(db: &Connection, after_ms: i64) -> Result<Vec<i64>, StoreError> {
    let mut query = db.prepare_cached("SELECT at_ms FROM wrong_code WHERE at_ms > ?1 ORDER BY at_ms")?;
    let rows = query.query_map([after_ms], |row| row.get(0))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// Keeps a device's token, and sweeps out those that ran out.
pub(crate) fn add(
    db: &Connection,
    hash: Digest,
    device: DeviceId,
    expires_ms: i64,
    now_ms: i64,
) -> Result<(), StoreError> {
    db.prepare_cached("DELETE FROM token WHERE expires_ms <= ?1")?.execute([now_ms])?;
    let sql = "INSERT INTO token (hash, device, expires_ms) VALUES (?1, ?2, ?3)";
    db.prepare_cached(sql)?.execute(params![hash, device, expires_ms])?;
    Ok(())
}

/// Ends every token of a device that joins anew: whoever held one must prove to hold the key.
pub(crate) fn end_all(db: &Connection, device: DeviceId) -> Result<(), StoreError> {
    db.prepare_cached("DELETE FROM token WHERE device = ?1")?.execute([device])?;
    Ok(())
}

/// Writes down that a nonce gave a token; false where it did so before. Sweeps out those that ran out.
pub(crate) fn use_nonce(db: &Connection, hash: Digest, expires_ms: i64, now_ms: i64) -> Result<bool, StoreError> {
    db.prepare_cached("DELETE FROM used_nonce WHERE expires_ms <= ?1")?.execute([now_ms])?;
    let sql = "INSERT INTO used_nonce (hash, expires_ms) VALUES (?1, ?2) ON CONFLICT DO NOTHING";
    Ok(db.prepare_cached(sql)?.execute(params![hash, expires_ms])? == 1)
}
