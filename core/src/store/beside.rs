//! What lies beside the log: assignments, half-typed texts, settings, pinned packs, and what each action came to.

use std::collections::BTreeMap;

use rusqlite::{OptionalExtension as _, params};

use super::{Store, StoreError};
use crate::effect::Effect;
use crate::id::{Digest, VisitId};
use crate::round::{Assignment, Technician};

/// The setting that holds who works with this device.
const TECHNICIAN: &str = "technician";

/// What an action came to.
#[derive(Clone, Debug, PartialEq)]
pub struct Acted {
    /// Its refusal, as stored, where it was refused.
    pub refusal: Option<String>,
    /// The requests that it opened and that did not end since.
    pub still_open: Vec<Effect>,
}

impl Store {
    /// Takes an assignment, or its newer version. `salt` is kept from the first time on: digests in events lean on it.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn put_assignment(&mut self, assignment: &Assignment, salt: &str) -> Result<(), StoreError> {
        let body = serde_json::to_string(assignment)
            .map_err(|error| StoreError::Damaged { what: "an assignment".into(), detail: error.to_string() })?;
        self.connection.execute(
            "INSERT INTO assignment (id, due, body, salt) VALUES (?1, ?2, ?3, ?4)
             ON CONFLICT (id) DO UPDATE SET due = excluded.due, body = excluded.body, withdrawn = 0",
            params![assignment.id, assignment.due, body, salt],
        )?;
        Ok(())
    }

    /// The assignment of that id with its salt.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn assignment(&self, id: &str) -> Result<Option<(Assignment, String)>, StoreError> {
        let row: Option<(String, String)> = self
            .connection
            .query_row("SELECT body, salt FROM assignment WHERE id = ?1", [id], |row| Ok((row.get(0)?, row.get(1)?)))
            .optional()?;
        row.map(|(body, salt)| Ok((read(&body)?, salt))).transpose()
    }

    /// Assignments that no visit answers yet and that the office did not take back, by due day.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn assignments_due(&self) -> Result<Vec<Assignment>, StoreError> {
        let mut query = self.connection.prepare_cached(
            "SELECT body FROM assignment WHERE withdrawn = 0 AND id NOT IN (SELECT assignment FROM visit) ORDER BY due, id",
        )?;
        let rows = query.query_map([], |row| row.get::<_, String>(0))?;
        rows.map(|body| read(&body?)).collect()
    }

    /// Keeps a text that is typed: half of it, or, where it is `meant`, all of it as it stands.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn put_draft(&mut self, place: &str, field: &str, text: &str, meant: bool) -> Result<(), StoreError> {
        self.connection.execute(
            "INSERT INTO draft (place, field, text, meant) VALUES (?1, ?2, ?3, ?4)
             ON CONFLICT (place, field) DO UPDATE SET text = excluded.text, meant = excluded.meant",
            params![place, field, text, meant],
        )?;
        Ok(())
    }

    /// The fields of a place whose text was meant as it stands and did not become a reading.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn meant_drafts(&self, place: &str) -> Result<Vec<String>, StoreError> {
        let mut query = self.connection.prepare_cached("SELECT field FROM draft WHERE place = ?1 AND meant = 1")?;
        let rows = query.query_map([place], |row| row.get(0))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// The half-typed texts of a place, by field.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn drafts(&self, place: &str) -> Result<BTreeMap<String, String>, StoreError> {
        let mut query = self.connection.prepare_cached("SELECT field, text FROM draft WHERE place = ?1")?;
        let rows = query.query_map([place], |row| Ok((row.get(0)?, row.get(1)?)))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// A setting.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn setting(&self, name: &str) -> Result<Option<String>, StoreError> {
        Ok(self
            .connection
            .query_row("SELECT value FROM setting WHERE name = ?1", [name], |row| row.get(0))
            .optional()?)
    }

    /// Keeps a setting.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn put_setting(&mut self, name: &str, value: &str) -> Result<(), StoreError> {
        self.connection.execute(
            "INSERT INTO setting (name, value) VALUES (?1, ?2) ON CONFLICT (name) DO UPDATE SET value = excluded.value",
            params![name, value],
        )?;
        Ok(())
    }

    /// Who works with this device; nobody in particular where the office has not said.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn technician(&self) -> Result<Technician, StoreError> {
        let damaged = |error: serde_json::Error| StoreError::Damaged {
            what: "the technician's own instruments".into(),
            detail: error.to_string(),
        };
        self.setting(TECHNICIAN)?
            .map_or_else(|| Ok(Technician::default()), |body| serde_json::from_str(&body).map_err(damaged))
    }

    /// Keeps who works with this device.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn put_technician(&mut self, technician: &Technician) -> Result<(), StoreError> {
        let body = serde_json::to_string(technician)
            .map_err(|error| StoreError::Damaged { what: "the technician".into(), detail: error.to_string() })?;
        self.put_setting(TECHNICIAN, &body)
    }

    /// The bytes of a pinned pack.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn pinned_pack(&self, digest: &Digest) -> Result<Option<Vec<u8>>, StoreError> {
        Ok(self
            .connection
            .query_row("SELECT bytes FROM pack WHERE digest = ?1", [digest.as_str()], |row| row.get(0))
            .optional()?)
    }

    /// What an action came to; none if it was never done.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn acted(&self, action: &str) -> Result<Option<Acted>, StoreError> {
        let row: Option<(Option<String>, String)> = self
            .connection
            .query_row("SELECT refusal, opened FROM acted WHERE action = ?1", [action], |row| {
                Ok((row.get(0)?, row.get(1)?))
            })
            .optional()?;
        row.map(|(refusal, opened)| {
            let mut still_open = Vec::new();
            for id in opened.split_whitespace() {
                if let Some(effect) = self.effect(id)?.filter(|effect| effect.outcome.is_none()) {
                    still_open.push(Effect { id: id.to_owned(), request: effect.request });
                }
            }
            Ok(Acted { refusal, still_open })
        })
        .transpose()
    }

    /// The visit that answers an assignment, the first one where there are several.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn visit_of(&self, assignment: &str) -> Result<Option<VisitId>, StoreError> {
        let first = "SELECT visit FROM visit WHERE assignment = ?1 ORDER BY opened_utc_ms LIMIT 1";
        Ok(self.connection.query_row(first, [assignment], |row| row.get(0).map(VisitId)).optional()?)
    }
}

fn read(body: &str) -> Result<Assignment, StoreError> {
    serde_json::from_str(body)
        .map_err(|error| StoreError::Damaged { what: "an assignment".into(), detail: error.to_string() })
}
