//! The outbox at the door: what to send next, and what came back.

use std::sync::MutexGuard;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;

use super::desk::Desk;
use super::handover::summary_of;
use super::packs::of_office;
use super::{DoorError, Field};
use crate::id::{Digest, VisitId};
use crate::now::Now;
use crate::store::shelf::FolderShelf;
use crate::store::{OutboxKind, OutboxRow, Store, StoreError};
use crate::sync::{
    Access, Answer, EVENTS_MOST, Kind, Meaning, Network, Over, Payload, Policy, SendRequest, Sender, SignAsked, Task,
    Trouble, Waiting, What, meaning, what_of,
};
use crate::visit::event::{NO_PREV, sha256};

/// So many rows of each kind are looked at for the next request: more than ever rest at once in earnest.
const LOOKED_AT: u32 = 64;

/// A photograph of at least so many bytes sends a small picture ahead: a smaller one is there nearly as soon itself.
const PREVIEW_FROM_BYTES: u64 = 512 << 10;

/// Settings of the engine, beside the log: where the device joined with its token, whether it was let out, and from where
/// news go on.
const ACCESS: &str = "access";
const REVOKED: &str = "revoked";
const CURSOR: &str = "news-cursor";

pub(super) fn base64(bytes: &[u8]) -> String {
    STANDARD.encode(bytes)
}

/// The engine as it starts, with what the store kept.
pub(super) fn sender(store: &Store) -> Result<Sender, StoreError> {
    let access = store.setting(ACCESS)?.and_then(|text| serde_json::from_str::<Access>(&text).ok());
    let mut policy = Policy::default();
    for kind in Kind::ALL {
        policy = policy.with(kind, Over::read(store.setting(kind.setting())?.as_deref()));
    }
    let cursor = store.setting(CURSOR)?.filter(|cursor| !cursor.is_empty());
    Ok(Sender::new(access, store.setting(REVOKED)?.as_deref() == Some("yes"), policy, cursor))
}

impl Field {
    /// The requests to send now, at once and beside each other: none, one, or one small one and a part of a photograph. Each
    /// is to be answered by [`Field::answered`], or is given up after a while. What is to be signed first is told by
    /// [`Field::next_sign`].
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn next_requests(&self, network: Network, now: &Now) -> Result<Vec<SendRequest>, DoorError> {
        let mut desk = self.desk();
        if !desk.sender.is_free(network, now) {
            return Ok(Vec::new());
        }
        let waiting = Waiting {
            small: desk.store.next_small(LOOKED_AT)?,
            photos: desk.store.next_photos(LOOKED_AT)?,
            previews: desk.store.next_previews(PREVIEW_FROM_BYTES, LOOKED_AT)?,
            handed: desk.store.handed_to_fetch()?,
            pack: desk.store.pack_to_fetch()?,
        };
        let device_key = desk.device_key();
        let mut requests = Vec::new();
        for task in desk.sender.next(&waiting, &device_key, network, now) {
            match task {
                Task::Ask(request) => requests.push(request),
                Task::Preview(row) => {
                    let path = self.shelf.preview_path(&row.digest);
                    match std::fs::metadata(&path).map(|known| known.len()) {
                        Ok(length) if (1..row.bytes).contains(&length) => {
                            requests.push(desk.sender.preview(&row, path, length, now));
                        }
                        // There is none, or one that is no smaller.
                        _ => desk.store.row_previewed(row.id)?,
                    }
                }
                Task::Row { row, from } => match payload(&desk.store, &self.shelf, &row, from)? {
                    Ok(payload) => {
                        requests.extend(desk.sender.request(&row, from, payload, &device_key, network, now));
                    }
                    Err(trouble) => desk.store.row_stuck(row.id, trouble.name())?,
                },
            }
        }
        Ok(requests)
    }

