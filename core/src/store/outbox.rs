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

/// Where a row stands that is not safe yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum OutboxState {
    /// It goes out by itself.
    Waiting,
    /// It needs a person.
    Stuck,
    /// The office keeps it aside, on its disk, for a person there to look at.
    Aside,
}

/// What of one visit and kind stands alike.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OutboxGroup {
    /// Of which visit.
    pub visit: VisitId,
    /// Where that is.
    pub site: String,
    /// When the visit began, UTC milliseconds.
    pub opened_utc_ms: i64,
    /// What.
    pub kind: OutboxKind,
    /// Where it stands.
    pub state: OutboxState,
    /// Why it is stuck, as the name of a trouble.
    pub why: String,
    /// Events in it.
    pub events: u64,
    /// Rows in it: photographs, seals.
    pub rows: u64,
    /// Bytes of photographs.
    pub bytes: u64,
    /// The oldest, UTC milliseconds.
    pub since_utc_ms: i64,
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

fn kind(name: &str) -> OutboxKind {
    match name {
        "events" => OutboxKind::Events,
        "photo" => OutboxKind::Photo,
        _ => OutboxKind::Seal,
    }
}

fn row(row: &Row<'_>) -> rusqlite::Result<OutboxRow> {
    Ok(OutboxRow {
        id: row.get(0)?,
        kind: kind(&row.get::<_, String>(1)?),
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
    /// The small rows that can go: the first waiting events of each visit, the oldest first, then seals whose events are all
    /// at the office. A visit whose events are stuck or kept aside sends nothing else that leans on them.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn next_small(&self, most: u32) -> Result<Vec<OutboxRow>, StoreError> {
        let mut query = self.connection.prepare_cached(&format!(
            "{COLUMNS} AS o WHERE state <> 'safe' AND state = 'waiting' AND (
               (kind = 'events' AND NOT EXISTS (
                   SELECT 1 FROM outbox AS s WHERE s.visit = o.visit AND s.kind = 'events' AND s.state <> 'safe'
                   AND (s.state = 'stuck' OR (s.state = 'waiting' AND s.id < o.id))))
               OR (kind = 'seal' AND NOT EXISTS (
                   SELECT 1 FROM outbox AS s WHERE s.visit = o.visit AND s.kind = 'events' AND s.state <> 'safe'
                   AND s.state <> 'aside')))
             ORDER BY kind = 'seal', id LIMIT ?1"
        ))?;
        Ok(query.query_map([most], row)?.collect::<Result<_, _>>()?)
    }

    /// The photographs that can go, the oldest first.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn next_photos(&self, most: u32) -> Result<Vec<OutboxRow>, StoreError> {
        let mut query = self.connection.prepare_cached(&format!(
            "{COLUMNS} WHERE state <> 'safe' AND state = 'waiting' AND kind = 'photo' ORDER BY id LIMIT ?1"
        ))?;
        Ok(query.query_map([most], row)?.collect::<Result<_, _>>()?)
    }

    /// The photographs whose small pictures can go ahead of them, the oldest first: those of at least so many bytes.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn next_previews(&self, from_bytes: u64, most: u32) -> Result<Vec<OutboxRow>, StoreError> {
        let mut query = self.connection.prepare_cached(&format!(
            "{COLUMNS} WHERE state <> 'safe' AND state = 'waiting' AND kind = 'photo' AND previewed = 0 AND bytes >= ?1
             ORDER BY id LIMIT ?2"
        ))?;
        Ok(query.query_map(params![from_bytes as i64, most], row)?.collect::<Result<_, _>>()?)
    }

    /// A photograph's small picture is at the office, or is wanted nowhere.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn row_previewed(&mut self, id: i64) -> Result<(), StoreError> {
        self.connection.execute("UPDATE outbox SET previewed = 1 WHERE id = ?1", [id])?;
        Ok(())
    }

    /// What is not safe yet, by visit, kind and state, in the order in which it came.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn outbox_groups(&self) -> Result<Vec<OutboxGroup>, StoreError> {
        let mut query = self.connection.prepare_cached(
            "SELECT o.visit, coalesce(json_extract(a.body, '$.site.name'), ''), coalesce(v.opened_utc_ms, 0), o.kind,
                    o.state, o.why, sum(o.count), count(*), sum(o.bytes), min(o.since_utc_ms)
             FROM outbox AS o LEFT JOIN visit AS v ON v.visit = o.visit LEFT JOIN assignment AS a ON a.id = v.assignment
             WHERE o.state <> 'safe' GROUP BY o.visit, o.kind, o.state, o.why
             ORDER BY coalesce(v.opened_utc_ms, 0), o.visit, o.state <> 'stuck', min(o.id)",
        )?;
        let rows = query.query_map([], |row| {
            let state = match row.get::<_, String>(4)?.as_str() {
                "stuck" => OutboxState::Stuck,
                "aside" => OutboxState::Aside,
                _ => OutboxState::Waiting,
            };
            let count = |at| row.get::<_, i64>(at).map(|n| n as u64);
            Ok(OutboxGroup {
                visit: VisitId(row.get(0)?),
                site: row.get(1)?,
                opened_utc_ms: row.get(2)?,
                kind: kind(&row.get::<_, String>(3)?),
                state,
                why: row.get(5)?,
                events: count(6)?,
                rows: count(7)?,
                bytes: count(8)?,
                since_utc_ms: row.get(9)?,
            })
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// When something last became safe, UTC milliseconds.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn last_safe_utc_ms(&self) -> Result<Option<i64>, StoreError> {
        let mut query = self.connection.prepare_cached("SELECT max(safe_utc_ms) FROM outbox")?;
        Ok(query.query_row([], |row| row.get::<_, Option<i64>>(0))?.filter(|utc_ms| *utc_ms > 0))
    }

    /// The row of that number.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn outbox_row(&self, id: i64) -> Result<Option<OutboxRow>, StoreError> {
        Ok(self.connection.prepare_cached(&format!("{COLUMNS} WHERE id = ?1"))?.query_row([id], row).optional()?)
    }

    /// Rows that are not safe yet, stuck ones first, kept ones last.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn outbox(&self, most: u32) -> Result<Vec<OutboxRow>, StoreError> {
        let mut query = self.connection.prepare_cached(&format!(
            "{COLUMNS} WHERE state <> 'safe' ORDER BY state = 'aside', state = 'stuck' DESC, id LIMIT ?1"
        ))?;
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
             FROM outbox WHERE state <> 'safe' AND state <> 'aside'",
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

    /// Whether everything of a visit is safe: its events, its seal, and every photograph that they name.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn is_safe(&self, visit: &VisitId) -> Result<bool, StoreError> {
        let mut query = self
            .connection
            .prepare_cached("SELECT NOT EXISTS (SELECT 1 FROM outbox WHERE visit = ?1 AND state <> 'safe')")?;
        Ok(query.query_row([visit.as_str()], |row| row.get(0))?)
    }

    /// The office has this visit's events before `next`, on disk.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn events_safe(&mut self, visit: &VisitId, next: u64, utc_ms: i64) -> Result<(), StoreError> {
        self.connection.execute(
            "UPDATE outbox SET state = 'safe', why = '', safe_utc_ms = ?3
             WHERE kind = 'events' AND visit = ?1 AND state <> 'safe' AND first + count <= ?2",
            params![visit.as_str(), next as i64, utc_ms],
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

    /// The office keeps this visit's unsent events before `kept` aside, on disk: another device goes on with it.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn events_aside(&mut self, visit: &VisitId, kept: u64) -> Result<(), StoreError> {
        self.connection.execute(
            "UPDATE outbox SET state = 'aside', why = '' WHERE kind = 'events' AND visit = ?1 AND state <> 'safe'
             AND first + count <= ?2",
            params![visit.as_str(), kept as i64],
        )?;
        Ok(())
    }

    /// The office has this row, on disk.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn row_safe(&mut self, id: i64, utc_ms: i64) -> Result<(), StoreError> {
        self.connection.execute(
            "UPDATE outbox SET state = 'safe', why = '', safe_utc_ms = ?2 WHERE id = ?1 AND state <> 'safe'",
            params![id, utc_ms],
        )?;
        Ok(())
    }

    /// The office keeps this row aside, on disk.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn row_aside(&mut self, id: i64) -> Result<(), StoreError> {
        self.connection
            .execute("UPDATE outbox SET state = 'aside', why = '' WHERE id = ?1 AND state <> 'safe'", [id])?;
        Ok(())
    }

    /// The row cannot go on without a person. What is safe stays so, whatever comes late.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn row_stuck(&mut self, id: i64, why: &str) -> Result<(), StoreError> {
        self.connection.execute(
            "UPDATE outbox SET state = 'stuck', why = ?2 WHERE id = ?1 AND state = 'waiting'",
            params![id, why],
        )?;
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
