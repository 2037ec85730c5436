//! One transaction: everything that an action or an outcome brings is written together or not at all.

use rusqlite::{Transaction, params};

use super::{Store, StoreError};
use crate::effect::{Outcome, Request};
use crate::id::{Digest, VisitId};
use crate::visit::event::{Body, Event};
use crate::visit::state::Visit;

/// Snapshots are written when this many events came since the last one.
const SNAPSHOT_EVERY: u64 = 16;

/// Everything that is written at once.
#[derive(Default)]
pub struct Commit<'a> {
    /// The visit after the events, for the index of visits and the snapshot.
    pub visit: Option<&'a Visit>,
    /// Events in order, with the bytes that were hashed.
    pub events: Vec<(Event, Vec<u8>)>,
    /// Requests to open.
    pub effects: Vec<NewEffect>,
    /// The effect that ended, with its outcome.
    pub ended: Option<(String, &'a Outcome)>,
    /// The photograph to send: digest, media type, length.
    pub photo: Option<(Digest, String, u64)>,
    /// The pack to pin.
    pub pack: Option<(&'a Digest, &'a [u8])>,
    /// The signature that closes the record.
    pub seal: Option<Sealed<'a>>,
    /// The action that was done, with its refusal where it was refused.
    pub acted: Option<(&'a str, Option<String>)>,
    /// Half-typed texts that are used up: place and field.
    pub used: Vec<(String, String)>,
    /// Settings to keep: name and value.
    pub settings: Vec<(String, String)>,
    /// When, UTC milliseconds.
    pub utc_ms: i64,
}

/// A request to open, numbered by the event it came with.
pub struct NewEffect {
    /// Of which visit.
    pub visit: VisitId,
    /// With which event; for requests without an event the number that the next event will have.
    pub seq: u64,
    /// What is asked.
    pub request: Request,
}

/// A seal with its visit.
pub struct Sealed<'a> {
    /// Of which visit.
    pub visit: &'a VisitId,
    /// The compact JWS.
    pub jws: &'a str,
    /// How many events it covers, where it is one over addenda; none for the seal itself.
    pub addenda_to: Option<u64>,
}

impl Store {
    /// Writes a commit. Returns the ids of the effects that it opened.
    ///
    /// # Errors
    /// Where anything fails: then nothing of it is written.
    pub fn commit(&mut self, commit: &Commit<'_>) -> Result<Vec<String>, StoreError> {
        let transaction = self.connection.transaction()?;
        let opened = write(&transaction, commit)?;
        transaction.commit()?;
        Ok(opened)
    }
}

pub(super) fn write(transaction: &Transaction<'_>, commit: &Commit<'_>) -> Result<Vec<String>, StoreError> {
    write_events(transaction, commit)?;
    let opened = write_effects(transaction, commit)?;
    silence_alarms(transaction, commit)?;
    write_outbox(transaction, commit)?;
    write_beside(transaction, commit, &opened)?;
    Ok(opened)
}

fn write_events(transaction: &Transaction<'_>, commit: &Commit<'_>) -> Result<(), StoreError> {
    let mut insert = transaction.prepare_cached("INSERT INTO event (visit, seq, bytes) VALUES (?1, ?2, ?3)")?;
    for (event, bytes) in &commit.events {
        insert.execute(params![event.visit.as_str(), event.seq as i64, bytes])?;
    }
    let (Some(visit), false) = (commit.visit, commit.events.is_empty()) else { return Ok(()) };
    transaction.execute(
        "INSERT INTO visit (visit, assignment, opened_utc_ms, next) VALUES (?1, ?2, ?3, ?4)
         ON CONFLICT (visit) DO UPDATE SET next = excluded.next",
        params![
            visit.id.as_str(),
            visit.assignment,
            visit.opened.as_ref().map_or(0, |now| now.utc_ms),
            visit.end.next as i64
        ],
    )?;
    let kept: i64 = transaction.query_row(
        "SELECT coalesce((SELECT next FROM snapshot WHERE visit = ?1), 0)",
        [visit.id.as_str()],
        |row| row.get(0),
    )?;
    if visit.end.next >= kept as u64 + SNAPSHOT_EVERY {
        let state = serde_json::to_string(visit)
            .map_err(|error| StoreError::Damaged { what: "the visit's state".into(), detail: error.to_string() })?;
        transaction.execute(
            "INSERT INTO snapshot (visit, next, state) VALUES (?1, ?2, ?3)
             ON CONFLICT (visit) DO UPDATE SET next = excluded.next, state = excluded.state",
            params![visit.id.as_str(), visit.end.next as i64, state],
        )?;
    }
    Ok(())
}

fn write_effects(transaction: &Transaction<'_>, commit: &Commit<'_>) -> Result<Vec<String>, StoreError> {
    let mut opened = Vec::new();
    for effect in &commit.effects {
        let request = serde_json::to_string(&effect.request)
            .map_err(|error| StoreError::Damaged { what: "a request".into(), detail: error.to_string() })?;
        let n: i64 = transaction.query_row(
            "SELECT coalesce(max(n) + 1, 0) FROM effect WHERE visit = ?1 AND seq = ?2",
            params![effect.visit.as_str(), effect.seq as i64],
            |row| row.get(0),
        )?;
        transaction.execute(
            "INSERT INTO effect (visit, seq, n, request) VALUES (?1, ?2, ?3, ?4)",
            params![effect.visit.as_str(), effect.seq as i64, n, request],
        )?;
        opened.push(format!("{}/{}/{n}", effect.visit, effect.seq));
    }
    if let Some((id, outcome)) = &commit.ended {
        let outcome = serde_json::to_string(outcome)
            .map_err(|error| StoreError::Damaged { what: "an outcome".into(), detail: error.to_string() })?;
        let (visit, seq, n) = super::effects::parse_id(id)?;
        transaction.execute(
            "UPDATE effect SET outcome = ?4 WHERE visit = ?1 AND seq = ?2 AND n = ?3 AND outcome IS NULL",
            params![visit, seq, n, outcome],
        )?;
    }
    Ok(opened)
}

