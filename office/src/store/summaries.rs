//! Rows of owners' summaries: which token opens which visit.

use rusqlite::{Connection, OptionalExtension as _, params};

use super::StoreError;
use crate::ids::VisitId;

/// Gives the visit this token, unless it has one already.
pub(crate) fn ensure(db: &Connection, visit: &VisitId, token: &str, now_ms: i64) -> Result<(), StoreError> {
    let sql = "INSERT INTO summary (visit, token, made_ms) VALUES (?1, ?2, ?3) ON CONFLICT (visit) DO NOTHING";
    db.prepare_cached(sql)?.execute(params![visit, token, now_ms])?;
    Ok(())
}

pub(crate) fn token_of(db: &Connection, visit: &VisitId) -> Result<Option<String>, StoreError> {
    let sql = "SELECT token FROM summary WHERE visit = ?1";
    Ok(db.prepare_cached(sql)?.query_row([visit], |row| row.get(0)).optional()?)
}

pub(crate) fn visit_of(db: &Connection, token: &str) -> Result<Option<VisitId>, StoreError> {
    let sql = "SELECT visit FROM summary WHERE token = ?1";
    Ok(db.prepare_cached(sql)?.query_row([token], |row| row.get(0)).optional()?)
}
