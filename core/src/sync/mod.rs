//! What to send next, and what an answer means. Sends nothing itself.
//!
//! Every request may be repeated without harm. Only the office's own word that something is on its disk makes it safe:
//! a page with status 200 from anything between does not.

mod answer;

pub use answer::{Answer, Meaning, meaning, summary_path};

use std::path::PathBuf;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde::{Deserialize, Serialize};

use crate::now::Now;
use crate::store::{OutboxKind, OutboxRow};

/// The most events in one request.
const EVENTS_MOST: usize = 200;
/// The most bytes of a photograph in one request.
const SLICE_BYTES: u64 = 1 << 20;
/// An unanswered request is given up after this time, milliseconds.
const PATIENCE_MS: i64 = 90_000;
/// The longest wait between tries, milliseconds.
const WAIT_MOST_MS: i64 = 60_000;
/// How often the office is asked for news, milliseconds.
const NEWS_EVERY_MS: i64 = 30_000;

/// A request for the shell to send to the office.
#[derive(Clone, Debug, PartialEq)]
pub struct SendRequest {
    /// To be handed back with the answer.
    pub id: String,
    /// GET, POST, PUT, PATCH, HEAD.
    pub method: String,
    /// Path at the office, from `/api/v1` on.
    pub path: String,
    /// Headers beside the authorization.
    pub headers: Vec<(String, String)>,
    /// The body.
    pub body: SendBody,
}

/// A request's body.
#[derive(Clone, Debug, PartialEq)]
pub enum SendBody {
    /// None.
    Empty,
    /// These bytes.
    Bytes(Vec<u8>),
    /// A slice of a file.
    File {
        /// The file.
        path: PathBuf,
        /// The first byte.
        from: u64,
        /// How many bytes.
        length: u64,
    },
}

/// How far the photograph under way is. Forgotten at a restart: the office knows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Stage {
    /// Announce it.
    #[default]
    Announce,
    /// Ask how much has arrived.
    Ask,
    /// Send from this byte on.
    Send(u64),
    /// Ask for the receipt.
    Receipt,
}

/// What the engine remembers between calls.
#[derive(Debug, Default)]
pub struct Sender {
    /// The request that is out, and since when.
    out: Option<(String, Now)>,
    /// No request before this moment, after failures.
    rest_until: Option<(Now, i64)>,
    /// Failures in a row.
    failures: u32,
    /// The photograph under way.
    stage: Option<(i64, Stage)>,
    /// When the office was last asked for news, and whether it knows this device's key.
    news: Option<Now>,
    introduced: bool,
    /// When the office last answered.
    pub last_answer_utc_ms: Option<i64>,
}

/// What the engine needs to know of the store for its next request.
pub struct Waiting<'a> {
    /// The next row, if any.
    pub row: Option<&'a OutboxRow>,
    /// The stored bytes of the row's events.
    pub events: &'a [Vec<u8>],
    /// The row's seal.
    pub seal: Option<&'a str>,
    /// Where the row's photograph lies.
    pub original: Option<PathBuf>,
    /// The device's public key, SEC1 hex.
    pub device_key: &'a str,
}

#[derive(Serialize, Deserialize)]
struct EventBatch<'a> {
    first: u64,
    #[serde(borrow)]
    events: Vec<std::borrow::Cow<'a, str>>,
}

impl Sender {
    /// May a request go out now?
    #[must_use]
    pub fn is_free(&self, now: &Now) -> bool {
        let out = self.out.as_ref().is_some_and(|(_, since)| now.since(since).longest_ms < PATIENCE_MS);
        let rests = self.rest_until.as_ref().is_some_and(|(since, ms)| now.since(since).longest_ms < *ms);
        !out && !rests
    }

    /// The next request, if there is one.
    pub fn next(&mut self, waiting: &Waiting<'_>, now: &Now) -> Option<SendRequest> {
        let request = if !self.introduced {
            introduction(waiting.device_key)
        } else if self.news_is_due(waiting.row.is_some(), now) {
            request("news", "GET", "/api/v1/assignments", &[], SendBody::Empty)
        } else {
            self.carry(waiting)?
        };
        self.out = Some((request.id.clone(), now.clone()));
        Some(request)
    }

    /// News once at first, then while nothing waits: a short background window must not go by with asking.
    fn news_is_due(&self, something_waits: bool, now: &Now) -> bool {
        self.news.as_ref().is_none_or(|last| !something_waits && now.since(last).longest_ms > NEWS_EVERY_MS)
    }

