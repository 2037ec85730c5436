//! A device sends events: they are chained to what is stored, or kept beside it.

use crate::ids::{Digest, VisitId};
use crate::store::devices::DeviceId;
use crate::store::events::{self, Head};
use crate::store::{Store, StoreError};
use crate::wire::envelope::Envelope;
use crate::wire::events::{BatchError, EventsIn};

/// The most events of one visit, and the most that are kept beside its chain. A long visit has a few hundred.
const VISIT_EVENTS_MAX: u64 = 100_000;

/// How far the visit has arrived now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Received {
    /// The number that is wanted next.
    pub(crate) next: u64,
    /// The hash of the last stored event.
    pub(crate) head: Digest,
}

/// Events that were not added.
#[derive(Debug, thiserror::Error)]
pub(crate) enum ReceiveError {
    #[error(transparent)]
    Batch(#[from] BatchError),
    #[error("this visit comes from another device; send it from there")]
    AnotherDevice,
    #[error("events are missing in between; send again from the number wanted next")]
    Gap { state: Received },
    #[error(
        "event {seq} differs from the one stored; both are kept, and a person at the office must look at the visit"
    )]
    Conflict { seq: u64, state: Received },
    #[error("the visit has more than {VISIT_EVENTS_MAX} events")]
    TooMany,
    #[error(transparent)]
    Store(#[from] StoreError),
}

/// Adds events to a visit. The same events again change nothing. On `Ok` they are on disk; a conflict's events are
/// on disk too, beside the chain.
pub(crate) fn receive(
    store: &Store,
    device: DeviceId,
    visit: &VisitId,
    sent: &EventsIn,
    now_ms: i64,
) -> Result<Received, ReceiveError> {
    let batch = sent.read(visit)?;
    // A conflict must be committed before it is told, so it leaves the transaction as a value.
    let outcome = store.write(|db| -> Result<_, ReceiveError> {
        let mut head = events::head(db, visit)?.unwrap_or(Head { device, next: 0, hash: Digest::ZERO });
        if head.device != device {
            return Err(ReceiveError::AnotherDevice);
        }
        if sent.first > head.next {
            return Err(ReceiveError::Gap { state: state(head) });
        }
        for (at, event) in batch.iter().enumerate() {
            let fits = if event.seq < head.next {
                events::hash_at(db, visit, event.seq)? == Some(event.hash)
            } else {
                event.prev == head.hash
            };
            if !fits {
                // Nothing was added before this: a batch is chained in itself, so only its first new event can differ.
                keep_beside(db, device, visit, batch.get(at..).unwrap_or_default(), now_ms)?;
                return Ok(Err((event.seq, head)));
            }
            if event.seq == head.next {
                if head.next >= VISIT_EVENTS_MAX {
                    return Err(ReceiveError::TooMany);
                }
                head = Head { next: head.next + 1, hash: event.hash, ..head };
                events::put_head(db, visit, head, now_ms)?;
                events::append(db, visit, event.seq, &event.bytes, event.hash, now_ms)?;
            }
        }
        Ok(Ok(head))
    })?;
    match outcome {
        Ok(head) => Ok(state(head)),
        Err((seq, head)) => Err(ReceiveError::Conflict { seq, state: state(head) }),
    }
}

fn keep_beside(
    db: &rusqlite::Connection,
    device: DeviceId,
    visit: &VisitId,
    branch: &[Envelope],
    now_ms: i64,
) -> Result<(), ReceiveError> {
    if events::branch_count(db, visit)? >= VISIT_EVENTS_MAX {
        return Err(ReceiveError::TooMany);
    }
    for event in branch {
        events::keep_branch(db, visit, event.seq, &event.bytes, event.hash, device, now_ms)?;
    }
    Ok(())
}

const fn state(head: Head) -> Received {
    Received { next: head.next, head: head.hash }
}
