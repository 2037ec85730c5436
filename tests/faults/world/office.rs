//! An office as a model, written from `office/protocol.md`: what it answers, and what of it lasts. `alike.rs` holds it to the
//! real one. Every change of its disk is a write, at which it may die.

use std::collections::BTreeMap;
use std::rc::Rc;

use coilside_core::visit::event::{NO_PREV, sha256};
use serde::Deserialize;
use serde_json::{Value, json};

use super::admission::Admission;
use super::files::Files;
use super::mistakes::Mistake;
use super::parts::{Bytes, Call, Office, OfficeDisk, Reply, Stop};
use crate::random::Random;

/// A photograph that is unfinished so long after its last announcement is given up.
pub(super) const UNFINISHED_MS: i64 = 7 * 24 * 3_600_000;

/// A visit.
#[derive(Clone, Default)]
pub(super) struct Visit {
    pub(super) device: String,
    pub(super) events: Vec<Bytes>,
    /// The digest of each.
    pub(super) heads: Vec<String>,
    /// The seal, how many events it covers, and the last of them.
    pub(super) seal: Option<(String, u64, String)>,
}

/// A photograph's row.
#[derive(Clone)]
pub(super) struct Photo {
    pub(super) length: u64,
    pub(super) safe: bool,
    pub(super) announced_ms: i64,
}

/// The database.
#[derive(Clone, Default)]
pub(super) struct Tables {
    pub(super) visits: BTreeMap<String, Visit>,
    pub(super) photos: BTreeMap<String, Photo>,
    pub(super) admission: Admission,
    pub(super) withdrawn: Vec<String>,
}

/// An office.
pub(crate) struct ModelOffice {
    /// As the program sees it.
    pub(super) tables: Tables,
    /// As the disk has it.
    lasting: Tables,
    pub(super) files: Files,
    /// Photographs whose last byte was answered, and which are not on the disk yet.
    pub(super) lined_up: Vec<String>,
    full: bool,
    dies_at_write: Option<u32>,
    random: Random,
    pub(super) mistake: Option<Mistake>,
    view: OfficeDisk,
    version: u64,
    seen: u64,
}

/// Why a request was not done.
pub(super) enum No {
    Says(Reply),
    Killed,
}

impl From<Reply> for No {
    fn from(reply: Reply) -> No {
        No::Says(reply)
    }
}

pub(super) type Done = Result<Reply, No>;

/// A refusal that is worth trying again.
pub(super) fn later(kind: &str, after_s: u32) -> Reply {
    Reply::problem(503, kind, Value::Null).with("Retry-After", after_s)
}

#[derive(Deserialize)]
struct EventsIn {
    first: u64,
    events: Vec<String>,
}

#[derive(Deserialize)]
struct Envelope {
    visit: String,
    seq: u64,
    prev: String,
}

#[derive(Deserialize)]
struct SealIn {
    jws: String,
    public_key: String,
}

#[derive(Deserialize)]
struct Sealed {
    visit: String,
    next: u64,
    last: String,
}

impl ModelOffice {
    pub(crate) fn new(random: Random, mistake: Option<Mistake>) -> ModelOffice {
        ModelOffice {
            tables: Tables::default(),
            lasting: Tables::default(),
            files: Files::default(),
            lined_up: Vec::new(),
            full: false,
            dies_at_write: None,
            random,
            mistake,
            view: OfficeDisk::default(),
            version: 1,
            seen: 0,
        }
    }

    /// A device with a token that never ends.
    pub(crate) fn add_script(&mut self, token: &str) {
        self.tables.admission.add_script(token);
        self.lasting = self.tables.clone();
    }

    /// Comes to a write: it dies here, finds no room, or goes on.
    pub(super) fn write(&mut self) -> Result<(), No> {
        if self.dies_at_write == Some(0) {
            return Err(No::Killed);
        }
        if self.full {
            return Err(later("store", 30).into());
        }
        self.dies_at_write = self.dies_at_write.map(|left| left - 1);
        self.version += 1;
        Ok(())
    }

    /// A transaction that is on the disk when this returns.
    pub(super) fn commit(&mut self, change: impl FnOnce(&mut Tables)) -> Result<(), No> {
        self.write()?;
        change(&mut self.tables);
        self.lasting = self.tables.clone();
        Ok(())
    }

    /// A transaction that does not wait for the disk.
    pub(super) fn note(&mut self, change: impl FnOnce(&mut Tables)) -> Result<(), No> {
        self.write()?;
        change(&mut self.tables);
        Ok(())
    }

    pub(super) fn may_write(&self) -> bool {
        !self.full
    }

