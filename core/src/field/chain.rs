//! Puts events at the end of a visit's chain.

use super::DoorError;
use crate::now::Now;
use crate::visit::apply::apply;
use crate::visit::event::{Body, Event};
use crate::visit::state::Visit;

/// Events with the bytes that were hashed.
type Written = Vec<(Event, Vec<u8>)>;

/// Puts events at the end of a visit's chain.
pub(super) fn chain(mut visit: Visit, bodies: Vec<Body>, now: &Now) -> Result<(Visit, Written), DoorError> {
    let mut written = Vec::new();
    for body in bodies {
        let mut end = visit.end.clone();
        let event = Event { visit: visit.id.clone(), seq: end.next, prev: end.last.clone(), time: now.clone(), body };
        let bytes = event.to_bytes()?;
        end.follow(&visit.id, &bytes)?;
        visit = apply(visit, &event);
        visit.end = end;
        written.push((event, bytes));
    }
    Ok((visit, written))
}
