//! The office lets this device go on with a visit of another one, or lets another one go on with a visit of this.
//!
//! ```text
//! news: handed ─▶ its events, page by page ─▶ whole, with assignment and procedure ─▶ device-changed ─▶ under way here
//! ```

use super::DoorError;
use super::chain::chain;
use super::desk::Desk;
use crate::action::Action;
use crate::effect::{Effect, Request};
use crate::id::{Digest, VisitId};
use crate::now::Now;
use crate::procedure::library::from_pinned;
use crate::round::{HandedVisit, PackOffer};
use crate::screen::{Button, Notice, Tone};
use crate::store::{Commit, NewEffect, StoreError};
use crate::sync::VisitPage;
use crate::visit::apply::replay;
use crate::visit::decide::{WARNING_MS, lapses};
use crate::visit::event::{Body, Event};
use crate::visit::state::{Mark, Visit};

use super::act::dress;
use super::send::head_before;

impl Desk {
    /// The office lets this device go on with visits. One that this device has already, and still writes, is left as it is.
    pub(super) fn take_handed(&mut self, handed: &[HandedVisit]) -> Result<(), StoreError> {
        for one in handed.iter().filter(|one| is_name(&one.visit)) {
            let id = VisitId(one.visit.clone());
            let has_it =
                one.next > 0 && head_before(&self.store, &id, one.next).is_some_and(|head| head.as_str() == one.head);
            if !has_it || self.store.is_elsewhere(&id)? {
                self.store.put_handed(one)?;
            }
        }
        Ok(())
    }

    /// Events of such a visit came. A page that does not follow what is here is let go, and all of it is fetched anew.
    pub(super) fn take_page(&mut self, visit: &VisitId, page: &VisitPage) -> Result<(), StoreError> {
        let follows = self.store.coming()?.iter().any(|coming| coming.visit == *visit && coming.have == page.first);
        if follows {
            self.store.put_coming(visit, page.first, &page.events, (page.next, &page.head))?;
        }
        Ok(())
    }

    /// Goes on with every visit that is whole by now and whose assignment and procedure are here.
    pub(super) fn go_on(&mut self, now: &Now) -> Result<(), DoorError> {
        for coming in self.store.coming()?.into_iter().filter(|coming| coming.have >= coming.next) {
            let stored = self.store.came(&coming.visit)?;
            let state = replay(&coming.visit, stored.iter().map(Vec::as_slice));
            match state.ok().filter(|state| state.end.last == coming.head && state.end.next == coming.next) {
                Some(state) => self.go_on_with(state, &stored, now)?,
                None => self.store.fetch_anew(&coming.visit)?,
            }
        }
        Ok(())
    }

    fn go_on_with(&mut self, state: Visit, stored: &[Vec<u8>], now: &Now) -> Result<(), DoorError> {
        if self.store.assignment(&state.assignment)?.is_none() {
            return Ok(());
        }
        let mut pack = None;
        for run in state.runs.values() {
            let Some(bytes) = self.pack_bytes(&run.pack_digest)? else {
                let offer = PackOffer { digest: run.pack_digest.0.clone(), id: run.pack.clone(), bytes: 0 };
                return Ok(self.store.offer_pack(&offer)?);
            };
            pack = Some((run.pack_digest.clone(), bytes));
        }
        let Some((digest, bytes)) = pack else { return Ok(()) };
        let wakes = wakes(&state, stored, now);
        let words = super::desk::words_for(self.words.language(), Some(&from_pinned(&bytes)?))?;
        let changed = Body::DeviceChanged { device_key: self.device_key() };
        let bodies = lapses(&state, now).into_iter().chain([changed]).collect();
        let visit = state.id.clone();
        let (state, events) = chain(state, bodies, now)?;
        let effects = wakes.into_iter().map(|(seq, request)| NewEffect {
            visit: visit.clone(),
            seq,
            request: dress(request, &words),
        });
        self.store.go_on(
            &visit,
            &Commit {
                visit: Some(&state),
                events,
                effects: effects.collect(),
                pack: Some((&digest, &bytes)),
                utc_ms: now.utc_ms,
                ..Commit::default()
            },
        )?;
        if self.visit_id().as_ref() == Some(&visit) {
            self.sit_down(&visit, now)?;
        }
        let site = self.store.assignment(&state.assignment)?.map(|(assignment, _)| assignment.site.name);
        let words = self.words();
        self.tell(Notice {
            tone: Tone::Attention,
            title: words.fill("going-on-here", &[("site", &site.unwrap_or_default())]),
            lines: vec![words.text("going-on-here.do")],
            buttons: vec![Button {
                label: words.text("going-on-open"),
                tone: Tone::Primary,
                press: Action::Go { to: format!("visit:{visit}") },
                hold: false,
            }],
        });
        Ok(())
    }

