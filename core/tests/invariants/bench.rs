//! A door in a folder of its own, a clock, a key, and an invented assignment.

use std::collections::VecDeque;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use coilside_core::action::Action;
use coilside_core::effect::{Effect, Outcome, Request};
use coilside_core::field::{DoorError, Field, Setup};
use coilside_core::id::VisitId;
use coilside_core::now::Now;
use coilside_core::round::{AssignedUnit, Assignment, Owner, Site};
use coilside_core::screen::Turn;
use coilside_core::store::Store;
use coilside_core::sync::{Network, SendRequest};
use coilside_core::visit::apply::replay;
use coilside_core::visit::event::Event;
use coilside_core::visit::state::Visit;
use p256::ecdsa::signature::Signer as _;
use p256::ecdsa::{Signature, SigningKey};
use tempfile::TempDir;

pub(crate) struct Bench {
    pub(crate) folder: TempDir,
    pub(crate) now: Now,
    pub(crate) network: Network,
    /// Requests that went out beside one that was looked at already.
    pub(crate) beside: VecDeque<SendRequest>,
    field: Option<Field>,
    count: u32,
}

pub(crate) fn key(byte: u8) -> SigningKey {
    SigningKey::from_slice(&[byte; 32]).unwrap()
}

pub(crate) fn public(key: &SigningKey) -> Vec<u8> {
    key.verifying_key().to_sec1_point(false).as_bytes().to_vec()
}

pub(crate) fn assignment(id: &str, letters: &[&str]) -> Assignment {
    let unit = |letter: &&str| AssignedUnit {
        letter: (*letter).to_owned(),
        unit: format!("U-{letter}"),
        maker: "Invented".into(),
        model: "Model One".into(),
        serial: format!("AB-{letter}"),
        pack: "add-on-water-heater".into(),
        ..AssignedUnit::default()
    };
    Assignment {
        id: id.into(),
        due: "2026-05-04".into(),
        reason: "Yearly service".into(),
        site: Site {
            name: "Mill house".into(),
            address: "1 Mill Lane, Lower Weir".into(),
            latitude_deg: 1.5,
            longitude_deg: 2.5,
            note: String::new(),
        },
        owner: Owner { name: "A. Weaver".into(), phone: "555 0100".into(), language: "en".into() },
        units: letters.iter().map(unit).collect(),
        ..Assignment::default()
    }
}

impl Bench {
    /// A door with the assignments `a1` and `a2` and no visit.
    pub(crate) fn new() -> Bench {
        let memory = std::path::Path::new("/dev/shm");
        let folder = if memory.is_dir() { tempfile::tempdir_in(memory) } else { tempfile::tempdir() }.unwrap();
        let now = Now { utc_ms: 1_777_881_600_000, offset_min: 120, mono_ms: 1_000, mono_epoch: "boot".into() };
        let (network, beside) = (Network::default(), VecDeque::new());
        let mut bench = Bench { folder, now, network, beside, field: None, count: 0 };
        bench.reopen().unwrap();
        bench.field().assigned(&[assignment("a1", &["A"]), assignment("a2", &["A"])]).unwrap();
        bench
    }

    /// With the visit of `a1` begun and its first step done: the place is still asked for.
    pub(crate) fn begun() -> Bench {
        let mut bench = Bench::new();
        bench.act(&Action::StartVisit { assignment: "a1".into() }).unwrap();
        bench.act(&Action::Done { step: "approach".into() }).unwrap();
        bench
    }

    pub(crate) fn field(&self) -> &Field {
        self.field.as_ref().unwrap()
    }

    pub(crate) fn close(&mut self) {
        self.field = None;
    }

    pub(crate) fn reopen(&mut self) -> Result<Turn, DoorError> {
        self.field = None;
        self.beside.clear();
        let field = Field::open(Setup {
            folder: self.folder.path().to_string_lossy().into_owned(),
            entropy: self.folder.path().to_string_lossy().bytes().cycle().take(64).collect(),
            now: self.now.clone(),
            language: None,
            public_key: public(&key(11)),
        })?;
        let turn = field.opened(&self.now)?;
        self.field = Some(field);
        Ok(turn)
    }

    pub(crate) fn pass_ms(&mut self, ms: i64) {
        self.now.utc_ms += ms;
        self.now.mono_ms += ms;
    }

    pub(crate) fn act(&mut self, action: &Action) -> Result<Turn, DoorError> {
        self.count += 1;
        self.act_as(&format!("act-{}", self.count), action)
    }

    pub(crate) fn act_as(&self, id: &str, action: &Action) -> Result<Turn, DoorError> {
        self.field().act(id, action, &self.now)
    }

    pub(crate) fn draft(&mut self, field: &str, text: &str) {
        self.act(&Action::Draft { field: field.into(), text: text.into() }).unwrap();
    }

    pub(crate) fn done(&self, effect: &str, outcome: &Outcome) -> Result<Turn, DoorError> {
        self.field().done(effect, outcome, &self.now)
    }

    pub(crate) fn open_effects(&self) -> Vec<Effect> {
        self.field().opened(&self.now).unwrap().effects
    }

    pub(crate) fn id(&self) -> VisitId {
        self.field().current_visit().unwrap()
    }

    pub(crate) fn events(&self) -> Vec<Vec<u8>> {
        self.field().events(&self.id()).unwrap()
    }

    pub(crate) fn last_event(&self) -> Event {
        let events = self.events();
        Event::from_bytes(events.last().unwrap(), 0).unwrap()
    }

    pub(crate) fn visit(&self) -> Visit {
        replay(&self.id(), self.events().iter().map(Vec::as_slice)).unwrap()
    }

    /// Closes the door and opens its store.
    pub(crate) fn store(&mut self) -> Store {
        self.close();
        Store::open(self.folder.path()).unwrap()
    }

    /// Closes the door and opens the database with SQLite alone.
    pub(crate) fn sqlite(&mut self) -> rusqlite::Connection {
        self.close();
        rusqlite::Connection::open(self.folder.path().join("field.db")).unwrap()
    }

    /// Stops the visit and asks for the signature.
    pub(crate) fn freeze(&mut self) -> Effect {
        self.draft("break-off", "Storm");
        self.act(&Action::BreakOff).unwrap();
        self.act(&Action::Seal).unwrap().effects.remove(0)
    }

    /// Stops and seals the visit.
    pub(crate) fn seal(&mut self) {
        let sign = self.freeze();
        self.done(&sign.id, &signature(&sign, &key(11))).unwrap();
    }
}

/// The signature that an effect asks for.
pub(crate) fn signature(effect: &Effect, key: &SigningKey) -> Outcome {
    let Request::SignBytes { bytes_base64 } = &effect.request else { panic!("{effect:?}") };
    let signature: Signature = key.sign(&STANDARD.decode(bytes_base64).unwrap());
    Outcome::Signature { base64: STANDARD.encode(signature.to_der()) }
}
