//! An office in a folder of its own, called without a port.
#![allow(dead_code, unreachable_pub, missing_docs, reason = "each test file uses its part of this")]

pub mod visit;

use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, Ordering};

use axum::body::Body;
use axum::http::{HeaderMap, Request, Response, StatusCode};
use base64::Engine as _;
use base64::engine::general_purpose::{STANDARD, URL_SAFE_NO_PAD};
use coilside_office::{Digest, Office};
use http_body_util::BodyExt as _;
use p256::ecdsa::signature::Signer as _;
use p256::ecdsa::{Signature, SigningKey};
use serde_json::{Value, json};
use tower::ServiceExt as _;

/// 2026-03-02T08:00Z.
pub const START_MS: i64 = 1_772_438_400_000;

pub struct Bench {
    folder: tempfile::TempDir,
    clock: Arc<AtomicI64>,
    pub office: Office,
    pub token: String,
    pub key: SigningKey,
}

pub struct Answer {
    pub status: StatusCode,
    pub headers: HeaderMap,
    pub body: Vec<u8>,
}

impl Answer {
    pub fn json(&self) -> Value {
        serde_json::from_slice(&self.body).unwrap_or_else(|_| panic!("no JSON: {}", self.text()))
    }

    pub fn text(&self) -> String {
        String::from_utf8_lossy(&self.body).into_owned()
    }

    pub fn header(&self, name: &str) -> &str {
        self.headers.get(name).map_or("", |value| value.to_str().unwrap())
    }
}

/// A device that joined by a code.
pub struct Joined {
    pub device: String,
    pub token: String,
    pub key: SigningKey,
}

impl Joined {
    /// What proves that this device holds its key.
    pub fn proof(&self, nonce: &str) -> String {
        let said = json!({ "aud": "coilside-office", "device": self.device, "nonce": nonce });
        sign_as(&self.key, "coilside-token+json", &said)
    }
}

pub fn public_key(key: &SigningKey) -> String {
    hex(key.verifying_key().to_sec1_point(false).as_bytes())
}

fn open(folder: PathBuf, clock: &Arc<AtomicI64>) -> Office {
    let clock = Arc::clone(clock);
    Office::open_by(&folder, move || clock.load(Ordering::SeqCst)).unwrap()
}

impl Bench {
    /// An office with one device whose key is registered.
    pub async fn new() -> Self {
        let bench = Self::without_key();
        let answer = bench.put("/device", json!({ "public_key": bench.public_key(), "name": "Phone one" })).await;
        assert_eq!(answer.status, 200, "{}", answer.text());
        bench
    }

