//! The real core behind its door, with its real store in a folder in memory, and the person who holds it.

use std::io::Cursor;
use std::rc::Rc;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use coilside_core::action::Action;
use coilside_core::effect::{Outcome, Request};
use coilside_core::field::{DoorError, Field, Setup};
use coilside_core::id::{Digest, VisitId};
use coilside_core::now::Now;
use coilside_core::screen::Turn;
use coilside_core::store::{OutboxKind, OutboxRow, StoreError};
use coilside_core::sync::{Network, SendRequest};
use p256::ecdsa::Signature;
use p256::ecdsa::signature::Signer as _;
use rusqlite::Connection;

use super::parts::{Phone, PhoneDisk, Reply, Row, State, Stop};
use super::phone::Key;
use super::rehearsal;
use crate::random::Random;

/// More than any device has.
const PAGES: u32 = 1_000_000;

/// The real core.
pub(crate) struct RealPhone {
    folder: tempfile::TempDir,
    key: Rc<Key>,
    field: Option<Field>,
    random: Random,
    actions: u64,
    full: bool,
    /// Faults of its store are over.
    calm: bool,
    view: PhoneDisk,
    version: u64,
    seen: u64,
}

impl RealPhone {
    pub(crate) fn new(key: Rc<Key>, random: Random, now: &Now) -> RealPhone {
        let mut phone = RealPhone {
            folder: coilside_tests::folder().unwrap(),
            key,
            field: None,
            random,
            actions: 0,
            full: false,
            calm: false,
            view: PhoneDisk::default(),
            version: 1,
            seen: 0,
        };
        let field = phone.open(now).unwrap();
        let assignments: Vec<_> = (1..=9).map(|n| coilside_tests::assignment(&format!("a{n}"))).collect();
        field.assigned(&assignments).unwrap();
        drop(field);
        rehearsal::set_up(&phone.db());
        phone
    }

    /// The database, while nobody has it open.
    fn db(&self) -> Connection {
        Connection::open(self.folder.path().join("field.db")).unwrap()
    }

    fn open(&mut self, now: &Now) -> Result<Field, DoorError> {
        Field::open(Setup {
            folder: self.folder.path().to_string_lossy().into_owned(),
            entropy: (0..32).map(|_| self.random.next() as u8).collect(),
            now: now.clone(),
            language: None,
            public_key: self.key.public.clone(),
        })
    }

    fn field(&self) -> &Field {
        self.field.as_ref().unwrap()
    }

    fn stopped(&self, error: &DoorError) -> Stop {
        let text = error.to_string();
        if text.contains(rehearsal::REFUSES) {
            return Stop::Killed;
        }
        let full = matches!(error, DoorError::Store(StoreError::Full));
        assert!(full && self.full, "the core fails by itself: {text}");
        Stop::Refused
    }

    fn act(&mut self, action: &Action, now: &Now) -> Result<Turn, Stop> {
        self.actions += 1;
        self.version += 1;
        let done = self.field().act(&format!("act-{}", self.actions), action, now);
        done.map_err(|error| self.stopped(&error))
    }

    fn type_in(&mut self, field: &str, text: &str, now: &Now) -> Result<(), Stop> {
        self.act(&Action::Draft { field: field.into(), text: text.into() }, now).map(drop)
    }

    /// Sees to it that a visit is open: the next one where the last is sealed.
    fn at_a_visit(&mut self, now: &Now) -> Result<(), Stop> {
        let sealed = self.disk().0.seals.clone();
        if self.field().current_visit().is_none_or(|visit| sealed.contains_key(visit.as_str())) {
            let assignment = format!("a{}", self.disk().0.logs.len() + 1);
            self.act(&Action::StartVisit { assignment }, now)?;
            self.act(&Action::Done { step: "approach".into() }, now)?;
        }
        Ok(())
    }

    fn end(&mut self, effect: &str, outcome: &Outcome, now: &Now) -> Result<(), Stop> {
        self.version += 1;
        let done = self.field().done(effect, outcome, now);
        done.map(drop).map_err(|error| self.stopped(&error))
    }

