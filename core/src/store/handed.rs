//! Visits that go over from one device to another.

use rusqlite::{OptionalExtension as _, Transaction, params};

use super::{Commit, Store, StoreError};
use crate::id::{Digest, VisitId};
use crate::round::HandedVisit;

/// A visit that the office lets this device go on with, and that is not whole here yet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Coming {
    /// Which.
    pub visit: VisitId,
    /// How many of its events are here.
    pub have: u64,
    /// How many there are.
    pub next: u64,
    /// The digest of the last of them.
    pub head: Digest,
}

impl Store {
    /// Notes that the office lets this device go on with a visit. What came of it before stays.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn put_handed(&mut self, handed: &HandedVisit) -> Result<(), StoreError> {
        self.connection.execute(
            "INSERT INTO handed (visit, next, head) VALUES (?1, ?2, ?3)
             ON CONFLICT (visit) DO UPDATE SET next = excluded.next, head = excluded.head",
            params![handed.visit, handed.next as i64, handed.head],
        )?;
        Ok(())
    }

    /// It is not this device's any more. What came of it is let go: the office has it.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn drop_handed(&mut self, visit: &VisitId) -> Result<(), StoreError> {
        let transaction = self.connection.transaction()?;
        forget(&transaction, visit)?;
        transaction.commit()?;
        Ok(())
    }

    /// The visits that this device is to go on with and that are not whole here yet.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn coming(&self) -> Result<Vec<Coming>, StoreError> {
        let mut query = self.connection.prepare_cached(
            "SELECT visit, (SELECT count(*) FROM handed_event AS e WHERE e.visit = h.visit), next, head
             FROM handed AS h ORDER BY visit",
        )?;
        let rows = query.query_map([], |row| {
            Ok(Coming {
                visit: VisitId(row.get(0)?),
                have: row.get::<_, i64>(1)? as u64,
                next: row.get::<_, i64>(2)? as u64,
                head: Digest(row.get(3)?),
            })
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Whether the office lets this device go on with that visit, and it is not whole here yet.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn is_coming(&self, visit: &VisitId) -> Result<bool, StoreError> {
        let mut query = self.connection.prepare_cached("SELECT EXISTS (SELECT 1 FROM handed WHERE visit = ?1)")?;
        Ok(query.query_row([visit.as_str()], |row| row.get(0))?)
    }

    /// The visit whose events are asked for next, and from which number on. One of which this device still has unsent events
    /// of its own waits for those to arrive.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn handed_to_fetch(&self) -> Result<Option<(VisitId, u64)>, StoreError> {
        let mut query = self.connection.prepare_cached(
            "SELECT visit, have FROM (
                 SELECT visit, next, (SELECT count(*) FROM handed_event AS e WHERE e.visit = h.visit) AS have
                 FROM handed AS h) AS c
             WHERE have < next AND NOT EXISTS (
                 SELECT 1 FROM outbox AS o WHERE o.visit = c.visit AND o.kind = 'events' AND o.state = 'waiting')
             ORDER BY visit LIMIT 1",
        )?;
        let row = query.query_row([], |row| Ok((VisitId(row.get(0)?), row.get::<_, i64>(1)? as u64)));
        Ok(row.optional()?)
    }

    /// Keeps events that came of such a visit, from the number `first` on.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn put_coming(
        &mut self,
        visit: &VisitId,
        first: u64,
        events: &[String],
        (next, head): (u64, &str),
    ) -> Result<(), StoreError> {
        let transaction = self.connection.transaction()?;
        for (seq, event) in (first..).zip(events) {
            transaction.execute(
                "INSERT INTO handed_event (visit, seq, bytes) VALUES (?1, ?2, ?3) ON CONFLICT DO NOTHING",
                params![visit.as_str(), seq as i64, event.as_bytes()],
            )?;
        }
        transaction.execute(
            "UPDATE handed SET next = ?2, head = ?3 WHERE visit = ?1",
            params![visit.as_str(), next as i64, head],
        )?;
        transaction.commit()?;
        Ok(())
    }

    /// All that came of such a visit.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn came(&self, visit: &VisitId) -> Result<Vec<Vec<u8>>, StoreError> {
        let mut query =
            self.connection.prepare_cached("SELECT bytes FROM handed_event WHERE visit = ?1 ORDER BY seq")?;
        let rows = query.query_map([visit.as_str()], |row| row.get(0))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// What came does not hold together: it is fetched anew.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn fetch_anew(&mut self, visit: &VisitId) -> Result<(), StoreError> {
        self.connection.execute("DELETE FROM handed_event WHERE visit = ?1", [visit.as_str()])?;
        Ok(())
    }

    /// Makes what came the visit's log and writes the commit behind it, all at once. What this device has of the visit beyond
    /// what came moves to the branch. Returns the ids of the effects that the commit opened.
    ///
    /// # Errors
    /// Where anything fails: then nothing of it is written.
    pub fn go_on(&mut self, visit: &VisitId, commit: &Commit<'_>) -> Result<Vec<String>, StoreError> {
        let transaction = self.connection.transaction()?;
        branch_off(&transaction, visit)?;
        transaction.execute(
            "INSERT INTO event (visit, seq, bytes) SELECT visit, seq, bytes FROM handed_event AS h WHERE visit = ?1
             AND NOT EXISTS (SELECT 1 FROM event AS e WHERE e.visit = h.visit AND e.seq = h.seq)",
            [visit.as_str()],
        )?;
        forget(&transaction, visit)?;
        let opened = super::commit::write(&transaction, commit)?;
        transaction.execute("UPDATE visit SET elsewhere = 0, sealed = 0 WHERE visit = ?1", [visit.as_str()])?;
        transaction.commit()?;
        Ok(opened)
    }

    /// Another device goes on with the visit: nothing rings for it here any more.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn visit_elsewhere(&mut self, visit: &VisitId) -> Result<(), StoreError> {
        let transaction = self.connection.transaction()?;
        transaction.execute("UPDATE visit SET elsewhere = 1 WHERE visit = ?1", [visit.as_str()])?;
        transaction.execute(
            r#"UPDATE effect SET outcome = '{"outcome":"cancelled"}'
               WHERE visit = ?1 AND outcome IS NULL AND json_extract(request, '$.ask') = 'wake-at'"#,
            [visit.as_str()],
        )?;
        transaction.commit()?;
        Ok(())
    }

    /// Whether another device goes on with the visit, as far as this one heard.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn is_elsewhere(&self, visit: &VisitId) -> Result<bool, StoreError> {
        let mut query = self.connection.prepare_cached("SELECT elsewhere FROM visit WHERE visit = ?1")?;
        Ok(query.query_row([visit.as_str()], |row| row.get(0)).optional()?.unwrap_or_default())
    }

    /// What this device wrote of the visit while another one went on with it.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn branch(&self, visit: &VisitId) -> Result<Vec<Vec<u8>>, StoreError> {
        let mut query = self.connection.prepare_cached("SELECT bytes FROM branch WHERE visit = ?1 ORDER BY seq")?;
        let rows = query.query_map([visit.as_str()], |row| row.get(0))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }
}

