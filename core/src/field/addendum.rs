//! After the seal: words can be added, chained to the record and signed anew over all of it. Nothing else can.

use super::chain::chain;
use super::desk::Desk;
use super::{DoorError, send};
use crate::effect::{Effect, Request};
use crate::now::Now;
use crate::record::seal;
use crate::screen::Turn;
use crate::store::{Commit, NewEffect, StoreError};
use crate::visit::decide::Refusal;
use crate::visit::event::Body;
use crate::visit::state::Visit;

/// Where the words are typed.
const FIELD: &str = "addendum";

impl Desk {
    /// Adds the words that were typed to a sealed record, and asks for a signature over it with them. Without words it asks
    /// once more for a signature that is still missing.
    pub(super) fn add_addendum(&mut self, action_id: &str, now: &Now) -> Result<Turn, DoorError> {
        let place = self.draft_place();
        let drafts = self.store.drafts(&place)?;
        let text = drafts.get(FIELD).map(|text| text.trim().to_owned()).unwrap_or_default();
        let Some(seat) = self.seat.clone() else { return self.turn(Vec::new(), now) };
        if text.is_empty() && !self.is_unsigned(&seat.visit)? {
            return self.refuse(action_id, Refusal::Words { field: FIELD.to_owned() }, now);
        }
        let bodies = if text.is_empty() { Vec::new() } else { vec![Body::AddendumAdded { text }] };
        let (state, events) = chain(seat.visit, bodies, now)?;
        let input = seal::signing_input(&state)?;
        let request = Request::SignBytes { bytes_base64: send::base64(input.as_bytes()) };
        let seq = state.end.next.saturating_sub(1);
        let ids = self.store.commit(&Commit {
            visit: Some(&state),
            events,
            effects: vec![NewEffect { visit: state.id.clone(), seq, request: request.clone() }],
            acted: Some((action_id, None)),
            used: vec![(place, FIELD.to_owned())],
            utc_ms: now.utc_ms,
            ..Commit::default()
        })?;
        self.problems.remove(FIELD);
        if let Some(seat) = &mut self.seat {
            seat.visit = state;
        }
        self.turn(ids.into_iter().map(|id| Effect { id, request: request.clone() }).collect(), now)
    }

    /// Something was added after the seal and waits for its signature.
    pub(super) fn is_unsigned(&self, visit: &Visit) -> Result<bool, StoreError> {
        Ok(!visit.addenda.is_empty() && self.store.addendum_seal(&visit.id, visit.end.next)?.is_none())
    }
}
