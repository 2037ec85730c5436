//! The customer's name and signature: a file that an event names by its SHA-256. It comes the way of photographs and is
//! none: it is personal data, and can be erased. The record holds without it, and says that it is withheld.

use coilside_core::evidence::Shown;
use coilside_core::id;
use coilside_core::visit::event::{Body, Event};
use rusqlite::Connection;

use super::record::Record;
use crate::ids::{Digest, VisitId};
use crate::store::folder::failed;
use crate::store::{Store, StoreError, events, photos, settings};

/// How it stands with such a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stand {
    /// It has not come.
    Waits,
    /// It is here.
    Here,
    /// It was erased, or the record that brought the visit did not enclose it.
    Withheld,
}

/// Those that the events name, in order.
pub(crate) fn named<'a>(events: impl Iterator<Item = &'a [u8]>) -> Vec<id::Digest> {
    let shown = |(bytes, seq): (&[u8], u64)| match Event::from_bytes(bytes, seq).ok()?.body {
        Body::CustomerNoted { shown, .. } => shown,
        _ => None,
    };
    events.zip(0..).filter_map(shown).collect()
}

pub(crate) fn stands(db: &Connection, digest: Digest) -> Result<Stand, StoreError> {
    if is_withheld(db, digest)? {
        return Ok(Stand::Withheld);
    }
    let safe = photos::of(db, digest)?.is_some_and(|file| file.safe);
    Ok(if safe { Stand::Here } else { Stand::Waits })
}

/// It was here or elsewhere, and is not kept any more by somebody's will.
pub(crate) fn is_withheld(db: &Connection, digest: Digest) -> Result<bool, StoreError> {
    Ok(settings::of(db, &withheld(digest))?.is_some())
}

/// Writes down that it is not kept here by somebody's will.
pub(crate) fn withhold(db: &Connection, digest: Digest, now_ms: i64) -> Result<(), StoreError> {
    settings::put(db, &withheld(digest), &now_ms.to_string())
}

/// It came after all, in a fuller record.
pub(crate) fn keep_again(db: &Connection, digest: Digest) -> Result<(), StoreError> {
    settings::forget(db, &withheld(digest))
}

fn withheld(digest: Digest) -> String {
    format!("withheld:{digest}")
}

/// The bytes of one that is here.
pub(crate) fn bytes_of(store: &Store, digest: Digest) -> Result<Vec<u8>, StoreError> {
    let path = store.folder.original(digest);
    std::fs::read(&path).map_err(|e| failed("read", &path, e))
}

/// Whom the visit was shown to, where that is here and is what the record names.
pub(crate) fn shown(store: &Store, record: &Record<'_>) -> Option<Shown> {
    let digest = record.visit.shown.as_ref()?;
    let here = record.customer.iter().any(|(of, file)| of == digest && *file == Stand::Here);
    let bytes = bytes_of(store, Digest::parse(digest.as_str()).ok()?).ok().filter(|_| here)?;
    let same = Digest::of(&bytes).to_string() == digest.as_str();
    Shown::read(&bytes).ok().filter(|_| same)
}

/// Erases what is here of a visit; how many files. The file goes before the row says so: after a kill between the two it can
/// be erased again.
pub(crate) fn erase(store: &Store, visit: &VisitId, now_ms: i64) -> Result<usize, StoreError> {
    let stored = store.read(|db| events::all(db, visit))?;
    let mut erased = 0;
    for digest in named(stored.iter().map(Vec::as_slice)) {
        let Ok(digest) = Digest::parse(digest.as_str()) else { continue };
        if store.read(|db| stands(db, digest))? == Stand::Here {
            store.folder.erase(digest)?;
            store.write(|db| withhold(db, digest, now_ms))?;
            erased += 1;
        }
    }
    Ok(erased)
}
