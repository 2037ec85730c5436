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
    /// Who announced it, and when it was last announced.
    pub(crate) device: DeviceId,
    pub(crate) announced_ms: i64,
}

pub(crate) fn of(db: &Connection, digest: Digest) -> Result<Option<Photo>, StoreError> {
    let sql = "SELECT length, media, safe_ms IS NOT NULL, device, announced_ms FROM photo WHERE digest = ?1";
    let row = db.prepare_cached(sql)?.query_row([digest], |row| {
        Ok(Photo {
            length: row.get(0)?,
            media: row.get(1)?,
            safe: row.get(2)?,
            device: row.get(3)?,
            announced_ms: row.get(4)?,
        })
    });
    Ok(row.optional()?)
}

/// Writes down that a photograph will come. One that is not safe yet may be announced anew with another length, and its time
/// begins anew. A client that knows no visits names none.
pub(crate) fn announce(
    db: &Connection,
    digest: Digest,
    visit: Option<&VisitId>,
    photo: &Photo,
) -> Result<(), StoreError> {
    let sql = "INSERT INTO photo (digest, length, media, visit, device, announced_ms) VALUES (?1, ?2, ?3, ?4, ?5, ?6)
               ON CONFLICT (digest) DO UPDATE SET length = ?2, media = ?3, announced_ms = ?6 WHERE safe_ms IS NULL";
    let visit = visit.map_or("", VisitId::as_str);
    let Photo { length, media, device, announced_ms, .. } = photo;
    db.prepare_cached(sql)?.execute(params![digest, length, media, visit, device, announced_ms])?;
    Ok(())
}

/// Some photographs that were announced before a moment and have not come as a whole.
pub(crate) fn unfinished(db: &Connection, before_ms: i64, most: u32) -> Result<Vec<Digest>, StoreError> {
    let sql = "SELECT digest FROM photo WHERE safe_ms IS NULL AND announced_ms < ?1 ORDER BY announced_ms LIMIT ?2";
    let mut query = db.prepare_cached(sql)?;
    let rows = query.query_map(params![before_ms, most], |row| row.get(0))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// Forgets a photograph that has not come as a whole.
pub(crate) fn forget(db: &Connection, digest: Digest) -> Result<(), StoreError> {
    db.prepare_cached("DELETE FROM photo WHERE digest = ?1 AND safe_ms IS NULL")?.execute([digest])?;
    Ok(())
}

/// Writes down that file and folder are on disk. Only `Folder::keep` may come before this.
pub(crate) fn mark_safe(db: &Connection, digest: Digest, now_ms: i64) -> Result<(), StoreError> {
    let sql = "UPDATE photo SET safe_ms = ?2 WHERE digest = ?1 AND safe_ms IS NULL";
    db.prepare_cached(sql)?.execute(params![digest, now_ms])?;
    Ok(())
}
