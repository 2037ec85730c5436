//! A small sealed visit and the record files that are made of it.
#![allow(dead_code, missing_docs, unreachable_pub, reason = "each user takes its part of this")]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "tests")]

use std::collections::BTreeMap;
use std::io::{self, Read};

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use coilside_core::evidence::{Ink, Shown};
use coilside_core::id::Digest;
use coilside_core::now::Now;
use coilside_core::procedure::library::built_in;
use coilside_core::record::file::document::{Document, Office, Personal};
use coilside_core::record::file::voucher::{CERTIFICATE, Certificate, RECEIPT, Receipt};
use coilside_core::record::file::{Contents, Originals, write};
use coilside_core::record::{jws, seal};
use coilside_core::visit::apply::replay;
use coilside_core::visit::event::{Body, ChainEnd, Event, PhotoFacts, Severity, hex, sha256};
use p256::ecdsa::signature::Signer as _;
use p256::ecdsa::{Signature, SigningKey};

pub const VISIT: &str = "3f6c1f0e-7c0b-4c57-9a55-5f1b2d8e9a01";
pub const START_MS: i64 = 1_772_438_400_000;
pub const DEVICE: u8 = 7;
pub const OFFICE: u8 = 9;
pub const PERSONAL: &str = r#"[{"address":"1 Mill Lane, Lower Weir","name":"Mill house"},{"name":"Edda Marsh"}]"#;
pub const SALT: &str = "6d5a0c7e";

pub fn key(byte: u8) -> SigningKey {
    SigningKey::from_slice(&[byte; 32]).unwrap()
}

pub fn public(byte: u8) -> Vec<u8> {
    key(byte).verifying_key().to_sec1_point(false).as_bytes().to_vec()
}

/// As a shell or an office signs.
pub fn sign(byte: u8, input: &str) -> String {
    let signature: Signature = key(byte).sign(input.as_bytes());
    STANDARD.encode(signature.to_bytes())
}

pub fn signed(byte: u8, typ: &str, payload: &impl serde::Serialize) -> String {
    let input = jws::signing_input(typ, payload).unwrap();
    jws::close(&input, &sign(byte, &input), &public(byte)).unwrap()
}

/// Photographs by digest.
#[derive(Clone, Default)]
pub struct Shelf(pub BTreeMap<Digest, Vec<u8>>);

impl Originals for Shelf {
    fn original(&self, digest: &Digest) -> io::Result<Box<dyn Read + '_>> {
        let bytes = self.0.get(digest).ok_or(io::Error::from(io::ErrorKind::NotFound))?;
        Ok(Box::new(bytes.as_slice()))
    }
}

/// Everything that a record is made of.
#[derive(Clone)]
pub struct Visit {
    pub document: Document,
    pub shelf: Shelf,
    pub packs: BTreeMap<Digest, Vec<u8>>,
    pub personal: Option<Personal>,
    /// Files with the customer's name and signature.
    pub customer: BTreeMap<Digest, Vec<u8>>,
    end: ChainEnd,
}

impl Visit {
    /// Opened and begun, with three photographs, a finding with signs that are no ASCII, and frozen.
    pub fn frozen(device: u8) -> Self {
        let mut visit = Self::begun(device);
        visit.freeze();
        visit
    }

    /// The same before it is frozen.
    pub fn begun(device: u8) -> Self {
        let mut visit = Self {
            document: Document { format: 1, visit: VISIT.into(), ..Document::default() },
            shelf: Shelf::default(),
            packs: BTreeMap::new(),
            personal: Some(Personal { personal: PERSONAL.into(), salt: SALT.into() }),
            customer: BTreeMap::new(),
            end: ChainEnd::default(),
        };
        let personal = sha256(format!("{SALT}{PERSONAL}").as_bytes());
        let device_key = hex(&public(device)).0;
        visit.add(Body::VisitOpened { format: 1, device_key, assignment: "a1".into(), personal });
        let pack = built_in().unwrap().into_iter().next().unwrap();
        visit.packs.insert(pack.digest.clone(), pack.bytes.clone());
        visit.add(Body::RunStarted {
            unit: "A".into(),
            asset: "u-1".into(),
            label: "Tarnwick Add-On 9 TW9-20417".into(),
            pack: pack.pack.pack.clone(),
            pack_digest: pack.digest,
            core: "0.1.0".into(),
        });
        for (slot, seed) in [("casing-before", 1_u8), ("coil-before", 2), ("nameplate", 3)] {
            visit.photograph(slot, seed);
        }
        visit.add(Body::FindingAdded {
            unit: "A".into(),
            severity: Severity::Soon,
            text: "Dämmung feucht — “señal” \u{1F600}\n".into(),
            since: None,
        });
        visit
    }

