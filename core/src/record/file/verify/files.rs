//! Is every file there that the record names, as it was, and nothing else?

use std::collections::{BTreeMap, BTreeSet};

use super::super::document::{Document, Personal, canonical};
use super::super::{
    DEVICE_KEY, OFFICE, PERSONAL, README, RECORD, SUMS, WORDS, customer_file, office_key, pack_file, photo_file,
    sums as lines,
};
use super::chain::Chain;
use super::collect::Collected;
use super::{Customer, Fault};
use crate::id::Digest;
use crate::record::jws::{jwk, unhex};
use crate::visit::event::{Body, sha256};

/// What the files come to.
pub(super) struct Files {
    pub(super) photographs: usize,
    pub(super) packs: BTreeMap<Digest, Vec<u8>>,
    pub(super) personal: bool,
    pub(super) customer: Customer,
    /// Those that are enclosed and are what they were, by digest.
    pub(super) customer_files: BTreeMap<Digest, Vec<u8>>,
    pub(super) faults: Vec<Fault>,
}

/// Compares the files with `SHA256SUMS`.
pub(super) fn sums(collected: &Collected) -> Vec<Fault> {
    let Some(bytes) = collected.small.get(SUMS) else { return vec![Fault::new("no-file", SUMS)] };
    let listed = std::str::from_utf8(bytes).ok().and_then(lines::read);
    let Some(listed) = listed else { return vec![Fault::new("sums-form", SUMS)] };
    let mut faults = Vec::new();
    for (name, (digest, _)) in &collected.passed {
        match listed.get(name) {
            _ if name == SUMS || name == OFFICE => {}
            None => faults.push(Fault::new("sums-none", name)),
            Some(other) if other != digest => {
                // Which of the two was changed? The ZIP's checksum of it fails.
                let line = collected.is_broken(SUMS) && !collected.is_broken(name);
                faults.push(if line {
                    Fault::new("sums-line", SUMS).with("name", name)
                } else {
                    Fault::new("sum", name)
                });
            }
            Some(_) => {}
        }
    }
    let gone = listed.keys().filter(|name| !collected.passed.contains_key(*name));
    faults.extend(gone.map(|name| Fault::new("no-file", name)));
    faults
}

pub(super) fn check(document: &Document, chain: &Chain, collected: &Collected) -> Files {
    let mut files = Files {
        photographs: 0,
        packs: BTreeMap::new(),
        personal: false,
        customer: Customer::default(),
        customer_files: BTreeMap::new(),
        faults: Vec::new(),
    };
    let mut expected: BTreeSet<String> = [README, SUMS, RECORD, DEVICE_KEY].map(str::to_owned).into();
    expected.extend(WORDS.map(|(name, _)| name.to_owned()));
    files.photographs(chain, collected, &mut expected);
    files.packs(chain, collected, &mut expected);
    files.keys(document, chain, collected, &mut expected);
    files.personal(chain, collected);
    if !document.offices.is_empty() {
        expected.insert(OFFICE.to_owned());
    }
    let listed = collected.small.get(SUMS).and_then(|bytes| std::str::from_utf8(bytes).ok()).and_then(lines::read);
    let told: BTreeSet<String> = listed.unwrap_or_default().into_keys().collect();
    for name in expected.iter().filter(|name| !collected.passed.contains_key(*name)) {
        // What the list of digests names is told already, and so are photographs and packs.
        let known = told.contains(name) || name.contains("photographs/") || name.starts_with("packs/") || name == SUMS;
        if !known {
            files.faults.push(Fault::new("no-file", name));
        }
    }
    expected.insert(PERSONAL.to_owned());
    files.customer(chain, collected, &mut expected);
    for name in collected.passed.keys().filter(|name| !expected.contains(*name)) {
        files.faults.push(Fault::new("not-in-record", name));
    }
    files
}