    fn events(&mut self, device: &str, visit: &str, body: &[u8]) -> Done {
        let Ok(sent) = serde_json::from_slice::<EventsIn>(body) else {
            return Ok(Reply::problem(400, "json", Value::Null));
        };
        let refused = || Reply::problem(422, "events", Value::Null);
        let mut batch: Vec<(Envelope, String)> = Vec::new();
        for (seq, text) in (sent.first..).zip(&sent.events) {
            let envelope: Envelope = serde_json::from_str(text).map_err(|_| refused())?;
            let begins = envelope.seq != 0 || envelope.prev == NO_PREV;
            let follows = batch.last().is_none_or(|(_, hash)| *hash == envelope.prev);
            if envelope.visit != visit || envelope.seq != seq || !begins || !follows {
                return Ok(refused());
            }
            batch.push((envelope, sha256(text.as_bytes()).0));
        }
        let mut known = self.tables.visits.get(visit).cloned().unwrap_or_default();
        if known.device.is_empty() {
            device.clone_into(&mut known.device);
        }
        if known.device != device {
            return Ok(Reply::problem(403, "another-device", Value::Null));
        }
        let have = |known: &Visit| json!({ "next": known.events.len(), "head": known.heads.last().map_or(NO_PREV, String::as_str) });
        if sent.first > known.events.len() as u64 && self.mistake != Some(Mistake::GapTaken) {
            return Ok(Reply::problem(409, "gap", have(&known)));
        }
        let beside = |known: &Visit| {
            let mut said = have(known);
            said["kept"] = json!(sent.first + batch.len() as u64);
            Ok(Reply::problem(409, "conflict", said))
        };
        for ((envelope, hash), text) in batch.iter().zip(&sent.events) {
            let at = envelope.seq as usize;
            let again = self.mistake == Some(Mistake::BatchTwice) && at < known.events.len();
            if at < known.events.len() && !again {
                if known.heads[at] == *hash {
                    continue;
                }
                return beside(&known);
            }
            if !again
                && self.mistake != Some(Mistake::GapTaken)
                && known.heads.last().is_some_and(|h| *h != envelope.prev)
            {
                return beside(&known);
            }
            known.events.push(Rc::new(text.clone().into_bytes()));
            known.heads.push(hash.clone());
        }
        let said = have(&known);
        let keep = |tables: &mut Tables| {
            if !known.events.is_empty() {
                tables.visits.insert(visit.to_owned(), known);
            }
        };
        if self.mistake == Some(Mistake::AnswerBeforeCommit) {
            self.note(keep)?
        } else {
            self.commit(keep)?
        }
        Ok(Reply::json(200, &said))
    }

    fn seal(&mut self, device: &str, visit: &str, body: &[u8]) -> Done {
        let Ok(sent) = serde_json::from_slice::<SealIn>(body) else {
            return Ok(Reply::problem(400, "json", Value::Null));
        };
        let Some(key) = self.tables.admission.key_of(device) else {
            return Ok(Reply::problem(409, "no-key", Value::Null));
        };
        if *key != sent.public_key {
            return Ok(Reply::problem(403, "other-key", Value::Null));
        }
        let Some(sealed) = super::admission::said::<Sealed>(&sent.jws).filter(|sealed| sealed.visit == visit) else {
            return Ok(Reply::problem(422, "seal", Value::Null));
        };
        let known = self.tables.visits.get(visit).cloned().unwrap_or_default();
        if !known.device.is_empty() && known.device != device {
            return Ok(Reply::problem(403, "another-device", Value::Null));
        }
        let have = json!({ "next": known.events.len(), "head": known.heads.last().map_or(NO_PREV, String::as_str) });
        if sealed.next > known.events.len() as u64 || sealed.next == 0 {
            return Ok(Reply::problem(409, "gap", have));
        }
        if known.heads[sealed.next as usize - 1] != sealed.last {
            return Ok(Reply::problem(409, "conflict", have));
        }
        match &known.seal {
            // Only addenda come after the seal, and no phone of these worlds writes any.
            Some((_, next, _)) if sealed.next > *next => return Ok(Reply::problem(422, "no-addendum", Value::Null)),
            Some((_, next, last)) if (*next, last) != (sealed.next, &sealed.last) => {
                return Ok(Reply::problem(409, "sealed-otherwise", Value::Null));
            }
            Some(_) => {}
            None => self.commit(|tables| {
                if let Some(known) = tables.visits.get_mut(visit) {
                    known.seal = Some((sent.jws, sealed.next, sealed.last));
                }
            })?,
        }
        Ok(Reply::json(200, &json!({ "visit": visit, "sealed": true, "summary": "/s/abc" })))
    }

    fn news(&self, after: &str) -> Reply {
        let after = after.parse::<usize>().unwrap_or(0);
        let page: Vec<&String> = self.tables.withdrawn.iter().skip(after).take(2).collect();
        let next = (after + page.len()).max(after.min(self.tables.withdrawn.len()));
        let more = next < self.tables.withdrawn.len();
        let said = json!({ "cursor": next.to_string(), "more": more, "assignments": [], "withdrawn": page });
        Reply::json(200, &said)
    }

