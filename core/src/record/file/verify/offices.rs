//! What offices vouch for, and whether the verifier knows one of them.

use serde::Serialize;
use serde::de::DeserializeOwned;

use super::super::document::{Document, Office};
use super::super::voucher::{CERTIFICATE, Certificate, ENCLOSED, Enclosed, RECEIPT, Receipt};
use super::super::{OFFICE, RECORD, SUMS, fingerprint};
use super::chain::Chain;
use super::collect::Collected;
use super::{Anchor, Fault};
use crate::id::VisitId;
use crate::record::jws::{self, unhex};
use crate::record::seal::Payload;
use crate::visit::event::{hex, sha256};

/// What the offices' words come to.
pub(super) struct Offices {
    pub(super) anchor: Anchor,
    pub(super) faults: Vec<Fault>,
}

/// One office's words that hold.
struct Words {
    key: Vec<u8>,
    certificate: Option<Certificate>,
    receipts: Vec<Receipt>,
}

pub(super) fn check(
    document: &Document,
    chain: &Chain,
    seals: &[Payload],
    collected: &Collected,
    trusted: &[Vec<u8>],
) -> Offices {
    let mut faults = Vec::new();
    let device = chain.device_key.as_deref().map(|key| hex(key).0).unwrap_or_default();
    let heard: Vec<Words> = document
        .offices
        .iter()
        .enumerate()
        .filter_map(|(at, office)| hear(office, at + 1, &document.visit, &device, seals, &mut faults))
        .collect();
    let enclosed = enclosed(document, collected, &heard, &mut faults);
    let known = heard.iter().filter(|words| trusted.contains(&words.key) && !words.receipts.is_empty());
    // Of several known ones the first: it is the one that certified the device.
    let known = known.min_by_key(|words| words.certificate.is_none());
    let receipt = known.and_then(|words| Some((words, words.receipts.iter().max_by_key(|receipt| receipt.next)?)));
    let anchor = match receipt {
        Some((words, receipt)) => Anchor::Office {
            key: fingerprint(&words.key),
            certified_utc_ms: words.certificate.as_ref().map(|certificate| certificate.at_utc_ms),
            received_utc_ms: receipt.at_utc_ms,
            next: receipt.next,
            last: receipt.last.clone(),
            enclosed: enclosed.as_ref().is_some_and(|key| trusted.contains(key)),
        },
        None => Anchor::None { offices: heard.iter().map(|words| fingerprint(&words.key)).collect() },
    };
    if matches!(anchor, Anchor::None { .. }) && !trusted.is_empty() {
        faults.push(
            Fault::new("no-anchor", "")
                .with("keys", trusted.iter().map(|key| fingerprint(key)).collect::<Vec<_>>().join(", ")),
        );
    }
    Offices { anchor, faults }
}

/// A statement in one form only, under that key.
fn open<T: DeserializeOwned + Serialize>(statement: &str, typ: &str, key: &[u8]) -> Result<T, String> {
    jws::open(statement, typ, key).map_err(|why| why.to_string())
}

fn hear(
    office: &Office,
    number: usize,
    visit: &VisitId,
    device: &str,
    seals: &[Payload],
    faults: &mut Vec<Fault>,
) -> Option<Words> {
    let fault = |rule| Fault::new(rule, RECORD).with("number", number);
    let Some(key) = unhex(&office.key).filter(|key| jws::jwk(key).is_some()) else {
        faults.push(fault("office-key"));
        return None;
    };
    let mut certificate = None;
    if let Some(statement) = &office.certificate {
        match open::<Certificate>(statement, CERTIFICATE, &key) {
            Err(why) => faults.push(fault("certificate").with("why", why)),
            Ok(said) if said.device_key != device || said.office_key != office.key => {
                let other = unhex(&said.device_key).unwrap_or_default();
                let here = unhex(device).unwrap_or_default();
                faults.push(
                    fault("certificate-other").with("key", fingerprint(&other)).with("device", fingerprint(&here)),
                );
            }
            Ok(said) => certificate = Some(said),
        }
    }
    let mut receipts: Vec<Receipt> = Vec::new();
    for statement in &office.receipts {
        match open::<Receipt>(statement, RECEIPT, &key) {
            Err(why) => faults.push(fault("receipt").with("why", why)),
            Ok(said) => {
                let same = |seal: &Payload| seal.next == said.next && seal.last == said.last;
                if said.visit == visit.as_str() && said.office_key == office.key && seals.iter().any(same) {
                    receipts.push(said);
                } else {
                    faults.push(fault("receipt-other").with("events", said.next));
                }
            }
        }
    }
    Some(Words { key, certificate, receipts })
}

/// The key of the office that signed the list of digests.
fn enclosed(document: &Document, collected: &Collected, heard: &[Words], faults: &mut Vec<Fault>) -> Option<Vec<u8>> {
    let statement = std::str::from_utf8(collected.small.get(OFFICE)?).unwrap_or_default();
    if document.offices.is_empty() {
        return None;
    }
    let signed = heard.iter().find_map(|words| Some((open::<Enclosed>(statement, ENCLOSED, &words.key).ok()?, words)));
    let Some((said, words)) = signed else {
        faults.push(Fault::new("enclosed", OFFICE));
        return None;
    };
    let sums = collected.small.get(SUMS).map(|bytes| sha256(bytes).0).unwrap_or_default();
    if said.sums != sums || said.visit != document.visit.as_str() || said.office_key != hex(&words.key).0 {
        faults.push(Fault::new("enclosed-other", OFFICE));
        return None;
    }
    Some(words.key.clone())
}
