//! Photographs at the door: what the shell put into `incoming` enters the log, and nothing of it is ever dropped.

use coilside_picture::DecodeError;

use super::chain::chain;
use super::{DoorError, Field, effect_of, incoming_name};
use crate::effect::{Outcome, PlaceFix, Request};
use crate::evidence::{Around, IntakeError, Prepared, prepare};
use crate::id::{Letter, Slot, VisitId};
use crate::now::Now;
use crate::procedure::pack::{Pack, Reading, SERIAL_ROLE, View};
use crate::round::Assignment;
use crate::science::place::Place;
use crate::screen::{Notice, Tone, Turn};
use crate::store::Commit;
use crate::store::shelf::Shelf as _;
use crate::visit::decide::{lapses, photo_events};
use crate::visit::event::Body;

/// Where a photograph that came belongs.
struct Came<'a> {
    effect_id: &'a str,
    visit: &'a VisitId,
    unit: Letter,
    slot: Slot,
    outcome: &'a Outcome,
}

impl Field {
    /// Files that lie in `incoming` since before the last end of the program. One that cannot be taken in now stays
    /// there and is tried again at the next opening: it never keeps the door shut.
    pub(super) fn adopt_orphans(&self, now: &Now) -> Result<(), DoorError> {
        for name in self.shelf.incoming()? {
            let effect_id = effect_of(&name);
            let known = self.desk().store.effect(&effect_id).ok().flatten();
            if known.is_some_and(|effect| matches!(effect.request, Request::TakePhoto { .. })) {
                let _ = self.photo_came(&effect_id, None, now);
            } else {
                let _ = self.shelf.set_aside(&name);
            }
        }
        Ok(())
    }

    /// Takes in the file of an effect. The slow part runs outside of the desk's lock.
    pub(super) fn photo_came(&self, effect_id: &str, place: Option<&PlaceFix>, now: &Now) -> Result<Turn, DoorError> {
        let name = incoming_name(effect_id);
        let effect = self
            .desk()
            .store
            .effect(effect_id)?
            .ok_or_else(|| DoorError::NoSuch { what: "request", name: effect_id.to_owned() })?;
        let Request::TakePhoto { unit, slot, .. } = effect.request else {
            return Err(DoorError::NoSuch { what: "photograph request", name: effect_id.to_owned() });
        };
        let of_plate = self.is_of_plate(&effect.visit, &slot);
        match prepare(&self.shelf, &name, of_plate, place, now) {
            Ok(prepared) => {
                let outcome = Outcome::Photo { place: place.cloned() };
                let (unit, slot) = (Letter(unit), Slot(slot));
                let came = Came { effect_id, visit: &effect.visit, unit, slot, outcome: &outcome };
                self.enter_photo(&came, &prepared, now)?;
                self.shelf.clear_incoming(&name)?;
            }
            Err(IntakeError::Shelf(error)) => {
                let ended = self.desk().store.effect(effect_id)?.and_then(|effect| effect.outcome);
                // Said twice, and the file is gone because the first time was enough.
                if !matches!(ended, Some(Outcome::Photo { .. })) || self.shelf.incoming_bytes(&name).is_ok() {
                    return Err(error.into());
                }
            }
            Err(error) => self.turn_down(effect_id, &name, &error, now)?,
        }
        self.screen(now)
    }

    /// Does the slot show a plate? Codes are looked for there.
    fn is_of_plate(&self, visit: &VisitId, slot: &str) -> bool {
        let seat = self.desk().seat_for(visit).ok();
        seat.is_some_and(|seat| seat.pack.pack.shot(slot).is_some_and(|shot| shot.view == Some(View::Plate)))
    }

    fn enter_photo(&self, came: &Came<'_>, prepared: &Prepared, now: &Now) -> Result<(), DoorError> {
        let mut desk = self.desk();
        let mut seat = desk.seat_for(came.visit)?;
        // Asked under the lock: two reports of one photograph may come at the same time.
        let late = desk.store.effect(came.effect_id)?.is_some_and(|effect| effect.outcome.is_some());
        if late && seat.visit.photos().any(|(_, _, photo)| photo.digest == prepared.digest) {
            return Ok(());
        }
        let mut bodies = Vec::new();
        if seat.sealed {
            // The record is closed: the picture is kept and sent, and an addendum can name it.
            let title = desk.words().text("photo-after-seal");
            desk.tell(Notice { tone: Tone::Attention, title, lines: Vec::new(), buttons: Vec::new() });
        } else {
            if seat.visit.sealing.is_some() {
                bodies.push(Body::SealCancelled {});
            }
            bodies.extend(lapses(&seat.visit, now));
            // A late one is kept without a place: the person may have taken another in between.
            let slot = if late { &Slot::default() } else { &came.slot };
            let around = Around {
                visit: &seat.visit,
                unit: &came.unit,
                slot,
                before: seat.pack.pack.shot(slot.as_str()).and_then(|shot| shot.before.as_ref()),
                site: site_of(&seat.assignment),
                serial: seat.serial_of(&came.unit).filter(|_| has_serial(&seat.pack.pack, slot)),
                now,
            };
            bodies.extend(photo_events(prepared, &around));
        }
        let (state, events) = chain(seat.visit.clone(), bodies, now)?;
        desk.store.commit(&Commit {
            visit: Some(&state),
            events,
            ended: (!late).then(|| (came.effect_id.to_owned(), came.outcome)),
            photo: Some((prepared.digest.clone(), prepared.media.clone(), prepared.bytes)),
            utc_ms: now.utc_ms,
            ..Commit::default()
        })?;
        seat.visit = state;
        desk.keep(seat);
        Ok(())
    }

    /// A file that is no photograph: it is set aside, the person is told, and the shot can be taken again.
    fn turn_down(&self, effect_id: &str, name: &str, error: &IntakeError, now: &Now) -> Result<(), DoorError> {
        let outcome = Outcome::Failed { why: error.to_string() };
        let mut desk = self.desk();
        if desk.store.effect(effect_id)?.is_some_and(|effect| effect.outcome.is_none()) {
            let ended = Some((effect_id.to_owned(), &outcome));
            desk.store.commit(&Commit { ended, utc_ms: now.utc_ms, ..Commit::default() })?;
        }
        let (title, line) = (desk.words().text("photo-refused"), desk.words().text(reason(error)));
        desk.tell(Notice { tone: Tone::Attention, title, lines: vec![line], buttons: Vec::new() });
        drop(desk);
        self.shelf.set_aside(name)?;
        Ok(())
    }
}

/// Is the slot of the plate that has the unit's serial number?
fn has_serial(pack: &Pack, slot: &Slot) -> bool {
    let of_serial = |reading: &&Reading| reading.role.as_deref() == Some(SERIAL_ROLE);
    pack.readings.iter().filter(of_serial).any(|reading| reading.plates.contains(slot))
}

/// The site's place; a register that has none says 0 and 0.
fn site_of(assignment: &Assignment) -> Option<Place> {
    let place = Place { latitude: assignment.site.latitude_deg, longitude: assignment.site.longitude_deg };
    (place.latitude != 0.0 || place.longitude != 0.0).then_some(place)
}

fn reason(error: &IntakeError) -> &'static str {
    match error {
        IntakeError::Empty => "photo-empty",
        IntakeError::TooLong { .. } => "photo-too-long",
        IntakeError::Picture(DecodeError::TooLarge { .. }) => "photo-too-large",
        IntakeError::NotAPicture => "photo-not-a-picture",
        IntakeError::Picture(DecodeError::Damaged { .. }) | IntakeError::Shelf(_) => "photo-damaged",
    }
}
