//! The office's side of the wire, written by hand as its protocol has it: JSON of its own, problems after RFC 9457,
//! uploads after tus 1.0.0 (offsets in `Upload-Offset`), waits after `Retry-After` (RFC 9110, 10.2.3).

use std::collections::BTreeMap;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use coilside_core::action::Action;
use coilside_core::screen::{Screen, Tone};
use coilside_core::sync::{SendBody, SendRequest};
use coilside_core::visit::event::{NO_PREV, sha256};

use crate::bench::Bench;

pub(crate) type Headers = Vec<(String, String)>;

/// What a hotel's or a provider's network says instead of the office.
pub(crate) const HTML: &[u8] = b"<!doctype html><title>Welcome to the hotel's network</title>";

pub(crate) fn header(name: &str, value: &str) -> Headers {
    vec![(name.to_owned(), value.to_owned())]
}

/// The next request, letting time go by while the engine rests; none where nothing goes out within ten minutes.
pub(crate) fn next(bench: &mut Bench) -> Option<SendRequest> {
    for _ in 0..600 {
        if let Some(request) = next_now(bench) {
            return Some(request);
        }
        bench.pass_ms(1_000);
    }
    None
}

/// The next request that goes out at this moment. What goes out beside it comes next.
pub(crate) fn next_now(bench: &mut Bench) -> Option<SendRequest> {
    if bench.beside.is_empty() {
        let requests = bench.field().next_requests(bench.network, &bench.now).unwrap();
        bench.beside.extend(requests);
    }
    bench.beside.pop_front()
}

/// Gives an answer; a body of JSON is called so unless a header says otherwise.
pub(crate) fn answer(bench: &Bench, request: &SendRequest, status: u16, headers: &Headers, body: &str) {
    let mut headers = headers.clone();
    let said = headers.iter().any(|(name, _)| name.eq_ignore_ascii_case("content-type"));
    if body.starts_with('{') && !said {
        let kind = if status < 400 { "application/json" } else { "application/problem+json" };
        headers.extend(header("content-type", kind));
    }
    bench.field().answered(&request.id, status, &headers, body.as_bytes(), &bench.now).unwrap();
}

/// A refusal in the office's own words (RFC 9457), its type as the office writes it.
pub(crate) fn refuse(bench: &Bench, request: &SendRequest, status: u16, kind: &str) {
    let body = serde_json::json!({ "type": format!("urn:coilside:problem:{kind}"), "title": "T", "status": status, "detail": "D" });
    answer(bench, request, status, &Headers::new(), &body.to_string());
}

/// What a request is about, without its number.
pub(crate) fn about(request: &SendRequest) -> &str {
    request.id.split('/').next().unwrap()
}

/// No news.
pub(crate) const NO_NEWS: &str = r#"{"assignments":[]}"#;

