//! What came down from the office beside assignments: what it took back, and what it said of visits.

use rusqlite::{OptionalExtension as _, params};

use super::{Store, StoreError};
use crate::id::VisitId;
use crate::round::{Review, ReviewOutcome};

impl Store {
    /// The office took an assignment back. One whose visit has begun stays with it.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn withdraw_assignment(&mut self, id: &str) -> Result<(), StoreError> {
        self.connection.execute("UPDATE assignment SET withdrawn = 1 WHERE id = ?1", [id])?;
        Ok(())
    }

    /// Keeps what the office said of a visit. The same again changes nothing.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn put_review(&mut self, review: &Review) -> Result<(), StoreError> {
        self.connection.execute(
            "INSERT INTO review (visit, utc_ms, outcome, words) VALUES (?1, ?2, ?3, ?4) ON CONFLICT DO NOTHING",
            params![review.visit, review.utc_ms, review.outcome.name(), review.words],
        )?;
        Ok(())
    }

    /// What the office said of a visit last.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn last_review(&self, visit: &VisitId) -> Result<Option<Review>, StoreError> {
        let mut query = self.connection.prepare_cached(
            "SELECT utc_ms, outcome, words FROM review WHERE visit = ?1 ORDER BY utc_ms DESC, outcome DESC LIMIT 1",
        )?;
        let review = query.query_row([visit.as_str()], |row| {
            Ok(Review {
                visit: visit.to_string(),
                utc_ms: row.get(0)?,
                outcome: ReviewOutcome::named(&row.get::<_, String>(1)?),
                words: row.get(2)?,
            })
        });
        Ok(review.optional()?)
    }
}
