//! What came down from the office beside assignments: what it took back, what it said of visits, its procedures.

use rusqlite::{OptionalExtension as _, params};

use super::{Store, StoreError};
use crate::id::{Digest, VisitId};
use crate::round::{PackOffer, Review, ReviewOutcome};

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

    /// Notes that the office has a procedure.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn offer_pack(&mut self, offer: &PackOffer) -> Result<(), StoreError> {
        self.connection.execute(
            "INSERT INTO offered (digest, id) VALUES (?1, ?2) ON CONFLICT DO NOTHING",
            [&offer.digest, &offer.id],
        )?;
        Ok(())
    }

    /// The digest of a procedure that the office has and whose bytes are not here.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn pack_to_fetch(&self) -> Result<Option<String>, StoreError> {
        let mut query =
            self.connection.prepare_cached("SELECT digest FROM offered WHERE bytes IS NULL ORDER BY digest LIMIT 1")?;
        Ok(query.query_row([], |row| row.get(0)).optional()?)
    }

    /// Keeps a procedure's bytes.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn put_offered(&mut self, digest: &str, bytes: &[u8], proved_by: &str) -> Result<(), StoreError> {
        self.connection.execute(
            "UPDATE offered SET bytes = ?2, proved_by = ?3 WHERE digest = ?1",
            params![digest, bytes, proved_by],
        )?;
        Ok(())
    }

    /// The bytes of a procedure that came from the office, proved or not: what a run pinned elsewhere counts for that run.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn offered_bytes(&self, digest: &Digest) -> Result<Option<Vec<u8>>, StoreError> {
        let mut query = self.connection.prepare_cached("SELECT bytes FROM offered WHERE digest = ?1")?;
        Ok(query.query_row([digest.as_str()], |row| row.get(0)).optional()?.flatten())
    }

    /// The procedures that came from the office: their bytes, and which version of this program proved them.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn offered(&self) -> Result<Vec<(Vec<u8>, String)>, StoreError> {
        let mut query = self
            .connection
            .prepare_cached("SELECT bytes, proved_by FROM offered WHERE bytes IS NOT NULL ORDER BY digest")?;
        let rows = query.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }
}
