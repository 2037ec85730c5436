//! The outbox at the door: what to send next, and what came back.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;

use super::handover::summary_of;
use super::{DoorError, Field};
use crate::id::VisitId;
use crate::now::Now;
use crate::store::{OutboxKind, OutboxRow, Store, StoreError};
use crate::sync::{Answer, Meaning, SendRequest, Waiting, meaning, summary_path};
use crate::visit::event::sha256;

pub(super) fn base64(bytes: &[u8]) -> String {
    STANDARD.encode(bytes)
}

impl Field {
    /// The requests to send now: none or one. Each is to be answered by [`Field::answered`], or is given up after a while.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn next_requests(&self, now: &Now) -> Result<Vec<SendRequest>, DoorError> {
        let mut desk = self.desk();
        if !desk.sender.is_free(now) {
            return Ok(Vec::new());
        }
        let row = desk.store.next_to_send()?;
        let mut events = Vec::new();
        let (mut seal, mut original) = (None, None);
        if let Some(row) = &row {
            match row.kind {
                OutboxKind::Events => events = desk.store.events(&row.visit, row.first)?,
                OutboxKind::Seal if row.first > 0 => seal = desk.store.addendum_seal(&row.visit, row.first)?,
                OutboxKind::Seal => seal = desk.store.seal(&row.visit)?,
                OutboxKind::Photo => original = Some(self.shelf.original_path(&row.digest)),
            }
        }
        let device_key = desk.device_key();
        let waiting =
            Waiting { row: row.as_ref(), events: &events, seal: seal.as_deref(), original, device_key: &device_key };
        Ok(desk.sender.next(&waiting, now).into_iter().collect())
    }

    /// Takes the office's answer to a request; `status` 0 tells that there was none.
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
        let mut desk = self.desk();
        let number = request_id.split_once(':').and_then(|(_, number)| number.parse().ok());
        let row = match number {
            Some(number) => desk.store.outbox_row(number)?,
            None => None,
        };
        let answer = Answer { status, headers, body };
        let store = &desk.store;
        let head = |next| row.as_ref().and_then(|row| head_before(store, &row.visit, next));
        let meaning = meaning(request_id, row.as_ref(), desk.sender.stage(), &answer, head);
        desk.sender.heard(request_id, &meaning, now);
        take_meaning(&mut desk.store, row.as_ref(), &meaning)?;
        if let (Some(row), Meaning::Safe, Some(path)) = (&row, &meaning, summary_path(&answer)) {
            desk.store.put_setting(&summary_of(row.visit.as_str()), &path)?;
        }
        drop(desk);
        if let Meaning::News(news) = &meaning {
            self.assigned(&news.assignments)?;
            if let Some(technician) = &news.technician {
                self.worked_by(technician)?;
            }
        }
        Ok(())
    }
}

fn take_meaning(store: &mut Store, row: Option<&OutboxRow>, meaning: &Meaning) -> Result<(), StoreError> {
    let Some(row) = row else { return Ok(()) };
    match meaning {
        Meaning::EventsSafe { next } => store.events_safe(&row.visit, *next),
        Meaning::EventsAgain { next } => store.events_again(&row.visit, *next),
        Meaning::Safe => store.row_safe(row.id),
        Meaning::Stuck(why) => store.row_stuck(row.id, why),
        _ => Ok(()),
    }
}

/// The digest of this device's own event before a number.
fn head_before(store: &Store, visit: &VisitId, next: u64) -> Option<crate::id::Digest> {
    match next.checked_sub(1) {
        None => Some(crate::id::Digest(crate::visit::event::NO_PREV.to_owned())),
        Some(last) => store.events(visit, last).ok()?.first().map(|bytes| sha256(bytes)),
    }
}