    /// Signs what the core asks for.
    fn sign_all(&mut self, now: &Now) -> Result<(), Stop> {
        let open = self.field().opened(now).map_err(|error| self.stopped(&error))?.effects;
        for effect in open {
            if let Request::SignBytes { bytes_base64 } = &effect.request {
                let signature: Signature = self.key.secret.sign(&STANDARD.decode(bytes_base64).unwrap());
                self.end(&effect.id, &Outcome::Signature { base64: STANDARD.encode(signature.to_der()) }, now)?;
            }
        }
        Ok(())
    }

    fn read(&self) -> PhoneDisk {
        let copy = coilside_tests::folder().unwrap();
        rehearsal::copy(self.folder.path(), "field.db", copy.path());
        let db = Connection::open(copy.path().join("field.db")).unwrap();
        let mut disk = PhoneDisk::default();
        let mut query = db.prepare("SELECT visit, bytes FROM event ORDER BY visit, seq").unwrap();
        let rows = query.query_map([], |row| Ok((row.get::<_, String>(0)?, row.get::<_, Vec<u8>>(1)?))).unwrap();
        for (visit, bytes) in rows.map(Result::unwrap) {
            disk.logs.entry(visit).or_default().push(Rc::new(bytes));
        }
        let mut query = db.prepare("SELECT visit, jws FROM seal").unwrap();
        disk.seals = query.query_map([], |row| Ok((row.get(0)?, row.get(1)?))).unwrap().map(Result::unwrap).collect();
        let sql = "SELECT id, kind, visit, first, count, digest, media, bytes, state FROM outbox ORDER BY id";
        let mut query = db.prepare(sql).unwrap();
        let rows = query.query_map([], |row| {
            let kind = match row.get::<_, String>(1)?.as_str() {
                "events" => OutboxKind::Events,
                "photo" => OutboxKind::Photo,
                _ => OutboxKind::Seal,
            };
            let state = match row.get::<_, String>(8)?.as_str() {
                "safe" => State::Safe,
                "aside" => State::Aside,
                "stuck" => State::Stuck,
                _ => State::Waiting,
            };
            let row = OutboxRow {
                id: row.get(0)?,
                kind,
                visit: VisitId(row.get(2)?),
                first: row.get::<_, i64>(3)? as u64,
                count: row.get::<_, i64>(4)? as u64,
                digest: Digest(row.get(5)?),
                media: row.get(6)?,
                bytes: row.get::<_, i64>(7)? as u64,
                why: String::new(),
                since_utc_ms: 0,
            };
            Ok(Row { row, state })
        });
        disk.rows = rows.unwrap().map(Result::unwrap).collect();
        // Every photograph that an event names.
        for event in disk.logs.values().flatten() {
            let event: serde_json::Value = serde_json::from_slice(event).unwrap();
            if event["kind"] == "photo-taken" {
                disk.photos.insert(event["digest"].as_str().unwrap().to_owned(), event["bytes"].as_u64().unwrap());
            }
        }
        disk
    }
}

/// A picture of so many bytes or a few more, another one for each name.
fn picture(name: &str, bytes: u64) -> Vec<u8> {
    let mut picture = Cursor::new(Vec::new());
    let seed = name.bytes().fold(7_u32, |sum, byte| sum.wrapping_mul(31).wrapping_add(u32::from(byte)));
    let colour = image::Rgb([seed as u8, (seed >> 8) as u8, (seed >> 16) as u8]);
    image::RgbImage::from_pixel(8, 8, colour).write_to(&mut picture, image::ImageFormat::Jpeg).unwrap();
    let mut picture = picture.into_inner();
    picture.resize(picture.len().max(bytes as usize), seed as u8 | 1);
    picture.extend(name.bytes().chain([0xff, 0xd9]));
    picture
}

impl Phone for RealPhone {
    fn start(&mut self, now: &Now) {
        self.version += 1;
        let rows = (!self.calm && self.random.chance(300)).then(|| self.random.below(60) as u32);
        rehearsal::let_write(&self.db(), rows);
        let opened = match self.open(now) {
            Ok(field) => Ok(field),
            Err(error) => {
                assert!(error.to_string().contains(rehearsal::REFUSES), "it does not open: {error}");
                rehearsal::let_write(&self.db(), None);
                self.open(now)
            }
        };
        let field = opened.unwrap();
        field.limit_pages(if self.full { 1 } else { PAGES }).unwrap();
        self.field = Some(field);
    }

