//! A device sends events: they are chained to what is stored, or kept beside it.

use rusqlite::Connection;

use super::take_over;
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
    Conflict { seq: u64, state: Received, kept: u64 },
    #[error(
        "another device goes on with this visit; the office keeps the events before {kept} beside the record, for a \
         person to look at"
    )]
    TakenOver { state: Received, kept: u64 },
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
    // What is kept beside the chain must be committed before it is told, so it leaves the transaction as a value.
    store.write(|db| -> Result<_, ReceiveError> {
        let mut head = events::head(db, visit)?.unwrap_or(Head { device, next: 0, hash: Digest::ZERO });
        if head.device != device {
            let Some(before) = take_over::last_from(db, visit, device)? else {
                return Err(ReceiveError::AnotherDevice);
            };
            let kept = keep_after_handover(db, device, visit, &batch, before.next, now_ms)?;
            return Ok(Err(ReceiveError::TakenOver { state: state(head), kept }));
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
                let kept = batch.last().map_or(event.seq, |last| last.seq + 1);
                return Ok(Err(ReceiveError::Conflict { seq: event.seq, state: state(head), kept }));
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
        Ok(Ok(state(head)))
    })?
}

/// Keeps what a device sends of a visit that it has handed over, as far as it follows what is here of it; gives the number
/// of the first event that is not kept. `next` is where it handed over.
fn keep_after_handover(
    db: &Connection,
    device: DeviceId,
    visit: &VisitId,
    batch: &[Envelope],
    next: u64,
    now_ms: i64,
) -> Result<u64, ReceiveError> {
    let here = |seq: u64, hash: Digest| Ok::<_, StoreError>(events::hash_at(db, visit, seq)? == Some(hash));
    let mut new = batch;
    while let [event, rest @ ..] = new
        && here(event.seq, event.hash)?
    {
        new = rest;
    }
    let kept: Vec<(u64, Digest)> = events::beside(db, visit)?
        .into_iter()
        .filter(|kept| kept.device == device)
        .map(|kept| (kept.seq, kept.hash))
        .collect();
    if let Some(first) = new.first() {
        let follows = match first.seq.checked_sub(1) {
            None => true,
            Some(before) => here(before, first.prev)? || kept.contains(&(before, first.prev)),
        };
        if follows {
            keep_beside(db, device, visit, new, now_ms)?;
            return Ok(first.seq + new.len() as u64);
        }
    }
    let last = kept.iter().map(|(seq, _)| seq + 1).max();
    Ok(last.unwrap_or(next).max(next))
}

fn keep_beside(
    db: &Connection,
    device: DeviceId,
    visit: &VisitId,
    branch: &[Envelope],
    now_ms: i64,
) -> Result<(), ReceiveError> {
    if !branch.is_empty() && events::branch_count(db, visit)? >= VISIT_EVENTS_MAX {
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
