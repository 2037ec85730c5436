//! The model of the office answers as the real one does: the same scripts of requests go to both, and what they mean is
//! compared. Otherwise thousands of worlds would be about a fiction.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::rc::Rc;

use base64::Engine as _;
use base64::engine::general_purpose::{STANDARD, URL_SAFE_NO_PAD};
use coilside_core::sync::{SendBody, SendRequest};
use coilside_core::visit::event::{NO_PREV, sha256};
use p256::ecdsa::Signature;
use p256::ecdsa::signature::Signer as _;
use serde_json::{Value, json};

use super::clock::MORNING_MS;
use super::office::ModelOffice;
use super::parts::{Call, Headers, Office, Reply};
use super::phone::Key;
use super::real_office::RealOffice;
use crate::random::Random;

const SCRIPTS: u64 = 24;
const STEPS: u32 = 60;

fn signed(key: &Key, kind: &str, said: &Value) -> String {
    let part = |text: String| URL_SAFE_NO_PAD.encode(text);
    let input = format!("{}.{}", part(format!(r#"{{"alg":"ES256","typ":"{kind}"}}"#)), part(said.to_string()));
    let signature: Signature = key.secret.sign(input.as_bytes());
    format!("{input}.{}", URL_SAFE_NO_PAD.encode(signature.to_bytes()))
}

fn chain(visit: &str, count: u64, salt: &str) -> Vec<String> {
    let mut events: Vec<String> = Vec::new();
    for seq in 0..count {
        let prev = events.last().map_or(NO_PREV.to_owned(), |last| sha256(last.as_bytes()).0);
        events.push(
            json!({ "kind": "note", "prev": prev, "seq": seq, "text": format!("{salt} {seq}"), "visit": visit })
                .to_string(),
        );
    }
    events
}

/// A device as a script knows it: its key, and its name and token at each of the two offices.
struct Device {
    key: Key,
    at: [(String, String); 2],
}

/// Both offices, and what is sent to them.
struct Both {
    random: Random,
    real: RealOffice,
    model: ModelOffice,
    now_ms: i64,
    devices: Vec<Device>,
    /// Visits with their true events.
    visits: Vec<(String, Vec<String>)>,
    photos: Vec<(String, PathBuf, u64)>,
    kinds: BTreeMap<String, u32>,
}

/// What of an answer a device goes by.
fn told(reply: &Reply) -> Value {
    let said: Value = serde_json::from_slice(&reply.body).unwrap_or_default();
    let kind = said["type"].as_str().map(|kind| kind.rsplit(':').next().unwrap_or_default().to_owned());
    let mut told = json!({ "status": reply.status, "kind": kind });
    for name in ["next", "head", "kept", "digest", "safe", "visit", "sealed", "known", "offset"] {
        told[name] = said[name].clone();
    }
    for name in ["upload-offset", "upload-length", "retry-after"] {
        told[name] = reply.header(name).into();
    }
    told
}

impl Both {
    fn new(seed: u64, folder: &Path) -> Both {
        let mut random = Random::of(seed);
        let photo = |n: u64, bytes: u64| {
            let content: Vec<u8> = (0..bytes).map(|at| (at * (n + 3) % 251) as u8).collect();
            let digest = sha256(&content).0;
            let path = folder.join(&digest);
            std::fs::write(&path, content).unwrap();
            (digest, path, bytes)
        };
        let photos = (0..3).map(|n| photo(seed * 3 + n, 50 + 700 * n)).collect();
        let visits = ["v-one", "v-two"].map(|visit| (visit.to_owned(), chain(visit, 7, "true"))).to_vec();
        let model = ModelOffice::new(Random::of(random.next()), None);
        let real = RealOffice::new(MORNING_MS);
        let (devices, kinds) = (Vec::new(), BTreeMap::new());
        let mut both = Both { random, real, model, now_ms: MORNING_MS, devices, visits, photos, kinds };
        for number in 0..2 {
            both.joins(number);
        }
        both
    }

    /// The device of a number joins, or joins again.
    fn joins(&mut self, number: usize) {
        let key = Key::of(number as u8 + 1);
        let mut at = Vec::new();
        for office in [&mut self.real as &mut dyn Office, &mut self.model] {
            let link = office.link(self.now_ms).unwrap();
            let code = link.split_once('#').unwrap().1;
            let body = json!({ "code": code, "public_key": key.hex, "name": "Phone" });
            let request = asks("POST", "/api/v1/join", Vec::new(), SendBody::Bytes(body.to_string().into_bytes()));
            let reply = office.take(&whole(request), self.now_ms).unwrap();
            assert_eq!(reply.status, 201);
            let said: Value = serde_json::from_slice(&reply.body).unwrap();
            let text = |name: &str| said[name].as_str().unwrap().to_owned();
            at.push((text("device"), text("token")));
        }
        let device = Device { key, at: at.try_into().unwrap() };
        if number < self.devices.len() { self.devices[number] = device } else { self.devices.push(device) }
    }

    /// Sends a request in the name of a device to both, with so many bytes of its body.
    fn send(&mut self, device: usize, mut request: SendRequest, came: Option<u64>, note: &str) {
        let plain = request.headers.clone();
        let mut answers = Vec::new();
        let tokens = self.devices[device].at.clone().map(|(_, token)| token);
        for (office, token) in [&mut self.real as &mut dyn Office, &mut self.model].into_iter().zip(tokens) {
            request.headers.clone_from(&plain);
            request.headers.push(("Authorization".into(), format!("Bearer {token}")));
            let came = came.unwrap_or(request.body.length());
            answers.push(office.take(&Call { request: Rc::new(request.clone()), came }, self.now_ms).unwrap());
        }
        let (real, model) = (told(&answers[0]), told(&answers[1]));
        assert_eq!(
            model, real,
            "{note}: {} {} by device {device}: the model, then the real one",
            request.method, request.path
        );
        let kind =
            model["kind"].as_str().map_or_else(|| format!("{} {}", request.method, model["status"]), str::to_owned);
        *self.kinds.entry(kind).or_default() += 1;
    }

    fn step(&mut self, note: &str) {
        let device = usize::from(self.random.chance(100));
        match self.random.below(20) {
            0..=5 => self.events(device, note),
            6 | 7 => self.seal(device, note),
            8..=16 => self.photo(device, note),
            17 if self.random.chance(300) => {
                for office in [&mut self.real as &mut dyn Office, &mut self.model] {
                    office.kill(false);
                    office.start(self.now_ms);
                }
            }
            18 if self.random.chance(200) => {
                for office in [&mut self.real as &mut dyn Office, &mut self.model] {
                    office.revoke(&self.devices[device].key.hex, self.now_ms);
                }
                self.send(device, asks("GET", "/api/v1/news", Vec::new(), SendBody::Empty), None, note);
                self.joins(device);
            }
            19 if self.random.chance(200) => {
                self.now_ms += self.random.pick(&[60_000, 13 * 3_600_000, 8 * 86_400_000]);
                self.send(device, asks("GET", "/api/v1/news", Vec::new(), SendBody::Empty), None, note);
                for number in 0..2 {
                    self.joins(number);
                }
            }
            _ => self.token(device, note),
        }
    }

    /// A token by a nonce, each office's own; the nonce does once.
    fn token(&mut self, device: usize, note: &str) {
        let mut answers: Vec<Vec<Value>> = Vec::new();
        for (at, office) in [&mut self.real as &mut dyn Office, &mut self.model].into_iter().enumerate() {
            let Device { key, at: names } = &mut self.devices[device];
            let path = format!("/api/v1/token?device={}", names[at].0);
            let nonce = office.take(&whole(asks("GET", &path, Vec::new(), SendBody::Empty)), self.now_ms).unwrap();
            let said: Value = serde_json::from_slice(&nonce.body).unwrap();
            let proof = json!({ "aud": "coilside-office", "device": names[at].0, "nonce": said["nonce"] });
            let body = json!({ "jws": signed(key, "coilside-token+json", &proof) }).to_string();
            let ask = asks("POST", "/api/v1/token", Vec::new(), SendBody::Bytes(body.into_bytes()));
            let (first, again) = (office.take(&whole(ask.clone()), self.now_ms), office.take(&whole(ask), self.now_ms));
            let (first, again) = (first.unwrap(), again.unwrap());
            let said: Value = serde_json::from_slice(&first.body).unwrap();
            if let Some(token) = said["token"].as_str() {
                token.clone_into(&mut names[at].1);
            }
            answers.push(vec![told(&nonce), told(&first), told(&again)]);
        }
        assert_eq!(answers[1], answers[0], "{note}: tokens");
        *self.kinds.entry("POST token".to_owned()).or_default() += 1;
    }

    fn events(&mut self, device: usize, note: &str) {
        let at = self.random.below(2) as usize;
        let (visit, log) = self.visits[at].clone();
        let here = self.model.disk().0.logs.get(&visit).map_or(0, Vec::len) as u64;
        let first = if self.random.chance(600) { here } else { self.random.below(log.len() as u64 + 1) };
        let count = self.random.below(4);
        let mut events: Vec<String> = log.iter().skip(first as usize).take(count as usize).cloned().collect();
        match self.random.below(12) {
            0 => events = chain(&visit, first + count, "false").split_off(first as usize),
            1 => events.reverse(),
            2 => events = vec!["<html>".into()],
            _ => {}
        }
        let body = json!({ "first": first, "events": events }).to_string().into_bytes();
        let path = format!("/api/v1/visits/{visit}/events");
        self.send(device, asks("POST", &path, Vec::new(), SendBody::Bytes(body)), None, note);
    }

    fn seal(&mut self, device: usize, note: &str) {
        let at = self.random.below(2) as usize;
        let (visit, log) = self.visits[at].clone();
        let next = if self.random.chance(600) { log.len() as u64 } else { self.random.below(log.len() as u64) };
        let last = match next.checked_sub(1) {
            Some(_) if self.random.chance(100) => "ab".repeat(32),
            Some(last) => sha256(log[last as usize].as_bytes()).0,
            None => NO_PREV.to_owned(),
        };
        let key = if self.random.chance(100) { &self.devices[1 - device].key } else { &self.devices[device].key };
        let said = json!({
            "format": 1, "visit": visit, "last": last, "next": next, "complete": true, "missing": [],
            "at_utc_ms": MORNING_MS, "offset_min": 60, "device_key": "",
        });
        let body = json!({ "jws": signed(key, "coilside-seal+json", &said), "public_key": key.hex }).to_string();
        let path = format!("/api/v1/visits/{visit}/seal");
        self.send(device, asks("PUT", &path, Vec::new(), SendBody::Bytes(body.into_bytes())), None, note);
    }

    fn photo(&mut self, device: usize, note: &str) {
        let (digest, file, bytes) = self.photos[self.random.below(3) as usize].clone();
        let path = format!("/api/v1/photos/{digest}");
        let version = ("Tus-Resumable".to_owned(), "1.0.0".to_owned());
        match self.random.below(8) {
            0 | 1 => {
                let length = self.random.pick(&[bytes, bytes, bytes, bytes, bytes + 1, 0]);
                let metadata = format!("sha256 {},visit {}", STANDARD.encode(&digest), STANDARD.encode("v-one"));
                let headers =
                    vec![version, ("Upload-Length".into(), length.to_string()), ("Upload-Metadata".into(), metadata)];
                self.send(device, asks("POST", "/api/v1/photos", headers, SendBody::Empty), None, note);
            }
            2 => self.send(device, asks("HEAD", &path, vec![version], SendBody::Empty), None, note),
            3 => {
                let path = format!("{path}/receipt");
                self.send(device, asks("GET", &path, Vec::new(), SendBody::Empty), None, note);
            }
            _ => {
                // Mostly from where the office is, which a HEAD tells.
                let ask = asks("HEAD", &path, vec![version.clone()], SendBody::Empty);
                let mut ask_real = ask.clone();
                let token = &self.devices[device].at[0].1;
                ask_real.headers.push(("Authorization".into(), format!("Bearer {token}")));
                let at = self.real.take(&whole(ask_real), self.now_ms).unwrap();
                self.send(device, ask, None, note);
                let here = at.header("upload-offset").and_then(|text| text.parse().ok()).unwrap_or(0);
                let from: u64 = if self.random.chance(850) { here } else { self.random.below(bytes + 1) };
                let left = bytes.saturating_sub(from);
                let length = if self.random.chance(500) { left } else { self.random.below(left + 1) };
                let other = self.photos.iter().find(|(_, _, other)| *other >= from + length && *other != bytes);
                let file = match other {
                    Some((_, other, _)) if self.random.chance(100) => other.clone(),
                    _ => file,
                };
                let headers = vec![
                    version,
                    ("Upload-Offset".into(), from.to_string()),
                    ("Content-Type".into(), "application/offset+octet-stream".into()),
                ];
                let came = self.random.chance(300).then(|| self.random.below(length + 1));
                let body = SendBody::File { path: file, from, length };
                self.send(device, asks("PATCH", &path, headers, body), came, note);
            }
        }
    }
}

fn asks(method: &str, path: &str, mut headers: Headers, body: SendBody) -> SendRequest {
    if matches!(body, SendBody::Bytes(_)) {
        headers.push(("Content-Type".into(), "application/json".into()));
    }
    SendRequest { id: String::new(), origin: None, method: method.into(), path: path.into(), headers, body }
}

fn whole(request: SendRequest) -> Call {
    let came = request.body.length();
    Call { request: Rc::new(request), came }
}

#[test]
fn the_model_of_the_office_answers_as_the_real_office_does() {
    let folder = coilside_tests::folder().unwrap();
    let mut kinds: BTreeMap<String, u32> = BTreeMap::new();
    for seed in 0..SCRIPTS {
        let mut both = Both::new(seed, folder.path());
        for step in 0..STEPS {
            both.step(&format!("script {seed}, step {step}"));
        }
        // The real one did so behind each answer.
        both.model.keep_arrived();
        let (real, model) = (both.real.disk().0.clone(), both.model.disk().0.clone());
        assert_eq!(model.logs, real.logs, "script {seed}");
        assert_eq!(model.seals.keys().collect::<Vec<_>>(), real.seals.keys().collect::<Vec<_>>(), "script {seed}");
        assert_eq!(model.photos, real.photos, "script {seed}");
        for (kind, times) in both.kinds {
            *kinds.entry(kind).or_default() += times;
        }
    }
    println!("{SCRIPTS} scripts of {STEPS} requests: {kinds:#?}");
    let wanted = [
        "POST 200",
        "POST 201",
        "HEAD 200",
        "PATCH 204",
        "PUT 200",
        "GET 200",
        "POST token",
        "gap",
        "conflict",
        "events",
        "another-device",
        "other-key",
        "not-announced",
        "other-length",
        "length",
        "offset",
        "digest",
        "line",
        "revoked",
        "token",
    ];
    let missing: Vec<_> = wanted.iter().filter(|kind| !kinds.contains_key(**kind)).collect();
    assert!(missing.is_empty(), "the scripts come to none of {missing:?}");
}