    pub fn freeze(&mut self) {
        let missing = vec!["A photograph missing coil-after: battery empty".to_owned()];
        self.add(Body::SealPrepared { complete: false, missing });
    }

    /// The customer signs with name and hand.
    pub fn customer(&mut self, name: &str) -> Digest {
        let strokes = vec![vec![(100, 240), (180, 90), (260, 330), (420, 200)], vec![(500, 250)]];
        let ink = Ink { width: 1_200, height: 480, strokes };
        let shown = Shown::of(name, Some(&ink), &"5a".repeat(32), START_MS + 60_000).unwrap();
        let bytes = shown.to_bytes().unwrap();
        let digest = sha256(&bytes);
        self.customer.insert(digest.clone(), bytes);
        self.add(Body::CustomerNoted { present: true, unsigned: false, shown: Some(digest.clone()) });
        digest
    }

    /// Signed by the customer, frozen, sealed, and vouched for by an office.
    pub fn signed_by(name: &str) -> Self {
        let mut visit = Self::begun(DEVICE);
        visit.customer(name);
        visit.freeze();
        visit.seal(DEVICE);
        visit.vouch(OFFICE, DEVICE);
        visit
    }

    /// Frozen, sealed, and vouched for by an office.
    pub fn whole() -> Self {
        let mut visit = Self::frozen(DEVICE);
        visit.seal(DEVICE);
        visit.vouch(OFFICE, DEVICE);
        visit
    }

    pub fn add(&mut self, body: Body) {
        let at = START_MS + 60_000 * i64::try_from(self.end.next).unwrap();
        let time = Now { utc_ms: at, offset_min: 120, mono_ms: at - START_MS, mono_epoch: "boot".into() };
        let name = self.document.visit.clone();
        let event = Event { visit: name.clone(), seq: self.end.next, prev: self.end.last.clone(), time, body };
        let bytes = event.to_bytes().unwrap();
        self.end.follow(&name, &bytes).unwrap();
        self.document.events.push(String::from_utf8(bytes).unwrap());
    }

    pub fn photograph(&mut self, slot: &str, seed: u8) {
        let bytes: Vec<u8> = (0..3_000_u32).map(|at| (at.wrapping_mul(31) >> 3) as u8 ^ seed).collect();
        let digest = sha256(&bytes);
        self.shelf.0.insert(digest.clone(), bytes);
        self.add(Body::PhotoTaken {
            unit: "A".into(),
            slot: slot.into(),
            digest,
            bytes: 3_000,
            media: "image/jpeg".into(),
            facts: PhotoFacts::default(),
            flags: Vec::new(),
        });
    }

    /// Seals all events, as a device does; once more after addenda.
    pub fn seal(&mut self, device: u8) {
        let stored = self.document.events.iter().map(String::as_bytes);
        let state = replay(&self.document.visit, stored).unwrap();
        let input = seal::signing_input(&state).unwrap();
        self.document.seals.push(seal::close(&input, &sign(device, &input), &public(device)).unwrap());
    }

    pub fn addendum(&mut self, text: &str) {
        self.add(Body::AddendumAdded { text: text.into() });
    }

    /// An office certifies the device's key and countersigns the last seal.
    pub fn vouch(&mut self, office: u8, device: u8) {
        let office_key = hex(&public(office)).0;
        let device_key = hex(&public(device)).0;
        let certificate =
            Certificate { format: 1, device_key, office_key: office_key.clone(), at_utc_ms: START_MS - 9 };
        let receipt = Receipt {
            format: 1,
            visit: VISIT.into(),
            next: self.end.next,
            last: self.end.last.0.clone(),
            office_key: office_key.clone(),
            at_utc_ms: START_MS + 9_000_000,
        };
        self.document.offices = vec![Office {
            key: office_key,
            certificate: Some(signed(office, CERTIFICATE, &certificate)),
            receipts: vec![signed(office, RECEIPT, &receipt)],
        }];
    }

