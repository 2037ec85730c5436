//! Photographs: ask for one, and take what came.

use super::{Circumstances, Decision, Refusal};
use crate::effect::Request;
use crate::evidence::Prepared;
use crate::id::{Letter, Slot};
use crate::visit::event::{Body, PhotoFlag};
use crate::visit::state::Visit;

pub(super) fn shoot(slot: &str, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    if !slot.is_empty() && around.pack.shot(slot).is_none() {
        return Err(Refusal::NoSuch { name: slot.to_owned() });
    }
    // Title and what must be visible are words: the door fills them in.
    let request = Request::TakePhoto {
        unit: around.unit.0.clone(),
        slot: slot.to_owned(),
        title: String::new(),
        show: String::new(),
    };
    Ok(Decision { requests: vec![request], ..Decision::default() })
}

/// The events of a photograph that is on the shelf. A visit that is frozen or stopped still takes it: nothing is lost.
#[must_use]
pub fn photo_events(visit: &Visit, unit: &Letter, slot: &Slot, prepared: &Prepared) -> Vec<Body> {
    let mut flags = prepared.flags.clone();
    let elsewhere =
        visit.photos().any(|(letter, other, photo)| photo.digest == prepared.digest && (letter, other) != (unit, slot));
    if elsewhere {
        flags.push(PhotoFlag::SameAsOther);
    }
    vec![Body::PhotoTaken {
        unit: unit.clone(),
        slot: slot.clone(),
        digest: prepared.digest.clone(),
        bytes: prepared.bytes,
        media: prepared.media.clone(),
        facts: prepared.facts.clone(),
        flags,
    }]
}
