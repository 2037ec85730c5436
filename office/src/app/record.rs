//! One visit as the office can vouch for it: what its events mean, and whether chain, seal and photographs hold.

use std::collections::{BTreeMap, BTreeSet};

use coilside_core::id;
use coilside_core::now::Now;
use coilside_core::record::seal as core_seal;
use coilside_core::record::summary::SealMarks;
use coilside_core::round::Assignment;
use coilside_core::visit::apply::apply;
use coilside_core::visit::decide::{Gap, gaps};
use coilside_core::visit::event::ChainEnd;
use coilside_core::visit::state::{Run, Visit};

use super::clocks::{self, Corrections};
use super::customer::{self, Stand};
use super::library::{Found, Library};
use crate::ids::{Digest, VisitId};
use crate::store::devices::DeviceId;
use crate::store::events::Beside;
use crate::store::reviews::{self, Review};
use crate::store::seals::Seal;
use crate::store::vouchers::{self, LaterSeal};
use crate::store::{Store, StoreError, assignments, devices, events, handovers, photos, seals, summaries};
use rusqlite::Connection;

/// A visit with everything that was checked about it just now.
pub(crate) struct Record<'a> {
    pub(crate) id: VisitId,
    pub(crate) visit: Visit,
    pub(crate) chain: Chain,
    pub(crate) seal: SealCheck,
    /// Contradicting events that are kept beside the chain.
    pub(crate) branches: u64,
    /// Whose device it came from.
    pub(crate) technician: String,
    pub(crate) assignment: Option<Assignment>,
    pub(crate) pack: Option<Found<'a>>,
    /// The visit's photographs whose originals are here.
    pub(crate) safe: BTreeSet<id::Digest>,
    /// Those of which only a small picture is here, sent ahead.
    pub(crate) ahead: BTreeSet<id::Digest>,
    /// The files with the customer's name and signature that its events name, in order.
    pub(crate) customer: Vec<(id::Digest, Stand)>,
    pub(crate) summary_token: Option<String>,
    /// By what the device's clock showed: how far it was behind, where that is worth a word.
    pub(crate) corrections: Corrections,
    /// What was said about it at the office, the oldest first.
    pub(crate) reviews: Vec<Review>,
    /// What is kept beside the chain, by whose device.
    pub(crate) beside: Vec<(String, Vec<Beside>)>,
    /// Who sealed beside the chain, and over how many events.
    pub(crate) beside_seals: Vec<(String, u64)>,
    /// When which device handed it to which, by name.
    pub(crate) handed: Vec<(i64, String, String)>,
}

/// Whether each stored event follows the one before.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Chain {
    /// All of them do.
    Holds { events: u64 },
    /// From this one on it cannot be vouched for.
    Breaks { at: u64, why: String },
}

/// Whether the record is sealed, and by whom.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum SealCheck {
    /// No seal has come.
    None,
    /// Signature and events fit, under the key that the device registered here.
    Holds { fingerprint: String, marks: SealMarks, received_ms: i64, later_events: u64 },
    /// It came, but does not hold now: the database was changed from outside.
    Fails { why: String },
}

/// How far a visit is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum State {
    InWork,
    /// Frozen, its signature has not come.
    Unsigned,
    Complete,
    Incomplete,
    BrokenOff,
}

impl State {
    pub(crate) const ALL: [State; 5] =
        [State::InWork, State::Unsigned, State::Complete, State::Incomplete, State::BrokenOff];

    pub(crate) const fn name(self) -> &'static str {
        match self {
            State::InWork => "in-work",
            State::Unsigned => "unsigned",
            State::Complete => "complete",
            State::Incomplete => "incomplete",
            State::BrokenOff => "broken-off",
        }
    }

    pub(crate) fn parse(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|state| state.name() == name)
    }
}