impl Files {
    fn photographs(&mut self, chain: &Chain, collected: &Collected, expected: &mut BTreeSet<String>) {
        let mut taken: BTreeMap<String, (&Digest, u64, Vec<String>)> = BTreeMap::new();
        for event in chain.events.iter().flatten() {
            if let Body::PhotoTaken { digest, bytes, media, .. } = &event.body {
                let name = photo_file(digest, media);
                taken.entry(name).or_insert_with(|| (digest, *bytes, Vec::new())).2.push(event.seq.to_string());
            }
        }
        self.photographs = taken.len();
        for (name, (digest, bytes, events)) in taken {
            let fault = |rule| Fault::new(rule, &name).with("seq", events.join(", "));
            match collected.passed.get(&name) {
                None => self.faults.push(fault("photo-missing")),
                Some((found, _)) if found != digest => self.faults.push(fault("photo-altered")),
                Some((_, length)) if *length != bytes => self.faults.push(fault("photo-length")),
                Some(_) => {}
            }
            expected.insert(name);
        }
    }

    /// The customer's name and signature. Not enclosed they are withheld, which the seal has nothing against.
    fn customer(&mut self, chain: &Chain, collected: &Collected, expected: &mut BTreeSet<String>) {
        for event in chain.events.iter().flatten() {
            let Body::CustomerNoted { shown: Some(digest), .. } = &event.body else { continue };
            let name = customer_file(digest);
            let fresh = expected.insert(name.clone());
            match collected.small.get(&name) {
                _ if !fresh => {}
                None => self.customer.withheld += 1,
                Some(bytes) if sha256(bytes) != *digest => {
                    self.faults.push(Fault::new("customer-altered", &name).with("seq", event.seq));
                }
                Some(bytes) => {
                    self.customer.enclosed += 1;
                    self.customer_files.insert(digest.clone(), bytes.clone());
                }
            }
        }
    }

    fn packs(&mut self, chain: &Chain, collected: &Collected, expected: &mut BTreeSet<String>) {
        for event in chain.events.iter().flatten() {
            let Body::RunStarted { pack_digest, .. } = &event.body else { continue };
            let name = pack_file(pack_digest);
            let fresh = expected.insert(name.clone());
            match collected.small.get(&name) {
                _ if !fresh => {}
                None => self.faults.push(Fault::new("pack-missing", &name).with("seq", event.seq)),
                Some(bytes) if sha256(bytes) != *pack_digest => {
                    self.faults.push(Fault::new("pack-altered", &name).with("seq", event.seq));
                }
                Some(bytes) => {
                    self.packs.insert(pack_digest.clone(), bytes.clone());
                }
            }
        }
    }

    fn keys(&mut self, document: &Document, chain: &Chain, collected: &Collected, expected: &mut BTreeSet<String>) {
        let offices = document.offices.iter().enumerate();
        let offices = offices.map(|(at, office)| (office_key(at + 1), unhex(&office.key)));
        let device = (DEVICE_KEY.to_owned(), chain.device_key.clone());
        for (name, key) in std::iter::once(device).chain(offices) {
            let wanted = key.and_then(|key| jwk(&key));
            let found = collected.small.get(&name);
            if wanted.as_ref().map(String::as_bytes) != found.map(Vec::as_slice)
                && (found.is_some() || wanted.is_none())
            {
                self.faults.push(Fault::new("key-file", &name));
            }
            expected.insert(name);
        }
    }

    fn personal(&mut self, chain: &Chain, collected: &Collected) {
        let Some(bytes) = collected.small.get(PERSONAL) else { return };
        let sealed = chain.events.first().and_then(Option::as_ref).and_then(|event| match &event.body {
            Body::VisitOpened { personal, .. } => Some(personal),
            _ => None,
        });
        let read: Option<Personal> = serde_json::from_slice(bytes).ok();
        let read = read.filter(|personal| canonical(personal).ok().as_ref() == Some(bytes));
        let digest = read.map(|data| sha256(format!("{}{}", data.salt, data.personal).as_bytes()));
        self.personal = digest.is_some() && digest.as_ref() == sealed;
        if !self.personal {
            self.faults.push(Fault::new("personal", PERSONAL));
        }
    }
}
