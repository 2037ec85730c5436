//! Do the events follow one another, and if not, which one was changed, removed or put in?

use std::collections::BTreeSet;

use super::super::RECORD;
use super::super::document::Document;
use super::Fault;
use crate::id::Digest;
use crate::record::jws::{self, unhex};
use crate::record::seal::{Payload, TYP};
use crate::visit::event::{Body, Event, NO_PREV, sha256};

/// What the events say, and what is wrong with them.
pub(in super::super) struct Chain {
    /// Each event as far as it can be read.
    pub(in super::super) events: Vec<Option<Event>>,
    /// SHA-256 of each.
    pub(super) digests: Vec<Digest>,
    /// The key of the device that the events name last: the one that opened the visit, or went on with it. SEC1.
    pub(super) device_key: Option<Vec<u8>>,
    /// Numbers of events that are not what they were.
    pub(super) altered: BTreeSet<u64>,
    pub(super) faults: Vec<Fault>,
}

pub(in super::super) fn follow(document: &Document) -> Chain {
    let read = |(at, text): (usize, &String)| Event::from_bytes(text.as_bytes(), at as u64).ok();
    let events: Vec<Option<Event>> = document.events.iter().enumerate().map(read).collect();
    let digests: Vec<Digest> = document.events.iter().map(|text| sha256(text.as_bytes())).collect();
    let mut chain =
        Chain { device_key: device_key(&events), events, digests, altered: BTreeSet::new(), faults: Vec::new() };
    chain.check(document);
    chain
}

fn device_key(events: &[Option<Event>]) -> Option<Vec<u8>> {
    let Body::VisitOpened { device_key: first, .. } = &events.first()?.as_ref()?.body else { return None };
    let last = events.iter().flatten().rev().find_map(|event| match &event.body {
        Body::DeviceChanged { device_key } => Some(device_key),
        _ => None,
    });
    unhex(last.unwrap_or(first)).filter(|key| key.len() == 65)
}

impl Chain {
    fn check(&mut self, document: &Document) {
        // What a seal names as its last event is whole; that the seal holds is looked at elsewhere.
        let said = document.seals.iter().filter_map(|seal| jws::peek::<Payload>(seal, TYP).ok());
        let sealed: BTreeSet<String> = said.map(|payload| payload.last).collect();
        let mut expected = 0_u64;
        let mut before = Some(Digest(NO_PREV.to_owned()));
        for (at, digest) in self.digests.iter().enumerate() {
            let fault = |rule, seq: u64| Fault::new(rule, RECORD).with("seq", seq);
            let Some(event) = self.events.get(at).and_then(Option::as_ref) else {
                self.faults.push(fault("event-unreadable", expected));
                expected += 1;
                before = Some(digest.clone());
                continue;
            };
            if event.visit != document.visit {
                self.faults.push(fault("event-foreign", expected).with("visit", &event.visit));
            }
            let whole = self.is_whole(at, digest).or_else(|| sealed.contains(digest.as_str()).then_some(true));
            // In its wrong place, is it what it was? Then some other event is chained to it, or none could be.
            let vouched = whole != Some(false) || self.events.iter().flatten().any(|other| other.prev == *digest);
            if event.seq > expected && vouched {
                self.faults.push(fault("event-missing", expected).with("to", event.seq - 1));
                expected = event.seq;
            } else if event.seq != expected {
                if vouched {
                    self.faults.push(fault("event-order", expected).with("found", event.seq));
                } else {
                    self.altered.insert(expected);
                }
            } else if before.as_ref() != Some(&event.prev) {
                // Which of the two? The one that the next event vouches for is whole.
                let changed = if whole == Some(true) { expected.saturating_sub(1) } else { expected };
                self.altered.insert(changed);
            }
            before = Some(digest.clone());
            expected += 1;
        }
    }

    /// Whether the event after it was chained to it as it stands here; none where there is no such event to ask.
    fn is_whole(&self, at: usize, digest: &Digest) -> Option<bool> {
        Some(self.events.get(at + 1)?.as_ref()?.prev == *digest)
    }
}