impl Record<'_> {
    pub(crate) fn state(&self) -> State {
        let sealed = !matches!(self.seal, SealCheck::None);
        match (&self.visit.sealing, sealed) {
            _ if self.visit.broken_off.is_some() => State::BrokenOff,
            (None, false) => State::InWork,
            // Sealed, but the events cannot be followed to where they say so.
            (None, true) => State::Incomplete,
            (Some(_), false) => State::Unsigned,
            (Some(sealing), true) if sealing.complete => State::Complete,
            (Some(_), true) => State::Incomplete,
        }
    }

    /// Every event follows, and the seal fits them.
    pub(crate) fn is_sealed_and_holds(&self) -> bool {
        matches!(self.chain, Chain::Holds { .. }) && matches!(self.seal, SealCheck::Holds { .. })
    }

    /// Something that a person must look at before trusting the record.
    pub(crate) fn trouble(&self) -> bool {
        matches!(self.chain, Chain::Breaks { .. }) || matches!(self.seal, SealCheck::Fails { .. }) || self.branches > 0
    }

    /// What each unit's record lacks. Without the pack only the device's own lines are there, at the seal.
    pub(crate) fn gaps(&self) -> Vec<(&id::Letter, Vec<Gap>)> {
        let Some(found) = self.pack else { return Vec::new() };
        self.visit.runs.iter().map(|(letter, run)| (letter, gaps(&found.pack.pack, run))).collect()
    }

    /// How many things are missing. While the work goes on, steps that are not done yet are not counted as missing.
    pub(crate) fn missing(&self) -> usize {
        match (&self.visit.sealing, self.pack) {
            (Some(sealing), _) => sealing.missing.len(),
            (None, None) => 0,
            (None, Some(_)) => {
                let told = |gap: &&Gap| match gap {
                    Gap::StepOpen { .. } => false,
                    Gap::Shot { reason, .. } | Gap::Reading { reason, .. } => reason.is_some(),
                    Gap::StepSkipped { .. } | Gap::SettingLeft { .. } | Gap::BrokenOff { .. } => true,
                };
                self.gaps().iter().map(|(_, gaps)| gaps.iter().filter(told).count()).sum()
            }
        }
    }

    /// Digests of all photographs of the visit, once each.
    pub(crate) fn digests(&self) -> BTreeSet<id::Digest> {
        self.visit.photos().map(|(_, _, photo)| photo.digest.clone()).collect()
    }

    /// Photographs that the log names and that are not here yet.
    pub(crate) fn waiting(&self) -> usize {
        self.digests().difference(&self.safe).count()
    }

    /// How it stands with the customer's name and signature; none where the record names none.
    pub(crate) fn customer_file(&self) -> Option<Stand> {
        let shown = self.visit.shown.as_ref()?;
        self.customer.iter().find(|(digest, _)| digest == shown).map(|(_, file)| *file)
    }

    /// A file that the log names has not come yet.
    pub(crate) fn customer_waits(&self) -> bool {
        self.customer.iter().any(|(_, file)| *file == Stand::Waits)
    }

    /// When something was by the office's clock, where the device's was wrong by more than is worth a word.
    pub(crate) fn corrected_ms(&self, at: &Now) -> Option<i64> {
        self.corrections.get(&at.utc_ms).map(|behind_ms| at.utc_ms.saturating_add(*behind_ms))
    }

    /// The units in words: letter and label.
    pub(crate) fn units(&self) -> String {
        let unit = |(letter, run): (&id::Letter, &Run)| format!("{letter} {}", run.label).trim_end().to_owned();
        self.visit.runs.iter().map(unit).collect::<Vec<_>>().join(" · ")
    }
}

/// Reads a visit and checks it. None where there is no such visit.
pub(crate) fn read<'a>(store: &Store, library: &'a Library, id: &VisitId) -> Result<Option<Record<'a>>, StoreError> {
    let mut record = store.read(|db| read_from(db, library, id))?;
    if let Some(record) = &mut record {
        let is_ahead = |name: &&id::Digest| {
            Digest::parse(name.as_str()).is_ok_and(|digest| store.folder.sent_ahead(digest).exists())
        };
        record.ahead = record.digests().difference(&record.safe).filter(is_ahead).cloned().collect();
    }
    Ok(record)
}

/// The same inside a transaction, without looking at what was sent ahead.
pub(crate) fn read_from<'a>(
    db: &Connection,
    library: &'a Library,
    id: &VisitId,
) -> Result<Option<Record<'a>>, StoreError> {
    let Some(head) = events::head(db, id)? else { return Ok(None) };
    let stored = events::all(db, id)?;
    let Replayed { visit, chain, hashes, shown } = replay(id, &stored, &head);
    let device = devices::by_id(db, head.device)?;
    let registered = device.as_ref().and_then(|device| device.public_key.clone());
    let seal = match seals::of(db, id)? {
        None => SealCheck::None,
        Some(seal) => check(&seal, &vouchers::later_seals(db, id)?, registered.as_deref(), &hashes),
    };
    let assignment = assignments::of(db, &visit.assignment)?;
    let mut safe = BTreeSet::new();
    for (_, _, photo) in visit.photos() {
        let Ok(digest) = Digest::parse(photo.digest.as_str()) else { continue };
        if photos::of(db, digest)?.is_some_and(|photo| photo.safe) {
            safe.insert(photo.digest.clone());
        }
    }
    let customer = of_customer(db, &visit)?;
    Ok(Some(Record {
        id: id.clone(),
        chain,
        seal,
        branches: events::branch_count(db, id)?,
        technician: device.map(|device| device.name).unwrap_or_default(),
        assignment: assignment.and_then(|doc| serde_json::from_str(&doc).ok()),
        pack: library.pack_of(&visit),
        safe,
        ahead: BTreeSet::new(),
        customer,
        summary_token: summaries::token_of(db, id)?,
        corrections: clocks::corrections(db, id, head.device, &shown)?,
        reviews: reviews::of(db, id)?,
        beside: beside(db, id)?,
        beside_seals: beside_seals(db, id)?,
        handed: handed(db, id)?,
        visit,
    }))
}

