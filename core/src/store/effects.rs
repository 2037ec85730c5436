//! What the shell was asked.

use rusqlite::{OptionalExtension as _, params};

use super::{Store, StoreError};
use crate::effect::{Effect, Outcome, Request};
use crate::id::VisitId;

/// An effect as stored.
#[derive(Clone, Debug, PartialEq)]
pub struct StoredEffect {
    /// Of which visit.
    pub visit: VisitId,
    /// What was asked.
    pub request: Request,
    /// How it ended.
    pub outcome: Option<Outcome>,
}

pub(super) fn parse_id(id: &str) -> Result<(String, i64, i64), StoreError> {
    let wrong = || StoreError::Damaged { what: format!("the request '{id}'"), detail: "no such name".into() };
    let mut parts = id.splitn(3, '/');
    match (parts.next(), parts.next(), parts.next()) {
        (Some(visit), Some(seq), Some(n)) => {
            Ok((visit.to_owned(), seq.parse().map_err(|_| wrong())?, n.parse().map_err(|_| wrong())?))
        }
        _ => Err(wrong()),
    }
}

fn read<T: serde::de::DeserializeOwned>(text: &str) -> Result<T, StoreError> {
    serde_json::from_str(text)
        .map_err(|error| StoreError::Damaged { what: "a stored request".into(), detail: error.to_string() })
}

impl Store {
    /// The effect of that id.
    ///
    /// # Errors
    /// Where the id is none or the store cannot be read.
    pub fn effect(&self, id: &str) -> Result<Option<StoredEffect>, StoreError> {
        let (visit, seq, n) = parse_id(id)?;
        let row: Option<(String, Option<String>)> = self
            .connection
            .query_row(
                "SELECT request, outcome FROM effect WHERE visit = ?1 AND seq = ?2 AND n = ?3",
                params![visit, seq, n],
                |row| Ok((row.get(0)?, row.get(1)?)),
            )
            .optional()?;
        row.map(|(request, outcome)| {
            Ok(StoredEffect {
                visit: VisitId(visit),
                request: read(&request)?,
                outcome: outcome.as_deref().map(read).transpose()?,
            })
        })
        .transpose()
    }

    /// All effects that did not end yet.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn open_effects(&self) -> Result<Vec<Effect>, StoreError> {
        let mut query = self
            .connection
            .prepare_cached("SELECT visit, seq, n, request FROM effect WHERE outcome IS NULL ORDER BY visit, seq, n")?;
        let rows = query.query_map([], |row| {
            let id = format!("{}/{}/{}", row.get::<_, String>(0)?, row.get::<_, i64>(1)?, row.get::<_, i64>(2)?);
            Ok((id, row.get::<_, String>(3)?))
        })?;
        rows.map(|row| {
            let (id, request) = row?;
            Ok(Effect { id, request: read(&request)? })
        })
        .collect()
    }
}