    fn answer(&mut self, call: &Call, now_ms: i64) -> Done {
        let path = call.request.path.strip_prefix("/api/v1/").unwrap_or_default().to_owned();
        let (path, query) = path.split_once('?').unwrap_or((&path, ""));
        let parts: Vec<&str> = path.split('/').collect();
        let body = match &call.request.body {
            coilside_core::sync::SendBody::Bytes(bytes) => bytes.as_slice(),
            _ => &[],
        };
        let asked = query.split_once('=').map_or("", |(_, value)| value);
        match (call.request.method.as_str(), parts.as_slice()) {
            ("POST", ["join"]) => return self.join(body, now_ms),
            ("GET", ["token"]) => return self.nonce(asked, now_ms),
            ("POST", ["token"]) => return self.token(body, now_ms),
            _ => {}
        }
        let device = self.tables.admission.caller(call.header("authorization"), now_ms)?;
        match (call.request.method.as_str(), parts.as_slice()) {
            ("PUT", ["device"]) => self.register(&device, body),
            ("GET", ["news"]) => Ok(self.news(asked)),
            ("POST", ["visits", visit, "events"]) => self.events(&device, visit, body),
            ("PUT", ["visits", visit, "seal"]) => self.seal(&device, visit, body),
            ("POST", ["photos"]) => self.announce(call, now_ms),
            ("HEAD", ["photos", digest]) => self.progress(digest, now_ms),
            ("PATCH", ["photos", digest]) => self.piece(digest, call, now_ms),
            ("GET", ["photos", digest, "receipt"]) => self.receipt(digest, now_ms),
            _ => Ok(Reply::problem(404, "address", Value::Null)),
        }
    }
}

impl Office for ModelOffice {
    fn start(&mut self, _: i64) {
        self.dies_at_write = None;
    }

    fn kill(&mut self, power: bool) {
        self.version += 1;
        self.lined_up.clear();
        if power {
            // What was noted may have gone to the disk by itself.
            if self.random.chance(500) {
                self.tables = self.lasting.clone();
            }
            self.files.without_power(&mut self.random);
        }
        self.lasting = self.tables.clone();
    }

    fn dies_at_write(&mut self, writes: Option<u32>) {
        self.dies_at_write = writes;
    }

    fn fill(&mut self, full: bool) {
        self.full = full;
    }

    fn take(&mut self, call: &Call, now_ms: i64) -> Result<Reply, Stop> {
        let is_piece = call.piece().is_some();
        if !call.is_whole() && !is_piece {
            // A body that ends too soon is nobody's request.
            return Ok(Reply::default());
        }
        let answer = self.answer(call, now_ms);
        // Behind the answer, or later still.
        if self.random.chance(500) {
            self.keep_arrived();
        }
        match answer {
            Ok(reply) | Err(No::Says(reply)) => Ok(reply.with("Coilside-Clock", now_ms)),
            Err(No::Killed) => Err(Stop::Killed),
        }
    }

    fn link(&mut self, now_ms: i64) -> Option<String> {
        let number = self.random.below(100_000_000);
        let code = format!("{:04}-{:04}", number / 10_000, number % 10_000);
        self.commit(|tables| tables.admission.add_code(&code, now_ms)).ok()?;
        Some(format!("https://office.example/join#{code}"))
    }

    fn revoke(&mut self, key: &str, _: i64) {
        // Where it cannot be written the person at the office sees it and does it again; here they leave it.
        let _ = self.commit(|tables| tables.admission.revoke(key));
    }

    fn withdraw(&mut self, id: &str, _: i64) {
        let _ = self.commit(|tables| tables.withdrawn.push(id.to_owned()));
    }

    fn disk(&mut self) -> (&OfficeDisk, u64) {
        if self.seen != self.version {
            self.seen = self.version;
            let Tables { visits, photos, withdrawn, .. } = &self.lasting;
            self.view.logs = visits.iter().map(|(visit, known)| (visit.clone(), known.events.clone())).collect();
            let seal = |known: &Visit| known.seal.as_ref().map(|(jws, ..)| jws.clone());
            self.view.seals = visits.iter().filter_map(|(visit, known)| Some((visit.clone(), seal(known)?))).collect();
            let lasts = |digest: &String, length| {
                self.files.originals.get(digest).is_some_and(|original| original.lasts(digest, length))
            };
            let safe = photos.iter().filter(|(_, photo)| photo.safe);
            self.view.photos = safe.map(|(digest, photo)| (digest.clone(), lasts(digest, photo.length))).collect();
            self.view.withdrawn = withdrawn.iter().cloned().collect();
        }
        (&self.view, self.version)
    }
}