    /// Takes the office's answer to a request; `status` 0 tells that there was none. An answer may come late, twice, or to a
    /// request that was made before a restart.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn answered(
        &self,
        request_id: &str,
        status: u16,
        headers: &[(String, String)],
        body: &[u8],
        now: &Now,
    ) -> Result<(), DoorError> {
        let Some(what) = what_of(request_id) else { return Ok(()) };
        let mut guard = self.desk();
        let desk = &mut *guard;
        let row = match what.row() {
            Some(number) => desk.store.outbox_row(number)?,
            None => None,
        };
        let answer = Answer { status, headers, body, came_utc_ms: now.utc_ms };
        let store = &desk.store;
        let head = |next| row.as_ref().and_then(|row| head_before(store, &row.visit, next));
        let mut meaning = meaning(&what, row.as_ref(), &answer, head);
        if let Some(row) = &row
            && desk.store.is_coming(&row.visit)?
        {
            meaning = meaning.of_a_visit_that_comes_back(&answer);
        }
        let chance = desk.chance();
        let before = (desk.sender.access().cloned(), desk.sender.is_revoked(), desk.sender.cursor());
        // What a store cannot keep must not be thought done by the engine either: the store first.
        if desk.sender.awaits(request_id) || meaning.is_lasting() {
            take_meaning(&mut desk.store, row.as_ref(), &meaning, now)?;
            if desk.sender.awaits(request_id) {
                desk.take_down(&what, &meaning)?;
            }
            if let (Meaning::Aside { .. } | Meaning::Stuck(Trouble::TakenOver), Some(row)) = (&meaning, &row)
                && !desk.store.is_coming(&row.visit)?
            {
                desk.goes_elsewhere(&row.visit)?;
            }
        }
        if !desk.sender.heard(request_id, row.as_ref(), &answer, &meaning, chance, now) {
            return Ok(());
        }
        desk.after_answer(&meaning, before)?;
        match (what, meaning) {
            (What::Pack(digest), Meaning::Pack(bytes)) => self.pack_came(guard, &digest, &bytes, now),
            (What::News | What::Visit(..), _) => desk.go_on(now),
            _ => Ok(()),
        }
    }

    /// A procedure came from the office: it is proved while the door is open for others, then kept and used. One that is not
    /// sound or not safe is kept too, listed with the reason, and never used.
    fn pack_came(&self, desk: MutexGuard<'_, Desk>, digest: &str, bytes: &[u8], now: &Now) -> Result<(), DoorError> {
        let from = desk.office_name();
        drop(desk);
        let read = of_office(bytes, &from, "");
        let mut desk = self.desk();
        desk.store.put_offered(digest, bytes, read.proved_by())?;
        desk.procedures.take_from_office(read);
        desk.go_on(now)?;
        desk.packs_changed(now).map(drop)
    }

    /// What the shell is asked to sign with the device's key before anything else can be sent: answered by
    /// [`Field::signed`]. The same is told until it was signed.
    #[must_use]
    pub fn next_sign(&self) -> Option<SignAsked> {
        self.desk().sender.sign_asked()
    }

    /// Takes a signature that [`Field::next_sign`] asked for, base64 of DER or of raw r‖s. One that nobody waits for changes
    /// nothing.
    ///
    /// # Errors
    /// Where it is not made by this device's key.
    pub fn signed(&self, id: &str, signature_base64: &str) -> Result<(), DoorError> {
        let mut desk = self.desk();
        let public_key = desk.public_key.clone();
        Ok(desk.sender.signed(id, signature_base64, &public_key).map_err(crate::record::seal::SealError::from)?)
    }
}

/// What a row carries; or why it cannot be had.
fn payload(
    store: &Store,
    shelf: &FolderShelf,
    row: &OutboxRow,
    from: u64,
) -> Result<Result<Payload, Trouble>, StoreError> {
    Ok(match row.kind {
        OutboxKind::Events => Ok(Payload::Events(store.some_events(&row.visit, from, EVENTS_MOST)?)),
        OutboxKind::Seal => {
            let addenda = row.first > 0;
            let seal = if addenda { store.addendum_seal(&row.visit, row.first)? } else { store.seal(&row.visit)? };
            seal.map(Payload::Seal).ok_or(Trouble::Refused)
        }
        OutboxKind::Photo => {
            let path = shelf.original_path(&row.digest);
            let bytes = std::fs::metadata(&path).ok().map(|known| known.len());
            if bytes == Some(row.bytes) { Ok(Payload::Original(path)) } else { Err(Trouble::FileGone) }
        }
    })
}