    /// The record file, signed by the office if the visit is vouched for.
    pub fn file(&self) -> Vec<u8> {
        let key = public(OFFICE);
        let sign = |input: &str| sign(OFFICE, input);
        let office = (!self.document.offices.is_empty()).then_some((key.as_slice(), &sign as &dyn Fn(&str) -> String));
        let (personal, customer) = (self.personal.as_ref(), &self.customer);
        let contents = Contents { document: &self.document, packs: &self.packs, personal, customer, office };
        let mut out = Vec::new();
        write(&contents, &self.shelf, &mut out).unwrap();
        out
    }
}

/// A file in a record, where it stands, as another reader of ZIPs would find it.
#[derive(Clone, Debug)]
pub struct Place {
    pub name: String,
    pub head: usize,
    pub data: usize,
    pub end: usize,
}

/// Finds the files of a sound record by their local headers. By itself, so that the reader is not asked about itself.
pub fn places(file: &[u8]) -> Vec<Place> {
    let (mut at, mut places) = (0, Vec::new());
    while file[at..].starts_with(b"PK\x03\x04") {
        let length = u32::from_le_bytes(file[at + 18..at + 22].try_into().unwrap()) as usize;
        let name = u16::from_le_bytes(file[at + 26..at + 28].try_into().unwrap()) as usize;
        let data = at + 30 + name;
        let name = String::from_utf8(file[at + 30..data].to_vec()).unwrap();
        places.push(Place { name, head: at, data, end: data + length });
        at = data + length;
    }
    places
}

pub fn bytes_of<'a>(file: &'a [u8], name: &str) -> &'a [u8] {
    let place = places(file).into_iter().find(|place| place.name == name).unwrap();
    &file[place.data..place.end]
}

/// A ZIP of these files with correct checksums and list, in this order: what a forger's own program would write.
pub fn zipped(files: &[(&str, &[u8])]) -> Vec<u8> {
    let (mut out, mut list) = (Vec::new(), Vec::new());
    for (name, bytes) in files {
        let at = out.len() as u32;
        let (crc, length, letters) = (crc32fast::hash(bytes), bytes.len() as u32, name.len() as u16);
        let common = [
            &[10, 0, 0, 0, 0, 0, 0, 0, 0x21, 0][..],
            &crc.to_le_bytes(),
            &length.to_le_bytes(),
            &length.to_le_bytes(),
            &letters.to_le_bytes(),
            &[0, 0],
        ]
        .concat();
        out.extend([b"PK\x03\x04", common.as_slice(), name.as_bytes(), bytes].concat());
        let rest = [&[0_u8; 6][..], &(0o100_644_u32 << 16).to_le_bytes(), &at.to_le_bytes()].concat();
        list.extend([b"PK\x01\x02\x1e\x03", common.as_slice(), &rest, name.as_bytes()].concat());
    }
    let (at, count) = (out.len() as u32, (files.len() as u16).to_le_bytes());
    let end = [&[0; 4][..], &count, &count, &(list.len() as u32).to_le_bytes(), &at.to_le_bytes(), &[0, 0]].concat();
    [out, list, b"PK\x05\x06".to_vec(), end].concat()
}

/// The files of a record, by name.
pub fn files(file: &[u8]) -> BTreeMap<String, Vec<u8>> {
    places(file).into_iter().map(|place| (place.name, file[place.data..place.end].to_vec())).collect()
}

/// A forger's record: these files, with `SHA256SUMS` made anew over them, and the office's word left as it is.
pub fn forged(files: &BTreeMap<String, Vec<u8>>) -> Vec<u8> {
    let mut files = files.clone();
    let listed = files.iter().filter(|(name, _)| !["SHA256SUMS", "office.jws"].contains(&name.as_str()));
    let lines: String = listed.map(|(name, bytes)| format!("{}  {name}\n", sha256(bytes))).collect();
    files.insert("SHA256SUMS".into(), lines.into_bytes());
    let files: Vec<(&str, &[u8])> = files.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice())).collect();
    zipped(&files)
}
