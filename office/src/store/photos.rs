//! Rows of photographs.

use rusqlite::{Connection, OptionalExtension as _, params};

use super::StoreError;
use super::devices::DeviceId;
use crate::ids::{Digest, VisitId};

/// A photograph that was announced.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Photo {
    /// How many bytes it has in all.
    pub(crate) length: u64,
    /// Its media type as the device says.
    pub(crate) media: String,
    /// File, folder and this row are on disk.
    pub(crate) safe: bool,
}

pub(crate) fn of(db: &Connection, digest: Digest) -> Result<Option<Photo>, StoreError> {
    let sql = "SELECT length, media, safe_ms IS NOT NULL FROM photo WHERE digest = ?1";
    let row = db
        .prepare_cached(sql)?
        .query_row([digest], |row| Ok(Photo { length: row.get(0)?, media: row.get(1)?, safe: row.get(2)? }));
    Ok(row.optional()?)
}

/// Writes down that a photograph will come. One that is not safe yet may be announced anew with another length.
pub(crate) fn announce(
    db: &Connection,
    digest: Digest,
    visit: &VisitId,
    photo: &Photo,
    device: DeviceId,
    now_ms: i64,
) -> Result<(), StoreError> {
    let sql = "INSERT INTO photo (digest, length, media, visit, device, announced_ms) VALUES (?1, ?2, ?3, ?4, ?5, ?6)
               ON CONFLICT (digest) DO UPDATE SET length = ?2, media = ?3 WHERE safe_ms IS NULL";
    db.prepare_cached(sql)?.execute(params![digest, photo.length, photo.media, visit, device, now_ms])?;
    Ok(())
}

/// Writes down that file and folder are on disk. Only `Folder::keep` may come before this.
pub(crate) fn mark_safe(db: &Connection, digest: Digest, now_ms: i64) -> Result<(), StoreError> {
    let sql = "UPDATE photo SET safe_ms = ?2 WHERE digest = ?1 AND safe_ms IS NULL";
    db.prepare_cached(sql)?.execute(params![digest, now_ms])?;
    Ok(())
}