fn take_meaning(store: &mut Store, row: Option<&OutboxRow>, meaning: &Meaning, now: &Now) -> Result<(), StoreError> {
    let Some(row) = row else { return Ok(()) };
    match meaning {
        Meaning::EventsSafe { next } => store.events_safe(&row.visit, *next, now.utc_ms),
        Meaning::EventsAgain { next } => store.events_again(&row.visit, *next),
        Meaning::Aside { .. } if row.kind == OutboxKind::Seal => store.row_aside(row.id),
        Meaning::Aside { kept } => store.events_aside(&row.visit, *kept),
        Meaning::Safe { summary } => {
            if let Some(path) = summary {
                store.put_setting(&summary_of(row.visit.as_str()), path)?;
            }
            store.row_safe(row.id, now.utc_ms)
        }
        Meaning::Stuck(trouble) => store.row_stuck(row.id, trouble.name()),
        _ => Ok(()),
    }
}

/// The digest of this device's own event before a number.
pub(super) fn head_before(store: &Store, visit: &VisitId, next: u64) -> Option<Digest> {
    match next.checked_sub(1) {
        None => Some(Digest(NO_PREV.to_owned())),
        Some(last) => store.some_events(visit, last, 1).ok()?.first().map(|bytes| sha256(bytes)),
    }
}

impl Desk {
    /// Keeps what came down.
    fn take_down(&mut self, what: &What, meaning: &Meaning) -> Result<(), StoreError> {
        match (what, meaning) {
            (_, Meaning::News(news)) => self.take_news(news),
            (_, Meaning::Previewed(row)) => self.store.row_previewed(*row),
            (What::Visit(visit, _), Meaning::Visit(page)) => self.take_page(&VisitId(visit.clone()), page),
            (What::Visit(visit, _), Meaning::NotHanded) => self.store.drop_handed(&VisitId(visit.clone())),
            _ => Ok(()),
        }
    }

    /// Procedures that came from the office before.
    pub(super) fn packs_of_office(&mut self) -> Result<(), StoreError> {
        let from = self.office_name();
        for (bytes, proved_by) in self.store.offered()? {
            self.procedures.take_from_office(of_office(&bytes, &from, &proved_by));
        }
        Ok(())
    }

    /// What the office is called on the screen of procedures.
    fn office_name(&self) -> String {
        self.sender.access().map_or_else(|| self.words.text("procedures-of-office"), |access| access.office.clone())
    }

    /// A fresh random number.
    fn chance(&mut self) -> u32 {
        let random = self.entropy.draw();
        random.iter().take(4).fold(0, |sum, byte| (sum << 8) | u32::from(*byte))
    }

    /// Keeps what an answer changed of the engine itself, and tells the person what they wait for.
    fn after_answer(
        &mut self,
        meaning: &Meaning,
        before: (Option<Access>, bool, Option<String>),
    ) -> Result<(), StoreError> {
        let (access, revoked, cursor) = before;
        if self.sender.access() != access.as_ref() {
            let text = self.sender.access().and_then(|access| serde_json::to_string(access).ok());
            self.store.put_setting(ACCESS, &text.unwrap_or_default())?;
        }
        if self.sender.is_revoked() != revoked {
            self.store.put_setting(REVOKED, if self.sender.is_revoked() { "yes" } else { "no" })?;
        }
        if self.sender.cursor() != cursor {
            self.store.put_setting(CURSOR, &self.sender.cursor().unwrap_or_default())?;
        }
        match meaning {
            Meaning::Safe { .. } | Meaning::EventsSafe { .. } | Meaning::Stuck(_)
                if self.store.next_small(1)?.is_empty() && self.store.next_photos(1)?.is_empty() =>
            {
                self.sender.emptied();
            }
            // Another office, or the same one after it had let the device out: what it would not take is tried again.
            Meaning::Joined(_) => {
                self.store.unstick()?;
                self.joined()?;
            }
            Meaning::NotJoined(why) => self.not_joined(*why),
            _ => {}
        }
        Ok(())
    }
}