    fn carry(&mut self, waiting: &Waiting<'_>) -> Option<SendRequest> {
        let row = waiting.row?;
        let id = row.id;
        match row.kind {
            OutboxKind::Events => {
                let events =
                    waiting.events.iter().take(EVENTS_MOST).map(|bytes| String::from_utf8_lossy(bytes)).collect();
                let body = serde_json::to_vec(&EventBatch { first: row.first, events }).ok()?;
                let path = format!("/api/v1/visits/{}/events", row.visit);
                Some(request(&format!("events:{id}"), "POST", &path, JSON, SendBody::Bytes(body)))
            }
            OutboxKind::Seal => {
                let body = serde_json::json!({ "jws": waiting.seal?, "public_key": waiting.device_key });
                let path = format!("/api/v1/visits/{}/seal", row.visit);
                Some(request(&format!("seal:{id}"), "PUT", &path, JSON, SendBody::Bytes(body.to_string().into_bytes())))
            }
            OutboxKind::Photo => {
                let stage = match self.stage {
                    Some((under_way, stage)) if under_way == id => stage,
                    _ => Stage::Announce,
                };
                self.stage = Some((id, stage));
                photo_request(row, stage, waiting.original.clone()?)
            }
        }
    }

    /// Takes note of an answer's meaning.
    pub fn heard(&mut self, id: &str, meaning: &Meaning, now: &Now) {
        if self.out.as_ref().is_some_and(|(out, _)| out == id) {
            self.out = None;
        }
        match meaning {
            Meaning::Wait { least_ms } => {
                self.failures = self.failures.saturating_add(1);
                let wait = (500_i64 << self.failures.min(7)).min(WAIT_MOST_MS).max(*least_ms);
                // Spread by the number of the request, so that devices of one van do not knock together.
                let spread = id.bytes().fold(0_i64, |sum, byte| (sum * 31 + i64::from(byte)) % 400);
                self.rest_until = Some((now.clone(), wait + spread));
                self.stage = None;
                return;
            }
            Meaning::Introduced => self.introduced = true,
            Meaning::News(_) => self.news = Some(now.clone()),
            Meaning::Stage(stage) => {
                if let Some((_, at)) = &mut self.stage {
                    *at = *stage;
                }
            }
            Meaning::Safe | Meaning::Stuck(_) => self.stage = None,
            Meaning::EventsSafe { .. } | Meaning::EventsAgain { .. } => {}
        }
        self.failures = 0;
        self.rest_until = None;
        self.last_answer_utc_ms = Some(now.utc_ms);
    }

    /// How far the photograph under way is.
    #[must_use]
    pub fn stage(&self) -> Option<Stage> {
        self.stage.map(|(_, stage)| stage)
    }

    /// A person wants it sent now.
    pub fn hurry(&mut self) {
        self.rest_until = None;
        self.failures = 0;
        self.news = None;
    }
}

const JSON: &[(&str, &str)] = &[("Content-Type", "application/json")];

fn request(id: &str, method: &str, path: &str, headers: &[(&str, &str)], body: SendBody) -> SendRequest {
    SendRequest {
        id: id.to_owned(),
        method: method.to_owned(),
        path: path.to_owned(),
        headers: headers.iter().map(|(name, value)| ((*name).to_owned(), (*value).to_owned())).collect(),
        body,
    }
}

fn introduction(device_key: &str) -> SendRequest {
    let body = serde_json::json!({ "public_key": device_key, "name": "browser shell" });
    request("device", "PUT", "/api/v1/device", JSON, SendBody::Bytes(body.to_string().into_bytes()))
}

fn photo_request(row: &OutboxRow, stage: Stage, original: PathBuf) -> Option<SendRequest> {
    let id = format!("photo:{}", row.id);
    let path = format!("/api/v1/photos/{}", row.digest);
    Some(match stage {
        Stage::Announce => {
            let metadata = format!(
                "sha256 {},visit {},media {}",
                STANDARD.encode(row.digest.as_str()),
                STANDARD.encode(row.visit.as_str()),
                STANDARD.encode(&row.media)
            );
            let length = row.bytes.to_string();
            let headers = [TUS, ("Upload-Length", length.as_str()), ("Upload-Metadata", metadata.as_str())];
            request(&id, "POST", "/api/v1/photos", &headers, SendBody::Empty)
        }
        Stage::Ask => request(&id, "HEAD", &path, &[TUS], SendBody::Empty),
        Stage::Send(from) => {
            let length = row.bytes.saturating_sub(from).min(SLICE_BYTES);
            let offset = from.to_string();
            let headers =
                [TUS, ("Upload-Offset", offset.as_str()), ("Content-Type", "application/offset+octet-stream")];
            request(&id, "PATCH", &path, &headers, SendBody::File { path: original, from, length })
        }
        Stage::Receipt => request(&id, "GET", &format!("{path}/receipt"), &[], SendBody::Empty),
    })
}

const TUS: (&str, &str) = ("Tus-Resumable", "1.0.0");
