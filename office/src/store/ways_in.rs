//! Rows of one-time links and sessions. Only hashes of their secrets.

use rusqlite::{Connection, OptionalExtension as _, params};

use super::StoreError;
use crate::ids::Digest;

pub(crate) fn add_link(db: &Connection, hash: Digest, now_ms: i64) -> Result<(), StoreError> {
    db.prepare_cached("INSERT INTO entry_link (hash, made_ms) VALUES (?1, ?2)")?.execute(params![hash, now_ms])?;
    Ok(())
}

/// No link was ever made: the office starts for the first time.
pub(crate) fn no_link_yet(db: &Connection) -> Result<bool, StoreError> {
    Ok(db.query_row("SELECT NOT EXISTS (SELECT 1 FROM entry_link)", [], |row| row.get(0))?)
}

/// Uses a link up. False when it was used before, is too old, or never was.
pub(crate) fn use_link(db: &Connection, hash: Digest, now_ms: i64, made_after_ms: i64) -> Result<bool, StoreError> {
    let sql = "UPDATE entry_link SET used_ms = ?2 WHERE hash = ?1 AND used_ms IS NULL AND made_ms > ?3";
    Ok(db.prepare_cached(sql)?.execute(params![hash, now_ms, made_after_ms])? == 1)
}

pub(crate) fn add_session(db: &Connection, hash: Digest, expires_ms: i64) -> Result<(), StoreError> {
    let sql = "INSERT INTO session (hash, expires_ms) VALUES (?1, ?2)";
    db.prepare_cached(sql)?.execute(params![hash, expires_ms])?;
    Ok(())
}

pub(crate) fn session_holds(db: &Connection, hash: Digest, now_ms: i64) -> Result<bool, StoreError> {
    let sql = "SELECT 1 FROM session WHERE hash = ?1 AND expires_ms > ?2";
    Ok(db.prepare_cached(sql)?.query_row(params![hash, now_ms], |_| Ok(())).optional()?.is_some())
}

/// Ends a session, and sweeps out those that ran out.
pub(crate) fn end_session(db: &Connection, hash: Digest, now_ms: i64) -> Result<(), StoreError> {
    let sql = "DELETE FROM session WHERE hash = ?1 OR expires_ms <= ?2";
    db.prepare_cached(sql)?.execute(params![hash, now_ms])?;
    Ok(())
}
