//! Verifies a record file: what holds, what does not, and who vouches for it. Reads it once, from its first byte to its last.

mod chain;
mod collect;
mod files;
mod offices;
mod seals;

use std::collections::{BTreeMap, BTreeSet};
use std::io::{self, Read};

use super::RECORD;
use super::document::{self, Document, canonical};
use crate::id::{Digest, VisitId};
use crate::record::seal::Payload;
use collect::{Collected, collect};

/// Something that does not hold, or that should be known. The rule's words are `record-fault-<rule>`.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Fault {
    /// Which rule.
    pub rule: &'static str,
    /// The file in the record, or empty for the record file as a whole.
    pub part: String,
    /// What its words name.
    pub values: Vec<(&'static str, String)>,
}

impl Fault {
    pub(super) fn new(rule: &'static str, part: &str) -> Self {
        Fault { rule, part: part.to_owned(), values: Vec::new() }
    }

    pub(super) fn with(mut self, name: &'static str, value: impl ToString) -> Self {
        self.values.push((name, value.to_string()));
        self
    }
}

/// Who vouches for the record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// An office whose key was given to the verifier, not taken from the file.
    Office {
        /// Its key's fingerprint.
        key: String,
        /// When the device's key joined it, UTC milliseconds; none where the record came to it from another office.
        certified_utc_ms: Option<i64>,
        /// When the last seal came to it.
        received_utc_ms: i64,
        /// How many events that seal fixes, and the digest of the last.
        next: u64,
        /// SHA-256 of that event.
        last: String,
        /// It signed the file's list of digests too.
        enclosed: bool,
    },
    /// Nobody that the verifier knows: the record fits itself, which a forger could bring about too.
    None {
        /// Fingerprints of the offices' keys that the file encloses.
        offices: Vec<String>,
    },
}

/// The files with the customer's name and signature that the events name.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Customer {
    /// So many are enclosed, and are what was sealed.
    pub enclosed: usize,
    /// So many are not: the record holds without them.
    pub withheld: usize,
}

/// What came of verifying a record file.
#[derive(Clone, Debug)]
pub struct Report {
    /// Which visit; none where it cannot be read.
    pub visit: Option<VisitId>,
    /// How many events it has.
    pub events: usize,
    /// How many photographs its events name.
    pub photographs: usize,
    /// What each seal says that holds under the device's key.
    pub seals: Vec<Payload>,
    /// Fingerprint of the key that the visit was opened with.
    pub device: Option<String>,
    /// Who vouches for it.
    pub anchor: Anchor,
    /// The owner's and site's data are enclosed.
    pub personal: bool,
    /// The customer's name and signature, where they were given.
    pub customer: Customer,
    /// What does not hold. The record holds only if this is empty.
    pub faults: Vec<Fault>,
    /// The record, where it holds.
    pub holding: Option<Holding>,
}

/// A record that holds, to be taken over.
#[derive(Clone, Debug)]
pub struct Holding {
    /// Events, seals and offices' words.
    pub document: Document,
    /// Pinned packs by digest.
    pub packs: BTreeMap<Digest, Vec<u8>>,
    /// Files with the customer's name and signature by digest, those that are enclosed.
    pub customer: BTreeMap<Digest, Vec<u8>>,
    /// The device's key, SEC1.
    pub device_key: Vec<u8>,
}

impl Report {
    /// Nothing is wrong with it.
    #[must_use]
    pub fn holds(&self) -> bool {
        self.faults.is_empty()
    }

    /// An office that the verifier knows vouches for it.
    #[must_use]
    pub fn is_anchored(&self) -> bool {
        matches!(self.anchor, Anchor::Office { .. })
    }
}

/// Verifies a record file. `trusted` are keys (SEC1) of offices that the verifier knows from elsewhere; where some are given
/// and none of them vouches for the record, that is a fault.
///
/// # Errors
/// Where the input cannot be read.
pub fn verify(input: &mut dyn Read, trusted: &[Vec<u8>]) -> io::Result<Report> {
    Ok(judge(collect(input)?, trusted))
}