    fn kill(&mut self) {
        self.version += 1;
        let field = self.field.take();
        rehearsal::killed(self.folder.path(), "field.db", || drop(field));
    }

    /// The database is this program's alone: how many rows it can write is said at its start.
    fn dies_at_write(&mut self, writes: Option<u32>) {
        self.calm |= writes.is_none();
    }

    fn fill(&mut self, full: bool) {
        self.full = full;
        if let Some(field) = &self.field {
            field.limit_pages(if full { 1 } else { PAGES }).unwrap();
        }
    }

    fn requests(&mut self, network: Network, now: &Now) -> Result<Vec<SendRequest>, Stop> {
        if let Some(asked) = self.field().next_sign() {
            let signature: Signature = self.key.secret.sign(&asked.bytes);
            self.field().signed(&asked.id, &STANDARD.encode(signature.to_bytes())).unwrap();
        }
        let requests = self.field().next_requests(network, now);
        if requests.as_ref().is_ok_and(|requests| !requests.is_empty()) {
            self.version += 1;
        }
        requests.map_err(|error| self.stopped(&error))
    }

    fn answered(&mut self, id: &str, reply: &Reply, now: &Now) -> Result<(), Stop> {
        self.version += 1;
        let done = self.field().answered(id, reply.status, &reply.headers, &reply.body, now);
        done.map_err(|error| self.stopped(&error))
    }

    fn write(&mut self, text: &str, now: &Now) -> Result<(), Stop> {
        self.at_a_visit(now)?;
        self.type_in("finding", text, now)?;
        self.act(&Action::Choose { field: "severity".into(), option: "note".into() }, now)?;
        self.act(&Action::AddFinding, now)?;
        let wanted = format!("\"{text}\"");
        let is_there = self.disk().0.logs.values().flatten().any(|e| String::from_utf8_lossy(e).contains(&wanted));
        // A visit that is being closed takes nothing more, and says so on its screen.
        if is_there { Ok(()) } else { Err(Stop::Refused) }
    }

    fn shoot(&mut self, name: &str, bytes: u64, now: &Now) -> Result<(), Stop> {
        self.at_a_visit(now)?;
        let turn = self.act(&Action::Shoot { slot: "casing-before".into() }, now)?;
        let Some(effect) = turn.effects.first() else { return Err(Stop::Refused) };
        std::fs::write(self.field().incoming(&effect.id).unwrap(), picture(name, bytes)).unwrap();
        self.end(&effect.id, &Outcome::Photo { place: None }, now)
    }

    fn seal(&mut self, now: &Now) -> Result<(), Stop> {
        self.at_a_visit(now)?;
        self.type_in("break-off", "Storm", now)?;
        self.act(&Action::BreakOff, now)?;
        self.act(&Action::Seal, now)?;
        self.sign_all(now)
    }

    fn hurry(&mut self, now: &Now) -> Result<(), Stop> {
        self.act(&Action::SendNow, now).map(drop)
    }

    fn join(&mut self, link: &str, now: &Now) -> Result<(), Stop> {
        self.act(&Action::Go { to: "join".into() }, now)?;
        self.type_in("join-code", link, now)?;
        self.act(&Action::Join, now).map(drop)
    }

    fn is_out(&mut self, now: &Now) -> bool {
        let Ok(turn) = self.act(&Action::Go { to: "outbox".into() }, now) else { return false };
        let shown = format!("{:?}", turn.screen);
        let words = [
            "This device has not joined an office",
            "The office lets this device in no more",
            "The office does not know this device.",
        ];
        words.iter().any(|words| shown.contains(words))
    }

    fn disk(&mut self) -> (&PhoneDisk, u64) {
        if self.seen != self.version {
            self.seen = self.version;
            self.view = self.read();
        }
        (&self.view, self.version)
    }
}
