//! Events on the wire.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::envelope::{Envelope, EnvelopeError};
use crate::ids::VisitId;

/// The most events of one request. A device sends the rest in the next one.
pub(crate) const EVENTS_MAX: usize = 1000;

/// A device sends events.
#[derive(Debug, Deserialize, ToSchema)]
pub(crate) struct EventsIn {
    /// The number of the first of them.
    pub(crate) first: u64,
    /// Their exact bytes, each as text.
    #[schema(max_items = 1000)]
    pub(crate) events: Vec<String>,
}

/// How far the visit has arrived.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct EventsOut {
    /// The number that is wanted next.
    pub(crate) next: u64,
    /// The hash of the last stored event, 64 zeros before the first.
    pub(crate) head: String,
}

/// Events of a visit for the device that goes on with it.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct StoredOut {
    /// The number of the first of them.
    pub(crate) first: u64,
    /// Their exact bytes, each as text. There may be more: ask again from the number after the last.
    pub(crate) events: Vec<String>,
    /// The number that is wanted next.
    pub(crate) next: u64,
    /// The hash of the last stored event, 64 zeros before the first.
    pub(crate) head: String,
}

/// A request that no repetition makes right.
#[derive(Debug, thiserror::Error)]
pub(crate) enum BatchError {
    #[error("{count} events in one request are more than {EVENTS_MAX}; send the rest in another one")]
    TooMany { count: usize },
    #[error("event {seq} cannot be kept: {source}")]
    Event { seq: u64, source: EnvelopeError },
}

impl EventsIn {
    /// Reads the events: each of this visit, numbered in a row, each following the one before it.
    pub(crate) fn read(&self, visit: &VisitId) -> Result<Vec<Envelope>, BatchError> {
        if self.events.len() > EVENTS_MAX {
            return Err(BatchError::TooMany { count: self.events.len() });
        }
        let mut batch: Vec<Envelope> = Vec::with_capacity(self.events.len());
        for (bytes, seq) in self.events.iter().zip(self.first..) {
            let event = Envelope::read(bytes, visit, seq).map_err(|source| BatchError::Event { seq, source })?;
            if batch.last().is_some_and(|before| before.hash != event.prev) {
                return Err(BatchError::Event { seq, source: EnvelopeError::NotChained });
            }
            batch.push(event);
        }
        Ok(batch)
    }
}
