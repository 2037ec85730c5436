//! A device hands in a seal: it is checked against the device's key and the stored chain before it is kept.

use coilside_core::record::seal::{self as core_seal, Payload};
use coilside_core::visit::event::{Body, Event};
use rusqlite::Connection;

use super::{take_over, vouch};
use crate::ids::{Digest, Secret, VisitId};
use crate::store::devices::Device;
use crate::store::seals::Seal;
use crate::store::vouchers::{self, LaterSeal};
use crate::store::{Store, StoreError, events, handovers, seals, summaries};
use crate::wire::SealIn;
use crate::wire::key::{self, NotAKey};

/// The most bytes of a seal. It lists what is missing and why, so it may have some length.
const JWS_BYTES_MAX: usize = 256 * 1024;

/// A seal that was not taken.
#[derive(Debug, thiserror::Error)]
pub(crate) enum SealError {
    #[error(transparent)]
    Key(#[from] NotAKey),
    #[error("the seal has {bytes} bytes, more than {JWS_BYTES_MAX}")]
    TooLong { bytes: usize },
    #[error(transparent)]
    Jws(#[from] core_seal::SealError),
    #[error("this device has registered no key yet; register it, then send the seal again")]
    NoKey,
    #[error("the seal is made with another key than the one that this device registered")]
    OtherKey,
    #[error("the seal is of another visit")]
    OtherVisit,
    #[error("this visit comes from another device; send its seal from there")]
    AnotherDevice,
    #[error("another device goes on with this visit; the seal is kept beside the record, for a person to look at")]
    TakenOver { next: u64, head: Digest },
    #[error("the last device that the record names as its own is not the one that sealed it")]
    OtherWriter,
    #[error("the seal covers events that are not here yet; send them first, then the seal again")]
    EventsMissing { next: u64, head: Digest },
    #[error(
        "the seal does not fit the stored events; both are kept, and a person at the office must look at the visit"
    )]
    OtherChain { next: u64, head: Digest },
    #[error("event {seq} came after the seal and is no addendum; a later seal cannot cover it")]
    NoAddendum { seq: u64 },
    #[error("this visit is sealed already, with other content")]
    SealedOtherwise,
    #[error(transparent)]
    Store(#[from] StoreError),
}

/// Keeps a seal that holds, and opens the owner's summary under the fresh token; gives the token that opens it. The same
/// content again changes nothing.
pub(crate) fn receive(
    store: &Store,
    device: &Device,
    visit: &VisitId,
    sent: &SealIn,
    summary_token: &Secret,
    now_ms: i64,
) -> Result<String, SealError> {
    let registered = device.public_key.as_ref().ok_or(SealError::NoKey)?;
    let public_key = key::read(&sent.public_key)?;
    if *registered != public_key {
        return Err(SealError::OtherKey);
    }
    if sent.jws.len() > JWS_BYTES_MAX {
        return Err(SealError::TooLong { bytes: sent.jws.len() });
    }
    let sealed = core_seal::open(&sent.jws, &public_key)?;
    if sealed.visit != visit.as_str() {
        return Err(SealError::OtherVisit);
    }
    // A seal that is kept beside the record must be committed before that is told, so it leaves the transaction as a value.
    store.write(|db| {
        let head = events::head(db, visit)?;
        let (next, hash) = head.map_or((0, Digest::ZERO), |head| (head.next, head.hash));
        if head.is_some_and(|head| head.device != device.id) {
            if take_over::last_from(db, visit, device.id)?.is_none() {
                return Err(SealError::AnotherDevice);
            }
            handovers::keep_seal(db, visit, device.id, sealed.next, &sent.jws, now_ms)?;
            return Ok(Err(SealError::TakenOver { next, head: hash }));
        }
        if sealed.next > next || sealed.next == 0 {
            return Err(SealError::EventsMissing { next, head: hash });
        }
        let last = events::hash_at(db, visit, sealed.next - 1)?
            .filter(|last| last.to_string() == sealed.last)
            .ok_or(SealError::OtherChain { next, head: hash })?;
        if !is_by_its_last_writer(db, visit, sealed.next, &public_key)? {
            return Err(SealError::OtherWriter);
        }
        if let Some(kept) = seals::of(db, visit)? {
            if sealed.next > kept.covers {
                receive_later(db, store, visit, sent, &kept, &sealed, last, now_ms)?;
                return Ok(Ok(summaries::token_of(db, visit)?.unwrap_or_default()));
            }
            // The same content may come under another signature: ES256 signs differently each time.
            if !same(&kept, last, &sealed) {
                return Err(SealError::SealedOtherwise);
            }
            return Ok(Ok(summaries::token_of(db, visit)?.unwrap_or_default()));
        }
        let Payload { next: covers, complete, .. } = sealed;
        seals::put(
            db,
            visit,
            &Seal { jws: sent.jws.clone(), public_key, last, covers, complete, received_ms: now_ms },
        )?;
        vouch::for_seal(db, &store.key, visit, sealed.next, last, now_ms)?;
        summaries::ensure(db, visit, &summary_token.text(), now_ms)?;
        Ok(Ok(summaries::token_of(db, visit)?.unwrap_or_default()))
    })?
}

/// Where a visit went over to another device its log says so, and names that device's key: the last one named seals. Where it
/// never went over, the log names no other.
fn is_by_its_last_writer(db: &Connection, visit: &VisitId, covers: u64, public_key: &[u8]) -> Result<bool, StoreError> {
    let handed = !handovers::of(db, visit)?.is_empty();
    let covered = usize::try_from(covers).unwrap_or(usize::MAX);
    let named = events::from(db, visit, 0, covered)?.iter().rev().find_map(|bytes| take_over::named_key(bytes));
    match named {
        Some(named) => Ok(key::read(&named).is_ok_and(|named| named == public_key)),
        None => Ok(!handed),
    }
}

/// A seal over addenda: nothing else may have come after the first one.
#[allow(clippy::too_many_arguments, reason = "one place calls it, with what that place holds")]
fn receive_later(
    db: &Connection,
    store: &Store,
    visit: &VisitId,
    sent: &SealIn,
    kept: &Seal,
    sealed: &Payload,
    last: Digest,
    now_ms: i64,
) -> Result<(), SealError> {
    let stored = events::all(db, visit)?;
    let (first, count) = (usize::try_from(kept.covers), usize::try_from(sealed.next));
    let later = first.ok().zip(count.ok()).and_then(|(first, count)| stored.get(first..count));
    let addenda = later.unwrap_or_default().iter().zip(kept.covers..);
    for (bytes, seq) in addenda {
        let event = Event::from_bytes(bytes, seq).map_err(|_| SealError::NoAddendum { seq })?;
        if !matches!(event.body, Body::AddendumAdded { .. }) {
            return Err(SealError::NoAddendum { seq });
        }
    }
    let covers = sealed.next;
    vouchers::put_later_seal(db, visit, &LaterSeal { covers, last, jws: sent.jws.clone(), received_ms: now_ms })?;
    Ok(vouch::for_seal(db, &store.key, visit, covers, last, now_ms)?)
}

fn same(kept: &Seal, last: Digest, sealed: &Payload) -> bool {
    (kept.last, kept.covers, kept.complete) == (last, sealed.next, sealed.complete)
}