fn of_customer(db: &Connection, visit: &Visit) -> Result<Vec<(id::Digest, Stand)>, StoreError> {
    let stands = |named: &id::Digest| {
        let file = Digest::parse(named.as_str()).map_or(Ok(Stand::Waits), |digest| customer::stands(db, digest))?;
        Ok((named.clone(), file))
    };
    visit.shown_files.iter().map(stands).collect()
}

/// What is kept beside the chain, by whose device.
fn beside(db: &Connection, id: &VisitId) -> Result<Vec<(String, Vec<Beside>)>, StoreError> {
    let mut by_device: BTreeMap<DeviceId, Vec<Beside>> = BTreeMap::new();
    for event in events::beside(db, id)? {
        by_device.entry(event.device).or_default().push(event);
    }
    by_device.into_iter().map(|(device, events)| Ok((named(db, device)?, events))).collect()
}

fn beside_seals(db: &Connection, id: &VisitId) -> Result<Vec<(String, u64)>, StoreError> {
    handovers::seals(db, id)?.into_iter().map(|(device, covers)| Ok((named(db, device)?, covers))).collect()
}

fn handed(db: &Connection, id: &VisitId) -> Result<Vec<(i64, String, String)>, StoreError> {
    let all = handovers::of(db, id)?.into_iter();
    all.map(|handover| Ok((handover.at_ms, named(db, handover.from)?, named(db, handover.to)?))).collect()
}

fn named(db: &Connection, device: DeviceId) -> Result<String, StoreError> {
    Ok(devices::by_id(db, device)?.map(|device| device.name).unwrap_or_default())
}

/// What the events mean up to the first that does not follow, and the hashes of those that do.
struct Replayed {
    visit: Visit,
    chain: Chain,
    hashes: Vec<id::Digest>,
    /// What the clock showed at each of them.
    shown: Vec<i64>,
}

fn replay(id: &VisitId, stored: &[Vec<u8>], head: &events::Head) -> Replayed {
    let name = id::VisitId(id.to_string());
    let mut visit = Visit { id: name.clone(), ..Visit::default() };
    let (mut end, mut hashes) = (ChainEnd::default(), Vec::with_capacity(stored.len()));
    let mut shown = Vec::with_capacity(stored.len());
    for bytes in stored {
        match end.follow(&name, bytes) {
            Ok(event) => {
                shown.push(event.time.utc_ms);
                visit = apply(visit, &event);
            }
            Err(why) => {
                let chain = Chain::Breaks { at: end.next, why: why.to_string() };
                return Replayed { visit, chain, hashes, shown };
            }
        }
        visit.end = end.clone();
        hashes.push(end.last.clone());
    }
    if end.next != head.next || end.last.as_str() != head.hash.to_string() {
        let why = "the last event is not the one that was acknowledged".to_owned();
        return Replayed { visit, chain: Chain::Breaks { at: end.next, why }, hashes, shown };
    }
    Replayed { visit, chain: Chain::Holds { events: end.next }, hashes, shown }
}

/// Checks a stored seal anew, against the events as they are now: nothing that the database says about it is taken at
/// its word.
fn check(seal: &Seal, later: &[LaterSeal], registered: Option<&[u8]>, hashes: &[id::Digest]) -> SealCheck {
    let fails = |why: &str| SealCheck::Fails { why: why.to_owned() };
    if registered != Some(seal.public_key.as_slice()) {
        return fails("its key is not the one that the device registered");
    }
    let payload = match core_seal::open(&seal.jws, &seal.public_key) {
        Ok(payload) => payload,
        Err(why) => return fails(&why.to_string()),
    };
    // Addenda are under seals of their own.
    let mut covered = payload.next;
    for addendum in later {
        match core_seal::open(&addendum.jws, &seal.public_key) {
            Err(why) => return fails(&why.to_string()),
            Ok(said) if hash_before(said.next, hashes).is_none_or(|last| last.as_str() != said.last) => {
                return fails("the seal over its addenda is about other events than those stored");
            }
            Ok(said) => covered = covered.max(said.next),
        }
    }
    match hash_before(payload.next, hashes) {
        None => fails("the events under it do not hold together"),
        Some(last) if last.as_str() != payload.last => fails("it is about other events than those stored"),
        Some(_) => SealCheck::Holds {
            fingerprint: coilside_core::record::file::fingerprint(&seal.public_key),
            marks: SealMarks::of(&id::Digest(payload.last), &seal.public_key),
            received_ms: seal.received_ms,
            later_events: (hashes.len() as u64).saturating_sub(covered),
        },
    }
}

/// The hash of the last of so many events.
fn hash_before(next: u64, hashes: &[id::Digest]) -> Option<&id::Digest> {
    usize::try_from(next).ok()?.checked_sub(1).and_then(|last| hashes.get(last))
}
