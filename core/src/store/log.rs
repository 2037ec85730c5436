//! Reading the log: a visit's events, and its state from the newest snapshot onward.

use rusqlite::{OptionalExtension as _, Row, params};

use super::{Store, StoreError};
use crate::id::VisitId;
use crate::visit::apply::{apply, replay};
use crate::visit::event::ChainError;
use crate::visit::state::Visit;

/// A visit as the index has it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct VisitRow {
    /// Which.
    pub visit: VisitId,
    /// The assignment that it answers.
    pub assignment: String,
    /// When it began, UTC milliseconds.
    pub opened_utc_ms: i64,
    /// Sealed.
    pub sealed: bool,
    /// Another device goes on with it.
    pub elsewhere: bool,
}

fn damaged(error: &ChainError) -> StoreError {
    StoreError::Damaged { what: "the visit's log".into(), detail: error.to_string() }
}

fn row(row: &Row<'_>) -> rusqlite::Result<VisitRow> {
    Ok(VisitRow {
        visit: VisitId(row.get(0)?),
        assignment: row.get(1)?,
        opened_utc_ms: row.get(2)?,
        sealed: row.get(3)?,
        elsewhere: row.get(4)?,
    })
}

impl Store {
    /// The stored bytes of a visit's events, from a number on.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn events(&self, visit: &VisitId, from: u64) -> Result<Vec<Vec<u8>>, StoreError> {
        let mut query =
            self.connection.prepare_cached("SELECT bytes FROM event WHERE visit = ?1 AND seq >= ?2 ORDER BY seq")?;
        let rows = query.query_map(params![visit.as_str(), from as i64], |row| row.get(0))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// The stored bytes of some of a visit's events, from a number on.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn some_events(&self, visit: &VisitId, from: u64, most: usize) -> Result<Vec<Vec<u8>>, StoreError> {
        let mut query = self
            .connection
            .prepare_cached("SELECT bytes FROM event WHERE visit = ?1 AND seq >= ?2 ORDER BY seq LIMIT ?3")?;
        let rows = query.query_map(params![visit.as_str(), from as i64, most as i64], |row| row.get(0))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// A visit's state: the snapshot and what came after it.
    ///
    /// # Errors
    /// Where the log cannot be read or does not hold together.
    pub fn visit(&self, id: &VisitId) -> Result<Visit, StoreError> {
        let snapshot: Option<String> = self
            .connection
            .query_row("SELECT state FROM snapshot WHERE visit = ?1", [id.as_str()], |row| row.get(0))
            .optional()?;
        // A snapshot that cannot be read is worth nothing: the log is the truth.
        let Some(mut visit) = snapshot.and_then(|state| serde_json::from_str::<Visit>(&state).ok()) else {
            return self.replayed(id);
        };
        for bytes in self.events(id, visit.end.next)? {
            let mut end = visit.end.clone();
            let event = end.follow(id, &bytes).map_err(|error| damaged(&error))?;
            visit = apply(visit, &event);
            visit.end = end;
        }
        Ok(visit)
    }

    /// A visit's state from its events alone.
    ///
    /// # Errors
    /// Where the log cannot be read or does not hold together.
    pub fn replayed(&self, id: &VisitId) -> Result<Visit, StoreError> {
        let events = self.events(id, 0)?;
        replay(id, events.iter().map(Vec::as_slice)).map_err(|error| damaged(&error))
    }

    /// The visits that are not sealed, and the newest sealed ones, newest first.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn visits(&self, sealed_most: u32) -> Result<Vec<VisitRow>, StoreError> {
        let columns = "SELECT visit, assignment, opened_utc_ms, sealed, elsewhere FROM visit";
        let mut open =
            self.connection.prepare_cached(&format!("{columns} WHERE sealed = 0 ORDER BY opened_utc_ms DESC"))?;
        let mut rows: Vec<VisitRow> = open.query_map([], row)?.collect::<Result<_, _>>()?;
        let mut closed = self
            .connection
            .prepare_cached(&format!("{columns} WHERE sealed = 1 ORDER BY opened_utc_ms DESC LIMIT ?1"))?;
        rows.extend(closed.query_map([sealed_most], row)?.collect::<Result<Vec<_>, _>>()?);
        Ok(rows)
    }

    /// The signature over what was added after the seal, up to that many events.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn addendum_seal(&self, visit: &VisitId, next: u64) -> Result<Option<String>, StoreError> {
        let sql = "SELECT jws FROM addendum_seal WHERE visit = ?1 AND next = ?2";
        Ok(self.connection.query_row(sql, params![visit.as_str(), next as i64], |row| row.get(0)).optional()?)
    }

    /// All of them in order, each with how many events it covers.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn addendum_seals(&self, visit: &VisitId) -> Result<Vec<(u64, String)>, StoreError> {
        let mut query =
            self.connection.prepare_cached("SELECT next, jws FROM addendum_seal WHERE visit = ?1 ORDER BY next")?;
        let rows = query.query_map([visit.as_str()], |row| Ok((row.get::<_, i64>(0)? as u64, row.get(1)?)))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// The signature that closes a visit.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn seal(&self, visit: &VisitId) -> Result<Option<String>, StoreError> {
        Ok(self
            .connection
            .query_row("SELECT jws FROM seal WHERE visit = ?1", [visit.as_str()], |row| row.get(0))
            .optional()?)
    }
}
