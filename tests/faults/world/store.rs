//! A phone's store as a model: what was committed survives a kill, and nothing else. It chooses rows as
//! `core/src/store/outbox.rs` does; the worlds of the real store hold the two together.

use std::rc::Rc;

use coilside_core::id::{Digest, VisitId};
use coilside_core::store::{OutboxKind, OutboxRow};
use coilside_core::visit::event::{NO_PREV, sha256};
use serde_json::json;

use super::parts::{PhoneDisk, Row, State, Stop};

/// The disk, and what is about to happen to it.
#[derive(Default)]
pub(crate) struct Store {
    pub(crate) disk: PhoneDisk,
    /// Changes with what lies there.
    pub(crate) version: u64,
    /// Settings of the engine.
    pub(crate) access: Option<String>,
    pub(crate) revoked: bool,
    pub(crate) cursor: Option<String>,
    /// The visit that is open.
    pub(crate) visit: Option<String>,
    pub(crate) full: bool,
    pub(crate) dies_at_write: Option<u32>,
}

impl Store {
    /// All of a change, or nothing.
    pub(crate) fn write(&mut self, change: impl FnOnce(&mut Store)) -> Result<(), Stop> {
        if self.dies_at_write == Some(0) {
            return Err(Stop::Killed);
        }
        if self.full {
            return Err(Stop::Refused);
        }
        self.dies_at_write = self.dies_at_write.map(|left| left - 1);
        self.version += 1;
        change(self);
        Ok(())
    }

    pub(crate) fn of_number(&self, id: i64) -> Option<OutboxRow> {
        self.disk.rows.iter().find(|row| row.row.id == id).map(|row| row.row.clone())
    }

    /// The first waiting events of each visit, then seals whose events are all at the office.
    pub(crate) fn next_small(&self, newest_first: bool) -> Vec<OutboxRow> {
        let rows = &self.disk.rows;
        let any = |row: &Row, which: &dyn Fn(&Row) -> bool| {
            rows.iter().any(|other| other.is(OutboxKind::Events, row.row.visit.as_str()) && which(other))
        };
        let before = |row: &Row, other: &Row| {
            other.state == State::Stuck || (other.state == State::Waiting && other.row.id < row.row.id)
        };
        let waits = |row: &Row, kind| row.state == State::Waiting && row.row.kind == kind;
        let first = |row: &&Row| waits(row, OutboxKind::Events) && !any(row, &|other| before(row, other));
        let open = |other: &Row| matches!(other.state, State::Waiting | State::Stuck);
        let ready = |row: &&Row| waits(row, OutboxKind::Seal) && !any(row, &open);
        if newest_first {
            let waiting = rows.iter().rev().filter(|row| waits(row, OutboxKind::Events));
            return waiting.chain(rows.iter().filter(ready)).map(|row| row.row.clone()).collect();
        }
        rows.iter().filter(first).chain(rows.iter().filter(ready)).map(|row| row.row.clone()).collect()
    }

    pub(crate) fn next_photos(&self) -> Vec<OutboxRow> {
        let waiting = |row: &&Row| row.row.kind == OutboxKind::Photo && row.state == State::Waiting;
        self.disk.rows.iter().filter(waiting).map(|row| row.row.clone()).collect()
    }

    /// The digest of this phone's own event before a number.
    pub(crate) fn head_before(&self, visit: &VisitId, next: u64) -> Option<Digest> {
        match next.checked_sub(1) {
            None => Some(Digest(NO_PREV.to_owned())),
            Some(last) => self.disk.logs.get(visit.as_str())?.get(last as usize).map(|bytes| sha256(bytes)),
        }
    }

    fn row(&mut self, kind: OutboxKind, visit: &str) -> &mut OutboxRow {
        let id = self.disk.rows.iter().map(|row| row.row.id).max().unwrap_or(0) + 1;
        let row = OutboxRow {
            id,
            kind,
            visit: VisitId(visit.to_owned()),
            first: 0,
            count: 0,
            digest: Digest(String::new()),
            media: String::new(),
            bytes: 0,
            why: String::new(),
            since_utc_ms: 0,
        };
        self.disk.rows.push(Row { row, state: State::Waiting });
        let last = self.disk.rows.len() - 1;
        &mut self.disk.rows[last].row
    }

    /// Adds events to the open visit, chained as real ones are, with the row that carries them.
    pub(crate) fn add_events(&mut self, visit: &str, texts: &[&str]) {
        let log = self.disk.logs.entry(visit.to_owned()).or_default();
        let first = log.len() as u64;
        for text in texts {
            let prev = log.last().map_or(NO_PREV.to_owned(), |last| sha256(last).0);
            let event = json!({ "kind": "note", "prev": prev, "seq": log.len(), "text": text, "visit": visit });
            log.push(Rc::new(event.to_string().into_bytes()));
        }
        let row = self.row(OutboxKind::Events, visit);
        (row.first, row.count) = (first, texts.len() as u64);
    }

    pub(crate) fn add_photo(&mut self, visit: &str, digest: &str, bytes: u64) {
        if self.disk.photos.insert(digest.to_owned(), bytes).is_some() {
            return;
        }
        let row = self.row(OutboxKind::Photo, visit);
        (row.digest, row.bytes, row.media) = (Digest(digest.to_owned()), bytes, "image/jpeg".to_owned());
    }

    pub(crate) fn add_seal(&mut self, visit: &str, jws: &str) {
        self.disk.seals.insert(visit.to_owned(), jws.to_owned());
        self.row(OutboxKind::Seal, visit);
    }

    /// Changes the state of rows.
    pub(crate) fn set(&mut self, to: &State, which: impl Fn(&Row) -> bool) {
        for row in self.disk.rows.iter_mut().filter(|row| which(row)) {
            row.state = to.clone();
        }
    }
}
