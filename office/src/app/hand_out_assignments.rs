//! What is to be done, on its way to the devices.

use coilside_core::round::Technician;
use serde_json::Value;

use super::library::Library;
use super::list_visits;
use super::unit_history;
use crate::store::devices::Device;
use crate::store::{Store, StoreError, assignments, listings, settings};

/// An assignment that cannot be handed out.
#[derive(Debug, thiserror::Error)]
pub enum AssignmentError {
    /// It has no usable name.
    #[error("an assignment needs an 'id' of 1 to 64 letters, digits and hyphens")]
    NoId,
    /// It was not kept.
    #[error(transparent)]
    Store(#[from] StoreError),
}

/// Keeps an assignment, in place of an earlier one with its id.
pub(crate) fn put(store: &Store, doc: &Value, now_ms: i64) -> Result<(), AssignmentError> {
    let id = doc.get("id").and_then(Value::as_str).ok_or(AssignmentError::NoId)?;
    if !(1..=64).contains(&id.len()) || !id.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-') {
        return Err(AssignmentError::NoId);
    }
    store.write(|db| {
        assignments::put(db, id, &doc.to_string(), now_ms)?;
        Ok(listings::forget_assignment(db, id)?)
    })
}

/// An assignment is not to be done any more; false where there is none of that name. Whoever has begun it goes on.
pub(crate) fn withdraw(store: &Store, id: &str, now_ms: i64) -> Result<bool, StoreError> {
    store.write(|db| assignments::withdraw(db, id, now_ms))
}

/// Keeps who works with the devices of a name, in place of what was there: a `coilside_core::round::Technician`.
pub(crate) fn put_technician(store: &Store, device: &str, technician: &Technician) -> Result<(), StoreError> {
    let doc = serde_json::to_string(technician).unwrap_or_default();
    store.write(|db| settings::put(db, &technician_of(device), &doc))
}

/// Who works with a device; none where nobody wrote it down.
pub(crate) fn technician(store: &Store, device: &Device) -> Result<Option<Value>, StoreError> {
    let doc = store.read(|db| settings::of(db, &technician_of(&device.name)))?;
    Ok(doc.and_then(|doc| serde_json::from_str(&doc).ok()))
}

/// Everyone who works with some device, by name, each once.
pub(crate) fn technicians(store: &Store) -> Result<Vec<Technician>, StoreError> {
    let docs = store.read(|db| settings::beginning(db, TECHNICIAN))?;
    let mut all: Vec<Technician> = docs.iter().filter_map(|(_, doc)| serde_json::from_str(doc).ok()).collect();
    all.sort_by(|one, other| one.name.cmp(&other.name));
    all.dedup_by(|one, other| one.name == other.name);
    Ok(all)
}

/// With what the settings of technicians begin.
const TECHNICIAN: &str = "technician:";

/// Devices of one name are one technician's.
fn technician_of(device: &str) -> String {
    format!("{TECHNICIAN}{device}")
}

/// Assignments that no visit answers yet, by id, filled with what the office's own records say about their units.
pub(crate) fn open(store: &Store, library: &Library) -> Result<Vec<Value>, StoreError> {
    list_visits::refresh(store, library)?;
    store.read(|db| {
        // Only `put` writes them, so each is JSON; a row spoilt from outside must not hide the others.
        let mut docs: Vec<Value> =
            assignments::open(db)?.iter().filter_map(|doc| serde_json::from_str(doc).ok()).collect();
        for doc in &mut docs {
            unit_history::fill(db, doc)?;
        }
        Ok(docs)
    })
}
