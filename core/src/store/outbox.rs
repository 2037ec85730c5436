//! What still has to reach the office.

use rusqlite::{OptionalExtension as _, Row, params};

use super::{Store, StoreError};
use crate::id::{Digest, VisitId};

/// What a row of the outbox carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OutboxKind {
    /// Events `first` to `first + count - 1`.
    Events,
    /// The photograph of `digest`.
    Photo,
    /// The visit's seal.
    Seal,
}

/// A row of the outbox.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OutboxRow {
    /// Its number.
    pub id: i64,
    /// What it carries.
    pub kind: OutboxKind,
    /// Of which visit.
    pub visit: VisitId,
    /// The first event; for a seal over addenda how many events it covers.
    pub first: u64,
    /// How many events.
    pub count: u64,
    /// The photograph.
    pub digest: Digest,
    /// Its media type.
    pub media: String,
    /// Its length.
    pub bytes: u64,
    /// Why it is stuck; empty while it waits.
    pub why: String,
    /// Since when it waits, UTC milliseconds.
    pub since_utc_ms: i64,
}

/// How much waits.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct OutboxCount {
    /// Events.
    pub events: u64,
    /// Photographs.
    pub photos: u64,
    /// Bytes of those.
    pub photo_bytes: u64,
    /// Seals.
    pub seals: u64,
    /// Rows that wait for a person.
    pub stuck: u64,
    /// The oldest, UTC milliseconds; 0 where nothing waits.
    pub since_utc_ms: i64,
}

impl OutboxCount {
    /// Nothing waits.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.events == 0 && self.photos == 0 && self.seals == 0
    }
}

const COLUMNS: &str = "SELECT id, kind, visit, first, count, digest, media, bytes, why, since_utc_ms FROM outbox";

fn row(row: &Row<'_>) -> rusqlite::Result<OutboxRow> {
    let kind = match row.get::<_, String>(1)?.as_str() {
        "events" => OutboxKind::Events,
        "photo" => OutboxKind::Photo,
        _ => OutboxKind::Seal,
    };
    Ok(OutboxRow {
        id: row.get(0)?,
        kind,
        visit: VisitId(row.get(2)?),
        first: row.get::<_, i64>(3)? as u64,
        count: row.get::<_, i64>(4)? as u64,
        digest: Digest(row.get(5)?),
        media: row.get(6)?,
        bytes: row.get::<_, i64>(7)? as u64,
        why: row.get(8)?,
        since_utc_ms: row.get(9)?,
    })
}

impl Store {
    /// The next row to send: events before seals before photographs, the oldest first. A visit whose events are stuck
    /// sends nothing else that leans on them.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn next_to_send(&self) -> Result<Option<OutboxRow>, StoreError> {
        Ok(self
            .connection
            .query_row(
                &format!(
                    "{COLUMNS} AS o WHERE state = 'waiting'
                       AND (kind = 'photo' OR NOT EXISTS (
                           SELECT 1 FROM outbox AS s WHERE s.visit = o.visit AND s.kind = 'events' AND s.state = 'stuck'))
                     ORDER BY CASE kind WHEN 'events' THEN 0 WHEN 'seal' THEN 1 ELSE 2 END, id LIMIT 1"
                ),
                [],
                row,
            )
            .optional()?)
    }

    /// The row of that number.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn outbox_row(&self, id: i64) -> Result<Option<OutboxRow>, StoreError> {
        Ok(self.connection.query_row(&format!("{COLUMNS} WHERE id = ?1"), [id], row).optional()?)
    }

    /// Rows that are not safe yet, stuck ones first.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn outbox(&self, most: u32) -> Result<Vec<OutboxRow>, StoreError> {
        let mut query = self
            .connection
            .prepare_cached(&format!("{COLUMNS} WHERE state <> 'safe' ORDER BY state = 'stuck' DESC, id LIMIT ?1"))?;
        Ok(query.query_map([most], row)?.collect::<Result<_, _>>()?)
    }

    /// How much waits.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn outbox_count(&self) -> Result<OutboxCount, StoreError> {
        let mut query = self.connection.prepare_cached(
            "SELECT coalesce(sum(count) FILTER (WHERE kind = 'events'), 0), count(*) FILTER (WHERE kind = 'photo'),
                    coalesce(sum(bytes) FILTER (WHERE kind = 'photo'), 0), count(*) FILTER (WHERE kind = 'seal'),
                    count(*) FILTER (WHERE state = 'stuck'), coalesce(min(since_utc_ms), 0)
             FROM outbox WHERE state <> 'safe'",
        )?;
        let count = |row: &Row<'_>, at| row.get::<_, i64>(at).map(|n| n as u64);
        Ok(query.query_row([], |row| {
            Ok(OutboxCount {
                events: count(row, 0)?,
                photos: count(row, 1)?,
                photo_bytes: count(row, 2)?,
                seals: count(row, 3)?,
                stuck: count(row, 4)?,
                since_utc_ms: row.get(5)?,
            })
        })?)
    }

    /// What of a visit is not safe yet.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn is_safe(&self, visit: &VisitId) -> Result<bool, StoreError> {
        Ok(self.connection.query_row(
            "SELECT NOT EXISTS (SELECT 1 FROM outbox WHERE visit = ?1 AND state <> 'safe')",
            [visit.as_str()],
            |row| row.get(0),
        )?)
    }

    /// The office has this visit's events before `next`, on disk.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn events_safe(&mut self, visit: &VisitId, next: u64) -> Result<(), StoreError> {
        self.connection.execute(
            "UPDATE outbox SET state = 'safe', why = '' WHERE kind = 'events' AND visit = ?1 AND first + count <= ?2",
            params![visit.as_str(), next as i64],
        )?;
        Ok(())
    }

    /// The office lacks events that were thought safe: they are sent again.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn events_again(&mut self, visit: &VisitId, next: u64) -> Result<(), StoreError> {
        self.connection.execute(
            "UPDATE outbox SET state = 'waiting' WHERE kind = 'events' AND visit = ?1 AND first + count > ?2",
            params![visit.as_str(), next as i64],
        )?;
        Ok(())
    }

    /// The office has this row, on disk.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn row_safe(&mut self, id: i64) -> Result<(), StoreError> {
        self.connection.execute("UPDATE outbox SET state = 'safe', why = '' WHERE id = ?1", [id])?;
        Ok(())
    }

    /// The row cannot go on without a person.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn row_stuck(&mut self, id: i64, why: &str) -> Result<(), StoreError> {
        self.connection.execute("UPDATE outbox SET state = 'stuck', why = ?2 WHERE id = ?1", params![id, why])?;
        Ok(())
    }

    /// Everything stuck is tried again.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn unstick(&mut self) -> Result<(), StoreError> {
        self.connection.execute("UPDATE outbox SET state = 'waiting', why = '' WHERE state = 'stuck'", [])?;
        Ok(())
    }
}