/// The office knows the device: what comes next is the outbox.
pub(crate) fn introduced(bench: &mut Bench) {
    let request = next(bench).unwrap();
    assert_eq!(about(&request), "device");
    answer(bench, &request, 200, &Headers::new(), r#"{"known":true}"#);
}

pub(crate) fn outbox(bench: &mut Bench) -> Screen {
    bench.act(&Action::Go { to: "outbox".into() }).unwrap().screen
}

pub(crate) fn is_all_safe(bench: &Bench) -> bool {
    bench.field().screen(&bench.now).unwrap().screen.outbox.tone == Tone::Good
}

/// The office's answer about the events before `next`, with the digest of the last of them.
pub(crate) fn have(bench: &Bench, next: u64) -> String {
    let events = bench.events();
    let head = next.checked_sub(1).map_or(NO_PREV.to_owned(), |last| sha256(&events[last as usize]).0);
    serde_json::json!({ "next": next, "head": head }).to_string()
}

pub(crate) fn next_events(bench: &mut Bench) -> SendRequest {
    next_of(bench, "events:")
}

/// The next request of a kind; the office has no news meanwhile, and takes small pictures.
pub(crate) fn next_of(bench: &mut Bench, kind: &str) -> SendRequest {
    loop {
        let request = next(bench).unwrap();
        if request.id.starts_with(kind) {
            return request;
        }
        if request.id.starts_with("preview:") {
            answer(bench, &request, 204, &Headers::new(), "");
            continue;
        }
        assert_eq!(about(&request), "news", "before {kind}");
        answer(bench, &request, 200, &Headers::new(), NO_NEWS);
    }
}

/// An office that does what its protocol says, and remembers what is on its disk.
#[derive(Default)]
pub(crate) struct Honest {
    /// Events by visit.
    pub(crate) events: BTreeMap<String, Vec<String>>,
    /// Photographs by digest: how many bytes were announced, and what has arrived.
    pub(crate) photos: BTreeMap<String, (u64, Vec<u8>)>,
    /// Small pictures that were sent ahead, by the photograph's digest.
    pub(crate) ahead: BTreeMap<String, Vec<u8>>,
    /// Visits that are sealed.
    pub(crate) sealed: Vec<String>,
    /// What goes down with the next question for news.
    pub(crate) news: Option<String>,
    /// Every request, without its number.
    pub(crate) asked: Vec<String>,
}

impl Honest {
    /// Does what a request says and answers it: status, headers and body.
    pub(crate) fn takes(&mut self, request: &SendRequest) -> (u16, Headers, String) {
        self.asked.push(about(request).to_owned());
        let body = match &request.body {
            SendBody::Empty => Vec::new(),
            SendBody::Bytes(bytes) => bytes.clone(),
            SendBody::File { path, from, length } => {
                std::fs::read(path).unwrap()[*from as usize..(*from + *length) as usize].to_vec()
            }
        };
        let said = |name: &str| {
            request.headers.iter().find(|(known, _)| known == name).map(|(_, value)| value.clone()).unwrap_or_default()
        };
        let json = || serde_json::from_slice::<serde_json::Value>(&body).unwrap();
        let path: Vec<&str> = request.path.strip_prefix("/api/v1/").unwrap().split('/').collect();
        match (request.method.as_str(), path.as_slice()) {
            ("PUT", ["device"]) => (200, Headers::new(), r#"{"known":true}"#.into()),
            ("GET", ["assignments"] | ["news"]) => {
                (200, Headers::new(), self.news.take().unwrap_or_else(|| NO_NEWS.into()))
            }
            ("POST", ["visits", visit, "events"]) => {
                let sent = json();
                let first = sent["first"].as_u64().unwrap() as usize;
                let stored = self.events.entry((*visit).to_owned()).or_default();
                let status = if first > stored.len() { 409 } else { 200 };
                for (at, event) in (first..).zip(sent["events"].as_array().unwrap()).filter(|_| status == 200) {
                    let event = event.as_str().unwrap();
                    match stored.get(at) {
                        Some(known) => assert_eq!(known, event, "another event {at}"),
                        None => stored.push(event.to_owned()),
                    }
                }
                let head = stored.last().map_or(NO_PREV.to_owned(), |last| sha256(last.as_bytes()).0);
                let told =
                    serde_json::json!({ "type": "urn:coilside:problem:gap", "next": stored.len(), "head": head });
                (status, Headers::new(), told.to_string())
            }
            ("PUT", ["visits", visit, "seal"]) => {
                self.sealed.push((*visit).to_owned());
                (
                    200,
                    Headers::new(),
                    serde_json::json!({ "visit": visit, "sealed": true, "summary": "/s/abc" }).to_string(),
                )
            }
            ("POST", ["photos"]) => {
                let digest =
                    said("Upload-Metadata").split([' ', ',']).nth(1).map(|coded| STANDARD.decode(coded).unwrap());
                let digest = String::from_utf8(digest.unwrap()).unwrap();
                self.photos.entry(digest).or_insert((said("Upload-Length").parse().unwrap(), Vec::new()));
                (201, Headers::new(), String::new())
            }
            ("HEAD", ["photos", digest]) => match self.photos.get(*digest) {
                Some((_, bytes)) => (200, header("Upload-Offset", &bytes.len().to_string()), String::new()),
                None => (404, Headers::new(), String::new()),
            },
            ("PATCH", ["photos", digest]) => self.piece(digest, &said("Upload-Offset"), &body),
            ("PUT", ["photos", digest, "preview"]) => {
                self.ahead.insert((*digest).to_owned(), body);
                (204, Headers::new(), String::new())
            }
            ("GET", ["photos", digest, "receipt"]) => {
                let safe = self.photos.get(*digest).is_some_and(|(_, bytes)| sha256(bytes).as_str() == *digest);
                (200, Headers::new(), serde_json::json!({ "digest": digest, "safe": safe }).to_string())
            }
            other => panic!("{other:?}"),
        }
    }

    fn piece(&mut self, digest: &str, offset: &str, body: &[u8]) -> (u16, Headers, String) {
        let (length, bytes) = self.photos.get_mut(digest).unwrap();
        let at = header("Upload-Offset", &bytes.len().to_string());
        if offset != bytes.len().to_string() {
            return (409, at, r#"{"type":"urn:coilside:problem:offset"}"#.into());
        }
        bytes.extend(body);
        assert!(bytes.len() as u64 <= *length, "more than was announced");
        (204, header("Upload-Offset", &bytes.len().to_string()), String::new())
    }

    /// Takes one request and answers it.
    pub(crate) fn answers(&mut self, bench: &Bench, request: &SendRequest) {
        let (status, headers, body) = self.takes(request);
        answer(bench, request, status, &headers, &body);
    }

    /// Takes requests until everything is safe.
    pub(crate) fn takes_all(&mut self, bench: &mut Bench) {
        for _ in 0..2_000 {
            if is_all_safe(bench) {
                return;
            }
            let request = next(bench).unwrap();
            self.answers(bench, &request);
        }
        panic!("it does not end: {:?}", &self.asked[self.asked.len() - 20..]);
    }
}