fn judge(collected: Collected, trusted: &[Vec<u8>]) -> Report {
    let mut faults = collected.faults.clone();
    faults.extend(files::sums(&collected));
    let document = read_document(&collected, &mut faults);
    let Some(document) = document else {
        let anchor = Anchor::None { offices: Vec::new() };
        return Report {
            visit: None,
            events: 0,
            photographs: 0,
            seals: Vec::new(),
            device: None,
            anchor,
            personal: false,
            customer: Customer::default(),
            faults,
            holding: None,
        };
    };
    let chain = chain::follow(&document);
    let seals = seals::check(&document, &chain, collected.small.get(super::DEVICE_KEY));
    let files = files::check(&document, &chain, &collected);
    let offices = offices::check(&document, &chain, &seals.payloads, &collected, trusted);
    // An altered event is told once, whoever noticed it.
    let altered: BTreeSet<u64> = chain.altered.union(&seals.altered).copied().collect();
    faults.extend(chain.faults.iter().cloned());
    faults.extend(altered.iter().map(|seq| Fault::new("event-altered", RECORD).with("seq", seq)));
    faults.extend(seals.faults);
    faults.extend(files.faults);
    faults.extend(offices.faults);
    let device_key = chain.device_key.clone();
    let holding = match (&device_key, faults.is_empty()) {
        (Some(key), true) => Some(Holding {
            packs: files.packs,
            customer: files.customer_files,
            device_key: key.clone(),
            document: document.clone(),
        }),
        _ => None,
    };
    Report {
        visit: Some(document.visit.clone()),
        events: document.events.len(),
        photographs: files.photographs,
        seals: seals.payloads,
        device: device_key.map(|key| super::fingerprint(&key)),
        anchor: offices.anchor,
        personal: files.personal,
        customer: files.customer,
        faults,
        holding,
    }
}

fn read_document(collected: &Collected, faults: &mut Vec<Fault>) -> Option<Document> {
    let Some(bytes) = collected.small.get(RECORD) else {
        if faults.is_empty() || !collected.passed.contains_key(RECORD) {
            faults.push(Fault::new("no-file", RECORD));
        }
        return None;
    };
    let document = serde_json::from_slice::<Document>(bytes).or_else(|why| {
        faults.push(Fault::new("unreadable", RECORD).with("why", why));
        // A broken letter hides which event it stands in: with another one in its place the others can be read.
        serde_json::from_str(&String::from_utf8_lossy(bytes)).inspect_err(|why| {
            if let Some(seq) = event_at(bytes, why.column()) {
                faults.push(Fault::new("event-unreadable", RECORD).with("seq", seq));
            }
        })
    });
    let Ok(document) = document else { return None };
    if document.format != document::FORMAT {
        faults.push(Fault::new("later", RECORD).with("format", document.format));
        return None;
    }
    if canonical(&document).ok().as_deref() != Some(bytes.as_slice()) {
        faults.push(Fault::new("not-canonical", RECORD));
    }
    Some(document)
}

/// The event inside of which reading `record.json` stopped: events come first in it, and each begins alike.
fn event_at(bytes: &[u8], column: usize) -> Option<usize> {
    let read = bytes.get(..column)?;
    let begun =
        read.windows(4).filter(|now| now.ends_with(br#""{\"#) && matches!(now.first(), Some(b'[' | b','))).count();
    let inside = !read.windows(10).any(|now| now == br#"],"format""#);
    begun.checked_sub(1).filter(|_| inside)
}

/// Judges a document by itself, before it is written into a file: chain and seals.
pub(super) fn of_document(document: &Document) -> Vec<Fault> {
    let chain = chain::follow(document);
    let seals = seals::check(document, &chain, None);
    let altered = chain.altered.union(&seals.altered);
    let altered: Vec<Fault> = altered.map(|seq| Fault::new("event-altered", RECORD).with("seq", seq)).collect();
    chain.faults.into_iter().chain(altered).chain(seals.faults).collect()
}