    pub fn without_key() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let clock = Arc::new(AtomicI64::new(START_MS));
        let office = open(folder.path().to_owned(), &clock);
        let token = office.add_device("Phone one").unwrap();
        Self { folder, clock, office, token, key: SigningKey::from_slice(&[7; 32]).unwrap() }
    }

    /// The office as another process would find it after a kill.
    pub fn reopened(mut self) -> Self {
        self.office = open(self.folder.path().to_owned(), &self.clock);
        self
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    pub fn db(&self) -> rusqlite::Connection {
        rusqlite::Connection::open(self.path("office.db")).unwrap()
    }

    pub fn count(&self, table: &str) -> i64 {
        self.db().query_row(&format!("SELECT count(*) FROM {table}"), [], |row| row.get(0)).unwrap()
    }

    pub fn assign(&self, doc: &Value) {
        self.office.put_assignment(doc).unwrap();
    }

    pub fn set_contact(&self, text: &str) {
        self.office.set_contact(text).unwrap();
    }

    pub fn let_pass(&self, ms: i64) {
        self.clock.fetch_add(ms, Ordering::SeqCst);
    }

    /// What the office's clock shows.
    pub fn office_now(&self) -> i64 {
        self.clock.load(Ordering::SeqCst)
    }

    pub fn public_key(&self) -> String {
        public_key(&self.key)
    }

    pub async fn call(&self, request: Request<Body>) -> Answer {
        let response: Response<Body> = self.office.router().oneshot(request).await.unwrap();
        let (parts, body) = response.into_parts();
        let body = body.collect().await.unwrap().to_bytes().to_vec();
        Answer { status: parts.status, headers: parts.headers, body }
    }

    pub fn request(&self, method: &str, path: &str) -> axum::http::request::Builder {
        Request::builder()
            .method(method)
            .uri(format!("/api/v1{path}"))
            .header("authorization", format!("Bearer {}", self.token))
    }

    /// A request of another device, or of none where the token is empty.
    pub async fn call_as(&self, token: &str, method: &str, path: &str, body: Option<Value>) -> Answer {
        let mut request = Request::builder().method(method).uri(format!("/api/v1{path}"));
        if !token.is_empty() {
            request = request.header("authorization", format!("Bearer {token}"));
        }
        self.call(request.body(body.map_or_else(Body::empty, |body| Body::from(body.to_string()))).unwrap()).await
    }

    /// A code from the office's page, for a device of this name.
    pub async fn new_code(&self, cookie: &str, name: &str) -> String {
        let page = self.submit("/devices/join", cookie, &format!("name={name}")).await;
        assert_eq!(page.status, 200, "{}", page.text());
        let text = page.text();
        let (_, rest) = text.split_once("class=\"letters\">").unwrap();
        rest.split('<').next().unwrap().to_owned()
    }

    /// A form as a browser with these cookies sends it.
    pub async fn submit(&self, path: &str, cookies: &str, form: &str) -> Answer {
        let request = Request::post(path)
            .header("cookie", cookies)
            .header("content-type", "application/x-www-form-urlencoded")
            .header("host", "office.test");
        self.call(request.body(Body::from(form.to_owned())).unwrap()).await
    }

    /// A device of its own, joined by a code.
    pub async fn joined(&self, cookie: &str, name: &str, secret: u8) -> Joined {
        let key = SigningKey::from_slice(&[secret; 32]).unwrap();
        let code = self.new_code(cookie, name).await;
        let answer = self.join(&code, &key, name).await;
        assert_eq!(answer.status, 201, "{}", answer.text());
        let said = answer.json();
        let text = |name: &str| said[name].as_str().unwrap().to_owned();
        Joined { device: text("device"), token: text("token"), key }
    }

    pub async fn join(&self, code: &str, key: &SigningKey, name: &str) -> Answer {
        let body = json!({ "code": code, "public_key": public_key(key), "name": name });
        self.call_as("", "POST", "/join", Some(body)).await
    }

    pub async fn get(&self, path: &str) -> Answer {
        self.call(self.request("GET", path).body(Body::empty()).unwrap()).await
    }

    pub async fn put(&self, path: &str, body: Value) -> Answer {
        self.call(self.request("PUT", path).body(Body::from(body.to_string())).unwrap()).await
    }

    pub async fn post(&self, path: &str, body: Value) -> Answer {
        self.call(self.request("POST", path).body(Body::from(body.to_string())).unwrap()).await
    }

    pub async fn send(&self, visit: &str, first: u64, events: &[String]) -> Answer {
        self.post(&format!("/visits/{visit}/events"), json!({ "first": first, "events": events })).await
    }

    pub async fn seal(&self, visit: &str, events: &[String], complete: bool) -> Answer {
        let payload = payload(visit, events, complete);
        let body = json!({ "jws": sign(&self.key, &payload), "public_key": self.public_key() });
        self.put(&format!("/visits/{visit}/seal"), body).await
    }

    pub async fn announce(&self, digest: Digest, length: usize, visit: &str) -> Answer {
        self.announce_as(digest, length, visit, "image/jpeg").await
    }

    pub async fn announce_as(&self, digest: Digest, length: usize, visit: &str, media: &str) -> Answer {
        let coded = |text: &str| STANDARD.encode(text);
        let metadata = format!("sha256 {},visit {},media {}", coded(&digest.to_string()), coded(visit), coded(media));
        let request = self.request("POST", "/photos").header("tus-resumable", "1.0.0");
        let request = request.header("upload-length", length).header("upload-metadata", metadata);
        self.call(request.body(Body::empty()).unwrap()).await
    }

    pub async fn piece(&self, digest: Digest, offset: usize, bytes: &[u8]) -> Answer {
        let request = self.request("PATCH", &format!("/photos/{digest}")).header("tus-resumable", "1.0.0");
        let request = request.header("content-type", "application/offset+octet-stream").header("upload-offset", offset);
        self.call(request.body(Body::from(bytes.to_vec())).unwrap()).await
    }

    /// Offset and length by HEAD.
    pub async fn progress(&self, digest: Digest) -> (String, String) {
        let request = self.request("HEAD", &format!("/photos/{digest}")).header("tus-resumable", "1.0.0");
        let answer = self.call(request.body(Body::empty()).unwrap()).await;
        assert_eq!(answer.status, 200);
        (answer.header("upload-offset").to_owned(), answer.header("upload-length").to_owned())
    }

    pub async fn is_safe(&self, digest: Digest) -> bool {
        let answer = self.get(&format!("/photos/{digest}/receipt")).await;
        assert_eq!(answer.status, 200);
        answer.json()["safe"].as_bool().unwrap()
    }

    /// A page as a browser with these cookies gets it.
    pub async fn page(&self, path: &str, cookies: &str) -> Answer {
        let request = Request::get(path).header("cookie", cookies);
        self.call(request.body(Body::empty()).unwrap()).await
    }

    /// Signs in by a fresh link, and gives the session's cookie.
    pub async fn sign_in(&self) -> String {
        let answer = self.page(&self.office.new_link().unwrap(), "").await;
        answer.header("set-cookie").split(';').next().unwrap_or_default().to_owned()
    }

    /// The address of a visit's summary.
    pub fn summary_path(&self, visit: &str) -> String {
        let sql = "SELECT token FROM summary WHERE visit = ?1";
        let token: String = self.db().query_row(sql, [visit], |row| row.get(0)).unwrap();
        format!("/s/{token}")
    }

    /// A photograph from announcing to safe.
    pub async fn send_photo(&self, bytes: &[u8], visit: &str) -> Digest {
        self.send_file(bytes, visit, "image/jpeg").await
    }

    /// The same with a file of another kind.
    pub async fn send_file(&self, bytes: &[u8], visit: &str, media: &str) -> Digest {
        let digest = Digest::of(bytes);
        assert_eq!(self.announce_as(digest, bytes.len(), visit, media).await.status, 201);
        assert_eq!(self.piece(digest, 0, bytes).await.status, 204);
        assert!(self.is_safe(digest).await);
        digest
    }
}