fn forget(transaction: &Transaction<'_>, visit: &VisitId) -> Result<(), StoreError> {
    transaction.execute("DELETE FROM handed_event WHERE visit = ?1", [visit.as_str()])?;
    transaction.execute("DELETE FROM handed WHERE visit = ?1", [visit.as_str()])?;
    Ok(())
}

/// From the first event on that differs from what came, this device's own log moves aside, with a seal over it.
fn branch_off(transaction: &Transaction<'_>, visit: &VisitId) -> Result<(), StoreError> {
    let first: Option<i64> = transaction.query_row(
        "SELECT min(e.seq) FROM event AS e LEFT JOIN handed_event AS h ON h.visit = e.visit AND h.seq = e.seq
         WHERE e.visit = ?1 AND (h.bytes IS NULL OR h.bytes <> e.bytes)",
        [visit.as_str()],
        |row| row.get(0),
    )?;
    let Some(first) = first else { return Ok(()) };
    for sql in [
        "INSERT INTO branch (visit, seq, bytes) SELECT visit, seq, bytes FROM event WHERE visit = ?1 AND seq >= ?2
         ON CONFLICT DO NOTHING",
        "DELETE FROM event WHERE visit = ?1 AND seq >= ?2",
        "DELETE FROM snapshot WHERE visit = ?1 AND next > ?2",
        "DELETE FROM outbox WHERE visit = ?1 AND kind IN ('events', 'seal') AND first + count > ?2 AND state <> 'safe'",
    ] {
        transaction.execute(sql, params![visit.as_str(), first])?;
    }
    for sql in [
        "INSERT INTO branch_seal (visit, jws) SELECT visit, jws FROM seal WHERE visit = ?1 ON CONFLICT DO NOTHING",
        "DELETE FROM seal WHERE visit = ?1",
    ] {
        transaction.execute(sql, [visit.as_str()])?;
    }
    Ok(())
}