    /// The bytes of a procedure, from wherever they are at hand.
    fn pack_bytes(&self, digest: &Digest) -> Result<Option<Vec<u8>>, StoreError> {
        if let Some(bytes) = self.store.pinned_pack(digest)? {
            return Ok(Some(bytes));
        }
        Ok(match self.procedures.of_digest(digest.as_str()) {
            Some(pack) => Some(pack.bytes.clone()),
            None => self.store.offered_bytes(digest)?,
        })
    }

    /// Another device goes on with the visit: it is shown, and not worked on here.
    pub(super) fn goes_elsewhere(&mut self, visit: &VisitId) -> Result<(), StoreError> {
        self.store.visit_elsewhere(visit)?;
        if let Some(seat) = self.seat.as_mut().filter(|seat| seat.visit.id == *visit) {
            seat.elsewhere = true;
        }
        Ok(())
    }

    /// The alarms of a visit: this shell has not heard of those that came with it from another device.
    pub(super) fn alarms_of(&self, visit: &VisitId) -> Result<Vec<Effect>, StoreError> {
        let prefix = format!("{visit}/");
        let is_its_alarm =
            |effect: &Effect| effect.id.starts_with(&prefix) && matches!(effect.request, Request::WakeAt { .. });
        Ok(self.store.open_effects()?.into_iter().filter(is_its_alarm).collect())
    }
}

/// A name that may stand in an address and in an effect's id.
fn is_name(visit: &str) -> bool {
    (1..=64).contains(&visit.len()) && visit.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'-')
}

/// The alarms of waiting times that run, each with the event that began it. The time that certainly went by is taken off for
/// the least, and the longest that it can have been for the most.
fn wakes(visit: &Visit, stored: &[Vec<u8>], now: &Now) -> Vec<(u64, Request)> {
    let events: Vec<Event> = (0..).zip(stored).filter_map(|(seq, bytes)| Event::from_bytes(bytes, seq).ok()).collect();
    let mut wakes = Vec::new();
    for (letter, run) in &visit.runs {
        for (id, mark) in &run.steps {
            let (Mark::Running { least_s, most_s, .. }, Some(waited)) = (mark, mark.waited(now)) else { continue };
            let began = events.iter().rev().find(
                |event| matches!(&event.body, Body::StepStarted { unit, step, .. } if unit == letter && step == id),
            );
            let Some(seq) = began.map(|event| event.seq) else { continue };
            let least_ms = i64::from(*least_s) * 1000 - waited.proven_ms;
            let soon_ms = i64::from(*most_s) * 1000 - WARNING_MS - waited.longest_ms;
            for (in_ms, what) in [(least_ms, "ready"), (soon_ms, "soon-over")] {
                if in_ms > 0 {
                    let utc_ms = now.utc_ms.saturating_add(in_ms);
                    wakes.push((seq, Request::WakeAt { utc_ms, text: format!("{what}:{id}") }));
                }
            }
        }
    }
    wakes
}
