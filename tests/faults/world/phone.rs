//! A phone as a model around the real engine: `Sender` and `meaning` over a store of rows, called in the order in which
//! `core/src/field/send.rs` calls them.

use std::path::PathBuf;
use std::rc::Rc;

use base64::Engine as _;
use base64::engine::general_purpose::{STANDARD, URL_SAFE_NO_PAD};
use coilside_core::now::Now;
use coilside_core::store::{OutboxKind, OutboxRow};
use coilside_core::sync::{
    Access, Answer, EVENTS_MOST, Hindrance, Meaning, Network, Payload, Policy, SendRequest, Sender, Stage, Task,
    Waiting, What, meaning, read_join, what_of,
};
use coilside_core::visit::event::{hex, sha256};
use p256::ecdsa::signature::Signer as _;
use p256::ecdsa::{Signature, SigningKey};
use serde_json::json;

use super::mistakes::Mistake;
use super::parts::{Phone, PhoneDisk, Reply, Row, State, Stop};
use super::store::Store;
use crate::random::Random;

/// Which rows of the outbox are meant.
type Which<'a> = Box<dyn Fn(&Row) -> bool + 'a>;

/// The key of a phone: made once, for it takes a while.
pub(crate) struct Key {
    pub(crate) secret: SigningKey,
    pub(crate) public: Vec<u8>,
    pub(crate) hex: String,
}

impl Key {
    pub(crate) fn of(number: u8) -> Key {
        let secret = SigningKey::from_slice(&[number; 32]).unwrap();
        let public = secret.verifying_key().to_sec1_point(false).as_bytes().to_vec();
        Key { secret, hex: hex(&public).0, public }
    }
}

/// A phone.
pub(crate) struct ModelPhone {
    key: Rc<Key>,
    store: Store,
    sender: Sender,
    random: Random,
    mistake: Option<Mistake>,
    visits: u32,
    /// The last request about a photograph.
    last_photo: String,
    /// It was started with an office and a token.
    scripted: bool,
}

impl ModelPhone {
    pub(crate) fn new(key: Rc<Key>, random: Random, mistake: Option<Mistake>, scripted: bool) -> ModelPhone {
        let (store, sender) = (Store::default(), Sender::default());
        ModelPhone { key, store, sender, random, mistake, visits: 0, last_photo: String::new(), scripted }
    }

    fn has(&self, mistake: Mistake) -> bool {
        self.mistake == Some(mistake)
    }

    fn visit(&mut self) -> (String, bool) {
        match &self.store.visit {
            Some(visit) => (visit.clone(), false),
            None => {
                self.visits += 1;
                (format!("v-{}-{}", &self.key.hex[2..8], self.visits), true)
            }
        }
    }

    fn payload(&self, row: &OutboxRow, from: u64) -> Payload {
        let visit = row.visit.as_str();
        match row.kind {
            OutboxKind::Events => {
                let log = self.store.disk.logs.get(visit).map_or(&[][..], Vec::as_slice);
                let events = log.iter().skip(from as usize).take(EVENTS_MOST);
                Payload::Events(events.map(|event| event.to_vec()).collect())
            }
            OutboxKind::Seal => Payload::Seal(self.store.disk.seals.get(visit).cloned().unwrap_or_default()),
            OutboxKind::Photo => Payload::Original(PathBuf::from(format!("originals/{}", row.digest))),
        }
    }

    fn take_meaning(&mut self, row: &OutboxRow, meaning: &Meaning) -> Result<(), Stop> {
        let (id, visit) = (row.id, row.visit.as_str());
        let (to, which): (State, Which<'_>) = match meaning {
            Meaning::EventsSafe { next } => (
                State::Safe,
                Box::new(move |r| {
                    r.is(OutboxKind::Events, visit) && r.state != State::Safe && r.row.first + r.row.count <= *next
                }),
            ),
            Meaning::EventsAgain { next } => (
                State::Waiting,
                Box::new(move |r| r.is(OutboxKind::Events, visit) && r.row.first + r.row.count > *next),
            ),
            Meaning::Aside { .. } if row.kind == OutboxKind::Seal => {
                (State::Aside, Box::new(move |r| r.row.id == id && r.state != State::Safe))
            }
            Meaning::Aside { kept } => (
                State::Aside,
                Box::new(move |r| {
                    r.is(OutboxKind::Events, visit) && r.state != State::Safe && r.row.first + r.row.count <= *kept
                }),
            ),
            Meaning::Safe { .. } => (State::Safe, Box::new(move |r| r.row.id == id)),
            Meaning::Stuck(_) => (State::Stuck, Box::new(move |r| r.row.id == id && r.state == State::Waiting)),
            _ => return Ok(()),
        };
        self.store.write(|store| store.set(&to, which))
    }

