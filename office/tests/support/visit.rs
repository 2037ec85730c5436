//! Visits as a device would write them: real events of the core, chained, with photographs and a seal.

use coilside_core::id;
use coilside_core::now::Now;
use coilside_core::procedure::library::built_in;
use coilside_core::record::seal;
use coilside_core::visit::apply::replay;
use coilside_core::visit::event::{Body, ChainEnd, Event, PhotoFacts, PhotoFlag, Severity};
use coilside_office::Digest;
use p256::ecdsa::signature::Signer as _;
use p256::ecdsa::{Signature, SigningKey};
use serde_json::{Value, json};

use super::{Bench, START_MS};

pub const PACK: &str = "add-on-water-heater";

/// A visit that is written event by event.
pub struct Written {
    pub id: String,
    end: ChainEnd,
    pub events: Vec<String>,
    at_ms: i64,
}

impl Written {
    /// Opened, with one unit's run begun under the built-in pack.
    pub fn begin(id: &str, assignment: &str) -> Self {
        let mut visit = Self { id: id.into(), end: ChainEnd::default(), events: Vec::new(), at_ms: START_MS };
        let personal = id::Digest("0".repeat(64));
        visit.add(Body::VisitOpened { format: 1, device_key: String::new(), assignment: assignment.into(), personal });
        let packs = built_in().unwrap();
        let pack_digest = packs.iter().find(|loaded| loaded.pack.pack == PACK).unwrap().digest.clone();
        visit.add(Body::RunStarted {
            unit: "A".into(),
            asset: "u-1".into(),
            label: "Tarnwick Add-On 9 TW9-20417".into(),
            pack: PACK.into(),
            pack_digest,
            core: "0.1.0".into(),
        });
        visit
    }

    pub fn add(&mut self, body: Body) {
        self.at_ms += 60_000;
        let time = Now { utc_ms: self.at_ms, offset_min: 120, mono_ms: self.at_ms - START_MS, mono_epoch: "a".into() };
        let name = id::VisitId(self.id.clone());
        let event = Event { visit: name.clone(), seq: self.end.next, prev: self.end.last.clone(), time, body };
        let bytes = event.to_bytes().unwrap();
        self.end.follow(&name, &bytes).unwrap();
        self.events.push(String::from_utf8(bytes).unwrap());
    }

    pub fn read(&mut self, reading: &str, value: &str, error_limit: &str) {
        self.add(Body::ReadingTaken {
            letter: "A".into(),
            reading: reading.into(),
            value: value.into(),
            measure: "Cel".into(),
            typed: value.into(),
            instrument: "air-thermometer".into(),
            error_limit: error_limit.into(),
            unusual: false,
            own: None,
        });
    }

    /// Air on, water in, water out, flow and power of a stage, with the limits of the pack's instruments.
    pub fn heat_test(&mut self, stage: &str, values: [&str; 5]) {
        let names = [("air-on", "0.5"), ("water-in", "1.0"), ("water-out", "1.0"), ("flow", "0.5"), ("power", "30")];
        for ((name, limit), value) in names.into_iter().zip(values) {
            self.read(&format!("{name}-{stage}"), value, limit);
        }
    }

    pub fn photograph(&mut self, slot: &str, digest: Digest, flags: Vec<PhotoFlag>) {
        self.add(Body::PhotoTaken {
            unit: "A".into(),
            slot: slot.into(),
            digest: id::Digest(digest.to_string()),
            bytes: 1234,
            media: "image/jpeg".into(),
            facts: PhotoFacts {
                width: 40,
                height: 30,
                orientation: 6,
                phone_place: "1.23456 2.34567 6".into(),
                ..PhotoFacts::default()
            },
            flags,
        });
    }

    pub fn find(&mut self, severity: Severity, text: &str) {
        self.add(Body::FindingAdded { unit: "A".into(), severity, text: text.into(), since: None });
    }

    pub fn miss(&mut self, slot: &str, reason: &str) {
        self.add(Body::ShotMissed { unit: "A".into(), slot: slot.into(), reason: reason.into() });
    }

    pub fn freeze(&mut self, complete: bool, missing: &[&str]) {
        let missing = missing.iter().map(|line| (*line).to_owned()).collect();
        self.add(Body::SealPrepared { complete, missing });
    }

    /// What a device sends as the seal, signed over what the core says is sealed.
    pub fn seal(&self, key: &SigningKey) -> Value {
        let stored = self.events.iter().map(|event| event.as_bytes());
        let visit = replay(&id::VisitId(self.id.clone()), stored).unwrap();
        let input = seal::signing_input(&visit).unwrap();
        let signature: Signature = key.sign(input.as_bytes());
        let public_key = key.verifying_key().to_sec1_point(false).as_bytes().to_vec();
        let signature = base64::Engine::encode(&base64::engine::general_purpose::STANDARD, signature.to_bytes());
        json!({ "jws": seal::close(&input, &signature, &public_key).unwrap(), "public_key": super::hex(&public_key) })
    }

    /// Sends all events, and the seal.
    pub async fn send_sealed(&self, bench: &Bench) {
        let answer = bench.send(&self.id, 0, &self.events).await;
        assert_eq!(answer.status, 200, "{}", answer.text());
        let answer = bench.put(&format!("/visits/{}/seal", self.id), self.seal(&bench.key)).await;
        assert_eq!(answer.status, 200, "{}", answer.text());
    }
}

/// An assignment with an owner who speaks this language.
pub fn assignment(id: &str, site: &str, language: &str) -> Value {
    json!({
        "id": id, "due": "2026-03-02", "reason": "Yearly service",
        "site": {
            "name": site, "address": "1 Mill Lane, Lower Weir", "latitude_deg": 1.2345, "longitude_deg": 2.3456,
            "note": "Key under the third stone.",
        },
        "owner": { "name": "Edda Marsh", "phone": "555 0107", "language": language },
        "units": [{
            "letter": "A", "unit": "u-1", "maker": "Tarnwick", "model": "Add-On 9", "serial": "TW9-20417", "pack": PACK,
        }],
    })
}

/// A JPEG of 40 by 30 pixels whose EXIF says that it must be turned (orientation 6), and which carries a secret as
/// its picture description, the way a telephone's file carries its place.
pub fn photo_with_exif(shade: u8) -> Vec<u8> {
    let picture = image::RgbImage::from_fn(40, 30, |x, _| {
        if x < 20 { image::Rgb([250, shade, 0]) } else { image::Rgb([0, shade, 250]) }
    });
    let mut jpeg = Vec::new();
    image::codecs::jpeg::JpegEncoder::new_with_quality(&mut jpeg, 95).encode_image(&picture).unwrap();
    // EXIF 2.32 in a TIFF 6.0 frame: big-endian header, one directory of two entries, the text behind it.
    let secret = b"SECRET-PLACE 1.2345 2.3456\0";
    let mut tiff = b"MM\0\x2a\0\0\0\x08\0\x02".to_vec();
    tiff.extend([0x01, 0x0e, 0, 2, 0, 0, 0, secret.len() as u8, 0, 0, 0, 38]); // ImageDescription, ASCII, at 38
    tiff.extend([0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0]); // Orientation, SHORT, 6
    tiff.extend([0, 0, 0, 0]);
    tiff.extend(secret);
    let payload = [b"Exif\0\0".as_slice(), &tiff].concat();
    let length = (payload.len() as u16 + 2).to_be_bytes();
    [&jpeg[..2], &[0xff, 0xe1], &length, &payload, &jpeg[2..]].concat()
}
