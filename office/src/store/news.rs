//! Rows of what devices are told, numbered in the order in which it came up.

use rusqlite::types::{FromSql, FromSqlError, FromSqlResult, ToSql, ToSqlOutput, ValueRef};
use rusqlite::{Connection, OptionalExtension as _, params};

use super::StoreError;
use super::devices::DeviceId;
use crate::ids::Digest;

/// What a piece of news is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    /// An assignment, new or changed.
    Assignment,
    /// An assignment that is not to be done any more.
    Withdrawn,
    /// A pack, by its digest.
    Pack,
    /// A review, by its number.
    Review,
    /// A visit that goes over to the device.
    Handed,
}

impl Kind {
    const ALL: [Kind; 5] = [Kind::Assignment, Kind::Withdrawn, Kind::Pack, Kind::Review, Kind::Handed];

    const fn name(self) -> &'static str {
        match self {
            Kind::Assignment => "assignment",
            Kind::Withdrawn => "withdrawn",
            Kind::Pack => "pack",
            Kind::Review => "review",
            Kind::Handed => "handed",
        }
    }
}

impl ToSql for Kind {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(ToSqlOutput::from(self.name()))
    }
}

impl FromSql for Kind {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        let name = value.as_str()?;
        Kind::ALL.into_iter().find(|kind| kind.name() == name).ok_or(FromSqlError::InvalidType)
    }
}

/// One piece of news.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Item {
    pub(crate) number: i64,
    pub(crate) kind: Kind,
    /// An id, a digest or a number, as `kind` says.
    pub(crate) subject: String,
}

/// Adds a piece of news, for one device or for all of them.
pub(crate) fn add(
    db: &Connection,
    kind: Kind,
    subject: &str,
    device: Option<DeviceId>,
    content: Option<Digest>,
) -> Result<(), StoreError> {
    let sql = "INSERT INTO news (kind, subject, device, content) VALUES (?1, ?2, ?3, ?4)";
    db.prepare_cached(sql)?.execute(params![kind, subject, device, content])?;
    Ok(())
}

/// What was last told about each assignment that is not withdrawn: its id, and the content's digest.
pub(crate) fn told_assignments(db: &Connection) -> Result<Vec<(String, Option<Digest>)>, StoreError> {
    let sql = "SELECT n.subject, n.content FROM news n WHERE n.kind = 'assignment' AND NOT EXISTS (
                   SELECT 1 FROM news m WHERE m.subject = n.subject AND m.number > n.number
                       AND m.kind IN ('assignment', 'withdrawn'))
               ORDER BY n.subject";
    let mut query = db.prepare_cached(sql)?;
    let rows = query.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// This pack was told about.
pub(crate) fn is_told(db: &Connection, kind: Kind, subject: &str) -> Result<bool, StoreError> {
    let sql = "SELECT 1 FROM news WHERE kind = ?1 AND subject = ?2 LIMIT 1";
    Ok(db.prepare_cached(sql)?.query_row(params![kind, subject], |_| Ok(())).optional()?.is_some())
}

/// What a device is told after a number, at most so many pieces. What is said about the same thing again later is left out
/// here: the device only needs the last word.
pub(crate) fn after(db: &Connection, device: DeviceId, number: i64, most: u32) -> Result<Vec<Item>, StoreError> {
    let sql = "SELECT n.number, n.kind, n.subject FROM news n
               WHERE n.number > ?1 AND (n.device IS NULL OR n.device = ?2)
                 AND NOT (n.kind IN ('assignment', 'withdrawn') AND EXISTS (
                     SELECT 1 FROM news m WHERE m.subject = n.subject AND m.number > n.number
                         AND m.kind IN ('assignment', 'withdrawn')))
                 AND NOT (n.kind = 'handed' AND EXISTS (
                     SELECT 1 FROM news m WHERE m.kind = 'handed' AND m.subject = n.subject AND m.number > n.number))
               ORDER BY n.number LIMIT ?3";
    let mut query = db.prepare_cached(sql)?;
    let rows = query.query_map(params![number, device, most], |row| {
        Ok(Item { number: row.get(0)?, kind: row.get(1)?, subject: row.get(2)? })
    })?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// The number of the last piece of news; 0 where there is none.
pub(crate) fn last(db: &Connection) -> Result<i64, StoreError> {
    Ok(db.query_row("SELECT coalesce(max(number), 0) FROM news", [], |row| row.get(0))?)
}