    /// Keeps what an answer changed of the engine itself, each in a write of its own.
    fn after_answer(&mut self, meaning: &Meaning, before: (Option<Access>, bool, Option<String>)) -> Result<(), Stop> {
        let (access, revoked, cursor) = before;
        if self.sender.access() != access.as_ref() {
            let text = self.sender.access().and_then(|access| serde_json::to_string(access).ok());
            self.store.write(|store| store.access = text)?;
        }
        if self.sender.is_revoked() != revoked {
            let revoked = self.sender.is_revoked();
            self.store.write(|store| store.revoked = revoked)?;
            if revoked && self.has(Mistake::RevokedDrops) {
                self.store.write(|store| store.disk.rows.retain(|row| row.state != State::Waiting))?;
            }
        }
        if self.sender.cursor() != cursor {
            let cursor = self.sender.cursor();
            self.store.write(|store| store.cursor = cursor)?;
        }
        match meaning {
            Meaning::Safe { .. } | Meaning::EventsSafe { .. } | Meaning::Stuck(_)
                if self.store.next_small(false).is_empty() && self.store.next_photos().is_empty() =>
            {
                self.sender.emptied();
            }
            Meaning::Joined(_) => {
                self.store.write(|store| store.set(&State::Waiting, |row| row.state == State::Stuck))?;
            }
            _ => {}
        }
        Ok(())
    }

    /// What a wrong phone takes an answer for.
    fn mistaken(&self, what: &What, row: Option<&OutboxRow>, reply: &Reply) -> Option<Meaning> {
        let row = row?;
        let is_page = reply.status == 200 && reply.header("content-type") == Some("text/html");
        match (self.mistake?, what) {
            (Mistake::PageIsSafe, What::Events(..)) if is_page => {
                Some(Meaning::EventsSafe { next: row.first + row.count })
            }
            (Mistake::PageIsSafe, _) if is_page => Some(Meaning::Safe { summary: None }),
            (Mistake::PhotoSafeEarly, What::Photo(_, Stage::Send(_))) if reply.status == 204 => {
                Some(Meaning::Safe { summary: None })
            }
            _ => None,
        }
    }

    /// What a wrong phone makes of an answer before it is read.
    fn bent(&self, what: &What, row: Option<&OutboxRow>, reply: &Reply) -> Reply {
        let mut reply = reply.clone();
        if self.has(Mistake::RetryAfterForgotten) {
            reply.headers.retain(|(name, _)| !name.eq_ignore_ascii_case("retry-after"));
        }
        if let (true, 0, What::Photo(_, Stage::Send(from)), Some(row)) =
            (self.has(Mistake::OffsetBelieved), reply.status, what, row)
        {
            let to = row.bytes.min(from + (256 << 10));
            return Reply { status: 204, headers: vec![("Upload-Offset".into(), to.to_string())], body: Vec::new() };
        }
        reply
    }
}

impl Phone for ModelPhone {
    fn start(&mut self, _: &Now) {
        self.store.dies_at_write = None;
        let access = self.store.access.as_ref().and_then(|text| serde_json::from_str(text).ok());
        self.sender = Sender::new(access, self.store.revoked, Policy::default(), self.store.cursor.clone());
    }

    fn kill(&mut self) {
        self.sender = Sender::default();
    }

    fn dies_at_write(&mut self, writes: Option<u32>) {
        self.store.dies_at_write = writes;
    }

    fn fill(&mut self, full: bool) {
        self.store.full = full;
    }

    fn requests(&mut self, network: Network, now: &Now) -> Result<Vec<SendRequest>, Stop> {
        if let Some(asked) = self.sender.sign_asked() {
            let signature: Signature = self.key.secret.sign(&asked.bytes);
            let signature = STANDARD.encode(signature.to_bytes());
            self.sender.signed(&asked.id, &signature, &self.key.public).unwrap();
        }
        if !self.sender.is_free(network, now) {
            return Ok(Vec::new());
        }
        let small = self.store.next_small(self.has(Mistake::GapTaken));
        let waiting = Waiting { small, photos: self.store.next_photos(), ..Waiting::default() };
        let key = Rc::clone(&self.key);
        let mut requests = Vec::new();
        for task in self.sender.next(&waiting, &key.hex, network, now) {
            match task {
                Task::Ask(request) => requests.push(request),
                // Small pictures make nothing safe; there are none in this world.
                Task::Preview(_) => {}
                Task::Row { row, from } => {
                    let payload = self.payload(&row, from);
                    requests.extend(self.sender.request(&row, from, payload, &key.hex, network, now));
                    if self.has(Mistake::RowGoneWhenSent) {
                        self.store.write(|store| store.disk.rows.retain(|other| other.row.id != row.id))?;
                    }
                }
            }
        }
        if let Some(photo) = requests.iter().find(|request| request.id.starts_with("photo:")) {
            self.last_photo.clone_from(&photo.id);
        }
        Ok(requests)
    }

