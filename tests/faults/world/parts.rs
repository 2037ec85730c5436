//! What a world is made of: a phone and an office, as models or as the real ones, and what goes between them.

use std::collections::BTreeMap;
use std::rc::Rc;

use coilside_core::now::Now;
use coilside_core::store::{OutboxKind, OutboxRow};
use coilside_core::sync::{Network, SendBody, SendRequest};

/// Bytes that several hold.
pub(crate) type Bytes = Rc<Vec<u8>>;

pub(crate) type Headers = Vec<(String, String)>;

/// Why a call came to nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stop {
    /// The process died in it.
    Killed,
    /// There was no room, or the person's wish cannot be done just now: nothing of it was written.
    Refused,
}

/// A request on the wire, with as many bytes of its body as come through.
#[derive(Clone)]
pub(crate) struct Call {
    pub(crate) request: Rc<SendRequest>,
    pub(crate) came: u64,
}

impl Call {
    /// Whether all of it comes.
    pub(crate) fn is_whole(&self) -> bool {
        self.came == self.request.body.length()
    }

    pub(crate) fn header(&self, name: &str) -> Option<&str> {
        let found = self.request.headers.iter().find(|(known, _)| known.eq_ignore_ascii_case(name));
        found.map(|(_, value)| value.as_str())
    }

    /// Of a photograph's piece: the file's name, which is a digest, the first byte, and the byte after the last that comes.
    pub(crate) fn piece(&self) -> Option<(String, u64, u64)> {
        let SendBody::File { path, from, .. } = &self.request.body else { return None };
        Some((path.file_name()?.to_string_lossy().into_owned(), *from, *from + self.came))
    }
}

/// An answer. Status 0: there was none.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Reply {
    pub(crate) status: u16,
    pub(crate) headers: Headers,
    pub(crate) body: Vec<u8>,
}

impl Reply {
    pub(crate) fn header(&self, name: &str) -> Option<&str> {
        let found = self.headers.iter().find(|(known, _)| known.eq_ignore_ascii_case(name));
        found.map(|(_, value)| value.as_str())
    }

    /// What it says, for people to read: never a token or anything else that is made by chance.
    pub(crate) fn told(&self, id: &str) -> String {
        let secret = ["join/", "nonce/", "token/", "seal:"].iter().any(|own| id.starts_with(own));
        let offset = self.header("upload-offset").map(|offset| format!("at {offset} ")).unwrap_or_default();
        let body = if secret { "…".into() } else { String::from_utf8_lossy(&self.body) };
        format!("{offset}{body}")
    }

    pub(crate) fn problem(status: u16, kind: &str, more: serde_json::Value) -> Reply {
        let mut said = serde_json::json!({ "type": format!("urn:coilside:problem:{kind}"), "status": status });
        if let (Some(said), serde_json::Value::Object(more)) = (said.as_object_mut(), more) {
            said.extend(more);
        }
        Reply {
            status,
            headers: vec![("content-type".into(), "application/problem+json".into())],
            body: said.to_string().into_bytes(),
        }
    }

    pub(crate) fn json(status: u16, said: &serde_json::Value) -> Reply {
        let headers = vec![("content-type".into(), "application/json".into())];
        Reply { status, headers, body: said.to_string().into_bytes() }
    }

    pub(crate) fn with(mut self, name: &str, value: impl ToString) -> Reply {
        self.headers.push((name.into(), value.to_string()));
        self
    }
}

/// Where a row of the outbox stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum State {
    Waiting,
    Stuck,
    Aside,
    Safe,
}

/// A row of a phone's outbox.
#[derive(Clone, Debug)]
pub(crate) struct Row {
    pub(crate) row: OutboxRow,
    pub(crate) state: State,
}

impl Row {
    pub(crate) fn is(&self, kind: OutboxKind, visit: &str) -> bool {
        self.row.kind == kind && self.row.visit.as_str() == visit
    }
}

/// What lies on a phone's disk.
#[derive(Clone, Default)]
pub(crate) struct PhoneDisk {
    /// Events by visit.
    pub(crate) logs: BTreeMap<String, Vec<Bytes>>,
    pub(crate) rows: Vec<Row>,
    /// Seals by visit.
    pub(crate) seals: BTreeMap<String, String>,
    /// Photographs by digest, and their lengths.
    pub(crate) photos: BTreeMap<String, u64>,
    /// Assignments that the office took back.
    pub(crate) withdrawn: std::collections::BTreeSet<String>,
}

/// What lies on an office's disk: what it would still have if its power failed now.
#[derive(Clone, Default)]
pub(crate) struct OfficeDisk {
    /// Events by visit.
    pub(crate) logs: BTreeMap<String, Vec<Bytes>>,
    pub(crate) seals: BTreeMap<String, String>,
    /// Photographs that it calls safe, by digest, and whether their bytes are the right ones.
    pub(crate) photos: BTreeMap<String, bool>,
    /// Assignments that it took back.
    pub(crate) withdrawn: std::collections::BTreeSet<String>,
}

/// A phone: an engine over a store, and the person who holds it.
pub(crate) trait Phone {
    /// Its program starts, on what lies on its disk.
    fn start(&mut self, now: &Now);
    /// Its program ends at once.
    fn kill(&mut self);
    /// Its program dies instead of its so-manieth write from now on; none: it does not.
    fn dies_at_write(&mut self, writes: Option<u32>);
    /// Its disk is full, or has room again.
    fn fill(&mut self, full: bool);
    fn requests(&mut self, network: Network, now: &Now) -> Result<Vec<SendRequest>, Stop>;
    fn answered(&mut self, id: &str, reply: &Reply, now: &Now) -> Result<(), Stop>;
    /// The person writes something down.
    fn write(&mut self, text: &str, now: &Now) -> Result<(), Stop>;
    /// The person takes a photograph of so many bytes or so.
    fn shoot(&mut self, name: &str, bytes: u64, now: &Now) -> Result<(), Stop>;
    /// The person closes the visit; the next one begins with what is written next.
    fn seal(&mut self, now: &Now) -> Result<(), Stop>;
    /// The person wants it sent now.
    fn hurry(&mut self, now: &Now) -> Result<(), Stop>;
    /// The person joins an office by its link.
    fn join(&mut self, link: &str, now: &Now) -> Result<(), Stop>;
    /// Whether the person sees that the office does not let this device in.
    fn is_out(&mut self, now: &Now) -> bool;
    /// What lies on its disk, and a number that changes with it.
    fn disk(&mut self) -> (&PhoneDisk, u64);
}

/// An office.
pub(crate) trait Office {
    fn start(&mut self, now_ms: i64);
    /// It ends at once; with its power, what was not synced may be lost.
    fn kill(&mut self, power: bool);
    fn dies_at_write(&mut self, writes: Option<u32>);
    fn fill(&mut self, full: bool);
    fn take(&mut self, call: &Call, now_ms: i64) -> Result<Reply, Stop>;
    /// A link with a fresh code; none where it cannot be written down.
    fn link(&mut self, now_ms: i64) -> Option<String>;
    /// It hears the device of this key, in hexadecimal digits, no more.
    fn revoke(&mut self, key: &str, now_ms: i64);
    /// It takes an assignment back.
    fn withdraw(&mut self, id: &str, now_ms: i64);
    /// Like `Phone::disk`.
    fn disk(&mut self) -> (&OfficeDisk, u64);
}