/// Chained events of a visit, each with a text that makes it its own.
pub fn chain(visit: &str, texts: &[&str]) -> Vec<String> {
    let mut events: Vec<String> = Vec::new();
    for (seq, text) in texts.iter().enumerate() {
        // serde_json's map is ordered by key: canonical for these strings and small integers (RFC 8785).
        let event = json!({ "visit": visit, "seq": seq, "prev": head(&events), "kind": "note", "text": text });
        events.push(event.to_string());
    }
    events
}

/// The hash of the last event.
pub fn head(events: &[String]) -> String {
    events.last().map_or("0".repeat(64), |last| Digest::of(last.as_bytes()).to_string())
}

/// What a device seals.
pub fn payload(visit: &str, events: &[String], complete: bool) -> Value {
    json!({
        "format": 1, "visit": visit, "last": head(events), "next": events.len(), "complete": complete, "missing": [],
        "at_utc_ms": START_MS, "offset_min": 60, "device_key": "",
    })
}

pub fn sign(key: &SigningKey, payload: &Value) -> String {
    sign_as(key, "coilside-seal+json", payload)
}

pub fn sign_as(key: &SigningKey, typ: &str, payload: &Value) -> String {
    let part = |text: String| URL_SAFE_NO_PAD.encode(text);
    let input = format!("{}.{}", part(format!(r#"{{"alg":"ES256","typ":"{typ}"}}"#)), part(payload.to_string()));
    let signature: Signature = key.sign(input.as_bytes());
    format!("{input}.{}", URL_SAFE_NO_PAD.encode(signature.to_bytes()))
}

pub fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}