    fn answered(&mut self, id: &str, reply: &Reply, now: &Now) -> Result<(), Stop> {
        let Some(what) = what_of(id) else { return Ok(()) };
        let row = what.row().and_then(|number| self.store.of_number(number));
        let reply = self.bent(&what, row.as_ref(), reply);
        let Reply { status, headers, body } = &reply;
        let answer = Answer { status: *status, headers, body, came_utc_ms: now.utc_ms };
        let head = |next| row.as_ref().and_then(|row| self.store.head_before(&row.visit, next));
        let meaning =
            self.mistaken(&what, row.as_ref(), &reply).unwrap_or_else(|| meaning(&what, row.as_ref(), &answer, head));
        let chance = self.random.next() as u32;
        let before = (self.sender.access().cloned(), self.sender.is_revoked(), self.sender.cursor());
        let mut id = id.to_owned();
        if self.has(Mistake::LateAnswerMoves) && !self.sender.awaits(&id) && matches!(meaning, Meaning::Stage(_)) {
            // It is taken for the answer to whatever of a photograph is out now.
            id.clone_from(&self.last_photo);
        }
        if self.sender.awaits(&id) || meaning.is_lasting() {
            if let Some(row) = &row {
                self.take_meaning(row, &meaning)?;
            }
            if let Meaning::News(news) = &meaning
                && self.sender.awaits(&id)
            {
                if self.has(Mistake::CursorFirst) {
                    self.store.write(|store| store.cursor = Some(news.cursor.clone()))?;
                }
                self.store.write(|store| store.disk.withdrawn.extend(news.withdrawn.iter().cloned()))?;
            }
        }
        if !self.sender.heard(&id, row.as_ref(), &answer, &meaning, chance, now) {
            return Ok(());
        }
        self.after_answer(&meaning, before)
    }

    fn write(&mut self, text: &str, _: &Now) -> Result<(), Stop> {
        let (visit, fresh) = self.visit();
        let opened = format!("opened by {text}");
        self.store.write(|store| {
            store.visit = Some(visit.clone());
            let texts = if fresh { vec![opened.as_str(), text] } else { vec![text] };
            store.add_events(&visit, &texts);
        })
    }

    fn shoot(&mut self, name: &str, bytes: u64, _: &Now) -> Result<(), Stop> {
        let (visit, _) = self.visit();
        let digest = sha256(format!("{name} of {bytes}").as_bytes()).0;
        self.store.write(|store| {
            store.visit = Some(visit.clone());
            store.add_events(&visit, &[&format!("photo {digest}")]);
            store.add_photo(&visit, &digest, bytes);
        })
    }

    fn seal(&mut self, now: &Now) -> Result<(), Stop> {
        let Some(visit) = self.store.visit.clone() else { return Ok(()) };
        let log = &self.store.disk.logs[&visit];
        let last = log.last().map(|last| sha256(last).0);
        let said =
            json!({ "visit": visit, "next": log.len(), "last": last, "complete": true, "at_utc_ms": now.utc_ms });
        let jws = format!("e30.{}.AA", URL_SAFE_NO_PAD.encode(said.to_string()));
        self.store.write(|store| {
            store.visit = None;
            store.add_seal(&visit, &jws);
        })
    }

    fn hurry(&mut self, _: &Now) -> Result<(), Stop> {
        self.store.write(|store| store.set(&State::Waiting, |row| row.state == State::Stuck))?;
        self.sender.hurry();
        Ok(())
    }

    fn join(&mut self, link: &str, _: &Now) -> Result<(), Stop> {
        self.store.write(|_| ())?;
        self.sender.join(read_join(link, "", "Phone").unwrap());
        Ok(())
    }

    fn is_out(&mut self, now: &Now) -> bool {
        let standing = self.sender.standing(now);
        let lost = standing.revoked
            || standing.hindrance == Some(Hindrance::NoToken)
            || (standing.office.is_none() && !self.scripted);
        lost && !standing.joining
    }

    fn disk(&mut self) -> (&PhoneDisk, u64) {
        (&self.store.disk, self.store.version)
    }
}
