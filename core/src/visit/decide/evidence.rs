//! Photographs: ask for one, and take what came.

use super::{Circumstances, Decision, Refusal};
use crate::effect::Request;
use crate::evidence::{Around, Prepared, judged_beside};
use crate::visit::event::{Body, PhotoFacts};

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
pub fn photo_events(prepared: &Prepared, around: &Around<'_>) -> Vec<Body> {
    let (beside, at_site) = judged_beside(prepared, around);
    vec![Body::PhotoTaken {
        unit: around.unit.clone(),
        slot: around.slot.clone(),
        digest: prepared.digest.clone(),
        bytes: prepared.bytes,
        media: prepared.media.clone(),
        facts: PhotoFacts { at_site, ..prepared.facts.clone() },
        flags: prepared.flags.iter().copied().chain(beside).collect(),
    }]
}
