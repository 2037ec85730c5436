//! Do the seals hold under the key of the visit's last device, and are they about these events?

use std::collections::BTreeSet;

use super::super::document::Document;
use super::super::{RECORD, fingerprint};
use super::Fault;
use super::chain::Chain;
use crate::record::jws::{self, JwsError, unhex};
use crate::record::seal::{Payload, TYP};
use crate::visit::event::Body;

/// What the seals say.
pub(super) struct Seals {
    /// Of those that hold.
    pub(super) payloads: Vec<Payload>,
    /// Events that are not what was sealed.
    pub(super) altered: BTreeSet<u64>,
    pub(super) faults: Vec<Fault>,
}

pub(super) fn check(document: &Document, chain: &Chain, enclosed: Option<&Vec<u8>>) -> Seals {
    let mut seals = Seals { payloads: Vec::new(), altered: BTreeSet::new(), faults: Vec::new() };
    let Some(key) = &chain.device_key else {
        seals.faults.push(Fault::new("no-key", RECORD));
        return seals;
    };
    if document.seals.is_empty() {
        seals.faults.push(Fault::new("no-seal", RECORD));
    }
    for (at, seal) in document.seals.iter().enumerate() {
        let number = at + 1;
        match jws::open::<Payload>(seal, TYP, key) {
            Ok(payload) => seals.about(payload, number, document, chain, key),
            Err(why) => seals.faults.push(why_not(seal, number, &why, key, enclosed)),
        }
    }
    seals.afterwards(document, chain);
    seals
}

/// A seal that does not open: of another key, or spoilt.
fn why_not(seal: &str, number: usize, why: &JwsError, key: &[u8], enclosed: Option<&Vec<u8>>) -> Fault {
    let fault = |rule| Fault::new(rule, RECORD).with("number", number);
    if let JwsError::Unreadable(what) = why {
        return fault("seal-unreadable").with("why", what);
    }
    let named = jws::peek::<Payload>(seal, TYP).ok().and_then(|payload| unhex(&payload.device_key));
    let candidates = [named, enclosed.and_then(|bytes| sec1_of(bytes))];
    let other = candidates.into_iter().flatten().find(|other| jws::open::<Payload>(seal, TYP, other).is_ok());
    match other {
        Some(other) => fault("seal-foreign").with("key", fingerprint(&other)).with("device", fingerprint(key)),
        None => fault("seal-signature"),
    }
}

/// The point of a JSON Web Key.
fn sec1_of(bytes: &[u8]) -> Option<Vec<u8>> {
    use base64::Engine as _;
    use base64::engine::general_purpose::URL_SAFE_NO_PAD;
    let key: serde_json::Value = serde_json::from_slice(bytes).ok()?;
    let part = |name: &str| URL_SAFE_NO_PAD.decode(key.get(name)?.as_str()?).ok();
    Some([vec![4], part("x")?, part("y")?].concat())
}

impl Seals {
    /// A seal that holds under the key: is it about these events?
    fn about(&mut self, payload: Payload, number: usize, document: &Document, chain: &Chain, key: &[u8]) {
        let fault = |rule| Fault::new(rule, RECORD).with("number", number);
        if payload.visit != document.visit.as_str() {
            self.faults.push(fault("seal-visit").with("visit", &payload.visit));
        }
        if unhex(&payload.device_key).as_deref() != Some(key) {
            let other = unhex(&payload.device_key).unwrap_or_default();
            self.faults.push(fault("seal-foreign").with("key", fingerprint(&other)).with("device", fingerprint(key)));
        }
        if self.payloads.last().is_some_and(|before| before.next >= payload.next) {
            self.faults.push(fault("seal-order"));
        }
        let count = chain.digests.len() as u64;
        let at = usize::try_from(payload.next).unwrap_or(usize::MAX).checked_sub(1);
        match at.and_then(|at| chain.digests.get(at)) {
            None if payload.next > count => {
                let missing = Fault::new("event-missing", RECORD).with("seq", count).with("to", payload.next - 1);
                self.faults.push(missing);
            }
            None => self.faults.push(fault("seal-other")),
            Some(digest) if digest.as_str() == payload.last => self.compare_list(&payload, number, chain),
            Some(digest) => {
                let follower = at.and_then(|at| chain.events.get(at + 1)).and_then(Option::as_ref);
                let vouched = follower.is_some_and(|event| event.prev == *digest);
                // What is missing before it was told already, and moves every event to another place.
                let moved = chain.faults.iter().any(|fault| fault.rule == "event-missing");
                if !vouched && !moved {
                    self.altered.insert(payload.next - 1);
                } else if !moved {
                    self.faults.push(fault("seal-other"));
                }
            }
        }
        self.payloads.push(payload);
    }

    /// What the seal calls missing is what the last freezing before it found missing.
    fn compare_list(&mut self, payload: &Payload, number: usize, chain: &Chain) {
        let sealed = chain.events.iter().flatten().filter(|event| event.seq < payload.next);
        let mut frozen = sealed.filter_map(|event| match &event.body {
            Body::SealPrepared { complete, missing } => Some((*complete, missing)),
            _ => None,
        });
        if frozen.next_back() != Some((payload.complete, &payload.missing)) {
            self.faults.push(Fault::new("seal-list", RECORD).with("number", number));
        }
    }

    /// After the first seal only addenda follow, and none that no later seal covers.
    fn afterwards(&mut self, document: &Document, chain: &Chain) {
        let Some(first) = self.payloads.first().map(|payload| payload.next) else { return };
        let covered = self.payloads.last().map_or(0, |payload| payload.next);
        for event in chain.events.iter().flatten().filter(|event| event.seq >= first) {
            if !matches!(event.body, Body::AddendumAdded { .. }) {
                self.faults.push(Fault::new("after-seal", RECORD).with("seq", event.seq));
            }
        }
        let count = document.events.len() as u64;
        if count > covered && self.payloads.len() == document.seals.len() {
            self.faults.push(Fault::new("unsealed", RECORD).with("seq", covered).with("to", count - 1));
        }
    }
}