/// Withdraws the alarms of a waiting time that was ended in any way, and all of a visit that is sealed: an alarm that
/// rings for nothing teaches people to stop the next one unread.
fn silence_alarms(transaction: &Transaction<'_>, commit: &Commit<'_>) -> Result<(), StoreError> {
    let ended = commit.events.iter().filter_map(|(event, _)| match &event.body {
        Body::StepDone { unit, step, .. }
        | Body::StepUndone { unit, step, .. }
        | Body::StepHappened { unit, step, .. } => Some((&event.visit, Some((unit.as_str(), step.as_str())))),
        _ => None,
    });
    let sealed = commit.seal.iter().map(|sealed| (sealed.visit, None));
    for (visit, of) in ended.chain(sealed) {
        let (unit, step) = of.unzip();
        transaction.execute(
            r#"UPDATE effect SET outcome = '{"outcome":"cancelled"}'
               WHERE visit = ?1 AND outcome IS NULL AND json_extract(request, '$.ask') = 'wake-at'
               AND (?2 IS NULL OR EXISTS (
                   SELECT 1 FROM event WHERE event.visit = effect.visit AND event.seq = effect.seq
                   AND json_extract(CAST(event.bytes AS TEXT), '$.unit') = ?2
                   AND json_extract(CAST(event.bytes AS TEXT), '$.step') = ?3))"#,
            params![visit.as_str(), unit, step],
        )?;
    }
    Ok(())
}

fn write_outbox(transaction: &Transaction<'_>, commit: &Commit<'_>) -> Result<(), StoreError> {
    if let Some((first, _)) = commit.events.first() {
        transaction.execute(
            "INSERT INTO outbox (kind, visit, first, count, since_utc_ms) VALUES ('events', ?1, ?2, ?3, ?4)",
            params![first.visit.as_str(), first.seq as i64, commit.events.len() as i64, commit.utc_ms],
        )?;
    }
    if let (Some((digest, media, bytes)), Some(visit)) = (&commit.photo, commit.visit) {
        transaction.execute(
            "INSERT INTO outbox (kind, visit, digest, media, bytes, since_utc_ms) VALUES ('photo', ?1, ?2, ?3, ?4, ?5)
             ON CONFLICT DO NOTHING",
            params![visit.id.as_str(), digest.as_str(), media, *bytes as i64, commit.utc_ms],
        )?;
    }
    if let Some(Sealed { visit, jws, addenda_to: Some(next) }) = &commit.seal {
        transaction.execute(
            "INSERT INTO addendum_seal (visit, next, jws, utc_ms) VALUES (?1, ?2, ?3, ?4)",
            params![visit.as_str(), *next as i64, jws, commit.utc_ms],
        )?;
        transaction.execute(
            "INSERT INTO outbox (kind, visit, first, since_utc_ms) VALUES ('seal', ?1, ?2, ?3)",
            params![visit.as_str(), *next as i64, commit.utc_ms],
        )?;
    } else if let Some(sealed) = &commit.seal {
        transaction.execute(
            "INSERT INTO seal (visit, jws, utc_ms) VALUES (?1, ?2, ?3)",
            params![sealed.visit.as_str(), sealed.jws, commit.utc_ms],
        )?;
        transaction.execute("UPDATE visit SET sealed = 1 WHERE visit = ?1", [sealed.visit.as_str()])?;
        transaction.execute(
            "INSERT INTO outbox (kind, visit, since_utc_ms) VALUES ('seal', ?1, ?2)",
            params![sealed.visit.as_str(), commit.utc_ms],
        )?;
    }
    Ok(())
}

fn write_beside(transaction: &Transaction<'_>, commit: &Commit<'_>, opened: &[String]) -> Result<(), StoreError> {
    if let Some((digest, bytes)) = commit.pack {
        transaction.execute(
            "INSERT INTO pack (digest, bytes) VALUES (?1, ?2) ON CONFLICT DO NOTHING",
            params![digest.as_str(), bytes],
        )?;
    }
    if let Some((action, refusal)) = &commit.acted {
        transaction.execute(
            "INSERT INTO acted (action, at, refusal, opened)
             VALUES (?1, (SELECT coalesce(max(at), 0) + 1 FROM acted), ?2, ?3)",
            params![action, refusal, opened.join(" ")],
        )?;
        transaction.execute("DELETE FROM acted WHERE at < (SELECT max(at) FROM acted) - 500", [])?;
    }
    for (place, field) in &commit.used {
        transaction.execute("DELETE FROM draft WHERE place = ?1 AND field = ?2", params![place, field])?;
    }
    for (name, value) in &commit.settings {
        transaction.execute(
            "INSERT INTO setting (name, value) VALUES (?1, ?2) ON CONFLICT (name) DO UPDATE SET value = excluded.value",
            params![name, value],
        )?;
    }
    Ok(())
}
