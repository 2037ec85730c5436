//! Rows of what people at the office said about visits.

use rusqlite::{Connection, OptionalExtension as _, Row, params};

use super::StoreError;
use crate::ids::VisitId;

/// What somebody said about a visit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Review {
    pub(crate) visit: VisitId,
    pub(crate) outcome: Outcome,
    /// Empty where nothing was written beside the outcome.
    pub(crate) words: String,
    pub(crate) at_ms: i64,
}

/// What came of looking at a visit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Outcome {
    /// It was checked and is in order.
    Accepted,
    /// The technician is asked something.
    Question,
}

impl Outcome {
    /// As it stands in rows and goes over the wire.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Outcome::Accepted => "accepted",
            Outcome::Question => "question",
        }
    }
}

/// Keeps a review, and gives its number.
pub(crate) fn add(db: &Connection, review: &Review) -> Result<i64, StoreError> {
    let sql = "INSERT INTO review (visit, outcome, words, at_ms) VALUES (?1, ?2, ?3, ?4)";
    db.prepare_cached(sql)?.execute(params![review.visit, review.outcome.name(), review.words, review.at_ms])?;
    Ok(db.last_insert_rowid())
}

/// All of a visit, the oldest first.
pub(crate) fn of(db: &Connection, visit: &VisitId) -> Result<Vec<Review>, StoreError> {
    let mut query =
        db.prepare_cached("SELECT visit, outcome, words, at_ms FROM review WHERE visit = ?1 ORDER BY id")?;
    let rows = query.query_map([visit], read)?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// The one with this number.
pub(crate) fn numbered(db: &Connection, id: i64) -> Result<Option<Review>, StoreError> {
    let mut query = db.prepare_cached("SELECT visit, outcome, words, at_ms FROM review WHERE id = ?1")?;
    Ok(query.query_row([id], read).optional()?)
}

fn read(row: &Row<'_>) -> rusqlite::Result<Review> {
    let outcome: String = row.get(1)?;
    let outcome = if outcome == Outcome::Accepted.name() { Outcome::Accepted } else { Outcome::Question };
    Ok(Review { visit: row.get(0)?, outcome, words: row.get(2)?, at_ms: row.get(3)? })
}
