//! A visit's events for the device that goes on with it.

use crate::ids::VisitId;
use crate::store::devices::DeviceId;
use crate::store::{Store, StoreError, events};
use crate::wire::events::{EVENTS_MAX, StoredOut};

/// An answer gets no more events once they have so many bytes together.
const ANSWER_BYTES_MAX: usize = 4 * 1024 * 1024;

/// Events that were not given.
#[derive(Debug, thiserror::Error)]
pub(crate) enum GiveError {
    #[error("there is no such visit")]
    Unknown,
    #[error("another device writes this visit; only that one can fetch its events")]
    AnotherDevice,
    #[error(transparent)]
    Store(#[from] StoreError),
}

/// The events of a visit from a number on, as many as one answer holds.
pub(crate) fn give(store: &Store, device: DeviceId, visit: &VisitId, from: u64) -> Result<StoredOut, GiveError> {
    let (head, stored) = store.read(|db| {
        let head = events::head(db, visit)?;
        Ok((head, events::from(db, visit, from.min(i64::MAX as u64), EVENTS_MAX)?))
    })?;
    let head = head.ok_or(GiveError::Unknown)?;
    if head.device != device {
        return Err(GiveError::AnotherDevice);
    }
    let mut bytes = 0;
    let mut fits = |event: &Vec<u8>| {
        let first = bytes == 0;
        bytes += event.len();
        first || bytes <= ANSWER_BYTES_MAX
    };
    let text = |bytes: Vec<u8>| String::from_utf8_lossy(&bytes).into_owned();
    let events = stored.into_iter().take_while(|event| fits(event)).map(text).collect();
    Ok(StoredOut { first: from, events, next: head.next, head: head.hash.to_string() })
}
